//! Words that several sheets share: names of places, seasons, parts and positions.

use oilway_catalogue::Part;
use oilway_model::{Design, Device, Joint, JointEnd, Season, Verdict};
use oilway_text::{Arg, Message, message};

use crate::names;
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

/// Where a joint is, in words: at which end of which line, or what meets there.
pub(crate) fn position(joint: &Joint) -> Message {
    let at = joint.at.as_str();
    if let Some(name) = at.strip_prefix("point.") {
        return message!("documents-at-point", name = name);
    }
    if let Some(name) = at.strip_prefix("divider.") {
        return message!("documents-at-divider-inlet", name = name);
    }
    let line = at.strip_prefix("line.").and_then(|line| line.rsplit_once('.'));
    let [from, to] = [&joint.from, &joint.to].map(conduit);
    match line {
        Some((name, "1")) => message!("documents-at-line-start", name = name),
        Some((name, "2")) => message!("documents-at-line-meets", from = from, to = to, name = name),
        Some((name, stretch)) => {
            message!("documents-at-line-stretch", from = from, to = to, stretch = stretch, name = name)
        }
        None => message!("documents-at-place", name = at),
    }
}

/// Which sort of line ends at one side of a joint.
fn conduit(end: &JointEnd) -> Message {
    let thread = end.thread.as_deref().unwrap_or_default();
    if thread.starts_with("tube") {
        message!("documents-conduit-tube")
    } else if thread.starts_with("hose") {
        message!("documents-conduit-hose")
    } else {
        message!("documents-conduit-other")
    }
}

/// What kind of thing a lasting name speaks of: `point`, `divider`, `package`.
pub(crate) fn kind_of(at: &str) -> &str {
    at.split_once('.').map_or(at, |(kind, _)| kind)
}

/// The name behind the kind: `washer chain 1` of `point.washer chain 1`.
pub(crate) fn name_of(at: &str) -> &str {
    at.split_once('.').map_or(at, |(_, name)| name)
}

/// Kinds of which many stand in a job, so that their names can be said in one row.
const MANY: [&str; 4] = ["point", "divider", "line", "place"];

/// A stretch of a line: the line and the number of the stretch.
fn stretch(name: &str) -> Option<(&str, &str)> {
    name.rsplit_once('.').filter(|(_, number)| number.parse::<u32>().is_ok())
}

/// Whether two things can be named in one row.
pub(crate) fn like_things(a: &str, b: &str) -> bool {
    let kind = kind_of(a);
    let number = |at| stretch(name_of(at)).map(|(_, number)| number);
    kind == kind_of(b) && MANY.contains(&kind) && (kind != "line" || number(a) == number(b))
}

/// The things that findings speak of, in words, at most so many by name. All of one kind.
pub(crate) fn things(design: &Design, at: &[&str], most: usize) -> Message {
    let Some(first) = at.first() else { return message!("documents-none") };
    let names: Vec<&str> = at.iter().map(|at| name_of(at)).collect();
    match kind_of(first) {
        "point" | "place" => names::some(&names, most),
        "divider" => message!("documents-at-divider", name = names::some(&names, most)),
        "line" => lines(&names, most),
        "port" => port(design, first),
        _ => thing(first),
    }
}

fn lines(names: &[&str], most: usize) -> Message {
    let number = names.first().and_then(|name| stretch(name)).map(|(_, number)| number);
    let lines: Vec<&str> = names.iter().map(|name| stretch(name).map_or(*name, |(line, _)| line)).collect();
    let lines = names::some(&lines, most);
    match number {
        Some(number) => message!("documents-at-stretch", stretch = number, name = lines),
        None => message!("documents-at-line", name = lines),
    }
}

/// A port by the article of its part and its mark: `port.10052.gauge`.
fn port(design: &Design, at: &str) -> Message {
    let found = name_of(at).split_once('.').and_then(|(id, mark)| {
        let of = |device: &&Device| device.of.id == id && device.mark == mark;
        let hosts = [&design.package.block, &design.package.pump, &design.package.reservoir];
        let device = design.package.devices.iter().find(of).map(|device| &device.of);
        let part = device.or_else(|| hosts.into_iter().find(|host| host.id == id))?;
        Some(message!("documents-at-port", port = mark, part = part.kind.id()))
    });
    found.unwrap_or_else(|| message!("documents-at-place", name = at))
}

/// A thing of which a job has one.
fn thing(at: &str) -> Message {
    match at {
        "package" => message!("documents-thing-package"),
        "package.block" => message!("documents-thing-block"),
        "package.pump" => message!("documents-thing-pump"),
        "package.reservoir" => message!("documents-thing-reservoir"),
        "package.regulator" => message!("documents-thing-regulator"),
        "package.valve" => message!("documents-thing-valve"),
        "package.disc" => message!("documents-thing-disc"),
        "package.holder" => message!("documents-thing-holder"),
        "package.gauge" => message!("documents-thing-gauge"),
        "package.controller" => message!("documents-thing-controller"),
        "package.inlet" => message!("documents-thing-inlet"),
        "package.discharge" => message!("documents-thing-discharge"),
        "air.dew_point" => message!("documents-thing-air"),
        "lubricant" => message!("documents-thing-lubricant"),
        "control" => message!("documents-thing-control"),
        "control.pause" => message!("documents-thing-pause"),
        "control.cycles" => message!("documents-thing-cycles"),
        "control.time_out" => message!("documents-thing-time-out"),
        other => message!("documents-at-place", name = other),
    }
}

/// A port of the package, in words.
pub(crate) fn port_position(device: &Device) -> Message {
    message!("documents-at-port", port = device.mark.as_str(), part = device.of.kind.id())
}
