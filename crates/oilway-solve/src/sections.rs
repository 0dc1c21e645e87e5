//! The dividers of a design: their sections in the order in which they are built.

use std::sync::Arc;

use oilway_model::{Divider, Job, OutletUse, Section, Side};

use crate::given_sections::given_sections;
use crate::layout::Layout;
use crate::metering::Feed;
use crate::tree::{FedConsumer, Metered, Served, TreeMetering};

/// The dividers of a design, with their sections in building order or as given.
pub(crate) fn dividers(job: &Job, layout: &Layout, metering: &TreeMetering) -> Vec<Divider> {
    metering
        .dividers
        .iter()
        .enumerate()
        .map(|(number, metered)| {
            let node_of = |served: Served| match served {
                Served::Point(p) => layout.point_nodes[p],
                Served::Divider(d) => layout.divider_nodes[d],
            };
            Divider {
                name: job.dividers[number].name.clone(),
                node: layout.divider_nodes[number],
                place: job.dividers[number].place,
                body: Arc::clone(&metered.body),
                sections: match &metered.given {
                    Some(given) => given_sections(job, metered, given, &node_of),
                    None => sections(metered, &node_of),
                },
                cycle_switch: metered.body.flag("cycle_switch"),
            }
        })
        .collect()
}

/// Sections in building order: joined ones first, then pairs of single outlets, each by falling size.
fn sections(metered: &Metered, node_of: &dyn Fn(Served) -> usize) -> Vec<Section> {
    let mut sections: Vec<Section> = Vec::new();
    // The outlet to which further outlets of the same consumer are led.
    let mut first_outlet: Vec<Option<(usize, Side)>> = vec![None; metered.fed.len()];
    for size in (0..metered.sizes.len()).rev() {
        let joined = metered.fed.iter().filter(|f| f.feed == Feed::Joined(size));
        for consumer in joined {
            sections.push(Section {
                part: Arc::clone(&metered.sizes[size]),
                left: OutletUse::To(node_of(consumer.served)),
                right: OutletUse::WithOpposite,
            });
        }
        let singles: Vec<usize> =
            metered.fed.iter().enumerate().flat_map(|(number, f)| singles_of(number, f, size)).collect();
        for pair in singles.chunks(2) {
            let here = sections.len();
            let mut outlet = |consumer: usize, side: Side| match first_outlet[consumer] {
                Some((section, its_side)) => OutletUse::Bridged(section, its_side),
                None => {
                    first_outlet[consumer] = Some((here, side));
                    OutletUse::To(node_of(metered.fed[consumer].served))
                }
            };
            let left = outlet(pair[0], Side::Left);
            let right = pair.get(1).map_or(OutletUse::Open, |&c| outlet(c, Side::Right));
            sections.push(Section { part: Arc::clone(&metered.sizes[size]), left, right });
        }
    }
    sections
}

/// The single outlets of a size that a consumer takes, once for each.
fn singles_of(number: usize, fed: &FedConsumer, size: usize) -> Vec<usize> {
    match &fed.feed {
        Feed::One(s) if *s == size => vec![number],
        Feed::Teed(sizes) => sizes.iter().filter(|s| **s == size).map(|_| number).collect(),
        Feed::One(_) | Feed::Joined(_) => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use oilway_catalogue::kinds::Divider as Body;

    use crate::design;
    use crate::shares::section_volume;
    use crate::testing::{catalogue, dairy, hall, point};

    use super::*;

    #[test]
    fn every_consumer_has_its_line_at_one_outlet_and_no_outlet_is_left() {
        let design = design(&dairy(), catalogue()).unwrap();
        let mut led = vec![0; design.network.nodes.len()];
        for outlet in design.dividers.iter().flat_map(|d| &d.sections).flat_map(|s| [&s.left, &s.right]) {
            match outlet {
                OutletUse::To(node) => led[*node] += 1,
                OutletUse::Open | OutletUse::Plugged => panic!("an outlet spills"),
                OutletUse::WithOpposite | OutletUse::Bridged(..) => {}
            }
        }
        // The pump feeds the first divider itself.
        assert_eq!(led[0] + led[1], 0);
        assert!(led[2..].iter().all(|n| *n == 1));
    }

    #[test]
    fn every_divider_has_as_many_sections_as_it_can_cycle_with() {
        let design = design(&dairy(), catalogue()).unwrap();
        for divider in &design.dividers {
            let body = Body::of(&divider.body).unwrap();
            let count = divider.sections.len() as f64;
            assert!(
                count >= body.sections_min.number() && count <= body.sections_max.number(),
                "{}",
                divider.name
            );
        }
    }

    #[test]
    fn large_sections_stand_before_small_ones_and_joined_before_single() {
        let mut job = hall();
        let route = job.points[0].route.clone();
        job.points = [0.4, 0.06, 0.06, 0.1, 0.1]
            .iter()
            .enumerate()
            .map(|(n, &rate)| point(&format!("pin {n}"), 0, 1, rate, route.clone()))
            .collect();
        let design = design(&job, catalogue()).unwrap();
        let sections = &design.dividers[0].sections;
        assert!(sections.is_sorted_by(|a, b| section_volume(a) >= section_volume(b)));
        for pair in sections.windows(2).filter(|w| section_volume(&w[0]) == section_volume(&w[1])) {
            assert!(pair[0].right == OutletUse::WithOpposite || pair[1].right != OutletUse::WithOpposite);
        }
    }

    #[test]
    fn the_doses_are_those_that_the_search_promised() {
        // Second route: shares from the finished sections against the bands of the needs.
        let design = design(&dairy(), catalogue()).unwrap();
        let answer = crate::evaluate(&design, &mut oilway_physics::Ledger::off());
        for (point, delivery) in design.points.iter().zip(&answer.deliveries) {
            let share = delivery.delivered / delivery.required;
            assert!(share >= delivery.band_low.fraction() - 1e-9, "{}: {share}", point.name);
            if let Some(high) = delivery.band_high {
                assert!(share <= high.fraction() * 1.011, "{}: {share}", point.name);
            }
        }
    }
}
