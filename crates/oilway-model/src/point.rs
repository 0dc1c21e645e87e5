//! A lubrication point of the survey.

use oilway_physics::points::{Answer, PointKind};
use oilway_units::{
    AnyQuantity, Dimension, Entry, Frequency, OpenEntry, Origin, Pressure, Ratio, Time, Volume,
};

use crate::{LegWish, Surroundings};

/// An entry whose dimension is known at run time only: a field of a point's kind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AnyEntry {
    /// What it measures.
    pub dimension: Dimension,
    /// Lowest value, SI.
    pub low: f64,
    /// Typical value, SI.
    pub typical: f64,
    /// Highest value, SI.
    pub high: f64,
    /// Value in force, SI.
    pub now: f64,
    /// Where it comes from.
    pub origin: Origin,
}

impl AnyEntry {
    /// A value without a spread.
    pub fn known(value: AnyQuantity) -> Self {
        AnyEntry {
            dimension: value.dimension,
            low: value.si,
            typical: value.si,
            high: value.si,
            now: value.si,
            origin: Origin::Said,
        }
    }
    /// The value in force.
    pub fn get(&self) -> AnyQuantity {
        AnyQuantity { dimension: self.dimension, si: self.now }
    }
}

impl OpenEntry for AnyEntry {
    fn dimension(&self) -> Dimension {
        self.dimension
    }
    fn low_si(&self) -> f64 {
        self.low
    }
    fn typical_si(&self) -> f64 {
        self.typical
    }
    fn high_si(&self) -> f64 {
        self.high
    }
    fn now_si(&self) -> f64 {
        self.now
    }
    fn put_si(&mut self, si: f64) {
        self.now = si.clamp(self.low, self.high);
    }
    fn origin(&self) -> Origin {
        self.origin
    }
}

/// What the engineer entered in one field of a point.
#[derive(Clone, Debug, PartialEq)]
pub enum PointEntry {
    /// A quantity, a range, or unknown with the span that the tool takes.
    Quantity(AnyEntry),
    /// A word; `assumed` is true where the tool took it.
    Word {
        /// The word.
        word: &'static str,
        /// Whether the tool took it because nobody knew.
        assumed: bool,
    },
    /// It does not apply.
    Nothing,
}

impl PointEntry {
    /// The value in force, as the kind's demand reads it.
    pub fn answer(&self) -> Answer {
        match self {
            PointEntry::Quantity(entry) => Answer::Quantity(entry.get()),
            PointEntry::Word { word, .. } => Answer::Word(word),
            PointEntry::Nothing => Answer::Nothing,
        }
    }
}

/// An amount that the machine builder states; it goes before every formula.
#[derive(Clone, Debug)]
pub struct Given {
    /// The volume of one replenishment.
    pub quantity: Entry<Volume>,
    /// The running time between two.
    pub interval: Entry<Time>,
    /// Where it stands: `manual, page 12`.
    pub place: String,
}

/// A lubrication point.
#[derive(Clone, Debug)]
pub struct Point {
    /// Its name, unique in the job.
    pub name: String,
    /// The machine part it serves, in words.
    pub part: String,
    /// Its kind.
    pub kind: &'static dyn PointKind,
    /// One entry for each field of the kind.
    pub entries: Vec<PointEntry>,
    /// The place where it sits, by index.
    pub place: usize,
    /// Its surroundings, beyond those of the place.
    pub surroundings: Surroundings,
    /// Share of the machine's running time in which it moves.
    pub duty: Entry<Ratio>,
    /// The pressure that it holds against its line, if it was said.
    pub back_pressure: Option<Entry<Pressure>>,
    /// Its thread as written; none if unknown.
    pub thread: Option<String>,
    /// The amount that the machine builder states.
    pub given: Option<Given>,
    /// The divider it hangs on, by index in the job.
    pub divider: usize,
    /// The way from the divider to the point.
    pub route: Vec<LegWish>,
    /// Whether a person or a product is hurt if it leaks or starves; read by the checker.
    pub critical: bool,
    /// Turning speed as the kind reads it is in the entries; this is how often the tool must reach it at least, if said.
    pub at_least_every: Option<Frequency>,
}

impl Point {
    /// The answers in force, field by field.
    pub fn answers(&self) -> Vec<Answer> {
        self.entries.iter().map(PointEntry::answer).collect()
    }
}
