//! The checker's judgement for programs.

use oilway_model::{Finding, Severity, Verdict};
use oilway_text::{Reader, say};
use schemars::JsonSchema;
use serde::Serialize;

use super::calc::SourceData;
use super::quantity::QuantityData;
use crate::bench::Worked;

/// The answer of `check`.
#[derive(Debug, Serialize, JsonSchema)]
pub struct CheckAnswer {
    /// `oilway.check.1`
    pub version: &'static str,
    /// The job's name.
    pub job: String,
    /// works, works with care, will not work or cannot tell yet.
    pub verdict: &'static str,
    /// The findings, the gravest first.
    pub findings: Vec<FindingData>,
}

/// A finding.
#[derive(Debug, Serialize, JsonSchema)]
pub struct FindingData {
    /// The rule by its lasting id.
    pub rule: &'static str,
    /// stop, caution or note.
    pub severity: &'static str,
    /// The thing that it speaks of, by name.
    pub at: String,
    /// What is found.
    pub what: String,
    /// What to do.
    pub cure: String,
    /// What would turn it.
    pub turns: Option<String>,
    /// The numbers behind it.
    pub evidence: Vec<EvidenceData>,
    /// Where the rule comes from.
    pub source: SourceData,
    /// Ids of the cautions that belong beside it.
    pub cautions: Vec<&'static str>,
}

/// A number behind a finding.
#[derive(Debug, Serialize, JsonSchema)]
pub struct EvidenceData {
    /// What it is.
    pub what: String,
    /// The number.
    pub value: QuantityData,
}

impl CheckAnswer {
    pub(crate) fn new(worked: &Worked, reader: &Reader) -> Self {
        CheckAnswer {
            version: "oilway.check.1",
            job: worked.design.name.clone(),
            verdict: verdict_word(worked.answer.verdict),
            findings: worked.findings.iter().map(|finding| FindingData::new(finding, reader)).collect(),
        }
    }
}

impl FindingData {
    pub(crate) fn new(finding: &Finding, reader: &Reader) -> Self {
        let evidence = |evidence: &oilway_model::Evidence| EvidenceData {
            what: say(&evidence.what, reader),
            value: QuantityData::new(evidence.value, reader),
        };
        FindingData {
            rule: finding.rule,
            severity: match finding.severity {
                Severity::Stop => "stop",
                Severity::Caution => "caution",
                Severity::Note => "note",
            },
            at: finding.at.clone(),
            what: say(&finding.what, reader),
            cure: say(&finding.cure, reader),
            turns: finding.turns.as_ref().map(|turns| say(turns, reader)),
            evidence: finding.evidence.iter().map(evidence).collect(),
            source: (&finding.source).into(),
            cautions: finding.cautions.clone(),
        }
    }
}

/// The word of a verdict.
pub(crate) fn verdict_word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Works => "works",
        Verdict::WorksWithCare => "works with care",
        Verdict::WillNotWork => "will not work",
        Verdict::CannotTellYet => "cannot tell yet",
    }
}
