//! Mistakes in what stands on the command line itself: all told in one run, each at the argument that makes it.

mod common;

use common::{Ran, oilway, oilway_in};

/// What a refused run says.
fn refused(args: &[&str], code: i32) -> String {
    let Ran { code: found, out, err } = oilway(args);
    assert_eq!((found, out.as_str()), (code, ""), "{err}");
    err
}

#[test]
fn every_wrong_input_of_a_formula_is_told_in_one_run() {
    let said = refused(&["calc", "pipe-flow/start-pressure", "bore=-9 mm", "length=40", "colour=red"], 6);
    for part in ["bore cannot be", "length:", "no input colour", "yield_stress is missing"] {
        assert!(said.contains(part), "{part:?} is not in\n{said}");
    }
    assert!(!said.contains("bore is missing") && !said.contains("length is missing"), "{said}");
    // A misspelt input is not missing as well.
    let said =
        refused(&["calc", "pipe-flow/start-pressure", "bore=9 mm", "lenght=40 m", "yield_stress=1 Pa"], 6);
    assert!(said.contains("Did you mean length?") && !said.contains("missing"), "{said}");
}

#[test]
fn every_wrong_cell_of_a_row_is_told_in_one_run() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("cases.csv"), "bore [mm],length\n-9,40\n").unwrap();
    let ran = oilway_in(folder.path(), &["calc", "pipe-flow/start-pressure", "--cases", "cases.csv"]);
    for part in ["Row 2: bore cannot be", "Row 2: length:", "Row 2: yield_stress is missing"] {
        assert!(ran.err.contains(part), "{part:?} is not in\n{}", ran.err);
    }
    let ran = oilway_in(
        folder.path(),
        &["calc", "pipe-flow/start-pressure", "yield_stress=9", "--cases", "cases.csv"],
    );
    assert!(ran.code == 6 && ran.err.contains("yield_stress:") && !ran.err.contains("Row"), "{}", ran.err);
}

#[test]
fn a_mistake_in_a_change_is_told_at_the_change() {
    let said = refused(
        &["what-if", "jobs/dairy", "air.lowset=5 bar", "package.pump=99999999", "pause", "nowhere=1"],
        6,
    );
    for part in [
        "what-if:1:1",
        "air.lowset=5 bar",
        "what-if:2:14",
        "package.pump=99999999",
        "what-if:3:1",
        "what-if:4:1",
        "4 mistakes",
    ] {
        assert!(said.contains(part), "{part:?} is not in\n{said}");
    }
    assert!(!said.contains("job.toml"), "{said}");
}

#[test]
fn the_id_of_a_part_needs_no_quotes() {
    let pump = oilway_catalogue::house::catalogue().of_kind("pump").next().unwrap().id.clone();
    let ran = oilway(&["what-if", "jobs/dairy", &format!("package.pump={pump}")]);
    assert!([0, 3, 4].contains(&ran.code), "{}", ran.err);
}

#[test]
fn a_folder_without_a_job_is_told_so() {
    let said = refused(&["design", "crates"], 7);
    assert!(said.contains("The folder crates holds no job.toml."), "{said}");
}
