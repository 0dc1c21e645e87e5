//! The designer's numbers laid beside the checker's own.
//!
//! Both work from the same formulas and from nothing else in common. Where they differ by more than a thousandth one of them is
//! wrong, and the design must not be used before somebody knows which. Numbers that the designer finds by search are given
//! the width of the search.

use oilway_model::{Answer, Design, Finding, Season};
use oilway_text::{Message, message};
use oilway_units::{
    AnyQuantity, Entry, Flow, Frequency, Pressure, Quantity, TemperatureDifference, Time, Volume,
};

use oilway_physics::air;

use crate::Rule;
use crate::draft::Draft;
use crate::facts::{Facts, PathFacts};
use crate::rules::DESIGNER_DISAGREES;
use crate::source;
use crate::walk::Walk;

/// Differences above this share are reported.
const EXACT: f64 = 1e-3;
/// For numbers that stand on a flow which the designer's search leaves a thousandth wide.
const SEARCHED: f64 = 5e-3;
/// A filling that takes less than this share of the time that it has is no time at all: inertia, which neither side counts, would
/// decide it, and both searches end somewhere.
const INSTANT: f64 = 1e-3;
/// The designer's search for the coldest day stops at a twentieth of a kelvin.
const KELVINS: f64 = 0.1;

/// The differences between what the designer claims and what the checker finds, the worst of each kind of number.
pub fn compare(design: &Design, claimed: &Answer) -> Vec<Finding> {
    let facts = Facts::of(design);
    let mut table = Table::default();
    deliveries(&mut table, &facts, claimed);
    seasons(&mut table, &facts, claimed);
    protection(&mut table, &facts, claimed);
    supply(&mut table, &facts, claimed);
    let mut findings: Vec<Finding> = table.rows.into_iter().map(Row::finding).collect();
    findings.extend(cold_limit(&facts, claimed));
    findings
}

/// The worst difference of one kind of number.
struct Row {
    number: &'static str,
    at: String,
    own: Option<AnyQuantity>,
    claimed: Option<AnyQuantity>,
    difference: f64,
    times: usize,
}

impl Row {
    fn finding(self) -> Finding {
        let rule: &dyn Rule = &DESIGNER_DISAGREES;
        let name = Message::new(self.number);
        let what = message!("check-designer-disagrees", number = name, times = self.times);
        let mut draft = Draft::stop(rule, self.at, what, message!("check-designer-disagrees-cure"));
        if let Some(own) = self.own {
            draft = draft.number(message!("check-number-own"), own);
        }
        if let Some(claimed) = self.claimed {
            draft = draft.number(message!("check-number-claimed"), claimed);
        }
        draft.done()
    }
}

#[derive(Default)]
struct Table {
    rows: Vec<Row>,
}

impl Table {
    /// Lays two numbers side by side. One that only one side has is as wrong as can be.
    fn lay<T: Quantity>(
        &mut self,
        number: &'static str,
        at: impl FnOnce() -> String,
        own: Option<T>,
        claimed: Option<T>,
        allowed: f64,
    ) {
        let difference = match (own, claimed) {
            (Some(own), Some(claimed)) => share(own.si(), claimed.si()),
            (None, None) => 0.0,
            _ => f64::INFINITY,
        };
        if difference <= allowed {
            return;
        }
        let (own, claimed) = (own.map(AnyQuantity::from), claimed.map(AnyQuantity::from));
        match self.rows.iter_mut().find(|row| row.number == number) {
            Some(row) => {
                row.times += 1;
                if difference > row.difference {
                    (row.at, row.own, row.claimed, row.difference) = (at(), own, claimed, difference);
                }
            }
            None => self.rows.push(Row { number, at: at(), own, claimed, difference, times: 1 }),
        }
    }
}

/// How far apart two numbers are, as a share of the larger; what is not a number agrees with nothing.
fn share(one: f64, other: f64) -> f64 {
    if one == other {
        return 0.0;
    }
    let difference = (one - other).abs() / one.abs().max(other.abs());
    if difference.is_nan() { f64::INFINITY } else { difference }
}

