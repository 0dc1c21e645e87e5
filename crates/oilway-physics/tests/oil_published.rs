//! Published values of oils that need more than one formula or a table.

use oilway_physics::oil::*;
use oilway_testkit::{Check, published};
use oilway_units::{PerPressure, Pressure, Ratio, Temperature, Viscosity};

#[test]
fn the_viscosity_in_a_cold_line_under_pressure_comes_out_of_the_chain() {
    let rows = published("oil/viscosity-in-the-line");
    assert_eq!(rows.len(), 6);
    for check in rows {
        let (cool, warm) = (Temperature::from_celsius(40.0), Temperature::from_celsius(100.0));
        let temperature = check.given("temperature");
        let kinematic = walther_viscosity(
            temperature,
            cool,
            check.given("cool_viscosity"),
            warm,
            check.given("warm_viscosity"),
        );
        let density = oil_density(check.given("density_15"), temperature);
        let dynamic =
            kinematic.zip(density).map(|(kinematic, density)| dynamic_viscosity(kinematic, density));
        let pressed =
            dynamic.map(|eta| roelands_viscosity(eta, check.given("pressure"), check.given("exponent")));
        check.holds_or_refuses("result", pressed);
    }
}

#[test]
fn every_viscosity_grade_is_as_the_table_prints_it() {
    let rows = published("oil/viscosity-grades");
    assert_eq!(rows.len(), 3 * GRADES.len());
    for check in rows {
        let number = check.given_word("grade").trim_start_matches("VG ").parse().expect("a grade number");
        let grade = grade(number).expect("a grade of the table");
        assert_eq!(grade.source.standing.word(), check.status.word(), "{check}");
        let limit = match check.name.rsplit(' ').next() {
            Some("lowest") => grade.lowest,
            Some("middle") => grade.middle,
            Some("highest") => grade.highest,
            other => panic!("{check}: {other:?} is no limit"),
        };
        check.holds("viscosity_at_40", limit);
    }
}

#[test]
fn air_in_a_quick_change_is_stiffer_at_the_same_volume_as_the_balance_says() {
    for check in published("oil/modulus-with-air-fast") {
        let modulus = modulus_with_air_fast(
            check.given("modulus"),
            check.given("air_fraction"),
            check.given("pressure"),
            check.given("gas_exponent"),
        );
        check.holds("result", modulus);
    }
}

/// The slope of ln η over the pressure at no pressure, by the difference of a pressure small enough for ten digits.
fn roelands_slope(viscosity: Viscosity, exponent: Ratio) -> PerPressure {
    let small = Pressure::from_pascals(100.0);
    let thicker = roelands_viscosity(viscosity, small, exponent) / viscosity - 1.0;
    PerPressure::from_per_pascal(thicker / small.pascals())
}

#[test]
fn roelands_law_starts_with_the_slope_that_its_constants_say() {
    for check in published("oil/roelands-slope") {
        let slope = roelands_slope(check.given("viscosity"), check.given("exponent"));
        let wanted: PerPressure = check.expected("coefficient");
        // The difference itself is good to 1e-5 only: digits of the ratio, and the bend of the law.
        assert!((slope / wanted - 1.0).abs() < 1e-5, "{check}: {slope:?}");
    }
}

/// The values of one oil at one temperature: viscosity and coefficient stand in two rows.
fn partner(rows: &[Check], of: &Check) -> Option<PerPressure> {
    let same = |check: &&Check| {
        check.given_word("oil") == of.given_word("oil")
            && check.given_word("temperature") == of.given_word("temperature")
            && check.expects("coefficient")
    };
    rows.iter().find(same).map(|check| check.expected("coefficient"))
}

#[test]
fn roelands_law_with_an_exponent_of_0_6_stays_near_the_measured_coefficients_and_mostly_below() {
    // Thirteen measured oils at three temperatures (stachowiak-batchelor, Table 2.3, seen) against the law with the
    // exponent recalled for mineral oils: within 30 % each, a sixth too low in the mean. So for a cautious pressure an
    // exponent of 0.7 is the one to take; 0.6 is the middle of the recalled range, not of these oils.
    let rows = published("oil/pressure-coefficients");
    let ratios: Vec<f64> = rows
        .iter()
        .filter(|check| check.expects("viscosity"))
        .filter_map(|check| Some((check.expected::<Viscosity>("viscosity"), partner(&rows, check)?)))
        .map(|(viscosity, measured)| roelands_slope(viscosity, Ratio::from_fraction(0.6)) / measured)
        .collect();
    assert_eq!(ratios.len(), 38);
    assert!(ratios.iter().all(|ratio| (0.70..1.05).contains(ratio)), "{ratios:?}");
    let mean = ratios.iter().sum::<f64>() / 38.0;
    assert!((mean - 0.84).abs() < 0.01, "{mean}");
}
