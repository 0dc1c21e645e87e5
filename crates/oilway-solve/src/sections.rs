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
