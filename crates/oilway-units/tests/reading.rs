//! Quantities as people write them, and what is said when they cannot be read. One text in, one answer out.

use oilway_units::*;

/// The value in SI that was read.
#[track_caller]
fn value<T: Quantity>(text: &str, expected: T) {
    assert_eq!(read::<T>(text), Ok(Said::Value(expected)), "{text}");
}

#[track_caller]
fn range<T: Quantity>(text: &str, low: T, high: T) {
    match read::<T>(text) {
        Ok(Said::Range(l, h)) => {
            let near = |a: T, b: T| (a.si() - b.si()).abs() <= 1e-12 * b.si().abs();
            assert!(near(l, low) && near(h, high), "{text}: {l:?} to {h:?}");
        }
        other => panic!("{text}: {other:?}"),
    }
}

#[track_caller]
fn fault<T: Quantity>(text: &str) -> ReadErrorKind {
    read::<T>(text).expect_err(text).kind
}

#[test]
fn plain_values_are_read_with_and_without_a_space() {
    for text in [
        "12 mm",
        "12mm",
        " 12  mm ",
        "12.0 mm",
        "+12 mm",
        "1.2 cm",
        "1.2e1 mm",
        "twelve mm",
        "12 millimetres",
    ] {
        value(text, Length::from_metres(0.012));
    }
    value("0.47 in", Length::from_inches(0.47));
    value("12 yd", Length::from_feet(36.0));
    value("12 yards", Length::from_yards(12.0));
    value(".47 in", Length::from_inches(0.47));
    value("80 psi", Pressure::from_psi(80.0));
    value("220 cSt", KinematicViscosity::from_square_millimetres_per_second(220.0));
    value("16 N/mm²", Pressure::from_megapascals(16.0));
    value("2.1 cm³/h", Flow::from_cubic_centimetres_per_hour(2.1));
    value("2 m^3/h", Flow::from_cubic_metres_per_hour(2.0));
    value("2e-8 1/Pa", PerPressure::from_per_pascal(2e-8));
    value("1450 1/min", Frequency::from_per_minute(1450.0));
    value("1450 rpm", Frequency::from_per_minute(1450.0));
    value("12 cycles per hour", Frequency::from_per_hour(12.0));
    value("45°", Angle::from_degrees(45.0));
    value("24 V DC", Voltage::from_volts(24.0));
    value("0.2 Pa·s^n", Consistency::from_pascal_seconds_to_the_n(0.2));
}

#[test]
fn fractions_are_read() {
    for text in [
        "3/4 in",
        "¾ in",
        "¾\"",
        "0.75 in",
        "three quarters of an inch",
        "three-quarter inch",
        "3/4\"",
        "3/4 inch",
    ] {
        value(text, Length::from_inches(0.75));
    }
    for text in ["1 1/2 in", "1-1/2 in", "1½ in", "1 ½ in", "one and a half inches", "1.5 in", "3/2 in"] {
        value(text, Length::from_inches(1.5));
    }
    for text in ["half inch", "half an inch", "½ in", "1/2 in", "Half Inch", "one half inch"] {
        value(text, Length::from_inches(0.5));
    }
    value("quarter of an inch", Length::from_inches(0.25));
    value("half a litre", Volume::from_litres(0.5));
}

#[test]
fn negative_and_spoken_temperatures_are_read() {
    for text in
        ["-10 °C", "−10 °C", "-10°C", "minus ten °C", "Minus 10 C", "minus ten degrees celsius", "14 °F"]
    {
        value(text, Temperature::from_celsius(-10.0));
    }
    value("twenty-five °C", Temperature::from_celsius(25.0));
    value("ninety nine °C", Temperature::from_celsius(99.0));
    value("zero °C", Temperature::from_celsius(0.0));
    value("30 K", TemperatureDifference::from_kelvins(30.0));
}

