//! Laws that hold for every text and every quantity.

use oilway_units::*;
use proptest::prelude::*;

fn dimensions() -> impl Strategy<Value = Dimension> {
    prop::sample::select(Dimension::ALL)
}

fn units() -> impl Strategy<Value = &'static Unit> {
    let all: Vec<&'static Unit> = Dimension::ALL.iter().flat_map(|dimension| Unit::of(*dimension)).collect();
    prop::sample::select(all)
}

/// Numbers of either sign over the sizes that occur, and a few hard ones.
fn sizes() -> impl Strategy<Value = f64> {
    prop_oneof![
        8 => (-15.0..15.0f64, any::<bool>()).prop_map(|(power, minus)| if minus { -1.0 } else { 1.0 } * libm::pow(10.0, power)),
        2 => (0i32..100_000, 0i32..6).prop_map(|(figures, places)| f64::from(figures) / f64::from(10i32.pow(places as u32))),
        1 => prop::sample::select(vec![0.0, 1.0, -1.0, 273.15, 0.1 + 0.2, 1.0f64.next_up(), 2.0f64.next_down()]),
    ]
}

/// Texts put together from pieces that the reader looks for.
fn near_quantities() -> impl Strategy<Value = String> {
    let pieces = vec![
        "1", "12", "1,000", "000", "0.5", "1/2", "½", "1-1/2", "..", "…", " to ", "between ", " and ",
        "from ", "-", "–", "−", "±", "+/-", " ", " ", "about ", "~", "half ", "ten", "twenty", "a", "of an ",
        "mm", "in", "'", "\"", "bar", "bar abs", "(g)", "°C", "%", "/", "^", ":", "e", "e-9", "E400", "h",
        "min", ",", ".", "\u{202f}", "³", "per ", "K", "?",
    ];
    prop::collection::vec(prop::sample::select(pieces), 0..9).prop_map(|pieces| pieces.concat())
}

/// No size below absolute zero or vacuum.
fn possible(unit: &Unit, size: f64) -> f64 {
    let has_least = matches!(unit.dimension(), Dimension::Temperature | Dimension::AbsolutePressure);
    if has_least { size.abs() } else { size }
}

/// How many steps of a double lie between two numbers.
fn steps(a: f64, b: f64) -> u64 {
    if a == b { 0 } else { a.to_bits().abs_diff(b.to_bits()) }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_text_makes_the_reader_panic(dimension in dimensions(), text in any::<String>()) {
        let _ = read_any(dimension, &text);
    }

    #[test]
    fn no_text_of_likely_pieces_makes_the_reader_panic(dimension in dimensions(), text in near_quantities()) {
        let said = read_any(dimension, &text);
        if let Ok(Said::Range(low, high)) = said {
            prop_assert!(low.si < high.si);
        }
        if let Ok(Said::Value(value)) = said {
            prop_assert!(value.si.is_finite());
            prop_assert_eq!(value.dimension, dimension);
        }
    }

    #[test]
    fn what_a_file_gets_reads_back(unit in units(), size in sizes()) {
        let quantity = AnyQuantity::new(unit.dimension(), unit.to_si(possible(unit, size)));
        let text = show_exact(quantity, unit);
        // The value can be written in this unit, so it comes back bit by bit.
        prop_assert_eq!(read_any(unit.dimension(), &text), Ok(Said::Value(quantity)), "{}", text);
    }

    #[test]
    fn what_a_file_gets_in_any_unit_reads_back_within_one_step(unit in units(), size in sizes()) {
        let main = Unit::main(unit.dimension());
        let quantity = AnyQuantity::new(unit.dimension(), main.to_si(possible(main, size)));
        let text = show_exact(quantity, unit);
        let Ok(Said::Value(back)) = read_any(unit.dimension(), &text) else { panic!("{text}") };
        prop_assert!(steps(back.si, quantity.si) <= 1, "{}: {} and {}", text, back.si, quantity.si);
        prop_assert_eq!(show_exact(back, unit), text, "a second writing differs");
    }

    #[test]
    fn typed_figures_come_back_as_typed(unit in units(), figures in 1i32..100_000, places in 0u32..5) {
        let number = f64::from(figures) / f64::from(10i32.pow(places));
        let number_text = number.to_string();
        let text = show_exact(AnyQuantity::new(unit.dimension(), unit.to_si(number)), unit);
        let front = text.trim_end_matches(|c: char| !c.is_ascii_digit());
        prop_assert!(front == number_text || text.starts_with(&number_text), "{} became {}", number_text, text);
    }

    #[test]
    fn shown_figures_are_within_half_a_thousandth_part_of_their_power(size in sizes(), dimension in dimensions()) {
        let quantity = AnyQuantity::new(dimension, Unit::main(dimension).to_si(size));
        for system in [UnitSystem::Metric, UnitSystem::Us] {
            let text = show(quantity, system);
            prop_assert!(!text.starts_with("-0 ") && text.len() < 40, "{}", text);
        }
    }
}
