//! Dividers and lines as text.

use oilway_model::{Choice, DividerWish, Feed, Job, LegWish, Place, SectionWish};

use super::given;
use super::value::{Sheet, known_text};
use crate::asked::quoted;
use crate::assumptions::LEG_LEVEL;
use crate::job::divider::PUMP;
use oilway_units::Origin;

pub(super) fn dividers(sheet: &mut Sheet, job: &Job) {
    let places = &job.conditions.places;
    for divider in &job.dividers {
        sheet.header("[[divider]]");
        sheet.text("name", &divider.name);
        sheet.text("place", places.get(divider.place).map_or("", |place| &place.name));
        sheet.text("fed_by", feed(divider, &job.dividers));
        sheet.text("part", &given(&divider.part, String::clone));
        route(sheet, "route", &divider.route, divider.place, places);
        match &divider.sections {
            Choice::Given(sections) => sheet.bare("sections", &sections_text(sections)),
            Choice::Open | Choice::Pinned(_) => sheet.text("sections", super::OPEN),
        }
    }
}

fn feed<'a>(divider: &DividerWish, dividers: &'a [DividerWish]) -> &'a str {
    match divider.fed_by {
        Feed::Pump => PUMP,
        Feed::Divider(index) => dividers.get(index).map_or(PUMP, |parent| &parent.name),
    }
}

fn sections_text(sections: &[SectionWish]) -> String {
    let row = |section: &SectionWish| {
        let serves: Vec<String> = section.serves.iter().map(|name| quoted(name)).collect();
        format!("{{ part = {}, serves = [{}] }}", quoted(&section.part), serves.join(", "))
    };
    list(sections.iter().map(row).collect())
}

/// The way of a line; an empty list where the thing is joined directly.
pub(super) fn route(sheet: &mut Sheet, key: &str, route: &[LegWish], own_place: usize, places: &[Place]) {
    if route.is_empty() && key == "inlet" {
        return;
    }
    let units = sheet.units;
    let leg = |leg: &LegWish| {
        let mut fields = Vec::new();
        if leg.place != own_place {
            fields.push(format!("place = {}", quoted(places.get(leg.place).map_or("", |place| &place.name))));
        }
        fields.push(format!("length = {}", known_text(&leg.length, units)));
        if leg.rise.origin() != Origin::Assumed(LEG_LEVEL.key) {
            fields.push(format!("rise = {}", known_text(&leg.rise, units)));
        }
        if let Choice::Given(conduit) = &leg.conduit {
            fields.push(format!("conduit = {}", quoted(conduit)));
        }
        if leg.flexible {
            fields.push("flexible = true".to_owned());
        }
        format!("{{ {} }}", fields.join(", "))
    };
    sheet.bare(key, &list(route.iter().map(leg).collect()));
}

/// One row on the line of its key, several each on its own.
fn list(rows: Vec<String>) -> String {
    match rows.as_slice() {
        [] => "[]".to_owned(),
        [only] => format!("[{only}]"),
        _ => format!("[\n    {},\n]", rows.join(",\n    ")),
    }
}