#[test]
fn decimal_commas_and_parted_thousands_are_read() {
    value("0,7 mm", Length::from_millimetres(0.7));
    value("5,5 bar", Pressure::from_bar(5.5));
    value("0,700 mm", Length::from_millimetres(0.7));
    value("1234,567 mm", Length::from_millimetres(1234.567));
    for text in ["1234.5 mm", "1,234.5 mm", "1.234,5 mm", "1 234.5 mm", "1\u{202f}234,5 mm"] {
        value(text, Length::from_millimetres(1234.5));
    }
    value("1,234,567 mm", Length::from_millimetres(1_234_567.0));
    value("1 000 mm", Length::from_millimetres(1000.0));
}

#[test]
fn one_comma_before_three_figures_is_asked_about() {
    let kind = ReadErrorKind::DoubtfulComma { decimal: "1.000 mm".into(), thousands: "1000 mm".into() };
    assert_eq!(fault::<Length>("1,000 mm"), kind);
    assert!(matches!(fault::<Length>("6 m to 1,000 m"), ReadErrorKind::DoubtfulComma { .. }));
}

#[test]
fn badly_grouped_numbers_are_refused() {
    for text in [
        "1.2.3 mm",
        "12,34,567 mm",
        "1,234,56 mm",
        "1.234.5 mm",
        ". mm",
        ", mm",
        "mm",
        "- mm",
        "1,234,567,8 m",
    ] {
        assert_eq!(fault::<Length>(text), ReadErrorKind::NoNumber, "{text}");
    }
}

#[test]
fn chains_of_units_are_summed() {
    let near = |text: &str, expected: AnyQuantity| {
        let Ok(Said::Value(said)) = read_any(expected.dimension, text) else { panic!("{text}") };
        assert!((said.si - expected.si).abs() <= 1e-15 * expected.si.abs(), "{text}: {said:?}");
    };
    near("5' 6\"", Length::from_inches(66.0).into());
    near("5 ft 6 in", Length::from_inches(66.0).into());
    near("5' 6 1/2\"", Length::from_inches(66.5).into());
    near("-5 ft 6 in", Length::from_inches(-66.0).into());
    near("2 h 30 min", Time::from_minutes(150.0).into());
    near("1 min 30 s", Time::from_seconds(90.0).into());
    // The second must be the smaller one, and other dimensions do not chain.
    assert!(matches!(fault::<Time>("30 min 2 h"), ReadErrorKind::UnknownUnit { .. }));
    assert!(matches!(fault::<Pressure>("5 bar 3 mbar"), ReadErrorKind::UnknownUnit { .. }));
}

#[test]
fn ratios_are_read_plain_in_percent_and_with_a_colon() {
    value("0.9", Ratio::from_fraction(0.9));
    value("90 %", Ratio::from_percent(90.0));
    value("90%", Ratio::from_percent(90.0));
    value("40:1", Ratio::from_fraction(40.0));
    value("1 : 40", Ratio::from_fraction(1.0 / 40.0));
    value("12", Count::from_number(12.0));
    assert_eq!(fault::<Ratio>("1:0"), ReadErrorKind::NotFinite);
    assert!(matches!(fault::<Length>("40:1"), ReadErrorKind::UnknownUnit { .. }));
}

#[test]
fn ranges_are_read_in_every_form() {
    let (six, eight) = (Length::from_metres(6.0), Length::from_metres(8.0));
    for text in [
        "6..8 m",
        "6 .. 8 m",
        "6...8 m",
        "6…8 m",
        "6 to 8 m",
        "6 TO 8 m",
        "from 6 to 8 m",
        "between 6 and 8 m",
        "6-8 m",
        "6 - 8 m",
        "6–8 m",
        "6 m to 8 m",
        "6 m to 8",
        "6000 mm .. 8 m",
        "about 6 to 8 m",
        "six to eight m",
    ] {
        range(text, six, eight);
    }
    range("-10..40 °C", Temperature::from_celsius(-10.0), Temperature::from_celsius(40.0));
    range("-10 to -5 °C", Temperature::from_celsius(-10.0), Temperature::from_celsius(-5.0));
    range("minus ten to forty °C", Temperature::from_celsius(-10.0), Temperature::from_celsius(40.0));
    range("1/2 to 3/4 in", Length::from_inches(0.5), Length::from_inches(0.75));
    range("0.8..0.9", Ratio::from_fraction(0.8), Ratio::from_fraction(0.9));
    value("6..6 m", six);
}

