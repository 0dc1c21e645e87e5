//! Finding and reading the files of check values.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use serde::Deserialize;

use crate::{Check, sources};

/// Folders of `reference/` that hold other things than files of check values.
const OTHER_FOLDERS: [&str; 2] = ["independent", "metering"];

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    rows: usize,
    check: Vec<Check>,
}

/// The top folder of the project.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// The check values of one file under `reference/`: `published("pipe-flow/bingham")`, with or without `.toml`.
///
/// # Panics
/// If the file is missing or does not read, if it does not hold as many rows as its `rows` says, if two rows have one
/// name, if a source is not in `data/sources.toml`, or if a row neither expects anything nor refuses.
pub fn published(file: &str) -> Vec<Check> {
    let name = format!("{}.toml", file.trim_end_matches(".toml"));
    let path = root().join("reference").join(&name);
    match fs::read_to_string(&path) {
        Ok(text) => parse(&format!("reference/{name}"), &text),
        Err(error) => panic!("reference/{name}: {error}; `reference_files()` lists what there is"),
    }
}

/// The names of all files of check values, `family/formula`, sorted.
///
/// # Panics
/// If the folder `reference/` cannot be listed.
pub fn reference_files() -> Vec<String> {
    let mut names = Vec::new();
    for family in entries(&root().join("reference")) {
        let family_name = last(&family);
        if !family.is_dir() || family_name.starts_with('.') || OTHER_FOLDERS.contains(&family_name.as_str()) {
            continue;
        }
        for file in entries(&family) {
            if let Some(stem) = last(&file).strip_suffix(".toml") {
                names.push(format!("{family_name}/{stem}"));
            }
        }
    }
    names.sort();
    names
}

/// Every check value of every file, in the order of the file names.
///
/// # Panics
/// As [`published`].
pub fn every_check() -> Vec<Check> {
    reference_files().iter().flat_map(|file| published(file)).collect()
}

fn entries(folder: &Path) -> Vec<PathBuf> {
    match fs::read_dir(folder) {
        Ok(list) => list.flatten().map(|entry| entry.path()).collect(),
        Err(error) => panic!("{}: {error}", folder.display()),
    }
}

fn last(path: &Path) -> String {
    path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default()
}

/// Reads the text of one file and applies the guards.
pub(crate) fn parse(name: &str, text: &str) -> Vec<Check> {
    let file: File = match toml::from_str(text) {
        Ok(file) => file,
        Err(error) => panic!("{name}: {error}"),
    };
    assert!(
        file.rows == file.check.len(),
        "{name}: says rows = {}, holds {}: a row was lost or added",
        file.rows,
        file.check.len()
    );
    let known = sources();
    let mut names = BTreeSet::new();
    let mut checks = file.check;
    for check in &mut checks {
        check.file = name.to_owned();
        assert!(names.insert(check.name.clone()), "{check}: two rows have this name");
        assert!(known.contains_key(&check.source), "{check}: the source is not in data/sources.toml");
        assert!(
            check.refused != check.expected_symbols().next().is_some(),
            "{check}: a row either expects something or is refused"
        );
        assert!(
            check.tolerance.is_finite() && check.tolerance >= 0.0,
            "{check}: the tolerance is not a number"
        );
        assert!(check.tolerance < 0.5, "{check}: half the value is no check");
    }
    checks
}

#[cfg(test)]
mod tests {
    use super::*;

    const GOOD: &str = r#"
        rows = 1
        [[check]]
        name = "one"
        formula = ""
        source = "own-derivation"
        place = "here"
        status = "own"
        given = { bore = "8 mm" }
        expect = { result = "1 L" }
        tolerance = 0.001
        because = "arithmetic"
    "#;

    #[test]
    fn a_file_in_order_is_read() {
        assert_eq!(parse("good", GOOD).len(), 1);
    }

    #[test]
    #[should_panic(expected = "a row was lost or added")]
    fn a_lost_row_is_noticed() {
        parse("bad", &GOOD.replace("rows = 1", "rows = 2"));
    }

    #[test]
    #[should_panic(expected = "not in data/sources.toml")]
    fn an_unknown_source_is_noticed() {
        parse("bad", &GOOD.replace("own-derivation", "hearsay"));
    }

    #[test]
    #[should_panic(expected = "two rows have this name")]
    fn two_rows_of_one_name_are_noticed() {
        let second = GOOD.replace("rows = 1", "");
        parse("bad", &(GOOD.replace("rows = 1", "rows = 2") + &second));
    }

    #[test]
    #[should_panic(expected = "either expects something or is refused")]
    fn a_row_that_expects_nothing_is_noticed() {
        parse("bad", &GOOD.replace("expect = { result = \"1 L\" }", ""));
    }

    #[test]
    #[should_panic(expected = "unknown variant")]
    fn an_unknown_standing_is_noticed() {
        parse("bad", &GOOD.replace("status = \"own\"", "status = \"sure\""));
    }

    #[test]
    #[should_panic(expected = "half the value is no check")]
    fn a_tolerance_that_lets_everything_pass_is_noticed() {
        parse("bad", &GOOD.replace("0.001", "0.9"));
    }
}
