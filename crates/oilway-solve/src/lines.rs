//! Bores of the lines: the narrowest that still hold on the coldest day.
//!
//! All open legs are held to one gradient: each takes the narrowest bore at which it loses no more pressure for each metre than
//! the gradient allows. The gradient is then raised until the worst path just stays inside the pressure on hand. One number decides for
//! the whole tree, which keeps a system of ten thousand points as quick as one of ten.

use oilway_catalogue::kinds::Divider as Body;
use oilway_model::{Conditions, End, Fluid, Job, Season};
use oilway_physics::pipe_flow;
use oilway_units::{Flow, PerPressure, Pressure};

use crate::hydraulics::thickened;
use crate::layout::{Conduit, Layout};
use crate::tree::TreeMetering;

/// What each candidate of each leg costs in pressure, worked out once.
#[derive(Debug)]
pub(crate) struct Losses {
    /// For each node and leg and candidate: start after rest and moving, and the length.
    legs: Vec<Vec<Leg>>,
    /// What must be overcome at each node whatever the bore: divider, back pressure.
    fixed: Vec<Pressure>,
    /// Whether the lubricant thickens under pressure, so that a loss hangs on what lies behind it.
    thickens: bool,
}

#[derive(Debug)]
struct Leg {
    metres: f64,
    head: Pressure,
    thickening: PerPressure,
    /// Per candidate, narrowest first.
    losses: Vec<Loss>,
}

#[derive(Clone, Copy, Debug)]
struct Loss {
    rested: Pressure,
    /// At the viscosity of no pressure.
    moving: Pressure,
    rated: Pressure,
}

impl Loss {
    fn worst(&self) -> Pressure {
        self.rested.max(self.moving)
    }
}

/// A choice of bores and what it asks of the pump on the coldest day.
#[derive(Clone, Debug)]
pub(crate) struct Bores {
    /// For each node and leg: the place in the list of candidates.
    pub chosen: Vec<Vec<usize>>,
    /// The highest need of any path, start after rest or moving.
    pub need: Pressure,
    /// Price of the open lines, hundredths.
    pub price: f64,
}

impl Losses {
    /// Works out the losses of all candidates on the coldest day. None where the lubricant has no viscosity line there.
    pub(crate) fn new(job: &Job, layout: &Layout, metering: &TreeMetering, flow: Flow) -> Option<Self> {
        let conditions = &job.conditions;
        let fluids = cold_fluids(conditions)?;
        let mut legs = Vec::with_capacity(layout.network.nodes.len());
        let mut fixed = Vec::with_capacity(layout.network.nodes.len());
        for (node, candidates) in layout.network.nodes.iter().zip(&layout.candidates) {
            fixed.push(match node.end {
                End::Point(p) => {
                    job.points[p].back_pressure.map_or(conditions.practice.back_pressure.get(), |b| b.get())
                }
                End::Divider(d) => Body::of(&metering.dividers[d].body).map_or(Pressure::ZERO, |b| b.drop),
                End::Pump | End::Junction => Pressure::ZERO,
            });
            let of_leg = |(leg, open): (&oilway_model::Leg, &Vec<usize>)| {
                let fluid = fluids.get(leg.place)?;
                Some(Leg {
                    metres: leg.length.get().metres(),
                    head: pipe_flow::static_head(fluid.density, leg.rise.get()),
                    thickening: fluid.pressure_coefficient,
                    losses: open
                        .iter()
                        .map(|&c| loss(conditions, fluid, &layout.conduits[c], leg, flow))
                        .collect(),
                })
            };
            legs.push(node.legs.iter().zip(candidates).map(of_leg).collect::<Option<_>>()?);
        }
        let thickens = fluids.iter().any(|fluid| fluid.pressure_coefficient > PerPressure::ZERO);
        Some(Losses { legs, fixed, thickens })
    }

