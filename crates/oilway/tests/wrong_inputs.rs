//! Wrong inputs: what is said, and with which exit code. Nothing panics, nothing is written over, every mistake is told in one run.

mod common;

use std::fs;

use common::{Ran, oilway, oilway_in, words, workplace};

/// A refused run: its exit code, one of these texts beside the answer, and no answer.
fn refused(ran: &Ran, code: i32, says: &str) {
    assert_eq!(ran.code, code, "{}{}", ran.out, ran.err);
    assert!(ran.err.contains(says), "{says:?} is not in\n{}", ran.err);
    assert_eq!(ran.out, "");
}

#[test]
fn a_wrong_command_line_ends_with_two_and_says_how_it_goes() {
    refused(&oilway(&["desing"]), 2, "design");
    refused(&oilway(&["check"]), 2, "JOB");
    refused(&oilway(&["check", "jobs/dairy", "--units", "imperial"]), 2, "metric");
    refused(&oilway(&["parts", "burn"]), 2, "list");
    refused(&oilway(&[]), 2, "Usage");
}

#[test]
fn help_is_no_mistake() {
    for args in [&["--help"][..], &["design", "--help"], &["help", "calc"], &["--version"]] {
        let ran = oilway(args);
        assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{args:?}");
    }
}

#[test]
fn a_file_that_is_not_there_or_is_a_folder_or_no_text_ends_with_seven() {
    refused(&oilway(&["check", "nowhere/job.toml"]), 7, "nowhere/job.toml");
    refused(&oilway(&["check", "crates"]), 7, "folder");
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("latin.toml"), b"name = \"M\xfchle\"").unwrap();
    refused(&oilway_in(folder.path(), &["check", "latin.toml"]), 7, "latin.toml");
}

#[test]
fn a_file_that_is_too_large_is_refused_and_not_read() {
    let folder = tempfile::tempdir().unwrap();
    fs::File::create(folder.path().join("huge.toml")).unwrap().set_len(1 << 30).unwrap();
    refused(&oilway_in(folder.path(), &["check", "huge.toml"]), 7, "huge.toml");
}

#[test]
fn an_empty_file_is_told_what_its_first_line_must_be() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("empty.toml"), "").unwrap();
    refused(&oilway_in(folder.path(), &["check", "empty.toml"]), 6, "job 1");
}

#[test]
fn every_mistake_of_a_job_is_told_in_one_run_with_its_line_and_its_cure() {
    let folder = workplace();
    let path = folder.path().join("jobs/dairy/job.toml");
    let text = fs::read_to_string(&path).unwrap();
    let bad = text.replacen("\"5.5 bar\"", "\"5.5\"", 1).replacen("\"hot spray\"", "\"hot spry\"", 1);
    assert_ne!(text, bad);
    fs::write(&path, bad).unwrap();
    let ran = oilway_in(folder.path(), &["check", "jobs/dairy"]);
    refused(&ran, 6, "2 mistakes");
    insta::assert_snapshot!(ran.err);
}

#[test]
fn thousands_of_mistakes_are_counted_and_the_first_are_told() {
    let folder = tempfile::tempdir().unwrap();
    let mut text = "oilway = \"job 1\"\nname = \"many\"\n".to_owned();
    (0..3000).for_each(|number| {
        text.push_str(&format!("[[point]]\nname = \"p{number}\"\nkind = \"no such kind\"\n"))
    });
    fs::write(folder.path().join("many.toml"), text).unwrap();
    let ran = oilway_in(folder.path(), &["check", "many.toml"]);
    refused(&ran, 6, "more");
    assert!(ran.err.len() < 60_000, "{}", ran.err.len());
}

#[test]
fn values_of_another_dimension_or_without_a_unit_are_refused_all_at_once() {
    let line = "calc pipe-flow/start-pressure bore='9 bar' length=40 yield_stress='900 Pa'";
    let line = words(line);
    let ran = oilway(&line.iter().map(String::as_str).collect::<Vec<_>>());
    refused(&ran, 6, "bore");
    assert!(ran.err.contains("length"), "{}", ran.err);
    refused(&oilway(&["calc", "pipe-flow/start-pressure", "bore=9 mm"]), 6, "yield_stress");
    refused(
        &oilway(&["calc", "pipe-flow/start-pressure", "bore=-9 mm", "length=1 m", "yield_stress=1 Pa"]),
        6,
        "more than zero",
    );
    refused(
        &oilway(&["calc", "pipe-flow/start-pressure", "bore=?", "length=1 m", "yield_stress=1 Pa"]),
        6,
        "not known",
    );
    refused(&oilway(&["calc", "pipe-flow/start-pressure", "bore=9 mm", "bore=8 mm"]), 6, "twice");
}

