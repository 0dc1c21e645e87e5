//! Ports: where parts meet.

use oilway_units::Length;

/// What a port is for, in plain words.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Role {
    /// Lubricant comes in: suction side, or the inlet of a divider.
    Inlet,
    /// Lubricant goes out under pressure to a line.
    Outlet,
    /// For the overpressure device.
    Relief,
    /// For a gauge.
    Gauge,
    /// For a pressure switch or sensor.
    Sensor,
    /// Lubricant returns to the reservoir.
    Return,
    /// The line is let down here.
    Vent,
    /// The reservoir is filled here.
    Fill,
    /// Emptying.
    Drain,
    /// Air goes in and out so that a vessel or an idle chamber breathes; must never be plugged.
    Breather,
    /// Compressed air in.
    AirIn,
    /// Exhaust air.
    Exhaust,
    /// Level switch.
    Level,
    /// Sees the pressure of what it is joined to; a simple end of a fitting or line.
    Joint,
}

/// Male or female.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Sex {
    /// The thread is outside.
    Male,
    /// The thread is inside.
    Female,
}

/// What a port is joined to inside its part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Internal {
    /// To the pressure side of the pump.
    Pressure,
    /// To the reservoir or suction side.
    Suction,
    /// To the air side.
    Air,
    /// To nothing that carries pressure.
    Open,
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
