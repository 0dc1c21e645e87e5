//! Bores of the lines: cheap ones that still hold on the coldest day.
//!
//! One price of pressure decides the whole tree: each open leg takes the candidate for which its own cost plus that price, times
//! what it loses, times the number of points that it serves, is least. A leg that many points share is thus widened long
//! before a tail is. The price is raised until the worst path holds; then every leg, tails first, gives back what its
//! paths do not need. A few dozen passes over the tree keep a system of ten thousand points as quick as one of ten.
//!
//! A pass picks once for each kind of leg ([`crate::losses`]), and what a pass has found is kept for the next pump and disc.

use std::collections::BTreeMap;
use std::rc::Rc;

use oilway_model::End;
use oilway_units::Pressure;

use crate::layout::Layout;
use crate::losses::{Kind, Loss, Losses, Picks};

/// What earlier passes have found, by the number of ratings that are too low.
#[derive(Debug, Default)]
pub(crate) struct Found {
    /// The need at a step of the price of pressure.
    needs: BTreeMap<(usize, i32), Pressure>,
    /// The bores within a budget, by its bits.
    within: BTreeMap<(usize, u64), Option<Rc<Bores>>>,
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

impl Losses {
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
}

/// More than any path asks.
const NO_LIMIT: Pressure = Pressure::from_bar(1e9);
/// Prices of pressure that are tried, hundredths for each pascal and point: from next to nothing to more than any line costs.
const LEAST_PRICE: f64 = 1e-9;
const PRICE_STEP: f64 = 1.25;
const STEPS: i32 = 125;

#[cfg(test)]
mod tests {
    use oilway_model::{Choice, Job};
    use oilway_physics::Ledger;
    use oilway_units::{Flow, Length, Volume};
    use proptest::prelude::*;

    use super::*;
    use crate::joints::Joiner;
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
