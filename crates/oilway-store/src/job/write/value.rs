//! Values of a job file as text, and the sheet on which they are put down.

use oilway_units::{
    AnyQuantity, Dimension, Entry, OpenEntry, Origin, Quantity, Unit, UnitSystem, read_any, show, show_exact,
};

use crate::asked::quoted;

/// The text of a job file while it is written.
pub(super) struct Sheet {
    text: String,
    pub(super) units: UnitSystem,
}

impl Sheet {
    pub(super) fn new(units: UnitSystem) -> Self {
        Sheet { text: String::new(), units }
    }

    pub(super) fn finish(self) -> String {
        self.text
    }

    /// A line that opens a table, behind an empty one.
    pub(super) fn header(&mut self, header: &str) {
        self.text.push('\n');
        self.text.push_str(header);
        self.text.push('\n');
    }

    /// A key with a value as it stands in the file.
    pub(super) fn bare(&mut self, key: &str, value: &str) {
        self.text.push_str(key);
        self.text.push_str(" = ");
        self.text.push_str(value.trim());
        self.text.push('\n');
    }

    /// A key with a text.
    pub(super) fn text(&mut self, key: &str, text: &str) {
        self.bare(key, &quoted(text));
    }

    /// A key with a text, left out where there is none.
    pub(super) fn some_text(&mut self, key: &str, text: &str) {
        if !text.is_empty() {
            self.text(key, text);
        }
    }

    /// A key with a yes, left out where it is no.
    pub(super) fn flag(&mut self, key: &str, flag: bool) {
        if flag {
            self.bare(key, "true");
        }
    }

    /// A key with a list of texts, left out where it is empty.
    pub(super) fn texts(&mut self, key: &str, texts: &[String]) {
        if !texts.is_empty() {
            let list: Vec<String> = texts.iter().map(|text| quoted(text)).collect();
            self.bare(key, &format!("[{}]", list.join(", ")));
        }
    }

    /// An entry, left out where the tool assumed it.
    pub(super) fn entry(&mut self, key: &str, entry: &dyn OpenEntry) {
        if !matches!(entry.origin(), Origin::Assumed(_)) {
            self.bare(key, &entry_text(entry, self.units));
        }
    }

    /// An entry that must stand there: `"unknown"` where the tool assumed it.
    pub(super) fn known(&mut self, key: &str, entry: &dyn OpenEntry) {
        self.bare(key, &known_text(entry, self.units));
    }

    /// An entry, left out where it is the very one that the reader takes when the key is missing.
    pub(super) fn unless<T: Quantity>(&mut self, key: &str, entry: &Entry<T>, missing: &Entry<T>) {
        let same = (entry.low(), entry.typical(), entry.high())
            == (missing.low(), missing.typical(), missing.high());
        if !(same && matches!(entry.origin(), Origin::Assumed(_))) {
            self.bare(key, &entry_text(entry, self.units));
        }
    }
}

/// One quantity with every figure, in the unit in which people say a quantity of this size.
pub(crate) fn amount(quantity: impl Into<AnyQuantity>, units: UnitSystem) -> String {
    let quantity = quantity.into();
    show_exact(quantity, unit_for(quantity, units))
}

/// The unit in which a quantity of this size is shown to people.
fn unit_for(quantity: AnyQuantity, units: UnitSystem) -> &'static Unit {
    let shown = show(quantity, units);
    let number = |c: char| c.is_ascii_digit() || matches!(c, '.' | '-' | '+' | 'e' | 'E');
    let unit = shown.trim_start_matches(number).trim();
    Unit::named(quantity.dimension, unit).unwrap_or_else(|| Unit::main(quantity.dimension))
}

/// An entry that the reader must find: `"unknown"` where the tool assumed it.
pub(super) fn known_text(entry: &dyn OpenEntry, units: UnitSystem) -> String {
    match entry.origin() {
        Origin::Assumed(_) => quoted("unknown"),
        _ => entry_text(entry, units),
    }
}

/// An entry with its range, its usual value and its origin.
pub(super) fn entry_text(entry: &dyn OpenEntry, units: UnitSystem) -> String {
    let of = |si| AnyQuantity::new(entry.dimension(), si);
    let (low, typical, high) = (of(entry.low_si()), of(entry.typical_si()), of(entry.high_si()));
    let value = if low.si == high.si { plain(low, units) } else { quoted(&span(low, high, units)) };
    let from = match entry.origin() {
        Origin::Said | Origin::Assumed(_) => None,
        Origin::Measured => Some("measured"),
        Origin::Plate => Some("plate"),
    };
    let typical = (!is_middle(low, typical, high, units)).then(|| quoted(&amount(typical, units)));
    if from.is_none() && typical.is_none() {
        return value;
    }
    let typical = typical.map_or(String::new(), |typical| format!(", typical = {}", typical.trim()));
    let from = from.map_or(String::new(), |from| format!(", from = {}", quoted(from).trim()));
    format!("{{ value = {}{typical}{from} }}", value.trim())
}

/// One value: a bare whole number where it counts something.
fn plain(value: AnyQuantity, units: UnitSystem) -> String {
    let text = amount(value, units);
    let whole =
        value.dimension == Dimension::Count && !text.is_empty() && text.chars().all(|c| c.is_ascii_digit());
    if whole { text } else { quoted(&text) }
}

/// Both ends in one unit, which stands once where the texts allow it.
fn span(low: AnyQuantity, high: AnyQuantity, units: UnitSystem) -> String {
    let unit = unit_for(if low.si.abs() > high.si.abs() { low } else { high }, units);
    let (first, second) = (show_exact(low, unit), show_exact(high, unit));
    let first = first.strip_suffix(unit.symbol()).map_or(first.as_str(), str::trim_end);
    format!("{first}..{second}")
}

/// Whether the usual value is what the reader takes when only the ends stand there.
fn is_middle(low: AnyQuantity, typical: AnyQuantity, high: AnyQuantity, units: UnitSystem) -> bool {
    if low.si == high.si {
        return true;
    }
    let read_back = |q: AnyQuantity| {
        let said = read_any(q.dimension, &amount(q, units)).ok();
        said.and_then(|said| said.value()).map_or(q.si, |value| value.si)
    };
    let middle = AnyQuantity::new(low.dimension, 0.5 * read_back(low) + 0.5 * read_back(high));
    amount(middle, units) == amount(typical, units)
}
