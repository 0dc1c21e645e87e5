//! The kind of component: its fields, its ports and what it does.

use oilway_units::{Dimension, Pressure};

use oilway_physics::Range;

use crate::Part;

/// What may stand in a field of a part.
#[derive(Clone, Copy, Debug)]
pub enum What {
    /// A quantity.
    Quantity(Dimension, Range),
    /// A list of quantities.
    Quantities(Dimension, Range),
    /// One of these words.
    Word(&'static [&'static str]),
    /// Any text: a name, a thread, another part's id.
    Text,
    /// A list of texts.
    Texts,
    /// Several of these words.
    Words(&'static [&'static str]),
    /// The id of another part, which must be of this kind.
    Part(&'static str),
    /// The ids of other parts, all of this kind.
    Parts(&'static str),
    /// Yes or no.
    Flag,
}

/// One property of a kind of part.
#[derive(Clone, Copy, Debug)]
pub struct Field {
    /// The key in catalogue files and the column of the spreadsheet.
    pub name: &'static str,
    /// What may stand there.
    pub what: What,
    /// Whether a part without it is refused.
    pub needed: bool,
    /// What it means, in English.
    pub meaning: &'static str,
}

/// A kind of component. One file in `kinds/` and one line of [`crate::kinds::KINDS`].
pub trait Kind: Sync + core::fmt::Debug {
    /// The lasting word in catalogue and job files, in plain English: `burst disc`.
    fn id(&self) -> &'static str;
    /// One line that says what it is.
    fn title(&self) -> &'static str;
    /// What may be known of a part of this kind.
    fn fields(&self) -> &'static [Field];
    /// Whether the part holds all that its typed view needs.
    fn is_complete(&self, part: &Part) -> bool;
    /// The highest steady pressure that a part may see at its coolest, if it is a part that holds pressure.
    fn rating(&self, _part: &Part) -> Option<Pressure> {
        None
    }
    /// Contradictions inside one part: a lowest above a highest, a wall thicker than half the tube. Names the field, or `port`,
    /// and the reason.
    fn contradictions(&self, _part: &Part) -> Vec<Contradiction> {
        Vec::new()
    }
}

/// What cannot be in one part: the name of the field that shows it, or `port`, and the reason.
pub type Contradiction = (&'static str, oilway_text::Message);
