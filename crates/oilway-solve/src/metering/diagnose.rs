//! Why the search found nothing, from the simplest reason to the most entangled: the count of pistons whatever the
//! volumes, one point, two points, more points, the count of pistons at the common periods, the pairing of outlets.

use super::answer;
use super::fraction::Fraction;
use super::ground::{Ground, Group};
use super::infeasible::{Infeasible, NearestPeriods, RatioGap};
use super::periods::{self, Span};
use super::problem::Feed;
use super::search::{Found, Verdict, search};

/// The smallest reason found for a question without an answer.
pub(super) fn reason(ground: &Ground, effort: u64) -> Infeasible {
    pistons_whatever_the_volumes(ground)
        .or_else(|| no_common_period(ground))
        .unwrap_or_else(|| outlets(ground, effort))
}

fn pistons_whatever_the_volumes(ground: &Ground) -> Option<Infeasible> {
    let (mut fewest, mut most) = (0, 0);
    for group in &ground.groups {
        let outlets = |&offer: &u32| u64::from(ground.offers[offer as usize].extra) + 1;
        let members = group.members.len() as u64;
        fewest += group.offers.iter().map(outlets).min().unwrap_or(0) * members;
        most += group.offers.iter().map(outlets).max().unwrap_or(0) * members;
    }
    let (fewest, most) = (fewest.div_ceil(2), most / 2);
    let outside = fewest > u64::from(ground.pistons.1) || most < u64::from(ground.pistons.0);
    // Fewest above most: the outlets are odd in number and no other is possible, which the pairing will tell.
    (outside && fewest <= most)
        .then_some(Infeasible::PistonCount { needed: (fewest, most), allowed: ground.pistons })
}

/// One, two or more points that have no period of the range in common.
fn no_common_period(ground: &Ground) -> Option<Infeasible> {
    let steps: Vec<Vec<(u64, u64)>> = ground.groups.iter().map(|group| steps_of(ground, group)).collect();
    if let Some(place) = steps.iter().position(Vec::is_empty) {
        return Some(outside_range(ground, &[&ground.groups[place]]));
    }
    for (i, a) in ground.groups.iter().enumerate() {
        for (j, b) in ground.groups.iter().enumerate().skip(i + 1) {
            if common(&steps[i], &steps[j]).is_empty() {
                return Some(two_points(ground, a, b));
            }
        }
    }
    let mut kept: Vec<usize> = (0..steps.len()).collect();
    if !all_common(&steps, &kept).is_empty() {
        return None;
    }
    for place in 0..steps.len() {
        let fewer: Vec<usize> = kept.iter().copied().filter(|&other| other != place).collect();
        if all_common(&steps, &fewer).is_empty() {
            kept = fewer;
        }
    }
    let mut points: Vec<usize> = kept.iter().map(|&group| ground.groups[group].members[0]).collect();
    points.sort_unstable();
    Some(Infeasible::NoCommonPeriod { points })
}

/// Stretches of steps inside the range at which the group has an offer.
fn steps_of(ground: &Ground, group: &Group) -> Vec<(u64, u64)> {
    let (first, last) = ground.steps;
    merged(group.windows.iter().map(|window| (window.0.max(first), window.1.min(last))))
}

/// Periods in seconds at which the group has an offer, whatever the range.
fn spans_of(ground: &Ground, group: &Group) -> Vec<(Fraction, Fraction)> {
    let span = |&offer: &u32| {
        let volume = ground.offers[offer as usize].volume;
        periods::span_of(volume, group.demand, group.lo_pct, group.hi_pct)
    };
    merged(group.offers.iter().filter_map(span).map(|span| (span.from, span.to)))
}

/// Stretches in order, overlapping ones made one, empty ones left out. They must come in order of their beginning.
fn merged<T: Ord + Copy>(stretches: impl Iterator<Item = (T, T)>) -> Vec<(T, T)> {
    let mut merged: Vec<(T, T)> = Vec::new();
    for (from, to) in stretches.filter(|(from, to)| from <= to) {
        match merged.last_mut() {
            Some(last) if from <= last.1 => last.1 = last.1.max(to),
            _ => merged.push((from, to)),
        }
    }
    merged
}

/// What two lists of stretches have in common.
fn common<T: Ord + Copy>(a: &[(T, T)], b: &[(T, T)]) -> Vec<(T, T)> {
    let (mut i, mut j) = (0, 0);
    let mut common = Vec::new();
    while i < a.len() && j < b.len() {
        let (from, to) = (a[i].0.max(b[j].0), a[i].1.min(b[j].1));
        if from <= to {
            common.push((from, to));
        }
        if a[i].1 < b[j].1 { i += 1 } else { j += 1 }
    }
    common
}

fn all_common(steps: &[Vec<(u64, u64)>], groups: &[usize]) -> Vec<(u64, u64)> {
    groups.iter().fold(vec![(0, u64::MAX)], |left, &group| common(&left, &steps[group]))
}

fn two_points(ground: &Ground, a: &Group, b: &Group) -> Infeasible {
    if common(&spans_of(ground, a), &spans_of(ground, b)).is_empty() {
        band_against_sizes(ground, a, b)
    } else {
        outside_range(ground, &[a, b])
    }
}

