//! How a number came to be, for programs.

use std::collections::BTreeSet;

use oilway_model::Reason;
use oilway_physics::{How, Ledger, Line, Term};
use oilway_text::{Reader, say};
use oilway_units::Origin;
use schemars::JsonSchema;
use serde::Serialize;

use super::calc::SourceData;
use super::design::ChoiceData;
use super::quantity::QuantityData;

/// The answer of `why`.
#[derive(Debug, Serialize, JsonSchema)]
pub struct WhyAnswer {
    /// `oilway.why.1`
    pub version: &'static str,
    /// The number that was asked for; none if the answer is a list of numbers to ask for.
    pub number: Option<String>,
    /// That number and all that went into it, each once; or the numbers to ask for.
    pub lines: Vec<LineData>,
    /// The choice that was asked for.
    pub choice: Option<ChoiceData>,
}

/// A number and how it came to be.
#[derive(Debug, Serialize, JsonSchema)]
pub struct LineData {
    /// Its lasting name.
    pub name: String,
    /// The number.
    pub value: QuantityData,
    /// formula, sum, largest, smallest, said, measured, plate, assumed, part, chosen or solved.
    pub how: &'static str,
    /// The formula by its lasting name.
    pub formula: Option<&'static str>,
    /// Its equation.
    pub equation: Option<&'static str>,
    /// Where it comes from.
    pub sources: Vec<SourceData>,
    /// What went into it.
    pub terms: Vec<TermData>,
    /// Reason, place in the job, or part and field.
    pub says: Option<String>,
}

/// Something that went into a number.
#[derive(Debug, Serialize, JsonSchema)]
pub struct TermData {
    /// The input of the formula that it is.
    pub input: Option<&'static str>,
    /// Another number, by name.
    pub name: Option<String>,
    /// A value that stands nowhere else.
    pub value: Option<QuantityData>,
}

impl WhyAnswer {
    pub(crate) fn new(ledger: &Ledger, line: &Line, reader: &Reader) -> Self {
        let mut seen = BTreeSet::new();
        let mut lines = Vec::new();
        gather(ledger, line, reader, &mut seen, &mut lines);
        WhyAnswer { version: "oilway.why.1", number: Some(line.name.clone()), lines, choice: None }
    }
    pub(crate) fn choice(reason: &Reason, reader: &Reader) -> Self {
        let choice = Some(ChoiceData::new(reason, reader));
        WhyAnswer { version: "oilway.why.1", number: None, lines: Vec::new(), choice }
    }
    pub(crate) fn list(lines: &[&Line], reader: &Reader) -> Self {
        let lines = lines.iter().map(|line| LineData::new(line, reader)).collect();
        WhyAnswer { version: "oilway.why.1", number: None, lines, choice: None }
    }
}

fn gather(
    ledger: &Ledger,
    line: &Line,
    reader: &Reader,
    seen: &mut BTreeSet<String>,
    lines: &mut Vec<LineData>,
) {
    if !seen.insert(line.name.clone()) {
        return;
    }
    lines.push(LineData::new(line, reader));
    for term in terms(&line.how) {
        if let Term::Name(name) = term
            && let Some(line) = ledger.line(name)
        {
            gather(ledger, line, reader, seen, lines);
        }
    }
}

/// What went into a number.
pub(crate) fn terms(how: &How) -> &[Term] {
    match how {
        How::Formula(_, terms)
        | How::Sum(terms)
        | How::Largest(terms)
        | How::Smallest(terms)
        | How::Chosen(_, terms)
        | How::Solved(_, terms) => terms,
        How::Entered(..) | How::Part(..) => &[],
    }
}

fn word(how: &How) -> &'static str {
    match how {
        How::Formula(..) => "formula",
        How::Sum(_) => "sum",
        How::Largest(_) => "largest",
        How::Smallest(_) => "smallest",
        How::Entered(Origin::Said, _) => "said",
        How::Entered(Origin::Measured, _) => "measured",
        How::Entered(Origin::Plate, _) => "plate",
        How::Entered(Origin::Assumed(_), _) => "assumed",
        How::Part(..) => "part",
        How::Chosen(..) => "chosen",
        How::Solved(..) => "solved",
    }
}

impl LineData {
    fn new(line: &Line, reader: &Reader) -> Self {
        let formula = match &line.how {
            How::Formula(formula, _) => Some(*formula),
            _ => None,
        };
        let says = match &line.how {
            How::Chosen(why, _) | How::Solved(why, _) => Some(say(why, reader)),
            How::Entered(_, place) => Some(place.clone()),
            How::Part(part, field) => Some(format!("{part}, {field}")),
            How::Formula(..) | How::Sum(_) | How::Largest(_) | How::Smallest(_) => None,
        };
        let input = |place: usize| Some(formula?.inputs.get(place)?.name);
        let term = |(place, term): (usize, &Term)| match term {
            Term::Name(name) => TermData { input: input(place), name: Some(name.clone()), value: None },
            Term::Value(value) => {
                TermData { input: input(place), name: None, value: Some(QuantityData::new(*value, reader)) }
            }
        };
        LineData {
            name: line.name.clone(),
            value: QuantityData::new(line.value, reader),
            how: word(&line.how),
            formula: formula.map(|formula| formula.id),
            equation: formula.map(|formula| formula.equation),
            sources: formula
                .map_or_else(Vec::new, |formula| formula.sources.iter().map(SourceData::from).collect()),
            terms: terms(&line.how).iter().enumerate().map(term).collect(),
            says,
        }
    }
}