#[test]
fn a_hyphen_between_units_or_before_a_number_is_no_range() {
    assert!(matches!(fault::<Length>("6 m - 8 m"), ReadErrorKind::UnknownUnit { .. }));
    assert!(matches!(fault::<Temperature>("-10-40-50 °C"), ReadErrorKind::UnknownUnit { .. }));
    value("-10 °C", Temperature::from_celsius(-10.0));
}

#[test]
fn tolerances_make_ranges() {
    let (low, high) = (Length::from_metres(36.0), Length::from_metres(44.0));
    for text in [
        "40 m ± 10 %",
        "40 m ±10%",
        "40 m +/- 10 %",
        "40 m ± 4 m",
        "40 ± 4 m",
        "40 m ± 4",
        "about 40 m",
        "~40 m",
        "approx. 40 m",
        "ca. 40 m",
        "roughly 40 m",
    ] {
        range(text, low, high);
    }
    let twenty = |by: f64| (Temperature::from_celsius(20.0 - by), Temperature::from_celsius(20.0 + by));
    for text in ["20 °C ± 5 K", "20 °C ± 5 °C", "20 °C ± 5", "about 20 °C"] {
        range(text, twenty(5.0).0, twenty(5.0).1);
    }
    range("1 bar abs ± 20 mbar", AbsolutePressure::from_bar(0.98), AbsolutePressure::from_bar(1.02));
    value("40 m ± 0 %", Length::from_metres(40.0));
}

#[test]
fn tolerances_with_two_meanings_are_refused() {
    assert_eq!(fault::<Temperature>("20 °C ± 10 %"), ReadErrorKind::BadTolerance);
    for text in ["5 % ± 1 %", "0.9 ± 10 %"] {
        assert_eq!(fault::<Ratio>(text), ReadErrorKind::BadTolerance);
    }
    for text in ["40 m ± -1 %", "40 m ± 100 %", "40 m ± -2 m"] {
        assert_eq!(fault::<Length>(text), ReadErrorKind::BadTolerance);
    }
    assert_eq!(fault::<Length>("40 m ±"), ReadErrorKind::NoNumber);
}

#[test]
fn what_is_not_known_is_read_as_unknown() {
    for text in ["unknown", "?", " Unknown ", "not known"] {
        assert_eq!(read::<Pressure>(text), Ok(Said::Unknown), "{text}");
    }
    assert!(read::<Pressure>("unknowable").is_err());
}

#[test]
fn a_number_without_a_unit_is_answered_with_examples() {
    let missing = |examples: &[&str]| ReadErrorKind::MissingUnit {
        examples: examples.iter().map(|e| (*e).into()).collect(),
    };
    assert_eq!(fault::<Length>("12"), missing(&["12 mm", "12 in"]));
    assert_eq!(fault::<Length>("3/4"), missing(&["3/4 in", "19.05 mm"]));
    assert_eq!(fault::<Pressure>("5,5"), missing(&["5,5 bar", "5,5 psi"]));
    assert_eq!(fault::<Length>("6-8"), missing(&["6-8 mm", "6-8 in"]));
    assert!(matches!(fault::<Length>("6..8"), ReadErrorKind::MissingUnit { .. }));
    assert!(matches!(fault::<Pressure>("0"), ReadErrorKind::MissingUnit { .. }));
}

#[test]
fn a_unit_of_something_else_is_named_as_such() {
    let measures = |kind| match kind {
        ReadErrorKind::WrongDimension { measures, .. } => measures,
        other => panic!("{other:?}"),
    };
    assert_eq!(measures(fault::<Pressure>("12 mm")), Dimension::Length);
    assert_eq!(measures(fault::<Length>("12 mm2")), Dimension::Area);
    assert_eq!(measures(fault::<Length>("12 °C")), Dimension::Temperature);
    assert_eq!(measures(fault::<Time>("3 N·m")), Dimension::Torque);
}

