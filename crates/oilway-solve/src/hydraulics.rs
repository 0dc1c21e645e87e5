//! Pressures along the tree of lines: to start, to keep moving, and what remains.
//!
//! In a progressive system exactly one outlet path flows at a time: each piston stroke sends the whole flow along one path from
//! the pump to one point. The walk therefore goes path by path, from the point up to the pump, and the working peak is
//! the largest of all paths.

use std::cell::RefCell;

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
        self.walk(season, node, &|fluid, leg| {
            Some(fluid.drop(*self.bores.get(leg.conduit)?, self.acting_length(leg), flow))
        })
    }

    /// All paths of a season at one flow: what a metre of each line loses is worked out once.
    pub(crate) fn at_flow(&self, season: Season, flow: Flow) -> AtFlow<'_> {
        let known = vec![None; self.conditions.places.len() * self.bores.len()];
        AtFlow { hydraulics: self, season, flow, per_metre: RefCell::new(known) }
    }

    /// Walks a path; `thin` gives the loss of a leg at the viscosity of no pressure.
    fn walk(
        &self,
        season: Season,
        node: usize,
        thin: &dyn Fn(&Fluid, &Leg) -> Option<Pressure>,
    ) -> Option<Path> {
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
                let fluid = self.fluid(season, leg.place)?;
                self.add_leg(&mut path, fluid, leg, thin(fluid, leg)?)?;
            }
        }
        Some(path)
    }

    fn add_leg(&self, path: &mut Path, fluid: &Fluid, leg: &Leg, thin: Pressure) -> Option<()> {
        let bore = *self.bores.get(leg.conduit)?;
        let loss = thickened(thin, fluid.pressure_coefficient, path.moving);
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

/// The paths of a season at one flow.
#[derive(Debug)]
pub(crate) struct AtFlow<'a> {
    hydraulics: &'a Hydraulics<'a>,
    season: Season,
    flow: Flow,
    /// What a metre loses, for each place and line once it was asked for.
    per_metre: RefCell<Vec<Option<Pressure>>>,
}

