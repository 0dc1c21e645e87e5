//! The telephone call at six in the morning: what is said first, what is counted, what an empty box does, what is refused.

mod common;

use common::{Ran, oilway, schema::faults};
use serde_json::Value;

/// Forty metres of bore 9.4 at 900 Pa hold 4 · 900 · 40 / 0.0094 Pa = 153 bar (own, by hand).
const MEASURED: [&str; 5] =
    ["temperature=-18 °C", "yield=900 Pa", "length=40 m", "bore=9.4 mm", "pressure=118 bar"];

fn ask(boxes: &[&str]) -> Ran {
    oilway(&[&["cold-start"], boxes].concat())
}

fn data(boxes: &[&str]) -> Value {
    let ran = oilway(&[&["cold-start", "--json"], boxes].concat());
    let answer: Value =
        serde_json::from_str(&ran.out).unwrap_or_else(|error| panic!("{error}: {}{}", ran.out, ran.err));
    let schema: Value =
        serde_json::from_str(&oilway(&["schema", "cold-start"]).out).expect("a schema is JSON");
    assert_eq!(faults(&schema, &answer), [""; 0], "{boxes:?}");
    answer
}

#[test]
fn the_measured_case_says_stop_first_and_then_153_bar() {
    let ran = ask(&MEASURED);
    assert_eq!(ran.code, 4, "{}", ran.err);
    assert!(ran.out.starts_with("STOP: never open the regulator"), "{}", ran.out);
    let text = ran.out.split_whitespace().collect::<Vec<_>>().join(" ");
    for wanted in [
        "will not work",
        "153 bar to move, and the pump gives 118 bar",
        "heat tracing",
        "winter grade before nights",
    ] {
        assert!(text.contains(wanted), "{wanted} lacks in\n{}", ran.out);
    }
    assert!(ran.out.find("STOP") < ran.out.find("bar"));
    let need = data(&MEASURED)["need"]["typical"]["si"].as_f64().unwrap();
    assert!((need - 4.0 * 900.0 * 40.0 / 0.0094).abs() < 1.0, "{need}");
}

#[test]
fn a_pump_that_can_turns_the_verdict() {
    let with = |pressure| ask(&[&MEASURED[..4], &[pressure]].concat()).code;
    assert_eq!((with("pressure=150 bar"), with("pressure=160 bar"), with("pressure=180 bar")), (4, 3, 0));
}

#[test]
fn a_tube_as_spoken_is_its_bore() {
    let with = |tube| {
        let answer = data(&["temperature=-18 °C", "yield=900 Pa", "length=40 m", tube, "pressure=118 bar"]);
        let end = |end: &str| answer["need"][end]["si"].as_f64().unwrap() / 1e5;
        (end("low"), end("high"))
    };
    // By hand, p = 4 · 900 · 40 / D: bore 8; half inch less twice a wall of 0.9 and of 1.65.
    let near = |got: (f64, f64), low: f64, high: f64| {
        let p = |millimetres: f64| 4.0 * 900.0 * 40.0 / (millimetres / 1000.0) / 1e5;
        assert!((got.0 - p(high)).abs() < 0.01 && (got.1 - p(low)).abs() < 0.01, "{got:?}");
    };
    near(with("tube=10 x 1"), 8.0, 8.0);
    near(with("tube=half inch tube"), 12.7 - 3.3, 12.7 - 1.8);
}

#[test]
fn an_empty_box_gives_a_span_and_one_question() {
    let known = data(&MEASURED);
    // Where only the halving is open today's need is known and the limit is not.
    assert_eq!(known["need"]["low"]["si"], known["need"]["high"]["si"]);
    assert_ne!(known["coldest"]["best"]["temperature"]["si"], known["coldest"]["worst"]["temperature"]["si"]);
    for missing in 0..MEASURED.len() {
        let boxes: Vec<&str> =
            MEASURED.iter().enumerate().filter(|(i, _)| *i != missing).map(|(_, text)| *text).collect();
        let answer = data(&boxes);
        assert!(answer["question"].is_string(), "{boxes:?}");
        assert!(
            answer["open"].as_array().unwrap().len() >= known["open"].as_array().unwrap().len(),
            "{boxes:?}"
        );
    }
    let nothing = ask(&[]);
    assert_eq!(nothing.code, 5, "{}", nothing.out);
    assert!(nothing.out.contains("Ask or measure first"), "{}", nothing.out);
}

#[test]
fn an_unknown_box_is_an_empty_box() {
    let empty = ask(&["length=40 m", "kind=parallel"]).out;
    assert_eq!(ask(&["length=40 m", "kind=parallel", "lubricant=?", "temperature=unknown"]).out, empty);
}

#[test]
fn a_grease_of_the_library_and_its_class_are_told_apart_from_an_oil() {
    assert_ne!(ask(&["lubricant=lithium grease NLGI 2"]).code, 6);
    assert_ne!(ask(&["lubricant=NLGI 00"]).code, 6);
    let oil =
        oilway_catalogue::lubricants::library().iter().find(|known| known.name.contains("oil")).unwrap();
    let ran = ask(&[&format!("lubricant={}", oil.name)]);
    assert_eq!(ran.code, 6, "{}", ran.out);
    assert!(ran.err.contains("is an oil"), "{}", ran.err);
}

#[test]
fn every_nonsense_is_told_in_one_run() {
    let ran = ask(&[
        "temperature=-18 bar",
        "length=-3 m",
        "tube=10 x 6",
        "lubricant=butter",
        "pressure=118 bar",
        "ratio=20",
        "kind=magic",
        "colour=red",
        "forty",
    ]);
    assert_eq!((ran.code, ran.out.as_str()), (6, ""));
    for wanted in ["temperature", "length", "no bore", "butter", "ratio", "magic", "colour", "forty"] {
        assert!(ran.err.contains(wanted), "{wanted} lacks in\n{}", ran.err);
    }
}
