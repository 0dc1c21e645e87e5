//! The tree of a file, with the place of every key and value, and with marks on what was asked for.

use core::cell::{Cell, RefCell};
use core::ops::Range;

use toml::de::{DeTable, DeValue};

/// A value in its place.
#[derive(Debug)]
pub(super) struct Node {
    pub(super) at: Range<usize>,
    pub(super) what: What,
}

/// What a value is in TOML.
#[derive(Debug)]
pub(super) enum What {
    Text(String),
    Integer,
    Float,
    Flag(bool),
    Date,
    List(Vec<Node>),
    Table(Fields),
}

/// The entries of a table in the order of the text.
#[derive(Debug, Default)]
pub(super) struct Fields {
    pub(super) entries: Vec<Entry>,
    /// Somebody read this table, so that its keys can be judged.
    pub(super) opened: Cell<bool>,
    /// The keys that somebody asked for, whether they are there or not.
    pub(super) asked_for: RefCell<Vec<String>>,
}

/// One key with its value.
#[derive(Debug)]
pub(super) struct Entry {
    pub(super) key: String,
    pub(super) key_at: Range<usize>,
    pub(super) node: Node,
    pub(super) asked: Cell<bool>,
}

/// The tree of a table. Depth is bounded by the TOML reader.
pub(super) fn fields(table: &DeTable<'_>) -> Fields {
    let mut entries: Vec<Entry> = table
        .iter()
        .map(|(key, value)| Entry {
            key: key.get_ref().to_string(),
            key_at: key.span(),
            node: node(value.span(), value.get_ref()),
            asked: Cell::new(false),
        })
        .collect();
    entries.sort_by_key(|entry| entry.key_at.start);
    Fields { entries, ..Fields::default() }
}

fn node(at: Range<usize>, value: &DeValue<'_>) -> Node {
    let what = match value {
        DeValue::String(text) => What::Text(text.to_string()),
        DeValue::Integer(_) => What::Integer,
        DeValue::Float(_) => What::Float,
        DeValue::Boolean(flag) => What::Flag(*flag),
        DeValue::Datetime(_) => What::Date,
        DeValue::Array(list) => {
            What::List(list.iter().map(|item| node(item.span(), item.get_ref())).collect())
        }
        DeValue::Table(table) => What::Table(fields(table)),
    };
    Node { at, what }
}
