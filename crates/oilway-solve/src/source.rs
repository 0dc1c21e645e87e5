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

/// The flows at which a source and the paths of a system agree, one path after the other.
///
/// A path asks a pressure that must not fall with the flow; what the source gives never rises with the pressure. So the two curves
/// cross once, between nothing and the free flow.
///
/// What a path asks beyond its pressure at rest is nearly a power of the flow. The power through the last two flows that were tried is
/// laid against the source, which costs little, and where they meet the path is asked again: a walk along the path is dear, and
/// three or four of them find the crossing to a millionth of the flow. Paths that follow one another are mostly neighbours, so
/// the search begins where it ended on the path before.
#[derive(Debug)]
pub(crate) struct Balance<'a> {
    source: &'a Source,
    free: Flow,
    /// The flow of the path before, and the power with which its pressure grew.
    before: Option<(Flow, f64)>,
}

impl<'a> Balance<'a> {
    /// The balance of a source with paths to come.
    pub(crate) fn new(source: &'a Source) -> Self {
        Balance { source, free: source.free_flow(), before: None }
    }

    /// The flow at which the source and this path agree, and the pressure there. `needed` gives what the path asks at a flow.
    pub(crate) fn with(&mut self, mut needed: impl FnMut(Flow) -> Pressure) -> (Flow, Pressure) {
        let stands = (Flow::ZERO, self.source.stall);
        let rest = if self.free > Flow::ZERO { needed(Flow::ZERO) } else { self.source.stall };
        if rest >= self.source.stall {
            return stands;
        }
        let (first, power) = self.before.unwrap_or((self.free, FIRST_POWER));
        let mut search =
            Search { source: self.source, rest, low: Flow::ZERO, high: self.free, power, last: None };
        let mut flow = first;
        for _ in 0..MOST_STEPS {
            let pressure = needed(flow);
            if flow >= self.free && self.source.flow(pressure) >= self.free * (1.0 - 1e-12) {
                return (flow, pressure);
            }
            let next = search.next(flow, pressure);
            let found = libm::log(next / flow).abs() < WIDTH;
            if search.high.min(if found { flow } else { self.free }) < self.free * SLOWEST {
                break;
            }
            if found {
                self.before = Some((flow, search.power));
                return (flow, pressure);
            }
            flow = next;
        }
        stands
    }
}

/// The search for one crossing.
struct Search<'a> {
    source: &'a Source,
    /// What the path asks at rest.
    rest: Pressure,
    /// The crossing lies between these.
    low: Flow,
    high: Flow,
    /// The power of the flow with which the path's pressure grows beyond rest.
    power: f64,
    last: Option<Tried>,
}

impl Search<'_> {
    /// Takes in what the path asks at a flow; returns the flow to try next.
    fn next(&mut self, flow: Flow, pressure: Pressure) -> Flow {
        let now = Tried { flow, over: pressure - self.rest };
        if let Some(last) = self.last {
            let power = libm::log(now.over / last.over) / libm::log(now.flow / last.flow);
            if power.is_finite() {
                self.power = power.clamp(LEAST_POWER, MOST_POWER);
            }
        }
        self.last = Some(now);
        if self.source.flow(pressure) >= flow {
            self.low = self.low.max(flow);
        } else {
            self.high = self.high.min(flow);
        }
        let met = meet(self.source, self.rest, now, self.power);
        if met > self.low && met <= self.high { met } else { between(self.low, self.high) }
    }
}

/// A flow that was tried on a path, and what the path asked beyond its pressure at rest.
#[derive(Clone, Copy, Debug)]
struct Tried {
    flow: Flow,
    over: Pressure,
}

/// Where a source meets a path that asks `rest` and beyond it a power of the flow through a flow already tried; nothing where the
/// path asks without bound.
fn meet(source: &Source, rest: Pressure, tried: Tried, power: f64) -> Flow {
    if !tried.over.pascals().is_finite() {
        return Flow::ZERO;
    }
    if tried.over <= Pressure::ZERO {
        return source.flow(rest);
    }
    // What the path has left, as a logarithm of pressure: from without bound at rest it falls to nothing at the stall.
    let left = |at: Pressure| {
        let gives = (source.flow(at) / tried.flow).max(LEAST_SHARE);
        power * libm::log(gives) - libm::log((at - rest) / tried.over)
    };
    let at = crossing(left, rest, source.stall);
    tried.flow * libm::pow((at - rest) / tried.over, 1.0 / power)
}

