//! The answer: one feed for each point, the period, the pistons, and what proves it the cheapest.

use super::fraction::Fraction;
use super::ground::Ground;
use super::problem::Feed;
use super::search::Found;

/// The cheapest sections, proven.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Optimum {
    /// Cost of pistons, joints and tees.
    pub objective: u64,
    /// Period of one full cycle.
    pub period: Period,
    /// The feed of each point, in the order of the question.
    pub choices: Vec<Choice>,
    /// Pistons of each size, in the order of the question.
    pub pistons: Vec<PistonUse>,
    /// Volume of one full cycle, mm³: what all points get together.
    pub cycle_volume: u64,
    /// Largest `max(r, 1/r)` over the points, with `r` delivered over wanted.
    pub worst_error: Fraction,
    /// What proves the answer.
    pub proof: Proof,
}

impl Optimum {
    /// Pistons of all sizes.
    #[must_use]
    pub fn piston_count(&self) -> u32 {
        self.pistons.iter().map(|used| used.split + used.joined).sum()
    }
}

/// A period of one full cycle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Period {
    /// Its length in ticks.
    pub ticks: u64,
    /// Ticks in one second.
    pub ticks_per_second: u64,
}

impl Period {
    /// Its length in seconds.
    #[must_use]
    pub fn seconds(&self) -> f64 {
        self.ticks as f64 / self.ticks_per_second as f64
    }
}

/// The feed of one point.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Choice {
    /// How the point is fed.
    pub feed: Feed,
    /// Volume per full cycle, mm³.
    pub volume: u64,
    /// Delivered over wanted.
    pub share: Fraction,
}

/// Pistons of one size.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct PistonUse {
    /// Pistons whose outlets serve separately, alone or through tees.
    pub split: u32,
    /// Pistons whose outlets are joined.
    pub joined: u32,
}

/// What proves an answer the cheapest, and the work it took.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Proof {
    /// No divider within the limits costs less.
    pub lower_bound: u64,
    /// States of the assignment looked at.
    pub nodes_explored: u64,
    /// Periods the proof covers: all of the range.
    pub periods_examined: u64,
    /// Classes of periods in which every point has an offer.
    pub classes: u64,
    /// Assignments solved; the other classes fell to their lower bounds.
    pub assignments: u64,
}

/// Writes the found offers as an answer to the question.
pub(super) fn optimum(ground: &Ground, found: &Found, proof: Proof) -> Optimum {
    let mut choices: Vec<(usize, Choice)> = Vec::with_capacity(ground.points);
    let mut outlets = vec![0u32; ground.sizes.len()];
    let mut pistons = vec![PistonUse::default(); ground.sizes.len()];
    let members =
        ground.groups.iter().flat_map(|group| group.members.iter().map(move |&point| (point, group)));
    for ((point, group), &place) in members.zip(&found.offers) {
        let offer = &ground.offers[place as usize];
        match &offer.feed {
            Feed::Joined(size) => pistons[*size].joined += 1,
            feed => feed.outlets().into_iter().for_each(|size| outlets[size] += 1),
        }
        let share = ground.share(offer.volume, group.demand, found.step);
        choices.push((point, Choice { feed: offer.feed.clone(), volume: offer.volume, share }));
    }
    choices.sort_by_key(|(point, _)| *point);
    let choices: Vec<Choice> = choices.into_iter().map(|(_, choice)| choice).collect();
    pistons.iter_mut().zip(&outlets).for_each(|(used, outlets)| used.split = outlets / 2);
    Optimum {
        objective: found.twice_cost / 2,
        period: period(ground, found.step),
        cycle_volume: choices.iter().map(|choice| choice.volume).sum(),
        choices,
        pistons,
        worst_error: found.worst,
        proof,
    }
}

/// The period at a step.
pub(super) fn period(ground: &Ground, step: u64) -> Period {
    Period { ticks: step * ground.step, ticks_per_second: ground.ticks_per_second }
}
