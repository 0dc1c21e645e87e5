//! [`Said`]: what somebody wrote where a quantity was asked for: a value, a range, or that nobody knows.

use crate::{Entry, Quantity};

/// What was said about a quantity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Said<T> {
    /// One value.
    Value(T),
    /// A range from its lower to its upper end.
    Range(T, T),
    /// It is not known.
    Unknown,
}

impl<T> Said<T> {
    /// The same statement about another type.
    pub fn map<U>(self, change: impl Fn(T) -> U) -> Said<U> {
        match self {
            Said::Value(value) => Said::Value(change(value)),
            Said::Range(low, high) => Said::Range(change(low), change(high)),
            Said::Unknown => Said::Unknown,
        }
    }

    /// The value, if it was exactly one.
    pub fn value(self) -> Option<T> {
        match self {
            Said::Value(value) => Some(value),
            Said::Range(..) | Said::Unknown => None,
        }
    }
}

impl<T: Quantity> Said<T> {
    /// The entry of a job that follows, unless nothing is known.
    pub fn entry(self) -> Option<Entry<T>> {
        match self {
            Said::Value(value) => Some(Entry::known(value)),
            Said::Range(low, high) => Some(Entry::range(low, high)),
            Said::Unknown => None,
        }
    }
}
