//! Both sides of the choice of pump, setting, disc and bores.

use oilway_model::Choice;
use oilway_physics::Ledger;
use oilway_units::Length;
use proptest::prelude::*;

use super::*;
use crate::testing::{bar, catalogue, dairy, hall, known, without_air};
use crate::{design, evaluate};

#[test]
fn a_step_of_the_regulator_is_kept_to_its_own_digits() {
    let step = bar(0.1);
    assert_eq!(on_step(bar(5.148), step, libm::floor), bar(5.1));
    assert_eq!(on_step(bar(5.148), step, libm::ceil), bar(5.2));
    // 51 tenths land on themselves in both directions.
    assert_eq!(on_step(bar(0.1) * 51.0, step, libm::floor), bar(5.1));
    assert_eq!(on_step(bar(0.1) * 51.0, step, libm::ceil), bar(5.1));
}

#[test]
fn the_setting_is_the_least_that_serves_with_its_margin() {
    for job in [hall(), dairy()] {
        let design = design(&job, catalogue()).unwrap();
        let answer = evaluate(&design, &mut Ledger::off());
        let cold = &answer.seasons[0];
        let need = cold.paths[cold.worst_start].start_rested.max(cold.paths[cold.worst_moving].moving);
        let stall = cold.pump.stall;
        let per_step = stall.bar() / design.package.air_setting.unwrap().bar() * 0.1;
        assert!(need.bar() <= 0.9 * stall.bar() + 1e-9, "{}: {need:?} {stall:?}", job.name);
        assert!(need.bar() > 0.9 * (stall.bar() - per_step), "{}: a step less would do", job.name);
    }
}

#[test]
fn the_pump_stalls_below_what_the_disc_stands_for_long_and_the_disc_bursts_below_the_weakest_part() {
    for job in [hall(), dairy(), without_air()] {
        let answer = evaluate(&design(&job, catalogue()).unwrap(), &mut Ledger::off());
        let p = &answer.protection;
        assert!(p.working <= p.steady_maximum.unwrap(), "{}", job.name);
        assert!(p.highest_burst.unwrap() <= p.weakest.1, "{}", job.name);
    }
}

#[test]
fn a_given_setting_that_no_disc_stands_is_kept_and_lame() {
    let mut job = hall();
    job.package.pump = Choice::Given("10029".to_owned());
    job.package.disc = Choice::Given("10017".to_owned());
    job.package.regulator = Choice::Given(bar(5.5));
    let design = design(&job, catalogue()).unwrap();
    assert_eq!(design.package.air_setting, Some(bar(5.5)));
    let protection = evaluate(&design, &mut Ledger::off()).protection;
    // 5.5 · 19 = 104.5 bar against 67.7 bar of the 90 bar disc: kept, for the checker to stop it.
    assert!(protection.working > protection.steady_maximum.unwrap());
    assert!(protection.highest_setting.unwrap() < bar(5.5));
}

#[test]
fn with_the_disc_open_a_given_setting_finds_a_disc_that_stands_it() {
    let mut job = hall();
    job.package.pump = Choice::Given("10029".to_owned());
    job.package.regulator = Choice::Given(bar(5.5));
    let design = design(&job, catalogue()).unwrap();
    let protection = evaluate(&design, &mut Ledger::off()).protection;
    assert!(protection.working <= protection.steady_maximum.unwrap());
}

#[test]
fn without_air_an_electric_pump_of_the_supply_is_taken() {
    let design = design(&without_air(), catalogue()).unwrap();
    let pump = Pump::of(&design.package.pump).unwrap();
    assert_eq!(pump.drive, Drive::Electric);
    assert_eq!(pump.voltage, Some(oilway_units::Voltage::from_volts(24.0)));
    let package = &design.package;
    assert!(package.valve.is_none() && package.regulator.is_none() && package.air_setting.is_none());
}

#[test]
fn without_air_and_current_there_is_no_pump() {
    let mut job = without_air();
    job.conditions.electric = None;
    let obstacles = design(&job, catalogue()).unwrap_err();
    assert_eq!(
        (obstacles[0].at.as_str(), obstacles[0].what.key),
        ("package.pump", "solve-none-in-catalogue")
    );
}

#[test]
fn a_place_too_cold_for_a_pump_leaves_it_out() {
    let mut job = hall();
    job.conditions.places[0].coldest = known(oilway_units::Temperature::from_celsius(-22.0));
    let design = design(&job, catalogue()).unwrap();
    let pump = Pump::of(&design.package.pump).unwrap();
    assert!(pump.coldest <= oilway_units::Temperature::from_celsius(-22.0), "{:?}", pump.coldest);
}

#[test]
fn a_job_that_no_pump_can_serve_is_still_drawn() {
    let mut job = hall();
    job.points[0].back_pressure = Some(known(bar(600.0)));
    let design = design(&job, catalogue()).unwrap();
    let answer = evaluate(&design, &mut Ledger::off());
    assert_eq!(answer.seasons[0].paths[0].flow, Flow::ZERO);
    assert!(answer.seasons[0].event_time.is_none());
    // The others still move.
    assert!(answer.seasons[0].paths[1].flow > Flow::ZERO);
}

#[test]
fn a_pump_for_much_grease_stands_on_a_reservoir_that_lasts() {
    let mut job = hall();
    for point in &mut job.points {
        point.given.as_mut().unwrap().quantity = known(oilway_units::Volume::from_cubic_centimetres(5.0));
    }
    // 30 cm³/h over 800 h are 24 L: more than any reservoir on the small block holds.
    let design = design(&job, catalogue()).unwrap();
    let refill = evaluate(&design, &mut Ledger::off()).supply.refill;
    assert!(refill >= oilway_units::Time::from_weeks(8.0) * 0.999, "{} weeks", refill.weeks());
    assert!(takes_pump(&design.package.block, &design.package.pump));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]
    #[test]
    fn whatever_the_length_of_the_main_the_package_holds_together(metres in 1.0_f64..60.0) {
        let mut job = hall();
        job.dividers[0].route[0].length = known(Length::from_metres(metres));
        let design = design(&job, catalogue()).unwrap();
        let p = evaluate(&design, &mut Ledger::off()).protection;
        prop_assert!(p.working <= p.steady_maximum.unwrap() * HAIR);
        prop_assert!(p.highest_burst.unwrap() <= p.weakest.1);
        prop_assert!(takes_pump(&design.package.block, &design.package.pump));
    }
}
