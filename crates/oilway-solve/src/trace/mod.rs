//! How every number of an answer came to be, written into the ledger after the answer is known.
//!
//! Nothing here decides anything: each line names the formula and the terms that give the number once more, and the law test at the foot
//! of this module puts them to the formula again. A run without a ledger never comes here. The names stand in [`crate::evaluate()`].

mod delivery;
mod entries;
mod lubricant;
mod package;
mod paths;
mod protection;
#[cfg(test)]
mod tests;

use oilway_catalogue::{Part, Value};
use oilway_model::{Answer, Design};
use oilway_physics::{Formula, How, Ledger, Line, Term};
use oilway_text::Message;
use oilway_units::{AnyQuantity, Flow, Volume};

use crate::hydraulics::Hydraulics;
use crate::shares::Shares;

/// What an evaluation knows when its answer is done.
pub(crate) struct Known<'a> {
    /// The design.
    pub design: &'a Design,
    /// Its walk.
    pub hydraulics: &'a Hydraulics<'a>,
    /// Who gets what.
    pub shares: &'a Shares,
    /// The node of each point.
    pub nodes: &'a [usize],
    /// Content of the line to each node.
    pub contents: &'a [Volume],
    /// The design flow.
    pub flow: Flow,
    /// The answer.
    pub answer: &'a Answer,
}

/// Writes all lines that the formulas of demand have not written themselves.
pub(crate) fn trace(known: &Known<'_>, ledger: &mut Ledger) {
    let mut book = Book { known, ledger };
    entries::trace(&mut book);
    lubricant::trace(&mut book);
    delivery::trace(&mut book);
    package::trace(&mut book);
    paths::trace(&mut book);
    protection::trace(&mut book);
}

/// The ledger with what is to be written into it.
struct Book<'a> {
    known: &'a Known<'a>,
    ledger: &'a mut Ledger,
}

impl Book<'_> {
    fn line(&mut self, name: impl Into<String>, value: impl Into<AnyQuantity>, how: How) {
        let (name, value) = (name.into(), value.into());
        self.ledger.record(|| Line { name, value, how });
    }

    fn formula(
        &mut self,
        name: impl Into<String>,
        formula: &'static Formula,
        value: impl Into<AnyQuantity>,
        terms: Vec<Term>,
    ) {
        self.line(name, value, How::Formula(formula, terms));
    }

    fn sum(&mut self, name: impl Into<String>, value: impl Into<AnyQuantity>, terms: Vec<Term>) {
        self.line(name, value, How::Sum(terms));
    }

    fn solved(
        &mut self,
        name: impl Into<String>,
        value: impl Into<AnyQuantity>,
        how: Message,
        terms: Vec<Term>,
    ) {
        self.line(name, value, How::Solved(how, terms));
    }

    /// The quantity in a field of a part, as a term; nothing if the field is empty.
    fn part(&mut self, part: &Part, field: &'static str) -> Option<Term> {
        let Some(Value::Quantity(value)) = part.value(field) else { return None };
        let name = format!("part.{}.{field}", part.id);
        self.line(name.clone(), *value, How::Part(part.id.clone(), field));
        Some(Term::Name(name))
    }

    /// The same with the value that holds where the field is empty.
    fn part_or(&mut self, part: &Part, field: &'static str, otherwise: impl Into<AnyQuantity>) -> Term {
        self.part(part, field).unwrap_or(Term::Value(otherwise.into()))
    }

    /// A choice: entered where the job gave it, else with the reason why the tool took it.
    fn choice(&mut self, at: &str, value: impl Into<AnyQuantity>, considered: Vec<Term>) {
        let reason = self.known.design.reasons.iter().find(|r| r.at == at);
        let how = match reason {
            Some(reason) if !reason.kept => How::Chosen(reason.why.clone(), considered),
            _ => How::Entered(oilway_units::Origin::Said, at.to_owned()),
        };
        self.line(at, value, how);
    }
}

/// Another number of the ledger.
fn named(name: impl Into<String>) -> Term {
    Term::Name(name.into())
}

/// A value that stands nowhere else.
fn value(quantity: impl Into<AnyQuantity>) -> Term {
    Term::Value(quantity.into())
}
