//! Asking a file for a quantity: its dimension, the values that make sense, the unit proposed where none is written, and what is
//! taken where nobody knows.

use oilway_catalogue::reading::{Item, Reading, Table, nearest};
use oilway_physics::Range;
use oilway_text::{Arg, Message, Mistake, message};
use oilway_units::{
    AnyQuantity, Dimension, Entry, Origin, Quantity, ReadError, ReadErrorKind, Said, Unit, read_any,
};

use crate::Assumption;

/// A quantity that a key asks for.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Asked {
    pub(crate) dimension: Dimension,
    /// The values that make sense, in SI.
    pub(crate) range: Range,
    /// The unit proposed where none is written.
    pub(crate) unit: &'static str,
}

impl Asked {
    /// A quantity between two values in SI, both included.
    pub(crate) const fn between(dimension: Dimension, low: f64, high: f64, unit: &'static str) -> Self {
        Asked { dimension, range: Range::Between(low, high), unit }
    }
}

/// What was written where a quantity is asked for, and how it came to be known.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Heard<T> {
    pub(crate) said: Said<T>,
    /// The usual value of a range, if it is not the middle.
    pub(crate) typical: Option<T>,
    pub(crate) origin: Origin,
}

impl<T: Quantity> Heard<T> {
    /// The entry of a job, unless nothing is known.
    pub(crate) fn entry(self) -> Option<Entry<T>> {
        let entry = match (self.said, self.typical) {
            (Said::Range(low, high), Some(typical)) => Entry::assumed(low, typical, high, ""),
            (said, _) => said.entry()?,
        };
        Some(entry.with_origin(self.origin))
    }
}

/// How a quantity came to be known, as the key `from` says it.
pub(crate) const ORIGINS: &[&str] = &["said", "measured", "plate"];

fn origin_of(word: &str) -> Origin {
    match word {
        "measured" => Origin::Measured,
        "plate" => Origin::Plate,
        _ => Origin::Said,
    }
}

/// A quantity: a text such as `"8 mm"`, a bare number where the dimension has no unit, or
/// `{ value = "6..8 mm", typical = "7.5 mm", from = "measured" }`.
pub(crate) fn heard<T: Quantity>(item: &Item<'_>, asked: Asked) -> Option<Heard<T>> {
    let heard = heard_any(item, asked)?;
    let of = |q: AnyQuantity| T::from_si(q.si);
    Some(Heard { said: heard.said.map(of), typical: heard.typical.map(of), origin: heard.origin })
}

/// The same for a dimension known only at run time.
pub(crate) fn heard_any(item: &Item<'_>, asked: Asked) -> Option<Heard<AnyQuantity>> {
    if !item.is_table() {
        return Some(Heard { said: said(item, item.key(), asked)?, typical: None, origin: Origin::Said });
    }
    let table = item.table()?;
    let value = table.needed("value").and_then(|value| said(&value, item.key(), asked));
    let word = table.word("from", ORIGINS).map_or("said", |placed| placed.value);
    let typical = table.item("typical").map(|typical| typical_of(&typical, value, asked));
    Some(Heard { said: value?, typical: typical.flatten(), origin: origin_of(word) })
}

/// The usual value of a range; it must lie inside.
fn typical_of(item: &Item<'_>, value: Option<Said<AnyQuantity>>, asked: Asked) -> Option<AnyQuantity> {
    let typical = said(item, "typical", asked)?.value();
    match (value?, typical) {
        (Said::Range(low, high), Some(typical)) if (low.si..=high.si).contains(&typical.si) => Some(typical),
        _ => {
            item.wrong(message!("store-typical-outside"), message!("store-typical-outside-cure"));
            None
        }
    }
}

/// Exactly one value.
pub(crate) fn one<T: Quantity>(item: &Item<'_>, asked: Asked) -> Option<T> {
    let value = heard::<T>(item, asked)?.said.value();
    if value.is_none() {
        item.wrong(message!("store-wants-one-value", key = item.key()), message!("store-write-one-value"));
    }
    value
}

/// The entry under a key; the assumption where the key is missing, says unknown, or holds a mistake.
pub(crate) fn entry<T: Quantity>(
    table: &Table<'_>,
    key: &str,
    asked: Asked,
    assumed: &Assumption,
) -> Entry<T> {
    said_entry(table, key, asked).unwrap_or_else(|| assumed.entry())
}

/// The entry under a key; none where the key is missing, says unknown, or holds a mistake.
pub(crate) fn said_entry<T: Quantity>(table: &Table<'_>, key: &str, asked: Asked) -> Option<Entry<T>> {
    heard::<T>(&table.item(key)?, asked)?.entry()
}

fn said(item: &Item<'_>, key: &str, asked: Asked) -> Option<Said<AnyQuantity>> {
    let text = written(item)?;
    let said = match read_any(asked.dimension, &text) {
        Ok(said) => said,
        Err(error) => {
            report(item, key, &error, asked);
            return None;
        }
    };
    let ends = match said {
        Said::Value(value) => [Some(value), None],
        Said::Range(low, high) => [Some(low), Some(high)],
        Said::Unknown => [None, None],
    };
    match ends.into_iter().flatten().find(|end| !asked.range.holds(end.si)) {
        None => Some(said),
        Some(end) => {
            let what = message!("store-out-of-range", key = key, value = end);
            item.wrong(what, bounds(asked));
            None
        }
    }
}

