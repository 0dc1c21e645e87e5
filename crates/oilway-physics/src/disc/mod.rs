//! Burst discs: tolerance, temperature, the window between life and strength.

use crate::Formula;

/// The formulas of this family.
pub(crate) const FORMULAS: &[&Formula] = &[];
