//! [`Entry`]: a quantity of a job that may be known, a range, or assumed by the workbench, and the value at present
//! in force. A study of the spread walks the entries of a job as `&mut dyn OpenEntry` and moves each inside its
//! range; every calculation asks [`Entry::get`] and need not know whether it is part of a study.

use crate::{AnyQuantity, Dimension, Quantity};

/// Where an entry comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Origin {
    /// Somebody said or wrote it.
    Said,
    /// It was measured at the machine.
    Measured,
    /// It was read off a nameplate.
    Plate,
    /// The workbench assumed it; the key names the assumption in the list that goes with every job.
    Assumed(&'static str),
}

/// A quantity with its range, its typical value, the value now in force, and where it comes from.
///
/// Always `low ≤ typical ≤ high` and `low ≤ now ≤ high`.
///
/// ```
/// use oilway_units::{Entry, Length};
///
/// let mut run = Entry::range(Length::from_metres(6.0), Length::from_metres(8.0));
/// assert_eq!(run.get(), Length::from_metres(7.0));
/// run.settle(Length::from_metres(9.0)); // outside: the nearest end holds
/// assert_eq!(run.get(), Length::from_metres(8.0));
/// run.reset();
/// assert_eq!(run.get(), Length::from_metres(7.0));
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Entry<T> {
    low: T,
    typical: T,
    high: T,
    now: T,
    origin: Origin,
}

impl<T: Quantity> Entry<T> {
    /// One value that somebody said, without a spread.
    pub fn known(value: T) -> Self {
        Entry { low: value, typical: value, high: value, now: value, origin: Origin::Said }
    }

    /// A range that somebody said; its middle is typical. The ends may come in either order.
    pub fn range(one_end: T, other_end: T) -> Self {
        let typical = T::from_si(0.5 * one_end.si() + 0.5 * other_end.si());
        Entry::ordered(one_end, typical, other_end, Origin::Said)
    }

    /// A value that the workbench assumed, with the range in which it may lie and the key of the assumption.
    pub fn assumed(low: T, typical: T, high: T, key: &'static str) -> Self {
        Entry::ordered(low, typical, high, Origin::Assumed(key))
    }

    fn ordered(one_end: T, typical: T, other_end: T, origin: Origin) -> Self {
        let (low, high) = if one_end <= other_end { (one_end, other_end) } else { (other_end, one_end) };
        let typical = inside(low, typical, high);
        Entry { low, typical, high, now: typical, origin }
    }

    /// The same entry with another origin.
    pub fn with_origin(self, origin: Origin) -> Self {
        Entry { origin, ..self }
    }

    /// The value in force.
    pub fn get(&self) -> T {
        self.now
    }
    /// The lower end of the range.
    pub fn low(&self) -> T {
        self.low
    }
    /// The value that holds when nobody moves it.
    pub fn typical(&self) -> T {
        self.typical
    }
    /// The upper end of the range.
    pub fn high(&self) -> T {
        self.high
    }
    /// True if there is a range to move in.
    pub fn is_open(&self) -> bool {
        self.low < self.high
    }
    /// Where it comes from.
    pub fn origin(&self) -> Origin {
        self.origin
    }

    /// Puts a value in force; what lies outside the range is moved to its nearest end.
    pub fn settle(&mut self, value: T) {
        self.now = inside(self.low, value, self.high);
    }
    /// Puts the typical value back in force.
    pub fn reset(&mut self) {
        self.now = self.typical;
    }

    /// The entry after a change of all its values, in the same dimension: a safety factor, a rounding. The change
    /// must be monotonic for the ends to stay the ends; it may be a falling one.
    pub fn map(self, change: impl Fn(T) -> T) -> Self {
        let mut changed =
            Entry::ordered(change(self.low), change(self.typical), change(self.high), self.origin);
        changed.settle(change(self.now));
        changed
    }
}

/// The value, or the nearest end of the range. What is not a number becomes the lower end.
fn inside<T: Quantity>(low: T, value: T, high: T) -> T {
    if value >= high {
        high
    } else if value >= low {
        value
    } else {
        low
    }
}

impl<T: Quantity> From<T> for Entry<T> {
    fn from(value: T) -> Self {
        Entry::known(value)
    }
}

/// An [`Entry`] seen without its type, so that a study of the spread can walk entries of all dimensions.
pub trait OpenEntry {
    /// What is measured.
    fn dimension(&self) -> Dimension;
    /// The lower end of the range, SI.
    fn low_si(&self) -> f64;
    /// The value that holds when nobody moves it, SI.
    fn typical_si(&self) -> f64;
    /// The upper end of the range, SI.
    fn high_si(&self) -> f64;
    /// The value in force, SI.
    fn now_si(&self) -> f64;
    /// Puts a value in force, given in SI; what lies outside the range is moved to its nearest end.
    fn put_si(&mut self, si: f64);
    /// Where it comes from.
    fn origin(&self) -> Origin;

    /// True if there is a range to move in.
    fn is_open(&self) -> bool {
        self.low_si() < self.high_si()
    }
    /// The value in force, with its dimension.
    fn now(&self) -> AnyQuantity {
        AnyQuantity::new(self.dimension(), self.now_si())
    }
}

impl<T: Quantity> OpenEntry for Entry<T> {
    fn dimension(&self) -> Dimension {
        T::DIMENSION
    }
    fn low_si(&self) -> f64 {
        self.low.si()
    }
    fn typical_si(&self) -> f64 {
        self.typical.si()
    }
    fn high_si(&self) -> f64 {
        self.high.si()
    }
    fn now_si(&self) -> f64 {
        self.now.si()
    }
    fn put_si(&mut self, si: f64) {
        self.settle(T::from_si(si));
    }
    fn origin(&self) -> Origin {
        self.origin
    }
}
