//! Worked jobs, designed and then judged by the checker, which sees only the finished design.

#![allow(clippy::unwrap_used, reason = "a test: what cannot be read must fail it")]

use oilway_catalogue::{house, lubricants};
use oilway_check::{check, compare};
use oilway_model::{Finding, Severity};
use oilway_physics::Ledger;
use oilway_solve::{design, evaluate};
use oilway_store::read_job;
use oilway_text::{Reader, say};

fn said(finding: &Finding) -> String {
    let reader = Reader::default();
    let numbers = finding.evidence.iter().map(|e| format!("{} {:e}", say(&e.what, &reader), e.value.si));
    let numbers: Vec<String> = numbers.collect();
    format!(
        "{:?} {} {}: {} [{}]",
        finding.severity,
        finding.rule,
        finding.at,
        say(&finding.what, &reader),
        numbers.join("; ")
    )
}

/// Designs a job; the findings of the checker, and the differences between its numbers and the designer's.
fn judged(name: &str) -> (Vec<Finding>, Vec<Finding>) {
    let file = oilway_testkit::root().join("jobs").join(name).join("job.toml");
    let text = std::fs::read_to_string(&file).unwrap();
    let (job, mistakes) = read_job("job.toml", &text, house::catalogue(), lubricants::library());
    assert!(mistakes.is_empty(), "{name}: {mistakes:#?}");
    let design = design(&job.unwrap(), house::catalogue()).unwrap();
    let answer = evaluate(&design, &mut Ledger::off());
    (check(&design).findings, compare(&design, &answer))
}

/// No stop, and no number on which designer and checker differ.
fn is_sound(name: &str) {
    let (findings, differences) = judged(name);
    let lines = |all: &[Finding]| all.iter().map(said).collect::<Vec<_>>().join("\n");
    let counts = |f: &&Finding| f.severity == Severity::Stop;
    let stops: Vec<Finding> = findings.iter().filter(counts).cloned().collect();
    assert!(stops.is_empty(), "{name}:\n{}", lines(&stops));
    assert!(differences.is_empty(), "{name}: designer and checker disagree:\n{}", lines(&differences));
}

#[test]
fn the_dairy_is_sound_and_both_find_the_same_numbers() {
    is_sound("dairy");
}

#[test]
fn the_oil_spindle_is_sound_and_both_find_the_same_numbers() {
    is_sound("oil-spindle");
}

#[test]
fn the_quarry_is_sound_and_both_find_the_same_numbers() {
    is_sound("quarry");
}

#[test]
fn a_job_with_gaps_is_designed_with_the_same_numbers_on_both_sides() {
    let (_, differences) = judged("gaps");
    assert!(differences.is_empty(), "{:#?}", differences.iter().map(said).collect::<Vec<_>>());
}
