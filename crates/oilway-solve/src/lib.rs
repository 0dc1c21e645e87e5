//! From a survey to a complete design: demand, metering, lines, package, protection, ports.
//!
//! Read [`design`] first: it is the order of the work. [`evaluate`] says what follows from a design, [`study`] what the unknowns
//! do to it, [`parallel`] whether another principle would serve. [`cold_start`] answers one question of its own over the telephone.
//!
//! The crate chooses; it never judges. The independent checker is another crate that shares no code with this one beyond
//! formulas.

mod assemble;
mod cold;
pub mod cold_start;
mod conduits;
mod control;
mod equipment;
mod evaluate;
mod given_sections;
mod hydraulics;
mod infeasible;
mod inlet;
mod joints;
mod layout;
mod lines;
mod losses;
pub mod metering;
mod need;
mod obstacle;
mod package;
mod ports;
mod principle;
mod protection;
mod ranges;
mod reasons;
mod relief;
mod reservoir;
mod sections;
mod shares;
mod source;
mod spread;
#[cfg(test)]
mod testing;
mod trace;
mod tree;
mod unions;
mod weather;

pub use assemble::design;
pub use evaluate::{design_flow, evaluate, season_word};
pub use hydraulics::{Hydraulics, Path, bore_of};
pub use joints::{conduit_end, mates, port_end};
pub use obstacle::Obstacle;
pub use principle::{ParallelVerdict, parallel};
pub use shares::{Doses, Shares, doses, shares};
pub use spread::{Study, study};
pub use weather::Weather;
