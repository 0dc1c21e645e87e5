//! Air valves that start, stop and vent an air motor.

use super::contradiction::Found;
use crate::{Contradiction, Part};

words! {
    /// What a directional valve does: number of ways and positions, and what it does at rest.
    ValveFunction {
        /// Opens and shuts; never lets the air behind it go.
        TwoTwo = "2/2",
        /// At rest the supply is shut and the motor is vented.
        ThreeTwoClosed = "3/2 closed at rest",
        /// At rest the supply goes through.
        ThreeTwoOpen = "3/2 open at rest",
        /// Changes two outlets over, with one exhaust for both.
        FourTwo = "4/2",
        /// Changes two outlets over, with an exhaust for each.
        FiveTwo = "5/2",
    }
}

impl ValveFunction {
    /// The marks of its main ports after ISO 11727.
    pub const fn marks(self) -> &'static [&'static str] {
        match self {
            ValveFunction::TwoTwo => &["1", "2"],
            ValveFunction::ThreeTwoClosed | ValveFunction::ThreeTwoOpen => &["1", "2", "3"],
            ValveFunction::FourTwo => &["1", "2", "3", "4"],
            ValveFunction::FiveTwo => &["1", "2", "3", "4", "5"],
        }
    }
}

kind! {
    /// An air valve.
    AirValve, AirValveKind = "air valve", "the valve that feeds an air motor and lets its air go";
    @rating |valve| Some(valve.rated);
    @contradictions contradictions;
    function: needed Word(ValveFunction), "ways and positions, and what it does at rest";
    conductance: needed Quantity(Conductance, Positive), "sonic conductance after ISO 6358";
    critical_ratio: needed Quantity(Ratio, Between(0.0, 0.999)), "critical pressure ratio after ISO 6358";
    rated: needed Quantity(Pressure, Positive), "highest air pressure";
    voltage: maybe Quantity(Voltage, Positive), "voltage of its solenoid; none for a valve moved by air or hand";
}

fn contradictions(valve: &AirValve, part: &Part) -> Vec<Contradiction> {
    let mut found = Found::default();
    for mark in valve.function.marks() {
        found.lacks_mark(part, mark);
    }
    found.0
}
