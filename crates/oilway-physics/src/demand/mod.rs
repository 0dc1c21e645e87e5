//! How much lubricant a point needs, and how often.
//!
//! Rolling bearings with grease ([`grease_quantity_side`], [`grease_interval`] and its factors) and with oil
//! ([`oil_minimum`], [`oil_circulation`]), plain bearings and slideways ([`film_renewal_bearing`]), guides and screws
//! ([`travel_interval`]), gears ([`open_gear_rate`]), chains, couplings and ropes. Each gives a quantity, an interval or
//! a rate; [`mean_rate`] joins the first two, so that points of different kinds can share one system.
//!
//! Plain tables of factors, limits and defaults, each with its source, stand in [`tables`].

mod bearing_factors;
mod bearing_interval;
mod bearing_oil;
mod bearing_quantity;
mod chain;
mod coupling;
mod gear;
mod plain_bearing;
mod rate;
mod rope;
mod side_flow;
mod speed;
mod surface;
pub mod tables;
mod travel;

pub use bearing_factors::*;
pub use bearing_interval::*;
pub use bearing_oil::*;
pub use bearing_quantity::*;
pub use chain::*;
pub use coupling::*;
pub use gear::*;
pub use plain_bearing::*;
pub use rate::*;
pub use rope::*;
pub use side_flow::*;
pub use speed::*;
pub use surface::*;
pub use travel::*;

use crate::Formula;

/// Two values that differ by less than this share are one number written in two units: 65 mm read from inches, 1000 a
/// minute kept as turns a second. Rules that change at a round number look through it.
const ROUNDING: f64 = 1e-12;

/// The formulas of this family.
pub(crate) const FORMULAS: &[&Formula] = &[
    &VOLUME_OF_MASS,
    &MEAN_RATE,
    &DOSE_PER_CYCLE,
    &FRESHNESS_RATE,
    &GREASE_QUANTITY_SIDE,
    &GREASE_QUANTITY_THROUGH_RING,
    &BEARING_FREE_SPACE,
    &GREASE_INTERVAL,
    &CORRECTED_INTERVAL,
    &TEMPERATURE_FACTOR,
    &TEMPERATURE_FACTOR_HANDBOOK,
    &HOUSING_TEMPERATURE_FACTOR,
    &SERVICE_FACTOR,
    &OSCILLATION_SPEED,
    &OUTER_RING_SPEED,
    &SPEED_INDEX,
    &REFERENCE_VISCOSITY,
    &VISCOSITY_RATIO,
    &OIL_CIRCULATION,
    &OIL_MINIMUM,
    &OIL_FOR_HEAT,
    &FILM_RENEWAL_BEARING,
    &BEARING_SIDE_FLOW,
    &DEFAULT_CLEARANCE,
    &GAP_VOLUME,
    &FILM_RENEWAL_SURFACE,
    &STROKE_FILM,
    &TRAVEL_INTERVAL,
    &SCREW_INTERVAL,
    &SCREW_NUT_FILL,
    &OPEN_GEAR_RATE,
    &SPRAY_TIME,
    &MESH_FLOW,
    &CHAIN_DROPS,
    &CHAIN_SHOTS,
    &COUPLING_FILL,
    &ROPE_FILM,
];
