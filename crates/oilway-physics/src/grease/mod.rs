//! Greases: the flow curve, its fit to measured rows, how temperature moves it, the NLGI classes and their bands.

pub mod classes;
pub mod curve;
pub mod defaults;
pub mod fit;
mod shear;
mod standing;
mod temperature;

pub use shear::{HERSCHEL_BULKLEY_STRESS, NOMINAL_SHEAR_RATE, WALL_SHEAR_RATE};
pub use shear::{herschel_bulkley_stress, nominal_shear_rate, wall_shear_rate};
pub use standing::{STANDING_HEIGHT, standing_height};
pub use temperature::{
    CONSISTENCY_AT, RESTED_YIELD, YIELD_STRESS_AT, consistency_at, rested_yield, yield_stress_at,
};

use crate::Formula;

/// The formulas of this family.
pub(crate) const FORMULAS: &[&Formula] = &[
    &YIELD_STRESS_AT,
    &CONSISTENCY_AT,
    &RESTED_YIELD,
    &HERSCHEL_BULKLEY_STRESS,
    &NOMINAL_SHEAR_RATE,
    &WALL_SHEAR_RATE,
    &STANDING_HEIGHT,
];
