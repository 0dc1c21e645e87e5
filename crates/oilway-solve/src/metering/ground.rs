//! The question made ready for the search: offers, points gathered in groups, and the windows of each offer.

use std::collections::BTreeMap;

use super::fraction::Fraction;
use super::offers::{self, Offer};
use super::problem::{Limits, SectionSize, Wanted};

/// Points that want the same and are free to take the same feeds.
#[derive(Clone, Debug)]
pub(super) struct Group {
    pub(super) demand: u32,
    pub(super) lo_pct: u32,
    pub(super) hi_pct: u32,
    /// The points, by their place in the question.
    pub(super) members: Vec<usize>,
    /// Open offers in order of volume, by their place in the list of offers.
    pub(super) offers: Vec<u32>,
    /// For each open offer the first and last step at which its volume lies in the band; neither falls as the volume
    /// rises. First above last where no step fits.
    pub(super) windows: Vec<(u64, u64)>,
}

/// Bounds on the outlets taken beyond one for each point: twice the bounds on pistons, less the points.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct SpareOutlets {
    pub(super) fewest: u64,
    /// `None` if there is no bound.
    pub(super) most: Option<u64>,
}

/// The question made ready for the search.
#[derive(Clone, Debug)]
pub(super) struct Ground {
    pub(super) sizes: Vec<SectionSize>,
    pub(super) offers: Vec<Offer>,
    pub(super) groups: Vec<Group>,
    pub(super) points: usize,
    pub(super) pistons: (u32, u32),
    /// First and last step of the range of periods.
    pub(super) steps: (u64, u64),
    /// Length of one step in ticks.
    pub(super) step: u64,
    pub(super) ticks_per_second: u64,
}

impl Ground {
    /// Makes a sound question ready; see [`super::faults`].
    pub(super) fn new(points: &[Wanted], sizes: &[SectionSize], limits: &Limits) -> Self {
        let offers = offers::all(sizes, &limits.combining);
        let period = &limits.period;
        let mut ground = Self {
            sizes: sizes.to_vec(),
            offers,
            groups: Vec::new(),
            points: points.len(),
            pistons: limits.pistons,
            steps: period.steps(),
            step: u64::from(period.step),
            ticks_per_second: u64::from(period.ticks_per_second),
        };
        ground.groups = ground.gathered(points);
        ground
    }

    /// Groups in order of demand: neighbours share sizes, so that few sizes stay open between them.
    fn gathered(&self, points: &[Wanted]) -> Vec<Group> {
        let mut alike: BTreeMap<_, Vec<usize>> = BTreeMap::new();
        for (place, point) in points.iter().enumerate() {
            let key = (point.demand, point.lo_pct, point.hi_pct, point.allowed.clone());
            alike.entry(key).or_default().push(place);
        }
        let group = |((demand, lo_pct, hi_pct, _), members): (_, Vec<usize>)| {
            let offers = offers::open_to(&points[members[0]], &self.offers);
            let mut group = Group { demand, lo_pct, hi_pct, members, offers, windows: Vec::new() };
            let window = |&offer: &u32| self.window(self.offers[offer as usize].volume, &group);
            group.windows = group.offers.iter().map(window).collect();
            group
        };
        alike.into_iter().map(group).collect()
    }

    /// First and last step at which a volume lies in the band of a group, whatever the range of periods:
    /// `lo q T ≤ 360000 u ≤ hi q T`.
    fn window(&self, volume: u64, group: &Group) -> (u64, u64) {
        let given = 360_000 * u128::from(self.ticks_per_second) * u128::from(volume);
        let per_step = |pct: u32| u128::from(pct) * u128::from(group.demand) * u128::from(self.step);
        let first = given.div_ceil(per_step(group.hi_pct));
        let last = given.checked_div(per_step(group.lo_pct)).unwrap_or(u128::MAX);
        let narrow = |step: u128| u64::try_from(step).unwrap_or(u64::MAX);
        (narrow(first), narrow(last))
    }

    /// Delivered over wanted for a volume at a step of the period.
    pub(super) fn share(&self, volume: u64, demand: u32, step: u64) -> Fraction {
        let given = 3600 * u128::from(self.ticks_per_second) * u128::from(volume);
        Fraction::new(given, u128::from(demand) * self.ticks(step))
    }

    /// The least error over the steps from `first` to `last`; one if the exact period lies between them.
    pub(super) fn least_error(&self, volume: u64, demand: u32, first: u64, last: u64) -> Fraction {
        let at_first = self.share(volume, demand, first);
        if at_first <= Fraction::ONE {
            return at_first.above_one();
        }
        let at_last = self.share(volume, demand, last);
        if at_last >= Fraction::ONE { at_last } else { Fraction::ONE }
    }

    /// The period at a step, in ticks.
    pub(super) fn ticks(&self, step: u64) -> u128 {
        u128::from(step) * u128::from(self.step)
    }

    /// Bounds on the outlets beyond one for each point; `None` if even one for each is too many.
    pub(super) fn spare_outlets(&self) -> Option<SpareOutlets> {
        let points = self.points as u64;
        let (fewest, most) = (2 * u64::from(self.pistons.0), 2 * u64::from(self.pistons.1));
        let most = most.checked_sub(points)?;
        let extra = |offer: &u32| u64::from(self.offers[*offer as usize].extra);
        let most_of =
            |group: &Group| group.offers.iter().map(extra).max().unwrap_or(0) * group.members.len() as u64;
        let possible: u64 = self.groups.iter().map(most_of).sum();
        let most = (most < possible).then_some(most);
        Some(SpareOutlets { fewest: fewest.saturating_sub(points), most })
    }
}
