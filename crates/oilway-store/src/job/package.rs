//! The pump package as the job tells it.

use oilway_catalogue::Catalogue;
use oilway_catalogue::reading::{Item, Table};
use oilway_model::{Choice, PackageWish, Principle};
use oilway_text::message;
use oilway_units::{Dimension, Pressure, Quantity, Time};

use super::names::Places;
use super::parts::{OPEN, choice};
use super::route::{LENGTH, route};
use crate::asked::{Asked, entry, one};
use crate::assumptions as assume;

pub(crate) const SETTING: Asked = Asked::between(Dimension::Pressure, 0.1e5, 20e5, "bar");
pub(crate) const PAUSE: Asked = Asked::between(Dimension::Time, 1.0, 366.0 * 86_400.0, "min");

/// The package; a job without the table leaves every choice of it open.
pub(super) fn package(root: &Table<'_>, places: &Places, catalogue: &Catalogue) -> PackageWish {
    let Some(table) = root.table("package") else {
        if places.0.len() > 1 && !root.reading().is_broken() {
            root.reading().note(0..0, message!("store-no-package"), message!("store-no-package-cure"), None);
        }
        return PackageWish::default();
    };
    let place = places.of(&table, None);
    let part = |key, kind| choice(&table, key, &[kind], catalogue);
    PackageWish {
        place,
        remote: table.item("remote").map_or(Choice::Open, |item| remote(&item)),
        inlet: route(&table, "inlet", (places, place), catalogue),
        pump: part("pump", "pump"),
        reservoir: part("reservoir", "reservoir"),
        block: part("block", "port block"),
        valve: part("valve", "air valve"),
        regulator: table.item("regulator").map_or(Choice::Open, |item| quantity::<Pressure>(&item, SETTING)),
        disc: part("disc", "burst disc"),
        holder: part("holder", "disc holder"),
        discharge: table.item("discharge").map(|_| entry(&table, "discharge", LENGTH, &assume::DISCHARGE)),
        gauge: part("gauge", "gauge"),
        controller: part("controller", "controller"),
    }
}

fn remote(item: &Item<'_>) -> Choice<bool> {
    if item.is_text() {
        item.word(&[OPEN]);
        return Choice::Open;
    }
    item.flag().map_or(Choice::Open, |placed| Choice::Given(placed.value))
}

/// A quantity that may be left open.
fn quantity<T: Quantity>(item: &Item<'_>, asked: Asked) -> Choice<T> {
    if says_open(item) {
        return Choice::Open;
    }
    one(item, asked).map_or(Choice::Open, Choice::Given)
}

fn says_open(item: &Item<'_>) -> bool {
    item.is_text() && item.text().is_some_and(|text| text.value.trim() == OPEN)
}

/// The pause between two events.
pub(super) fn pause(root: &Table<'_>) -> Choice<Time> {
    root.item("pause").map_or(Choice::Open, |item| quantity(&item, PAUSE))
}

/// The words for the principles.
pub(crate) const PRINCIPLES: [(&str, Principle); 2] =
    [("progressive", Principle::Progressive), ("parallel", Principle::Parallel)];

/// The principle of distribution.
pub(super) fn principle(root: &Table<'_>) -> Choice<Principle> {
    let word = root.word("principle", &[OPEN, "progressive", "parallel"]).map(|placed| placed.value);
    let found = PRINCIPLES.iter().find(|(name, _)| Some(*name) == word);
    found.map_or(Choice::Open, |(_, principle)| Choice::Given(*principle))
}
