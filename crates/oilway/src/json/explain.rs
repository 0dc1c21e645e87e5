//! Rules, cautions, formulas and assumptions for programs.

use oilway_check::Rule;
use oilway_documents::cautions::Caution;
use oilway_physics::Formula;
use oilway_store::Assumption;
use oilway_text::{Message, Reader, say};
use oilway_units::AnyQuantity;
use schemars::JsonSchema;
use serde::Serialize;

use super::calc::{FormulaData, SourceData};
use super::quantity::QuantityData;

/// The answer of `explain`: all rules, or one thing in full.
#[derive(Debug, Default, Serialize, JsonSchema)]
pub struct ExplainAnswer {
    /// `oilway.explain.1`
    pub version: &'static str,
    /// The rules that were asked for.
    pub rules: Vec<RuleData>,
    /// The caution that was asked for.
    pub caution: Option<CautionData>,
    /// The formula that was asked for.
    pub formula: Option<FormulaData>,
    /// The assumption that was asked for.
    pub assumption: Option<TakenData>,
}

/// A rule of the checker.
#[derive(Debug, Serialize, JsonSchema)]
pub struct RuleData {
    /// Its lasting id.
    pub id: &'static str,
    /// What is wrong, in a line.
    pub title: &'static str,
    /// What it finds.
    pub finds: &'static str,
    /// What happens where nobody heeds it.
    pub why: &'static str,
    /// A worked example.
    pub example: &'static str,
    /// Where it comes from.
    pub source: SourceData,
}

/// A caution.
#[derive(Debug, Serialize, JsonSchema)]
pub struct CautionData {
    /// Its lasting id.
    pub id: String,
    /// What can happen.
    pub hazard: String,
    /// What to do and what to leave.
    pub text: String,
    /// What brings it up.
    pub trigger: String,
    /// The standard, law or practice behind it.
    pub rule: String,
    /// How far that source can be trusted.
    pub standing: String,
}

/// What is taken where nobody said.
#[derive(Debug, Serialize, JsonSchema)]
pub struct TakenData {
    /// Its lasting key.
    pub key: &'static str,
    /// What it is.
    pub what: String,
    /// Lowest value.
    pub low: QuantityData,
    /// The value taken.
    pub typical: QuantityData,
    /// Highest value.
    pub high: QuantityData,
    /// Where it comes from.
    pub source: SourceData,
}

impl ExplainAnswer {
    fn new() -> Self {
        ExplainAnswer { version: "oilway.explain.1", ..ExplainAnswer::default() }
    }
    pub(crate) fn list() -> Self {
        let rules = oilway_check::rules().iter().map(|rule| RuleData::new(*rule)).collect();
        ExplainAnswer { rules, ..ExplainAnswer::new() }
    }
    pub(crate) fn rule(rule: &dyn Rule) -> Self {
        ExplainAnswer { rules: vec![RuleData::new(rule)], ..ExplainAnswer::new() }
    }
    pub(crate) fn caution(caution: &Caution) -> Self {
        ExplainAnswer { caution: Some(CautionData::from(caution)), ..ExplainAnswer::new() }
    }
    pub(crate) fn formula(formula: &'static Formula) -> Self {
        ExplainAnswer { formula: Some(formula.into()), ..ExplainAnswer::new() }
    }
    pub(crate) fn assumption(assumption: &Assumption, reader: &Reader) -> Self {
        let of = |si| QuantityData::new(AnyQuantity::new(assumption.dimension, si), reader);
        let taken = TakenData {
            key: assumption.key,
            what: say(&Message::new(assumption.key), reader),
            low: of(assumption.low),
            typical: of(assumption.typical),
            high: of(assumption.high),
            source: (&assumption.source).into(),
        };
        ExplainAnswer { assumption: Some(taken), ..ExplainAnswer::new() }
    }
}

impl RuleData {
    fn new(rule: &dyn Rule) -> Self {
        RuleData {
            id: rule.id(),
            title: rule.title(),
            finds: rule.finds(),
            why: rule.why_it_matters(),
            example: rule.example(),
            source: (&rule.source()).into(),
        }
    }
}

impl From<&Caution> for CautionData {
    fn from(caution: &Caution) -> Self {
        let Caution { id, hazard, text, trigger, rule, standing, .. } = caution.clone();
        CautionData { id, hazard, text, trigger, rule, standing }
    }
}
