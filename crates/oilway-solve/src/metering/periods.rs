//! Periods: which a settled divider may have, which inflow a settled secondary accepts, and the classes of periods
//! between which the offers change.

use super::fraction::Fraction;
use super::ground::{Ground, Group};
use super::problem::Wanted;

/// A span from one fraction to another, both included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Span {
    /// Where it begins.
    pub from: Fraction,
    /// Where it ends; perhaps [`Fraction::UNBOUNDED`].
    pub to: Fraction,
}

impl Span {
    fn unless_empty(from: Fraction, to: Fraction) -> Option<Self> {
        (from <= to).then_some(Self { from, to })
    }

    /// What two spans have in common.
    pub(super) fn common(self, other: Self) -> Option<Self> {
        Self::unless_empty(self.from.max(other.from), self.to.min(other.to))
    }
}

/// Periods in seconds at which settled volumes keep every point in its band; `None` if there are none.
///
/// # Equation
/// ```text
/// max_i 360000 u_i / (hi_i q_i)  ≤  T  ≤  min_i 360000 u_i / (lo_i q_i)
/// ```
///
/// | symbol | here      | meaning                              | unit  |
/// |--------|-----------|--------------------------------------|-------|
/// | u      | `volumes` | volume of each point per full cycle  | mm³   |
/// | q      | `points`  | demand                               | mm³/h |
/// | lo, hi | `points`  | band in percent of the demand        | %     |
/// | T      | result    | period of one full cycle             | s     |
///
/// # Validity
/// Long-run shares; over a short run a point may be one shot ahead or behind. Lists of different length count up to the
/// shorter.
///
/// # Source
/// Rearranged from the band (own derivation).
///
/// # Example
/// ```
/// use oilway_solve::metering::{feasible_periods, Wanted};
///
/// let points = [Wanted::new(100, 90, 125), Wanted::new(200, 90, 125)];
/// let span = feasible_periods(&[50, 100], &points).expect("the volumes are in the ratio of the demands");
/// assert_eq!((span.from.value(), span.to.value()), (1440.0, 2000.0));
/// assert!(feasible_periods(&[50, 50], &points).is_none());
/// ```
#[must_use]
pub fn feasible_periods(volumes: &[u32], points: &[Wanted]) -> Option<Span> {
    let all = Span { from: Fraction::new(0, 1), to: Fraction::UNBOUNDED };
    volumes.iter().zip(points).try_fold(all, |span, (&volume, point)| {
        span.common(span_of(u64::from(volume), point.demand, point.lo_pct, point.hi_pct)?)
    })
}

/// Inflow in mm³/h at which a secondary of settled pattern keeps every point in its band; `None` if there is none.
///
/// # Equation
/// ```text
/// max_i lo_i q_i V / (100 u_i)  ≤  φ  ≤  min_i hi_i q_i V / (100 u_i),    V = Σ u_i
/// ```
///
/// | symbol | here      | meaning                              | unit  |
/// |--------|-----------|--------------------------------------|-------|
/// | u      | `volumes` | volume of each point per full cycle  | mm³   |
/// | V      | derived   | volume of one full cycle             | mm³   |
/// | q      | `points`  | demand                               | mm³/h |
/// | φ      | result    | flow into the secondary              | mm³/h |
///
/// # Validity
/// Long-run shares, every outlet serving one of the points.
///
/// # Source
/// Rearranged from the band (own derivation); a point gets the share `u/V` of the inflow.
///
/// # Example
/// ```
/// use oilway_solve::metering::{acceptable_inflow, Wanted};
///
/// let points = [Wanted::new(100, 90, 125), Wanted::new(200, 90, 125)];
/// let span = acceptable_inflow(&[50, 100], &points).expect("the volumes are in the ratio of the demands");
/// assert_eq!((span.from.value(), span.to.value()), (270.0, 375.0));
/// ```
#[must_use]
pub fn acceptable_inflow(volumes: &[u32], points: &[Wanted]) -> Option<Span> {
    let cycle: u128 = volumes.iter().map(|&u| u128::from(u)).sum();
    let all = Span { from: Fraction::new(0, 1), to: Fraction::UNBOUNDED };
    volumes.iter().zip(points).try_fold(all, |span, (&volume, point)| {
        let of = |pct: u32| {
            Fraction::new(u128::from(pct) * u128::from(point.demand) * cycle, 100 * u128::from(volume))
        };
        span.common(Span::unless_empty(of(point.lo_pct), of(point.hi_pct))?)
    })
}

