//! A part: one article of a catalogue, and the catalogue that holds it.

use std::collections::BTreeMap;
use std::sync::Arc;

use oilway_units::{AnyQuantity, Quantity};

use crate::{Kind, Port};

/// What stands in a field.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// A quantity.
    Quantity(AnyQuantity),
    /// Several quantities.
    Quantities(Vec<AnyQuantity>),
    /// A word of the field's list.
    Word(&'static str),
    /// A text.
    Text(String),
    /// Several texts.
    Texts(Vec<String>),
    /// Yes or no.
    Flag(bool),
}

/// What a part costs, as its catalogue says.
#[derive(Clone, Debug, PartialEq)]
pub struct Price {
    /// The amount, in the currency's hundredths.
    pub hundredths: i64,
    /// ISO 4217 code of the currency.
    pub currency: String,
}

/// One article.
#[derive(Clone, Debug)]
pub struct Part {
    /// The identity in its catalogue: a meaningless running number or the user's own article number.
    pub id: String,
    /// Its kind.
    pub kind: &'static dyn Kind,
    /// A sentence that describes it.
    pub description: String,
    /// One value for each field of the kind, in the kind's order.
    pub values: Vec<Option<Value>>,
    /// Its ports.
    pub ports: Vec<Port>,
    /// What it costs, if the catalogue says.
    pub price: Option<Price>,
    /// Where the data come from.
    pub source: String,
}

impl Part {
    /// The value of a field.
    pub fn value(&self, field: &str) -> Option<&Value> {
        let at = self.kind.fields().iter().position(|f| f.name == field)?;
        self.values.get(at)?.as_ref()
    }
    /// The quantity in a field.
    pub fn quantity<T: Quantity>(&self, field: &str) -> Option<T> {
        match self.value(field)? {
            Value::Quantity(q) => q.get(),
            _ => None,
        }
    }
    /// The quantities in a field; none if it is empty.
    pub fn quantities<T: Quantity>(&self, field: &str) -> Vec<T> {
        match self.value(field) {
            Some(Value::Quantities(list)) => list.iter().filter_map(|q| q.get()).collect(),
            _ => Vec::new(),
        }
    }
    /// The word in a field.
    pub fn word(&self, field: &str) -> Option<&'static str> {
        match self.value(field)? {
            Value::Word(word) => Some(word),
            _ => None,
        }
    }
    /// The text in a field.
    pub fn text(&self, field: &str) -> Option<&str> {
        match self.value(field)? {
            Value::Text(text) => Some(text),
            _ => None,
        }
    }
    /// The texts in a field.
    pub fn texts(&self, field: &str) -> &[String] {
        match self.value(field) {
            Some(Value::Texts(list)) => list,
            _ => &[],
        }
    }
    /// Whether a flag is set.
    pub fn flag(&self, field: &str) -> bool {
        matches!(self.value(field), Some(Value::Flag(true)))
    }
}

/// The parts that a job may use, by id.
#[derive(Clone, Debug, Default)]
pub struct Catalogue {
    parts: BTreeMap<String, Arc<Part>>,
}

impl Catalogue {
    /// A catalogue of these parts; a later part of the same id takes the place of the earlier.
    pub fn new(parts: impl IntoIterator<Item = Part>) -> Self {
        Catalogue { parts: parts.into_iter().map(|p| (p.id.clone(), Arc::new(p))).collect() }
    }
    /// The part with this id.
    pub fn part(&self, id: &str) -> Option<&Arc<Part>> {
        self.parts.get(id)
    }
    /// All parts of a kind, in the order of their ids.
    pub fn of_kind<'a>(&'a self, kind: &'a str) -> impl Iterator<Item = &'a Arc<Part>> {
        self.parts.values().filter(move |p| p.kind.id() == kind)
    }
    /// All parts, in the order of their ids.
    pub fn parts(&self) -> impl Iterator<Item = &Arc<Part>> {
        self.parts.values()
    }
}
