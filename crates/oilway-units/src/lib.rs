//! Quantities typed by dimension, SI inside.
//!
//! A reader finds here the quantity types ([`Length`], [`Pressure`], [`Flow`] …), the units in which people
//! write them (`unit`), reading and printing (`read`, `show`), and [`Entry`], a quantity that may be a value,
//! a range or unknown.
//!
//! Gauge and absolute pressure are two types, and so are a temperature and a difference of temperatures: what
//! must not be mixed does not compile.

mod any;
mod entry;
mod quantity;
mod read_error;
mod said;
mod show;
mod unit;

pub use any::AnyQuantity;
pub use entry::{Entry, OpenEntry, Origin};
pub use quantity::*;
pub use read_error::{ReadError, ReadErrorKind};
pub use said::Said;
pub use show::{show, show_both, show_exact, show_span};
pub use unit::{Unit, UnitSystem, UnknownUnitSystem};
