//! Laws that hold for whatever stands in a file: nothing panics, mistakes lie inside the text, and a job comes back from its own text.

mod common;

use common::{SMALL, read};
use oilway_catalogue::{house, lubricants};
use oilway_store::{
    Lock, apply_lock, read_catalogue_sheets, read_job, read_lock, read_metering, read_survey, write_job,
};
use proptest::prelude::*;

const DAIRY: &str = include_str!("../../../jobs/dairy/job.toml");
const GAPS: &str = include_str!("../../../jobs/gaps/job.toml");

/// The text of a job with some stretches cut out, doubled, or replaced by something else.
fn mutated() -> impl Strategy<Value = String> {
    let text = prop::sample::select(vec![SMALL, DAIRY, GAPS]);
    let edit = (
        any::<prop::sample::Index>(),
        0usize..40,
        "\\PC{0,12}|[\\[\\]{}=\",.\n0-9a-z]{0,12}|nan|-1|1e999|unknown",
    );
    (text, prop::collection::vec(edit, 1..4)).prop_map(|(text, edits)| {
        let mut characters: Vec<char> = text.chars().collect();
        for (at, length, with) in edits {
            let start = at.index(characters.len().max(1)).min(characters.len());
            let end = (start + length).min(characters.len());
            characters.splice(start..end, with.chars());
        }
        characters.into_iter().collect()
    })
}

fn check(text: &str) -> Result<(), TestCaseError> {
    let (job, mistakes) = read(text);
    prop_assert_eq!(job.is_some(), mistakes.is_empty());
    for mistake in &mistakes {
        prop_assert!(mistake.at.start <= mistake.at.end && mistake.at.end <= text.len(), "{:?}", mistake);
        if let Some((at, _)) = &mistake.fix {
            prop_assert!(text.get(at.clone()).is_some(), "{:?}", mistake);
        }
    }
    if let Some(job) = job {
        let written = write_job(&job);
        let (again, wrong) = read(&written);
        prop_assert!(wrong.is_empty(), "{}\n{}", written, common::told(&written, &wrong));
        prop_assert_eq!(again.map(|job| write_job(&job)), Some(written));
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn a_mutated_job_gives_a_job_that_comes_back_or_mistakes_inside_its_text(text in mutated()) {
        check(&text)?;
    }

    #[test]
    fn no_text_makes_a_reader_panic(text in "\\PC{0,300}") {
        check(&text)?;
        let (lock, _) = read_lock("job.lock", &text);
        prop_assert!(lock.choices.is_empty() || text.contains("lock 1"));
        read_metering(&text);
        read_survey("points.csv", text.as_bytes(), house::catalogue(), lubricants::library());
        read_catalogue_sheets("parts.csv", text.as_bytes(), house::catalogue());
    }

    #[test]
    fn no_bytes_make_the_reader_of_workbooks_panic(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        let mut workbook = b"PK\x03\x04".to_vec();
        workbook.extend(bytes);
        let survey = read_survey("survey.xlsx", &workbook, house::catalogue(), lubricants::library());
        prop_assert!(survey.job_text.is_none() && !survey.mistakes.is_empty());
    }

    #[test]
    fn no_choice_of_a_lock_makes_its_reader_panic(at in "(package|divider|line|pause|principle)?[a-z. 0-9]{0,20}", chosen in "\\PC{0,30}") {
        let (job, _) = read_job("job.toml", SMALL, house::catalogue(), lubricants::library());
        let mut job = job.unwrap();
        let pinned = oilway_model::Pinned { at, chosen };
        let lock = Lock { file: "job.lock".into(), choices: vec![(pinned, 0..0)] };
        prop_assert!(apply_lock(&mut job, &lock, &[], house::catalogue()).len() <= 1);
    }
}

#[test]
fn very_deep_and_very_long_files_are_refused_without_harm() {
    let deep = format!("oilway = \"job 1\"\nx = {}", "[".repeat(100_000));
    assert!(!read(&deep).1.is_empty());
    let long = format!("{SMALL}# {}", "x".repeat(9 * 1024 * 1024));
    assert!(!read(&long).1.is_empty());
}
