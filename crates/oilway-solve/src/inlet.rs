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
