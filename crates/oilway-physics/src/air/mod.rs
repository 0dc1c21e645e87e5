//! Compressed air: force balance, free air, flow through valves and tubes, stroke time, and which valve a drive needs.
//!
//! Pressures of the flow formulas are absolute. Flows and volumes of free air are at the reference atmosphere of ISO 8778,
//! 20 °C and 1 bar. What turns the pump's stroke into oil or grease stands in [`crate::pump`].

mod atmosphere;
mod conductance;
pub mod drives;
mod filling;
mod flow;
mod force;
mod free_air;
mod stroke;

pub use atmosphere::{ATMOSPHERE, atmosphere_at};
pub use conductance::{
    CONDUCTANCE_OF_CV, CONDUCTANCE_OF_KV, SERIES, TUBE, TUBE_WITH_ENTRY, conductance_in_series,
    conductance_of_cv, conductance_of_kv, tube_conductance, tube_with_entry_conductance,
};
pub use filling::{EXHAUST_TIME, FILL_TIME, exhaust_time, fill_time};
pub use flow::{CHOKED_FLOW, conductance_flow};
pub use force::{
    AREA_RATIO, PISTON_AREA, ROD_SIDE_AREA_RATIO, STALL, STALL_BY_FORCE, area_ratio, piston_area,
    rod_side_area_ratio, stall_by_force, stall_pressure,
};
pub use free_air::{FREE_AIR, free_air};
pub use stroke::{
    DRIVING_PRESSURE, STROKE_TIME, TRAPPED_AIR, driving_pressure, stroke_time, trapped_air_pressure,
};

use crate::Formula;

/// Reference pressure of free air, ISO 8778: 1 bar.
pub(crate) const REFERENCE_PRESSURE: f64 = 1e5;
/// Reference temperature of free air, ISO 8778: 20 °C, in kelvins.
pub(crate) const REFERENCE_TEMPERATURE: f64 = 293.15;
/// Reference density of free air, ISO 8778, in kg/m³.
const REFERENCE_DENSITY: f64 = 1.185;

/// The formulas of this family.
pub(crate) const FORMULAS: &[&Formula] = &[
    &PISTON_AREA,
    &AREA_RATIO,
    &ROD_SIDE_AREA_RATIO,
    &STALL,
    &STALL_BY_FORCE,
    &ATMOSPHERE,
    &FREE_AIR,
    &CHOKED_FLOW,
    &SERIES,
    &TUBE,
    &TUBE_WITH_ENTRY,
    &CONDUCTANCE_OF_CV,
    &CONDUCTANCE_OF_KV,
    &FILL_TIME,
    &EXHAUST_TIME,
    &DRIVING_PRESSURE,
    &STROKE_TIME,
    &TRAPPED_AIR,
];
