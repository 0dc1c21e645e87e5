//! Spans and assumptions for programs.

use oilway_model::Assumption;
use oilway_solve::Study;
use oilway_text::{Reader, say};
use schemars::JsonSchema;
use serde::Serialize;

use super::quantity::QuantityData;

/// The answer of `span`.
#[derive(Debug, Serialize, JsonSchema)]
pub struct SpanAnswer {
    /// `oilway.span.1`
    pub version: &'static str,
    /// What the unknowns do to the key numbers.
    pub spans: Vec<SpanData>,
    /// Assumptions and ranges, the weightiest first.
    pub assumptions: Vec<AssumptionData>,
}

/// The span of a number.
#[derive(Debug, Serialize, JsonSchema)]
pub struct SpanData {
    /// Its lasting name.
    pub name: &'static str,
    /// Lowest found.
    pub low: QuantityData,
    /// With every entry at its typical value.
    pub typical: QuantityData,
    /// Highest found.
    pub high: QuantityData,
}

/// An assumption or a range.
#[derive(Debug, Serialize, JsonSchema)]
pub struct AssumptionData {
    /// Where in the job.
    pub at: String,
    /// What is assumed.
    pub what: String,
    /// Lower end.
    pub low: QuantityData,
    /// Upper end.
    pub high: QuantityData,
    /// Swing of the deciding margin over the range, as a share of the pressure available.
    pub weight: f64,
    /// The value at which the verdict turns, if it does inside the range.
    pub turns_at: Option<QuantityData>,
}

impl SpanAnswer {
    pub(crate) fn new(study: &Study, reader: &Reader) -> Self {
        let span = |span: &oilway_model::Span| SpanData {
            name: span.name,
            low: QuantityData::new(span.low, reader),
            typical: QuantityData::new(span.typical, reader),
            high: QuantityData::new(span.high, reader),
        };
        SpanAnswer {
            version: "oilway.span.1",
            spans: study.spans.iter().map(span).collect(),
            assumptions: study.assumptions.iter().map(|a| AssumptionData::new(a, reader)).collect(),
        }
    }
}

impl AssumptionData {
    pub(crate) fn new(assumption: &Assumption, reader: &Reader) -> Self {
        AssumptionData {
            at: assumption.at.clone(),
            what: say(&assumption.what, reader),
            low: QuantityData::new(assumption.low, reader),
            high: QuantityData::new(assumption.high, reader),
            weight: if assumption.weight.is_finite() { assumption.weight } else { 1.0 },
            turns_at: assumption.turns_at.map(|value| QuantityData::new(value, reader)),
        }
    }
}
