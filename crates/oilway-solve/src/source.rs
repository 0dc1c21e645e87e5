//! The pump as a source of pressure: an air-driven pump slows down as its load rises and stalls; an electric one keeps its flow
//! up to the pressure at which its motor or relief gives way.

use oilway_catalogue::kinds::{Drive, Pump};
use oilway_physics::air;
use oilway_units::{AbsolutePressure, Conductance, Flow, Frequency, Pressure, Ratio, Temperature, Volume};

/// What pushes.
#[derive(Clone, Debug)]
pub(crate) struct Source {
    /// Pressure at which it stands still.
    pub stall: Pressure,
    /// Volume of one cycle.
    pub per_cycle: Volume,
    /// Highest rate that drive and inlet allow without load.
    pub highest_rate: Frequency,
    motor: Option<Motor>,
}

/// The air side of a pump.
#[derive(Clone, Debug)]
struct Motor {
    swept: Volume,
    conductance: Conductance,
    critical_ratio: Ratio,
    supply: AbsolutePressure,
    atmosphere: AbsolutePressure,
    /// Lubricant pressure over air pressure while it moves.
    gain: f64,
}

/// The circumstances of a source.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Circumstances {
    /// Air pressure at the motor; ignored by an electric pump.
    pub air: Pressure,
    /// The atmosphere.
    pub atmosphere: AbsolutePressure,
    /// Conductance and critical ratio of valve and tube in front of the motor, if known.
    pub supply_path: Option<(Conductance, Ratio)>,
    /// Highest rate that the inlet can fill, if that limits.
    pub inlet_rate: Option<Frequency>,
}

/// Stall pressure of a pump at an air pressure, for work: friction counted.
pub(crate) fn stall(pump: &Pump, air: Pressure) -> Pressure {
    if pump.drive == Drive::Electric {
        return pump.stall.unwrap_or(pump.rated);
    }
    let ratio = pump.ratio.unwrap_or(Ratio::ZERO);
    air::stall_pressure(ratio, air, pump.stall_efficiency.unwrap_or(Ratio::from_fraction(1.0)))
}

/// Stall pressure that must be assumed for protection: no friction, highest air that can ever reach it.
pub(crate) fn stall_without_friction(pump: &Pump, air: Pressure) -> Pressure {
    if pump.drive == Drive::Electric {
        return pump.stall.unwrap_or(pump.rated);
    }
    air::stall_pressure(pump.ratio.unwrap_or(Ratio::ZERO), air, Ratio::from_fraction(1.0))
}

impl Source {
    /// The source that a pump is under these circumstances.
    pub(crate) fn new(pump: &Pump, here: &Circumstances) -> Self {
        let highest_rate = here.inlet_rate.map_or(pump.cycles_max, |rate| pump.cycles_max.min(rate));
        let stall = stall(pump, here.air);
        Source { stall, per_cycle: pump.per_cycle, highest_rate, motor: motor(pump, here, stall) }
    }

    /// Flow against a pressure at the outlet; never rises with it, and is zero from the stall pressure on.
    pub(crate) fn flow(&self, at_outlet: Pressure) -> Flow {
        if at_outlet >= self.stall {
            return Flow::ZERO;
        }
        let shortest = 1.0 / self.highest_rate.per_second();
        let seconds = match &self.motor {
            None => shortest,
            Some(motor) => match motor.stroke_seconds(at_outlet) {
                Some(stroke) => shortest + stroke,
                None => return Flow::ZERO,
            },
        };
        self.per_cycle * Frequency::from_per_second(1.0 / seconds)
    }

    /// Flow without load.
    pub(crate) fn free_flow(&self) -> Flow {
        self.flow(Pressure::ZERO)
    }
}

fn motor(pump: &Pump, here: &Circumstances, stall: Pressure) -> Option<Motor> {
    let swept = pump.air_swept?;
    let own = pump.air_conductance?;
    let (conductance, critical_ratio) = match here.supply_path {
        Some((path, critical)) => (air::conductance_in_series(own, path), critical),
        None => (own, Ratio::from_fraction(0.3)),
    };
    let gain = if here.air > Pressure::ZERO { stall / here.air } else { return None };
    Some(Motor {
        swept,
        conductance,
        critical_ratio,
        supply: here.air.absolute(here.atmosphere),
        atmosphere: here.atmosphere,
        gain,
    })
}

impl Motor {
    /// Time that the air needs to move the piston through one cycle against a load; none if it stalls.
    fn stroke_seconds(&self, load: Pressure) -> Option<f64> {
        let driving = Pressure::from_pascals(load.pascals().max(0.0) / self.gain).absolute(self.atmosphere);
        let time = air::stroke_time(self.swept, driving, self.supply, self.conductance, self.critical_ratio)?;
        Some(time.seconds())
    }
}

/// The flow at which a source and a path agree, and the pressure there.
///
/// `needed` gives the pressure that the path asks at a flow, and must not fall with it. The root lies between nothing and the free
/// flow; it is found by halving the logarithm with a secant step, to a thousandth of the flow.
pub(crate) fn balance(source: &Source, mut needed: impl FnMut(Flow) -> Pressure) -> (Flow, Pressure) {
    let highest = source.free_flow();
    if highest <= Flow::ZERO {
        return (Flow::ZERO, source.stall);
    }
    let at_highest = needed(highest);
    if source.flow(at_highest) >= highest * (1.0 - 1e-12) {
        return (highest, at_highest);
    }
    let (mut low, mut high) = (highest * 1e-9, highest);
    if source.flow(needed(low)) < low {
        return (Flow::ZERO, source.stall);
    }
    for _ in 0..60 {
        let middle = Flow::from_cubic_metres_per_second(
            (low.cubic_metres_per_second() * high.cubic_metres_per_second()).sqrt(),
        );
        if source.flow(needed(middle)) >= middle { low = middle } else { high = middle }
        if high / low < 1.001 {
            break;
        }
    }
    (low, needed(low))
}

/// Temperature of air and room where nothing else is said; ISO 8778 takes 20 °C.
pub(crate) const AIR_TEMPERATURE: Temperature = Temperature::from_celsius(20.0);
