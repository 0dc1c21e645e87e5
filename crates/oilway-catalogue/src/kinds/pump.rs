//! Pumps: what drives them, what they deliver, and how high they push.

use oilway_text::message;

use super::contradiction::{Found, crossed};
use crate::{Contradiction, Part, Role};

words! {
    /// What moves the plunger of a pump.
    Drive {
        /// Air pushes it forward, a spring brings it back when a valve lets the air go.
        SpringReturn = "spring return",
        /// Air pushes it both ways; a valve outside changes sides at every stroke.
        DoubleActing = "double acting",
        /// Air pushes it both ways, and it changes sides by itself as long as there is air.
        SelfReversing = "self reversing",
        /// An electric motor turns it.
        Electric = "electric",
    }
}

impl Drive {
    /// Whether compressed air drives it.
    pub const fn is_air(self) -> bool {
        !matches!(self, Drive::Electric)
    }
}

words! {
    /// What flows.
    Medium {
        /// Grease.
        Grease = "grease",
        /// Oil.
        Oil = "oil",
    }
}

kind! {
    /// A lubricant pump, from its drive to its outlet.
    Pump, PumpKind = "pump", "a pump with its drive";
    @rating |pump| Some(pump.rated);
    @contradictions contradictions;
    drive: needed Word(Drive), "what moves the plunger";
    ratio: maybe Quantity(Ratio, Positive), "area of the air piston over area of the plunger";
    stall_efficiency: maybe Quantity(Ratio, Between(0.0, 1.0)), "share of ratio times air pressure that is left when it stands against a shut line";
    moving_efficiency: maybe Quantity(Ratio, Between(0.0, 1.0)), "the same share while it moves";
    per_cycle: needed Quantity(Volume, Positive), "volume delivered in one cycle: forth and back, or one turn";
    cycles_max: needed Quantity(Frequency, Positive), "the most cycles in a time that it may make";
    suction_share: needed Quantity(Ratio, Between(0.0, 1.0)), "share of the cycle in which it fills";
    rated: needed Quantity(Pressure, Positive), "highest steady pressure that its lubricant side may see";
    air_swept: maybe Quantity(Volume, Positive), "volume that the air pistons sweep in one cycle";
    air_clearance: maybe Quantity(Volume, NotNegative), "air volume filled in one cycle without sweeping anything";
    air_conductance: maybe Quantity(Conductance, Positive), "sonic conductance of its own air passages";
    air_rated: maybe Quantity(Pressure, Positive), "highest air pressure that its motor may see";
    stall: maybe Quantity(Pressure, Positive), "pressure at which an electric drive stands: its motor or its built-in relief gives way";
    power: maybe Quantity(Power, Positive), "electric power at its rated pressure";
    voltage: maybe Quantity(Voltage, Positive), "supply voltage";
    inlet_bore: needed Quantity(Length, Positive), "bore of the passage through which it fills";
    inlet_length: needed Quantity(Length, Positive), "length of that passage";
    lubricants: needed Words(Medium), "what it can pump";
    coldest: needed Quantity(Temperature, Any), "coldest surroundings in which it may run";
    hottest: needed Quantity(Temperature, Any), "hottest surroundings in which it may run";
    supplied_disc: maybe Part("burst disc"), "the burst disc that comes in its package as bought";
    idle_side_breathes: maybe Flag(), "the chamber behind the piston is open to the air and must stay open";
}

/// The air that a cycle takes can never be less than the volume ratio of the pistons says; 2 % for rounded figures.
const ROUNDING: f64 = 0.98;

fn contradictions(pump: &Pump, part: &Part) -> Vec<Contradiction> {
    let mut found = Found::default();
    found.when(pump.coldest >= pump.hottest, "coldest", || {
        crossed("coldest", pump.coldest, "hottest", pump.hottest)
    });
    let air = pump.drive.is_air();
    let lacks =
        |field: &'static str| message!("catalogue-drive-lacks", drive = pump.drive.word(), field = field);
    found.when(air && pump.ratio.is_none(), "ratio", || lacks("ratio"));
    found.when(air && pump.stall_efficiency.is_none(), "stall_efficiency", || lacks("stall_efficiency"));
    found.when(air && pump.air_swept.is_none(), "air_swept", || lacks("air_swept"));
    found.when(!air && pump.stall.is_none(), "stall", || lacks("stall"));
    found.when(!air && pump.voltage.is_none(), "voltage", || lacks("voltage"));
    if let (Some(ratio), Some(swept)) = (pump.ratio, pump.air_swept) {
        let least = pump.per_cycle * ratio.fraction();
        found.when(swept < least * ROUNDING, "air_swept", || {
            message!("catalogue-air-too-little", swept = swept, least = least)
        });
    }
    if let (Some(moving), Some(stall)) = (pump.moving_efficiency, pump.stall_efficiency) {
        found.when(moving > stall, "moving_efficiency", || {
            crossed("moving_efficiency", moving, "stall_efficiency", stall)
        });
    }
    found.lacks_port(part, Role::Outlet);
    if air {
        found.lacks_port(part, Role::AirIn);
    }
    found.0
}
