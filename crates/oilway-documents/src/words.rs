//! Words that several sheets share: names of places, seasons, parts and positions.

use oilway_catalogue::Part;
use oilway_model::{Design, Device, Season, Verdict};
use oilway_text::{Arg, Message, message};

use crate::parts_list::Items;

/// `on the coldest day` and so on.
pub(crate) fn season(season: Season) -> Message {
    match season {
        Season::Cold => message!("documents-season-cold"),
        Season::Normal => message!("documents-season-normal"),
        Season::Hot => message!("documents-season-hot"),
    }
}

/// The verdict as a sentence that can be read aloud.
pub(crate) fn verdict(verdict: Verdict) -> Message {
    match verdict {
        Verdict::Works => message!("documents-verdict-works"),
        Verdict::WorksWithCare => message!("documents-verdict-care"),
        Verdict::WillNotWork => message!("documents-verdict-not"),
        Verdict::CannotTellYet => message!("documents-verdict-unknown"),
    }
}

/// The name of a place.
pub(crate) fn place(design: &Design, place: usize) -> Arg {
    design.conditions.places.get(place).map_or_else(none, |place| place.name.as_str().into())
}

/// Nothing is known, or nothing is there.
pub(crate) fn none() -> Arg {
    message!("documents-none").into()
}

/// A quantity, or the sign for none.
pub(crate) fn or_none(quantity: Option<impl Into<Arg>>) -> Arg {
    quantity.map_or_else(none, Into::into)
}

/// What a part is, as the catalogue describes it, without its full stop.
pub(crate) fn description(part: &Part) -> &str {
    part.description.trim_end_matches('.')
}

/// A part with its number in the parts list.
pub(crate) fn item(part: &Part, items: &Items) -> Message {
    match items.item(part) {
        Some(item) => message!("documents-item", what = description(part), item = item),
        None => message!("documents-item-unlisted", what = description(part), id = part.id.as_str()),
    }
}

/// Where a joint is, in words.
pub(crate) fn position(at: &str) -> Message {
    if let Some(name) = at.strip_prefix("point.") {
        return message!("documents-at-point", name = name);
    }
    if let Some(name) = at.strip_prefix("divider.") {
        return message!("documents-at-divider-inlet", name = name);
    }
    let line = at.strip_prefix("line.").and_then(|line| line.rsplit_once('.'));
    match line {
        Some((name, "1")) => message!("documents-at-line-start", name = name),
        Some((name, stretch)) => message!("documents-at-line-stretch", name = name, stretch = stretch),
        None => message!("documents-at-place", name = at),
    }
}

/// A port of the package, in words.
pub(crate) fn port_position(device: &Device) -> Message {
    message!("documents-at-port", port = device.mark.as_str(), part = device.of.kind.id())
}
