//! What watches and commands: pressure switches, cycle switches, controllers.

use oilway_text::message;

use super::contradiction::{Found, crossed};
use crate::{Contradiction, Part};

kind! {
    /// A pressure switch.
    PressureSwitch, PressureSwitchKind = "pressure switch", "tells that a pressure is reached";
    @rating |switch| Some(switch.rated);
    @contradictions switch_contradictions;
    lowest: needed Quantity(Pressure, Positive), "lowest pressure that it can be set to";
    highest: needed Quantity(Pressure, Positive), "highest pressure that it can be set to";
    hysteresis: needed Quantity(Pressure, NotNegative), "fall of pressure below the setting after which it resets";
    rated: needed Quantity(Pressure, Positive), "highest steady pressure that it stands";
    voltage: maybe Quantity(Voltage, Positive), "voltage that it switches";
}

fn switch_contradictions(switch: &PressureSwitch, part: &Part) -> Vec<Contradiction> {
    let mut found = Found::default();
    found.when(switch.lowest >= switch.highest, "lowest", || {
        crossed("lowest", switch.lowest, "highest", switch.highest)
    });
    found.when(switch.highest > switch.rated, "highest", || {
        crossed("highest", switch.highest, "rated", switch.rated)
    });
    found.when(switch.hysteresis >= switch.lowest, "hysteresis", || {
        crossed("hysteresis", switch.hysteresis, "lowest", switch.lowest)
    });
    found.wants_ports(part, 1);
    found.0
}

kind! {
    /// A cycle switch.
    CycleSwitch, CycleSwitchKind = "cycle switch", "tells every cycle of a divider";
    fits: needed Parts("divider"), "the dividers on which it sits";
    voltage: needed Quantity(Voltage, Positive), "voltage that it switches";
    rate_max: maybe Quantity(Frequency, Positive), "the most signals in a time that it gives";
}

kind! {
    /// A controller for pause, cycles and alarms.
    Controller, ControllerKind = "controller", "starts the pump, counts cycles and raises the alarm";
    @contradictions controller_contradictions;
    inputs: needed Quantity(Count, Between(0.0, 64.0)), "signals that it reads";
    outputs: needed Quantity(Count, Between(1.0, 64.0)), "things that it switches";
    voltage: needed Quantity(Voltage, Positive), "supply voltage, which is also that of its signals";
    pause_max: maybe Quantity(Time, Positive), "longest pause that it can be set to";
}

fn controller_contradictions(controller: &Controller, _: &Part) -> Vec<Contradiction> {
    let mut found = Found::default();
    let whole = |number: f64| number == number.trunc();
    found.when(!whole(controller.inputs.number()), "inputs", || {
        message!("catalogue-not-whole", value = controller.inputs)
    });
    found.when(!whole(controller.outputs.number()), "outputs", || {
        message!("catalogue-not-whole", value = controller.outputs)
    });
    found.0
}
