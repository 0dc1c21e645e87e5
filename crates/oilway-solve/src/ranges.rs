//! Which bodies a divider may have, and the sections that fit each: read from the catalogue once for a whole design.

use std::sync::Arc;

use oilway_catalogue::kinds::{Divider as Body, Section as SectionPart};
use oilway_catalogue::{Catalogue, Part};
use oilway_model::{DividerWish, Feed};

use crate::layout::price;

/// A body and the sections that fit it.
#[derive(Debug)]
pub(crate) struct Range {
    /// Inlet and end section.
    pub body: Arc<Part>,
    /// What it takes.
    pub limits: Body,
    /// Its sections, smallest first.
    pub sizes: Vec<(Arc<Part>, SectionPart)>,
}

impl Range {
    fn new(body: &Arc<Part>, catalogue: &Catalogue) -> Option<Self> {
        let limits = Body::of(body)?;
        let mut sizes: Vec<_> = catalogue
            .of_kind("section")
            .filter_map(|s| SectionPart::of(s).map(|view| (Arc::clone(s), view)))
            .filter(|(_, view)| view.fits.contains(&body.id))
            .collect();
        sizes.sort_by(|a, b| a.1.volume.total_cmp(&b.1.volume).then_with(|| a.0.id.cmp(&b.0.id)));
        Some(Range { body: Arc::clone(body), limits, sizes })
    }

    /// Fewest and most pistons.
    pub(crate) fn pistons(&self) -> (u32, u32) {
        (self.limits.sections_min.number() as u32, self.limits.sections_max.number() as u32)
    }

    /// Whether another body takes just the same sections, so that whatever it builds this one builds too.
    pub(crate) fn builds_like(&self, other: &Range) -> bool {
        let ids =
            |range: &Range| -> Vec<String> { range.sizes.iter().map(|(part, _)| part.id.clone()).collect() };
        self.pistons() == other.pistons() && ids(self) == ids(other)
    }

    /// Less than this no divider of the range costs that serves so many, in hundredths: two outlets a section, each of the cheapest.
    pub(crate) fn least_cost(&self, consumers: usize) -> i64 {
        let pistons = i64::from(self.pistons().0).max(i64::try_from(consumers.div_ceil(2)).unwrap_or(0));
        let cheapest = self.sizes.iter().map(|(part, _)| price(part)).min().unwrap_or(0);
        price(&self.body) + pistons * cheapest
    }
}

/// All bodies of a catalogue, the cheapest first.
pub(crate) fn ranges(catalogue: &Catalogue) -> Vec<Range> {
    let mut ranges: Vec<Range> =
        catalogue.of_kind("divider").filter_map(|body| Range::new(body, catalogue)).collect();
    ranges.sort_by_key(|range| (price(&range.body), range.body.id.clone()));
    ranges
}

/// The bodies that a divider may have: the given one alone; for the first divider those with a cycle switch wherever there is one, for
/// somebody must see that it cycles.
pub(crate) fn allowed<'r>(ranges: &'r [Range], wish: &DividerWish) -> Vec<&'r Range> {
    let given = |range: &&Range| wish.part.chosen().is_none_or(|id| *id == range.body.id);
    let mut allowed: Vec<&Range> = ranges.iter().filter(given).collect();
    let first = wish.fed_by == Feed::Pump && wish.part.is_open();
    if first && allowed.iter().any(|range| range.limits.cycle_switch) {
        allowed.retain(|range| range.limits.cycle_switch);
    }
    allowed
}

#[cfg(test)]
mod tests {
    use oilway_model::Choice;

    use super::*;
    use crate::testing::{catalogue, hall};

    #[test]
    fn the_first_divider_carries_a_switch_and_a_given_one_is_kept() {
        let all = ranges(catalogue());
        let mut wish = hall().dividers[0].clone();
        assert_eq!(wish.fed_by, Feed::Pump);
        assert!(allowed(&all, &wish).iter().all(|range| range.limits.cycle_switch));
        wish.fed_by = Feed::Divider(0);
        assert_eq!(allowed(&all, &wish).len(), all.len());
        let without = all.iter().find(|range| !range.limits.cycle_switch).unwrap();
        wish = DividerWish { fed_by: Feed::Pump, part: Choice::Given(without.body.id.clone()), ..wish };
        let kept: Vec<&str> = allowed(&all, &wish).iter().map(|range| range.body.id.as_str()).collect();
        assert_eq!(kept, [without.body.id.as_str()]);
    }

    #[test]
    fn bodies_of_one_family_build_alike_and_those_of_two_do_not() {
        let all = ranges(catalogue());
        let of = |id: &str| all.iter().find(|range| range.body.id == id).unwrap();
        assert!(of("10001").builds_like(of("10002")));
        assert!(!of("10001").builds_like(of("10003")));
    }

    #[test]
    fn the_least_cost_counts_a_body_and_half_a_section_for_each() {
        let all = ranges(catalogue());
        let small = all.iter().find(|range| range.body.id == "10001").unwrap();
        // 38.00 for the body and 24.00 for each of its cheapest sections; three at the least.
        assert_eq!(small.least_cost(1), 3800 + 3 * 2400);
        assert_eq!(small.least_cost(7), 3800 + 4 * 2400);
    }
}
