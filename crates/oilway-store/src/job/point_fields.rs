//! What a point's kind asks for, field by field, and what a bearing's designation fills.

use std::collections::BTreeSet;

use oilway_catalogue::bearings::{self, Bearing};
use oilway_catalogue::reading::{Item, Table};
use oilway_model::{AnyEntry, PointEntry};
use oilway_physics::Range;
use oilway_physics::points::{KINDS, PointField, PointKind, Wanted};
use oilway_text::message;
use oilway_units::{AnyQuantity, Dimension, Origin, Said};

use crate::asked::{Asked, Heard, heard_any, not_among, written};
use crate::assumptions as assume;

/// One entry for each field of the kind.
pub(super) fn entries(table: &Table<'_>, kind: &'static dyn PointKind) -> Vec<PointEntry> {
    let bearing = if takes_bearing(kind) { bearing(table) } else { None };
    let fill = |field: &PointField| bearing.and_then(|bearing| dimension_of(bearing, field.name));
    kind.fields().iter().map(|field| field_entry(table, field, fill(field), bearing)).collect()
}

/// What can be judged of a point whose kind is not known: a key that no kind has is a slip whatever it is, and what every kind
/// that has it reads as one dimension or word must be that.
pub(super) fn check_fields_of_any_kind(table: &Table<'_>) {
    bearing(table);
    let fields = || KINDS.iter().flat_map(|kind| kind.fields());
    let names: BTreeSet<&str> = fields().map(|field| field.name).collect();
    for name in names {
        let same: Vec<&PointField> = fields().filter(|field| field.name == name).collect();
        if let (Some(item), Some(field)) = (table.item(name), same.first()) {
            check_field_of_any_kind(table, &item, field, &same);
        }
    }
}

fn check_field_of_any_kind(table: &Table<'_>, item: &Item<'_>, field: &PointField, same: &[&PointField]) {
    match field.wanted {
        Wanted::Word(words) => {
            if same.iter().all(|other| matches!(other.wanted, Wanted::Word(others) if others == words)) {
                word_entry(table, field, words, None);
            }
        }
        Wanted::Quantity { dimension, .. } => {
            let range_of = |field: &&PointField| match field.wanted {
                Wanted::Quantity { dimension: other, range, .. } if other == dimension => Some(range),
                _ => None,
            };
            let ranges: Option<Vec<Range>> = same.iter().map(range_of).collect();
            if let Some(ranges) = ranges {
                let one = ranges.windows(2).all(|pair| pair[0] == pair[1]);
                let range = ranges.first().filter(|_| one).copied().unwrap_or(Range::Any);
                heard_any(item, Asked { dimension, range, unit: "" });
            }
        }
    }
}

/// The fields that a bearing's designation fills.
const BEARING_FIELDS: [&str; 3] = ["bore", "outside", "width"];

fn takes_bearing(kind: &dyn PointKind) -> bool {
    BEARING_FIELDS.iter().all(|name| kind.fields().iter().any(|field| field.name == *name))
}

fn dimension_of(bearing: &Bearing, field: &str) -> Option<AnyQuantity> {
    match field {
        "bore" => Some(bearing.bore.into()),
        "outside" => Some(bearing.outside.into()),
        "width" => Some(bearing.width.into()),
        _ => None,
    }
}

