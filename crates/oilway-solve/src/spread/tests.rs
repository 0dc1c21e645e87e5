//! Spans against samples and corners that the study does not take, and turning points by hand.

use oilway_model::Job;
use oilway_units::{Entry, Length, Pressure, Quantity, Time};

use super::*;
use crate::design;
use crate::testing::{bar, catalogue, hall, span_grease};

/// The hall with a range of rest factor, of back pressure and of the length of one tail.
fn open() -> Job {
    let mut job = hall();
    job.conditions.practice.rest_factor = Entry::assumed(
        Ratio::from_fraction(1.0),
        Ratio::from_fraction(1.5),
        Ratio::from_fraction(4.0),
        "solve-range-said",
    );
    job.conditions.practice.back_pressure = Entry::range(bar(2.0), bar(8.0));
    job.points[0].route[0].length = Entry::range(Length::from_metres(1.0), Length::from_metres(3.0));
    job
}

fn studied(job: &Job) -> (Design, Study) {
    let design = design(job, catalogue()).unwrap();
    let study = study(&design);
    (design, study)
}

#[test]
fn a_job_without_ranges_has_spans_without_width_and_nothing_to_ask() {
    let (_, study) = studied(&hall());
    assert!(study.assumptions.is_empty());
    assert!(study.spans.iter().all(|s| s.low == s.typical && s.high == s.typical));
}

#[test]
fn every_sampled_design_lies_inside_the_spans() {
    let (design, study) = studied(&open());
    // Points that the study itself does not take: the same sequence in other bases.
    for run in 1..=60 {
        let mut work = design.clone();
        let mut number = 0;
        work.visit_entries(&mut |_, entry| {
            if entry.is_open() {
                let share = halton(run, [7, 11, 13][number], 0);
                entry.put_si(entry.low_si() + (entry.high_si() - entry.low_si()) * share);
                number += 1;
            }
        });
        for (name, value) in keys(&work).values {
            let span = study.spans.iter().find(|s| s.name == name).unwrap();
            // The coldest day is found to a twentieth of a kelvin.
            let room = if name == "cold.limit" { 0.05 } else { 1e-9 * span.high.si.abs() };
            let inside = span.low.si - room..=span.high.si + room;
            assert!(inside.contains(&value.si), "{name}: {} outside {inside:?}", value.si);
        }
    }
}

#[test]
fn the_ends_of_each_entry_lie_inside_the_spans() {
    let (design, study) = studied(&open());
    for end in [false, true] {
        for chosen in 0..3 {
            let mut work = design.clone();
            let mut number = 0;
            work.visit_entries(&mut |_, entry| {
                if entry.is_open() {
                    let end = if end { entry.high_si() } else { entry.low_si() };
                    entry.put_si(if number == chosen { end } else { entry.typical_si() });
                    number += 1;
                }
            });
            for (name, value) in keys(&work).values {
                let span = study.spans.iter().find(|s| s.name == name).unwrap();
                assert!(value.si >= span.low.si - 1e-9 && value.si <= span.high.si + 1e-9, "{name}");
            }
        }
    }
}

#[test]
fn the_verdict_turns_where_the_start_meets_the_stall() {
    let (design, study) = studied(&open());
    let rest = study.assumptions.iter().find(|a| a.at == "practice.rest_factor").unwrap();
    let turns_at: Ratio = rest.turns_at.unwrap().get().unwrap();
    // By hand: stall = rest · Σ 4 τ0 L / D + fixed, for the path that starts hardest.
    let answer = evaluate(&design, &mut Ledger::off());
    let cold = &answer.seasons[0];
    let hand = cold.paths.iter().map(|p| {
        let fixed = p.start - p.residual;
        (cold.pump.stall - fixed) / p.residual
    });
    let hand = hand.fold(f64::INFINITY, f64::min);
    // Twelve halvings of the range from 1.5 to 4.
    assert!((turns_at.fraction() - hand).abs() < 0.002, "{} {hand}", turns_at.fraction());
    assert_eq!(study.assumptions[0].at, "practice.rest_factor", "what turns the verdict is asked first");
}

#[test]
fn a_need_that_may_be_larger_turns_the_verdict_where_its_band_ends() {
    let mut job = hall();
    let given = job.points[0].given.as_mut().unwrap();
    given.interval = Entry::assumed(
        Time::from_hours(0.5),
        Time::from_hours(1.0),
        Time::from_hours(1.1),
        "solve-range-said",
    );
    let (design, study) = studied(&job);
    let asked = study.assumptions.iter().find(|a| a.at == "point.pin 1.given.interval").unwrap();
    let turns_at: Time = asked.turns_at.unwrap().get().unwrap();
    let answer = evaluate(&design, &mut Ledger::off());
    // Quantity over interval is nine tenths of what is delivered.
    let hand =
        design.points[0].given.as_ref().unwrap().quantity.get() / (answer.deliveries[0].delivered / 0.9);
    assert!((turns_at / hand - 1.0).abs() < 0.001, "{turns_at:?} {hand:?}");
}

#[test]
fn moving_the_rule_that_says_how_much_is_enough_turns_no_verdict() {
    let mut job = hall();
    let ratio = Ratio::from_fraction;
    job.conditions.practice.band_low = Entry::assumed(ratio(0.8), ratio(0.9), ratio(1.4), "solve-range-said");
    let (_, study) = studied(&job);
    let asked = study.assumptions.iter().find(|a| a.at == "practice.band_low").unwrap();
    assert!(asked.turns_at.is_none());
}

#[test]
fn the_design_itself_stays_as_it_was() {
    let design = design(&open(), catalogue()).unwrap();
    let before = format!("{design:?}");
    let _ = study(&design);
    assert_eq!(format!("{design:?}"), before);
}

#[test]
fn a_grease_known_by_its_class_carries_its_spread_to_the_peak() {
    let mut job = hall();
    job.conditions.lubricant = span_grease();
    let (_, study) = studied(&job);
    let peak = study.spans.iter().find(|s| s.name == "peak.cold.start").unwrap();
    // 300 to 900 Pa around 500: the yielding part of the start goes along in proportion.
    let of = |q: AnyQuantity| Pressure::from_si(q.si).bar();
    let fixed = 8.0 + 5.0;
    let ratio = (of(peak.high) - fixed) / (of(peak.low) - fixed);
    assert!((ratio - 3.0).abs() < 1e-6, "{ratio}");
}

#[test]
fn the_sequence_fills_its_range_evenly() {
    for base in [2, 3, 5] {
        let mut points: Vec<f64> = (1..=64).map(|i| halton(i, base, 0)).collect();
        points.sort_by(f64::total_cmp);
        let widest = points.windows(2).map(|w| w[1] - w[0]).fold(0.0, f64::max);
        assert!(widest < 4.0 / 64.0, "base {base}: {widest}");
    }
}
