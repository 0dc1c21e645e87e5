//! Faults of the question itself, all found in one reading. Each names its place; the bound is in its description.

use super::offers;
use super::problem::{Given, Limits, SectionSize, Wanted};

/// A fault of the question. Points and sizes are named by their place in the list given, from zero.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fault {
    /// There are no points, or more than [`Fault::MOST_POINTS`].
    PointCount {
        /// How many were given.
        count: usize,
    },
    /// There are no sizes, or more than [`Fault::MOST_SIZES`].
    SizeCount {
        /// How many were given.
        count: usize,
    },
    /// A demand of zero: give the point a demand or leave it out.
    NoDemand {
        /// Which point.
        point: usize,
    },
    /// A band that is upside down, or whose upper bound is zero.
    Band {
        /// Which point.
        point: usize,
        /// Its lower bound in percent.
        lo_pct: u32,
        /// Its upper bound in percent.
        hi_pct: u32,
    },
    /// A size without volume.
    NoVolume {
        /// Which size.
        size: usize,
    },
    /// A point keeps a size that is not in the list.
    UnknownSize {
        /// Which point.
        point: usize,
        /// The place it names.
        size: usize,
    },
    /// A point keeps a feed that this divider does not offer, or none at all.
    NotOffered {
        /// Which point.
        point: usize,
    },
    /// The fewest pistons are above the most, or the most are zero.
    Pistons {
        /// Fewest.
        fewest: u32,
        /// Most.
        most: u32,
    },
    /// The range of periods holds no multiple of its step, or has a step or tick of zero.
    Period {
        /// Shortest, in ticks.
        shortest: u32,
        /// Longest, in ticks.
        longest: u32,
        /// Step, in ticks.
        step: u32,
    },
    /// Combining so many outlets gives more feeds than [`Fault::MOST_FEEDS`]: combine fewer, or give fewer sizes.
    TooManyFeeds {
        /// How many there would be.
        count: u128,
    },
}

impl Fault {
    /// Most points of one divider that are taken on.
    pub const MOST_POINTS: usize = 1000;
    /// Most sizes that are taken on: the state of the search keeps one bit for each.
    pub const MOST_SIZES: usize = 48;
    /// Most feeds that are taken on.
    pub const MOST_FEEDS: u128 = 20_000;
}

/// Every fault of the question, in order of points, sizes and limits.
pub(super) fn faults(points: &[Wanted], sizes: &[SectionSize], limits: &Limits) -> Vec<Fault> {
    let mut faults = Vec::new();
    if points.is_empty() || points.len() > Fault::MOST_POINTS {
        faults.push(Fault::PointCount { count: points.len() });
    }
    if sizes.is_empty() || sizes.len() > Fault::MOST_SIZES {
        faults.push(Fault::SizeCount { count: sizes.len() });
    }
    for (point, wanted) in points.iter().enumerate() {
        point_faults(point, wanted, sizes.len(), &mut faults);
    }
    let flat = |(size, section): (usize, &SectionSize)| (section.volume_mm3 == 0).then_some(size);
    faults.extend(sizes.iter().enumerate().filter_map(flat).map(|size| Fault::NoVolume { size }));
    limit_faults(limits, &mut faults);
    feed_faults(points, sizes, limits, &mut faults);
    faults
}

fn point_faults(point: usize, wanted: &Wanted, sizes: usize, faults: &mut Vec<Fault>) {
    if wanted.demand == 0 {
        faults.push(Fault::NoDemand { point });
    }
    if wanted.hi_pct == 0 || wanted.lo_pct > wanted.hi_pct {
        faults.push(Fault::Band { point, lo_pct: wanted.lo_pct, hi_pct: wanted.hi_pct });
    }
    let named = match &wanted.allowed {
        None => Vec::new(),
        Some(Given::Feed(feed)) => feed.outlets(),
        Some(Given::OneOf(feeds)) => feeds.iter().flat_map(|feed| feed.outlets()).collect(),
        Some(Given::Sizes(sizes)) => sizes.clone(),
    };
    let unknown = named.into_iter().find(|&size| size >= sizes);
    faults.extend(unknown.map(|size| Fault::UnknownSize { point, size }));
}

fn limit_faults(limits: &Limits, faults: &mut Vec<Fault>) {
    let (fewest, most) = limits.pistons;
    if fewest > most || most == 0 {
        faults.push(Fault::Pistons { fewest, most });
    }
    let period = &limits.period;
    let (first, last) = period.steps();
    if first > last || period.step == 0 || period.ticks_per_second == 0 {
        let (shortest, longest, step) = (period.shortest, period.longest, period.step);
        faults.push(Fault::Period { shortest, longest, step });
    }
}

/// Feeds are looked at only when the rest is sound, for they are made from it.
fn feed_faults(points: &[Wanted], sizes: &[SectionSize], limits: &Limits, faults: &mut Vec<Fault>) {
    let count = offers::count(sizes.len(), &limits.combining);
    if count > Fault::MOST_FEEDS {
        faults.push(Fault::TooManyFeeds { count });
    }
    if !faults.is_empty() {
        return;
    }
    let all = offers::all(sizes, &limits.combining);
    let kept = points.iter().enumerate().filter(|(_, wanted)| wanted.allowed.is_some());
    let empty = kept.filter(|(_, wanted)| offers::open_to(wanted, &all).is_empty());
    faults.extend(empty.map(|(point, _)| Fault::NotOffered { point }));
}
