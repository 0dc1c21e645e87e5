//! The pump as the checker sees it: what it stalls at, how its flow falls as it is loaded, and what its inlet lets in.

use oilway_catalogue::kinds::{Drive, Pump};
use oilway_model::{Design, Leg, Mounting, Season};
use oilway_physics::{air, pipe_flow, pump};
use oilway_units::{
    AbsolutePressure, Conductance, Flow, Force, Frequency, Length, Mass, Pressure, Ratio, Time, Volume,
};

use crate::views::Views;
use crate::walk::Walk;

/// Critical pressure ratio of a pump's own passages where no valve says another: real valves lie at 0.2 to 0.5.
const CRITICAL_RATIO: Ratio = Ratio::from_fraction(0.3);

/// The pressure at which a pump stands against a shut line, friction counted.
pub(crate) fn stall(pump: &Pump, air: Pressure) -> Pressure {
    stall_with(pump, air, pump.stall_efficiency.unwrap_or(Ratio::from_fraction(1.0)))
}

/// The pressure that must be expected of it, no friction counted: for protection.
pub(crate) fn possible_stall(pump: &Pump, air: Pressure) -> Pressure {
    stall_with(pump, air, Ratio::from_fraction(1.0))
}

fn stall_with(pump: &Pump, air: Pressure, efficiency: Ratio) -> Pressure {
    match (pump.drive, pump.ratio) {
        (Drive::Electric, _) => pump.stall.unwrap_or(pump.rated),
        (_, Some(ratio)) => air::stall_pressure(ratio, air, efficiency),
        (_, None) => Pressure::ZERO,
    }
}

/// The air that works at the motor: the setting, and never more than the supply brings on its worst day.
pub(crate) fn working_air(design: &Design) -> Pressure {
    let supply = design.conditions.air.as_ref().map_or(Pressure::ZERO, |air| air.lowest.get());
    design.package.air_setting.map_or(supply, |set| set.min(supply))
}

/// The air that a regulator which fails open lets through.
pub(crate) fn possible_air(design: &Design) -> Pressure {
    design.conditions.air.as_ref().map_or(Pressure::ZERO, |air| air.possible.get())
}

/// The atmosphere at the site.
pub(crate) fn atmosphere(design: &Design) -> AbsolutePressure {
    air::atmosphere_at(design.conditions.site.altitude.get())
}

/// What pushes, in one season.
#[derive(Clone, Debug)]
pub(crate) struct Source {
    /// Pressure at which it stands.
    pub(crate) stall: Pressure,
    per_cycle: Volume,
    /// Shortest time of a cycle, by its own limit and by its inlet.
    shortest: Time,
    motor: Option<Motor>,
}

#[derive(Clone, Debug)]
struct Motor {
    swept: Volume,
    conductance: Conductance,
    critical: Ratio,
    supply: AbsolutePressure,
    atmosphere: AbsolutePressure,
    /// Lubricant pressure over air pressure.
    gain: f64,
}

impl Source {
    /// The pump of a design behind its valve, with an inlet that fills it so often.
    pub(crate) fn new(design: &Design, views: &Views, pump: &Pump, inlet: Option<&Inlet>) -> Self {
        let path = views.valve.as_ref().map(|valve| (valve.conductance, valve.critical_ratio));
        Source::behind(design, pump, path, inlet)
    }

    /// The same pump behind another valve, or behind none.
    pub(crate) fn behind(
        design: &Design,
        pump: &Pump,
        valve: Option<(Conductance, Ratio)>,
        inlet: Option<&Inlet>,
    ) -> Self {
        let air = working_air(design);
        let stall = stall(pump, air);
        let rate = inlet.map_or(pump.cycles_max, |inlet| pump.cycles_max.min(inlet.rate));
        let motor = pump.air_swept.zip(pump.air_conductance).filter(|_| air > Pressure::ZERO);
        let motor = motor.map(|(swept, own)| {
            let series = valve.map(|(path, critical)| (air::conductance_in_series(own, path), critical));
            let (conductance, critical) = series.unwrap_or((own, CRITICAL_RATIO));
            let atmosphere = atmosphere(design);
            Motor {
                swept,
                conductance,
                critical,
                supply: air.absolute(atmosphere),
                atmosphere,
                gain: stall / air,
            }
        });
        Source {
            stall,
            per_cycle: pump.per_cycle,
            shortest: Time::from_seconds(1.0 / rate.per_second()),
            motor,
        }
    }

    /// The flow against a pressure; nothing from the stall on.
    pub(crate) fn flow(&self, against: Pressure) -> Flow {
        let free = against < self.stall;
        let stroke = match &self.motor {
            _ if !free => None,
            None => Some(Time::ZERO),
            Some(motor) => motor.stroke(against),
        };
        match stroke.map(|stroke| self.shortest + stroke) {
            Some(cycle) if cycle.is_finite() => self.per_cycle / cycle,
            _ => Flow::ZERO,
        }
    }

    /// The flow against nothing.
    pub(crate) fn free_flow(&self) -> Flow {
        self.flow(Pressure::ZERO)
    }

