//! The search over periods: classes in order of their lower bound until none can be better than the best answer.
//!
//! A node is a stretch of steps inside one class. It is looked at in three stages, each sharper and dearer than the one
//! before: the bound of the cheapest offers; the bound on the worst error; the exact cost with the least error that any
//! step of the stretch allows. A stretch that may still hold a better error is halved, down to one step, where the
//! bound is the error itself.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use super::answer::Proof;
use super::assignment::{Assignment, Blend, Outcome, Rival, Task};
use super::fraction::Fraction;
use super::ground::{Ground, SpareOutlets};
use super::menu::Menus;
use super::periods::{classes, open_offers};

/// The best answer so far: offers in the order of the groups and their members.
#[derive(Clone, Debug)]
pub(super) struct Found {
    pub(super) twice_cost: u64,
    pub(super) worst: Fraction,
    pub(super) step: u64,
    pub(super) offers: Vec<u32>,
}

/// What the search comes to.
#[derive(Clone, Debug)]
pub(super) enum Verdict {
    /// The best, proven.
    Best { found: Found, proof: Proof },
    /// There is no answer, proven.
    Nothing,
    /// The effort was spent before the proof was complete.
    Spent { found: Option<Found>, proof: Proof },
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Stage {
    Cost,
    Error,
    Solved,
}

/// Ordered by lower bound of cost, of error, then by the period: the order of preference among answers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Node {
    twice_cost: u64,
    worst: Fraction,
    first: u64,
    last: u64,
    stage: Stage,
    tries: u32,
}

/// Searches all periods of the range.
pub(super) fn search(ground: &Ground, effort: u64) -> Verdict {
    let Some(spare) = ground.spare_outlets() else { return Verdict::Nothing };
    let mut search = Search {
        ground,
        spare,
        effort,
        queue: BinaryHeap::new(),
        best: None,
        menus: Menus::default(),
        assignment: Assignment::default(),
        classes: 0,
        solved: 0,
    };
    search.run()
}

struct Search<'a> {
    ground: &'a Ground,
    spare: SpareOutlets,
    effort: u64,
    queue: BinaryHeap<Reverse<Node>>,
    best: Option<Found>,
    menus: Menus,
    assignment: Assignment,
    classes: u64,
    solved: u64,
}

impl Search<'_> {
    fn run(&mut self) -> Verdict {
        for class in classes(self.ground) {
            let (twice_cost, first, last) = (class.bound, class.first, class.last);
            let worst = Fraction::ONE;
            self.queue.push(Reverse(Node { twice_cost, worst, first, last, stage: Stage::Cost, tries: 0 }));
            self.classes += 1;
        }
        while let Some(Reverse(node)) = self.queue.pop() {
            if self.beaten(&node) {
                break;
            }
            match node.stage {
                Stage::Cost => self.bound_error(node),
                Stage::Error => {
                    if !self.solve(node) {
                        return Verdict::Spent {
                            found: self.best.take(),
                            proof: self.proof(node.twice_cost),
                        };
                    }
                }
                Stage::Solved => self.halve(node),
            }
        }
        self.close()
    }

    /// Whether no step of the node can come before the best answer; the queue is in this very order.
    fn beaten(&self, node: &Node) -> bool {
        self.best.as_ref().is_some_and(|best| {
            (node.twice_cost, node.worst, node.first) >= (best.twice_cost, best.worst, best.step)
        })
    }

    fn bound_error(&mut self, mut node: Node) {
        let (first, last) = (node.first, node.last);
        for group in &self.ground.groups {
            let open = group.offers[open_offers(group, first, last)].iter();
            let volumes = open.map(|&offer| self.ground.offers[offer as usize].volume);
            let errors = volumes.map(|u| self.ground.least_error(u, group.demand, first, last));
            node.worst = node.worst.max(errors.min().unwrap_or(Fraction::ONE));
        }
        node.stage = Stage::Error;
        self.queue.push(Reverse(node));
    }

    /// Solves the node up to a ceiling of cost. False if the effort was spent.
    fn solve(&mut self, mut node: Node) -> bool {
        self.menus.ranked(self.ground, node.first, node.last, self.spare.fewest > 0);
        let outcome = self.assignment.solve(&Task {
            ground: self.ground,
            menus: &self.menus.groups,
            spare: self.spare,
            blend: Blend::Worst,
            ceiling: node.twice_cost + slack(self.ground, node.tries),
            rival: self.best.as_ref().map(|best| rival(best, &self.menus, node.first)),
            effort: self.effort.saturating_sub(self.assignment.states),
        });
        self.solved += 1;
        match outcome {
            Outcome::Spent => return false,
            Outcome::Nothing { next: None } => {}
            Outcome::Nothing { next: Some(next) } => {
                node.twice_cost = next;
                node.tries += 1;
                self.queue.push(Reverse(node));
            }
            Outcome::Found { twice_cost, weight, offers } => {
                node.twice_cost = twice_cost;
                node.worst = self.menus.errors[weight as usize];
                node.stage = Stage::Solved;
                self.offer(twice_cost, offers, &node);
                self.queue.push(Reverse(node));
            }
        }
        true
    }

    /// Takes the offers at their best step of the node as the answer, if they are better than the best.
    fn offer(&mut self, twice_cost: u64, offers: Vec<u32>, node: &Node) {
        let (step, worst) = best_step(self.ground, &offers, node.first, node.last);
        let better = self
            .best
            .as_ref()
            .is_none_or(|best| (twice_cost, worst, step) < (best.twice_cost, best.worst, best.step));
        if better {
            self.best = Some(Found { twice_cost, worst, step, offers });
        }
    }

    fn halve(&mut self, node: Node) {
        if node.first == node.last {
            return;
        }
        let middle = node.first + (node.last - node.first) / 2;
        for (first, last) in [(node.first, middle), (middle + 1, node.last)] {
            self.queue.push(Reverse(Node { first, last, stage: Stage::Cost, tries: 0, ..node }));
        }
    }

    /// The best answer with the least sum of errors at its period, and the proof.
    fn close(&mut self) -> Verdict {
        let Some(mut found) = self.best.take() else { return Verdict::Nothing };
        self.menus.summed(self.ground, found.step, found.worst, self.spare.fewest > 0);
        let outcome = self.assignment.solve(&Task {
            ground: self.ground,
            menus: &self.menus.groups,
            spare: self.spare,
            blend: Blend::Sum,
            ceiling: found.twice_cost,
            rival: None,
            effort: self.effort.saturating_sub(self.assignment.states),
        });
        if let Outcome::Found { offers, .. } = outcome {
            found.offers = offers;
        }
        let proof = self.proof(found.twice_cost);
        Verdict::Best { found, proof }
    }

    fn proof(&self, twice_bound: u64) -> Proof {
        Proof {
            lower_bound: twice_bound.div_ceil(2),
            nodes_explored: self.assignment.states,
            periods_examined: self.ground.steps.1 - self.ground.steps.0 + 1,
            classes: self.classes,
            assignments: self.solved,
        }
    }
}

