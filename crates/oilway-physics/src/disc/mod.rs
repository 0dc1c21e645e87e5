//! Burst discs: tolerance, temperature, the window between life and strength, the flow through the hole, and the pressure
//! of a shut-in line that warms.
//!
//! The chain from the ordered pressure to the two pressures at which a disc of the lot can burst is
//! [`lowest_burst`] and [`highest_burst`]; [`window_low`] and [`window_high`] walk it backwards. The strict policy is
//! meant throughout: even the strongest disc of the lot, at its coldest, bursts at or below the rating of the weakest part.

mod burst;
mod foil;
mod hole;
mod locked_in;
pub mod temperature;
pub mod types;
mod window;

pub use burst::{BURST_TOLERANCE, HIGHEST_BURST, LOWEST_BURST, burst_tolerance, highest_burst, lowest_burst};
pub use foil::{FOIL_BURST, foil_burst};
pub use hole::{HOLE_DROP, hole_drop};
pub use locked_in::{LOCKED_IN, locked_in_pressure};
pub use temperature::{LINEAR_TEMPERATURE, linear_temperature_factor};
pub use window::{
    OPERATING_RATIO, STEADY_MAXIMUM, WINDOW_HIGH, WINDOW_LOW, operating_ratio, steady_maximum, window_high,
    window_low,
};

use crate::Formula;

/// The formulas of this family.
pub(crate) const FORMULAS: &[&Formula] = &[
    &BURST_TOLERANCE,
    &LOWEST_BURST,
    &HIGHEST_BURST,
    &OPERATING_RATIO,
    &WINDOW_LOW,
    &WINDOW_HIGH,
    &STEADY_MAXIMUM,
    &LINEAR_TEMPERATURE,
    &HOLE_DROP,
    &LOCKED_IN,
    &FOIL_BURST,
];
