//! The points as text, each on its own.

use oilway_model::{Given, Job, Point, PointEntry};
use oilway_units::Origin;

use super::network::route;
use super::value::{Sheet, amount, entry_text, known_text};
use crate::asked::quoted;
use crate::assumptions::DUTY_FULL;

pub(super) fn write(sheet: &mut Sheet, job: &Job) {
    for point in &job.points {
        sheet.header("[[point]]");
        sheet.text("name", &point.name);
        sheet.some_text("part", &point.part);
        sheet.text("kind", point.kind.id());
        let places = &job.conditions.places;
        sheet.text("place", places.get(point.place).map_or("", |place| &place.name));
        sheet.text("on", job.dividers.get(point.divider).map_or("", |divider| &divider.name));
        fields(sheet, point);
        around(sheet, point);
        route(sheet, "route", &point.route, point.place, places);
    }
}

/// What the kind asks for.
fn fields(sheet: &mut Sheet, point: &Point) {
    for (field, entry) in point.kind.fields().iter().zip(&point.entries) {
        match entry {
            PointEntry::Quantity(entry) => sheet.known(field.name, entry),
            PointEntry::Word { word, assumed: false } => sheet.text(field.name, word),
            PointEntry::Word { assumed: true, .. } => sheet.text(field.name, "unknown"),
            PointEntry::Nothing => {}
        }
    }
}

/// What every point has.
fn around(sheet: &mut Sheet, point: &Point) {
    sheet.texts("surroundings", &point.surroundings.words);
    if point.duty.origin() != Origin::Assumed(DUTY_FULL.key) {
        sheet.known("duty", &point.duty);
    }
    if let Some(given) = &point.given {
        sheet.bare("given", &given_text(given, sheet));
    }
    if let Some(back_pressure) = &point.back_pressure {
        sheet.known("back_pressure", back_pressure);
    }
    sheet.text("thread", point.thread.as_deref().unwrap_or("unknown"));
    sheet.flag("critical", point.critical);
    if let Some(often) = point.at_least_every {
        sheet.text("at_least_every", &amount(often, sheet.units));
    }
}

fn given_text(given: &Given, sheet: &Sheet) -> String {
    let quantity = entry_text(&given.quantity, sheet.units);
    let interval = known_text(&given.interval, sheet.units);
    let from =
        if given.place.is_empty() { String::new() } else { format!(", from = {}", quoted(&given.place)) };
    format!("{{ quantity = {quantity}, interval = {interval}{from} }}")
}