fn bearing(table: &Table<'_>) -> Option<&'static Bearing> {
    let item = table.item("bearing")?;
    let text = written(&item)?;
    let found = bearings::bearing(text.trim());
    if found.is_none() {
        let what = message!("store-unknown-bearing", designation = text.as_str());
        match bearings::nearest_designation(text.trim()) {
            Some(near) => item.wrong(what, message!("store-perhaps-bearing", word = near)),
            None => item.wrong(what, message!("store-unknown-bearing-cure")),
        }
    }
    found
}

fn field_entry(
    table: &Table<'_>,
    field: &PointField,
    filled: Option<AnyQuantity>,
    bearing: Option<&Bearing>,
) -> PointEntry {
    match field.wanted {
        Wanted::Word(words) => {
            let family = bearing.filter(|_| field.name == "family").map(|bearing| bearing.family);
            // The table says more exactly what it is: `deep groove ball`, of which the kind asks only for `ball`.
            let filled = family.and_then(|family| words.iter().copied().find(|word| family.contains(word)));
            word_entry(table, field, words, filled)
        }
        Wanted::Quantity { dimension, range, unknown } => {
            let asked = Asked { dimension, range, unit: "" };
            let item = table.item(field.name);
            let said = item.and_then(|item| heard_any(&item, asked));
            match (item, said, filled) {
                (None, _, Some(filled)) => PointEntry::Quantity(AnyEntry::known(filled)),
                (None, _, None) if !field.needed => PointEntry::Nothing,
                (Some(item), Some(said), Some(filled)) => {
                    contradicts(&item, &said, filled);
                    PointEntry::Quantity(known_entry(said).unwrap_or(AnyEntry::known(filled)))
                }
                (_, said, _) => PointEntry::Quantity(
                    said.and_then(known_entry).unwrap_or(unknown_entry(dimension, unknown)),
                ),
            }
        }
    }
}

/// A dimension that is said beside the designation must agree with it to a tenth of a millimetre.
fn contradicts(item: &Item<'_>, said: &Heard<AnyQuantity>, filled: AnyQuantity) {
    if let Said::Value(value) = said.said
        && (value.si - filled.si).abs() > 1e-4
    {
        let what = message!("store-bearing-contradicts", key = item.key(), said = value, table = filled);
        item.wrong(what, message!("store-bearing-contradicts-cure"));
    }
}

fn known_entry(heard: Heard<AnyQuantity>) -> Option<AnyEntry> {
    let (low, high) = match heard.said {
        Said::Value(value) => (value, value),
        Said::Range(low, high) => (low, high),
        Said::Unknown => return None,
    };
    let middle = 0.5 * low.si + 0.5 * high.si;
    let typical = heard.typical.map_or(if low.si == high.si { low.si } else { middle }, |typical| typical.si);
    let (low, high) = (low.si, high.si);
    Some(AnyEntry {
        dimension: heard_dimension(&heard),
        low,
        typical,
        high,
        now: typical,
        origin: heard.origin,
    })
}

fn heard_dimension(heard: &Heard<AnyQuantity>) -> Dimension {
    match heard.said {
        Said::Value(value) | Said::Range(value, _) => value.dimension,
        // Not reached: the caller has returned.
        Said::Unknown => Dimension::Ratio,
    }
}

/// The span of the kind for a field that nobody knows.
fn unknown_entry(dimension: Dimension, [low, typical, high]: [f64; 3]) -> AnyEntry {
    AnyEntry { dimension, low, typical, high, now: typical, origin: Origin::Assumed(assume::POINT_FIELD) }
}

fn word_entry(
    table: &Table<'_>,
    field: &PointField,
    words: &'static [&'static str],
    filled: Option<&'static str>,
) -> PointEntry {
    let assumed =
        || words.first().map_or(PointEntry::Nothing, |word| PointEntry::Word { word, assumed: true });
    let Some(item) = table.item(field.name) else {
        return match filled {
            Some(word) => PointEntry::Word { word, assumed: false },
            None if field.needed => assumed(),
            None => PointEntry::Nothing,
        };
    };
    let Some(text) = item.text() else { return assumed() };
    let text = text.value.trim();
    if matches!(text, "unknown" | "?") {
        return assumed();
    }
    match words.iter().find(|word| **word == text) {
        Some(word) => PointEntry::Word { word, assumed: false },
        None => {
            not_among(&item, text, message!("store-unknown-word", key = field.name, word = text), words);
            assumed()
        }
    }
}

#[cfg(test)]
mod tests {
    use oilway_physics::points;

    #[test]
    fn no_field_of_a_kind_shares_its_key_with_one_that_every_point_has() {
        let common = [
            "name",
            "count",
            "first",
            "part",
            "kind",
            "place",
            "on",
            "surroundings",
            "duty",
            "back_pressure",
            "thread",
            "given",
            "share",
            "bearing",
            "route",
            "critical",
            "at_least_every",
        ];
        for kind in points::KINDS {
            for field in kind.fields() {
                assert!(!common.contains(&field.name), "{}: {}", kind.id(), field.name);
            }
        }
    }
}
