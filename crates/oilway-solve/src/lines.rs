//! Bores of the lines: cheap ones that still hold on the coldest day.
//!
//! One price of pressure decides the whole tree: each open leg takes the candidate for which its own cost plus that price, times
//! what it loses, times the number of points that it serves, is least. A leg that many points share is thus widened long
//! before a tail is. The price is raised until the worst path holds; then every leg, tails first, gives back what its
//! paths do not need. A few dozen passes over the tree keep a system of ten thousand points as quick as one of ten.
//!
//! Loss and cost both grow with the length, so that the price picks alike on all legs of one kind: in one place, with the same
//! candidates, for as many points. A pass picks once for each kind, and what a pass has found is kept for the next pump and disc.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;

use oilway_catalogue::kinds::Divider as Body;
use oilway_model::{Conditions, End, Fluid, Job, Season};
use oilway_physics::pipe_flow;
use oilway_units::{Flow, Length, PerPressure, Pressure};

use crate::hydraulics::thickened;
use crate::joints::Joiner;
use crate::layout::{Conduit, Layout};
use crate::tree::TreeMetering;
use crate::unions::Unions;

/// What each candidate of each leg costs in pressure, worked out once.
#[derive(Debug)]
pub(crate) struct Losses {
    /// The legs of each node.
    legs: Vec<Vec<Leg>>,
    /// The kinds of legs.
    kinds: Vec<Kind>,
    /// What must be overcome at each node whatever the bore: divider, back pressure.
    fixed: Vec<Pressure>,
    /// What the lines on offer are rated for, lowest first.
    ratings: Vec<Pressure>,
    /// Which lines can be joined.
    unions: Unions,
    /// What was found before.
    found: RefCell<Found>,
    /// Whether the lubricant thickens under pressure, so that a loss hangs on what lies behind it.
    thickens: bool,
}

/// What earlier passes have found, by the number of ratings that are too low.
#[derive(Debug, Default)]
struct Found {
    /// The need at a step of the price of pressure.
    needs: BTreeMap<(usize, i32), Pressure>,
    /// The bores within a budget, by its bits.
    within: BTreeMap<(usize, u64), Option<Rc<Bores>>>,
}

#[derive(Clone, Copy, Debug)]
struct Leg {
    kind: usize,
    metres: f64,
    head: Pressure,
}

/// Legs that differ in nothing but length and height.
#[derive(Debug)]
struct Kind {
    /// How many points a leg serves.
    served: f64,
    thickening: PerPressure,
    /// Per candidate, narrowest first, for a metre; nothing at all for legs without length.
    losses: Vec<Loss>,
}

/// What makes a kind: place, candidates, points served, whether it has a length.
type KindKey<'a> = (usize, &'a [usize], usize, bool);

#[derive(Clone, Copy, Debug)]
struct Loss {
    rested: Pressure,
    /// At the viscosity of no pressure.
    moving: Pressure,
    rated: Pressure,
    /// Cost in hundredths; nothing where there is no choice.
    cost: f64,
}

impl Loss {
    fn worst(&self) -> Pressure {
        self.rested.max(self.moving)
    }