    /// The narrowest bores whose worst path stays within `budget`, every line rated for at least `least_rating`.
    ///
    /// None where even the widest lines ask more.
    pub(crate) fn within(&self, layout: &Layout, budget: Pressure, least_rating: Pressure) -> Option<Bores> {
        if !self.all_rated(least_rating) {
            return None;
        }
        let steps = self.gradients();
        let at = |step: usize| self.at_gradient(layout, steps[step], least_rating);
        // Gradients are sorted: a larger one never asks less pressure.
        let (mut low, mut high) = (0, steps.len());
        if at(0).need > budget {
            return None;
        }
        while high - low > 1 {
            let middle = (low + high) / 2;
            if at(middle).need <= budget { low = middle } else { high = middle }
        }
        Some(at(low))
    }

    /// The widest lines on offer, for a design that must be shown although nothing holds.
    pub(crate) fn widest(&self, layout: &Layout, least_rating: Pressure) -> Bores {
        self.at_gradient(layout, 0.0, least_rating)
    }

    fn all_rated(&self, least: Pressure) -> bool {
        self.legs.iter().flatten().all(|leg| leg.losses.iter().any(|l| l.rated >= least))
    }

    /// Gradients that are worth trying: steps of a tenth over all that occurs, and nothing at all.
    fn gradients(&self) -> Vec<f64> {
        let per_metre = |leg: &Leg| {
            leg.losses.iter().map(|l| l.worst().pascals() / leg.metres.max(1e-9)).collect::<Vec<_>>()
        };
        let (mut least, mut most) = (f64::INFINITY, 0.0_f64);
        for g in self
            .legs
            .iter()
            .flatten()
            .filter(|l| l.metres > 0.0)
            .flat_map(per_metre)
            .filter(|g| *g > 0.0 && g.is_finite())
        {
            least = least.min(g);
            most = most.max(g);
        }
        let mut steps = vec![0.0];
        let mut g = least;
        while g.is_finite() && g <= most * 1.1 && steps.len() < 400 {
            steps.push(g);
            g *= 1.1;
        }
        steps
    }

    fn at_gradient(&self, layout: &Layout, gradient: f64, least_rating: Pressure) -> Bores {
        let pick = |legs: &Vec<Leg>| legs.iter().map(|leg| leg.pick(gradient, least_rating)).collect();
        let chosen: Vec<Vec<usize>> = self.legs.iter().map(pick).collect();
        let need = if self.thickens {
            self.need_path_by_path(layout, &chosen)
        } else {
            self.need_in_one_sweep(layout, &chosen)
        };
        Bores { need, price: self.price(layout, &chosen), chosen }
    }

    /// Price of the lines that are open to choice, in hundredths.
    fn price(&self, layout: &Layout, chosen: &[Vec<usize>]) -> f64 {
        let mut sum = 0.0;
        for (number, picks) in chosen.iter().enumerate() {
            let legs = self.legs[number].iter().zip(&layout.candidates[number]);
            for ((leg, open), &pick) in legs.zip(picks).filter(|((_, open), _)| open.len() > 1) {
                sum += leg.metres * crate::layout::price(&layout.conduits[open[pick]].part) as f64;
            }
        }
        sum
    }

    /// The highest need of any path where losses simply add up: one sweep from the pump outwards.
    fn need_in_one_sweep(&self, layout: &Layout, chosen: &[Vec<usize>]) -> Pressure {
        let mut sums: Vec<(Pressure, Pressure)> = Vec::with_capacity(self.legs.len());
        let mut need = Pressure::ZERO;
        for (number, node) in layout.network.nodes.iter().enumerate() {
            let (mut rested, mut moving) = node.parent.map_or_else(Default::default, |p| sums[p]);
            rested += self.fixed[number];
            moving += self.fixed[number];
            for (leg, &pick) in self.legs[number].iter().zip(&chosen[number]) {
                rested += leg.losses[pick].rested + leg.head;
                moving += leg.losses[pick].moving + leg.head;
            }
            sums.push((rested, moving));
            if matches!(node.end, End::Point(_)) {
                need = need.max(rested).max(moving);
            }
        }
        need
    }

