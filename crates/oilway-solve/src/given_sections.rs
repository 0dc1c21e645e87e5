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
