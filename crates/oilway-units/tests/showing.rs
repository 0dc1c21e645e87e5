//! Quantities as people and files get them.

use oilway_units::UnitSystem::{Metric, Us};
use oilway_units::*;

#[track_caller]
fn shown(quantity: impl Into<AnyQuantity>, metric: &str, us: &str) {
    let quantity = quantity.into();
    assert_eq!((show(quantity, Metric).as_str(), show(quantity, Us).as_str()), (metric, us));
}

#[test]
fn quantities_are_shown_in_three_figures_and_the_units_of_the_trade() {
    shown(Pressure::from_bar(59.3), "59.3 bar", "860 psi");
    shown(Pressure::from_pascals(150.0), "150 Pa", "0.0218 psi");
    shown(Pressure::from_megapascals(250.0), "2500 bar", "36300 psi");
    shown(Length::from_millimetres(8.0), "8 mm", "0.315 in");
    shown(Length::from_metres(12.5), "12.5 m", "41 ft");
    shown(Volume::from_cubic_centimetres(0.25), "0.25 cm³", "0.0153 in³");
    shown(Volume::from_litres(30.0), "30 L", "7.93 gal");
    shown(Flow::from_cubic_centimetres_per_hour(2.1), "2.1 cm³/h", "0.128 in³/h");
    shown(Flow::from_cubic_centimetres_per_minute(12.0), "12 cm³/min", "43.9 in³/h");
    shown(Temperature::from_celsius(-10.0), "-10 °C", "14 °F");
    shown(TemperatureDifference::from_kelvins(10.0), "10 K", "18 °F");
    shown(AbsolutePressure::STANDARD_ATMOSPHERE, "1.01 bar abs", "14.7 psia");
    shown(Torque::from_newton_metres(40.0), "40 N·m", "29.5 lbf·ft");
    shown(Viscosity::from_millipascal_seconds(220.0), "220 mPa·s", "220 cP");
    shown(Density::from_grams_per_cubic_centimetre(0.9), "900 kg/m³", "56.2 lb/ft³");
    shown(PerTemperature::from_per_kelvin(7e-4), "0.07 %/K", "0.0389 %/°F");
    shown(Frequency::from_per_hour(4.0), "4 per h", "4 per h");
    shown(Angle::from_degrees(90.0), "90°", "90°");
}

#[test]
fn the_unit_follows_the_size() {
    let times = [
        (0.02, "20 ms"),
        (30.0, "30 s"),
        (90.0, "90 s"),
        (600.0, "10 min"),
        (28_800.0, "8 h"),
        (259_200.0, "3 days"),
        (604_800.0 * 6.0, "6 weeks"),
        (31_557_600.0 * 3.0, "3 years"),
    ];
    for (seconds, text) in times {
        assert_eq!(show(Time::from_seconds(seconds), Metric), text);
    }
    assert_eq!(show(Length::from_millimetres(999.0), Metric), "999 mm");
    assert_eq!(show(Length::from_millimetres(999.6), Metric), "1 m");
    assert_eq!(show(Length::from_micrometres(25.0), Metric), "25 µm");
    assert_eq!(show(Mass::from_grams(400.0), Metric), "400 g");
    assert_eq!(show(Mass::from_kilograms(1.2), Metric), "1.2 kg");
    assert_eq!(show(Flow::from_litres_per_minute(2.5), Metric), "2.5 L/min");
    assert_eq!(show(Frequency::from_per_day(3.0), Metric), "3 per day");
    assert_eq!(show(Frequency::from_per_week(1.0), Metric), "1 per week");
}

#[test]
fn pressures_of_a_system_are_all_said_in_bar() {
    assert_eq!(show(Pressure::from_bar(0.095), Metric), "0.095 bar");
    assert_eq!(show(Pressure::from_bar(0.05), Metric), "0.05 bar");
    assert_eq!(show(Pressure::from_bar(2580.0), Metric), "2580 bar");
    assert_eq!(show(Pressure::from_bar(-0.095), Metric), "-0.095 bar");
    // The yield stress of a grease, and what no line holds.
    assert_eq!(show(Pressure::from_pascals(3000.0), Metric), "3000 Pa");
    assert_eq!(show(Pressure::from_megapascals(1500.0), Metric), "1500 MPa");
}

#[test]
fn temperatures_have_one_decimal_at_most() {
    assert_eq!(show(Temperature::from_celsius(-1.234), Metric), "-1.2 °C");
    assert_eq!(show(Temperature::from_celsius(4.0), Metric), "4 °C");
    assert_eq!(show(Temperature::from_celsius(-0.04), Metric), "0 °C");
    assert_eq!(show(Temperature::from_celsius(99.96), Metric), "100 °C");
    assert_eq!(show(Temperature::from_celsius(123.4), Metric), "123 °C");
}

