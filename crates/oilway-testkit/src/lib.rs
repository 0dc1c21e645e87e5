//! For tests only: published check values, tables and worked jobs.
//!
//! A reader finds here [`published`], which reads the check values of one formula from `reference/`, the [`Check`] that
//! compares a result with what a book printed, and [`table`] and [`data_table`] for values in columns; [`jobs`] writes random job
//! files. Everything panics with file, place and cure when something does not fit: the readers are tests.
//!
//! ```
//! use oilway_testkit::published;
//! use oilway_units::{Density, Mass, Quantity, Volume};
//!
//! for check in published("demand/mass-to-volume") {
//!     let (mass, density) = (check.given::<Mass>("mass"), check.given::<Density>("density"));
//!     check.holds("result", Volume::from_si(mass.si() / density.si()));
//! }
//! ```

mod check;
mod files;
pub mod jobs;
mod sources;
mod table;

pub use check::{Check, Standing};
pub use files::{every_check, published, reference_files, root};
pub use sources::{SourceEntry, sources};
pub use table::{Row, Table, data_table, table};
