//! What a tube, a hose or a gauge may see.
//!
//! Thin and thick walls ([`barlow_outside`], [`lame_hoop`]), the codes and standards built on them ([`b31_3`],
//! [`din_2413_static`], [`iso_10763`], [`copper_tube`]), plastic tube, bends and gauges. The same tube has another rated
//! pressure in every one of them: a rated pressure without its basis is not a number.
//!
//! Where a shape cannot exist (a bore not smaller than the outside), an allowed pressure is zero and a stress infinite,
//! the limits toward which the formulas go.

mod b31_3;
mod bend;
mod burst;
mod copper;
mod din_2413;
mod gauge;
mod growth;
mod plastic;
pub mod tables;
mod thick_wall;
mod thin_wall;

pub use b31_3::*;
pub use bend::*;
pub use burst::*;
pub use copper::*;
pub use din_2413::*;
pub use gauge::*;
pub use growth::*;
pub use plastic::*;
pub use thick_wall::*;
pub use thin_wall::*;

use crate::Formula;

/// The formulas of this family.
pub(crate) const FORMULAS: &[&Formula] = &[
    &BARLOW_OUTSIDE,
    &BARLOW_MEAN,
    &LAME_HOOP,
    &LAME_DESIGN,
    &LAME_HOOP_AT,
    &LAME_AXIAL,
    &ISO_10763,
    &BURST_ESTIMATE,
    &DIN_2413_STATIC,
    &DIN_2413_FATIGUE,
    &B31_3,
    &COPPER_TUBE,
    &COPPER_STRESS,
    &PLASTIC_TEMPERATURE_FACTOR,
    &PLASTIC_WORKING,
    &BEND_WALL,
    &GAUGE_FULL_SCALE,
    &TUBE_GROWTH,
];
