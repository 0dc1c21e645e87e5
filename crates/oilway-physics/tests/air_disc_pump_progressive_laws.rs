//! What holds for every formula of these four families: ids, sources, and an answer or a refusal for every legal input.

use oilway_physics::{Formula, NoAnswer, Range, registry};
use oilway_units::AnyQuantity;
use proptest::prelude::*;

const FAMILIES: [&str; 4] = ["air/", "disc/", "progressive/", "pump/"];

fn mine() -> Vec<&'static Formula> {
    registry().filter(|formula| FAMILIES.iter().any(|family| formula.id.starts_with(family))).collect()
}

#[test]
fn ids_are_unique_and_every_formula_says_where_it_holds_and_where_it_is_from() {
    let known = oilway_testkit::sources();
    let mut ids: Vec<&str> = mine().iter().map(|formula| formula.id).collect();
    ids.sort_unstable();
    assert!(ids.windows(2).all(|pair| pair[0] != pair[1]), "{ids:?}");
    assert_eq!(ids.len(), 50);
    for formula in mine() {
        assert!(!formula.validity.is_empty() && !formula.equation.is_empty(), "{}", formula.id);
        assert!(!formula.sources.is_empty(), "{}", formula.id);
        for source in formula.sources {
            assert!(
                known.contains_key(source.key),
                "{}: {} is not in data/sources.toml",
                formula.id,
                source.key
            );
            assert!(!source.place.is_empty(), "{}", formula.id);
        }
    }
}

/// A legal value: `level` from 0 to 1 runs over the range, on a scale of powers of ten where it has no end.
fn legal(range: Range, level: f64) -> f64 {
    let wide = 10_f64.powf(level * 24.0 - 12.0);
    match range {
        Range::Any if level < 0.5 => -10_f64.powf(level * 48.0 - 12.0),
        Range::Any => 10_f64.powf((level - 0.5) * 48.0 - 12.0),
        Range::NotNegative if level < 0.05 => 0.0,
        Range::NotNegative | Range::Positive => wide,
        Range::Between(low, high) => (low + (high - low) * level).clamp(low, high),
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]
    #[test]
    fn every_legal_input_gets_an_answer_or_an_honest_refusal(levels in prop::collection::vec(0.0_f64..=1.0, 16)) {
        for formula in mine() {
            let inputs: Vec<AnyQuantity> = formula.inputs.iter().zip(&levels)
                .map(|(symbol, level)| AnyQuantity::new(symbol.dimension, legal(symbol.range, *level)))
                .collect();
            match formula.evaluate(&inputs) {
                Ok(answer) => {
                    prop_assert!(answer.si.is_finite());
                    prop_assert_eq!(answer.dimension, formula.output.dimension);
                }
                Err(refusal) => prop_assert_eq!(refusal, NoAnswer::OutsideValidity, "{}", formula.id),
            }
        }
    }

    #[test]
    fn no_finite_input_however_wrong_makes_a_panic(
        bits in prop::collection::vec(prop::num::f64::NORMAL | prop::num::f64::ZERO | prop::num::f64::NEGATIVE, 16),
    ) {
        for formula in mine() {
            // What comes out is not looked at: the ranges keep such inputs away from the desk.
            let _ = (formula.evaluate_si)(&bits[..formula.inputs.len()]);
        }
    }
}
