//! What readers get for messages of every kind.

use oilway_text::{Arg, Language, Message, Reader, message, say};
use oilway_units::{AbsolutePressure, Flow, Length, Pressure, Ratio, Temperature, Time, UnitSystem, read};

const METRIC: Reader = Reader::new(UnitSystem::Metric);
const US: Reader = Reader::new(UnitSystem::Us);
const BOTH: Reader = Reader { units: UnitSystem::Metric, both: true, language: Language::English };

/// One argument on its own, through a sentence that adds only a word.
fn said(arg: impl Into<Arg>, reader: &Reader) -> String {
    let pair = say(&Message::new("list-pair").with("first", arg).with("second", "."), reader);
    pair.strip_suffix(" and .").map(str::to_owned).unwrap_or(pair)
}

#[test]
fn a_quantity_is_said_in_the_units_of_the_reader() {
    let pressure = Pressure::from_bar(59.3);
    assert_eq!(said(pressure, &METRIC), "59.3 bar");
    assert_eq!(said(pressure, &US), "860 psi");
    assert_eq!(said(pressure, &BOTH), "59.3 bar (860 psi)");
}

#[test]
fn a_span_is_said_with_one_unit() {
    let run = (Length::from_metres(6.0), Length::from_metres(8.0));
    assert_eq!(said(run, &METRIC), "6 to 8 m");
    assert_eq!(said(run, &BOTH), "6 to 8 m (19.7 to 26.2 ft)");
    let cold = (Temperature::from_celsius(-10.0), Temperature::from_celsius(40.0));
    assert_eq!(said(cold, &METRIC), "-10 to 40 °C");
}

#[test]
fn a_span_narrower_than_the_figures_is_said_as_one_value() {
    let narrow = (Length::from_metres(6.0), Length::from_metres(6.000_01));
    assert_eq!(said(narrow, &METRIC), "6 m");
}

#[test]
fn lists_have_commas_and_a_last_and() {
    assert_eq!(said(Vec::<&str>::new(), &METRIC), "");
    assert_eq!(said(vec!["P1"], &METRIC), "P1");
    assert_eq!(said(vec!["P1", "P2"], &METRIC), "P1 and P2");
    assert_eq!(said(vec!["P1", "P2", "P3", "P4"], &METRIC), "P1, P2, P3 and P4");
    assert_eq!(
        said(vec![Length::from_millimetres(4.0), Length::from_millimetres(6.0)], &US),
        "0.157 in and 0.236 in"
    );
}

#[test]
fn numbers_counts_and_messages_stand_inside_a_sentence() {
    assert_eq!(said(0.1 + 0.2, &METRIC), "0.3");
    assert_eq!(said(-0.0, &METRIC), "0");
    assert_eq!(said(1234usize, &METRIC), "1234");
    assert_eq!(Arg::from(u64::MAX), Arg::Count(i64::MAX));
    let inner = message!("span", low = 1usize, high = 3usize);
    assert_eq!(said(inner, &METRIC), "1 to 3");
}

#[test]
fn text_is_shown_as_it_is_even_if_it_looks_like_a_placeholder() {
    assert_eq!(said("{ $low } \\ \"x\"", &METRIC), "{ $low } \\ \"x\"");
}

#[test]
fn what_is_missing_shows_and_nothing_panics() {
    let unknown = Message { key: "no-such-sentence", args: vec![("bore", Arg::Count(1))] };
    assert_eq!(say(&unknown, &METRIC), "[no-such-sentence]");
    let inside = Message::new("span").with("low", unknown);
    assert_eq!(say(&inside, &METRIC), "[no-such-sentence] to [high]");
}

/// The sentence for a text that is no such quantity.
fn fault<T: oilway_units::Quantity>(text: &str) -> String {
    say(&Message::from(&read::<T>(text).expect_err(text)), &METRIC)
}

#[test]
fn faults_of_reading_name_the_text_the_reason_and_the_cure() {
    assert_eq!(fault::<Length>("3/4"), "\"3/4\" has no unit; write 3/4 in or 19.05 mm");
    assert_eq!(fault::<Length>("12"), "\"12\" has no unit; write 12 mm or 12 in");
    assert_eq!(
        fault::<Pressure>("12 mpa"),
        "\"12 mpa\": mpa is no unit of a gauge pressure; did you mean MPa?"
    );
    assert_eq!(fault::<Length>("1,000 mm"), "\"1,000 mm\" can mean two things; write 1.000 mm or 1000 mm");
    assert_eq!(
        fault::<Length>("8..6 m"),
        "\"8..6 m\" runs backwards from 8 m to 6 m; write the lower end first"
    );
    assert_eq!(fault::<Temperature>("-300 °C"), "\"-300 °C\" cannot be: the least is -273 °C");
    assert_eq!(
        fault::<Time>("5 bar"),
        "\"5 bar\": bar measures a gauge pressure, but a time is needed; write s, ms, min, h, days, weeks or years"
    );
    assert_eq!(
        fault::<Pressure>("5 bar abs"),
        "\"5 bar abs\" is an absolute pressure, but a gauge pressure is needed; subtract the surrounding atmosphere, \
         about 1.01 bar, and write the unit without \"abs\""
    );
    assert!(fault::<AbsolutePressure>("100 psig").ends_with("to a gauge pressure and write psia"));
    assert!(fault::<Flow>("").contains("a volume flow is needed, for example 12 cm³/min, or ?"));
    assert!(
        fault::<Flow>("much")
            .contains("does not begin with a number; write a volume flow such as 12 cm³/min")
    );
    assert!(
        fault::<Flow>("5 furlongs").contains("furlongs is no unit of a volume flow; write cm³/min, cm³/h")
    );
    assert!(fault::<Ratio>("5 % ± 1 %").ends_with("write the range, for example 9..15 %"));
    assert!(fault::<Length>("1e400 m").contains("too large"));
    assert!(
        fault::<Length>(&"9".repeat(201)).contains("has 201 characters; a length needs no more than 200")
    );
}

#[test]
fn every_fault_has_a_sentence_with_all_its_arguments() {
    let texts = ["", "x", "1,000 m", "12", "12 xyzzy", "12 mn", "12 bar", "8..6 m", "1/0 m", "5 m ± 100 %"];
    for text in texts {
        let sentence = fault::<Length>(text);
        assert!(!sentence.contains('['), "{sentence}");
    }
}
