//! The inlet of the pump: does the lubricant flow in as fast as the piston makes room?

use oilway_catalogue::kinds::{Pump, Reservoir};
use oilway_model::{Design, Leg, Mounting, Season};
use oilway_physics::{air, pipe_flow, pump};
use oilway_units::{AbsolutePressure, Flow, Force, Frequency, Length, Mass, Pressure, Time};

use crate::hydraulics::{Hydraulics, bore_of};

/// What the inlet allows in one season.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Inlet {
    /// Pressure that pushes the lubricant in.
    pub feed: Pressure,
    /// Time for one filling; none where nothing moves.
    pub fill_time: Option<Time>,
    /// Cycles that it can fill.
    pub rate: Frequency,
}

/// The atmosphere at the site.
pub(crate) fn atmosphere(design: &Design) -> AbsolutePressure {
    air::atmosphere_at(design.conditions.site.altitude.get())
}

/// The inlet of a design in a season.
pub(crate) fn inlet(design: &Design, hydraulics: &Hydraulics<'_>, season: Season) -> Option<Inlet> {
    let data = Pump::of(&design.package.pump)?;
    let fluid = hydraulics.fluid(season, design.package.place)?;
    let feed = pump::feed_pressure(
        atmosphere(design),
        design.conditions.practice.inlet_lowest.get(),
        fluid.density,
        // Judged with the reservoir nearly empty: the head is gone when it is needed most.
        Length::ZERO,
        follower(design),
    );
    let legs: &[Leg] = match &design.package.mounting {
        Mounting::OnReservoir => &[],
        Mounting::Remote(legs) => legs,
    };
    let passage = data.inlet_length + pipe_flow::end_length(data.inlet_bore);
    let lost = |flow: Flow| {
        let own = fluid.drop(data.inlet_bore, passage, flow);
        legs.iter().fold(own, |sum, leg| sum + leg_drop(design, hydraulics, season, leg, flow))
    };
    let flow = flow_under(lost, feed);
    let fill_time = pump::refill_time(data.per_cycle, flow);
    let share = data.suction_share.fraction();
    let rate = fill_time.map_or(Frequency::ZERO, |t| Frequency::from_per_second(share / t.seconds()));
    Some(Inlet { feed, fill_time, rate })
}

fn leg_drop(design: &Design, hydraulics: &Hydraulics<'_>, season: Season, leg: &Leg, flow: Flow) -> Pressure {
    let fluid = hydraulics.fluid(season, leg.place);
    let bore = design.conduits.get(leg.conduit).and_then(|part| bore_of(part));
    match (fluid, bore) {
        (Some(fluid), Some(bore)) => {
            fluid.drop(bore, leg.length.get(), flow) + pipe_flow::static_head(fluid.density, leg.rise.get())
        }
        _ => Pressure::from_pascals(f64::INFINITY),
    }
}

fn follower(design: &Design) -> Pressure {
    let Some(reservoir) = Reservoir::of(&design.package.reservoir) else { return Pressure::ZERO };
    let weight = reservoir.follower_weight.unwrap_or(Mass::ZERO);
    pump::follower_pressure(reservoir.diameter, weight, Force::ZERO, Force::ZERO)
}

/// The flow at which a loss that never falls with flow equals a pressure, by halving of its logarithm.
fn flow_under(lost: impl Fn(Flow) -> Pressure, pressure: Pressure) -> Flow {
    let (mut low, mut high) = (1e-15, 1.0);
    let at = Flow::from_cubic_metres_per_second;
    if lost(at(low)) >= pressure {
        return Flow::ZERO;
    }
    for _ in 0..60 {
        let middle = libm::sqrt(low * high);
        if lost(at(middle)) < pressure { low = middle } else { high = middle }
    }
    at(low)
}

#[cfg(test)]
mod tests {
    use oilway_model::{Choice, Job};

    use super::*;
    use crate::design;
    use crate::testing::{catalogue, hall, known, leg, span_grease, spindle};

    fn inlet_of(job: &Job, season: Season) -> Inlet {
        let design = design(job, catalogue()).unwrap();
        inlet(&design, &Hydraulics::new(&design), season).unwrap()
    }

    fn remote(metres: f64) -> Job {
        let mut job = hall();
        job.package.inlet = vec![leg(0, metres)];
        job
    }

    #[test]
    fn the_atmosphere_less_what_the_cylinder_keeps_feeds_the_pump() {
        let mut job = hall();
        job.package.reservoir = Choice::Given("10039".to_owned());
        let inlet = inlet_of(&job, Season::Cold);
        // At sea level 1.01325 bar less 0.2 bar; 1.2 kg on a plate of 125 mm add 9.6 mbar.
        let plate = 1.2 * 9.80665 / (core::f64::consts::PI * 0.125 * 0.125 / 4.0) / 1e5;
        assert!((inlet.feed.bar() - (1.013_25 - 0.2 + plate)).abs() < 1e-4, "{:?}", inlet.feed);
    }

    #[test]
    fn two_thousand_metres_cost_two_tenths_of_a_bar() {
        let mut job = hall();
        let low = inlet_of(&job, Season::Cold).feed;
        job.conditions.site.altitude = known(Length::from_metres(2000.0));
        let high = inlet_of(&job, Season::Cold).feed;
        assert!(((low - high).bar() - 0.218).abs() < 0.005, "{}", (low - high).bar());
    }

    #[test]
    fn the_cylinder_fills_as_fast_as_the_pipe_law_lets_it() {
        let job = hall();
        let design = design(&job, catalogue()).unwrap();
        let found = inlet(&design, &Hydraulics::new(&design), Season::Cold).unwrap();
        let data = Pump::of(&design.package.pump).unwrap();
        // Second route: the flow law itself instead of its inverse found by halving.
        let fluid = job.conditions.lubricant.at(job.conditions.places[0].coldest.get()).unwrap();
        let passage = data.inlet_length + data.inlet_bore * (3.0 * core::f64::consts::PI / 16.0);
        let flow = fluid.flow(data.inlet_bore, passage, found.feed);
        assert!((data.per_cycle / flow / found.fill_time.unwrap() - 1.0).abs() < 1e-6);
    }

    #[test]
    fn a_long_inlet_starves_the_pump_with_grease_and_not_with_oil() {
        // The widest line that block and reservoir take is 16 mm: with 240 Pa and less the reach is 4 τ0 L / D = 0.82 bar.
        assert!(inlet_of(&remote(0.5), Season::Cold).fill_time.is_some());
        let mut stiff = remote(3.0);
        stiff.conditions.lubricant = span_grease();
        let starved = inlet_of(&stiff, Season::Cold);
        assert_eq!((starved.fill_time, starved.rate), (None, Frequency::ZERO));
        let mut oil = spindle();
        oil.package.inlet = vec![leg(0, 3.0)];
        assert!(inlet_of(&oil, Season::Cold).fill_time.is_some());
    }

    #[test]
    fn a_lift_takes_from_the_feed_and_a_fall_gives_to_it() {
        let mut job = spindle();
        job.package.inlet = vec![leg(0, 2.0)];
        let mut at = |metres: f64| {
            job.package.inlet[0].rise = known(Length::from_metres(metres));
            inlet_of(&job, Season::Cold).fill_time.map(Time::seconds)
        };
        let (level, up, down) = (at(0.0).unwrap(), at(2.0).unwrap(), at(-2.0).unwrap());
        assert!(down < level && level < up);
        // Ten metres of oil are more than the atmosphere lifts.
        assert_eq!(at(10.0), None);
    }
}
