//! Progressive dividers: volumes of a cycle, shares of the outlets, rates, one divider behind another.
//!
//! Volumes of a section are those of one outlet. A divider passes nothing at all while one working outlet is blocked, so an
//! outlet without a point is joined, never plugged.

mod cycle;
mod nested;

pub use cycle::{
    CYCLE_RATE, CYCLE_VOLUME, CYCLES_PER_EVENT, DELIVERED, SHARE, SHORT_RUN_ERROR, cycle_rate, cycle_volume,
    cycles_per_event, delivered_rate, outlet_share, short_run_error,
};
pub use nested::{NESTED_DELIVERED, SECONDARY_CYCLES, nested_delivered_rate, secondary_cycle_rate};

use crate::Formula;

/// The formulas of this family.
pub(crate) const FORMULAS: &[&Formula] = &[
    &CYCLE_VOLUME,
    &SHARE,
    &CYCLE_RATE,
    &DELIVERED,
    &CYCLES_PER_EVENT,
    &SHORT_RUN_ERROR,
    &SECONDARY_CYCLES,
    &NESTED_DELIVERED,
];
