//! A sheet as contents: what is said, in which order, with which numbers. How it looks is the writer's affair, so that text,
//! drawing and printed page show the same contents.

use oilway_text::{Arg, Message};
use oilway_units::Pressure;

use crate::cautions::Caution;

/// A sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// What stands at its head.
    pub title: Message,
    /// What it holds, from top to bottom.
    pub blocks: Vec<Block>,
}

/// One piece of a sheet.
#[derive(Clone, Debug, PartialEq)]
pub enum Block {
    /// The head of a section.
    Heading(Message),
    /// A sentence or two.
    Say(Message),
    /// Something that must be read before anything else on the sheet.
    Stop(Message),
    /// Rows and columns.
    Table(Table),
    /// The pressure ladder.
    Ladder(Ladder),
    /// Sentences without an order among them.
    List(Vec<Message>),
    /// A step of work that somebody ticks off.
    Step {
        /// Its number on the sheet.
        number: usize,
        /// What to do.
        what: Message,
    },
    /// A caution, standing before the step that it belongs to.
    Caution(&'static Caution),
}

/// Rows and columns. A row with fewer cells than there are columns is empty at its end.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Table {
    /// The columns.
    pub columns: Vec<Column>,
    /// The rows.
    pub rows: Vec<Vec<Arg>>,
    /// Sums and the like, set apart below the rows.
    pub foot: Vec<Vec<Arg>>,
}

/// A column of a table.
#[derive(Clone, Debug, PartialEq)]
pub struct Column {
    /// What stands above it.
    pub title: Message,
    /// To which side its cells stand.
    pub align: Align,
}

/// To which side a cell stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Align {
    /// Words.
    Left,
    /// Numbers.
    Right,
}

impl Table {
    /// A table with these columns and no rows yet.
    pub fn new(columns: impl IntoIterator<Item = Column>) -> Self {
        Table { columns: columns.into_iter().collect(), ..Table::default() }
    }
}

impl Column {
    /// A column of words.
    pub fn words(title: Message) -> Self {
        Column { title, align: Align::Left }
    }
    /// A column of numbers.
    pub fn numbers(title: Message) -> Self {
        Column { title, align: Align::Right }
    }
}

/// All pressures of a system on one vertical scale: every question about too much or too little pressure is the same question.
#[derive(Clone, Debug, PartialEq)]
pub struct Ladder {
    /// The upper end of the scale; what lies above it stands in the legend only.
    pub top: Pressure,
    /// The columns: the seasons, and the disc.
    pub columns: Vec<LadderColumn>,
    /// Single pressures.
    pub marks: Vec<LadderMark>,
}

/// A column of the ladder.
#[derive(Clone, Debug, PartialEq)]
pub struct LadderColumn {
    /// What stands above it.
    pub title: Message,
    /// Its bands.
    pub bands: Vec<Band>,
}

/// A band of pressures.
#[derive(Clone, Debug, PartialEq)]
pub struct Band {
    /// What sort of band, which decides how it is filled.
    pub sort: BandSort,
    /// Its lower end.
    pub low: Pressure,
    /// Its upper end.
    pub high: Pressure,
}

/// What a band means.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum BandSort {
    /// What the paths ask, from the easiest to the worst.
    Working,
    /// Where the disc bursts, from the weakest one on a hot day to the strongest on a cold one.
    Burst,
    /// Where the marked pressure of a disc may lie.
    Window,
}

/// A single pressure of the ladder.
#[derive(Clone, Debug, PartialEq)]
pub struct LadderMark {
    /// The pressure.
    pub at: Pressure,
    /// The column to which it belongs; none if it holds across all.
    pub column: Option<usize>,
    /// What it is.
    pub what: Message,
}
