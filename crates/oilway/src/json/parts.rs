//! Parts for programs.

use oilway_catalogue::kinds::KINDS;
use oilway_catalogue::{Catalogue, Part, Port, Value};
use oilway_text::{Message, Reader, say};
use schemars::JsonSchema;
use serde::Serialize;

use super::quantity::QuantityData;

/// The answer of `parts`.
#[derive(Debug, Default, Serialize, JsonSchema)]
pub struct PartsAnswer {
    /// `oilway.parts.1`
    pub version: &'static str,
    /// The kinds, where they were asked for.
    pub kinds: Vec<KindData>,
    /// The parts, where they were asked for.
    pub parts: Vec<PartData>,
    /// What was done, where something was.
    pub says: Option<String>,
}

/// A kind of part.
#[derive(Debug, Serialize, JsonSchema)]
pub struct KindData {
    /// Its lasting word.
    pub id: &'static str,
    /// What it is.
    pub title: &'static str,
    /// How many parts of it there are.
    pub count: usize,
}

/// A part.
#[derive(Debug, Serialize, JsonSchema)]
pub struct PartData {
    /// Its identity.
    pub id: String,
    /// Its kind.
    pub kind: &'static str,
    /// A sentence that describes it.
    pub description: String,
    /// What is known of it.
    pub fields: Vec<FieldData>,
    /// Its ports.
    pub ports: Vec<PortData>,
    /// What it costs, if the catalogue says.
    pub price: Option<PriceData>,
    /// Where the data come from.
    pub source: String,
}

/// A price.
#[derive(Debug, Serialize, JsonSchema)]
pub struct PriceData {
    /// The amount in hundredths of the currency.
    pub hundredths: i64,
    /// ISO 4217 code of the currency.
    pub currency: String,
}

/// A field of a part.
#[derive(Debug, Serialize, JsonSchema)]
pub struct FieldData {
    /// Its name.
    pub name: &'static str,
    /// Quantities in it.
    pub quantities: Vec<QuantityData>,
    /// Words in it; `yes` or `no` for a flag.
    pub words: Vec<String>,
}

/// A port of a part.
#[derive(Debug, Serialize, JsonSchema)]
pub struct PortData {
    /// Its mark.
    pub mark: String,
    /// What it is for.
    pub role: &'static str,
    /// Its thread, or `tube` and the diameter.
    pub thread: String,
    /// Male or female.
    pub sex: &'static str,
    /// What is in it when the part arrives; empty if nothing.
    pub shipped_with: String,
}

impl PartsAnswer {
    fn new() -> Self {
        PartsAnswer { version: "oilway.parts.1", ..PartsAnswer::default() }
    }
    pub(crate) fn kinds(catalogue: &Catalogue) -> Self {
        let kind = |kind: &&'static dyn oilway_catalogue::Kind| KindData {
            id: kind.id(),
            title: kind.title(),
            count: catalogue.of_kind(kind.id()).count(),
        };
        PartsAnswer { kinds: KINDS.iter().map(kind).collect(), ..PartsAnswer::new() }
    }
    pub(crate) fn parts(parts: &[&Part], reader: &Reader) -> Self {
        PartsAnswer {
            parts: parts.iter().map(|part| PartData::new(part, reader)).collect(),
            ..PartsAnswer::new()
        }
    }
    pub(crate) fn said(says: &Message, reader: &Reader) -> Self {
        PartsAnswer { says: Some(say(says, reader)), ..PartsAnswer::new() }
    }
}

impl PartData {
    pub(crate) fn new(part: &Part, reader: &Reader) -> Self {
        let fields = part.kind.fields().iter().zip(&part.values);
        PartData {
            id: part.id.clone(),
            kind: part.kind.id(),
            description: part.description.clone(),
            fields: fields
                .filter_map(|(field, value)| Some(FieldData::new(field.name, value.as_ref()?, reader)))
                .collect(),
            ports: part.ports.iter().map(PortData::from).collect(),
            price: part
                .price
                .as_ref()
                .map(|p| PriceData { hundredths: p.hundredths, currency: p.currency.clone() }),
            source: part.source.clone(),
        }
    }
}

impl FieldData {
    fn new(name: &'static str, value: &Value, reader: &Reader) -> Self {
        let said = |quantity: &oilway_units::AnyQuantity| QuantityData::new(*quantity, reader);
        let (quantities, words) = match value {
            Value::Quantity(quantity) => (vec![said(quantity)], Vec::new()),
            Value::Quantities(list) => (list.iter().map(said).collect(), Vec::new()),
            Value::Word(word) => (Vec::new(), vec![(*word).to_owned()]),
            Value::Text(text) => (Vec::new(), vec![text.clone()]),
            Value::Texts(list) => (Vec::new(), list.clone()),
            Value::Flag(flag) => (Vec::new(), vec![if *flag { "yes" } else { "no" }.to_owned()]),
        };
        FieldData { name, quantities, words }
    }
}

impl From<&Port> for PortData {
    fn from(port: &Port) -> Self {
        PortData {
            mark: port.mark.clone(),
            role: port.role.word(),
            thread: port.thread.clone(),
            sex: port.sex.word(),
            shipped_with: port.shipped_with.clone(),
        }
    }
}
