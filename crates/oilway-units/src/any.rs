//! A quantity whose dimension is known only at run time: for tables, files, messages and the calculation desk.

use crate::{Dimension, Quantity};

/// A value in SI units together with its dimension.
///
/// ```
/// use oilway_units::{AnyQuantity, Length, Pressure};
///
/// let bore = AnyQuantity::from(Length::from_millimetres(8.0));
/// assert_eq!(bore.get::<Length>(), Some(Length::from_millimetres(8.0)));
/// assert_eq!(bore.get::<Pressure>(), None);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct AnyQuantity {
    /// What is measured.
    pub dimension: Dimension,
    /// How much of it, in the SI unit of the dimension.
    pub si: f64,
}

impl AnyQuantity {
    /// This much, in the SI unit of the dimension.
    pub const fn new(dimension: Dimension, si: f64) -> Self {
        AnyQuantity { dimension, si }
    }

    /// The typed quantity, if it is of that dimension.
    pub fn get<T: Quantity>(self) -> Option<T> {
        (self.dimension == T::DIMENSION).then(|| T::from_si(self.si))
    }
}

impl<T: Quantity> From<T> for AnyQuantity {
    fn from(quantity: T) -> Self {
        AnyQuantity { dimension: T::DIMENSION, si: quantity.si() }
    }
}
