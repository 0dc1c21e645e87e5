//! The search against complete enumeration on small questions: cost, then worst error, then period.
//!
//! Standing: own. The enumeration tries every period and every feed of every point; it is short enough to be read.

mod metering_checker;

use std::cmp::Ordering;

use metering_checker::check;
use oilway_solve::metering::{
    Combining, Feed, Given, Infeasible, Limits, NearestPeriods, OneDivider, PeriodRange, RatioGap,
    SectionSize, Tees, Wanted, choose_sections,
};
use proptest::prelude::*;

/// Cost, worst error as a pair of whole numbers with the larger first, period.
type Best = (u64, (u128, u128), u32);

fn in_preference(a: &Best, b: &Best) -> Ordering {
    let error = (a.1.0 * b.1.1).cmp(&(b.1.0 * a.1.1));
    a.0.cmp(&b.0).then(error).then(a.2.cmp(&b.2))
}

/// All feeds of the divider, each with volume and cost in half units.
fn feeds(question: &OneDivider) -> Vec<Feed> {
    let count = question.sizes.len();
    let mut feeds: Vec<Feed> = (0..count).map(Feed::One).collect();
    if question.limits.combining.join_cost.is_some() {
        feeds.extend((0..count).map(Feed::Joined));
    }
    if let Some(tees) = question.limits.combining.tees {
        for a in 0..count {
            for b in a..count {
                feeds.push(Feed::Teed(vec![a, b]));
                if tees.most_outlets == 3 {
                    feeds.extend((b..count).map(|c| Feed::Teed(vec![a, b, c])));
                }
            }
        }
    }
    feeds
}

fn enumerate(question: &OneDivider) -> Option<Best> {
    let feeds = feeds(question);
    let period = question.limits.period;
    let mut best: Option<Best> = None;
    for seconds in (period.shortest..=period.longest).filter(|t| t % period.step == 0) {
        let mut chosen = Vec::new();
        try_all(question, &feeds, seconds, &mut chosen, &mut best);
    }
    best
}

fn try_all<'a>(
    question: &OneDivider,
    feeds: &'a [Feed],
    seconds: u32,
    chosen: &mut Vec<&'a Feed>,
    best: &mut Option<Best>,
) {
    let Some(point) = question.points.get(chosen.len()) else {
        let found = judge(question, chosen, seconds);
        if let Some(found) = found
            && best.as_ref().is_none_or(|best| in_preference(&found, best).is_lt())
        {
            *best = Some(found);
        }
        return;
    };
    for feed in feeds {
        let given = 360_000 * volume(question, feed);
        let wanted = u128::from(point.demand) * u128::from(seconds);
        let kept = match &point.allowed {
            Some(Given::Feed(given)) => given == feed,
            Some(Given::OneOf(given)) => given.contains(feed),
            Some(Given::Sizes(sizes)) => feed.outlets().iter().all(|size| sizes.contains(size)),
            None => true,
        };
        if kept && u128::from(point.lo_pct) * wanted <= given && given <= u128::from(point.hi_pct) * wanted {
            chosen.push(feed);
            try_all(question, feeds, seconds, chosen, best);
            chosen.pop();
        }
    }
}

fn volume(question: &OneDivider, feed: &Feed) -> u128 {
    feed.outlets().iter().map(|&size| u128::from(question.sizes[size].volume_mm3)).sum()
}

fn judge(question: &OneDivider, chosen: &[&Feed], seconds: u32) -> Option<Best> {
    let limits = &question.limits;
    let (mut pistons, mut cost) = (0, 0);
    for (size, section) in question.sizes.iter().enumerate() {
        let outlets = chosen.iter().flat_map(|feed| feed.outlets()).filter(|&s| s == size).count() as u32;
        if outlets % 2 == 1 {
            return None;
        }
        pistons += outlets / 2;
        cost += u64::from(outlets / 2 * section.cost);
    }
    for feed in chosen {
        cost += match feed {
            Feed::One(_) => 0,
            Feed::Joined(_) => u64::from(limits.combining.join_cost.unwrap_or(0)),
            Feed::Teed(outlets) => {
                u64::from(limits.combining.tees.map_or(0, |tees| tees.cost)) * (outlets.len() as u64 - 1)
            }
        };
    }
    let mut worst = (1, 1);
    for (point, feed) in question.points.iter().zip(chosen) {
        let given = 3600 * volume(question, feed);
        let wanted = u128::from(point.demand) * u128::from(seconds);
        let error = (given.max(wanted), given.min(wanted));
        if error.0 * worst.1 > worst.0 * error.1 {
            worst = error;
        }
    }
    let allowed = (limits.pistons.0..=limits.pistons.1).contains(&pistons);
    allowed.then_some((cost, worst, seconds))
}