#[test]
fn one_of_a_thing_is_singular() {
    let days = Unit::named(Dimension::Time, "days").unwrap();
    assert_eq!(show_exact(Time::from_days(1.0), days), "1 day");
    assert_eq!(show_exact(Time::from_days(1.5), days), "1.5 days");
}

#[test]
fn ratios_are_shares_below_two_and_factors_from_there() {
    assert_eq!(show(Ratio::from_fraction(0.85), Metric), "85 %");
    assert_eq!(show(Ratio::from_fraction(1.0), Metric), "100 %");
    assert_eq!(show(Ratio::from_fraction(4.0), Metric), "4");
    assert_eq!(show(Count::from_number(12345.0), Metric), "12345");
}

#[test]
fn nothing_has_no_sign_and_an_ordinary_unit() {
    assert_eq!(show(Pressure::from_bar(-0.0), Metric), "0 bar");
    assert_eq!(show(Length::ZERO, Metric), "0 mm");
    assert_eq!(show(Time::ZERO, Metric), "0 s");
    assert_eq!(show(Temperature::from_celsius(0.0), Metric), "0 °C");
    assert_eq!(show(Flow::ZERO, Metric), "0 cm³/min");
}

#[test]
fn only_very_large_and_very_small_numbers_have_powers_of_ten() {
    assert_eq!(show(Pressure::from_psi(1e6), Us), "1000000 psi");
    assert_eq!(show(Pressure::from_psi(1e8), Us), "1e8 psi");
    assert_eq!(show(Volume::from_cubic_inches(2e-5), Us), "2e-5 in³");
    assert_eq!(show(Pressure::from_pascals(f64::INFINITY), Metric), "endless MPa");
    assert_eq!(show(Pressure::from_pascals(f64::NAN), Metric), "no number of Pa");
}

#[test]
fn both_systems_stand_together_where_they_differ() {
    assert_eq!(show_both(Pressure::from_bar(59.3), Metric), "59.3 bar (860 psi)");
    assert_eq!(show_both(Pressure::from_bar(59.3), Us), "860 psi (59.3 bar)");
    assert_eq!(show_both(Time::from_hours(8.0), Metric), "8 h");
    assert_eq!(show_both(KinematicViscosity::from_square_millimetres_per_second(220.0), Metric), "220 mm²/s");
    assert_eq!(show_both(Temperature::from_celsius(-40.0), Metric), "-40 °C");
}

#[test]
fn files_get_what_was_typed() {
    let exact = |quantity: AnyQuantity, symbol| {
        show_exact(quantity, Unit::named(quantity.dimension, symbol).unwrap())
    };
    assert_eq!(exact(Length::from_millimetres(0.7).into(), "mm"), "0.7 mm");
    assert_eq!(exact(Length::from_inches(0.47).into(), "in"), "0.47 in");
    assert_eq!(exact(Pressure::from_psi(3600.0).into(), "psi"), "3600 psi");
    assert_eq!(exact(Temperature::from_celsius(23.4).into(), "°C"), "23.4 °C");
    assert_eq!(exact(Temperature::from_fahrenheit(68.0).into(), "°F"), "68 °F");
    assert_eq!(exact(Length::from_inches(0.75).into(), "mm"), "19.05 mm");
    assert_eq!(exact(PerPressure::from_per_pascal(2e-8).into(), "1/Pa"), "2e-8 1/Pa");
    assert_eq!(exact(Ratio::from_fraction(0.9).into(), ""), "0.9");
}

#[test]
fn a_unit_of_another_dimension_gives_way_to_the_main_one() {
    assert_eq!(show_exact(Length::from_millimetres(8.0), Unit::main(Dimension::Pressure)), "8 mm");
}

#[test]
fn systems_of_units_are_read() {
    assert_eq!("metric".parse(), Ok(Metric));
    assert_eq!(" US ".parse(), Ok(Us));
    assert_eq!("imperial".parse::<UnitSystem>(), Err(UnknownUnitSystem));
    assert_eq!(Metric.other(), Us);
    assert_eq!(Us.name().parse(), Ok(Us));
}

#[test]
fn every_dimension_is_shown_and_read_back_in_both_systems() {
    for dimension in Dimension::ALL {
        for system in [Metric, Us] {
            for size in [1e-3, 0.5, 1.0, 7.0, 300.0] {
                let quantity = AnyQuantity::new(*dimension, Unit::main(*dimension).to_si(size));
                let text = show(quantity, system);
                let back = read_any(*dimension, &text).unwrap_or_else(|error| panic!("{text}: {error:?}"));
                let Said::Value(back) = back else { panic!("{text}") };
                let scale = if *dimension == Dimension::Temperature { 1000.0 } else { quantity.si.abs() };
                assert!((back.si - quantity.si).abs() <= 0.006 * scale, "{text}");
            }
        }
    }
}
