//! [`ReadError`]: why a text is no quantity, kept as data; the sentences are made where messages are.

use crate::{AnyQuantity, Dimension};

/// A text that could not be read as a quantity.
#[derive(Clone, Debug, PartialEq)]
pub struct ReadError {
    /// What was written, cut after 60 characters.
    pub text: String,
    /// What was asked for.
    pub dimension: Dimension,
    /// What is wrong with it.
    pub kind: ReadErrorKind,
}

/// What can be wrong with a text that should be a quantity.
#[derive(Clone, Debug, PartialEq)]
pub enum ReadErrorKind {
    /// Nothing is written.
    Empty,
    /// More is written than any quantity needs.
    TooLong {
        /// The number of characters.
        length: usize,
        /// The most that is read.
        most: usize,
    },
    /// There is no number in it, or one that cannot be understood.
    NoNumber,
    /// A comma that may be a decimal comma or stand between thousands.
    DoubtfulComma {
        /// How to write it if the comma is the decimal one.
        decimal: String,
        /// How to write it if the comma parts thousands.
        thousands: String,
    },
    /// A number without a unit.
    MissingUnit {
        /// The same number with the units that would do, the usual first.
        examples: Vec<String>,
    },
    /// A unit that nobody here knows for this dimension.
    UnknownUnit {
        /// What stands there.
        unit: String,
        /// The unit that is written most alike.
        nearest: Option<&'static str>,
        /// The units that would do.
        units: Vec<&'static str>,
    },
    /// A unit that measures something else.
    WrongDimension {
        /// What stands there.
        unit: String,
        /// What it measures.
        measures: Dimension,
        /// The units that would do.
        units: Vec<&'static str>,
    },
    /// A pressure above vacuum where a gauge pressure is needed.
    AbsoluteForGauge {
        /// What stands there.
        unit: String,
    },
    /// A gauge pressure, or one that does not say, where a pressure above vacuum is needed.
    GaugeForAbsolute {
        /// What stands there.
        unit: String,
        /// The unit to write instead.
        instead: &'static str,
    },
    /// A range whose first end is above its second.
    Backwards {
        /// The first end.
        first: AnyQuantity,
        /// The second end.
        second: AnyQuantity,
    },
    /// Below absolute zero or below vacuum.
    BelowNothing {
        /// The least that can be.
        least: AnyQuantity,
    },
    /// A number too large to calculate with, or a division by nothing.
    NotFinite,
    /// A tolerance that is not understood, or is negative or 100 % and more.
    BadTolerance,
}
