//! What can be bought or drawn.
//!
//! A [`Kind`] says what may be known of a sort of component, which ports it has and what it does to the lubricant; a
//! [`Part`] is one article of a kind, read from the open text files of a catalogue. The rest of the house asks the kind and
//! never matches on it.

mod kind;
pub mod kinds;
mod part;
mod port;

pub use kind::{Field, Kind, What};
pub use part::{Catalogue, Part, Price, Value};
pub use port::{Internal, Port, Role, Sex};
