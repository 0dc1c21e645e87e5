//! Oils: viscosity against temperature and pressure, density, stiffness with and without air, and the ISO grades.

mod density;
mod grades;
mod pressure;
mod stiffness;
mod viscosity_index;
mod walther;

pub use density::{DYNAMIC_VISCOSITY, OIL_DENSITY, dynamic_viscosity, oil_density};
pub use grades::{GRADES, Grade, grade, grade_of};
pub use pressure::{BARUS_DROP, BARUS_FACTOR, MEAN_BARUS_FACTOR, ROELANDS_VISCOSITY};
pub use pressure::{barus_drop, barus_factor, mean_barus_factor, roelands_viscosity};
pub use stiffness::{COMPRESSED_FRACTION, MODULUS_WITH_AIR, MODULUS_WITH_AIR_FAST, SECANT_MODULUS};
pub use stiffness::{compressed_fraction, modulus_with_air, modulus_with_air_fast, secant_modulus};
pub use viscosity_index::{VISCOSITY_AT_100, VISCOSITY_INDEX, viscosity_at_100, viscosity_index};
pub use walther::{WALTHER_TEMPERATURE, WALTHER_VISCOSITY, walther_temperature, walther_viscosity};

use crate::Formula;

/// The formulas of this family.
pub(crate) const FORMULAS: &[&Formula] = &[
    &WALTHER_VISCOSITY,
    &WALTHER_TEMPERATURE,
    &VISCOSITY_INDEX,
    &VISCOSITY_AT_100,
    &OIL_DENSITY,
    &DYNAMIC_VISCOSITY,
    &BARUS_FACTOR,
    &MEAN_BARUS_FACTOR,
    &BARUS_DROP,
    &ROELANDS_VISCOSITY,
    &SECANT_MODULUS,
    &MODULUS_WITH_AIR,
    &MODULUS_WITH_AIR_FAST,
    &COMPRESSED_FRACTION,
];
