//! The lubrication points of a job.

use std::collections::BTreeSet;

use oilway_catalogue::Catalogue;
use oilway_catalogue::reading::{Item, Placed, Table};
use oilway_model::{DividerWish, Given, LegWish, Point};
use oilway_physics::demand::volume_of_mass;
use oilway_physics::points::{self, PointKind};
use oilway_text::message;
use oilway_units::{
    Density, Dimension, Entry, Frequency, Mass, Origin, Ratio, ReadErrorKind, Said, Time, Volume, read,
};

use super::conditions::BACK_PRESSURE;
use super::names::{Places, name, take};
use super::point_fields::{check_fields_of_any_kind, entries};
use super::route::way;
use super::surroundings::surroundings;
use crate::asked::{Asked, Heard, entry, heard, not_among, one, report, written};
use crate::assumptions as assume;

const QUANTITY: Asked = Asked::between(Dimension::Volume, 1e-12, 1.0, "cm³");
const INTERVAL: Asked = Asked::between(Dimension::Time, 1.0, 20.0 * 366.0 * 86_400.0, "h");
const DUTY: Asked = Asked::between(Dimension::Ratio, 0.0, 1.0, "%");
const OFTEN: Asked = Asked::between(Dimension::Frequency, 1e-9, 1.0, "per day");
/// More points than that in one entry are a slip of the finger.
const MOST_OF_A_KIND: u32 = 1000;

/// What the points of a job refer to.
pub(super) struct Known<'a> {
    pub(super) places: &'a Places,
    pub(super) dividers: &'a [DividerWish],
    pub(super) catalogue: &'a Catalogue,
    /// The density with which a mass that a manual states becomes a volume.
    pub(super) density: Density,
}

/// The points, each entry of the file expanded to as many as it counts.
pub(super) fn points(root: &Table<'_>, known: &Known<'_>) -> Vec<Point> {
    let tables = root.tables("point");
    if tables.is_empty() && !root.reading().is_broken() {
        root.reading().note(0..0, message!("store-no-point"), message!("store-no-point-cure"), None);
    }
    let mut taken: BTreeSet<String> = known.dividers.iter().map(|divider| divider.name.clone()).collect();
    let mut points = Vec::new();
    for table in &tables {
        let names = names(table, &mut taken);
        if let Some(point) = point(table, known) {
            points.extend(names.into_iter().map(|name| Point { name, ..point.clone() }));
        }
    }
    points
}

/// One name, or with `count` as many as that, numbered from `first`.
fn names(table: &Table<'_>, taken: &mut BTreeSet<String>) -> Vec<String> {
    let count = table.item("count").and_then(|item| numbered(&item, MOST_OF_A_KIND));
    let first = table.item("first").and_then(|item| numbered(&item, u32::MAX - MOST_OF_A_KIND));
    if let (None, Some(_)) = (count, first) {
        table.needed("count");
    }
    let Some(base) = name(table) else { return Vec::new() };
    let first = first.unwrap_or(1);
    let names: Vec<String> = match count {
        None => vec![base.value.clone()],
        Some(count) => (first..first + count).map(|number| format!("{} {number}", base.value)).collect(),
    };
    for name in &names {
        take(table, &Placed { value: name.clone(), at: base.at.clone() }, taken);
    }
    names
}

/// A whole number from 1.
fn numbered(item: &Item<'_>, most: u32) -> Option<u32> {
    let number = item.count()?.value;
    if !(1..=most).contains(&number) {
        item.wrong(message!("store-count", key = item.key()), message!("store-count-cure", most = most));
        return None;
    }
    Some(number)
}

/// A point but for its name.
fn point(table: &Table<'_>, known: &Known<'_>) -> Option<Point> {
    let divider = divider(table, known.dividers);
    let place = known.places.of(table, divider.map(|index| known.dividers[index].place));
    let route: Vec<LegWish> = way(table, (known.places, place), known.catalogue);
    let part = table.text("part").map(|placed| placed.value.trim().to_owned()).unwrap_or_default();
    let back_pressure = table
        .item("back_pressure")
        .map(|_| entry(table, "back_pressure", BACK_PRESSURE, &assume::BACK_PRESSURE));
    let duty = if table.has("duty") {
        entry::<Ratio>(table, "duty", DUTY, &assume::DUTY)
    } else {
        assume::DUTY_FULL.entry()
    };
    let common = Common {
        surroundings: surroundings(table),
        thread: thread(table),
        given: given(table, known.density),
        critical: table.flag("critical").is_some_and(|placed| placed.value),
        at_least_every: table.item("at_least_every").and_then(|item| often(&item)),
    };
    let (kind, entries) = match kind(table) {
        Some(kind) => (kind, entries(table, kind)),
        None => {
            check_fields_of_any_kind(table);
            // The job is refused; the point stands in so that nothing that serves it is blamed.
            (*points::KINDS.first()?, Vec::new())
        }
    };
    Some(Point {
        name: String::new(),
        part,
        kind,
        entries,
        place,
        surroundings: common.surroundings,
        duty,
        back_pressure,
        thread: common.thread,
        given: common.given,
        divider: divider?,
        route,
        critical: common.critical,
        at_least_every: common.at_least_every,
    })
}

