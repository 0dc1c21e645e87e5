//! Flow in round lines: what a pressure moves, what a flow costs, where nothing moves at all, and how a line gives.

mod bingham;
mod friction;
mod herschel_bulkley;
mod herschel_bulkley_drop;
mod line;
mod newtonian;
mod power_law;
mod speed;
mod wall;
mod yield_limit;

pub use bingham::{BINGHAM_FLOW, bingham_flow};
pub use friction::{DARCY_DROP, FRICTION_FACTOR, TRANSITION, darcy_drop, friction_factor};
pub use herschel_bulkley::{CENTRE_SPEED, HERSCHEL_BULKLEY_FLOW, centre_speed, herschel_bulkley_flow};
pub use herschel_bulkley_drop::{HERSCHEL_BULKLEY_DROP, herschel_bulkley_drop};
pub(crate) use line::FREE_FALL;
pub use line::{END_LENGTH, FITTING_LENGTH, LINE_CONTENT, STATIC_HEAD};
pub use line::{end_length, fitting_length, line_content, static_head};
pub use newtonian::{NEWTONIAN_DROP, NEWTONIAN_FLOW, newtonian_drop, newtonian_flow};
pub use power_law::{POWER_LAW_FLOW, power_law_flow};
pub use speed::{MEAN_SPEED, METZNER_REED, REYNOLDS, mean_speed, metzner_reed, reynolds};
pub use wall::{EFFECTIVE_MODULUS, HOSE_MODULUS, SURGE, WALL_MODULUS, WALL_MODULUS_ANCHORED, WAVE_SPEED};
pub use wall::{effective_modulus, hose_modulus, surge, wall_modulus, wall_modulus_anchored, wave_speed};
pub use yield_limit::{PLUG_SHARE, START_PRESSURE, WALL_STRESS, YIELD_LIMIT_LENGTH};
pub use yield_limit::{plug_share, start_pressure, wall_stress, yield_limit_length};

use crate::Formula;

/// The formulas of this family.
pub(crate) const FORMULAS: &[&Formula] = &[
    &NEWTONIAN_FLOW,
    &NEWTONIAN_DROP,
    &POWER_LAW_FLOW,
    &BINGHAM_FLOW,
    &HERSCHEL_BULKLEY_FLOW,
    &HERSCHEL_BULKLEY_DROP,
    &WALL_STRESS,
    &START_PRESSURE,
    &YIELD_LIMIT_LENGTH,
    &PLUG_SHARE,
    &CENTRE_SPEED,
    &MEAN_SPEED,
    &REYNOLDS,
    &METZNER_REED,
    &FRICTION_FACTOR,
    &DARCY_DROP,
    &STATIC_HEAD,
    &LINE_CONTENT,
    &FITTING_LENGTH,
    &END_LENGTH,
    &WALL_MODULUS,
    &WALL_MODULUS_ANCHORED,
    &HOSE_MODULUS,
    &EFFECTIVE_MODULUS,
    &WAVE_SPEED,
    &SURGE,
];
