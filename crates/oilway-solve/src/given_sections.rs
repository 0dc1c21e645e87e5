//! Sections that the job gives: kept as they are, in their order. Whether they serve is the checker's to say; here only what
//! cannot be built at all stands in the way.

use std::sync::Arc;

use oilway_model::{Job, OutletUse, Section, SectionWish, Side};
use oilway_text::{Message, message};

use crate::Obstacle;
use crate::metering::Feed;
use crate::ranges::Range;
use crate::tree::{Ask, FedConsumer, Metered, Served, name_of, with_spans};

/// Keeps the sections that the job gives.
///
/// # Errors
/// The sections fit no divider on hand, one of them serves nobody of this divider, or somebody is forgotten.
pub(crate) fn keep_given(
    job: &Job,
    ranges: &[&Range],
    divider: usize,
    sections: &[SectionWish],
    asks: &[Ask],
) -> Result<Metered, Obstacle> {
    let at = format!("divider.{}.sections", job.dividers[divider].name);
    let fails = |what: Message, cure: Message| Obstacle { at: at.clone(), what, cure };
    let range = ranges
        .iter()
        .find(|range| sections.iter().all(|s| range.sizes.iter().any(|(part, _)| part.id == s.part)))
        .ok_or_else(|| {
            fails(message!("solve-sections-do-not-fit"), message!("solve-cure-sections-do-not-fit"))
        })?;
    let names: Vec<String> = asks.iter().map(|ask| name_of(job, ask.served)).collect();
    if let Some(stranger) = sections.iter().flat_map(|s| &s.serves).find(|name| !names.contains(name)) {
        let what = message!("solve-section-stranger", name = stranger.as_str());
        return Err(fails(what, message!("solve-cure-section-stranger", name = stranger.as_str())));
    }
    let mut fed = Vec::with_capacity(asks.len());
    for (ask, name) in asks.iter().zip(&names) {
        let outlets = outlets_of(range, sections, name);
        if outlets.is_empty() {
            return Err(fails(
                message!("solve-section-forgets", name = name.as_str()),
                message!("solve-cure-section-forgets", name = name.as_str()),
            ));
        }
        let volume = outlets.iter().map(|&size| range.sizes[size].1.volume).sum();
        let feed = match outlets.as_slice() {
            [one] => Feed::One(*one),
            [a, b] if a == b && joined(sections, name) => Feed::Joined(*a),
            _ => Feed::Teed(outlets),
        };
        fed.push(FedConsumer { served: ask.served, feed, volume });
    }
    let cycle =
        sections.iter().filter_map(|s| size_of(range, s)).map(|size| range.sizes[size].1.volume * 2.0).sum();
    Ok(Metered { given: Some(sections.to_vec()), ..with_spans(range, asks, fed, cycle, 1.0, false) })
}

fn size_of(range: &Range, section: &SectionWish) -> Option<usize> {
    range.sizes.iter().position(|(part, _)| part.id == section.part)
}

/// The outlets that given sections lead to one consumer, by size.
fn outlets_of(range: &Range, sections: &[SectionWish], name: &str) -> Vec<usize> {
    let mut outlets = Vec::new();
    for section in sections {
        let Some(size) = size_of(range, section) else { continue };
        let times = section.serves.iter().filter(|s| *s == name).count();
        // One name alone stands for both outlets.
        let times = if section.serves.len() == 1 { times * 2 } else { times };
        outlets.extend(core::iter::repeat_n(size, times));
    }
    outlets.sort_unstable();
    outlets
}

fn joined(sections: &[SectionWish], name: &str) -> bool {
    sections.iter().any(|s| s.serves.len() == 1 && s.serves[0] == name)
}

/// The sections as the design holds them: the first outlet of a consumer feeds its line, every further one is led to the first.
pub(crate) fn given_sections(
    job: &Job,
    metered: &Metered,
    given: &[SectionWish],
    node_of: &dyn Fn(Served) -> usize,
) -> Vec<Section> {
    let node =
        |name: &str| metered.fed.iter().find(|f| name_of(job, f.served) == name).map(|f| node_of(f.served));
    let mut first: Vec<(usize, (usize, Side))> = Vec::new();
    let mut sections = Vec::with_capacity(given.len());
    for wish in given {
        let Some(part) = metered.sizes.iter().find(|p| p.id == wish.part) else { continue };
        let here = sections.len();
        let mut outlet = |name: Option<&String>, side: Side| {
            let Some(node) = name.and_then(|name| node(name)) else { return OutletUse::Open };
            if let Some((_, (section, its_side))) = first.iter().find(|(known, _)| *known == node) {
                return OutletUse::Bridged(*section, *its_side);
            }
            first.push((node, (here, side)));
            OutletUse::To(node)
        };
        let left = outlet(wish.serves.first(), Side::Left);
        let right = if wish.serves.len() == 1 {
            OutletUse::WithOpposite
        } else {
            outlet(wish.serves.get(1), Side::Right)
        };
        sections.push(Section { part: Arc::clone(part), left, right });
    }
    sections
}

