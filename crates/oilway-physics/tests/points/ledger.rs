//! Every recorded number can be worked out again, and every remark can be said.

use oilway_physics::points::{Answer, KINDS};
use oilway_physics::{How, Ledger, Line, Term};
use oilway_text::{Message, Reader, say};
use oilway_units::{AnyQuantity, Origin};

use crate::said::*;

/// Checks every line against its terms; returns how many formulas were evaluated again.
pub(crate) fn recompute(ledger: &Ledger, id: &str) -> usize {
    let value = |term: &Term| match term {
        Term::Value(value) => *value,
        Term::Name(name) => ledger.line(name).unwrap_or_else(|| panic!("{id}: no line {name}")).value,
    };
    let agrees = |line: &Line, si: f64| {
        let gap = (line.value.si - si).abs();
        assert!(gap <= 1e-12 * si.abs(), "{id}: {} is {}, its terms give {si}", line.name, line.value.si);
    };
    let mut evaluated = 0;
    for line in ledger.lines() {
        match &line.how {
            How::Formula(formula, terms) => {
                let inputs: Vec<AnyQuantity> = terms.iter().map(value).collect();
                let again =
                    formula.evaluate(&inputs).unwrap_or_else(|no| panic!("{id}: {}: {no:?}", line.name));
                assert_eq!(again.dimension, line.value.dimension);
                agrees(line, again.si);
                evaluated += 1;
            }
            How::Smallest(terms) => {
                agrees(line, terms.iter().map(|t| value(t).si).fold(f64::INFINITY, f64::min))
            }
            How::Chosen(why, terms) => {
                assert!(terms.iter().map(value).all(|value| value.si.is_finite()));
                assert!(!say(why, &Reader::default()).contains('['), "{why:?}");
            }
            How::Entered(..) => {}
            other => panic!("{id}: {other:?}"),
        }
    }
    evaluated
}

#[test]
fn every_line_of_the_ledger_can_be_worked_out_again_from_its_terms() {
    for kind in KINDS {
        let mut judged = 0;
        for around in many_surroundings() {
            for share in [0.0, 0.5, 1.0] {
                let answers: Vec<Answer> = kind.fields().iter().map(|field| at(field, share)).collect();
                let mut ledger = Ledger::on();
                let Ok(demand) = demand(*kind, &answers, &around, &mut ledger) else { continue };
                judged += recompute(&ledger, kind.id());
                let last = ledger.line("point.x.demand").expect("the demand is kept");
                assert_eq!(last.value, demand.rate.into());
            }
        }
        assert!(judged > 0, "{}", kind.id());
    }
}

#[test]
fn answers_that_were_entered_are_named_and_not_repeated() {
    let said = Said::of("plain bearing").put("bore", mm(60.0)).put("length", mm(60.0));
    let mut ledger = Ledger::on();
    let bore = AnyQuantity::from(mm(60.0));
    ledger.record(|| Line {
        name: "point.x.bore".into(),
        value: bore,
        how: How::Entered(Origin::Said, "job".into()),
    });
    demand(said.1, &said.0, &clean(), &mut ledger).expect("a demand");
    let How::Formula(_, terms) = &ledger.line("point.x.rate").expect("kept").how else { panic!("a formula") };
    assert_eq!(terms[0], Term::Name("point.x.bore".into()));
    assert_eq!(terms[1], Term::Value(mm(60.0).into()));
}

#[test]
fn the_ledger_changes_no_number() {
    for kind in KINDS {
        for around in many_surroundings() {
            let [off, on] = [Ledger::off(), Ledger::on()].map(|mut ledger| {
                demand(*kind, &typical(*kind), &around, &mut ledger).map(|demand| demand.rate)
            });
            assert_eq!(off, on);
        }
    }
}

#[test]
fn every_remark_and_refusal_can_be_said() {
    let reader = Reader::default();
    let whole = |message: &Message| {
        let said = say(message, &reader);
        assert!(!said.contains('[') && !said.is_empty(), "{said}");
    };
    for kind in KINDS {
        for around in many_surroundings() {
            for share in [0.0, 0.5, 1.0] {
                let answers: Vec<Answer> = kind.fields().iter().map(|field| at(field, share)).collect();
                match demand(*kind, &answers, &around, &mut Ledger::off()) {
                    Ok(demand) => demand.notes.iter().for_each(whole),
                    Err(no) => [no.reason, no.cure].iter().for_each(whole),
                }
            }
            let nothing: Vec<Answer> = kind.fields().iter().map(|_| Answer::Nothing).collect();
            let no = demand(*kind, &nothing, &around, &mut Ledger::off()).expect_err("nothing is known");
            [no.reason, no.cure].iter().for_each(whole);
        }
    }
}
