//! One case: the values by name, and the result over their ranges.

use std::collections::{BTreeMap, BTreeSet};

use oilway_catalogue::reading::nearest;
use oilway_physics::{Formula, NoAnswer, Symbol};
use oilway_text::{Arg, Message, message, name_of};
use oilway_units::{AnyQuantity, Dimension, Said, read_any};

use crate::json::calc::Case;
use crate::show::formula::allowed;

/// What somebody gave for each input, by the place of the input in the formula.
type Values = BTreeMap<usize, (AnyQuantity, AnyQuantity)>;
/// What is wrong, and its cure.
pub(super) type Problem = (Message, Message);

/// Corners of so many ranges are all tried; beyond that the sample must do.
const MOST_CORNERS: u32 = 10;
/// Points between the corners, for a formula that is not monotone.
const SAMPLES: u32 = 64;

/// What somebody gave, and what is wrong with it.
#[derive(Clone, Debug, Default)]
pub(super) struct Given {
    /// The values that could be read.
    pub(super) values: Values,
    /// The inputs that were named, well or not: such a one is not missing.
    named: BTreeSet<usize>,
    /// What could not be read.
    pub(super) problems: Vec<Problem>,
}

impl Given {
    /// Takes what was said for an input, in place of what was said before.
    pub(super) fn take(&mut self, formula: &Formula, place: usize, text: &str) {
        self.named.insert(place);
        match value_of(&formula.inputs[place], text) {
            Ok(ends) => {
                self.values.insert(place, ends);
            }
            Err(problem) => self.problems.push(problem),
        }
    }

    /// Everything that keeps the formula from being calculated: what cannot be read, is missing, or lies outside.
    fn wrong(&self, formula: &Formula) -> Vec<Problem> {
        let inputs = || formula.inputs.iter().enumerate();
        let mut wrong = self.problems.clone();
        wrong.extend(inputs().filter(|(place, _)| !self.named.contains(place)).map(|(_, s)| missing(s)));
        wrong.extend(inputs().filter_map(|(place, symbol)| outside(symbol, self.values.get(&place)?)));
        wrong
    }
}

/// Reads `name=value` texts.
pub(super) fn given(formula: &Formula, texts: &[String]) -> Given {
    let mut given = Given::default();
    for text in texts {
        let Some((name, value)) = text.split_once('=') else {
            given.problems.push((message!("oilway-no-pair", text = text), message!("oilway-no-pair-cure")));
            continue;
        };
        match place(formula, name.trim()) {
            Ok(place) if given.named.contains(&place) => {
                let name = formula.inputs[place].name;
                given.problems.push((message!("oilway-twice", name = name), message!("oilway-twice-cure")));
            }
            Ok(place) => given.take(formula, place, value),
            Err(problem) => {
                // The input that was probably meant is not told to be missing as well.
                given.named.extend(meant(formula, name.trim()));
                given.problems.push(problem);
            }
        }
    }
    given
}

/// The input whose name is most like this one.
fn meant(formula: &Formula, name: &str) -> Option<usize> {
    let near = nearest(name, formula.inputs.iter().map(|symbol| symbol.name))?;
    formula.inputs.iter().position(|symbol| symbol.name == near)
}

/// The input with this name.
pub(super) fn place(formula: &Formula, name: &str) -> Result<usize, Problem> {
    let found = formula.inputs.iter().position(|symbol| symbol.name == name || symbol.letter == name);
    found.ok_or_else(|| {
        let names = || formula.inputs.iter().map(|symbol| Arg::from(symbol.name)).collect::<Vec<_>>();
        let cure = match meant(formula, name) {
            Some(near) => message!("oilway-perhaps", word = formula.inputs[near].name),
            None => message!("oilway-no-input-cure", names = names()),
        };
        (message!("oilway-no-input", formula = formula.id, name = name), cure)
    })
}

/// The two ends of what was said for an input.
fn value_of(symbol: &Symbol, text: &str) -> Result<(AnyQuantity, AnyQuantity), Problem> {
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
pub(super) fn calculated(formula: &'static Formula, given: &Given) -> Result<Case, Vec<Problem>> {
    let wrong = given.wrong(formula);
    if !wrong.is_empty() {
        return Err(wrong);
    }
    let inputs: Vec<_> = given.values.values().copied().collect();
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