impl AtFlow<'_> {
    /// The path to a node, as [`Hydraulics::path`] walks it.
    pub(crate) fn path(&self, node: usize) -> Option<Path> {
        self.hydraulics.walk(self.season, node, &|fluid, leg| {
            let bore = *self.hydraulics.bores.get(leg.conduit)?;
            let at = leg.place * self.hydraulics.bores.len() + leg.conduit;
            let mut known = self.per_metre.borrow_mut();
            let lost = known.get_mut(at)?;
            let lost = *lost.get_or_insert_with(|| fluid.drop(bore, Length::from_metres(1.0), self.flow));
            Some(lost * self.hydraulics.acting_length(leg).metres())
        })
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

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::testing::{bar, catalogue, dairy, hall, known, leg, spindle};
    use crate::{design, evaluate::point_nodes};

    fn cm3_min(flow: f64) -> Flow {
        Flow::from_cubic_centimetres_per_minute(flow)
    }

    /// Herschel–Bulkley drop by looking for the pressure whose flow, from the integrated velocity profile, is the one wanted.
    fn drop_by_profile(radius: f64, length: f64, flow: f64, (tau0, k, n): (f64, f64, f64)) -> f64 {
        let moved = |drop: f64| {
            // Q = ∫ π r² γ̇(r) dr, shear rate from the stress at each radius; midpoint rule.
            let steps = 4000;
            let width = radius / f64::from(steps);
            (0..steps)
                .map(|i| {
                    let r = (f64::from(i) + 0.5) * width;
                    let stress = drop * r / (2.0 * length);
                    let rate = ((stress - tau0).max(0.0) / k).powf(1.0 / n);
                    core::f64::consts::PI * r * r * rate * width
                })
                .sum::<f64>()
        };
        let (mut low, mut high) = (0.0, 1e9);
        for _ in 0..100 {
            let middle = 0.5 * (low + high);
            if moved(middle) < flow { low = middle } else { high = middle }
        }
        low
    }

    #[test]
    fn a_path_of_grease_is_the_sum_of_its_parts_by_hand() {
        let mut job = hall();
        job.dividers[0].route[0].conduit = oilway_model::Choice::Given("10085".to_owned());
        job.points[0].route[0].conduit = oilway_model::Choice::Given("10083".to_owned());
        job.points[0].route[0].rise = known(Length::from_metres(1.5));
        job.points[0].back_pressure = Some(known(bar(7.0)));
        let design = design(&job, catalogue()).unwrap();
        let node = point_nodes(&design)[0];
        let path = Hydraulics::new(&design).path(Season::Cold, node, cm3_min(2.0)).unwrap();
        // 6 m of bore 8 and 2 m of bore 4 at 180 Pa; the divider takes 8 bar, the bearing 7, the rise 890 kg/m³ · g · 1.5 m.
        let yielding = 4.0 * 180.0 * 6.0 / 0.008 + 4.0 * 180.0 * 2.0 / 0.004;
        let fixed = 8e5 + 7e5 + 890.0 * 9.80665 * 1.5;
        assert!((path.yielding.pascals() / yielding - 1.0).abs() < 1e-12);
        assert!((path.fixed.pascals() / fixed - 1.0).abs() < 1e-12);
        let curve = (180.0, 60.0, 0.42);
        let lines =
            drop_by_profile(0.004, 6.0, 2e-6 / 60.0, curve) + drop_by_profile(0.002, 2.0, 2e-6 / 60.0, curve);
        assert!(((path.moving - path.fixed).pascals() / lines - 1.0).abs() < 1e-4);
    }

    #[test]
    fn fittings_lengthen_what_flows_and_rest_does_not_touch_the_walk() {
        let mut job = hall();
        let moving = |job: &oilway_model::Job| {
            let design = design(job, catalogue()).unwrap();
            let path =
                Hydraulics::new(&design).path(Season::Cold, point_nodes(&design)[0], cm3_min(2.0)).unwrap();
            ((path.moving - path.fixed).pascals(), path.yielding.pascals())
        };
        for point in &mut job.points {
            point.route[0].conduit = oilway_model::Choice::Given("10084".to_owned());
        }
        job.dividers[0].route[0].conduit = oilway_model::Choice::Given("10085".to_owned());
        let plain = moving(&job);
        job.conditions.practice.fittings = known(oilway_units::Ratio::from_percent(10.0));
        let longer = moving(&job);
        assert!((longer.0 / plain.0 - 1.1).abs() < 1e-9);
        assert_eq!(longer.1, plain.1);
    }

    #[test]
    fn oil_thickens_along_the_way_as_thin_slices_say() {
        let mut job = spindle();
        job.points[0].route = vec![leg(0, 40.0)];
        job.points[0].route[0].conduit = oilway_model::Choice::Given("10096".to_owned());
        let design = design(&job, catalogue()).unwrap();
        let node = point_nodes(&design)[0];
        let hydraulics = Hydraulics::new(&design);
        let flow = cm3_min(60.0);
        let found = hydraulics.path(Season::Cold, node, flow).unwrap().moving;
        // Second route: every leg in ten thousand slices, each at the viscosity of its own pressure.
        let fluid = hydraulics.fluid(Season::Cold, 0).unwrap();
        let mut pressure = Pressure::ZERO;
        for at in design.network.upstream(node) {
            let here = &design.network.nodes[at];
            pressure += match here.end {
                End::Point(_) => bar(5.0),
                End::Divider(_) => bar(8.0),
                End::Pump | End::Junction => Pressure::ZERO,
            };
            for leg in here.legs.iter().rev() {
                let bore = bore_of(&design.conduits[leg.conduit]).unwrap();
                let slice = fluid.drop(bore, leg.length.get() / 10_000.0, flow);
                for _ in 0..10_000 {
                    let thick = libm::exp(fluid.pressure_coefficient.per_pascal() * pressure.pascals());
                    pressure += slice * thick;
                }
                pressure += pipe_flow::static_head(fluid.density, leg.rise.get());
            }
        }
        assert!((found / pressure - 1.0).abs() < 2e-4, "{found:?} {pressure:?}");
    }

    #[test]
    fn a_place_beyond_the_viscosity_line_gives_no_path_instead_of_a_wrong_one() {
        let mut job = spindle();
        // Thicker warm than cold: no oil is like that.
        let oilway_model::Substance::Oil(oil) = &mut job.conditions.lubricant.substance else {
            unreachable!()
        };
        core::mem::swap(&mut oil.at_40, &mut oil.at_100);
        let obstacles = design(&job, catalogue()).unwrap_err();
        assert_eq!(obstacles[0].at, "lubricant");
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(24))]
        #[test]
        fn more_flow_asks_more_and_a_node_upstream_less(flow in 0.01_f64..50.0, more in 1.01_f64..10.0) {
            let design = design(&dairy(), catalogue()).unwrap();
            let hydraulics = Hydraulics::new(&design);
            for &node in &point_nodes(&design) {
                let at = |node, q| hydraulics.path(Season::Cold, node, cm3_min(q)).unwrap();
                prop_assert!(at(node, flow * more).moving > at(node, flow).moving);
                let parent = design.network.nodes[node].parent.unwrap();
                prop_assert!(at(parent, flow).moving < at(node, flow).moving);
                // No flow is the limit of little flow: what must be overcome to start.
                let still = at(node, 0.0);
                prop_assert!((still.moving / (still.yielding + still.fixed) - 1.0).abs() < 1e-9);
            }
        }
    }
}
