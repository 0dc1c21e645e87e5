//! The comparison itself: a right value passes, a wrong one fails and says why.

use std::panic::catch_unwind;

use oilway_testkit::{Check, every_check, published, reference_files, sources};
use oilway_units::{AnyQuantity, Flow, Length, Pressure, Time, Volume};

fn oil_line() -> Check {
    published("pipe-flow/newtonian")
        .into_iter()
        .find(|check| check.name.starts_with("P05"))
        .expect("case P05 is there")
}

#[test]
fn the_right_value_holds() {
    oil_line().holds("result", Flow::from_cubic_metres_per_second(3.14159265359e-6));
}

#[test]
fn a_value_inside_the_tolerance_holds() {
    oil_line().holds("result", Flow::from_cubic_metres_per_second(3.14159265359e-6 * (1.0 + 0.9e-8)));
}

#[test]
fn a_value_outside_the_tolerance_fails_and_says_all_there_is_to_say() {
    let wrong = Flow::from_cubic_metres_per_second(3.14159265359e-6 * (1.0 + 1.1e-8));
    let said = oil_line().compare("result", wrong.into()).expect_err("the value is wrong");
    for part in [
        "reference/pipe-flow/newtonian.toml",
        "P05",
        "own-quadrature",
        "computed case P05",
        "cm³/s",
        "1e-8",
        "three ways",
    ] {
        assert!(said.contains(part), "`{part}` is missing in: {said}");
    }
    assert!(catch_unwind(|| oil_line().holds("result", wrong)).is_err());
}

#[test]
fn what_is_not_a_number_fails() {
    assert!(oil_line().compare("result", Flow::from_cubic_metres_per_second(f64::NAN).into()).is_err());
}

#[test]
fn a_symbol_that_is_not_there_fails() {
    assert!(catch_unwind(|| oil_line().given::<Length>("width")).is_err());
    assert!(catch_unwind(|| oil_line().holds("pressure", Pressure::ZERO)).is_err());
}

#[test]
fn a_symbol_of_another_dimension_fails() {
    assert!(catch_unwind(|| oil_line().given::<Volume>("bore")).is_err());
    assert!(catch_unwind(|| oil_line().holds("result", Pressure::ZERO)).is_err());
}

#[test]
fn a_row_that_refuses_wants_no_answer() {
    let rows = published("demand/grease-interval");
    let too_fast = rows.iter().find(|check| check.refused).expect("one row refuses");
    too_fast.holds_or_refuses("result", None::<Time>);
    assert!(catch_unwind(|| too_fast.holds_or_refuses("result", Some(Time::from_hours(1.0)))).is_err());
    let ordinary = rows.iter().find(|check| !check.refused).expect("one row answers");
    assert!(catch_unwind(|| ordinary.holds_or_refuses("result", None::<Time>)).is_err());
}

#[test]
fn an_absolute_bound_serves_where_nothing_flows() {
    let rows = published("pipe-flow/bingham");
    let at_rest = rows.iter().find(|check| check.name.starts_with("P74")).expect("case P74 is there");
    at_rest.holds("result", Flow::ZERO);
    assert!(at_rest.compare("result", Flow::from_cubic_metres_per_second(2e-18).into()).is_err());
}

#[test]
fn words_are_compared_as_words() {
    let rows = published("disc/ladder");
    let first = rows.iter().find(|check| check.name.starts_with("W01")).expect("case W01 is there");
    first.holds_word("verdict", "accept");
    assert!(catch_unwind(|| first.holds_word("verdict", "reject")).is_err());
}

#[test]
fn every_file_reads_and_passes_its_guards() {
    let files = reference_files();
    assert!(files.iter().any(|file| file == "pipe-flow/bingham"), "{files:?}");
    assert!(every_check().len() >= files.len());
}

#[test]
fn a_check_lies_in_the_file_of_its_formula() {
    for file in reference_files() {
        for check in published(&file) {
            assert!(
                check.formula.is_empty() || check.formula == file,
                "{check}: stands in {file}, judges {}",
                check.formula
            );
        }
    }
}

#[test]
fn a_check_that_fits_no_formula_says_what_it_is() {
    for check in every_check().iter().filter(|check| check.formula.is_empty()) {
        assert!(check.note.as_ref().is_some_and(|note| !note.trim().is_empty()), "{check}");
    }
}

#[test]
fn every_check_says_where_it_stands_and_why_it_is_so_near() {
    for check in every_check() {
        assert!(!check.place.trim().is_empty() && !check.because.trim().is_empty(), "{check}");
    }
}

#[test]
fn a_check_never_stands_higher_than_its_source_unless_it_was_read_elsewhere() {
    // "own" may stand on anything: the value was computed here. A value "seen" needs a source whose text was read.
    let sources = sources();
    for check in every_check() {
        let source = &sources[&check.source];
        if check.status == oilway_testkit::Standing::Seen {
            assert!(
                source.standing == oilway_testkit::Standing::Seen || check.place.contains("published"),
                "{check}: marked as seen, its source as {}",
                source.standing.word()
            );
        }
    }
}

#[test]
fn every_source_has_a_title_and_a_key_in_lower_case() {
    for (key, source) in sources() {
        assert!(!source.title.is_empty(), "{key}");
        assert!(key.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-'), "{key}");
    }
}

#[test]
fn any_quantity_compares_like_a_typed_one() {
    let check = oil_line();
    let right = AnyQuantity::from(Flow::from_cubic_metres_per_second(3.14159265359e-6));
    assert_eq!(check.compare("result", right), Ok(()));
}
