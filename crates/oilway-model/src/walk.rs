//! Walking over the entries of a design, so that a study of spreads can move one after the other.

use oilway_units::OpenEntry;

use crate::{Conditions, Design, FlowCurve, Lubricant, Oil, PointEntry, Substance};

/// What a walk calls for each entry: its place in the job, and the entry.
pub type EntryVisitor<'a> = dyn FnMut(&str, &mut dyn OpenEntry) + 'a;

impl Design {
    /// Calls the visitor for every entry, in a fixed order.
    pub fn visit_entries(&mut self, visit: &mut EntryVisitor<'_>) {
        self.conditions.visit_entries(visit);
        for point in &mut self.points {
            let at = |what: &str| format!("point.{}.{what}", point.name);
            visit(&at("duty"), &mut point.duty);
            if let Some(back_pressure) = &mut point.back_pressure {
                visit(&at("back_pressure"), back_pressure);
            }
            if let Some(given) = &mut point.given {
                visit(&at("given.quantity"), &mut given.quantity);
                visit(&at("given.interval"), &mut given.interval);
            }
            for (field, entry) in point.kind.fields().iter().zip(&mut point.entries) {
                if let PointEntry::Quantity(entry) = entry {
                    visit(&at(field.name), entry);
                }
            }
        }
        for node in &mut self.network.nodes {
            for (number, leg) in node.legs.iter_mut().enumerate() {
                visit(&format!("line.{}.{}.length", node.name, number + 1), &mut leg.length);
                visit(&format!("line.{}.{}.rise", node.name, number + 1), &mut leg.rise);
            }
        }
    }
}

impl Conditions {
    /// Calls the visitor for every entry, in a fixed order.
    pub fn visit_entries(&mut self, visit: &mut EntryVisitor<'_>) {
        visit("site.altitude", &mut self.site.altitude);
        for place in &mut self.places {
            visit(&format!("place.{}.coldest", place.name), &mut place.coldest);
            visit(&format!("place.{}.normal", place.name), &mut place.normal);
            visit(&format!("place.{}.hottest", place.name), &mut place.hottest);
        }
        if let Some(air) = &mut self.air {
            visit("air.lowest", &mut air.lowest);
            visit("air.highest", &mut air.highest);
            visit("air.possible", &mut air.possible);
        }
        visit("duty.hours_per_day", &mut self.duty.hours_per_day);
        visit("duty.days_per_week", &mut self.duty.days_per_week);
        visit("limits.age", &mut self.limits.age);
        visit("limits.event_time", &mut self.limits.event_time);
        let practice = &mut self.practice;
        visit("practice.rest_factor", &mut practice.rest_factor);
        visit("practice.stall_use", &mut practice.stall_use);
        visit("practice.band_low", &mut practice.band_low);
        visit("practice.band_high", &mut practice.band_high);
        visit("practice.floor", &mut practice.floor);
        visit("practice.back_pressure", &mut practice.back_pressure);
        visit("practice.fittings", &mut practice.fittings);
        visit("practice.inlet_lowest", &mut practice.inlet_lowest);
        visit("practice.entrained_air", &mut practice.entrained_air);
        visit("practice.disc_warmer", &mut practice.disc_warmer);
        self.lubricant.visit_entries(visit);
    }
}

impl Lubricant {
    fn visit_entries(&mut self, visit: &mut EntryVisitor<'_>) {
        match &mut self.substance {
            Substance::Oil(oil) => oil.visit_entries("lubricant", visit),
            Substance::Grease(grease) => {
                visit("lubricant.density", &mut grease.density);
                grease.base_oil.visit_entries("lubricant.base_oil", visit);
                if let FlowCurve::Span(span) = &mut grease.curve {
                    visit("lubricant.yield_stress", &mut span.yield_stress);
                    visit("lubricant.consistency", &mut span.consistency);
                    visit("lubricant.index", &mut span.index);
                    visit("lubricant.halving", &mut span.halving);
                }
            }
        }
    }
}

impl Oil {
    fn visit_entries(&mut self, at: &str, visit: &mut EntryVisitor<'_>) {
        visit(&format!("{at}.at_40"), &mut self.at_40);
        visit(&format!("{at}.at_100"), &mut self.at_100);
        visit(&format!("{at}.density"), &mut self.density_15);
        visit(&format!("{at}.pressure_coefficient"), &mut self.pressure_coefficient);
    }
}