    /// The loss of as many metres, from that of one.
    fn of(&self, metres: f64) -> Loss {
        let Loss { rested, moving, rated, cost } = *self;
        Loss { rested: rested * metres, moving: moving * metres, rated, cost: cost * metres }
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
    /// The lowest rating of any line.
    pub weakest: Pressure,
}

/// The candidate of each leg, said for each kind or for each leg alone.
#[derive(Clone, Copy)]
enum Picks<'a> {
    OfKinds(&'a [usize]),
    OfLegs(&'a [Vec<usize>]),
}

impl Picks<'_> {
    fn of(self, node: usize, number: usize, leg: &Leg) -> usize {
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

    /// Cheap bores whose worst path stays within `budget`, every line rated for at least `least_rating`.
    ///
    /// None where even the widest lines ask more.
    pub(crate) fn within(
        &self,
        layout: &Layout,
        budget: Pressure,
        least_rating: Pressure,
    ) -> Option<Rc<Bores>> {
        if !self.all_rated(least_rating) {
            return None;
        }
        let key = (self.too_low(least_rating), budget.pascals().to_bits());
        if let Some(known) = self.found.borrow().within.get(&key) {
            return known.clone();
        }
        let bores = self.search(layout, budget, least_rating).map(Rc::new);
        self.found.borrow_mut().within.insert(key, bores.clone());
        bores
    }

    /// How many ratings are too low: requirements between the same two ratings ask for the same lines.
    fn too_low(&self, least_rating: Pressure) -> usize {
        self.ratings.partition_point(|rated| *rated < least_rating)
    }

    fn search(&self, layout: &Layout, budget: Pressure, least_rating: Pressure) -> Option<Bores> {
        let holds_with = |step: i32| self.need_at(layout, step, least_rating) <= budget;
        // A larger price never makes a leg narrower, so that what holds at a step holds at the next.
        let (mut fails, mut holds) = (-1, STEPS);
        if !holds_with(holds) {
            return None;
        }
        while holds - fails > 1 {
            let middle = fails + (holds - fails) / 2;
            if holds_with(middle) { holds = middle } else { fails = middle }
        }
        let roomy = self.for_legs(layout, holds, least_rating);
        let saved = self.given_back(layout, &roomy, budget, least_rating);
        // Savings are counted as if losses simply added up; for an oil that thickens the proof is the whole walk.
        let chosen = if self.need(layout, Picks::OfLegs(&saved)) <= budget { saved } else { roomy };
        Some(self.bores(layout, chosen))
    }

    /// The widest lines on offer, for a design that must be shown although nothing holds.
    pub(crate) fn widest(&self, layout: &Layout, least_rating: Pressure) -> Rc<Bores> {
        Rc::new(self.bores(layout, self.for_legs(layout, STEPS, least_rating)))
    }

    fn all_rated(&self, least: Pressure) -> bool {
        self.kinds.iter().all(|kind| kind.losses.iter().any(|l| l.rated >= least))
    }

    fn need_at(&self, layout: &Layout, step: i32, least_rating: Pressure) -> Pressure {
        let key = (self.too_low(least_rating), step);
        if let Some(known) = self.found.borrow().needs.get(&key) {
            return *known;
        }
        let need = self.need(layout, Picks::OfKinds(&self.at_step(step, least_rating)));
        self.found.borrow_mut().needs.insert(key, need);
        need
    }

    /// The candidates of each kind at a step of the price of pressure; at the last step pressure alone counts.
    fn at_step(&self, step: i32, least_rating: Pressure) -> Vec<usize> {
        let price =
            if step >= STEPS { None } else { Some(LEAST_PRICE * libm::pow(PRICE_STEP, f64::from(step))) };
        let of_kind = |kind: &Kind| {
            kind.pick(least_rating, |_, l| match price {
                Some(price) => l.cost + price * kind.served * l.worst().pascals(),
                None => l.worst().pascals(),
            })
        };
        self.kinds.iter().map(of_kind).collect()
    }

    /// The candidates of each leg at a step of the price, wider where they could not be joined.
    fn for_legs(&self, layout: &Layout, step: i32, least_rating: Pressure) -> Vec<Vec<usize>> {
        let picks = self.at_step(step, least_rating);
        let mut chosen: Vec<Vec<usize>> =
            self.legs.iter().map(|legs| legs.iter().map(|leg| picks[leg.kind]).collect()).collect();
        for (node, of_node) in chosen.iter_mut().enumerate() {
            let rated = |leg: usize, pick: usize| {
                self.kinds[self.legs[node][leg].kind].losses[pick].rated >= least_rating
            };
            self.unions.widen(layout, node, of_node, rated);
        }
        chosen
    }

    fn bores(&self, layout: &Layout, chosen: Vec<Vec<usize>>) -> Bores {
        let picks = self.legs.iter().flatten().zip(chosen.iter().flatten());
        let losses = picks.map(|(leg, &pick)| self.kinds[leg.kind].losses[pick].of(leg.metres));
        let (price, weakest) =
            losses.fold((0.0, NO_LIMIT), |(price, weakest), l| (price + l.cost, weakest.min(l.rated)));
        Bores { need: self.need(layout, Picks::OfLegs(&chosen)), price, weakest, chosen }
    }

    fn need(&self, layout: &Layout, picks: Picks<'_>) -> Pressure {
        if self.thickens {
            self.need_path_by_path(layout, picks)
        } else {
            self.need_in_one_sweep(layout, picks)
        }
    }

    /// From the points back to the pump each leg takes the cheapest candidate that all its paths can still afford.
    fn given_back(
        &self,
        layout: &Layout,
        roomy: &[Vec<usize>],
        budget: Pressure,
        least_rating: Pressure,
    ) -> Vec<Vec<usize>> {
        let mut chosen = roomy.to_vec();
        let sums = self.sums(layout, Picks::OfLegs(roomy));
        let mut slack = vec![(NO_LIMIT, NO_LIMIT); sums.len()];
        for (number, node) in layout.network.nodes.iter().enumerate().rev() {
            let mut room = match node.end {
                End::Point(_) => (budget - sums[number].0, budget - sums[number].1),
                _ => slack[number],
            };
            for (leg_number, leg) in self.legs[number].iter().enumerate() {
                let kind = &self.kinds[leg.kind];
                let now = kind.losses[chosen[number][leg_number]].of(leg.metres);
                let more = |l: &Loss| (l.rested - now.rested, l.moving - now.moving);
                let fits = |l: &Loss| more(l).0 <= room.0 && more(l).1 <= room.1;
                let joins =
                    |pick| self.unions.fits(&layout.candidates[number], &chosen[number], leg_number, pick);
                let now_costs = kind.losses[chosen[number][leg_number]].cost;
                let cost = |pick: usize, l: &Loss| {
                    let better = l.cost < now_costs && fits(&l.of(leg.metres)) && joins(pick);
                    if better { l.cost } else { f64::INFINITY }
                };
                let cheapest = kind.pick(least_rating, cost);
                let then = kind.losses[cheapest].of(leg.metres);
                if then.cost < now.cost && fits(&then) && joins(cheapest) {
                    room = (room.0 - more(&then).0, room.1 - more(&then).1);
                    chosen[number][leg_number] = cheapest;
                }
            }
            if let Some(parent) = node.parent {
                slack[parent] = (slack[parent].0.min(room.0), slack[parent].1.min(room.1));
            }
        }
        chosen
    }

    /// For each node what lies between the pump and its far end, start after rest and moving, as if losses simply added up.
    fn sums(&self, layout: &Layout, picks: Picks<'_>) -> Vec<(Pressure, Pressure)> {
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
    fn need_in_one_sweep(&self, layout: &Layout, picks: Picks<'_>) -> Pressure {
        let sums = self.sums(layout, picks);
        let points = layout.point_nodes.iter().map(|&point| sums[point].0.max(sums[point].1));
        points.fold(Pressure::ZERO, Pressure::max)
    }

    /// The same for an oil that thickens: each path from its far end to the pump.
    fn need_path_by_path(&self, layout: &Layout, picks: Picks<'_>) -> Pressure {
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
    fn new(
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
    fn pick(&self, least_rating: Pressure, cost: impl Fn(usize, &Loss) -> f64) -> usize {
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

/// More than any path asks.
const NO_LIMIT: Pressure = Pressure::from_bar(1e9);
/// Prices of pressure that are tried, hundredths for each pascal and point: from next to nothing to more than any line costs.
const LEAST_PRICE: f64 = 1e-9;
const PRICE_STEP: f64 = 1.25;
const STEPS: i32 = 125;

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

#[cfg(test)]
mod tests {
    use oilway_model::Choice;
    use oilway_physics::Ledger;
    use oilway_units::Volume;
    use proptest::prelude::*;

    use super::*;
    use crate::layout::layout;
    use crate::need::needs;
    use crate::testing::{bar, catalogue, dairy, hall, known, spindle};
    use crate::tree::Meter;

    fn losses(job: &Job, cubic_centimetres_per_minute: f64) -> (Layout, Losses) {
        let layout = layout(job, catalogue()).unwrap();
        let tails = vec![Volume::ZERO; job.points.len()];
        let needs = needs(&job.conditions, &job.points, &tails, &mut Ledger::off());
        let metering = Meter::new(job, catalogue()).meter(&needs).unwrap();
        let flow = Flow::from_cubic_centimetres_per_minute(cubic_centimetres_per_minute);
        let losses = Losses::new(job, &layout, &metering, flow, &mut Joiner::new(catalogue())).unwrap();
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
                    least = least.min(losses.need_in_one_sweep(layout, Picks::OfLegs(&chosen)));
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
        let paths = losses.need_path_by_path(&layout, Picks::OfLegs(&bores.chosen));
        assert!((paths / bores.need - 1.0).abs() < 1e-12);
    }

    #[test]
    fn an_oil_that_thickens_asks_for_more() {
        let (layout, losses) = losses(&spindle(), 60.0);
        assert!(losses.thickens);
        let bores = losses.within(&layout, bar(150.0), bar(10.0)).unwrap();
        assert!(bores.need > losses.need_in_one_sweep(&layout, Picks::OfLegs(&bores.chosen)));
    }

    /// The least cost of any choice of bores that holds, by trying all of them: the main and three classes of tails.
    fn least_cost(layout: &Layout, losses: &Losses, budget: Pressure) -> f64 {
        let legs: Vec<usize> = (0..losses.legs.len()).filter(|&n| !losses.legs[n].is_empty()).collect();
        let options = losses.kinds[losses.legs[legs[0]][0].kind].losses.len();
        let mut chosen: Vec<Vec<usize>> = losses.legs.iter().map(|l| vec![0; l.len()]).collect();
        let mut least = f64::INFINITY;
        for code in 0..options.pow(4) {
            let digit = |place: u32| code / options.pow(place) % options;
            for (order, &number) in legs.iter().enumerate() {
                // The first leg is the main; the tails follow in three lengths that repeat.
                chosen[number][0] = if order == 0 { digit(0) } else { digit(1 + ((order - 1) % 3) as u32) };
            }
            if losses.need_in_one_sweep(layout, Picks::OfLegs(&chosen)) <= budget {
                least = least.min(losses.bores(layout, chosen.clone()).price);
            }
        }
        least
    }

    #[test]
    fn lines_cost_little_more_than_the_cheapest_that_hold() {
        let mut job = small();
        job.points.truncate(6);
        let (layout, losses) = losses(&job, 2.0);
        for budget in [45.0, 60.0, 80.0, 110.0] {
            let Some(found) = losses.within(&layout, bar(budget), bar(100.0)) else { continue };
            let least = least_cost(&layout, &losses, bar(budget));
            assert!(found.price <= least * 1.15, "{budget} bar: {} against {least}", found.price);
        }
    }

    #[test]
    fn a_tube_and_its_hose_can_always_be_joined() {
        let mut job = small();
        for point in &mut job.points {
            point.route.push(crate::testing::hose(0, 3.0));
        }
        let (layout, losses) = losses(&job, 20.0);
        let mut joiner = Joiner::new(catalogue());
        for budget in (20..200).step_by(3) {
            let Some(bores) = losses.within(&layout, bar(f64::from(budget)), bar(100.0)) else { continue };
            for &node in &layout.point_nodes {
                let end = |leg: usize| {
                    let conduit = layout.candidates[node][leg][bores.chosen[node][leg]];
                    crate::joints::conduit_end(&layout.conduits[conduit].part)
                };
                assert!(joiner.join(&end(0), &end(1)).is_some(), "{budget}: {:?}", (end(0), end(1)));
            }
        }
    }

    proptest! {
        #[test]
        fn what_is_found_holds_and_gives_nothing_away(low in 30.0_f64..90.0, more in 0.0_f64..60.0) {
            let (layout, losses) = losses(&small(), 2.0);
            let find = |budget: f64| losses.within(&layout, bar(budget), bar(100.0));
            if let Some(tight) = find(low) {
                let roomy = find(low + more).unwrap();
                prop_assert!(tight.need <= bar(low) && roomy.need <= bar(low + more));
                // A tail alone cannot be had cheaper: the one path that it serves would no longer hold.
                for (number, legs) in losses.legs.iter().enumerate().filter(|(n, _)| layout.point_nodes.contains(n)) {
                    for (leg, here) in legs.iter().enumerate() {
                        for cheaper in 0..losses.kinds[here.kind].losses.len() {
                            if losses.kinds[here.kind].losses[cheaper].cost < losses.kinds[here.kind].losses[tight.chosen[number][leg]].cost {
                                let mut other = tight.chosen.clone();
                                other[number][leg] = cheaper;
                                let holds = losses.kinds[here.kind].losses[cheaper].rated >= bar(100.0)
                                    && losses.need_in_one_sweep(&layout, Picks::OfLegs(&other)) <= bar(low);
                                prop_assert!(!holds, "node {} leg {}", number, leg);
                            }
                        }
                    }
                }
            }
        }
    }
}
