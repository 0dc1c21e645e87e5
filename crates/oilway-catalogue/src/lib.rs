//! What can be bought or drawn.
//!
//! A [`Kind`] says what may be known of a sort of component, which ports it has and what it does to the lubricant; a
//! [`Part`] is one article of a kind, read from the open text files of a catalogue. The rest of the house asks the kind and
//! never matches on it: it takes the typed view of a part, `kinds::Pump::of(part)`.
//!
//! [`catalogue_from`] reads such files, [`house`] holds the invented range that comes with the workbench, and [`reading`]
//! is the TOML reader with places and cures that every file of the house goes through. [`bearings`] and [`lubricants`] are
//! libraries of what a survey names.

pub mod bearings;
mod catalogue_files;
pub mod house;
mod kind;
pub mod kinds;
pub mod lubricants;
mod part;
mod port;
mod price;
pub mod reading;
mod threads;

pub use catalogue_files::{catalogue_from, catalogue_over};
pub use kind::{Contradiction, Field, Kind, What};
pub use part::{Catalogue, Part, Price, Value};
pub use port::{Internal, Port, Role, Sex};
pub use threads::{NotAThread, Thread, ThreadFamily};
