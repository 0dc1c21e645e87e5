//! The question: points with their demand and band, the sizes a divider may be built from, and its limits.

use super::{Infeasible, Optimum, choose_sections};

/// One divider with its points: the question as a whole.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OneDivider {
    /// The points it has to serve.
    pub points: Vec<Wanted>,
    /// The piston sizes it may be built from.
    pub sizes: Vec<SectionSize>,
    /// What its kind and the pump allow.
    pub limits: Limits,
}

impl OneDivider {
    /// The cheapest divider, proven; see [`choose_sections`].
    ///
    /// # Errors
    /// See [`choose_sections`].
    pub fn solve(&self) -> Result<Optimum, Infeasible> {
        choose_sections(&self.points, &self.sizes, &self.limits)
    }
}

/// What one point wants, and what is settled about its feed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wanted {
    /// Demand in mm³/h, above zero.
    pub demand: u32,
    /// Least delivery in percent of the demand; zero for no lower bound.
    pub lo_pct: u32,
    /// Largest delivery in percent of the demand.
    pub hi_pct: u32,
    /// What the engineer has settled; `None` leaves the feed open.
    pub allowed: Option<Given>,
}

impl Wanted {
    /// A point whose feed is open.
    #[must_use]
    pub const fn new(demand: u32, lo_pct: u32, hi_pct: u32) -> Self {
        Self { demand, lo_pct, hi_pct, allowed: None }
    }

    /// The same point with its feed settled as given.
    #[must_use]
    pub fn kept(mut self, given: Given) -> Self {
        self.allowed = Some(given);
        self
    }
}

/// What is settled about the feed of a point. Sizes are named by their place in the list of sizes.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Given {
    /// Exactly this feed.
    Feed(Feed),
    /// One of these feeds.
    OneOf(Vec<Feed>),
    /// Any feed that uses these sizes only.
    Sizes(Vec<usize>),
}

/// How a point is fed. Sizes are named by their place in the list of sizes.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Feed {
    /// One outlet of a piston of this size.
    One(usize),
    /// Both outlets of one piston of this size, joined inside the divider.
    Joined(usize),
    /// Two or more outlets led together by tees, one entry for each outlet, in rising order.
    Teed(Vec<usize>),
}

impl Feed {
    /// The sizes of the outlets this feed takes, one entry for each outlet.
    #[must_use]
    pub fn outlets(&self) -> Vec<usize> {
        match self {
            Self::One(size) => vec![*size],
            Self::Joined(size) => vec![*size; 2],
            Self::Teed(sizes) => sizes.clone(),
        }
    }
}

/// A piston size of the divider.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SectionSize {
    /// Volume of one stroke, given to each of the two outlets in turn, in mm³.
    pub volume_mm3: u32,
    /// Cost of a piston of this size, in whatever whole unit the caller uses throughout.
    pub cost: u32,
}

/// Which ways of combining outlets are open, and their cost.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Combining {
    /// Cost of joining both outlets of one piston; `None` if that is not to be done.
    pub join_cost: Option<u32>,
    /// Leading outlets together by tees; `None` if that is not to be done.
    pub tees: Option<Tees>,
}

impl Combining {
    /// Pistons may be joined at this cost, and nothing else.
    #[must_use]
    pub const fn joined_at(cost: u32) -> Self {
        Self { join_cost: Some(cost), tees: None }
    }

    /// Up to `most_outlets` outlets may be led together, each tee at this cost, and nothing else.
    #[must_use]
    pub const fn teed(most_outlets: u8, cost: u32) -> Self {
        Self { join_cost: None, tees: Some(Tees { most_outlets, cost }) }
    }
}

/// Leading outlets together by tees.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tees {
    /// Most outlets led to one point.
    pub most_outlets: u8,
    /// Cost of one tee; a point on `k` outlets takes `k − 1` of them.
    pub cost: u32,
}

/// What the kind of divider, the pump and the engineer's patience allow.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Limits {
    /// Fewest and most pistons of one divider.
    pub pistons: (u32, u32),
    /// Ways of combining outlets.
    pub combining: Combining,
    /// Periods of one full cycle that are open.
    pub period: PeriodRange,
    /// Most steps of the search before it gives up unproven; [`Limits::USUAL_EFFORT`] is seconds of work.
    pub effort: u64,
}

impl Limits {
    /// Steps that suit a desk: a few seconds of one core, thousands of times what usual dividers need.
    pub const USUAL_EFFORT: u64 = 300_000_000;
}

/// The periods of one full cycle that are open: every multiple of `step` from `shortest` to `longest`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PeriodRange {
    /// Shortest period, in ticks.
    pub shortest: u32,
    /// Longest period, in ticks.
    pub longest: u32,
    /// Periods are whole multiples of this, in ticks.
    pub step: u32,
    /// Ticks in one second; 1 when all is in seconds.
    pub ticks_per_second: u32,
}

impl PeriodRange {
    /// Every multiple of `step` from `shortest` to `longest`, all in seconds.
    #[must_use]
    pub const fn seconds(shortest: u32, longest: u32, step: u32) -> Self {
        Self { shortest, longest, step, ticks_per_second: 1 }
    }

    /// This period and no other, in seconds.
    #[must_use]
    pub const fn fixed(seconds: u32) -> Self {
        Self::seconds(seconds, seconds, seconds)
    }

    /// Every period these points and sizes could make use of, in the finest ticks (a power of ten to the second, at
    /// most a million) that still count the longest: for a secondary, where only the ratio of the shares matters.
    #[must_use]
    pub fn free(points: &[Wanted], sizes: &[SectionSize], combining: &Combining) -> Self {
        let outlets = most_outlets(combining);
        let largest = sizes.iter().map(|s| u128::from(s.volume_mm3)).max().unwrap_or(1) * outlets;
        let smallest = sizes.iter().map(|s| u128::from(s.volume_mm3)).min().unwrap_or(1);
        let least = points.iter().map(|p| u128::from(p.demand) * u128::from(p.lo_pct.max(1))).min();
        let most = points.iter().map(|p| u128::from(p.demand) * u128::from(p.hi_pct.max(1))).max();
        let longest = 360_000 * largest / least.unwrap_or(1).max(1) + 1;
        let mut ticks = 1_000_000;
        while ticks > 1 && longest * ticks > u128::from(u32::MAX) {
            ticks /= 10;
        }
        let shortest = 360_000 * smallest * ticks / most.unwrap_or(1).max(1);
        let narrow = |value: u128| u32::try_from(value).unwrap_or(u32::MAX).max(1);
        Self {
            shortest: narrow(shortest),
            longest: narrow(longest * ticks),
            step: 1,
            ticks_per_second: narrow(ticks),
        }
    }

    /// The first and last multiple of the step in the range; empty (first above last) if there is none.
    pub(super) fn steps(&self) -> (u64, u64) {
        let step = u64::from(self.step.max(1));
        (u64::from(self.shortest.max(1)).div_ceil(step), u64::from(self.longest) / step)
    }
}

/// Most outlets that one point may be given.
pub(super) fn most_outlets(combining: &Combining) -> u128 {
    let joined = if combining.join_cost.is_some() { 2 } else { 1 };
    joined.max(combining.tees.map_or(1, |tees| u128::from(tees.most_outlets.max(1))))
}
