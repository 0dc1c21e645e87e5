//! The ledger: how every number of a design came to be.
//!
//! A computation passes a [`Ledger`] along. When it is off it costs one branch; when it is on it keeps a [`Line`] for each
//! number, with the formula and the names of the numbers that went into it. `oilway why` walks these lines down to what the
//! engineer said and to the assumptions.

use std::collections::BTreeMap;

use oilway_text::Message;
use oilway_units::{AnyQuantity, Origin};

use crate::Formula;

/// An ingredient of a number.
#[derive(Clone, Debug, PartialEq)]
pub enum Term {
    /// Another number of the ledger, by name.
    Name(String),
    /// A value that stands nowhere else in the ledger: a constant of the formula's table, for example.
    Value(AnyQuantity),
}

/// How a number came to be.
#[derive(Clone, Debug)]
pub enum How {
    /// A registered formula; the terms stand in the order of its inputs.
    Formula(&'static Formula, Vec<Term>),
    /// The sum of terms.
    Sum(Vec<Term>),
    /// The largest of the terms.
    Largest(Vec<Term>),
    /// The smallest of the terms.
    Smallest(Vec<Term>),
    /// Said in the job, measured, read off a plate, or assumed; the text names the place in the job file.
    Entered(Origin, String),
    /// A property of a part: the part's id and the field.
    Part(String, &'static str),
    /// Chosen by the tool, for this reason, considering these numbers.
    Chosen(Message, Vec<Term>),
    /// The root of an equation found by iteration; the message says which.
    Solved(Message, Vec<Term>),
}

/// One number and how it came to be.
#[derive(Clone, Debug)]
pub struct Line {
    /// The lasting name of the number, words joined by dots: `point.cold belt 1.demand`.
    pub name: String,
    /// The number.
    pub value: AnyQuantity,
    /// How it came to be.
    pub how: How,
}

/// The book of numbers, or nothing at all when it is off.
#[derive(Debug, Default)]
pub struct Ledger {
    lines: Option<BTreeMap<String, Line>>,
}

impl Ledger {
    /// A ledger that keeps nothing.
    pub fn off() -> Self {
        Ledger { lines: None }
    }
    /// A ledger that keeps every line.
    pub fn on() -> Self {
        Ledger { lines: Some(BTreeMap::new()) }
    }
    /// Whether lines are kept; lets a caller skip work that only serves the ledger.
    pub fn is_on(&self) -> bool {
        self.lines.is_some()
    }
    /// Keeps a line; the closure runs only when the ledger is on. A later line of the same name takes the place of the earlier.
    pub fn record(&mut self, line: impl FnOnce() -> Line) {
        if let Some(lines) = &mut self.lines {
            let line = line();
            lines.insert(line.name.clone(), line);
        }
    }
    /// Keeps the result of a registered formula.
    pub fn formula(
        &mut self,
        name: impl FnOnce() -> String,
        formula: &'static Formula,
        value: impl Into<AnyQuantity>,
        terms: impl FnOnce() -> Vec<Term>,
    ) {
        if self.lines.is_some() {
            let value = value.into();
            self.record(|| Line { name: name(), value, how: How::Formula(formula, terms()) });
        }
    }
    /// The line of this name.
    pub fn line(&self, name: &str) -> Option<&Line> {
        self.lines.as_ref()?.get(name)
    }
    /// All lines, by name.
    pub fn lines(&self) -> impl Iterator<Item = &Line> {
        self.lines.iter().flat_map(BTreeMap::values)
    }
}

/// Shorthand for a term that is another number of the ledger.
impl From<String> for Term {
    fn from(name: String) -> Self {
        Term::Name(name)
    }
}

/// Shorthand for a term that is a bare value.
impl From<AnyQuantity> for Term {
    fn from(value: AnyQuantity) -> Self {
        Term::Value(value)
    }
}
