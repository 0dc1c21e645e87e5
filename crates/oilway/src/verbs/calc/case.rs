//! One case: the values by name, and the result over their ranges.

use std::collections::BTreeMap;

use oilway_catalogue::reading::nearest;
use oilway_physics::{Formula, NoAnswer, Symbol};
use oilway_text::{Arg, Message, message, name_of};
use oilway_units::{AnyQuantity, Dimension, Said, read_any};

use crate::exit::Exit;
use crate::json::calc::Case;
use crate::show::formula::allowed;
use crate::trouble::Trouble;

/// What somebody gave for each input, by the place of the input in the formula.
pub(super) type Values = BTreeMap<usize, (AnyQuantity, AnyQuantity)>;
/// What is wrong, and its cure.
pub(super) type Problem = (Message, Message);

/// Corners of so many ranges are all tried; beyond that the sample must do.
const MOST_CORNERS: u32 = 10;
/// Points between the corners, for a formula that is not monotone.
const SAMPLES: u32 = 64;

/// Reads `name=value` texts.
pub(super) fn values(formula: &Formula, texts: &[String]) -> Result<Values, Trouble> {
    let mut values = Values::new();
    let mut problems = Vec::new();
    for text in texts {
        match pair(formula, text) {
            Ok((place, ends)) if values.insert(place, ends).is_some() => {
                let name = formula.inputs.get(place).map_or("", |symbol| symbol.name);
                problems.push((message!("oilway-twice", name = name), message!("oilway-twice-cure")));
            }
            Ok(_) => {}
            Err(problem) => problems.push(problem),
        }
    }
    if problems.is_empty() { Ok(values) } else { Err(Trouble::Told(Exit::Mistakes, problems)) }
}

fn pair(formula: &Formula, text: &str) -> Result<(usize, (AnyQuantity, AnyQuantity)), Problem> {
    let Some((name, value)) = text.split_once('=') else {
        return Err((message!("oilway-no-pair", text = text), message!("oilway-no-pair-cure")));
    };
    let place = place(formula, name.trim())?;
    let symbol = &formula.inputs[place];
    Ok((place, value_of(symbol, value)?))
}

/// The input with this name.
pub(super) fn place(formula: &Formula, name: &str) -> Result<usize, Problem> {
    let found = formula.inputs.iter().position(|symbol| symbol.name == name || symbol.letter == name);
    found.ok_or_else(|| {
        let names = || formula.inputs.iter().map(|symbol| symbol.name);
        let cure = match nearest(name, names()) {
            Some(near) => message!("oilway-perhaps", word = near),
            None => message!("oilway-no-input-cure", names = names().map(Arg::from).collect::<Vec<_>>()),
        };
        (message!("oilway-no-input", formula = formula.id, name = name), cure)
    })
}

/// The two ends of what was said for an input.
pub(super) fn value_of(symbol: &Symbol, text: &str) -> Result<(AnyQuantity, AnyQuantity), Problem> {
    let about = message!("oilway-input-is", name = symbol.name, meaning = symbol.meaning);
    match read_any(symbol.dimension, text) {
        Ok(Said::Value(value)) => Ok((value, value)),
        Ok(Said::Range(low, high)) => Ok((low, high)),
        Ok(Said::Unknown) => {
            Err((message!("oilway-unknown-input", name = symbol.name), message!("oilway-unknown-input-cure")))
        }
        Err(error) => {
            Err((message!("oilway-in-input", name = symbol.name, what = Message::from(&error)), about))
        }
    }
}

