//! Sheets made from one model: what a customer, a buyer, a fitter and an operator get on paper.
//!
//! A sheet is contents first ([`Sheet`], [`Block`]): functions in [`sheets`] arrange the numbers of a design, its answer and its
//! findings, and hold no engineering. Writers come after: [`text`] for screen and print, [`csv`] for tables. The parts list
//! ([`parts_list()`]) is data of its own, so that quote, bench and purchase count the same pieces. [`cautions`] are picked by what the
//! design holds and stand at the step where the hazard stands.

pub mod cautions;
pub mod csv;
mod entries;
mod names;
mod parts_list;
mod seals;
mod sheet;
pub mod sheets;
#[cfg(test)]
mod testing;
pub mod text;
mod words;

pub use parts_list::{
    Amount, Items, PartsLine, Seal, Spare, Totals, line_price, open_positions, parts_list, seals, spares,
    totals,
};
pub use seals::{seal, takes_a_ring};
pub use sheet::{Align, Band, BandSort, Block, Column, Ladder, LadderColumn, LadderMark, Sheet, Table};
