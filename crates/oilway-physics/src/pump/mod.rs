//! Pump inlet, reservoir, filling and the age of what arrives.

use crate::Formula;

/// The formulas of this family.
pub(crate) const FORMULAS: &[&Formula] = &[];
