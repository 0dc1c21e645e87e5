//! One part of a catalogue file.

use core::ops::Range;

use oilway_text::{Message, message};
use oilway_units::{AnyQuantity, Dimension};

use super::port_row::ports;
use crate::reading::{Item, Placed, Table};
use crate::{Kind, Part, Price, Value, What};

/// A part as its row says, with what later checks need.
pub(super) struct Row {
    /// Its id, even if the rest is spoiled: others may name it.
    pub(super) id: Option<Placed<String>>,
    /// Its kind, if that can be made out.
    pub(super) kind: Option<&'static dyn Kind>,
    /// The part, if all that is needed is there.
    pub(super) part: Option<Part>,
    /// Nothing is wrong with it so far.
    pub(super) sound: bool,
    /// The ids of other parts that it names: the kind that they must be of, and where they stand.
    pub(super) names: Vec<(&'static str, Placed<String>)>,
}

impl Row {
    /// A row whose kind cannot be made out: its fields cannot be judged.
    pub(super) fn lost(table: &Table<'_>) -> Self {
        table.items();
        let id = table.text("id").map(|placed| placed.map(str::to_owned));
        Row { id, kind: None, part: None, sound: false, names: Vec::new() }
    }
}

/// Reads one part.
pub(super) fn row(table: &Table<'_>, kind: &'static dyn Kind, common_source: &str) -> Row {
    let id = table.needed("id").and_then(|item| not_empty(&item));
    let description = table.needed("description").and_then(|item| not_empty(&item));
    let price = table.item("price").map(|item| price(&item));
    let source = source(table, common_source);
    let mut sound = id.is_some() && description.is_some() && source.is_some() && price != Some(None);

    let mut names = Vec::new();
    let mut places = Vec::new();
    let mut values = Vec::new();
    for field in kind.fields() {
        let item = if field.needed { table.needed(field.name) } else { table.item(field.name) };
        let value = item.and_then(|item| value(&item, field.what, &mut names));
        sound &= value.is_some() || (item.is_none() && !field.needed);
        places.push(item.map(|item| item.at()));
        values.push(value);
    }
    let (ports, ports_sound) = ports(table);
    sound &= ports_sound;

    let (Some(id_text), Some(description), Some(source)) = (&id, description, source) else {
        return Row { id, kind: Some(kind), part: None, sound: false, names };
    };
    let price = price.flatten();
    let part = Part {
        id: id_text.value.clone(),
        kind,
        description: description.value,
        values,
        ports,
        price,
        source,
    };
    if sound {
        sound = contradictions(table, kind, &part, &places);
    }
    Row { id, kind: Some(kind), part: Some(part), sound, names }
}

/// Notes what cannot be in one part; true if there is nothing of the sort.
fn contradictions(
    table: &Table<'_>,
    kind: &'static dyn Kind,
    part: &Part,
    places: &[Option<Range<usize>>],
) -> bool {
    let found = kind.contradictions(part);
    for (field, what) in &found {
        let index = kind.fields().iter().position(|known| known.name == *field);
        let at = index.and_then(|index| places[index].clone()).unwrap_or_else(|| table.at());
        table.reading().note(
            at,
            what.clone(),
            message!("catalogue-contradiction-cure", field = *field),
            None,
        );
    }
    found.is_empty()
}

fn not_empty(item: &Item<'_>) -> Option<Placed<String>> {
    let text = item.text()?;
    if text.value.trim().is_empty() {
        item.wrong(
            message!("catalogue-empty", key = item.key()),
            message!("catalogue-empty-cure", key = item.key()),
        );
        return None;
    }
    Some(text.map(|text| text.trim().to_owned()))
}

fn source(table: &Table<'_>, common: &str) -> Option<String> {
    if !table.has("source") && !common.trim().is_empty() {
        return Some(common.to_owned());
    }
    not_empty(&table.needed("source")?).map(|placed| placed.value)
}

fn price(item: &Item<'_>) -> Option<Price> {
    let text = item.text()?;
    let price = Price::read(text.value);
    if price.is_none() {
        item.wrong(message!("catalogue-price", text = text.value), message!("catalogue-price-cure"));
    }
    price
}

/// The value of a field, if it is what the field wants.
fn value(item: &Item<'_>, what: What, names: &mut Vec<(&'static str, Placed<String>)>) -> Option<Value> {
    Some(match what {
        What::Quantity(dimension, range) => Value::Quantity(quantity(item, dimension, range)?),
        What::Quantities(dimension, range) => {
            Value::Quantities(all(item.list()?, |item| quantity(item, dimension, range))?)
        }
        What::Word(words) => Value::Word(item.word(words)?.value),
        What::Words(words) => {
            Value::Texts(all(some(item)?, |item| Some(item.word(words)?.value.to_owned()))?)
        }
        What::Text => Value::Text(not_empty(item)?.value),
        What::Texts => Value::Texts(all(item.list()?, |item| Some(not_empty(item)?.value))?),
        What::Part(kind) => Value::Text(name(item, kind, names)?),
        What::Parts(kind) => Value::Texts(all(some(item)?, |item| name(item, kind, names))?),
        What::Flag => Value::Flag(item.flag()?.value),
    })
}

/// The elements of a list that must not be empty.
fn some<'r>(item: &Item<'r>) -> Option<Vec<Item<'r>>> {
    let list = item.list()?;
    if list.is_empty() {
        item.wrong(
            message!("catalogue-empty", key = item.key()),
            message!("catalogue-empty-cure", key = item.key()),
        );
        return None;
    }
    Some(list)
}

/// Every element read, or none: but every element is looked at, so that all mistakes come out.
fn all<T>(items: Vec<Item<'_>>, mut read: impl FnMut(&Item<'_>) -> Option<T>) -> Option<Vec<T>> {
    let read: Vec<Option<T>> = items.iter().map(&mut read).collect();
    read.into_iter().collect()
}

fn name(
    item: &Item<'_>,
    kind: &'static str,
    names: &mut Vec<(&'static str, Placed<String>)>,
) -> Option<String> {
    let id = not_empty(item)?;
    names.push((kind, id.clone()));
    Some(id.value)
}

fn quantity(item: &Item<'_>, dimension: Dimension, range: oilway_physics::Range) -> Option<AnyQuantity> {
    let quantity = item.any_exact(dimension)?;
    if range.holds(quantity.value.si) {
        return Some(quantity.value);
    }
    let what = message!("catalogue-out-of-range", key = item.key(), value = quantity.value);
    item.wrong(what, allowed(dimension, range));
    None
}

fn allowed(dimension: Dimension, range: oilway_physics::Range) -> Message {
    let of = |si| AnyQuantity::new(dimension, si);
    match range {
        oilway_physics::Range::Any => message!("catalogue-range-finite"),
        oilway_physics::Range::NotNegative => message!("catalogue-range-not-negative"),
        oilway_physics::Range::Positive => message!("catalogue-range-positive"),
        oilway_physics::Range::Between(low, high) => {
            message!("catalogue-range-between", low = of(low), high = of(high))
        }
    }
}
