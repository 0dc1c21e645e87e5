//! Answers for programs: each verb's JSON fits the schema of the verb, and the validator that says so can say no.

mod common;

use common::{oilway, oilway_in, schema::faults, workplace};
use serde_json::{Value, json};

fn schema(name: &str) -> Value {
    let ran = oilway(&["schema", name]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    serde_json::from_str(&ran.out).expect("a schema is JSON")
}

/// Runs a command line with `--json` and holds its answer to the schema of this name.
fn holds(name: &str, args: &[&str]) -> Value {
    let folder = workplace();
    let ran = oilway_in(folder.path(), &[args, &["--json"]].concat());
    let answer: Value =
        serde_json::from_str(&ran.out).unwrap_or_else(|error| panic!("{args:?}: {error}: {}", ran.out));
    assert_eq!(faults(&schema(name), &answer), [""; 0], "{args:?}");
    let version = answer["version"].as_str().expect("a version is text");
    assert!(version.starts_with("oilway.") && version.ends_with(".1"), "{version}");
    answer
}

#[test]
fn the_answers_about_formulas_fit_their_schema() {
    holds("calc", &["calc"]);
    holds("calc", &["calc", "pipe-flow/start-pressure"]);
    let answer = holds(
        "calc",
        &["calc", "pipe-flow/start-pressure", "bore=9.4 mm", "length=40 m", "yield_stress=800..1000 Pa"],
    );
    // 4 · 900 Pa · 40 m / 9.4 mm, by hand.
    let si = answer["results"][0]["result"]["si"].as_f64().unwrap();
    assert!((si - 4.0 * 900.0 * 40.0 / 0.0094).abs() < 1e-3, "{si}");
    assert_eq!(answer["results"][0]["result"]["unit"], "Pa");
}

#[test]
fn the_answers_about_jobs_fit_their_schemas() {
    let check = holds("check", &["check", "jobs/dairy"]);
    assert!(check["verdict"].is_string() && check["findings"].is_array());
    let design = holds("design", &["design", "jobs/dairy"]);
    assert_eq!(design["points"].as_array().unwrap().len(), 34);
    holds("demo", &["demo"]);
    holds("ladder", &["ladder", "jobs/dairy"]);
    holds("span", &["span", "jobs/gaps"]);
    holds("why", &["why", "jobs/dairy"]);
    holds("why", &["why", "jobs/dairy", "supply.use"]);
    holds("what-if", &["what-if", "jobs/dairy", "air.lowest=5 bar"]);
    holds("pin", &["pin", "jobs/dairy"]);
}

#[test]
fn the_answers_about_files_parts_and_rules_fit_their_schemas() {
    holds("parts", &["parts", "list"]);
    holds("parts", &["parts", "list", "pump"]);
    holds("parts", &["parts", "export", "parts.xlsx"]);
    holds("survey", &["survey", "write", "survey.xlsx"]);
    holds("meter", &["meter", "reference/metering/one_divider.json"]);
    holds("explain", &["explain"]);
    for name in ["disc-missing", "S30", "pipe-flow/start-pressure", "assume-rest-factor"] {
        holds("explain", &["explain", name]);
    }
}

#[test]
fn what_stands_in_the_way_of_an_answer_fits_its_schema_and_goes_where_the_answer_goes() {
    let folder = workplace();
    std::fs::write(folder.path().join("bad.toml"), "oilway = \"job 1\"\nname = 3\n").unwrap();
    for args in
        [["check", "bad.toml"], ["check", "nowhere.toml"], ["explain", "nothing"], ["calc", "nothing"]]
    {
        let ran = oilway_in(folder.path(), &[&args[..], &["--json"]].concat());
        let answer: Value = serde_json::from_str(&ran.out).unwrap();
        assert_eq!(faults(&schema("problems"), &answer), [""; 0]);
        assert!(!answer["problems"].as_array().unwrap().is_empty() && [6, 7].contains(&ran.code), "{args:?}");
        assert_eq!(ran.err, "");
    }
}

#[test]
fn the_same_job_gives_the_same_bytes() {
    let args = ["design", "jobs/dairy", "--json"];
    assert_eq!(oilway(&args).out, oilway(&args).out);
}

#[test]
fn the_validator_sees_what_is_missing_unknown_or_of_another_sort() {
    let schema = schema("calc");
    assert_eq!(
        faults(&schema, &json!({ "version": "oilway.calc.1", "formulas": [], "results": [] })),
        [""; 0]
    );
    for bad in [
        json!({ "version": "oilway.calc.1", "formulas": [] }),
        json!({ "version": 1, "formulas": [], "results": [] }),
        json!({ "version": "oilway.calc.1", "formulas": [], "results": [], "more": 1 }),
        json!({ "version": "oilway.calc.1", "formulas": [{ "id": "x" }], "results": [] }),
        json!([]),
    ] {
        assert!(!faults(&schema, &bad).is_empty(), "{bad}");
    }
}
