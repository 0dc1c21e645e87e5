//! Numbers that no design can have.

use oilway_catalogue::Value;
use oilway_model::{Design, End, Finding, Leg, Mounting};
use oilway_text::{Message, message};
use oilway_units::{OpenEntry, Pressure, Time};

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    NumberNotSound = "number-not-sound",
    title: "A number is none, or cannot be",
    finds: "An entry, a setting or a value of a part that is no number or has no end; a length, a time or a delivery of nothing or less; more than 24 hours in a day or 7 days in a week; air whose lowest, highest and possible pressure stand in the wrong order; a main without a line. A time-out longer than the pause is a caution.",
    why: "Every comparison with a number that is none says no, so that each margin of the design would seem to hold.",
    source: "own-derivation", "what each quantity can be", Own,
    example: "A leg of 0 m between divider and point: measure it, or take the leg out.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let design = facts.design;
    let mut wrong = entries(design);
    wrong.extend(settings(design));
    wrong.extend(parts(design));
    wrong.extend(legs_of_package(design));
    wrong.extend(empty_mains(design));
    let stop =
        |(at, what): Wrong| Draft::stop(rule, at, what, message!("check-number-not-sound-cure")).done();
    let mut found: Vec<Finding> = wrong.into_iter().map(stop).collect();
    found.extend(order_of_air(rule, design));
    let control = &design.control;
    if control.time_out > control.pause && control.pause > Time::ZERO {
        let what =
            message!("check-time-out-beyond-pause", time_out = control.time_out, pause = control.pause);
        let cure = message!("check-time-out-beyond-pause-cure");
        found.push(Draft::caution(rule, "control.time_out", what, cure).done());
    }
    found
}

/// A place in the design, and what is wrong there.
type Wrong = (String, Message);

/// Entries that must be more than nothing, by the end of their name.
const POSITIVE: [&str; 9] = [
    ".length",
    "duty.hours_per_day",
    "duty.days_per_week",
    "limits.age",
    "limits.event_time",
    "practice.rest_factor",
    "practice.stall_use",
    "lubricant.density",
    "given.interval",
];

/// What a day and a week have, SI.
const MOST: [(&str, f64); 2] = [("duty.hours_per_day", 24.0 * 3600.0), ("duty.days_per_week", 7.0)];

fn entries(design: &Design) -> Vec<Wrong> {
    let mut wrong = Vec::new();
    let mut judge = |at: &str, entry: &mut dyn OpenEntry| {
        let all = [entry.low_si(), entry.typical_si(), entry.high_si(), entry.now_si()];
        let most = MOST.iter().find(|(name, _)| at == *name);
        if !all.iter().all(|si| si.is_finite()) {
            wrong.push((at.to_owned(), message!("check-number-is-none")));
        } else if POSITIVE.iter().any(|end| at.ends_with(end)) && entry.now_si() <= 0.0 {
            wrong.push((at.to_owned(), message!("check-number-not-positive")));
        } else if most.is_some_and(|(_, most)| entry.now_si() > most * (1.0 + 1e-9)) {
            wrong.push((at.to_owned(), message!("check-number-beyond-day-or-week")));
        }
    };
    // The walk moves entries; a copy keeps the design as it is.
    design.clone().visit_entries(&mut judge);
    if let Some(entry) = design.conditions.air.as_ref().and_then(|air| air.dew_point) {
        let mut entry = entry;
        judge("air.dew_point", &mut entry);
    }
    let mut allowance = design.cutting_allowance;
    judge("cutting_allowance", &mut allowance);
    wrong
}

fn positive(at: &str, si: f64) -> Option<Wrong> {
    if !si.is_finite() {
        Some((at.to_owned(), message!("check-number-is-none")))
    } else if si <= 0.0 {
        Some((at.to_owned(), message!("check-number-not-positive")))
    } else {
        None
    }
}

