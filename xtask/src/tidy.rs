//! The house held to its plan: who may import whom, a code map that names every crate, no path of somebody's machine, no open
//! ends, and a README whose commands are those that the checks run.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use crate::{Outcome, root};

/// Which crates of the house each crate may import, outside its tests.
const ALLOWED: &[(&str, &[&str])] = &[
    ("oilway-units", &[]),
    ("oilway-text", &["oilway-units"]),
    ("oilway-physics", &["oilway-units", "oilway-text"]),
    ("oilway-catalogue", &["oilway-units", "oilway-text", "oilway-physics"]),
    ("oilway-model", &["oilway-units", "oilway-text", "oilway-physics", "oilway-catalogue"]),
    ("oilway-solve", MIDDLE),
    ("oilway-check", MIDDLE),
    ("oilway-documents", MIDDLE),
    ("oilway-store", MIDDLE),
    ("oilway-testkit", &["oilway-units"]),
    ("oilway", ALL),
    ("xtask", ALL_AND_BINARY),
];
const MIDDLE: &[&str] =
    &["oilway-units", "oilway-text", "oilway-physics", "oilway-catalogue", "oilway-model"];
const ALL: &[&str] = &[
    "oilway-units",
    "oilway-text",
    "oilway-physics",
    "oilway-catalogue",
    "oilway-model",
    "oilway-solve",
    "oilway-check",
    "oilway-documents",
    "oilway-store",
];
const ALL_AND_BINARY: &[&str] = &[
    "oilway-units",
    "oilway-text",
    "oilway-physics",
    "oilway-catalogue",
    "oilway-model",
    "oilway-solve",
    "oilway-check",
    "oilway-documents",
    "oilway-store",
    "oilway-testkit",
    "oilway",
];

/// Crates that may turn domain types into files.
const SERIALIZERS: [&str; 3] = ["oilway-store", "oilway", "oilway-testkit"];

/// The test command of the README, which the checks run word for word.
const TEST_COMMAND: &str = "cargo test --workspace --quiet";

/// Marks of an open end, and paths of somebody's own machine; put together so that this file holds none.
const FORBIDDEN: &[(&str, &str)] =
    &[("TO", "DO"), ("FIX", "ME"), ("/ho", "me/"), ("/tm", "p/"), ("/ro", "ot/"), ("C:\\Us", "ers")];

/// What is text of ours.
const ENDINGS: [&str; 7] = ["rs", "toml", "md", "ftl", "csv", "py", "sh"];

pub(crate) fn run(_: &[String]) -> Outcome {
    let found: Vec<String> =
        [imports(), serialization(), code_map(), words(), commands()].into_iter().flatten().collect();
    if found.is_empty() { Ok("tidy".to_owned()) } else { Err(found.join("\n")) }
}

/// The manifests of all crates, by name.
fn manifests() -> BTreeMap<String, toml::Table> {
    let mut folders = vec![root().join("xtask")];
    folders.extend(
        fs::read_dir(root().join("crates")).into_iter().flatten().flatten().map(|entry| entry.path()),
    );
    let read = |folder: &PathBuf| {
        let manifest: toml::Table = fs::read_to_string(folder.join("Cargo.toml")).ok()?.parse().ok()?;
        let name = manifest.get("package")?.get("name")?.as_str()?.to_owned();
        Some((name, manifest))
    };
    folders.iter().filter_map(read).collect()
}

fn dependencies(manifest: &toml::Table) -> Vec<&str> {
    let table = manifest.get("dependencies").and_then(toml::Value::as_table);
    table.into_iter().flat_map(|table| table.keys().map(String::as_str)).collect()
}

fn imports() -> Vec<String> {
    let mut found = Vec::new();
    for (name, manifest) in manifests() {
        let Some((_, allowed)) = ALLOWED.iter().find(|(known, _)| *known == name) else {
            found.push(format!("{name}: no line in xtask/src/tidy.rs says what it may import"));
            continue;
        };
        let ours = dependencies(&manifest).into_iter().filter(|used| used.starts_with("oilway"));
        found.extend(
            ours.filter(|used| !allowed.contains(used)).map(|used| format!("{name} must not import {used}")),
        );
    }
    found
}

fn serialization() -> Vec<String> {
    let manifests = manifests();
    let others = manifests
        .iter()
        .filter(|(name, _)| name.starts_with("oilway") && !SERIALIZERS.contains(&name.as_str()));
    let with_serde = others.filter(|(_, manifest)| dependencies(manifest).contains(&"serde"));
    with_serde
        .map(|(name, _)| format!("{name} must not know serde: files and answers are the edge's affair"))
        .collect()
}

fn code_map() -> Vec<String> {
    let map = fs::read_to_string(root().join("ARCHITECTURE.md")).unwrap_or_default();
    let named: BTreeSet<&str> = map.split('`').collect();
    let lacking = manifests().into_keys().filter(|name| !named.contains(name.as_str()));
    lacking.map(|name| format!("ARCHITECTURE.md does not name {name}")).collect()
}

fn words() -> Vec<String> {
    let mut found = Vec::new();
    for path in files(root()) {
        let Ok(text) = fs::read_to_string(&path) else { continue };
        let name = path.strip_prefix(root()).unwrap_or(&path).display().to_string();
        for (number, line) in text.lines().enumerate() {
            let bad =
                FORBIDDEN.iter().map(|(a, b)| format!("{a}{b}")).find(|word| line.contains(word.as_str()));
            found.extend(bad.map(|word| format!("{name}:{}: {word}", number + 1)));
        }
    }
    found
}

/// Our own text files below a folder; nothing that a build or a tool made.
fn files(folder: PathBuf) -> Vec<PathBuf> {
    let mut found = Vec::new();
    let mut folders = vec![folder];
    while let Some(folder) = folders.pop() {
        let mut entries: Vec<PathBuf> =
            fs::read_dir(folder).into_iter().flatten().flatten().map(|e| e.path()).collect();
        entries.sort();
        for path in entries {
            let name = path.file_name().map_or_else(String::new, |name| name.to_string_lossy().into_owned());
            let made = name == "target"
                || name == "out"
                || (name.starts_with('.') && name != ".ci" && name != ".cargo");
            if path.is_dir() && !made {
                folders.push(path);
            } else if is_text(&path) {
                found.push(path);
            }
        }
    }
    found
}

fn is_text(path: &Path) -> bool {
    path.is_file() && path.extension().is_none_or(|ending| ENDINGS.iter().any(|known| ending == *known))
}

fn commands() -> Vec<String> {
    let mut found = Vec::new();
    for file in ["README.md", ".ci/run"] {
        let text = fs::read_to_string(root().join(file)).unwrap_or_default();
        if !text.contains(TEST_COMMAND) {
            found.push(format!("{file} does not run `{TEST_COMMAND}`"));
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_house_is_tidy() {
        assert_eq!(run(&[]), Ok("tidy".to_owned()));
    }

    #[test]
    fn the_checker_may_not_reach_the_designer() {
        let checker = ALLOWED.iter().find(|(name, _)| *name == "oilway-check").map(|(_, allowed)| *allowed);
        assert!(checker.is_some_and(|allowed| !allowed.contains(&"oilway-solve")));
    }
}
