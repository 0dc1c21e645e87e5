//! The way of a line: its stretches, each in one place.

use oilway_catalogue::Catalogue;
use oilway_catalogue::reading::Table;
use oilway_model::LegWish;
use oilway_units::{Dimension, Entry, Length};

use super::names::Places;
use super::parts::choice;
use crate::asked::{Asked, entry};
use crate::assumptions as assume;

/// Longer than any system is.
pub(super) const LENGTH: Asked = Asked::between(Dimension::Length, 0.0, 2000.0, "m");
const RISE: Asked = Asked::between(Dimension::Length, -500.0, 500.0, "m");

/// The stretches under a key. A stretch without a place runs where the thing stands to which it leads.
pub(super) fn route(
    table: &Table<'_>,
    key: &str,
    (places, own_place): (&Places, usize),
    catalogue: &Catalogue,
) -> Vec<LegWish> {
    let mut legs = Vec::new();
    for leg in table.tables(key) {
        leg.needed("length");
        let rise = if leg.has("rise") {
            entry(&leg, "rise", RISE, &assume::LEG_RISE)
        } else {
            assume::LEG_LEVEL.entry()
        };
        legs.push(LegWish {
            place: places.of(&leg, Some(own_place)),
            length: entry(&leg, "length", LENGTH, &assume::LEG_LENGTH),
            rise,
            conduit: choice(&leg, "conduit", &["tube", "hose"], catalogue),
            flexible: leg.flag("flexible").is_some_and(|placed| placed.value),
        });
    }
    legs
}

/// The way of a line of which nobody said anything: one stretch of unknown length.
pub(super) fn unknown_route(place: usize) -> Vec<LegWish> {
    let length: Entry<Length> = assume::LEG_LENGTH.entry();
    vec![LegWish {
        place,
        length,
        rise: assume::LEG_LEVEL.entry(),
        conduit: Default::default(),
        flexible: false,
    }]
}

/// The way under `route`, or an unknown one where the key is missing.
pub(super) fn way(table: &Table<'_>, places: (&Places, usize), catalogue: &Catalogue) -> Vec<LegWish> {
    if table.has("route") { route(table, "route", places, catalogue) } else { unknown_route(places.1) }
}