/// Twice the cost by which the ceiling of a run lies above the bound: none at first, for most runs only confirm that
/// the bound is not reached; then doubling, so that a class without an answer is soon exhausted.
fn slack(ground: &Ground, tries: u32) -> u64 {
    let piston = ground.sizes.iter().map(|size| u64::from(size.cost)).min().unwrap_or(0).max(1);
    if tries == 0 { 0 } else { piston.saturating_mul(1 << (tries - 1).min(30)) }
}

/// The best answer as a bound for a node whose steps begin at `first`: an equal error is of use only if it may come
/// at a shorter period.
fn rival(best: &Found, menus: &Menus, first: u64) -> Rival {
    let weight = menus
        .errors
        .partition_point(|error| if first < best.step { *error <= best.worst } else { *error < best.worst });
    Rival { twice_cost: best.twice_cost, weight: weight as u64 }
}

/// The step between `first` and `last` with the least worst error for settled offers, and that error; of equals the
/// first. The largest share falls with the period and the inverse of the smallest rises, so the best lies
/// where they cross.
fn best_step(ground: &Ground, offers: &[u32], first: u64, last: u64) -> (u64, Fraction) {
    let members = ground.groups.iter().flat_map(|group| group.members.iter().map(|_| group.demand));
    let wanted = offers.iter().zip(members);
    let per_demand = |(offer, demand): (&u32, u32)| {
        Fraction::new(u128::from(ground.offers[*offer as usize].volume), u128::from(demand))
    };
    let mut least = Fraction::UNBOUNDED;
    let mut most = Fraction::new(0, 1);
    for share in wanted.map(per_demand) {
        least = least.min(share);
        most = most.max(share);
    }
    let at = |step: u64| {
        let share = |u_over_q: Fraction| {
            let given = 3600 * u128::from(ground.ticks_per_second) * u_over_q.numerator();
            Fraction::new(given, u_over_q.denominator() * ground.ticks(step))
        };
        let short = share(least);
        (share(most), Fraction::new(short.denominator(), short.numerator()))
    };
    let crossing = first_step_where(first, last, |step| {
        let (over, under) = at(step);
        under >= over
    });
    let error = |step: u64| {
        let (over, under) = at(step);
        over.max(under)
    };
    let before = crossing.saturating_sub(1).max(first);
    let (step, worst) =
        if error(before) <= error(crossing) { (before, error(before)) } else { (crossing, error(crossing)) };
    (step, worst)
}

/// The first step from `first` on where the condition, once true for ever true, holds; `last` if it does not before.
fn first_step_where(first: u64, last: u64, holds: impl Fn(u64) -> bool) -> u64 {
    let (mut low, mut high) = (first, last);
    while low < high {
        let middle = low + (high - low) / 2;
        if holds(middle) { high = middle } else { low = middle + 1 }
    }
    low
}
