//! Quantities typed by dimension, SI inside.
//!
//! A reader finds here the quantity types ([`Length`], [`Pressure`], [`Flow`] …), the units in which people
//! write them (`unit`), reading and printing (`read`, `show`), and [`Entry`], a quantity that may be a value,
//! a range or unknown.
//!
//! Gauge and absolute pressure are two types, and so are a temperature and a difference of temperatures: what
//! must not be mixed does not compile.
//!
//! ```compile_fail
//! use oilway_units::Temperature;
//! let sum = Temperature::from_celsius(20.0) + Temperature::from_celsius(30.0); // 50 °C? 343 °C? Neither.
//! ```
//! ```compile_fail
//! use oilway_units::{AbsolutePressure, Pressure};
//! let gauge: Pressure = AbsolutePressure::from_bar(7.0); // of which atmosphere?
//! ```
//! ```compile_fail
//! use oilway_units::AbsolutePressure;
//! let below_vacuum = -AbsolutePressure::from_bar(1.0);
//! ```
//! ```
//! use oilway_units::{AbsolutePressure, Temperature, TemperatureDifference};
//! let warmer = Temperature::from_celsius(20.0).plus(TemperatureDifference::from_kelvins(30.0));
//! assert_eq!(warmer.above(Temperature::ICE_POINT).kelvins().round(), 50.0);
//! let drop = AbsolutePressure::from_bar(7.0).above(AbsolutePressure::from_bar(4.5));
//! assert_eq!(drop.bar(), 2.5);
//! ```

mod any;
mod entry;
mod exact;
mod numeral;
mod quantity;
mod read;
mod read_error;
mod said;
mod show;
mod spelling;
mod unit;

pub use any::AnyQuantity;
pub use entry::{Entry, OpenEntry, Origin};
pub use quantity::*;
pub use read::{read, read_any};
pub use read_error::{ReadError, ReadErrorKind};
pub use said::Said;
pub use show::{show, show_both, show_exact, show_span};
pub use unit::{Unit, UnitSystem, UnknownUnitSystem};