fn outside_range(ground: &Ground, groups: &[&Group]) -> Infeasible {
    let all = vec![(Fraction::new(0, 1), Fraction::UNBOUNDED)];
    let spans = groups.iter().fold(all, |left, group| common(&left, &spans_of(ground, group)));
    let seconds = |step: u64| Fraction::new(ground.ticks(step), u128::from(ground.ticks_per_second));
    let (first, last) = (seconds(ground.steps.0), seconds(ground.steps.1));
    let span = |&(from, to): &(Fraction, Fraction)| Span { from, to };
    let nearest = NearestPeriods {
        below: spans.iter().rfind(|(_, to)| *to < first).map(span),
        between: spans.iter().find(|(from, to)| *from > first && *to < last).map(span),
        above: spans.iter().find(|(from, _)| *from > last).map(span),
    };
    let points = groups.iter().map(|group| group.members[0]).collect();
    Infeasible::PeriodRange { points, nearest: Box::new(nearest) }
}

/// The ratios of volumes two bands accept, with the next on offer on either side.
fn band_against_sizes(ground: &Ground, a: &Group, b: &Group) -> Infeasible {
    let bound = |pct: u32, group: &Group| u128::from(pct) * u128::from(group.demand);
    let accepted = Span {
        from: Fraction::new(bound(a.lo_pct, a), bound(b.hi_pct, b)),
        to: Fraction::new(bound(a.hi_pct, a), bound(b.lo_pct, b)),
    };
    let volumes = |group: &Group| -> Vec<u64> {
        group.offers.iter().map(|&offer| ground.offers[offer as usize].volume).collect()
    };
    let seconds = volumes(b);
    let (mut below, mut above) = (None::<Fraction>, None::<Fraction>);
    for first in volumes(a) {
        let ratio = |second: &u64| Fraction::new(u128::from(first), u128::from(*second));
        // The ratio falls as the second volume rises.
        let lower = seconds.get(seconds.partition_point(|second| ratio(second) >= accepted.from)).map(ratio);
        let higher =
            seconds[..seconds.partition_point(|second| ratio(second) > accepted.to)].last().map(ratio);
        below = below.max(lower);
        above = match (above, higher) {
            (Some(above), Some(higher)) => Some(above.min(higher)),
            (above, higher) => above.or(higher),
        };
    }
    let ratios = Box::new(RatioGap { accepted, below, above });
    Infeasible::BandAgainstSizes { points: (a.members[0], b.members[0]), ratios }
}

/// The points have periods in common: what fails is the count of pistons or the pairing of outlets.
fn outlets(ground: &Ground, effort: u64) -> Infeasible {
    let spent = Infeasible::EffortSpent { lower_bound: 0, best: None };
    let outlets_of = |extra: u32| u64::from(extra) + 1;
    let dearest = ground.offers.iter().map(|offer| outlets_of(offer.extra)).max().unwrap_or(1);
    let fewest = cheapest(ground, effort, outlets_of);
    let most = cheapest(ground, effort, |extra| dearest - outlets_of(extra));
    match (fewest, most) {
        (Ok(Some(fewest)), Ok(Some(most))) => Infeasible::PistonCount {
            needed: (fewest / 2, (dearest * ground.points as u64 - most) / 2),
            allowed: ground.pistons,
        },
        (Ok(None), _) => unpaired(ground, effort).unwrap_or(spent),
        _ => spent,
    }
}

/// The least cost at some other price of the outlets, whatever the count of pistons; `Err` if the effort was spent.
fn cheapest(ground: &Ground, effort: u64, price: impl Fn(u32) -> u64) -> Result<Option<u64>, ()> {
    let mut ground = ground.clone();
    ground.pistons = (0, u32::MAX);
    ground.offers.iter_mut().for_each(|offer| offer.twice_cost = price(offer.extra));
    match search(&ground, effort) {
        Verdict::Best { found, .. } => Ok(Some(found.twice_cost)),
        Verdict::Nothing => Ok(None),
        Verdict::Spent { .. } => Err(()),
    }
}

/// The fewest outlets that stay without a partner: as many further points that take any one outlet make it possible.
fn unpaired(ground: &Ground, effort: u64) -> Option<Infeasible> {
    let single = |(_, offer): &(u32, &super::offers::Offer)| matches!(offer.feed, Feed::One(_));
    let singles: Vec<u32> = (0u32..).zip(&ground.offers).filter(single).map(|(place, _)| place).collect();
    for left_over in 1..=ground.sizes.len() {
        let mut eased = ground.clone();
        eased.pistons = (0, u32::MAX);
        eased.points += left_over;
        eased.groups.push(Group {
            demand: 1,
            lo_pct: 0,
            hi_pct: u32::MAX,
            members: vec![0; left_over],
            windows: vec![(0, u64::MAX); singles.len()],
            offers: singles.clone(),
        });
        match search(&eased, effort) {
            Verdict::Best { found, .. } => return Some(left_over_of(ground, &found)),
            Verdict::Nothing => {}
            Verdict::Spent { .. } => return None,
        }
    }
    None
}

fn left_over_of(ground: &Ground, found: &Found) -> Infeasible {
    let spare = found.offers.iter().skip(ground.points);
    let mut sizes: Vec<usize> =
        spare.flat_map(|&offer| ground.offers[offer as usize].feed.outlets()).collect();
    sizes.sort_unstable();
    Infeasible::Unpaired { sizes, period: answer::period(ground, found.step) }
}
