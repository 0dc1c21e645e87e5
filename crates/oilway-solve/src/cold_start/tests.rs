use oilway_units::{Entry, Length, Pressure, Ratio, Temperature, TemperatureDifference};
use proptest::prelude::*;

use super::*;

fn celsius(value: f64) -> Temperature {
    Temperature::from_celsius(value)
}

/// Forty metres of half inch tube, a yield stress measured today, a pump of 118 bar.
fn telephone() -> ColdStart {
    ColdStart {
        temperature: Entry::known(celsius(-18.0)),
        grease: Stiffness::Told {
            yield_stress: Entry::known(Pressure::from_pascals(900.0)),
            at: None,
            halving: Entry::known(TemperatureDifference::from_kelvins(20.0)),
        },
        rest: Entry::known(Ratio::from_fraction(1.0)),
        length: Entry::known(Length::from_metres(40.0)),
        bore: Entry::known(Length::from_millimetres(9.4)),
        wider: Length::from_millimetres(11.75),
        push: Push::Told(Entry::known(Pressure::from_bar(118.0))),
        end: Entry::known(Pressure::ZERO),
        reset: None,
        use_share: Ratio::from_fraction(0.9),
    }
}

fn spread() -> ColdStart {
    ColdStart {
        grease: Stiffness::Told {
            yield_stress: Entry::range(Pressure::from_pascals(500.0), Pressure::from_pascals(900.0)),
            at: None,
            halving: Entry::range(
                TemperatureDifference::from_kelvins(15.0),
                TemperatureDifference::from_kelvins(40.0),
            ),
        },
        length: Entry::range(Length::from_metres(36.0), Length::from_metres(44.0)),
        ..telephone()
    }
}

fn degrees(reach: Reach) -> f64 {
    match reach {
        Reach::DownTo(limit) => limit.celsius(),
        other => panic!("{other:?}"),
    }
}

#[test]
fn forty_metres_of_nine_point_four_at_nine_hundred_pascals_hold_153_bar() {
    // 4 · 900 Pa · 40 m / 9.4 mm, by hand (own).
    let answer = telephone().answer();
    assert_eq!(format!("{:.0}", answer.need.typical.bar()), "153");
    assert_eq!((answer.need.low, answer.need.high), (answer.need.typical, answer.need.typical));
    assert_eq!((answer.verdict, answer.starts), (Verdict::WillNotWork, false));
}

#[test]
fn the_coldest_start_is_where_the_closed_form_puts_it() {
    // 2^(-(T - T0) / b) · need = have, solved for T (own).
    let wanted = |need: f64| -18.0 + 20.0 * (need / 118.0_f64).log2();
    let answer = telephone().answer();
    let need = 4.0 * 900.0 * 40.0 / 0.0094 / 1e5;
    assert!((degrees(answer.coldest[1]) - wanted(need)).abs() < 0.06);
    assert_eq!(answer.plan.map(|t| t.celsius() - degrees(answer.coldest[1])).unwrap().round(), 3.0);
    // The classes 2 and 1 have 500 and 200 Pa; the bore grows by a quarter.
    assert!((degrees(answer.cures[0].1) - wanted(need * 0.4)).abs() < 0.06);
    assert!((degrees(answer.cures[1].1) - wanted(need / 1.25)).abs() < 0.06);
    assert_eq!(answer.cures[2], (Cure::Traced, Reach::Beyond));
}

#[test]
fn tracing_does_not_help_a_line_that_does_not_start_at_ten_degrees_either() {
    let short = ColdStart { push: Push::Told(Entry::known(Pressure::from_bar(50.0))), ..telephone() };
    assert_eq!(short.answer().cures[2], (Cure::Traced, Reach::Never));
}

#[test]
fn the_verdict_turns_with_the_pump() {
    let of = |bar: f64| {
        ColdStart { push: Push::Told(Entry::known(Pressure::from_bar(bar))), ..telephone() }.answer()
    };
    assert_eq!(of(150.0).verdict, Verdict::WillNotWork);
    // Nine tenths of 170.2 bar are 153.2 bar.
    assert_eq!(of(160.0).verdict, Verdict::WorksWithCare);
    assert_eq!(of(171.0).verdict, Verdict::Works);
    let open = Push::Told(Entry::range(Pressure::from_bar(140.0), Pressure::from_bar(180.0)));
    let answer = ColdStart { push: open, ..telephone() }.answer();
    assert_eq!(answer.verdict, Verdict::CannotTellYet);
    let turns = answer.open[0].turns_at.unwrap().si / 1e5;
    assert_eq!((answer.open[0].name, format!("{turns:.1}")), ("pressure", "153.2".to_owned()));
}

