//! Before and after for programs.

use oilway_text::{Reader, say};
use schemars::JsonSchema;
use serde::Serialize;

use super::check::{FindingData, verdict_word};
use super::quantity::QuantityData;
use crate::show::what_if::{choices, numbers};
use crate::verbs::what_if::Compared;

/// The answer of `what-if`.
#[derive(Debug, Serialize, JsonSchema)]
pub struct WhatIfAnswer {
    /// `oilway.what-if.1`
    pub version: &'static str,
    /// The job as it stands.
    pub before: SideData,
    /// The job with the changes.
    pub after: SideData,
    /// The key numbers of both.
    pub numbers: Vec<PairData>,
    /// Choices that came out differently.
    pub choices: Vec<ChangedData>,
}

/// One side.
#[derive(Debug, Serialize, JsonSchema)]
pub struct SideData {
    /// works, works with care, will not work or cannot tell yet.
    pub verdict: &'static str,
    /// The findings, the gravest first.
    pub findings: Vec<FindingData>,
}

/// A number, before and after.
#[derive(Debug, Serialize, JsonSchema)]
pub struct PairData {
    /// Its lasting name.
    pub name: &'static str,
    /// What it is.
    pub what: String,
    /// Before.
    pub before: Option<QuantityData>,
    /// After.
    pub after: Option<QuantityData>,
}

/// A choice that came out differently.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ChangedData {
    /// Where in the job.
    pub at: String,
    /// Before; empty if there was none.
    pub before: String,
    /// After; empty if there is none.
    pub after: String,
}

impl WhatIfAnswer {
    pub(crate) fn new(compared: &Compared, reader: &Reader) -> Self {
        let side = |worked: &crate::bench::Worked| SideData {
            verdict: verdict_word(worked.answer.verdict),
            findings: worked.findings.iter().map(|finding| FindingData::new(finding, reader)).collect(),
        };
        let pair = |pair: crate::show::what_if::Pair| PairData {
            name: pair.name.0,
            what: say(&pair.name.1, reader),
            before: pair.before.map(|value| QuantityData::new(value, reader)),
            after: pair.after.map(|value| QuantityData::new(value, reader)),
        };
        let change = |change: crate::show::what_if::Changed| ChangedData {
            at: change.at,
            before: change.before,
            after: change.after,
        };
        WhatIfAnswer {
            version: "oilway.what-if.1",
            before: side(&compared.before),
            after: side(&compared.after),
            numbers: numbers(compared).into_iter().map(pair).collect(),
            choices: choices(compared).into_iter().map(change).collect(),
        }
    }
}
