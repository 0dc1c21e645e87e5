//! The offers: every way in which a point may be fed, with volume, cost, outlets and parity.

use super::problem::{Combining, Feed, Given, SectionSize, Wanted};

/// One way of feeding a point.
#[derive(Clone, Debug)]
pub(super) struct Offer {
    pub(super) feed: Feed,
    /// Volume per full cycle, mm³.
    pub(super) volume: u64,
    /// Twice the cost, so that half a piston counts in whole numbers.
    pub(super) twice_cost: u64,
    /// Outlets taken beyond the first.
    pub(super) extra: u32,
    /// Sizes from which an odd number of outlets is taken, one bit each.
    pub(super) parity: u64,
}

/// Number of offers these sizes and ways of combining give, counted without making them.
pub(super) fn count(sizes: usize, combining: &Combining) -> u128 {
    let sizes = sizes as u128;
    let joined = if combining.join_cost.is_some() { sizes } else { 0 };
    let mut singles_and_tees = sizes;
    let mut multisets = sizes;
    for outlets in 2..=combining.tees.map_or(1, |tees| u128::from(tees.most_outlets)) {
        multisets = multisets.saturating_mul(sizes + outlets - 1) / outlets;
        singles_and_tees = singles_and_tees.saturating_add(multisets);
    }
    joined.saturating_add(singles_and_tees)
}

/// All offers in order of volume, then cost, then outlets, then feed.
pub(super) fn all(sizes: &[SectionSize], combining: &Combining) -> Vec<Offer> {
    let mut offers: Vec<Offer> =
        (0..sizes.len()).map(|size| offer(Feed::One(size), sizes, combining)).collect();
    if combining.join_cost.is_some() {
        offers.extend((0..sizes.len()).map(|size| offer(Feed::Joined(size), sizes, combining)));
    }
    let most = combining.tees.map_or(1, |tees| usize::from(tees.most_outlets));
    let mut multisets: Vec<Vec<usize>> = (0..sizes.len()).map(|size| vec![size]).collect();
    for _ in 2..=most {
        multisets = multisets.iter().flat_map(|outlets| grown(outlets, sizes.len())).collect();
        offers.extend(multisets.iter().map(|outlets| offer(Feed::Teed(outlets.clone()), sizes, combining)));
    }
    offers.sort_by(|a, b| {
        (a.volume, a.twice_cost, a.extra, &a.feed).cmp(&(b.volume, b.twice_cost, b.extra, &b.feed))
    });
    offers
}

/// The outlets with one more, not smaller in the list than the last, so that each set arises once.
fn grown(outlets: &[usize], sizes: usize) -> Vec<Vec<usize>> {
    let last = outlets.last().copied().unwrap_or(0);
    (last..sizes).map(|size| outlets.iter().copied().chain([size]).collect()).collect()
}

fn offer(feed: Feed, sizes: &[SectionSize], combining: &Combining) -> Offer {
    let outlets = feed.outlets();
    let extra = outlets.len().saturating_sub(1) as u32;
    let joint = match &feed {
        Feed::One(_) => 0,
        Feed::Joined(_) => u64::from(combining.join_cost.unwrap_or(0)),
        Feed::Teed(_) => combining.tees.map_or(0, |tees| u64::from(tees.cost)) * u64::from(extra),
    };
    Offer {
        volume: outlets.iter().map(|&size| u64::from(sizes[size].volume_mm3)).sum(),
        twice_cost: outlets.iter().map(|&size| u64::from(sizes[size].cost)).sum::<u64>() + 2 * joint,
        parity: outlets.iter().fold(0, |parity, &size| parity ^ (1 << size)),
        extra,
        feed,
    }
}

/// The offers open to a point, by their place in the list.
pub(super) fn open_to(point: &Wanted, offers: &[Offer]) -> Vec<u32> {
    let open = |offer: &Offer| match &point.allowed {
        None => true,
        Some(Given::Feed(feed)) => in_order(feed) == offer.feed,
        Some(Given::OneOf(feeds)) => feeds.iter().any(|feed| in_order(feed) == offer.feed),
        Some(Given::Sizes(sizes)) => offer.feed.outlets().iter().all(|size| sizes.contains(size)),
    };
    (0u32..).zip(offers).filter(|(_, offer)| open(offer)).map(|(place, _)| place).collect()
}

/// The feed as the list of offers writes it: outlets in rising order, a lone outlet without a tee.
fn in_order(feed: &Feed) -> Feed {
    match feed {
        Feed::Teed(outlets) if outlets.len() == 1 => Feed::One(outlets[0]),
        Feed::Teed(outlets) => {
            let mut outlets = outlets.clone();
            outlets.sort_unstable();
            Feed::Teed(outlets)
        }
        other => other.clone(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sizes(count: u32) -> Vec<SectionSize> {
        (1..=count).map(|i| SectionSize { volume_mm3: 10 * i, cost: 20 + i }).collect()
    }

    #[test]
    fn the_count_agrees_with_the_list() {
        for most in 1..5 {
            let mut combining = Combining::teed(most, 4);
            assert_eq!(count(6, &combining), all(&sizes(6), &combining).len() as u128);
            combining.join_cost = Some(3);
            assert_eq!(count(6, &combining), all(&sizes(6), &combining).len() as u128);
        }
    }

    #[test]
    fn two_outlets_of_one_size_leave_no_odd_outlet() {
        let combining =
            Combining { join_cost: Some(3), tees: Some(super::super::Tees { most_outlets: 3, cost: 4 }) };
        for offer in all(&sizes(3), &combining) {
            let odd: u32 = (0..3)
                .filter(|s| offer.feed.outlets().iter().filter(|&o| o == s).count() % 2 == 1)
                .count() as u32;
            assert_eq!(offer.parity.count_ones(), odd, "{:?}", offer.feed);
        }
    }

    #[test]
    fn a_kept_feed_is_found_whatever_the_order_of_its_outlets() {
        let offers = all(&sizes(3), &Combining::teed(3, 4));
        let kept = |outlets: Vec<usize>| Wanted::new(10, 90, 120).kept(Given::Feed(Feed::Teed(outlets)));
        assert_eq!(open_to(&kept(vec![2, 0]), &offers), open_to(&kept(vec![0, 2]), &offers));
        assert_eq!(open_to(&kept(vec![2, 0]), &offers).len(), 1);
        assert_eq!(open_to(&kept(vec![2, 0, 0, 0]), &offers).len(), 0);
    }
}
