//! A small machine.

use oilway_physics::points::{Around, Severity};
use oilway_units::{Count, Density, Frequency, Temperature};

use crate::said::*;

/// Rates of the house's demonstration machine, a crate washer with its stacker: orders of magnitude that a practised eye
/// expects (own, judged), and what its builder's manual says (invented with the machine).
#[test]
fn the_points_of_a_crate_washer_need_what_a_practised_eye_expects() {
    let place = |celsius: f64, water: u8| Around {
        temperature: Temperature::from_celsius(celsius),
        density: Density::from_kilograms_per_cubic_metre(890.0),
        severity: Severity { water, ..Severity::default() },
        ..clean()
    };
    let seldom = Around { duty: 0.6, ..place(20.0, 2) };
    let bush = |id, d: f64, l: f64| Said::of(id).put("bore", mm(d)).put("length", mm(l));
    let swing = bush("plain bearing", 30.0, 35.0).rate(&place(60.0, 3));
    assert!((0.02..0.09).contains(&swing), "swing {swing}");
    let pin = bush("pin", 20.0, 25.0).rate(&place(20.0, 2));
    assert!((0.005..0.02).contains(&pin), "pin {pin}");
    let belt = bearing(30.0, 62.0, 16.0, 90.0).rate(&place(4.0, 1));
    assert!(belt < 0.001, "cold belt {belt}");
    let guide = Said::of("linear guide")
        .put("size", mm(35.0))
        .put("travel_per_cycle", mm(3200.0))
        .put("cycles", Frequency::from_per_minute(12.5))
        .rate(&seldom);
    // The manual says 0.06.
    assert!((0.03..0.12).contains(&guide), "guide {guide}");
    let screw = Said::of("ball screw")
        .put("diameter", mm(40.0))
        .put("lead", mm(10.0))
        .put("speed", Frequency::from_per_minute(600.0))
        .rate(&seldom);
    assert!((0.005..0.3).contains(&screw), "screw {screw}");
    let ring = Said::of("slewing ring")
        .put("raceway", mm(1200.0))
        .put("ball", mm(25.0))
        .put("ports", Count::from_number(4.0))
        .rate(&place(20.0, 2));
    // The manual says 0.056 for each of four ports.
    assert!((0.02..0.17).contains(&ring), "ring {ring}");
    // With what the manual gives the washer's chain, guides and ring, and a floor of 0.01 for the ten slow bearings.
    let total = 6.0 * 0.140 + 4.0 * 0.06 + 0.225 + 4.0 * swing + 4.0 * pin + 2.0 * screw + 10.0 * 0.01;
    assert!((1.2..5.0).contains(&total), "total {total}");
}
