//! [`Table`]: a table of a file, asked key by key.

use core::ops::Range;

use oilway_text::message;
use oilway_units::{Quantity, Said};

use super::node::Fields;
use super::{Item, Placed, Reading};

/// A table of a file. Every key asked for counts as known; the others are mistakes when the reading ends.
#[derive(Clone, Debug)]
pub struct Table<'r> {
    reading: &'r Reading,
    fields: &'r Fields,
    at: Range<usize>,
}

impl<'r> Table<'r> {
    pub(super) fn new(reading: &'r Reading, fields: &'r Fields, at: Range<usize>) -> Self {
        fields.opened.set(true);
        Table { reading, fields, at }
    }

    /// Where it stands: its header, or the table in braces.
    pub fn at(&self) -> Range<usize> {
        self.at.clone()
    }
    /// The reading to which it belongs.
    pub fn reading(&self) -> &'r Reading {
        self.reading
    }

    /// The value of a key, if there is one.
    pub fn item(&self, key: &str) -> Option<Item<'r>> {
        let mut asked_for = self.fields.asked_for.borrow_mut();
        if !asked_for.iter().any(|known| known == key) {
            asked_for.push(key.to_owned());
        }
        let entry = self.fields.entries.iter().find(|entry| entry.key == key)?;
        entry.asked.set(true);
        Some(Item { reading: self.reading, node: &entry.node, key: &entry.key })
    }

    /// The value of a key; a table without it is a mistake.
    pub fn needed(&self, key: &str) -> Option<Item<'r>> {
        let item = self.item(key);
        // In a file that is no TOML the key may only have been lost.
        if item.is_none() && !self.reading.is_broken() {
            let cure = message!("reading-add-key", key = key);
            self.reading.note(self.at(), message!("reading-missing-key", key = key), cure, None);
        }
        item
    }

    /// Every entry, for tables whose keys are free: names of places, of points, of overrides.
    pub fn items(&self) -> Vec<Item<'r>> {
        let item = |entry: &'r super::node::Entry| {
            entry.asked.set(true);
            Item { reading: self.reading, node: &entry.node, key: &entry.key }
        };
        self.fields.entries.iter().map(item).collect()
    }

    /// Whether the key is there; it then counts as known.
    pub fn has(&self, key: &str) -> bool {
        self.item(key).is_some()
    }

    /// A text.
    pub fn text(&self, key: &str) -> Option<Placed<&'r str>> {
        self.item(key)?.text()
    }
    /// A text that must be there.
    pub fn needed_text(&self, key: &str) -> Option<Placed<&'r str>> {
        self.needed(key)?.text()
    }
    /// A list of texts; empty if the key is not there.
    pub fn texts(&self, key: &str) -> Vec<Placed<&'r str>> {
        self.elements(key).iter().filter_map(Item::text).collect()
    }
    /// One of these words.
    pub fn word(&self, key: &str, words: &'static [&'static str]) -> Option<Placed<&'static str>> {
        self.item(key)?.word(words)
    }
    /// Yes or no.
    pub fn flag(&self, key: &str) -> Option<Placed<bool>> {
        self.item(key)?.flag()
    }
    /// A whole number from 0.
    pub fn count(&self, key: &str) -> Option<Placed<u32>> {
        self.item(key)?.count()
    }
    /// A bare number.
    pub fn number(&self, key: &str) -> Option<Placed<f64>> {
        self.item(key)?.number()
    }
    /// A quantity as it was said: a value, a range, or unknown.
    pub fn quantity<T: Quantity>(&self, key: &str) -> Option<Placed<Said<T>>> {
        self.item(key)?.quantity()
    }
    /// A quantity that must be one value.
    pub fn exact<T: Quantity>(&self, key: &str) -> Option<Placed<T>> {
        self.item(key)?.exact()
    }
    /// A table inside this one.
    pub fn table(&self, key: &str) -> Option<Table<'r>> {
        self.item(key)?.table()
    }
    /// A list of tables; empty if the key is not there.
    pub fn tables(&self, key: &str) -> Vec<Table<'r>> {
        self.elements(key).iter().filter_map(Item::table).collect()
    }

    fn elements(&self, key: &str) -> Vec<Item<'r>> {
        self.item(key).and_then(|item| item.list()).unwrap_or_default()
    }
}
