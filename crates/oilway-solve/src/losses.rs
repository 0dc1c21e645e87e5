//! What each candidate of each leg costs in pressure on the coldest day, and what a choice of candidates asks of the pump.
//!
//! Loss and cost both grow with the length, so that legs of one kind (in one place, with the same candidates, for as many points)
//! share one reckoning for a metre.

use std::cell::RefCell;
use std::collections::BTreeMap;

use oilway_catalogue::kinds::Divider as Body;
use oilway_model::{Conditions, End, Fluid, Job, Season};
use oilway_physics::pipe_flow;
use oilway_units::{Flow, Length, PerPressure, Pressure};

use crate::hydraulics::thickened;
use crate::joints::Joiner;
use crate::layout::{Conduit, Layout};
use crate::lines::Found;
use crate::tree::TreeMetering;
use crate::unions::Unions;

/// What each candidate of each leg costs in pressure, worked out once.
#[derive(Debug)]
pub(crate) struct Losses {
    /// The legs of each node.
    pub(crate) legs: Vec<Vec<Leg>>,
    /// The kinds of legs.
    pub(crate) kinds: Vec<Kind>,
    /// What must be overcome at each node whatever the bore: divider, back pressure.
    pub(crate) fixed: Vec<Pressure>,
    /// What the lines on offer are rated for, lowest first.
    pub(crate) ratings: Vec<Pressure>,
    /// Which lines can be joined.
    pub(crate) unions: Unions,
    /// What was found before.
    pub(crate) found: RefCell<Found>,
    /// Whether the lubricant thickens under pressure, so that a loss hangs on what lies behind it.
    pub(crate) thickens: bool,
}

#[derive(Clone, Copy, Debug)]
pub(crate) struct Leg {
    pub(crate) kind: usize,
    pub(crate) metres: f64,
    pub(crate) head: Pressure,
}

/// Legs that differ in nothing but length and height.
#[derive(Debug)]
pub(crate) struct Kind {
    /// How many points a leg serves.
    pub(crate) served: f64,
    pub(crate) thickening: PerPressure,
    /// Per candidate, narrowest first, for a metre; nothing at all for legs without length.
    pub(crate) losses: Vec<Loss>,
}

/// What makes a kind: place, candidates, points served, whether it has a length.
type KindKey<'a> = (usize, &'a [usize], usize, bool);

#[derive(Clone, Copy, Debug)]
pub(crate) struct Loss {
    pub(crate) rested: Pressure,
    /// At the viscosity of no pressure.
    pub(crate) moving: Pressure,
    pub(crate) rated: Pressure,
    /// Cost in hundredths; nothing where there is no choice.
    pub(crate) cost: f64,
}

impl Loss {
    pub(crate) fn worst(&self) -> Pressure {
        self.rested.max(self.moving)
    }

    /// The loss of as many metres, from that of one.
    pub(crate) fn of(&self, metres: f64) -> Loss {
        let Loss { rested, moving, rated, cost } = *self;
        Loss { rested: rested * metres, moving: moving * metres, rated, cost: cost * metres }
    }
}

/// The candidate of each leg, said for each kind or for each leg alone.
#[derive(Clone, Copy)]
pub(crate) enum Picks<'a> {
    OfKinds(&'a [usize]),
    OfLegs(&'a [Vec<usize>]),
}

impl Picks<'_> {
    pub(crate) fn of(self, node: usize, number: usize, leg: &Leg) -> usize {
        match self {
            Picks::OfKinds(picks) => picks[leg.kind],
            Picks::OfLegs(picks) => picks[node][number],
        }
    }
}

impl Losses {
    /// Works out the losses of all candidates on the coldest day. None where the lubricant has no viscosity line there.
    pub(crate) fn new(
        job: &Job,
        layout: &Layout,
        metering: &TreeMetering,
        flow: Flow,
        joiner: &mut Joiner,
    ) -> Option<Self> {
        let conditions = &job.conditions;
        let fluids = cold_fluids(conditions)?;
        let served = served(layout);
        let mut known: BTreeMap<KindKey<'_>, usize> = BTreeMap::new();
        let mut kinds: Vec<Kind> = Vec::new();
        let mut legs = Vec::with_capacity(layout.network.nodes.len());
        for (number, (node, candidates)) in layout.network.nodes.iter().zip(&layout.candidates).enumerate() {
            let mut of_node = Vec::with_capacity(node.legs.len());
            for (leg, open) in node.legs.iter().zip(candidates) {
                let (fluid, metres) = (fluids.get(leg.place)?, leg.length.get().metres());
                let key = (leg.place, open.as_slice(), served[number], metres > 0.0);
                let kind = *known.entry(key).or_insert(kinds.len());
                if kind == kinds.len() {
                    let conduits: Vec<&Conduit> = open.iter().map(|&c| &layout.conduits[c]).collect();
                    kinds.push(Kind::new(conditions, fluid, &conduits, flow, served[number], metres > 0.0));
                }
                of_node.push(Leg {
                    kind,
                    metres,
                    head: pipe_flow::static_head(fluid.density, leg.rise.get()),
                });
            }
            legs.push(of_node);
        }
        let fixed = layout.network.nodes.iter().map(|node| fixed(job, metering, node.end)).collect();
        let mut ratings: Vec<Pressure> = kinds.iter().flat_map(|k| &k.losses).map(|l| l.rated).collect();
        ratings.sort_by(Pressure::total_cmp);
        let thickens = fluids.iter().any(|fluid| fluid.pressure_coefficient > PerPressure::ZERO);
        let unions = Unions::new(layout, joiner);
        Some(Losses { legs, kinds, fixed, ratings, unions, found: RefCell::default(), thickens })
    }

