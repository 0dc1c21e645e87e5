//! Ports: where parts meet.

use oilway_units::Length;

use crate::kinds::words;

words! {
    /// What a port is for, in plain words.
    Role {
        /// Lubricant comes in: suction side, or the inlet of a divider.
        Inlet = "inlet",
        /// Lubricant goes out under pressure to a line.
        Outlet = "outlet",
        /// For the overpressure device.
        Relief = "relief",
        /// For a gauge.
        Gauge = "gauge",
        /// For a pressure switch or sensor.
        Sensor = "sensor",
        /// Lubricant returns to the reservoir.
        Return = "return",
        /// The line is let down here.
        Vent = "vent",
        /// The reservoir is filled here.
        Fill = "fill",
        /// Emptying.
        Drain = "drain",
        /// Air goes in and out so that a vessel or an idle chamber breathes; must never be plugged.
        Breather = "breather",
        /// Compressed air in.
        AirIn = "air in",
        /// Compressed air out, to what it drives.
        AirOut = "air out",
        /// Exhaust air.
        Exhaust = "exhaust",
        /// Level switch.
        Level = "level",
        /// Sees the pressure of what it is joined to; a simple end of a fitting or line.
        Joint = "joint",
    }
}

words! {
    /// Male or female.
    Sex {
        /// The thread is outside.
        Male = "male",
        /// The thread is inside; a tube or hose end that takes the tube in.
        Female = "female",
    }
}

words! {
    /// What a port is joined to inside its part.
    Internal {
        /// To the pressure side of the pump.
        Pressure = "pressure",
        /// To the reservoir or suction side.
        Suction = "suction",
        /// To the air side.
        Air = "air",
        /// To nothing that carries pressure.
        Open = "open",
    }
}

/// One port of a part.
#[derive(Clone, Debug, PartialEq)]
pub struct Port {
    /// Its mark, a word or a standard's figure: `to line`, `gauge`, `1`.
    pub mark: String,
    /// What it is for.
    pub role: Role,
    /// Thread by standard and size: `G 1/4`, `M10x1`, `1/4-18 NPT`; tube ends as `tube 8`.
    pub thread: String,
    /// Male or female.
    pub sex: Sex,
    /// Face of the part on which it sits: `top`, `front`; empty where it does not matter.
    pub face: String,
    /// What it is joined to inside.
    pub internal: Internal,
    /// What sits in it when the part arrives and must come out first: `transport plug`, a disc; empty if nothing.
    pub shipped_with: String,
    /// Passage behind it, if known.
    pub bore: Option<Length>,
}
