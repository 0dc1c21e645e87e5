//! Conversion factors against published ones, and the table of units as a whole.
//!
//! Source of the exact factors: NIST Special Publication 811, appendix B, and the definitions it rests on (inch and
//! pound of 1959, standard acceleration of free fall of 1901); standing: memory. Values marked "derived" follow from
//! those by the arithmetic shown.

use oilway_units::*;
use std::collections::BTreeMap;

#[track_caller]
fn agrees(value: f64, published: f64, relative: f64) {
    assert!((value - published).abs() <= relative * published.abs(), "{value} is not {published}");
}

/// As exact as a double can be.
const EXACT: f64 = 3.0 * f64::EPSILON;

#[test]
fn lengths_agree_with_nist_sp_811() {
    agrees(Length::from_inches(1.0).millimetres(), 25.4, EXACT); // memory, exact by definition
    agrees(Length::from_feet(1.0).metres(), 0.3048, EXACT); // memory, exact by definition
    agrees(Length::from_yards(1.0).metres(), 0.9144, EXACT); // memory, exact by definition of the yard of 1959
}

#[test]
fn volumes_agree_with_nist_sp_811() {
    agrees(Volume::from_cubic_inches(1.0).cubic_centimetres(), 16.387_064, EXACT); // memory, exact: 2.54³
    agrees(Volume::from_gallons(1.0).litres(), 3.785_411_784, EXACT); // memory, exact: 231 in³
    agrees(Volume::from_fluid_ounces(1.0).cubic_centimetres(), 29.573_53, 1e-7); // memory, seven figures
}

#[test]
fn masses_agree_with_nist_sp_811() {
    agrees(Mass::from_pounds(1.0).grams(), 453.592_37, EXACT); // memory, exact by definition
    agrees(Mass::from_ounces(1.0).grams(), 28.349_52, 1e-6); // memory, seven figures
}

#[test]
fn pressures_agree_with_nist_sp_811() {
    agrees(Pressure::from_psi(1.0).kilopascals(), 6.894_757, 1e-7); // memory, seven figures
    agrees(Pressure::from_psi(5000.0).bar(), 344.738, 1e-6); // derived: 5000 · 0.068 947 57 bar
    agrees(Pressure::from_kilograms_force_per_square_centimetre(1.0).bar(), 0.980_665, EXACT); // memory, exact
    agrees(AbsolutePressure::STANDARD_ATMOSPHERE.psi(), 14.6959, 1e-5); // memory
}

#[test]
fn other_factors_agree_with_nist_sp_811() {
    agrees(Force::from_pounds_force(1.0).newtons(), 4.448_222, 1e-7); // memory, seven figures
    agrees(Torque::from_pound_feet(1.0).newton_metres(), 1.355_818, 1e-6); // memory, seven figures
    agrees(Torque::from_pound_inches(1.0).newton_metres(), 0.112_984_8, 1e-6); // memory, seven figures
    agrees(Power::from_horsepower(1.0).watts(), 745.699_9, 1e-7); // memory: 550 ft·lbf/s
    agrees(Flow::from_gallons_per_minute(1.0).litres_per_minute(), 3.785_411_784, EXACT); // memory, exact
    agrees(Flow::from_cubic_feet_per_minute(1.0).litres_per_minute(), 28.316_85, 1e-6); // memory, seven figures
    agrees(Density::from_pounds_per_cubic_foot(1.0).kilograms_per_cubic_metre(), 16.018_46, 1e-6); // memory
    agrees(Viscosity::from_poise(1.0).pascal_seconds(), 0.1, EXACT); // memory, exact
    agrees(PressurePerLength::from_psi_per_foot(1.0).kilopascals_per_metre(), 22.620_59, 1e-6); // derived: 6.894757/0.3048
}

#[test]
fn fixed_points_of_temperature_agree() {
    // Common practice: ice 32 °F, boiling water 212 °F; −40 is the same in both scales.
    for (celsius, fahrenheit) in [(0.0, 32.0), (100.0, 212.0), (-40.0, -40.0), (20.0, 68.0)] {
        assert!((Temperature::from_fahrenheit(fahrenheit).celsius() - celsius).abs() < 1e-10);
        assert!((Temperature::from_celsius(celsius).fahrenheit() - fahrenheit).abs() < 1e-10);
    }
}

