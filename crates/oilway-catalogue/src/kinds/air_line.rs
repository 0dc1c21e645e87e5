//! What stands in the air line before and behind the valve: regulator, filter, silencer.

use super::contradiction::{Found, crossed};
use crate::{Contradiction, Part};

kind! {
    /// An air regulator.
    AirRegulator, AirRegulatorKind = "air regulator", "sets the air pressure, and so the pressure at which the pump stalls";
    @contradictions regulator_contradictions;
    lowest: needed Quantity(Pressure, NotNegative), "lowest pressure that it can be set to";
    highest: needed Quantity(Pressure, Positive), "highest pressure that it can be set to";
    step: needed Quantity(Pressure, Positive), "how finely it can be set";
    conductance: maybe Quantity(Conductance, Positive), "sonic conductance after ISO 6358";
    supply_max: needed Quantity(Pressure, Positive), "highest supply pressure";
    lockable: maybe Flag(), "the setting can be locked against change";
}

fn regulator_contradictions(regulator: &AirRegulator, part: &Part) -> Vec<Contradiction> {
    let mut found = Found::default();
    found.when(regulator.lowest >= regulator.highest, "lowest", || {
        crossed("lowest", regulator.lowest, "highest", regulator.highest)
    });
    found.when(regulator.highest > regulator.supply_max, "highest", || {
        crossed("highest", regulator.highest, "supply_max", regulator.supply_max)
    });
    found.wants_ports(part, 2);
    found.0
}

kind! {
    /// An air filter with a water trap.
    AirFilter, AirFilterKind = "air filter", "keeps dirt and water from the air motor";
    @rating |filter| Some(filter.rated);
    fineness: needed Quantity(Length, Positive), "largest particle that passes";
    conductance: maybe Quantity(Conductance, Positive), "sonic conductance after ISO 6358";
    rated: needed Quantity(Pressure, Positive), "highest air pressure";
}

kind! {
    /// A silencer for an exhaust.
    Silencer, SilencerKind = "silencer", "makes an exhaust quiet and keeps dirt out of it";
    conductance: maybe Quantity(Conductance, Positive), "sonic conductance after ISO 6358";
}