/// Periods in seconds at which one volume lies in the band of one point.
pub(super) fn span_of(volume: u64, demand: u32, lo_pct: u32, hi_pct: u32) -> Option<Span> {
    let of = |pct: u32| Fraction::new(360_000 * u128::from(volume), u128::from(pct) * u128::from(demand));
    Span::unless_empty(of(hi_pct), of(lo_pct))
}

/// A stretch of steps in which every group keeps the same offers.
#[derive(Clone, Debug)]
pub(super) struct Class {
    pub(super) first: u64,
    pub(super) last: u64,
    /// Twice the cost of the cheapest offers with an even total of outlets: a lower bound.
    pub(super) bound: u64,
}

/// The offers of a group open over all steps from `first` to `last` of one class, as a range of its list.
pub(super) fn open_offers(group: &Group, first: u64, last: u64) -> std::ops::Range<usize> {
    let start = group.windows.partition_point(|window| window.1 < last);
    let end = group.windows.partition_point(|window| window.0 <= first);
    start..end.max(start)
}

/// Every class in which each group has an offer and the total of outlets can be even, in order of the period.
pub(super) fn classes(ground: &Ground) -> Vec<Class> {
    let mut groups: Vec<Cheapest> = ground.groups.iter().map(|_| Cheapest::default()).collect();
    let mut classes = Vec::new();
    for pair in breakpoints(ground).windows(2) {
        let (first, last) = (pair[0], pair[1] - 1);
        let mut total = [0, u64::MAX];
        for (cheapest, group) in groups.iter_mut().zip(&ground.groups) {
            cheapest.follow(ground, group, open_offers(group, first, last));
            total = joined(total, cheapest.by_parity);
        }
        if total[0] < u64::MAX {
            classes.push(Class { first, last, bound: total[0] });
        }
    }
    classes
}

/// Every step at which an offer opens or has just closed, with both ends of the range.
fn breakpoints(ground: &Ground) -> Vec<u64> {
    let (first, last) = ground.steps;
    let mut steps = vec![first, last + 1];
    for &(open, close) in ground.groups.iter().flat_map(|group| &group.windows) {
        if open <= close && open <= last && close >= first {
            steps.extend([open.max(first), close.min(last) + 1]);
        }
    }
    steps.sort_unstable();
    steps.dedup();
    steps
}

/// Twice the cheapest cost of a group for an even and an odd number of outlets, kept while its offers stay the same.
#[derive(Default)]
struct Cheapest {
    offers: std::ops::Range<usize>,
    by_parity: [u64; 2],
}

impl Cheapest {
    fn follow(&mut self, ground: &Ground, group: &Group, offers: std::ops::Range<usize>) {
        // The default range is empty and its cost zero: an empty range must be seen even when it comes first.
        if offers == self.offers && !offers.is_empty() {
            return;
        }
        let mut one = [u64::MAX; 2];
        for &place in &group.offers[offers.clone()] {
            let offer = &ground.offers[place as usize];
            let odd = usize::from(offer.extra.is_multiple_of(2));
            one[odd] = one[odd].min(offer.twice_cost);
        }
        self.by_parity = group.members.iter().fold([0, u64::MAX], |sum, _| joined(sum, one));
        self.offers = offers;
    }
}

/// The cheapest even and odd sums of two lists of cheapest costs.
pub(super) fn joined(a: [u64; 2], b: [u64; 2]) -> [u64; 2] {
    let sum = |x: u64, y: u64| x.saturating_add(y);
    [sum(a[0], b[0]).min(sum(a[1], b[1])), sum(a[0], b[1]).min(sum(a[1], b[0]))]
}