fn deliveries(table: &mut Table, facts: &Facts<'_>, claimed: &Answer) {
    for point in 0..facts.design.points.len() {
        let at = || facts.point_name(point);
        let theirs = claimed.deliveries.get(point);
        let need = &facts.needs[point];
        let feed = facts.feed(point);
        let ages = facts.ages(point);
        let tail = facts.ways[point].as_ref().and_then(|way| facts.contents[way[0]]);
        table.lay("check-number-formula", at, Some(need.formula), theirs.map(|d| d.formula), EXACT);
        table.lay("check-number-required", at, Some(need.required), theirs.map(|d| d.required), EXACT);
        table.lay("check-number-band-low", at, Some(need.low), theirs.map(|d| d.band_low), EXACT);
        table.lay("check-number-band-high", at, need.high, theirs.and_then(|d| d.band_high), EXACT);
        // A point that nobody serves is a finding of its own.
        if feed.is_some() {
            table.lay("check-number-delivered", at, feed.map(|f| f.rate), theirs.map(|d| d.delivered), EXACT);
            table.lay("check-number-dose", at, feed.map(|f| f.dose), theirs.map(|d| d.dose), EXACT);
            table.lay(
                "check-number-age-in-tail",
                at,
                ages.map(|a| a.0),
                theirs.map(|d| d.age_in_tail),
                EXACT,
            );
            table.lay("check-number-age", at, ages.map(|a| a.1), theirs.map(|d| d.age), EXACT);
            table.lay("check-number-tail", at, tail, theirs.map(|d| d.tail), EXACT);
        }
    }
}

fn seasons(table: &mut Table, facts: &Facts<'_>, claimed: &Answer) {
    for own in &facts.seasons {
        let theirs = claimed.seasons.iter().find(|s| s.season == own.season);
        for (point, path) in own.paths.iter().enumerate() {
            let Some(path) = path else { continue };
            let at = || facts.point_name(point);
            let their = theirs.and_then(|s| s.paths.get(point));
            let mut lay = |number, of: fn(&PathFacts) -> Pressure, claimed: Option<Pressure>, allowed| {
                table.lay(number, at, Some(of(path)), claimed, allowed);
            };
            lay("check-number-start", |p| p.start, their.map(|p| p.start), EXACT);
            lay("check-number-start-rested", |p| p.rested, their.map(|p| p.start_rested), EXACT);
            lay("check-number-moving", |p| p.moving, their.map(|p| p.moving), EXACT);
            lay("check-number-residual", |p| p.residual, their.map(|p| p.residual), EXACT);
            lay("check-number-at-pump", |p| p.at_pump, their.map(|p| p.at_pump), SEARCHED);
            table.lay("check-number-flow", at, Some(path.flow), their.map(|p| p.flow), SEARCHED);
        }
        let all_known = own.paths.iter().all(Option::is_some);
        if all_known {
            let at = || "package.pump".to_owned();
            let their = theirs.and_then(|s| s.event_time);
            table.lay("check-number-event", || "control".to_owned(), own.event, their, SEARCHED);
            let source = own.source.as_ref();
            let their = theirs.map(|s| &s.pump);
            table.lay("check-number-stall", at, source.map(|s| s.stall), their.map(|p| p.stall), EXACT);
            let free = source.map(source::Source::free_flow);
            table.lay("check-number-flow-limit", at, free, their.map(|p| p.flow_limit), EXACT);
            let rate = free.zip(facts.views.pump.as_ref()).map(|(free, pump)| rate(free, pump.per_cycle));
            table.lay("check-number-rate", at, rate, their.map(|p| p.rate), EXACT);
            table.lay("check-number-free-air", at, free_air(facts), their.map(|p| p.free_air), EXACT);
            let fill = own.inlet.and_then(|i| i.fill.map(|fill| fill.max(i.available * INSTANT)));
            let their = their.and_then(|p| p.fill_time.map(|fill| fill.max(p.fill_time_available * INSTANT)));
            table.lay("check-number-fill", at, fill, their, EXACT);
        }
    }
}

fn rate(flow: Flow, cycle: Volume) -> Frequency {
    Frequency::from_per_second(1.0 / (cycle / flow).seconds())
}

/// Free air of one cycle of the pump.
fn free_air(facts: &Facts<'_>) -> Option<Volume> {
    let pump = facts.views.pump.as_ref()?;
    let Some(swept) = pump.air_swept else { return Some(Volume::ZERO) };
    let atmosphere = source::atmosphere(facts.design);
    let supply = source::working_air(facts.design).absolute(atmosphere);
    let clearance = pump.air_clearance.unwrap_or_default();
    let room = oilway_units::Temperature::from_celsius(20.0);
    Some(air::free_air(swept, clearance, supply, atmosphere, room))
}

fn protection(table: &mut Table, facts: &Facts<'_>, claimed: &Answer) {
    let (own, theirs) = (&facts.shield, &claimed.protection);
    let at = || "package.disc".to_owned();
    let disc = own.disc.as_ref();
    table.lay("check-number-working", at, Some(own.working), Some(theirs.working), SEARCHED);
    table.lay("check-number-lowest-burst", at, disc.map(|d| d.lowest), theirs.lowest_burst, EXACT);
    table.lay("check-number-highest-burst", at, disc.map(|d| d.highest), theirs.highest_burst, EXACT);
    table.lay("check-number-steady", at, disc.map(|d| d.steady), theirs.steady_maximum, EXACT);
    table.lay("check-number-window-low", at, Some(own.window_low), Some(theirs.window_low), SEARCHED);
    table.lay("check-number-window-high", at, Some(own.window_high), Some(theirs.window_high), EXACT);
    table.lay("check-number-relieving", at, own.relieving, theirs.relieving, EXACT);
    table.lay("check-number-stays", at, own.stays, theirs.stays, EXACT);
    let possible = claimed.seasons.first().map(|s| s.pump.stall_possible);
    if possible.is_some() {
        table.lay("check-number-possible", at, Some(own.possible), possible, EXACT);
    }
    if let Some(weakest) = own.weakest() {
        table.lay("check-number-weakest", at, Some(weakest.rated), Some(theirs.weakest.1), EXACT);
    }
}

