//! The parts list: every part of a design, once, with how many, where they sit and what they cost.
//!
//! A part that two ports name is one part: the pump is named by the block that carries it and by the valve that feeds it. The
//! fitting at the block's outlet is named by the port and by the joint of the first line, and is one fitting.

mod collect;
mod money;
mod open;
mod spares;

use std::collections::BTreeMap;
use std::sync::Arc;

use oilway_catalogue::{Part, Price};
use oilway_model::Design;
use oilway_text::Message;
use oilway_units::Length;

pub use money::{Totals, line_price, totals};
pub(crate) use open::mate;
pub use open::open_positions;
pub use spares::{Seal, Spare, seals, spares};

/// How much of a part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// So many pieces.
    Pieces(u64),
    /// Something sold by the metre.
    Metres {
        /// What the lines need, with the cutting allowance of every stretch.
        needed: Length,
        /// Whole metres to buy.
        bought: u64,
    },
}

impl Amount {
    /// The number by which the unit price is multiplied.
    pub fn bought(self) -> u64 {
        match self {
            Amount::Pieces(pieces) => pieces,
            Amount::Metres { bought, .. } => bought,
        }
    }
}

/// A line of the parts list.
#[derive(Clone, Debug)]
pub struct PartsLine {
    /// Its number in this list, from 1; the other sheets refer to it.
    pub item: u32,
    /// The part.
    pub part: Arc<Part>,
    /// How much of it, spares included.
    pub amount: Amount,
    /// Where it sits, one entry for each piece or stretch.
    pub at: Vec<Message>,
}

impl PartsLine {
    /// The part's id.
    pub fn id(&self) -> &str {
        &self.part.id
    }
    /// Price of a piece or a metre.
    pub fn unit_price(&self) -> Option<&Price> {
        self.part.price.as_ref()
    }
}

/// The parts list of a design: the package first, then dividers, lines and joints, each in the order of the design.
pub fn parts_list(design: &Design) -> Vec<PartsLine> {
    collect::Collection::of(design).lines()
}

/// Item numbers by part id.
#[derive(Clone, Debug, Default)]
pub struct Items(BTreeMap<String, u32>);

impl Items {
    /// The numbers in the parts list of a design.
    pub fn of(design: &Design) -> Self {
        // The first line of a part gives its number: a part is bought by the metre or by the piece, hardly ever by both.
        let lines = parts_list(design).into_iter().rev();
        Items(lines.map(|line| (line.part.id.clone(), line.item)).collect())
    }
    /// The number of a part; none if it is not in the list.
    pub fn item(&self, part: &Part) -> Option<u32> {
        self.0.get(&part.id).copied()
    }
}

#[cfg(test)]
mod tests;