/// What is read of a point before its kind is known, so that all mistakes come out in one run.
struct Common {
    surroundings: oilway_model::Surroundings,
    thread: Option<String>,
    given: Option<Given>,
    critical: bool,
    at_least_every: Option<Frequency>,
}

/// The divider on which it hangs; the only one of the job where it does not say.
fn divider(table: &Table<'_>, dividers: &[DividerWish]) -> Option<usize> {
    if dividers.len() == 1 && !table.has("on") {
        return Some(0);
    }
    if dividers.is_empty() {
        // That there is none is told once, for the whole job.
        table.has("on");
        return None;
    }
    let item = table.needed("on")?;
    let text = item.text()?.value.trim();
    let found = dividers.iter().position(|divider| divider.name == text);
    if found.is_none() {
        let names: Vec<&str> = dividers.iter().map(|divider| divider.name.as_str()).collect();
        not_among(&item, text, message!("store-unknown-divider", name = text), &names);
    }
    found
}

fn kind(table: &Table<'_>) -> Option<&'static dyn PointKind> {
    let item = table.needed("kind")?;
    let text = item.text()?;
    let found = points::kind(text.value.trim());
    if found.is_none() {
        let ids: Vec<&str> = points::KINDS.iter().map(|kind| kind.id()).collect();
        not_among(&item, text.value, message!("store-unknown-kind", kind = text.value), &ids);
    }
    found
}

/// The thread as written; nothing where nobody knows it.
fn thread(table: &Table<'_>) -> Option<String> {
    let item = table.item("thread")?;
    let text = item.text()?.value.trim();
    if matches!(text, "unknown" | "?" | "") {
        return None;
    }
    match oilway_catalogue::Thread::read(text) {
        Ok(thread) => Some(thread.to_string()),
        Err(no) => {
            item.wrong(message!("store-unknown-thread", thread = text), no.cure());
            None
        }
    }
}

/// How often at least: `3 per day`, or the time between two, `8 h`.
fn often(item: &Item<'_>) -> Option<Frequency> {
    let text = written(item)?;
    if let Ok(Said::Value(time)) = read::<Time>(&text)
        && time.seconds() > 0.0
    {
        return Some(Frequency::from_per_second(1.0 / time.seconds()));
    }
    one(item, OFTEN)
}

/// What the machine builder states: `given = { quantity = "5 g", interval = "40 h", from = "manual" }`, and `share` where the
/// quantity is meant for several ports together.
fn given(table: &Table<'_>, density: Density) -> Option<Given> {
    let share = table.item("share").and_then(|item| numbered(&item, MOST_OF_A_KIND));
    let Some(item) = table.item("given") else {
        if let (Some(_), Some(item)) = (share, table.item("share")) {
            item.wrong(message!("store-share-of-nothing"), message!("store-share-of-nothing-cure"));
        }
        return None;
    };
    let stated = item.table()?;
    let quantity = stated.needed("quantity").and_then(|item| volume(&item, density));
    let interval = stated.needed("interval");
    let interval = interval.and_then(|item| needs_value(&item, heard::<Time>(&item, INTERVAL)?));
    let place = stated.text("from").map(|placed| placed.value.trim().to_owned()).unwrap_or_default();
    let parts = f64::from(share.unwrap_or(1));
    Some(Given { quantity: quantity?.map(|whole| whole / parts), interval: interval?, place })
}

/// What a manual states cannot be unknown: then it states nothing.
fn needs_value<T: oilway_units::Quantity>(item: &Item<'_>, heard: Heard<T>) -> Option<Entry<T>> {
    let entry = heard.entry();
    if entry.is_none() {
        item.wrong(message!("store-given-unknown", key = item.key()), message!("store-given-unknown-cure"));
    }
    entry
}

/// A volume, or a mass that the lubricant's density turns into one.
fn volume(item: &Item<'_>, density: Density) -> Option<Entry<Volume>> {
    let text = written(item)?;
    let as_volume = read::<Volume>(&text);
    let is_mass = matches!(&as_volume, Err(error) if matches!(error.kind, ReadErrorKind::WrongDimension { measures: Dimension::Mass, .. }));
    if !is_mass {
        return needs_value(item, heard::<Volume>(item, QUANTITY)?);
    }
    match read::<Mass>(&text) {
        Ok(said) => {
            let said = said.map(|mass| volume_of_mass(mass, density));
            needs_value(item, Heard { said, typical: None, origin: Origin::Said })
        }
        Err(error) => {
            report(item, item.key(), &error, Asked { dimension: Dimension::Mass, ..QUANTITY });
            None
        }
    }
}