fn supply(table: &mut Table, facts: &Facts<'_>, claimed: &Answer) {
    let at = || "package.reservoir".to_owned();
    let theirs = &claimed.supply;
    let Some(use_rate) = facts.use_rate() else { return };
    table.lay("check-number-use", at, Some(use_rate), Some(theirs.use_rate), EXACT);
    if facts.views.reservoir.is_some() {
        table.lay("check-number-refill", at, facts.refill(), Some(theirs.refill), EXACT);
        table.lay("check-number-reserve", at, facts.reserve(), Some(theirs.reserve), EXACT);
    }
    if let Some(inlet) = facts.season(Season::Cold).inlet {
        table.lay(
            "check-number-feed",
            || "package.pump".to_owned(),
            Some(inlet.feed),
            Some(theirs.feed),
            EXACT,
        );
    }
    let cycles = facts.views.pump.as_ref().map(|pump| use_rate * Time::from_hours(1.0) / pump.per_cycle);
    if let (Some(air), Some(cycles)) = (free_air(facts), cycles) {
        let at = || "package.pump".to_owned();
        table.lay("check-number-air-use", at, Some(air * cycles), Some(theirs.air_per_hour), EXACT);
    }
}

/// The claimed coldest day, tried: a hair warmer it must start, a hair colder it must not.
fn cold_limit(facts: &Facts<'_>, claimed: &Answer) -> Option<Finding> {
    /// Where the designer's search ends; beyond it nothing is claimed.
    const COLDEST_SEARCHED: f64 = 79.9;
    let limit = claimed.cold_limit.as_ref()?;
    let reserve = limit.reserve.kelvins();
    let starts = |colder: f64| starts_colder(facts, TemperatureDifference::from_kelvins(colder));
    let wrong_above = starts(reserve - KELVINS)?.then_some(()).is_none();
    let wrong_below = reserve < COLDEST_SEARCHED && starts(reserve + KELVINS).unwrap_or(false);
    if !wrong_above && !wrong_below {
        return None;
    }
    let rule: &dyn Rule = &DESIGNER_DISAGREES;
    let name = Message::new("check-number-cold-limit");
    let what = message!("check-designer-disagrees", number = name, times = 1);
    let draft = Draft::stop(rule, "conditions", what, message!("check-designer-disagrees-cure"));
    Some(draft.number(message!("check-number-claimed"), limit.reserve).done())
}

/// Whether the pump sets every path moving when all places outdoors, or all places if none is, are so much colder.
fn starts_colder(facts: &Facts<'_>, by: TemperatureDifference) -> Option<bool> {
    let mut colder = facts.design.clone();
    let everywhere = !colder.conditions.places.iter().any(|place| place.outdoors);
    for place in colder.conditions.places.iter_mut().filter(|place| everywhere || place.outdoors) {
        place.coldest = Entry::known(place.coldest.get().plus(-by));
    }
    let (stall, flow) = (facts.stall()?, facts.event_flow?);
    // A pump that could push harder than the disc stands would only burst it.
    let most = facts.shield.disc.map_or(stall, |disc| stall.min(disc.steady));
    let rest = colder.conditions.practice.rest_factor.get().fraction();
    let walk = Walk::new(&colder, &facts.views);
    let starts = |way: &Vec<usize>| {
        let losses = walk.losses(Season::Cold, way, flow);
        losses.is_some_and(|l| l.moving.max(l.yielding * rest + l.fixed) <= most)
    };
    Some(facts.ways.iter().flatten().all(starts))
}

#[cfg(test)]
mod tests {
    use super::share;

    #[test]
    fn a_thousandth_is_a_share_of_the_larger_and_nothing_agrees_with_what_is_no_number() {
        assert_eq!(share(0.0, 0.0), 0.0);
        assert_eq!(share(f64::INFINITY, f64::INFINITY), 0.0);
        assert!((share(1.0, 0.999) - 1e-3).abs() < 1e-12);
        assert_eq!(share(f64::NAN, 1.0), f64::INFINITY);
        assert_eq!(share(0.0, 1.0), 1.0);
    }
}
