//! Pressures along the tree of lines: to start, to keep moving, and what remains.
//!
//! In a progressive system exactly one outlet path flows at a time: each piston stroke sends the whole flow along one path from
//! the pump to one point. The walk therefore goes path by path, from the point up to the pump, and the working peak is
//! the largest of all paths.

use oilway_catalogue::kinds::{Divider as DividerPart, Hose, Tube};
use oilway_model::{Conditions, Design, End, Fluid, Leg, Network, Season};
use oilway_physics::{oil, pipe_flow};
use oilway_units::{Flow, Length, PerPressure, Pressure};

use crate::weather::Weather;

/// What a walk needs of a design, read once.
#[derive(Debug)]
pub struct Hydraulics<'a> {
    network: &'a Network,
    conditions: &'a Conditions,
    bores: Vec<Length>,
    divider_drops: Vec<Pressure>,
    back_pressures: Vec<Pressure>,
    fluids: [Vec<Option<Fluid>>; 3],
    outlet_check: Pressure,
}

/// The static and the moving part of a path, both at the pump.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Path {
    /// Σ 4 τ0 L / D along the lines.
    pub yielding: Pressure,
    /// Divider losses, check valve, back pressure and height: what must be overcome whatever the lubricant's state.
    pub fixed: Pressure,
    /// Everything at the stated flow.
    pub moving: Pressure,
}

/// The bore of a tube or hose part.
pub fn bore_of(part: &oilway_catalogue::Part) -> Option<Length> {
    Tube::of(part).map(|t| t.bore()).or_else(|| Hose::of(part).map(|h| h.bore))
}

impl<'a> Hydraulics<'a> {
    /// Reads the design under the job's own days.
    pub fn new(design: &'a Design) -> Self {
        Self::under(design, &Weather::AS_IS, &Season::ALL)
    }

    /// Reads the design under some weather, for these seasons only.
    pub fn under(design: &'a Design, weather: &Weather, seasons: &[Season]) -> Self {
        let back = |point: &oilway_model::Point| {
            point.back_pressure.map_or(design.conditions.practice.back_pressure.get(), |b| b.get())
        };
        Hydraulics {
            network: &design.network,
            conditions: &design.conditions,
            bores: design
                .conduits
                .iter()
                .map(|part| bore_of(part).unwrap_or(Length::ZERO) * weather.bore)
                .collect(),
            divider_drops: design
                .dividers
                .iter()
                .map(|d| DividerPart::of(&d.body).map_or(Pressure::ZERO, |b| b.drop))
                .collect(),
            back_pressures: design.points.iter().map(back).collect(),
            fluids: fluids(&design.conditions, weather, seasons),
            outlet_check: crate::ports::outlet_check(&design.package),
        }
    }

    /// The lubricant in a place and season.
    pub fn fluid(&self, season: Season, place: usize) -> Option<&Fluid> {
        self.fluids[season as usize].get(place)?.as_ref()
    }

    /// The path to a node, walked from the far end to the pump, at a flow.
    ///
    /// None where the lubricant has no viscosity line at a temperature of the path.
    pub fn path(&self, season: Season, node: usize, flow: Flow) -> Option<Path> {
        let mut path = Path::default();
        for at in self.network.upstream(node) {
            let here = self.network.nodes.get(at)?;
            let lost = match here.end {
                End::Point(point) => self.back_pressures[point],
                End::Divider(divider) => self.divider_drops[divider],
                End::Pump => self.outlet_check,
                End::Junction => Pressure::ZERO,
            };
            path.fixed += lost;
            path.moving += lost;
            for leg in here.legs.iter().rev() {
                self.add_leg(&mut path, season, leg, flow)?;
            }
        }
        Some(path)
    }

    fn add_leg(&self, path: &mut Path, season: Season, leg: &Leg, flow: Flow) -> Option<()> {
        let fluid = self.fluid(season, leg.place)?;
        let bore = *self.bores.get(leg.conduit)?;
        let loss = leg_loss(fluid, bore, self.acting_length(leg), flow, path.moving);
        let head = pipe_flow::static_head(fluid.density, leg.rise.get());
        path.yielding += pipe_flow::start_pressure(bore, leg.length.get(), fluid.yield_stress);
        path.fixed += head;
        path.moving += loss + head;
        Some(())
    }

    /// The length that the friction sees: the line and the allowance for its fittings.
    fn acting_length(&self, leg: &Leg) -> Length {
        leg.length.get() * (1.0 + self.conditions.practice.fittings.get().fraction())
    }
}

/// The loss of one leg, with the rise of an oil's viscosity under pressure followed along it.
pub(crate) fn leg_loss(
    fluid: &Fluid,
    bore: Length,
    length: Length,
    flow: Flow,
    far_end: Pressure,
) -> Pressure {
    thickened(fluid.drop(bore, length, flow), fluid.pressure_coefficient, far_end)
}

/// A loss at the viscosity of no pressure, with the thickening that the pressure at its far end brings; without bound where the
/// oil thickens faster than any pressure can push it.
pub(crate) fn thickened(thin: Pressure, coefficient: PerPressure, far_end: Pressure) -> Pressure {
    oil::barus_drop(thin, coefficient, far_end).unwrap_or(Pressure::from_pascals(f64::INFINITY))
}

fn fluids(conditions: &Conditions, weather: &Weather, seasons: &[Season]) -> [Vec<Option<Fluid>>; 3] {
    let of =
        |season| (0..conditions.places.len()).map(|place| weather.fluid(conditions, place, season)).collect();
    Season::ALL.map(|season| if seasons.contains(&season) { of(season) } else { Vec::new() })
}
