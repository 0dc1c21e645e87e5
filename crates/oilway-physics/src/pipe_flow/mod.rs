//! Laminar flow in round lines: what a pressure moves, what a flow costs, and where nothing moves at all.

mod bingham;

pub use bingham::{BINGHAM_FLOW, bingham_flow};

use crate::Formula;

/// The formulas of this family.
pub(crate) const FORMULAS: &[&Formula] = &[&BINGHAM_FLOW];
