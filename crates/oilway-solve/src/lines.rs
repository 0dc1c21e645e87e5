//! Bores of the lines: the narrowest that still hold on the coldest day.
//!
//! All open legs are held to one gradient: each takes the narrowest bore at which it loses no more pressure for each metre than
//! the gradient allows. The gradient is then raised until the worst path just stays inside the pressure on hand. One number decides for
//! the whole tree, which keeps a system of ten thousand points as quick as one of ten.

use oilway_catalogue::kinds::Divider as Body;
use oilway_model::{Conditions, End, Fluid, Job, Season};
use oilway_physics::pipe_flow;
use oilway_units::{Flow, Pressure};

use crate::hydraulics::leg_loss;
use crate::layout::{Conduit, Layout};
use crate::tree::TreeMetering;

/// What each candidate of each leg costs in pressure, worked out once.
#[derive(Debug)]
pub(crate) struct Losses {
    /// For each node and leg and candidate: start after rest, moving, both without height; and the length.
    legs: Vec<Vec<Leg>>,
    /// What must be overcome at each node whatever the bore: divider, height, back pressure.
    fixed: Vec<Pressure>,
}

#[derive(Debug)]
struct Leg {
    metres: f64,
    /// Per candidate, narrowest first.
    losses: Vec<Loss>,
}

#[derive(Clone, Copy, Debug)]
struct Loss {
    rested: f64,
    moving: f64,
    rated: f64,
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
            let mut here = match node.end {
                End::Point(p) => {
                    job.points[p].back_pressure.map_or(conditions.practice.back_pressure.get(), |b| b.get())
                }
                End::Divider(d) => Body::of(&metering.dividers[d].body).map_or(Pressure::ZERO, |b| b.drop),
                End::Pump | End::Junction => Pressure::ZERO,
            };
            let mut of_node = Vec::with_capacity(candidates.len());
            for (leg, open) in node.legs.iter().zip(candidates) {
                let fluid = &fluids[leg.place];
                here += pipe_flow::static_head(fluid.density, leg.rise.get());
                let losses = open.iter().map(|&c| loss(conditions, fluid, &layout.conduits[c], leg, flow)).collect();
                of_node.push(Leg { metres: leg.length.get().metres(), losses });
            }
            legs.push(of_node);
            fixed.push(here);
        }
        Some(Losses { legs, fixed })
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
        self.legs.iter().flatten().all(|leg| leg.losses.iter().any(|l| l.rated >= least.pascals()))
    }

    /// Gradients that are worth trying: steps of a tenth over all that occurs, and nothing at all.
    fn gradients(&self) -> Vec<f64> {
        let per_metre = |leg: &Leg| leg.losses.iter().map(|l| l.rested.max(l.moving) / leg.metres.max(1e-9)).collect::<Vec<_>>();
        let (mut least, mut most) = (f64::INFINITY, 0.0_f64);
        for g in self.legs.iter().flatten().filter(|l| l.metres > 0.0).flat_map(per_metre).filter(|g| *g > 0.0 && g.is_finite()) {
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
        let mut chosen = Vec::with_capacity(self.legs.len());
        let mut sums: Vec<(f64, f64)> = Vec::with_capacity(self.legs.len());
        let (mut need, mut price) = (0.0_f64, 0.0);
        for (number, node) in layout.network.nodes.iter().enumerate() {
            let (mut rested, mut moving) = node.parent.map_or((0.0, 0.0), |p| sums[p]);
            rested += self.fixed[number].pascals();
            moving += self.fixed[number].pascals();
            let mut of_node = Vec::with_capacity(node.legs.len());
            for (leg, open) in self.legs[number].iter().zip(&layout.candidates[number]) {
                let pick = leg.pick(gradient, least_rating);
                rested += leg.losses[pick].rested;
                moving += leg.losses[pick].moving;
                if open.len() > 1 {
                    price += leg.metres * crate::layout::price(&layout.conduits[open[pick]].part) as f64;
                }
                of_node.push(pick);
            }
            sums.push((rested, moving));
            chosen.push(of_node);
            if matches!(node.end, End::Point(_)) {
                need = need.max(rested).max(moving);
            }
        }
        Bores { chosen, need: Pressure::from_pascals(need), price }
    }
}

impl Leg {
    /// The narrowest candidate within the gradient; the one that loses least where none is.
    fn pick(&self, gradient: f64, least_rating: Pressure) -> usize {
        let most = gradient * self.metres;
        let rated = |l: &Loss| l.rated >= least_rating.pascals() || self.losses.len() == 1;
        let fits = self.losses.iter().position(|l| rated(l) && l.rested.max(l.moving) <= most);
        fits.unwrap_or_else(|| {
            let all = self.losses.iter().enumerate().filter(|(_, l)| rated(l));
            all.min_by(|a, b| a.1.rested.max(a.1.moving).total_cmp(&b.1.rested.max(b.1.moving)).then(a.0.cmp(&b.0)))
                .map_or(self.losses.len() - 1, |(i, _)| i)
        })
    }
}

fn cold_fluids(conditions: &Conditions) -> Option<Vec<Fluid>> {
    conditions.places.iter().map(|p| conditions.lubricant.at(p.temperature(Season::Cold))).collect()
}

fn loss(conditions: &Conditions, fluid: &Fluid, conduit: &Conduit, leg: &oilway_model::Leg, flow: Flow) -> Loss {
    let practice = &conditions.practice;
    let length = leg.length.get();
    let start = pipe_flow::start_pressure(conduit.bore, length, fluid.yield_stress);
    let acting = length * (1.0 + practice.fittings.get().fraction());
    Loss {
        rested: (start * practice.rest_factor.get().fraction()).pascals(),
        moving: leg_loss(fluid, conduit.bore, acting, flow, Pressure::ZERO).pascals(),
        rated: conduit.rated.pascals(),
    }
}