#[cfg(test)]
mod tests {
    use oilway_model::Choice;

    use crate::testing::{catalogue, hall};
    use crate::{Obstacle, design, doses};

    use super::*;

    fn section(part: &str, serves: &[&str]) -> SectionWish {
        SectionWish { part: part.to_owned(), serves: serves.iter().map(|s| (*s).to_owned()).collect() }
    }

    fn hall_with(sections: Vec<SectionWish>) -> Result<oilway_model::Design, Vec<Obstacle>> {
        let mut job = hall();
        job.dividers[0].sections = Choice::Given(sections);
        design(&job, catalogue())
    }

    #[test]
    fn given_sections_stand_in_their_order_with_their_outlets() {
        let given = vec![
            section("10058", &["pin 6", "pin 1"]),
            section("10060", &["pin 2"]),
            section("10057", &["pin 3", "pin 4"]),
            section("10057", &["pin 5", "pin 6"]),
        ];
        let design = hall_with(given.clone()).unwrap();
        let divider = &design.dividers[0];
        let ids: Vec<&str> = divider.sections.iter().map(|s| s.part.id.as_str()).collect();
        assert_eq!(ids, ["10058", "10060", "10057", "10057"]);
        assert_eq!(divider.sections[1].right, OutletUse::WithOpposite);
        // Pin 6 has its line at the first section; the second outlet is led there.
        assert_eq!(divider.sections[3].right, OutletUse::Bridged(0, Side::Left));
        let volume = |name: &str| {
            let node = design.network.nodes.iter().position(|n| n.name == name).unwrap();
            doses(divider).fed.iter().find(|(n, _)| *n == node).unwrap().1.cubic_millimetres()
        };
        let near = |found: f64, expected: f64| (found - expected).abs() < 1e-9;
        assert!(near(volume("pin 1"), 100.0) && near(volume("pin 2"), 500.0));
        assert!(near(volume("pin 3"), 63.0) && near(volume("pin 6"), 163.0));
        assert!(near(doses(divider).cycle.cubic_millimetres(), 2.0 * (100.0 + 250.0 + 63.0 + 63.0)));
        let reason = design.reasons.iter().find(|r| r.at == "divider.post.sections").unwrap();
        assert!(reason.kept);
        assert!(reason.chosen.starts_with("10058: pin 6, pin 1 | 10060: pin 2 | "), "{}", reason.chosen);
    }

    fn refused(sections: Vec<SectionWish>) -> &'static str {
        let obstacles = hall_with(sections).unwrap_err();
        assert_eq!(obstacles.len(), 1);
        assert_eq!(obstacles[0].at, "divider.post.sections");
        obstacles[0].what.key
    }

    fn three(first: &[&str]) -> Vec<SectionWish> {
        vec![
            section("10057", first),
            section("10057", &["pin 3", "pin 4"]),
            section("10057", &["pin 5", "pin 6"]),
        ]
    }

    #[test]
    fn a_forgotten_point_a_stranger_and_a_foreign_section_are_refused() {
        assert!(hall_with(three(&["pin 1", "pin 2"])).is_ok());
        assert_eq!(refused(three(&["pin 1"])), "solve-section-forgets");
        assert_eq!(refused(three(&["pin 1", "pin 2", "pin 9"])), "solve-section-stranger");
        let mut mixed = three(&["pin 1", "pin 2"]);
        // A large section beside small ones: no body takes both.
        mixed[0].part = "10065".to_owned();
        assert_eq!(refused(mixed), "solve-sections-do-not-fit");
    }

    #[test]
    fn too_few_given_sections_are_kept_for_the_checker_to_judge() {
        let design = hall_with(vec![
            section("10057", &["pin 1", "pin 2"]),
            section("10057", &["pin 3", "pin 4"]),
            section("10057", &["pin 5", "pin 6"]),
            section("10057", &[]),
        ])
        .unwrap();
        let last = design.dividers[0].sections.last().unwrap();
        assert_eq!((&last.left, &last.right), (&OutletUse::Open, &OutletUse::Open));
        // What spills still passes through the divider.
        assert!((doses(&design.dividers[0]).cycle.cubic_millimetres() - 8.0 * 63.0).abs() < 1e-9);
    }
}
