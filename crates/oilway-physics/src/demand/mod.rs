//! How much lubricant a point needs, and how often.

use crate::Formula;

/// The formulas of this family.
pub(crate) const FORMULAS: &[&Formula] = &[];
