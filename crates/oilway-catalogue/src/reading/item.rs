//! [`Item`]: one value of a file, to be read as what it should be.

use core::ops::Range;

use oilway_text::{Message, message};
use oilway_units::{AnyQuantity, Dimension, Quantity, ReadError, ReadErrorKind, Said, Unit, read_any};

use super::node::{Node, What};
use super::{Placed, Reading, Table, nearest};

/// One value of a file. Each getter gives it in the type asked for or notes why it cannot be read so.
#[derive(Clone, Copy, Debug)]
pub struct Item<'r> {
    pub(super) reading: &'r Reading,
    pub(super) node: &'r Node,
    /// The key under which it stands; elements of a list carry the key of the list.
    pub(super) key: &'r str,
}

impl<'r> Item<'r> {
    /// Where it stands.
    pub fn at(&self) -> Range<usize> {
        self.node.at.clone()
    }
    /// The key under which it stands.
    pub fn key(&self) -> &'r str {
        self.key
    }
    /// The reading to which it belongs.
    pub fn reading(&self) -> &'r Reading {
        self.reading
    }
    /// Whether it is a table.
    pub fn is_table(&self) -> bool {
        matches!(self.node.what, What::Table(_))
    }
    /// Whether it is a list.
    pub fn is_list(&self) -> bool {
        matches!(self.node.what, What::List(_))
    }
    /// Whether it is a text.
    pub fn is_text(&self) -> bool {
        matches!(self.node.what, What::Text(_))
    }

    /// Notes that something is wrong with this value.
    pub fn wrong(&self, what: Message, cure: Message) {
        self.reading.note(self.at(), what, cure, None);
    }

    /// A text.
    pub fn text(&self) -> Option<Placed<&'r str>> {
        match &self.node.what {
            What::Text(text) => Some(self.placed(text.as_str())),
            What::Integer | What::Float | What::Date => {
                let quoted = format!("\"{}\"", self.source());
                let what = message!("reading-wants-text", key = self.key);
                let cure = message!("reading-put-in-quotes", text = quoted.as_str());
                self.reading.note(self.at(), what, cure, Some((self.at(), quoted)));
                None
            }
            _ => self.wants("text"),
        }
    }

    /// One of these words.
    pub fn word(&self, words: &'static [&'static str]) -> Option<Placed<&'static str>> {
        let text = self.text()?;
        if let Some(word) = words.iter().find(|word| **word == text.value.trim()) {
            return Some(self.placed(*word));
        }
        let what = message!("reading-unknown-word", key = self.key, word = text.value);
        match nearest(text.value, words.iter().copied()) {
            Some(near) => {
                let fix = Some((self.at(), format!("\"{near}\"")));
                self.reading.note(self.at(), what, message!("reading-perhaps", word = near), fix);
            }
            None => self.wrong(what, message!("reading-known-words", words = words.to_vec())),
        }
        None
    }

    /// Yes or no.
    pub fn flag(&self) -> Option<Placed<bool>> {
        match &self.node.what {
            What::Flag(flag) => Some(self.placed(*flag)),
            What::Text(text) if matches!(text.as_str(), "yes" | "true") => self.flag_as_text("true"),
            What::Text(text) if matches!(text.as_str(), "no" | "false") => self.flag_as_text("false"),
            _ => self.wants("flag"),
        }
    }

    /// A whole number from 0.
    pub fn count(&self) -> Option<Placed<u32>> {
        match (&self.node.what, self.source().replace('_', "").parse()) {
            (What::Integer, Ok(count)) => Some(self.placed(count)),
            _ => self.wants("count"),
        }
    }

    /// A bare number.
    pub fn number(&self) -> Option<Placed<f64>> {
        match (&self.node.what, self.source().replace('_', "").parse::<f64>()) {
            (What::Integer | What::Float, Ok(number)) if number.is_finite() => Some(self.placed(number)),
            _ => self.wants("number"),
        }
    }

    /// A quantity as it was said: a value, a range, or unknown.
    pub fn quantity<T: Quantity>(&self) -> Option<Placed<Said<T>>> {
        // `read_any` gives the dimension that it is asked for.
        Some(self.any_quantity(T::DIMENSION)?.map(|said| said.map(|any| T::from_si(any.si))))
    }

    /// A quantity that must be one value.
    pub fn exact<T: Quantity>(&self) -> Option<Placed<T>> {
        Some(self.any_exact(T::DIMENSION)?.map(|any| T::from_si(any.si)))
    }

    /// A quantity of this dimension that must be one value.
    pub fn any_exact(&self, dimension: Dimension) -> Option<Placed<AnyQuantity>> {
        let said = self.any_quantity(dimension)?;
        match said.value {
            Said::Value(value) => Some(Placed { value, at: said.at }),
            Said::Range(..) | Said::Unknown => {
                self.wrong(
                    message!("reading-wants-one-value", key = self.key),
                    message!("reading-write-one-value"),
                );
                None
            }
        }
    }

    /// A quantity of this dimension as it was said.
    pub fn any_quantity(&self, dimension: Dimension) -> Option<Placed<Said<AnyQuantity>>> {
        let text = match &self.node.what {
            What::Text(text) => text.clone(),
            What::Integer | What::Float => self.source().replace('_', ""),
            _ => return self.wants("quantity"),
        };
        match read_any(dimension, &text) {
            Ok(said) => Some(self.placed(said)),
            Err(error) => {
                self.note_read_error(&error);
                None
            }
        }
    }

    /// The elements of a list.
    pub fn list(&self) -> Option<Vec<Item<'r>>> {
        match &self.node.what {
            What::List(nodes) => Some(nodes.iter().map(|node| Item { node, ..*self }).collect()),
            _ => self.wants("list"),
        }
    }

    /// A table.
    pub fn table(&self) -> Option<Table<'r>> {
        match &self.node.what {
            What::Table(fields) => Some(Table::new(self.reading, fields, self.at())),
            _ => self.wants("table"),
        }
    }

    fn placed<T>(&self, value: T) -> Placed<T> {
        Placed { value, at: self.at() }
    }

    /// What stands in the file.
    fn source(&self) -> &'r str {
        // Places come from the TOML reader and lie on characters; anything else reads as nothing.
        self.reading.text.get(self.at()).unwrap_or_default()
    }

    fn flag_as_text<T>(&self, flag: &'static str) -> Option<T> {
        let what = message!("reading-wants-flag", key = self.key);
        let fix = Some((self.at(), flag.to_owned()));
        self.reading.note(self.at(), what, message!("reading-write-flag", flag = flag), fix);
        None
    }

    /// Notes that another sort of value is needed.
    fn wants<T>(&self, sort: &'static str) -> Option<T> {
        let what =
            message!("reading-wants-sort", key = self.key, wanted = sort_message(sort), found = self.found());
        self.wrong(what, message!("reading-write-sort", wanted = sort_message(sort)));
        None
    }

    fn found(&self) -> Message {
        sort_message(match self.node.what {
            What::Text(_) => "text",
            What::Integer | What::Float => "number",
            What::Flag(_) => "flag",
            What::Date => "date",
            What::List(_) => "list",
            What::Table(_) => "table",
        })
    }

    fn note_read_error(&self, error: &ReadError) {
        let what = message!("reading-quantity", key = self.key, reason = Message::from(error));
        let (cure, fix) = match &error.kind {
            ReadErrorKind::MissingUnit { examples } => match examples.first() {
                Some(example) => (
                    message!("reading-write", text = format!("\"{example}\"")),
                    Some(format!("\"{example}\"")),
                ),
                None => (message!("reading-write-number-and-unit"), None),
            },
            ReadErrorKind::UnknownUnit { nearest: Some(unit), .. } => {
                (message!("reading-perhaps", word = *unit), None)
            }
            _ => (units_message(error.dimension), None),
        };
        self.reading.note(self.at(), what, cure, fix.map(|text| (self.at(), text)));
    }
}

fn units_message(dimension: Dimension) -> Message {
    let symbols: Vec<&str> =
        Unit::of(dimension).iter().map(Unit::symbol).filter(|symbol| !symbol.is_empty()).take(4).collect();
    if symbols.is_empty() {
        message!("reading-write-plain-number")
    } else {
        message!("reading-write-number-with-unit-of", units = symbols)
    }
}

fn sort_message(sort: &str) -> Message {
    match sort {
        "text" => message!("reading-sort-text"),
        "number" => message!("reading-sort-number"),
        "count" => message!("reading-sort-count"),
        "flag" => message!("reading-sort-flag"),
        "date" => message!("reading-sort-date"),
        "list" => message!("reading-sort-list"),
        "quantity" => message!("reading-sort-quantity"),
        _ => message!("reading-sort-table"),
    }
}
