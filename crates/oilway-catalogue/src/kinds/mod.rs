//! The kinds of component. Each has a typed view, `Pump::of(part)`, whose quantities are read once, so that nobody looks
//! up strings in a loop.

#[macro_use]
mod declare;

mod air_line;
mod air_valve;
mod burst_disc;
mod contradiction;
mod disc_holder;
mod divider;
mod fitting;
mod gauge;
mod line;
mod metering_valve;
mod port_block;
mod pump;
mod reservoir;
mod reservoir_fittings;
mod section;
mod signal;

pub use air_line::{AirFilter, AirRegulator, Silencer};
pub use air_valve::{AirValve, ValveFunction};
pub use burst_disc::{BurstDisc, DiscUse};
pub use disc_holder::{DiscHolder, Discharge};
pub use divider::Divider;
pub use fitting::{Adapter, CheckValve, Fitting, Plug, Shape, ShutOffValve};
pub use gauge::Gauge;
pub use line::{Hose, Tube, TubeMaterial};
pub use metering_valve::MeteringValve;
pub use port_block::{BlockPlace, PortBlock};
pub use pump::{Drive, Medium, Pump};
pub use reservoir::Reservoir;
pub use reservoir_fittings::{Breather, FillingCoupling, LevelSwitch, LubricantFilter};
pub use section::Section;
pub use signal::{Controller, CycleSwitch, PressureSwitch};

use crate::Kind;
pub(crate) use declare::words;

/// Every kind of component.
pub static KINDS: &[&dyn Kind] = &[
    &pump::PumpKind,
    &reservoir::ReservoirKind,
    &port_block::PortBlockKind,
    &divider::DividerKind,
    &section::SectionKind,
    &metering_valve::MeteringValveKind,
    &burst_disc::BurstDiscKind,
    &disc_holder::DiscHolderKind,
    &gauge::GaugeKind,
    &line::TubeKind,
    &line::HoseKind,
    &fitting::FittingKind,
    &fitting::AdapterKind,
    &fitting::PlugKind,
    &fitting::CheckValveKind,
    &fitting::ShutOffValveKind,
    &air_valve::AirValveKind,
    &air_line::AirRegulatorKind,
    &air_line::AirFilterKind,
    &air_line::SilencerKind,
    &reservoir_fittings::BreatherKind,
    &reservoir_fittings::LubricantFilterKind,
    &reservoir_fittings::FillingCouplingKind,
    &reservoir_fittings::LevelSwitchKind,
    &signal::PressureSwitchKind,
    &signal::CycleSwitchKind,
    &signal::ControllerKind,
];

/// The kind with this id.
pub fn kind(id: &str) -> Option<&'static dyn Kind> {
    KINDS.iter().copied().find(|kind| kind.id() == id)
}