fn settings(design: &Design) -> Vec<Wrong> {
    let (control, package) = (&design.control, &design.package);
    let supply = design.conditions.electric.as_ref();
    [
        positive("control.pause", control.pause.seconds()),
        positive("control.time_out", control.time_out.seconds()),
        package.air_setting.and_then(|set| positive("package.regulator", set.pascals())),
        supply.and_then(|electric| positive("electric.voltage", electric.voltage.volts())),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// Values of parts that are no numbers, and a pump that gives nothing.
fn parts(design: &Design) -> Vec<Wrong> {
    let package = &design.package;
    let fixed = [
        ("package.pump", Some(&package.pump)),
        ("package.reservoir", Some(&package.reservoir)),
        ("package.block", Some(&package.block)),
        ("package.valve", package.valve.as_ref()),
        ("package.regulator", package.regulator.as_ref()),
        ("package.disc", package.disc.as_ref()),
        ("package.holder", package.holder.as_ref()),
        ("package.gauge", package.gauge.as_ref()),
        ("package.controller", package.controller.as_ref()),
    ];
    let fixed = fixed.into_iter().filter_map(|(at, part)| Some((at.to_owned(), part?)));
    let conduits = design.conduits.iter().map(|part| (format!("conduit.{}", part.id), part));
    let dividers = design.dividers.iter().flat_map(|divider| {
        let parts = divider.sections.iter().map(|section| &section.part).chain([&divider.body]);
        parts.map(|part| (format!("divider.{}", divider.name), part))
    });
    let none = |value: &Option<Value>| matches!(value, Some(Value::Quantity(q)) if !q.si.is_finite());
    let broken = fixed.chain(conduits).chain(dividers).filter(|(_, part)| part.values.iter().any(none));
    let mut wrong: Vec<Wrong> = broken.map(|(at, _)| (at, message!("check-number-is-none"))).collect();
    let given = package.pump.quantity::<oilway_units::Volume>("per_cycle");
    wrong.extend(given.filter(|v| v.cubic_metres() <= 0.0).and_then(|v| {
        let at = "package.pump";
        positive(at, v.cubic_metres())
    }));
    wrong
}

fn legs_of_package(design: &Design) -> Vec<Wrong> {
    let judge = |name: &'static str, legs: &[Leg]| {
        let one = |(number, leg): (usize, &Leg)| {
            let at = format!("package.{name}.{}", number + 1);
            let length = positive(&at, leg.length.get().metres());
            length.or_else(|| {
                (!leg.rise.get().metres().is_finite()).then(|| (at, message!("check-number-is-none")))
            })
        };
        legs.iter().enumerate().filter_map(one).collect::<Vec<_>>()
    };
    let mut wrong = judge("discharge", &design.package.discharge);
    if let Mounting::Remote(legs) = &design.package.mounting {
        wrong.extend(judge("inlet", legs));
    }
    wrong
}

/// Lines from the pump to a divider of which no leg is drawn.
fn empty_mains(design: &Design) -> impl Iterator<Item = Wrong> {
    let nodes = &design.network.nodes;
    let from_pump = |parent: usize| nodes.get(parent).is_some_and(|node| node.end == End::Pump);
    let empty = nodes.iter().filter(move |node| {
        matches!(node.end, End::Divider(_)) && node.legs.is_empty() && node.parent.is_some_and(from_pump)
    });
    empty.map(|node| (format!("line.{}", node.name), message!("check-main-without-line")))
}

fn order_of_air(rule: &dyn Rule, design: &Design) -> Vec<Finding> {
    let Some(air) = &design.conditions.air else { return Vec::new() };
    let (lowest, highest, possible) = (air.lowest.get(), air.highest.get(), air.possible.get());
    let judge = |at: &str, low: Pressure, high: Pressure| {
        let what = message!("check-air-out-of-order", low = low, high = high);
        let wrong = low > high * (1.0 + 1e-9);
        wrong.then(|| Draft::stop(rule, at, what, message!("check-number-not-sound-cure")).done())
    };
    let pairs = [
        judge("air.lowest", Pressure::ZERO, lowest),
        judge("air.highest", lowest, highest),
        judge("air.possible", highest, possible),
    ];
    pairs.into_iter().flatten().collect()
}

#[cfg(test)]
mod tests {
    use crate::check;
    use crate::testing::{accepts, altered, refuses, severity, sound};
    use oilway_catalogue::Value;
    use oilway_model::{AnyEntry, Design, PointEntry, Severity};
    use oilway_units::{AnyQuantity, Count, Dimension, Entry, Length, Pressure, Quantity, Time, Volume};
    use proptest::prelude::*;

    const RULE: &str = "number-not-sound";

    #[test]
    fn a_leg_has_a_length() {
        accepts(RULE, |_| {});
        for metres in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            refuses(RULE, |d| d.network.nodes[3].legs[0].length = Entry::known(Length::from_metres(metres)));
            refuses(RULE, |d| crate::testing::remote(d, metres));
        }
        refuses(RULE, |d| d.network.nodes[1].legs.clear());
        accepts(RULE, |d| d.network.nodes[2].legs.clear());
    }

    #[test]
    fn settings_are_more_than_nothing_and_the_alarm_comes_before_the_next_event() {
        for hours in [0.0, -1.0, f64::NAN] {
            refuses(RULE, |d| d.control.pause = Time::from_hours(hours));
            refuses(RULE, |d| d.control.time_out = Time::from_hours(hours));
        }
        assert_eq!(severity(RULE, |d| d.control.time_out = Time::from_hours(9.0)), Some(Severity::Caution));
        refuses(RULE, |d| d.package.air_setting = Some(Pressure::from_bar(f64::NAN)));
    }

    #[test]
    fn a_pump_gives_something() {
        for litres in [0.0, -1.0, f64::NAN] {
            let volume = Value::Quantity(Volume::from_litres(litres).into());
            refuses(RULE, |d| d.package.pump = altered(&d.package.pump, "per_cycle", volume));
        }
    }

    #[test]
    fn a_day_has_24_hours_and_a_week_7_days() {
        let hours =
            |h: f64| move |d: &mut Design| d.conditions.duty.hours_per_day = Time::from_hours(h).into();
        let days =
            |n: f64| move |d: &mut Design| d.conditions.duty.days_per_week = Count::from_number(n).into();
        accepts(RULE, hours(24.0));
        accepts(RULE, days(7.0));
        for wrong in [25.0, 0.0, -1.0] {
            refuses(RULE, hours(wrong));
            refuses(RULE, days(wrong));
        }
    }

    #[test]
    fn air_stands_in_order() {
        let bar = |b: f64| Entry::known(Pressure::from_bar(b));
        refuses(RULE, |d| d.conditions.air.as_mut().unwrap().lowest = bar(50.0));
        refuses(RULE, |d| d.conditions.air.as_mut().unwrap().possible = bar(1.0));
        refuses(RULE, |d| d.conditions.air.as_mut().unwrap().lowest = bar(-1.0));
    }

    fn known<T: Quantity>(si: f64) -> Entry<T> {
        Entry::known(T::from_si(si))
    }

    type Put = fn(&mut Design, f64);

    /// Every entry of the small design, and the settings.
    const PLACES: &[Put] = &[
        |d, x| d.conditions.site.altitude = known(x),
        |d, x| d.conditions.places[0].coldest = known(x),
        |d, x| d.conditions.places[1].normal = known(x),
        |d, x| d.conditions.places[2].hottest = known(x),
        |d, x| d.conditions.air.as_mut().unwrap().lowest = known(x),
        |d, x| d.conditions.air.as_mut().unwrap().highest = known(x),
        |d, x| d.conditions.air.as_mut().unwrap().possible = known(x),
        |d, x| d.conditions.air.as_mut().unwrap().dew_point = Some(known(x)),
        |d, x| d.conditions.duty.hours_per_day = known(x),
        |d, x| d.conditions.duty.days_per_week = known(x),
        |d, x| d.conditions.limits.age = known(x),
        |d, x| d.conditions.limits.event_time = known(x),
        |d, x| d.conditions.practice.rest_factor = known(x),
        |d, x| d.conditions.practice.stall_use = known(x),
        |d, x| d.conditions.practice.band_low = known(x),
        |d, x| d.conditions.practice.band_high = known(x),
        |d, x| d.conditions.practice.floor = known(x),
        |d, x| d.conditions.practice.back_pressure = known(x),
        |d, x| d.conditions.practice.fittings = known(x),
        |d, x| d.conditions.practice.inlet_lowest = known(x),
        |d, x| d.conditions.practice.entrained_air = known(x),
        |d, x| d.conditions.practice.disc_warmer = known(x),
        |d, x| d.points[0].duty = known(x),
        |d, x| d.points[1].back_pressure = Some(known(x)),
        |d, x| d.points[2].given.as_mut().unwrap().quantity = known(x),
        |d, x| d.points[3].given.as_mut().unwrap().interval = known(x),
        |d, x| {
            let entry = AnyEntry::known(AnyQuantity { dimension: Dimension::Ratio, si: x });
            d.points[0].entries[3] = PointEntry::Quantity(entry);
        },
        |d, x| d.network.nodes[1].legs[0].length = known(x),
        |d, x| d.network.nodes[4].legs[0].rise = known(x),
        |d, x| d.control.pause = Time::from_seconds(x),
        |d, x| d.control.time_out = Time::from_seconds(x),
        |d, x| d.cutting_allowance = known(x),
    ];

    fn stops(design: &Design) -> bool {
        check(design).of_rule(RULE).any(|finding| finding.severity == Severity::Stop)
    }

    #[test]
    fn what_is_no_number_is_a_stop_wherever_it_stands() {
        for (number, put) in PLACES.iter().enumerate() {
            for none in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
                let mut design = sound();
                put(&mut design, none);
                assert!(stops(&design), "place {number}");
            }
        }
    }

    proptest! {
        #[test]
        fn whatever_number_stands_in_an_entry_the_checker_answers(
            puts in proptest::collection::vec((0..PLACES.len(), proptest::num::f64::ANY), 1..4),
        ) {
            let mut design = sound();
            puts.iter().for_each(|(place, x)| PLACES[*place](&mut design, *x));
            // A place that was filled twice holds the last number.
            let last = |place: usize| puts.iter().rev().find(|(p, _)| *p == place).is_some_and(|(_, x)| !x.is_finite());
            let none = puts.iter().any(|(place, _)| last(*place));
            prop_assert!(stops(&design) || !none);
        }
    }
}