/// Where a falling measure changes sign: a few halvings, for at the ends it has no bound, then false position with the standing end
/// halved (Illinois).
fn crossing(left: impl Fn(Pressure) -> f64, mut low: Pressure, mut high: Pressure) -> Pressure {
    let (mut at_low, mut at_high) = (f64::INFINITY, f64::NEG_INFINITY);
    let narrow = (high - low) * NARROW;
    let mut last_low = None;
    for _ in 0..MOST_STEPS {
        let chord = low + (high - low) * (at_low / (at_low - at_high));
        let middle = if chord > low && chord < high { chord } else { (low + high) * 0.5 };
        let here = left(middle);
        let is_low = here >= 0.0;
        let again = if last_low == Some(is_low) { 0.5 } else { 1.0 };
        if is_low {
            (low, at_low, at_high) = (middle, here, at_high * again);
        } else {
            (high, at_high, at_low) = (middle, here, at_low * again);
        }
        last_low = Some(is_low);
        if high - low < narrow || here.abs() < NEAR {
            return middle;
        }
    }
    low
}

/// The middle of two flows, by their logarithms where the lower is not nothing.
fn between(low: Flow, high: Flow) -> Flow {
    if low > Flow::ZERO { low * libm::sqrt(high / low) } else { high * 0.01 }
}

/// The flow index of a usual grease, before two flows are known.
const FIRST_POWER: f64 = 0.5;
/// No lubricant's loss grows with less or more than these powers of the flow.
const LEAST_POWER: f64 = 0.05;
const MOST_POWER: f64 = 3.0;
/// A crossing below this share of the free flow is no flow.
const SLOWEST: f64 = 1e-9;
/// Nearness in the logarithm of the flow: a millionth of the flow.
const WIDTH: f64 = 1e-6;
/// A source that stands still gives this share of what is asked, so that its logarithm exists.
const LEAST_SHARE: f64 = 1e-12;
/// Nearness of a meeting: of the pressure between rest and stall, and of the measure that vanishes there.
const NARROW: f64 = 1e-11;
const NEAR: f64 = 1e-9;
/// Far more steps than any pair of curves needs: where nothing better is known brackets are halved.
const MOST_STEPS: usize = 200;

