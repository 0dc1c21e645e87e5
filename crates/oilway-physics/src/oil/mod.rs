//! Oils: viscosity against temperature and pressure, density, stiffness with and without air.

use crate::Formula;

/// The formulas of this family.
pub(crate) const FORMULAS: &[&Formula] = &[];