/// What stands there, as a text: a number counts as the text of a number.
pub(crate) fn written(item: &Item<'_>) -> Option<String> {
    if item.is_text() || item.is_list() || item.is_table() {
        return Some(item.text()?.value.to_owned());
    }
    Some(item.number()?.value.to_string())
}

/// Says what is wrong with a quantity, with a patch where only the unit is missing or misspelt.
pub(crate) fn report(item: &Item<'_>, key: &str, error: &ReadError, asked: Asked) {
    let proposed = match &error.kind {
        ReadErrorKind::MissingUnit { examples } => {
            with_unit(&error.text, asked).or(examples.first().cloned())
        }
        ReadErrorKind::UnknownUnit { unit, nearest: Some(nearest), .. } => {
            Some(error.text.replacen(unit, nearest, 1))
        }
        _ => None,
    };
    let proposed = proposed.filter(|text| read_any(asked.dimension, text).is_ok());
    let what = message!("store-quantity", key = key, reason = Message::from(error));
    match proposed {
        Some(text) => {
            let text = quoted(&text);
            let cure = message!("store-write", text = format!("{key} = {text}"));
            item.reading().note(item.at(), what, cure, Some((item.at(), text)));
        }
        None => item.wrong(what, bounds(asked)),
    }
}

/// A bare number with the unit that this key usually has; a fraction is inches and is left to the reader of units.
fn with_unit(number: &str, asked: Asked) -> Option<String> {
    let plain = number.trim().chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | '-' | ','));
    let unit = Unit::named(asked.dimension, asked.unit).filter(|_| plain)?;
    Some(format!("{} {}", number.trim(), unit.symbol()))
}

/// The cure that names what may be written.
pub(crate) fn bounds(asked: Asked) -> Message {
    let of = |si| AnyQuantity::new(asked.dimension, si);
    let kind = oilway_text::name_of(asked.dimension);
    match asked.range {
        Range::Any => message!("store-write-any", kind = kind),
        Range::NotNegative => message!("store-write-not-negative", kind = kind),
        Range::Positive => message!("store-write-positive", kind = kind),
        Range::Between(low, high) => {
            message!("store-write-between", kind = kind, low = of(low), high = of(high))
        }
    }
}

/// Notes that two entries stand in the wrong order: the coldest day above the hottest.
pub(crate) fn must_rise<T: Quantity>(
    table: &Table<'_>,
    (low_key, low): (&'static str, Option<Entry<T>>),
    (high_key, high): (&'static str, Option<Entry<T>>),
) {
    let (Some(low), Some(high)) = (low, high) else { return };
    if low.typical() > high.typical() {
        let (low, high): (AnyQuantity, AnyQuantity) = (low.typical().into(), high.typical().into());
        let what =
            message!("store-wrong-order", low_key = low_key, low = low, high_key = high_key, high = high);
        let at = table.item(high_key).map_or(table.at(), |item| item.at());
        table.reading().note(
            at,
            what,
            message!("store-wrong-order-cure", low_key = low_key, high_key = high_key),
            None,
        );
    }
}

/// Notes a word or name that is none of these, with the nearest right one as a patch.
pub(crate) fn not_among(item: &Item<'_>, written: &str, what: Message, right: &[&str]) {
    match nearest(written, right.iter().copied()) {
        Some(near) => {
            let fix = Some((item.at(), quoted(near)));
            item.reading().note(item.at(), what, message!("store-perhaps", word = near), fix);
        }
        None => item.wrong(what, one_of(right)),
    }
}

/// The cure that lists what may be written; a long list is cut.
pub(crate) fn one_of(right: &[&str]) -> Message {
    const LISTED: usize = 12;
    if right.is_empty() {
        return message!("store-none-there");
    }
    let words: Vec<Arg> = right.iter().take(LISTED).map(|w| Arg::from(*w)).collect();
    let more = right.len().saturating_sub(LISTED);
    message!("store-one-of", words = Arg::List(words), more = more)
}

/// A text as it stands in a TOML file.
pub(crate) fn quoted(text: &str) -> String {
    toml_edit::Value::from(text).to_string()
}

/// Ends a reading: beyond a readable number of mistakes only how many there are.
pub(crate) fn finish(reading: Reading) -> Vec<Mistake> {
    const MOST: usize = 200;
    let mut mistakes = reading.finish();
    let more = mistakes.len().saturating_sub(MOST);
    if more > 0 {
        mistakes.truncate(MOST);
        if let Some(last) = mistakes.last().cloned() {
            let (what, cure) =
                (message!("store-more-mistakes", more = more), message!("store-more-mistakes-cure"));
            mistakes.push(Mistake { what, cure, fix: None, ..last });
        }
    }
    mistakes
}
