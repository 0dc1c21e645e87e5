//! The report of the checker: its findings, the gravest first, and the verdict in one word.

use oilway_model::{Finding, Severity, Verdict};

/// What the checker thinks of a design.
#[derive(Clone, Debug)]
pub struct Report {
    /// The findings, the gravest first, and among equals in the order of the rules.
    pub findings: Vec<Finding>,
    /// The verdict that follows.
    pub verdict: Verdict,
}

impl Report {
    /// A report of these findings.
    pub fn of(mut findings: Vec<Finding>) -> Self {
        findings.sort_by_key(|finding| finding.severity);
        let verdict = verdict(&findings);
        Report { findings, verdict }
    }
    /// The findings of one rule.
    pub fn of_rule<'a>(&'a self, rule: &'a str) -> impl Iterator<Item = &'a Finding> {
        self.findings.iter().filter(move |finding| finding.rule == rule)
    }
}

/// The verdict that follows from findings: a stop decides, then a number that nobody knows, then a caution.
pub fn verdict(findings: &[Finding]) -> Verdict {
    let any = |severity| findings.iter().any(|finding| finding.severity == severity);
    let leaves_open = |finding: &Finding| crate::rule(finding.rule).is_some_and(|rule| rule.leaves_open());
    if any(Severity::Stop) {
        Verdict::WillNotWork
    } else if findings.iter().any(leaves_open) {
        Verdict::CannotTellYet
    } else if any(Severity::Caution) {
        Verdict::WorksWithCare
    } else {
        Verdict::Works
    }
}