#[test]
fn metric_and_us_units_may_be_mixed_and_give_the_same_answer() {
    let metric = oilway(&["calc", "pipe-flow/content", "bore=12.7 mm", "length=3.048 m", "--units", "us"]);
    let us = oilway(&["calc", "pipe-flow/content", "bore=1/2 in", "length=10 ft", "--units", "us"]);
    assert_eq!((metric.code, us.code), (0, 0));
    assert_eq!(metric.out, us.out);
}

#[test]
fn bad_cells_of_a_file_of_cases_are_named_by_row() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("cases.csv");
    fs::write(&path, "bore [mm],length,yield_stress\n9.4,40 m,900 Pa\n8,40,900 Pa\n8,40 m,900 bare\n")
        .unwrap();
    let ran = oilway_in(folder.path(), &["calc", "pipe-flow/start-pressure", "--cases", "cases.csv"]);
    refused(&ran, 6, "Row 3");
    assert!(ran.err.contains("Row 4"), "{}", ran.err);
    fs::write(&path, "bore [mm],length,yield_stress\n9.4,40 m,900 Pa\n").unwrap();
    let ran = oilway_in(folder.path(), &["calc", "pipe-flow/start-pressure", "--cases", "cases.csv"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    // 4 · 900 Pa · 40 m / 9.4 mm, by hand.
    insta::assert_snapshot!(ran.out, @r"
    bore [mm],length,yield_stress,result,lowest,highest
    9.4,40 m,900 Pa,153.19148936170214 bar,153.19148936170214 bar,153.19148936170214 bar
    ");
}

#[test]
fn nothing_is_written_over() {
    let folder = workplace();
    let there = folder.path().join("survey.xlsx");
    fs::write(&there, "mine").unwrap();
    refused(&oilway_in(folder.path(), &["survey", "write", "survey.xlsx"]), 7, "is there already");
    assert_eq!(fs::read(&there).unwrap(), b"mine");
    fs::create_dir(folder.path().join("out")).unwrap();
    fs::write(folder.path().join("out/job.toml"), "mine").unwrap();
    refused(&oilway_in(folder.path(), &["demo"]), 7, "job.toml");
}

#[test]
fn a_parallel_single_line_is_refused_with_the_temperature_at_which_it_would_serve() {
    let folder = workplace();
    let path = folder.path().join("jobs/dairy/job.toml");
    let text = fs::read_to_string(&path).unwrap();
    fs::write(&path, text.replacen("principle = \"open\"", "principle = \"parallel\"", 1)).unwrap();
    for verb in ["design", "check", "ladder", "span", "pin"] {
        let ran = oilway_in(folder.path(), &[verb, "jobs/dairy"]);
        // The valves of the house range recharge below 16 bar; what remains and what would cure it follow from the design.
        refused(&ran, 4, "does not recharge");
        let said = ran.err.split_whitespace().collect::<Vec<_>>().join(" ");
        for says in ["16 bar", "remain after venting", "colder than", "°C"] {
            assert!(said.contains(says), "{verb}: {says:?} is not in\n{said}");
        }
    }
    assert!(!folder.path().join("jobs/dairy/job.lock").exists());
}

#[test]
fn names_that_move_the_cursor_reach_no_terminal() {
    let folder = workplace();
    let path = folder.path().join("jobs/dairy/job.toml");
    let text = fs::read_to_string(&path).unwrap();
    fs::write(&path, text.replacen("Crate washer and stacking cell", "\\u001B[2JCrate \\u202Ewasher", 1))
        .unwrap();
    let ran = oilway_in(folder.path(), &["design", "jobs/dairy"]);
    assert!(!ran.out.contains('\u{1b}') && !ran.out.contains('\u{202e}'), "{}", ran.out);
    assert!(ran.out.contains("Crate"), "{}{}", ran.out, ran.err);
}
