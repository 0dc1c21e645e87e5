//! Pure formulas of lubrication engineering.
//!
//! Each formula is one [`formula!`] block: a typed function with its equation, symbols, validity, source and an example
//! that runs, and a [`Formula`] record for the calculation desk and the "why" chain. [`registry`] lists them all.
//!
//! No formula knows of jobs, parts or designs; none reads a file, a clock or a locale.

pub mod air;
pub mod demand;
pub mod disc;
mod formula;
pub mod grease;
mod ledger;
pub mod oil;
pub mod pipe_flow;
pub mod points;
pub mod progressive;
pub mod pump;
pub mod strength;

pub use formula::{Formula, NoAnswer, Range, Source, Standing, Symbol};
pub use ledger::{How, Ledger, Line, Term};

/// Every formula of the house, family by family.
pub fn registry() -> impl Iterator<Item = &'static Formula> {
    FAMILIES.iter().flat_map(|family| family.iter().copied())
}

/// The formula with this id.
pub fn find(id: &str) -> Option<&'static Formula> {
    registry().find(|formula| formula.id == id)
}

/// One line for each family: the list of its records.
const FAMILIES: &[&[&Formula]] = &[
    oil::FORMULAS,
    grease::FORMULAS,
    pipe_flow::FORMULAS,
    demand::FORMULAS,
    points::FORMULAS,
    progressive::FORMULAS,
    strength::FORMULAS,
    disc::FORMULAS,
    air::FORMULAS,
    pump::FORMULAS,
];