    /// The same for an oil that thickens: each path from its far end to the pump.
    fn need_path_by_path(&self, layout: &Layout, chosen: &[Vec<usize>]) -> Pressure {
        let points = layout.point_nodes.iter().map(|&point| {
            let (mut rested, mut moving) = (Pressure::ZERO, Pressure::ZERO);
            for number in layout.network.upstream(point) {
                rested += self.fixed[number];
                moving += self.fixed[number];
                for (leg, &pick) in self.legs[number].iter().zip(&chosen[number]).rev() {
                    rested += leg.losses[pick].rested + leg.head;
                    moving += thickened(leg.losses[pick].moving, leg.thickening, moving) + leg.head;
                }
            }
            rested.max(moving)
        });
        points.fold(Pressure::ZERO, Pressure::max)
    }
}

impl Leg {
    /// The narrowest candidate within the gradient; the one that loses least where none is.
    fn pick(&self, gradient: f64, least_rating: Pressure) -> usize {
        let most = Pressure::from_pascals(gradient * self.metres);
        let rated = |l: &Loss| l.rated >= least_rating || self.losses.len() == 1;
        let fits = self.losses.iter().position(|l| rated(l) && l.worst() <= most);
        fits.unwrap_or_else(|| {
            let all = self.losses.iter().enumerate().filter(|(_, l)| rated(l));
            all.min_by(|a, b| a.1.worst().total_cmp(&b.1.worst()).then(a.0.cmp(&b.0)))
                .map_or(self.losses.len() - 1, |(i, _)| i)
        })
    }
}

fn cold_fluids(conditions: &Conditions) -> Option<Vec<Fluid>> {
    conditions.places.iter().map(|p| conditions.lubricant.at(p.temperature(Season::Cold))).collect()
}

fn loss(
    conditions: &Conditions,
    fluid: &Fluid,
    conduit: &Conduit,
    leg: &oilway_model::Leg,
    flow: Flow,
) -> Loss {
    let practice = &conditions.practice;
    let length = leg.length.get();
    let start = pipe_flow::start_pressure(conduit.bore, length, fluid.yield_stress);
    let acting = length * (1.0 + practice.fittings.get().fraction());
    Loss {
        rested: start * practice.rest_factor.get().fraction(),
        moving: fluid.drop(conduit.bore, acting, flow),
        rated: conduit.rated,
    }
}

#[cfg(test)]
mod tests {
    use oilway_model::Choice;
    use oilway_physics::Ledger;
    use oilway_units::{Length, Volume};
    use proptest::prelude::*;

    use super::*;
    use crate::layout::layout;
    use crate::need::needs;
    use crate::testing::{bar, catalogue, dairy, hall, known, spindle};
    use crate::tree::meter;

    fn losses(job: &Job, cubic_centimetres_per_minute: f64) -> (Layout, Losses) {
        let layout = layout(job, catalogue()).unwrap();
        let tails = vec![Volume::ZERO; job.points.len()];
        let needs = needs(&job.conditions, &job.points, &tails, &mut Ledger::off());
        let metering = meter(job, catalogue(), &needs).unwrap();
        let flow = Flow::from_cubic_centimetres_per_minute(cubic_centimetres_per_minute);
        let losses = Losses::new(job, &layout, &metering, flow).unwrap();
        (layout, losses)
    }

    /// A hall with three tails of different lengths: few enough bores to try them all.
    fn small() -> Job {
        let mut job = hall();
        for (number, point) in job.points.iter_mut().enumerate() {
            point.route[0].length = known(Length::from_metres([1.0, 4.0, 9.0][number % 3]));
        }
        job
    }