/// Temperature of air and room where nothing else is said; ISO 8778 takes 20 °C.
pub(crate) const AIR_TEMPERATURE: Temperature = Temperature::from_celsius(20.0);

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::testing::{bar, catalogue};

    fn pump(id: &str) -> Pump {
        Pump::of(catalogue().part(id).unwrap()).unwrap()
    }

    fn here(air: f64) -> Circumstances {
        Circumstances {
            air: bar(air),
            atmosphere: AbsolutePressure::from_bar(1.013),
            supply_path: None,
            inlet_rate: None,
        }
    }

    /// A path that asks a start pressure and then grows with a power of the flow.
    fn path(start: f64, slope: f64, power: f64) -> impl Fn(Flow) -> Pressure {
        move |q| bar(start + slope * q.cubic_centimetres_per_minute().powf(power))
    }

    /// The same crossing by looking at a hundred thousand flows, evenly in their logarithm.
    fn dense_scan(source: &Source, needed: impl Fn(Flow) -> Pressure) -> Flow {
        let free = source.free_flow();
        let steps = 100_000;
        let at = |step: i32| free * (1e-9_f64).powf(1.0 - f64::from(step) / f64::from(steps));
        (0..=steps).rev().map(at).find(|&q| source.flow(needed(q)) >= q).unwrap_or(Flow::ZERO)
    }

    #[test]
    fn twenty_to_one_at_5_1_bar_stalls_at_the_pressure_that_the_demonstration_counts_with() {
        // 0.95 × 20 × 5.1 = 96.9 bar; for protection without friction and with 8 bar 160 bar.
        assert!((stall(&pump("10029"), bar(5.1)).bar() - 96.9).abs() < 1e-9);
        assert!((stall_without_friction(&pump("10029"), bar(8.0)).bar() - 160.0).abs() < 1e-9);
    }

    #[test]
    fn an_electric_pump_stalls_at_its_own_limit_whatever_the_air() {
        assert_eq!(stall(&pump("10036"), bar(0.0)), bar(315.0));
        assert_eq!(stall_without_friction(&pump("10036"), bar(8.0)), bar(315.0));
    }

    #[test]
    fn nothing_flows_from_the_stall_pressure_on() {
        let source = Source::new(&pump("10029"), &here(5.1));
        assert!(source.flow(source.stall * 0.999) > Flow::ZERO);
        assert_eq!(source.flow(source.stall), Flow::ZERO);
        assert_eq!(source.flow(source.stall * 2.0), Flow::ZERO);
    }

    #[test]
    fn a_path_beyond_the_stall_does_not_move() {
        let source = Source::new(&pump("10029"), &here(5.1));
        let (flow, pressure) = Balance::new(&source).with(path(100.0, 1.0, 0.5));
        assert_eq!((flow, pressure), (Flow::ZERO, source.stall));
    }

    #[test]
    fn a_pump_without_air_gives_nothing() {
        let source = Source::new(&pump("10029"), &here(0.0));
        assert_eq!(Balance::new(&source).with(path(0.0, 1.0, 1.0)), (Flow::ZERO, Pressure::ZERO));
    }

    #[test]
    fn a_slow_inlet_holds_the_pump_back() {
        let slow = Circumstances { inlet_rate: Some(Frequency::from_per_minute(2.0)), ..here(5.1) };
        let source = Source::new(&pump("10029"), &slow);
        // 6 cm³ twice a minute at the most.
        assert!(source.free_flow().cubic_centimetres_per_minute() < 12.0);
        assert!(Source::new(&pump("10029"), &here(5.1)).free_flow() > source.free_flow());
    }

    proptest! {
        #[test]
        fn the_balance_agrees_with_a_dense_scan(
            start in 0.0_f64..95.0, slope in 0.01_f64..200.0, power in 0.2_f64..2.0, electric in any::<bool>(),
        ) {
            let source = Source::new(&pump(if electric { "10036" } else { "10029" }), &here(5.1));
            let (flow, pressure) = Balance::new(&source).with(path(start, slope, power));
            let scanned = dense_scan(&source, path(start, slope, power));
            if scanned <= Flow::ZERO {
                // Slower than the scan looks is slower than counts.
                prop_assert_eq!((flow, pressure), (Flow::ZERO, source.stall));
                return Ok(());
            }
            prop_assert!((flow / scanned - 1.0).abs() < 3e-4, "{} {}", flow / scanned, scanned.cubic_centimetres_per_minute());
            prop_assert!((path(start, slope, power)(flow) / pressure - 1.0).abs() < 1e-9);
        }

        #[test]
        fn a_balance_does_not_hang_on_the_path_before(
            starts in [0.0_f64..95.0, 0.0_f64..95.0], slopes in [0.01_f64..200.0, 0.01_f64..200.0],
            powers in [0.2_f64..2.0, 0.2_f64..2.0], electric in any::<bool>(),
        ) {
            let source = Source::new(&pump(if electric { "10036" } else { "10029" }), &here(5.1));
            let of = |number: usize| path(starts[number], slopes[number], powers[number]);
            let mut both = Balance::new(&source);
            both.with(of(0));
            let (after, alone) = (both.with(of(1)).0, Balance::new(&source).with(of(1)).0);
            prop_assert!((after - alone).cubic_metres_per_second().abs() <= 1e-5 * alone.cubic_metres_per_second());
        }

        #[test]
        fn a_pump_never_gives_more_against_more(air in 0.5_f64..8.0, low in 0.0_f64..150.0, more in 0.0_f64..50.0) {
            let source = Source::new(&pump("10029"), &here(air));
            prop_assert!(source.flow(bar(low + more)) <= source.flow(bar(low)));
        }
    }
}
