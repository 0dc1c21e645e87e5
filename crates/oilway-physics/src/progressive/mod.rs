//! Series progressive dividers: cycle volume, shares, rates.

use crate::Formula;

/// The formulas of this family.
pub(crate) const FORMULAS: &[&Formula] = &[];