#[test]
fn what_turns_the_answer_comes_before_what_weighs_more() {
    let mut case = telephone();
    case.push = Push::Told(Entry::range(Pressure::from_bar(60.0), Pressure::from_bar(120.0)));
    case.bore = Entry::range(Length::from_millimetres(9.0), Length::from_millimetres(22.0));
    let open = case.answer().open;
    assert!(open[0].turns_at.is_some());
    assert!(open.windows(2).all(|pair| pair[0].turns_at.is_some() || pair[1].turns_at.is_none()));
}

#[test]
fn an_air_pump_gives_ratio_times_air_less_friction() {
    let push = Push::Air {
        ratio: Entry::known(Ratio::from_fraction(20.0)),
        air: Entry::known(Pressure::from_bar(6.0)),
        efficiency: Entry::known(Ratio::from_fraction(0.9)),
    };
    assert_eq!(ColdStart { push, ..telephone() }.answer().have.typical.bar().round(), 108.0);
}

#[test]
fn a_line_that_starts_but_does_not_vent_does_not_work() {
    let strong = ColdStart { push: Push::Told(Entry::known(Pressure::from_bar(300.0))), ..telephone() };
    assert_eq!(strong.answer().recharges, None);
    let stuck = ColdStart { reset: Some(Entry::known(Pressure::from_bar(40.0))), ..strong.clone() }.answer();
    assert_eq!((stuck.verdict, stuck.recharges), (Verdict::WillNotWork, Some(false)));
    let vents = ColdStart { reset: Some(Entry::known(Pressure::from_bar(200.0))), ..strong }.answer();
    assert_eq!((vents.verdict, vents.recharges), (Verdict::Works, Some(true)));
}

#[test]
fn the_plan_keeps_ahead_of_the_limit_and_of_what_the_supplier_states_and_is_silent_where_no_winter_is_meant()
{
    let down = |celsius_: f64| Reach::DownTo(celsius(celsius_));
    assert_eq!(plan(down(-9.0), None), Some(celsius(-6.0)));
    assert_eq!(plan(down(-40.0), Some(celsius(-20.0))), Some(celsius(-20.0)));
    assert_eq!(plan(down(8.0), None), Some(celsius(11.0)));
    assert_eq!(plan(down(10.0), None), None);
    assert_eq!((plan(Reach::Beyond, None), plan(Reach::Never, None)), (None, None));
}

#[test]
fn what_never_or_always_starts_says_so() {
    let with = |end: f64| ColdStart { end: Entry::known(Pressure::from_bar(end)), ..telephone() }.answer();
    assert_eq!((with(119.0).coldest[1], with(119.0).plan), (Reach::Never, None));
    let soft = ColdStart { length: Entry::known(Length::from_millimetres(100.0)), ..telephone() };
    assert_eq!(soft.answer().coldest[1], Reach::Beyond);
}

proptest! {
    #[test]
    fn colder_and_longer_ask_more(t in -40.0..40.0f64, colder in 0.1..30.0f64, metres in 1.0..200.0f64, more in 0.1..50.0f64) {
        let measured = |t: f64, metres: f64| {
            let mut case = telephone();
            if let Stiffness::Told { at, .. } = &mut case.grease {
                *at = Some(Entry::known(celsius(25.0)));
            }
            case.temperature = Entry::known(celsius(t));
            case.length = Entry::known(Length::from_metres(metres));
            case.answer()
        };
        let here = measured(t, metres);
        prop_assert!(measured(t - colder, metres).need.typical > here.need.typical);
        let longer = measured(t, metres + more);
        prop_assert!(longer.need.typical > here.need.typical);
        prop_assert!(longer.coldest[1].order(&here.coldest[1]).is_ge());
    }

    #[test]
    fn no_case_inside_the_ranges_lies_outside_the_bands(shares in prop::collection::vec(0.0..=1.0f64, 3)) {
        let answer = spread().answer();
        let mut case = spread();
        for ((_, entry), share) in case.entries().into_iter().filter(|(_, e)| e.is_open()).zip(&shares) {
            let si = entry.low_si() + (entry.high_si() - entry.low_si()) * share;
            entry.put_si(si);
        }
        let need = case.need(case.temperature.get(), AS_IS);
        prop_assert!(need.bar() >= answer.need.low.bar() - 1e-9 && need.bar() <= answer.need.high.bar() + 1e-9);
        let limit = case.reach(AS_IS);
        let (low, high) = (degrees(answer.coldest[0]), degrees(answer.coldest[2]));
        prop_assert!(degrees(limit) >= low - 0.06 && degrees(limit) <= high + 0.06);
    }

    #[test]
    fn every_cure_that_changes_the_line_pushes_the_limit_down(pascals in 100.0..3000.0f64) {
        let mut case = telephone();
        if let Stiffness::Told { yield_stress, .. } = &mut case.grease {
            *yield_stress = Entry::known(Pressure::from_pascals(pascals));
        }
        let answer = case.answer();
        for (_, reach) in &answer.cures[..2] {
            prop_assert!(reach.order(&answer.coldest[1]).is_le());
        }
    }
}