/// The result of a case.
pub(super) fn calculated(formula: &'static Formula, values: &Values) -> Result<Case, Vec<Problem>> {
    let missing: Vec<Problem> = formula
        .inputs
        .iter()
        .enumerate()
        .filter(|(place, _)| !values.contains_key(place))
        .map(|(_, symbol)| missing(symbol))
        .collect();
    if !missing.is_empty() {
        return Err(missing);
    }
    let inputs: Vec<_> = values.values().copied().collect();
    let outside: Vec<Problem> =
        formula.inputs.iter().zip(&inputs).filter_map(|(symbol, ends)| outside(symbol, ends)).collect();
    if !outside.is_empty() {
        return Err(outside);
    }
    let at = |shares: &dyn Fn(usize) -> f64| {
        let point: Vec<AnyQuantity> =
            inputs.iter().enumerate().map(|(place, ends)| between(ends, shares(place))).collect();
        formula.evaluate(&point).map_err(|reason| vec![no_answer(formula, &reason)])
    };
    let middle = at(&|_| 0.5)?;
    let open: Vec<usize> = (0..inputs.len()).filter(|&place| inputs[place].0 != inputs[place].1).collect();
    if open.is_empty() {
        return Ok(Case { inputs, middle, span: None });
    }
    let (mut low, mut high) = (middle, middle);
    let mut look = |shares: &dyn Fn(usize) -> f64| -> Result<(), Vec<Problem>> {
        let result = at(shares)?;
        low.si = low.si.min(result.si);
        high.si = high.si.max(result.si);
        Ok(())
    };
    let order = |place: usize| open.iter().position(|&p| p == place).unwrap_or(0);
    let corners = 1u32 << (open.len() as u32).min(MOST_CORNERS);
    for corner in 0..corners {
        look(&|place| f64::from((corner >> (order(place) as u32).min(MOST_CORNERS)) & 1))?;
    }
    for sample in 1..=SAMPLES {
        look(&|place| spread(sample, order(place)))?;
    }
    Ok(Case { inputs, middle, span: Some((low, high)) })
}

/// A point of a fixed lattice that fills the ranges evenly: multiples of powers of an irrational number, without their whole part.
fn spread(sample: u32, dimension: usize) -> f64 {
    // The positive root of x^17 = x + 1 serves up to sixteen inputs, the most that a formula has.
    const ROOT: f64 = 1.042_917_732_301_786_4;
    let mut step = 1.0;
    for _ in 0..=dimension {
        step /= ROOT;
    }
    (f64::from(sample) * step).fract()
}

fn between((low, high): &(AnyQuantity, AnyQuantity), share: f64) -> AnyQuantity {
    // The ends themselves come out exactly, and one value stays that value.
    let si = if low.si == high.si || share == 0.0 {
        low.si
    } else if share == 1.0 {
        high.si
    } else {
        low.si + (high.si - low.si) * share
    };
    AnyQuantity::new(low.dimension, si)
}

fn missing(symbol: &Symbol) -> Problem {
    let what = message!("oilway-missing-input", name = symbol.name, meaning = symbol.meaning);
    let cure = match symbol.dimension {
        Dimension::Count | Dimension::Ratio => message!("oilway-missing-number-cure", name = symbol.name),
        dimension => {
            message!("oilway-missing-input-cure", name = symbol.name, dimension = name_of(dimension))
        }
    };
    (what, cure)
}

fn outside(symbol: &Symbol, (low, high): &(AnyQuantity, AnyQuantity)) -> Option<Problem> {
    let bad = [low, high].into_iter().find(|value| !symbol.range.holds(value.si))?;
    Some((
        message!("oilway-outside", name = symbol.name, value = *bad),
        message!("oilway-outside-cure", allowed = allowed(symbol)),
    ))
}

fn no_answer(formula: &'static Formula, reason: &NoAnswer) -> Problem {
    match reason {
        NoAnswer::OutOfRange { input, got, .. } => {
            let symbol = formula.inputs.iter().find(|symbol| symbol.name == *input);
            let bound = symbol.map_or_else(|| message!("oilway-allowed-any"), allowed);
            (
                message!("oilway-outside", name = *input, value = *got),
                message!("oilway-outside-cure", allowed = bound),
            )
        }
        NoAnswer::OutsideValidity
        | NoAnswer::WrongNumberOfInputs { .. }
        | NoAnswer::WrongDimension { .. } => (
            message!("oilway-no-answer", formula = formula.id),
            message!("oilway-no-answer-cure", validity = formula.validity),
        ),
    }
}