#[test]
fn products_of_quantities_have_the_right_value() {
    let dose = Volume::from_cubic_centimetres(0.6);
    assert_eq!((dose * Frequency::from_per_hour(10.0)).cubic_centimetres_per_minute(), 0.1);
    agrees((dose / Flow::from_cubic_centimetres_per_minute(0.1)).minutes(), 6.0, EXACT);
    agrees((PressurePerLength::from_bar_per_metre(2.0) * Length::from_metres(3.0)).bar(), 6.0, EXACT);
    agrees((Pressure::from_bar(10.0) * Area::from_square_centimetres(2.0)).newtons(), 200.0, EXACT);
}

#[test]
fn every_unit_is_found_by_its_symbol_and_by_each_spelling() {
    for dimension in Dimension::ALL {
        assert!(!Unit::of(*dimension).is_empty());
        for unit in Unit::of(*dimension) {
            assert_eq!(Unit::named(*dimension, unit.symbol()), Some(unit));
            for spelling in unit.spellings() {
                assert_eq!(Unit::named(*dimension, spelling), Some(unit), "{spelling}");
            }
        }
    }
}

#[test]
fn no_spelling_means_two_units_of_one_dimension() {
    for dimension in Dimension::ALL {
        let mut owners: BTreeMap<&str, &str> = BTreeMap::new();
        for unit in Unit::of(*dimension) {
            for spelling in unit.spellings().iter().chain([&unit.symbol()]) {
                assert_eq!(
                    owners.insert(spelling, unit.symbol()),
                    None,
                    "{spelling} of {}",
                    dimension.name()
                );
            }
        }
    }
}

#[test]
fn one_unit_written_in_many_ways_is_one_unit() {
    for spelling in ["cm³/min", "cm^3/min", "cm3 / min", "CM3/MIN", "cc per min", "ml/min", "cm³ per minute"]
    {
        assert_eq!(Unit::named(Dimension::Flow, spelling).map(Unit::symbol), Some("cm³/min"), "{spelling}");
    }
    for spelling in ["dm³/(s·bar)", "dm3/(s bar)", "L/(s*bar)", "l/s/bar", "dm³ / ( s · bar )"] {
        assert!(Unit::named(Dimension::Conductance, spelling).is_some(), "{spelling}");
    }
    for spelling in ["1/min", "/min", "min⁻¹", "min^-1", "per minute", "rpm", "strokes per min", "cycles/min"]
    {
        assert_eq!(
            Unit::named(Dimension::Frequency, spelling).map(Unit::symbol),
            Some("per min"),
            "{spelling}"
        );
    }
    for spelling in ["Pa s", "Pa·s", "Pa*s", "Pa.s", "Pas"] {
        assert_eq!(Unit::named(Dimension::Viscosity, spelling).map(Unit::symbol), Some("Pa·s"), "{spelling}");
    }
    for spelling in ["in.", "IN", "Inch", "\"", "″", "''"] {
        assert_eq!(Unit::named(Dimension::Length, spelling).map(Unit::symbol), Some("in"), "{spelling}");
    }
}

#[test]
fn a_wrong_capital_is_not_forgiven_where_a_prefix_hangs_on_it() {
    assert_eq!(Unit::named(Dimension::Pressure, "mpa"), None);
    assert_eq!(Unit::named(Dimension::Pressure, "MPA"), None);
    assert_eq!(Unit::named(Dimension::Pressure, "BAR").map(Unit::symbol), Some("bar"));
}

#[test]
fn the_table_converts_as_the_quantity_types_do() {
    let unit = |dimension, symbol| Unit::named(dimension, symbol).unwrap();
    assert_eq!(unit(Dimension::Length, "in").to_si(0.75), Length::from_inches(0.75).metres());
    assert_eq!(unit(Dimension::Temperature, "°F").to_si(68.0), Temperature::from_fahrenheit(68.0).kelvin());
    assert_eq!(unit(Dimension::Pressure, "psi").of_si(1e5), Pressure::from_bar(1.0).psi());
}