#[test]
fn a_misspelt_unit_is_answered_with_the_nearest() {
    let nearest = |kind| match kind {
        ReadErrorKind::UnknownUnit { nearest, .. } => nearest,
        other => panic!("{other:?}"),
    };
    assert_eq!(nearest(fault::<Pressure>("12 mpa")), Some("MPa"));
    assert_eq!(nearest(fault::<Pressure>("12 barr")), Some("bar"));
    assert_eq!(nearest(fault::<Pressure>("12 pis")), Some("psi"));
    assert_eq!(nearest(fault::<Length>("12 milimetres")), Some("millimetres"));
    assert_eq!(nearest(fault::<Flow>("12 cm3/mim")), Some("cm³/min"));
    assert_eq!(nearest(fault::<Time>("3 months")), None, "a month has no fixed length");
    assert_eq!(nearest(fault::<Length>("3 furlongs")), None);
}

#[test]
fn gauge_and_absolute_pressure_are_kept_apart() {
    for text in ["5 bar", "5 bar(g)", "5 bar (g)", "5 barg", "5 bar gauge"] {
        value(text, Pressure::from_bar(5.0));
    }
    value("100 psig", Pressure::from_psi(100.0));
    for text in ["5 bar abs", "5 bar(a)", "5 bar (abs)", "5 bara", "5 bar absolute", "5000 mbar abs"] {
        value(text, AbsolutePressure::from_bar(5.0));
        assert!(matches!(fault::<Pressure>(text), ReadErrorKind::AbsoluteForGauge { .. }), "{text}");
    }
    value("14.7 psia", AbsolutePressure::from_psi(14.7));
    assert!(matches!(fault::<Pressure>("14.7 psia"), ReadErrorKind::AbsoluteForGauge { .. }));
    for (text, right) in
        [("5 bar", "bar abs"), ("5 psi", "psia"), ("5 psig", "psia"), ("1013 mbar", "mbar abs")]
    {
        match fault::<AbsolutePressure>(text) {
            ReadErrorKind::GaugeForAbsolute { instead, .. } => assert_eq!(instead, right),
            other => panic!("{text}: {other:?}"),
        }
    }
}

#[test]
fn what_cannot_be_is_refused() {
    assert!(matches!(fault::<Temperature>("-300 °C"), ReadErrorKind::BelowNothing { .. }));
    assert!(matches!(fault::<AbsolutePressure>("-1 bar abs"), ReadErrorKind::BelowNothing { .. }));
    assert!(matches!(fault::<Temperature>("-300..20 °C"), ReadErrorKind::BelowNothing { .. }));
    value("-273.15 °C", Temperature::ABSOLUTE_ZERO);
    value("-0.5 bar", Pressure::from_bar(-0.5));
    for text in ["1e400 m", "1/0 m", "inf m", "NaN m", "1e308 km"] {
        let kind = fault::<Length>(text);
        assert!(matches!(kind, ReadErrorKind::NotFinite | ReadErrorKind::NoNumber), "{text}: {kind:?}");
    }
}

#[test]
fn backward_ranges_empty_and_endless_texts_are_refused() {
    assert!(matches!(fault::<Length>("8..6 m"), ReadErrorKind::Backwards { .. }));
    assert!(matches!(fault::<Length>("8-6 m"), ReadErrorKind::Backwards { .. }));
    assert!(matches!(fault::<Length>("8 m to 6 cm"), ReadErrorKind::Backwards { .. }));
    assert_eq!(fault::<Length>("  "), ReadErrorKind::Empty);
    assert_eq!(fault::<Length>(&"1".repeat(201)), ReadErrorKind::TooLong { length: 201, most: 200 });
    value(&format!("{}12 mm", "0".repeat(190)), Length::from_millimetres(12.0));
    let long = read::<Length>(&"x".repeat(100)).expect_err("no number");
    assert_eq!(long.text.chars().count(), 61);
}