    /// The flow at which source and path agree, and the pressure there; none where the path is not known.
    ///
    /// The path never asks less at a higher flow and the source never gives more at a higher pressure, so their curves cross
    /// once: false position in the logarithm of the flow, with the standing end halved.
    pub(crate) fn against(&self, asks: impl Fn(Flow) -> Option<Pressure>) -> Option<(Flow, Pressure)> {
        let free = self.free_flow();
        // A part whose delivery is no number has no curve; `number-not-sound` names it.
        if !free.is_finite() {
            return None;
        }
        if free <= Flow::ZERO {
            return Some((Flow::ZERO, self.stall));
        }
        let at = |x: f64| Flow::from_cubic_metres_per_second(libm::exp(x));
        let short = |x: f64| -> Option<(f64, Pressure)> {
            let pressure = asks(at(x))?;
            let given = self.flow(pressure).cubic_metres_per_second();
            Some((given / at(x).cubic_metres_per_second() - 1.0, pressure))
        };
        let mut high = libm::log(free.cubic_metres_per_second());
        let mut low = high - libm::log(1e9);
        let (mut f_high, p_high) = short(high)?;
        if f_high >= -1e-12 {
            return Some((free, p_high));
        }
        let (mut f_low, mut p_low) = short(low)?;
        if f_low < 0.0 {
            return Some((Flow::ZERO, self.stall));
        }
        // Far below the crossing the surplus is a matter of powers of ten; its logarithm keeps the line straight.
        let bent = |f: f64| if f > 0.0 { libm::log1p(f) } else { f };
        (f_low, f_high) = (bent(f_low), bent(f_high));
        let mut last = 0_i8;
        for _ in 0..200 {
            if high - low < 1e-6 {
                break;
            }
            let chord = (low * f_high - high * f_low) / (f_high - f_low);
            let inside = chord.clamp(low + 0.01 * (high - low), high - 0.01 * (high - low));
            let (f, p) = short(inside)?;
            if bent(f) >= 0.0 {
                (low, f_low, p_low) = (inside, bent(f), p);
                if last == 1 {
                    f_high *= 0.5;
                }
                last = 1;
            } else {
                (high, f_high) = (inside, bent(f));
                if last == -1 {
                    f_low *= 0.5;
                }
                last = -1;
            }
            if f.abs() < 1e-7 {
                return Some((at(inside), p));
            }
        }
        Some((at(low), p_low))
    }
}

impl Motor {
    fn stroke(&self, against: Pressure) -> Option<Time> {
        let driving = (against.max(Pressure::ZERO) / self.gain).absolute(self.atmosphere);
        air::stroke_time(self.swept, driving, self.supply, self.conductance, self.critical)
    }
}

/// What the inlet of the pump lets in, in one season.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Inlet {
    /// Pressure that feeds.
    pub(crate) feed: Pressure,
    /// Pressure below which nothing moves through passage and line.
    pub(crate) holds: Pressure,
    /// Time that one filling takes; none where nothing moves.
    pub(crate) fill: Option<Time>,
    /// Time that it has at the pump's highest rate.
    pub(crate) available: Time,
    /// Cycles in a time for which the filling suffices.
    pub(crate) rate: Frequency,
}

/// The inlet of a design; none where its lubricant or its line is not known.
pub(crate) fn inlet(design: &Design, views: &Views, walk: &Walk<'_>, season: Season) -> Option<Inlet> {
    let pump = views.pump.as_ref()?;
    let fluid = walk.fluid(season, design.package.place)?;
    let plate = views.reservoir.as_ref().map_or(Pressure::ZERO, |vessel| {
        let weight = vessel.follower_weight.unwrap_or(Mass::ZERO);
        pump::follower_pressure(vessel.diameter, weight, Force::ZERO, Force::ZERO)
    });
    let lowest = design.conditions.practice.inlet_lowest.get();
    // Nearly empty: no head is left when it is needed most.
    let feed = pump::feed_pressure(atmosphere(design), lowest, fluid.density, Length::ZERO, plate);
    let passage = pump.inlet_length + pipe_flow::end_length(pump.inlet_bore);
    let legs: &[Leg] = match &design.package.mounting {
        Mounting::OnReservoir => &[],
        Mounting::Remote(legs) => legs,
    };
    let mut parts = vec![(*fluid, pump.inlet_bore, passage, Length::ZERO)];
    for leg in legs {
        parts.push((*walk.fluid(season, leg.place)?, walk.bore(leg)?, leg.length.get(), leg.rise.get()));
    }
    let head: Pressure =
        parts.iter().map(|(fluid, _, _, rise)| pipe_flow::static_head(fluid.density, *rise)).sum();
    let holds = parts
        .iter()
        .map(|(f, bore, length, _)| pipe_flow::start_pressure(*bore, *length, f.yield_stress))
        .sum::<Pressure>()
        + head;
    let lost = |flow: Flow| {
        head + parts.iter().map(|(f, bore, length, _)| f.drop(*bore, *length, flow)).sum::<Pressure>()
    };
    let fill = pump::refill_time(pump.per_cycle, flow_that_loses(lost, feed));
    let available = Time::from_seconds(pump.suction_share.fraction() / pump.cycles_max.per_second());
    let rate = fill.map_or(Frequency::ZERO, |fill| pump::largest_stroke_rate(fill, pump.suction_share));
    Some(Inlet { feed, holds, fill, available, rate })
}

/// The flow that loses just this pressure: powers of ten first, then the digits.
fn flow_that_loses(lost: impl Fn(Flow) -> Pressure, pressure: Pressure) -> Flow {
    let holds = |flow: f64| lost(Flow::from_cubic_metres_per_second(flow)) < pressure;
    let Some(mut low) =
        (-15..=0).rev().map(|power| libm::pow(10.0, f64::from(power))).find(|&flow| holds(flow))
    else {
        return Flow::ZERO;
    };
    let mut step = 9.0 * low;
    for _ in 0..60 {
        step *= 0.5;
        if holds(low + step) {
            low += step;
        }
    }
    Flow::from_cubic_metres_per_second(low)
}