    pub(crate) fn need(&self, layout: &Layout, picks: Picks<'_>) -> Pressure {
        if self.thickens {
            self.need_path_by_path(layout, picks)
        } else {
            self.need_in_one_sweep(layout, picks)
        }
    }

    /// For each node what lies between the pump and its far end, start after rest and moving, as if losses simply added up.
    pub(crate) fn sums(&self, layout: &Layout, picks: Picks<'_>) -> Vec<(Pressure, Pressure)> {
        let mut sums: Vec<(Pressure, Pressure)> = Vec::with_capacity(self.legs.len());
        for (number, node) in layout.network.nodes.iter().enumerate() {
            let (mut rested, mut moving) = node.parent.map_or_else(Default::default, |p| sums[p]);
            rested += self.fixed[number];
            moving += self.fixed[number];
            for (leg_number, leg) in self.legs[number].iter().enumerate() {
                let lost = &self.kinds[leg.kind].losses[picks.of(number, leg_number, leg)];
                rested += lost.rested * leg.metres + leg.head;
                moving += lost.moving * leg.metres + leg.head;
            }
            sums.push((rested, moving));
        }
        sums
    }

    /// The highest need of any path where losses simply add up: one sweep from the pump outwards.
    pub(crate) fn need_in_one_sweep(&self, layout: &Layout, picks: Picks<'_>) -> Pressure {
        let sums = self.sums(layout, picks);
        let points = layout.point_nodes.iter().map(|&point| sums[point].0.max(sums[point].1));
        points.fold(Pressure::ZERO, Pressure::max)
    }

    /// The same for an oil that thickens: each path from its far end to the pump.
    pub(crate) fn need_path_by_path(&self, layout: &Layout, picks: Picks<'_>) -> Pressure {
        let points = layout.point_nodes.iter().map(|&point| {
            let (mut rested, mut moving) = (Pressure::ZERO, Pressure::ZERO);
            for number in layout.network.upstream(point) {
                rested += self.fixed[number];
                moving += self.fixed[number];
                for (leg_number, leg) in self.legs[number].iter().enumerate().rev() {
                    let kind = &self.kinds[leg.kind];
                    let lost = kind.losses[picks.of(number, leg_number, leg)].of(leg.metres);
                    rested += lost.rested + leg.head;
                    moving += thickened(lost.moving, kind.thickening, moving) + leg.head;
                }
            }
            rested.max(moving)
        });
        points.fold(Pressure::ZERO, Pressure::max)
    }
}

impl Kind {
    pub(crate) fn new(
        conditions: &Conditions,
        fluid: &Fluid,
        open: &[&Conduit],
        flow: Flow,
        served: usize,
        long: bool,
    ) -> Self {
        let metre = if long { Length::from_metres(1.0) } else { Length::ZERO };
        let losses = open.iter().map(|c| loss(conditions, fluid, c, metre, flow, open.len() > 1)).collect();
        Kind { served: served as f64, thickening: fluid.pressure_coefficient, losses }
    }

    /// The candidate of least cost by a measure, the narrower of equals.
    pub(crate) fn pick(&self, least_rating: Pressure, cost: impl Fn(usize, &Loss) -> f64) -> usize {
        let rated = |l: &Loss| l.rated >= least_rating || self.losses.len() == 1;
        let mut best: Option<(f64, usize)> = None;
        for (pick, loss) in self.losses.iter().enumerate().filter(|(_, l)| rated(l)) {
            let costs = cost(pick, loss);
            if best.is_none_or(|(least, _)| costs.total_cmp(&least).is_lt()) {
                best = Some((costs, pick));
            }
        }
        best.map_or(self.losses.len().saturating_sub(1), |(_, pick)| pick)
    }
}

/// How many points each node serves.
fn served(layout: &Layout) -> Vec<usize> {
    let mut served = vec![0; layout.network.nodes.len()];
    for (number, node) in layout.network.nodes.iter().enumerate().rev() {
        if matches!(node.end, End::Point(_)) {
            served[number] += 1;
        }
        if let Some(parent) = node.parent {
            let here = served[number];
            served[parent] += here;
        }
    }
    served
}

/// What must be overcome at a node whatever the bore.
fn fixed(job: &Job, metering: &TreeMetering, end: End) -> Pressure {
    match end {
        End::Point(p) => {
            let own = job.points[p].back_pressure;
            own.map_or(job.conditions.practice.back_pressure.get(), |b| b.get())
        }
        End::Divider(d) => Body::of(&metering.dividers[d].body).map_or(Pressure::ZERO, |b| b.drop),
        End::Pump | End::Junction => Pressure::ZERO,
    }
}

fn cold_fluids(conditions: &Conditions) -> Option<Vec<Fluid>> {
    conditions.places.iter().map(|p| conditions.lubricant.at(p.temperature(Season::Cold))).collect()
}

fn loss(
    conditions: &Conditions,
    fluid: &Fluid,
    conduit: &Conduit,
    length: Length,
    flow: Flow,
    open_choice: bool,
) -> Loss {
    let practice = &conditions.practice;
    let start = pipe_flow::start_pressure(conduit.bore, length, fluid.yield_stress);
    let acting = length * (1.0 + practice.fittings.get().fraction());
    Loss {
        rested: start * practice.rest_factor.get().fraction(),
        moving: fluid.drop(conduit.bore, acting, flow),
        rated: conduit.rated,
        cost: if open_choice { conduit.cost_per_metre() * length.metres() } else { 0.0 },
    }
}
