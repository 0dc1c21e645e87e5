//! Compressed air: force balance, free air, flow through valves and tubes, stroke time.

use crate::Formula;

/// The formulas of this family.
pub(crate) const FORMULAS: &[&Formula] = &[];
