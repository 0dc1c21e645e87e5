//! [`Draft`]: a finding while a rule writes it.

use oilway_model::{Evidence, Finding, Severity};
use oilway_text::Message;
use oilway_units::AnyQuantity;

use crate::Rule;

/// A finding in the making. What is not said stays empty.
pub(crate) struct Draft(Finding);

impl Draft {
    fn new(severity: Severity, rule: &dyn Rule, at: impl Into<String>, what: Message, cure: Message) -> Self {
        Draft(Finding {
            rule: rule.id(),
            severity,
            at: at.into(),
            what,
            cure,
            turns: None,
            evidence: Vec::new(),
            source: rule.source(),
            cautions: Vec::new(),
        })
    }
    /// Must not be built or started like this.
    pub(crate) fn stop(rule: &dyn Rule, at: impl Into<String>, what: Message, cure: Message) -> Self {
        Draft::new(Severity::Stop, rule, at, what, cure)
    }
    /// Works, but somebody must know or watch something.
    pub(crate) fn caution(rule: &dyn Rule, at: impl Into<String>, what: Message, cure: Message) -> Self {
        Draft::new(Severity::Caution, rule, at, what, cure)
    }
    /// Good to know.
    pub(crate) fn note(rule: &dyn Rule, at: impl Into<String>, what: Message, cure: Message) -> Self {
        Draft::new(Severity::Note, rule, at, what, cure)
    }
    /// What would turn the verdict.
    pub(crate) fn turns(mut self, turns: Message) -> Self {
        self.0.turns = Some(turns);
        self
    }
    /// A number behind it.
    pub(crate) fn number(mut self, what: Message, value: impl Into<AnyQuantity>) -> Self {
        self.0.evidence.push(Evidence { what, value: value.into() });
        self
    }
    /// The cautions that belong beside it.
    pub(crate) fn cautions(mut self, ids: &[&'static str]) -> Self {
        self.0.cautions = ids.to_vec();
        self
    }
    /// The finding.
    pub(crate) fn done(self) -> Finding {
        self.0
    }
    /// The only finding of a rule.
    pub(crate) fn alone(self) -> Vec<Finding> {
        vec![self.0]
    }
}
