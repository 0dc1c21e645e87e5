//! The pump and its reservoir: what pushes lubricant into the cylinder, what a stroke gives, how long a filling lasts, how
//! old the lubricant is when it arrives, how long priming takes.

mod filling;
mod inlet;
mod reservoir;
mod stroke;

pub use filling::{AGE, LID_FORCE, PRIMING_TIME, age_at_point, lid_force, priming_time};
pub use inlet::{
    FEED_PRESSURE, FOLLOWER_PRESSURE, INLET_TIME, LARGEST_STROKE_RATE, feed_pressure, follower_pressure,
    largest_stroke_rate, refill_time,
};
pub use reservoir::{
    CALENDAR_INTERVAL, EXPANSION, REFILL_INTERVAL, RESERVOIR, calendar_interval, expansion_ratio,
    refill_interval, reservoir_gross,
};
pub use stroke::{COMPRESSION_LOSS, STROKE_VOLUME, compression_loss, stroke_volume};

use crate::Formula;

/// The formulas of this family.
pub(crate) const FORMULAS: &[&Formula] = &[
    &FEED_PRESSURE,
    &FOLLOWER_PRESSURE,
    &STROKE_VOLUME,
    &COMPRESSION_LOSS,
    &REFILL_INTERVAL,
    &CALENDAR_INTERVAL,
    &RESERVOIR,
    &EXPANSION,
    &AGE,
    &INLET_TIME,
    &LARGEST_STROKE_RATE,
    &PRIMING_TIME,
    &LID_FORCE,
];
