//! What a person reads: a snapshot of each verb's answer, and what holds for all of them.

mod common;

use common::{oilway, oilway_in, words, workplace};
use oilway::verbs::VERBS;

/// Works, works with care, will not work, cannot tell yet: answers all of them.
const ANSWERS: [i32; 4] = [0, 3, 4, 5];

fn answer(line: &str) -> String {
    let line = words(line);
    let folder = workplace();
    let ran = oilway_in(folder.path(), &line.iter().map(String::as_str).collect::<Vec<_>>());
    assert!(ANSWERS.contains(&ran.code), "{line:?} ended with {}: {}", ran.code, ran.err);
    assert_eq!(ran.err, "", "{line:?}");
    format!("exit code {}\n\n{}", ran.code, ran.out)
}

macro_rules! snapshots {
    ($($name:ident: $line:literal;)+) => { $(
        #[test]
        fn $name() {
            insta::assert_snapshot!(answer($line));
        }
    )+ };
}

snapshots! {
    calc_lists_a_family: "calc demand";
    calc_explains_a_formula: "calc pipe-flow/herschel-bulkley-drop";
    calc_calculates_over_ranges: "calc pipe-flow/start-pressure bore='3/8 in' length='30..50 m' yield_stress='900 Pa ± 20 %' --both";
    explain_tells_a_rule: "explain disc-window-shut";
    explain_tells_a_caution: "explain S30";
    explain_tells_an_assumption: "explain assume-rest-factor";
    parts_shows_one_in_us_units: "parts show 10001 --units us";
    meter_proves_its_answers: "meter reference/metering/one_divider.json --all";
}

/// The numbers of whole jobs are held by the tests of the crates that work them out; here stands what a person must find in each answer.
#[test]
fn every_answer_about_a_job_holds_what_it_promises() {
    let found: [(&str, &[&str]); 11] = [
        ("demo", &["Crate washer", "work", "Window", "Assumed", "job.toml", "oilway check"]),
        ("design jobs/oil-spindle --units us", &["work", "psi", "Refill"]),
        ("check jobs/dairy", &["source", "common-practice", "Cure"]),
        ("ladder jobs/dairy", &["bar", "stall"]),
        ("parts list 'burst disc'", &["burst disc: a disc that bursts before anything else does", "EUR"]),
        ("parts list", &["burst disc", "a disc that bursts before anything else does"]),
        (
            "why jobs/dairy point.washer chain 1.demand",
            &["0.14 cm³/h", "demand/rate", "q = V / t", "40 h", "said in the job"],
        ),
        ("why jobs/dairy package.disc", &["package.disc: ", "bar"]),
        ("why jobs/dairy supply", &["supply.use", "supply.refill.running"]),
        ("span jobs/gaps", &["Ask or measure first", "lowest", "highest", "Assumed"]),
        ("what-if jobs/dairy 'place.cold room.temperature=-10 °C'", &["before", "after", "verdict"]),
    ];
    for (line, wanted) in found {
        let answer = answer(line);
        let lacking: Vec<_> = wanted.iter().filter(|text| !answer.contains(**text)).collect();
        assert!(lacking.is_empty(), "{line} lacks {lacking:?}\n{answer}");
    }
}

#[test]
fn every_example_of_the_help_runs() {
    for verb in VERBS {
        let folder = workplace();
        for example in verb.examples {
            let line = words(example);
            let ran = oilway_in(folder.path(), &line.iter().map(String::as_str).collect::<Vec<_>>());
            assert!(ANSWERS.contains(&ran.code), "{example} ended with {}: {}", ran.code, ran.err);
            assert!(!ran.out.is_empty(), "{example} says nothing");
        }
    }
}

#[test]
fn no_line_of_an_answer_is_wider_than_a_page() {
    for line in [
        "demo",
        "check jobs/quarry",
        "design jobs/gaps --both --all",
        "calc",
        "explain",
        "span jobs/gaps --all",
    ] {
        let answer = answer(line);
        let wide: Vec<&str> = answer.lines().filter(|line| line.chars().count() > 100).collect();
        // The commands that can be copied stand in one line.
        let wide: Vec<&&str> = wide.iter().filter(|line| !line.trim_start().starts_with("oilway ")).collect();
        assert!(wide.is_empty(), "{line}: {wide:?}");
    }
}

#[test]
fn letters_are_heavy_only_where_they_are_asked_for() {
    let plain = oilway(&["explain", "S30"]);
    let heavy = oilway(&["explain", "S30", "--colour", "always"]);
    assert!(!plain.out.contains('\u{1b}') && heavy.out.contains('\u{1b}'));
}

#[test]
fn every_answer_about_a_system_says_who_decides() {
    for line in [
        "demo",
        "check jobs/dairy",
        "design jobs/oil-spindle",
        "span jobs/gaps",
        "what-if jobs/dairy air.lowest='5 bar'",
    ] {
        let answer = answer(line).to_lowercase();
        assert!(answer.contains("local"), "{line}\n{answer}");
    }
}

#[test]
fn the_units_of_the_command_line_come_before_those_of_the_surroundings_and_of_the_job() {
    let folder = workplace();
    let run = |units: Option<&str>, args: &[&str]| {
        let mut command = assert_cmd::Command::cargo_bin("oilway").unwrap();
        command.current_dir(folder.path()).env_remove("OILWAY_UNITS");
        if let Some(units) = units {
            command.env("OILWAY_UNITS", units);
        }
        let all = [&["why", "jobs/dairy", "supply.use"][..], args].concat();
        String::from_utf8(command.args(all).output().unwrap().stdout).unwrap()
    };
    // The dairy's job says metric.
    assert!(run(None, &[]).contains("cm³"));
    assert!(run(Some("us"), &[]).contains("in³"));
    assert!(run(Some("us"), &["--units", "metric"]).contains("cm³"));
}