fn small_question() -> impl Strategy<Value = OneDivider> {
    let size = (prop::sample::select(vec![20u32, 25, 40, 50, 63, 80, 100]), 5u32..9)
        .prop_map(|(volume_mm3, cost)| SectionSize { volume_mm3, cost });
    let combining = prop_oneof![
        (0u32..4).prop_map(Combining::joined_at),
        (2u8..4, 0u32..3).prop_map(|(most, cost)| Combining::teed(most, cost)),
        (0u32..3, 0u32..3).prop_map(|(join, cost)| Combining {
            join_cost: Some(join),
            tees: Some(Tees { most_outlets: 2, cost })
        }),
    ];
    let period = (150u32..1100, 0u32..1200, prop::sample::select(vec![7u32, 10, 30]))
        .prop_map(|(shortest, more, step)| PeriodRange::seconds(shortest, shortest + more + step, step));
    let given = prop_oneof![
        6 => Just(None),
        1 => Just(Some(Given::Sizes(vec![0]))),
        1 => Just(Some(Given::Sizes(vec![0, 1]))),
        1 => Just(Some(Given::OneOf(vec![Feed::One(1), Feed::One(0)]))),
        1 => Just(Some(Given::Feed(Feed::One(0)))),
    ];
    let point = (prop::sample::select(vec![150u32, 170, 200, 300, 420]), 75u32..97, 105u32..150, given)
        .prop_map(|(demand, lo_pct, hi_pct, allowed)| Wanted { demand, lo_pct, hi_pct, allowed });
    let pistons = (1u32..4, 0u32..5).prop_map(|(fewest, more)| (fewest, fewest + more));
    (prop::collection::vec(point, 1..6), prop::collection::vec(size, 2..5), combining, period, pistons)
        .prop_map(|(points, sizes, combining, period, pistons)| {
            let limits = Limits { pistons, combining, period, effort: Limits::USUAL_EFFORT };
            OneDivider { points, sizes, limits }
        })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4000))]

    #[test]
    fn the_search_finds_what_enumeration_finds(question in small_question()) {
        match (question.solve(), enumerate(&question)) {
            (Ok(found), Some((cost, worst, seconds))) => {
                prop_assert_eq!(found.objective, cost);
                let same = found.worst_error.numerator() * worst.1 == found.worst_error.denominator() * worst.0;
                prop_assert!(same, "{:?} found, {:?} expected", found.worst_error, worst);
                prop_assert_eq!(found.period.ticks, u64::from(seconds));
                prop_assert_eq!(check(&question, &found), Ok(()));
            }
            (Err(reason), None) => reason_holds(&question, &reason)?,
            (found, best) => prop_assert!(false, "{:?} found, {:?} expected", found, best),
        }
    }
}

/// Judges the reason by enumeration as well: what it names is enough to rule out an answer.
fn reason_holds(question: &OneDivider, reason: &Infeasible) -> Result<(), TestCaseError> {
    let mut eased = question.clone();
    match reason {
        Infeasible::PistonCount { needed, allowed } => {
            prop_assert_eq!(*allowed, question.limits.pistons);
            let outside = needed.0 > u64::from(allowed.1) || needed.1 < u64::from(allowed.0);
            if !outside {
                eased.limits.pistons = (1, u32::MAX);
                prop_assert!(enumerate(&eased).is_some(), "the count of pistons is not the reason");
            }
        }
        Infeasible::BandAgainstSizes { points: (a, b), ratios } => {
            let RatioGap { accepted, below, above } = **ratios;
            let pair = [*a, *b].map(|i| only(question, i));
            let ratios = pair[0].iter().flat_map(|u| pair[1].iter().map(move |v| *u as f64 / *v as f64));
            let outside = |ratio: f64| ratio < accepted.from.value() || ratio > accepted.to.value();
            prop_assert!(ratios.into_iter().all(outside));
            prop_assert!(below.is_none_or(|below| below < accepted.from));
            prop_assert!(above.is_none_or(|above| above > accepted.to));
            prop_assert!(below.is_some() || above.is_some());
        }
        Infeasible::PeriodRange { points, nearest } => {
            let NearestPeriods { below, between, above } = **nearest;
            prop_assert!(no_common_period(question, points));
            prop_assert!(below.is_some() || between.is_some() || above.is_some());
        }
        Infeasible::NoCommonPeriod { points } => {
            prop_assert!(points.len() > 2 && no_common_period(question, points));
            for left_out in points {
                let others: Vec<usize> = points.iter().copied().filter(|p| p != left_out).collect();
                prop_assert!(!no_common_period(question, &others), "{left_out} is not needed for the reason");
            }
        }
        Infeasible::Unpaired { sizes, .. } => {
            eased.limits.pistons = (1, u32::MAX);
            prop_assert!(enumerate(&eased).is_none() && !sizes.is_empty());
        }
        other => prop_assert!(false, "{other:?}"),
    }
    Ok(())
}

/// Volumes on offer to a point.
fn only(question: &OneDivider, point: usize) -> Vec<u128> {
    let point = &question.points[point];
    let open = |feed: &&Feed| match &point.allowed {
        Some(Given::Feed(given)) => given == *feed,
        Some(Given::OneOf(given)) => given.contains(feed),
        Some(Given::Sizes(sizes)) => feed.outlets().iter().all(|size| sizes.contains(size)),
        None => true,
    };
    feeds(question).iter().filter(open).map(|feed| volume(question, feed)).collect()
}

fn no_common_period(question: &OneDivider, points: &[usize]) -> bool {
    let period = question.limits.period;
    (period.shortest..=period.longest).filter(|t| t % period.step == 0).all(|seconds| {
        points.iter().any(|&i| {
            let point = &question.points[i];
            let wanted = u128::from(point.demand) * u128::from(seconds);
            !only(question, i).iter().any(|u| {
                u128::from(point.lo_pct) * wanted <= 360_000 * u
                    && 360_000 * u <= u128::from(point.hi_pct) * wanted
            })
        })
    })
}

#[test]
fn the_enumeration_itself_finds_a_plain_answer() {
    let question = OneDivider {
        points: vec![Wanted::new(100, 90, 110); 2],
        sizes: vec![SectionSize { volume_mm3: 50, cost: 20 }],
        limits: Limits {
            pistons: (1, 2),
            combining: Combining::joined_at(3),
            period: PeriodRange::seconds(1000, 4000, 100),
            effort: Limits::USUAL_EFFORT,
        },
    };
    // One piston, a shot of 50 mm³ each every 1800 s is exactly 100 mm³/h.
    assert_eq!(enumerate(&question), Some((20, (1, 1), 1800)));
    assert!(choose_sections(&question.points, &question.sizes, &question.limits).is_ok());
}