    /// The least that any choice of bores asks, by trying all of them: legs of a class share a bore, which loses nothing since the
    /// widest of all asks least.
    fn least_need(layout: &Layout, losses: &Losses, least_rating: Pressure) -> Pressure {
        let mut chosen: Vec<Vec<usize>> = losses.legs.iter().map(|legs| vec![0; legs.len()]).collect();
        let mut least = bar(1e6);
        let options = layout.candidates.iter().flatten().next().unwrap().len();
        for main in 0..options {
            for tails in 0..options {
                for (number, node) in layout.network.nodes.iter().enumerate() {
                    let pick = if matches!(node.end, End::Point(_)) { tails } else { main };
                    chosen[number].iter_mut().for_each(|p| *p = pick);
                }
                let picks = layout.candidates.iter().flatten().zip(chosen.iter().flatten());
                let rated =
                    picks.into_iter().all(|(open, &pick)| layout.conduits[open[pick]].rated >= least_rating);
                if rated {
                    least = least.min(losses.need_in_one_sweep(layout, &chosen));
                }
            }
        }
        least
    }

    #[test]
    fn bores_are_found_just_when_some_choice_of_bores_holds() {
        let (layout, losses) = losses(&small(), 2.0);
        for rating in [100.0, 200.0, 250.0, 320.0] {
            let least = least_need(&layout, &losses, bar(rating));
            let found = |budget: Pressure| losses.within(&layout, budget, bar(rating));
            assert!(found(least * 1.000_001).is_some(), "{rating}");
            assert!(found(least * 0.999_999).is_none(), "{rating}");
        }
    }

    #[test]
    fn lines_that_no_tube_on_hand_stands_are_refused() {
        let (layout, losses) = losses(&small(), 2.0);
        assert!(losses.within(&layout, bar(1e5), bar(414.0)).is_some());
        assert!(losses.within(&layout, bar(1e5), bar(500.0)).is_none());
    }

    #[test]
    fn a_given_tube_is_kept_whatever_it_costs_in_pressure() {
        let mut job = small();
        job.dividers[0].route[0].conduit = Choice::Given("10083".to_owned());
        let (layout, losses) = losses(&job, 2.0);
        let post = layout.divider_nodes[0];
        for bores in
            [losses.within(&layout, bar(1e5), bar(100.0)).unwrap(), losses.widest(&layout, bar(100.0))]
        {
            let conduit = layout.candidates[post][0][bores.chosen[post][0]];
            assert_eq!(layout.conduits[conduit].part.id, "10083");
        }
    }

    #[test]
    fn both_sweeps_agree_where_nothing_thickens() {
        let (layout, losses) = losses(&dairy(), 2.0);
        let bores = losses.within(&layout, bar(120.0), bar(130.0)).unwrap();
        let paths = losses.need_path_by_path(&layout, &bores.chosen);
        assert!((paths / bores.need - 1.0).abs() < 1e-12);
    }

    #[test]
    fn an_oil_that_thickens_asks_for_more() {
        let (layout, losses) = losses(&spindle(), 60.0);
        assert!(losses.thickens);
        let bores = losses.within(&layout, bar(150.0), bar(10.0)).unwrap();
        assert!(bores.need > losses.need_in_one_sweep(&layout, &bores.chosen));
    }

    proptest! {
        #[test]
        fn more_pressure_on_hand_never_asks_for_wider_or_dearer_lines(low in 30.0_f64..90.0, more in 0.0_f64..60.0) {
            let (layout, losses) = losses(&small(), 2.0);
            let find = |budget: f64| losses.within(&layout, bar(budget), bar(100.0));
            if let Some(tight) = find(low) {
                let roomy = find(low + more).unwrap();
                prop_assert!(tight.need <= bar(low) && roomy.need <= bar(low + more));
                let narrower = roomy.chosen.iter().flatten().zip(tight.chosen.iter().flatten()).all(|(a, b)| a <= b);
                prop_assert!(narrower);
            }
        }
    }
}