#[test]
fn pinned_choices_are_kept_and_reopened_ones_are_made_anew() {
    let folder = workplace();
    let here = |args: &[&str]| oilway_in(folder.path(), args);
    let before = here(&["design", "jobs/dairy", "--json"]).out;
    assert!(ANSWERS.contains(&here(&["pin", "jobs/dairy"]).code));
    let pinned = here(&["design", "jobs/dairy", "--json"]).out;
    let of =
        |text: &str, field: &str| serde_json::from_str::<serde_json::Value>(text).unwrap()[field].clone();
    for field in ["verdict", "points", "parts", "seasons"] {
        assert_eq!(of(&before, field), of(&pinned, field), "{field}");
    }
    let choices = of(&pinned, "choices");
    assert!(choices.as_array().unwrap().iter().all(|choice| choice["kept"] == true), "{choices}");
    let ran = here(&["reopen", "jobs/dairy", "package"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    assert!(!here(&["reopen", "jobs/dairy"]).out.contains("package."));
    let reopened = of(&here(&["design", "jobs/dairy", "--json"]).out, "choices");
    let kept = |at: &str| {
        reopened.as_array().unwrap().iter().find(|choice| choice["at"] == at).unwrap()["kept"].clone()
    };
    assert_eq!((kept("package.pump"), kept("pause")), (false.into(), true.into()));
}

#[test]
fn the_sheets_are_all_written_and_the_same_on_every_run() {
    let folder = workplace();
    let run = |out: &str| oilway_in(folder.path(), &["design", "jobs/dairy", "--out", out]).code;
    assert_eq!(run("one"), run("two"));
    let mut names: Vec<_> =
        std::fs::read_dir(folder.path().join("one")).unwrap().map(|e| e.unwrap().file_name()).collect();
    names.sort();
    assert_eq!(names.len(), 15);
    for name in names {
        let read = |out: &str| std::fs::read(folder.path().join(out).join(&name)).unwrap();
        assert_eq!(read("one"), read("two"), "{name:?}");
    }
}

#[test]
fn a_shell_gets_completions_and_a_manual_has_a_page_for_each_verb() {
    for shell in ["bash", "elvish", "fish", "powershell", "zsh"] {
        assert!(oilway(&["completions", shell]).out.contains("what-if"), "{shell}");
    }
    let folder = workplace();
    assert_eq!(oilway_in(folder.path(), &["manual", "--out", "man"]).code, 0);
    for verb in VERBS {
        let page =
            std::fs::read_to_string(folder.path().join(format!("man/oilway-{}.1", verb.name))).unwrap();
        assert!(page.contains(verb.name));
    }
}

#[test]
fn a_survey_that_is_written_can_be_read_once_it_is_filled() {
    let folder = workplace();
    assert_eq!(oilway_in(folder.path(), &["survey", "write", "s.xlsx"]).code, 0);
    // An empty survey has gaps that are named by sheet and cell, or makes a job: never a panic.
    let ran = oilway_in(folder.path(), &["survey", "read", "s.xlsx", "job.toml"]);
    assert!([0, 6].contains(&ran.code), "{}", ran.err);
    assert_eq!(folder.path().join("job.toml").exists(), ran.code == 0);
}

#[test]
fn a_catalogue_goes_to_a_spreadsheet_and_back() {
    let folder = workplace();
    let here = |args: &[&str]| oilway_in(folder.path(), args);
    assert_eq!(here(&["parts", "export", "all.xlsx"]).code, 0);
    std::fs::create_dir(folder.path().join("own")).unwrap();
    let ran = here(&["parts", "import", "all.xlsx", "own/all.toml"]);
    assert_eq!(ran.code, 0, "{}", ran.err);
    assert_eq!(here(&["parts", "check", "own"]).code, 0);
    let house = here(&["parts", "show", "10001"]).out;
    assert_eq!(here(&["parts", "show", "10001", "--catalogue", "own"]).out, house);
}

#[test]
fn a_span_inside_which_the_verdict_turns_cannot_tell_and_one_in_which_it_stays_says_the_verdict() {
    let folder = workplace();
    // A fact that nobody knows: the grease in the gun, the length of a tail.
    let open = oilway_in(folder.path(), &["span", "jobs/gaps"]);
    assert_eq!(open.code, 5);
    assert!(open.out.starts_with("Nobody can tell yet"), "{}", open.out);
    assert_eq!(oilway_in(folder.path(), &["check", "jobs/gaps"]).code, 5);
    // A rule of practice alone asks for care.
    let practice = oilway_in(folder.path(), &["span", "jobs/dairy"]);
    assert_eq!(practice.code, 3);
    assert!(practice.out.starts_with("No fact of the job turns the verdict"), "{}", practice.out);
    // Somebody has measured what the verdict hung on.
    let file = folder.path().join("jobs/dairy/job.toml");
    let text = std::fs::read_to_string(&file).unwrap();
    let measured =
        text.replace("[practice]\n", "[practice]\nrest_factor = \"1.5\"\nfloor = \"0.01 cm³/h\"\n");
    assert!(measured.contains("rest_factor"));
    std::fs::write(&file, measured).unwrap();
    let closed = oilway_in(folder.path(), &["span", "jobs/dairy"]);
    assert!(closed.out.starts_with("None of the ranges"), "{}{}", closed.out, closed.err);
    assert_eq!(closed.code, oilway_in(folder.path(), &["check", "jobs/dairy"]).code);
    assert_ne!(closed.code, 0);
}
