//! Pump and reservoir: worked cases that take several formulas, and laws that hold for every filling.

use oilway_physics::air::{area_ratio, stall_pressure};
use oilway_physics::oil::oil_density;
use oilway_physics::pump::{
    calendar_interval, compression_loss, expansion_ratio, feed_pressure, follower_pressure,
    largest_stroke_rate, lid_force, refill_interval, refill_time, reservoir_gross, stroke_volume,
};
use oilway_units::{
    AbsolutePressure, Count, Density, Flow, Force, Length, Mass, Pressure, Ratio, Temperature, Time, Volume,
};
use proptest::prelude::*;

fn ratio(fraction: f64) -> Ratio {
    Ratio::from_fraction(fraction)
}

#[test]
fn a_reservoir_of_30_litres_lasts_83_weeks_and_one_of_8_lasts_22() {
    // Own figures of the practice notes: 85 % usable, 3.5 cm³/h, 88 h a week, printed as whole weeks.
    let weeks = |litres: f64| {
        let use_rate = Flow::from_cubic_centimetres_per_hour(3.5);
        let running = refill_interval(Volume::from_litres(litres), ratio(0.85), use_rate);
        calendar_interval(running, Time::from_hours(16.0), Count::from_number(5.5)).weeks()
    };
    assert!(
        (weeks(30.0) - 83.0).abs() < 0.5 && (weeks(8.0) - 22.0).abs() < 0.5,
        "{} {}",
        weeks(30.0),
        weeks(8.0)
    );
}

#[test]
fn a_plate_of_40_kg_adds_a_fifteenth_to_the_feed_of_cold_grease() {
    // Own figures, cases F09 and F11: 0.891 and 0.978 bar, three figures.
    let feed = |follower: Pressure| {
        feed_pressure(
            AbsolutePressure::from_bar(1.013),
            AbsolutePressure::from_bar(0.2),
            Density::from_kilograms_per_cubic_metre(900.0),
            Length::from_metres(0.25),
            follower,
        )
        .bar()
    };
    let newtons = Force::from_newtons;
    let plate = follower_pressure(
        Length::from_millimetres(300.0),
        Mass::from_kilograms(40.0),
        newtons(0.0),
        newtons(0.0),
    );
    let spring =
        follower_pressure(Length::from_millimetres(200.0), Mass::ZERO, newtons(600.0), newtons(150.0));
    assert!((feed(plate) - 0.891).abs() < 5e-4, "{}", feed(plate));
    assert!((feed(spring) - 0.978).abs() < 5e-4, "{}", feed(spring));
}

#[test]
fn the_starving_pump_may_make_15_6_strokes_a_minute() {
    // Own figure, case F12: 3 cm³ at 1.561 cm³/s, suction half of the cycle.
    let flow = Flow::from_cubic_centimetres_per_second(1.561);
    let refill = refill_time(Volume::from_cubic_centimetres(3.0), flow).unwrap();
    assert!((largest_stroke_rate(refill, ratio(0.5)).per_minute() - 15.6).abs() < 0.05);
}

#[test]
fn a_fill_pump_of_50_to_1_dead_heads_at_300_bar_and_one_bar_lifts_the_lid_with_7_kn() {
    // Own figures, case F32.
    let dead = stall_pressure(ratio(50.0), Pressure::from_bar(6.0), ratio(1.0));
    assert!((dead.bar() - 300.0).abs() < 1e-9);
    let lid = lid_force(Pressure::from_bar(1.0), Length::from_millimetres(300.0));
    assert!((lid.kilonewtons() - 7.07).abs() < 0.005);
}

#[test]
fn the_growth_agrees_with_the_densities_of_the_oil_family() {
    // Two ways to the same standard: the ratio of two densities, and the ratio of volumes written out here.
    for (rho, cold, hot) in [(890.0, -20.0, 40.0), (850.0, 0.0, 80.0), (950.0, -10.0, 15.0)] {
        let density = |celsius: f64| {
            oil_density(Density::from_kilograms_per_cubic_metre(rho), Temperature::from_celsius(celsius))
                .unwrap()
        };
        let growth = expansion_ratio(
            Density::from_kilograms_per_cubic_metre(rho),
            Temperature::from_celsius(cold),
            Temperature::from_celsius(hot),
        );
        // The 15 °C coefficient is the standard's 60 °F one rounded to four figures.
        let by_density = density(cold) / density(hot);
        assert!((growth.fraction() / by_density - 1.0).abs() < 2e-4, "{} {by_density}", growth.fraction());
    }
}

proptest! {
    #[test]
    fn a_reservoir_lasts_the_period_that_it_was_sized_for(
        use_rate in 0.1_f64..10_000.0, days in 1.0_f64..400.0, usable in 0.3_f64..1.0, reserve in 0.0_f64..5.0,
    ) {
        let q = Flow::from_cubic_centimetres_per_hour(use_rate);
        let (period, reserve) = (Time::from_days(days), Volume::from_litres(reserve));
        let gross = reservoir_gross(q, period, reserve, ratio(1.0), ratio(usable));
        let lasts = refill_interval(gross, ratio(usable), q);
        prop_assert!(((lasts.seconds() - (reserve / q).seconds()) / period.seconds() - 1.0).abs() < 1e-9);
    }

    #[test]
    fn growth_chains_through_any_temperature_between(
        rho in 800.0_f64..1000.0, cold in -40.0_f64..20.0, between in -40.0_f64..80.0, hot in 20.0_f64..80.0,
    ) {
        let x = |from: f64, to: f64| expansion_ratio(
            Density::from_kilograms_per_cubic_metre(rho), Temperature::from_celsius(from), Temperature::from_celsius(to),
        ).fraction();
        prop_assert!((x(cold, between) * x(between, hot) / x(cold, hot) - 1.0).abs() < 1e-12);
        prop_assert!(x(cold, hot) >= 1.0);
    }

    #[test]
    fn what_the_air_presses_in_the_lubricant_gives_out(
        big in 30.0_f64..200.0, small in 5.0_f64..30.0, stroke in 10.0_f64..200.0, air in 1.0_f64..10.0,
    ) {
        // Work in equals work out: stall pressure times the stroke of the plunger, air pressure times that of the piston.
        let (d, piston) = (Length::from_millimetres(small), Length::from_millimetres(big));
        let s = Length::from_millimetres(stroke);
        let air = Pressure::from_bar(air);
        let stall = stall_pressure(area_ratio(piston, d), air, ratio(1.0));
        let out = stall.pascals() * stroke_volume(d, s, ratio(1.0)).cubic_metres();
        let taken = air.pascals() * stroke_volume(piston, s, ratio(1.0)).cubic_metres();
        prop_assert!((out / taken - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_stiffer_lubricant_loses_less(dead in 0.1_f64..50.0, bar in 1.0_f64..400.0, k in 100.0_f64..2000.0) {
        let loss = |k: f64| compression_loss(
            Volume::from_cubic_centimetres(dead), Pressure::from_bar(bar), Pressure::from_megapascals(k),
        );
        prop_assert!(loss(2.0 * k) < loss(k));
        prop_assert!((loss(2.0 * k) / loss(k) - 0.5).abs() < 1e-12);
    }
}
