//! The law of "why" on the worked jobs: every line of the ledger that says how it came to be gives its number once more, from what the
//! engineer said down to the demand of every kind of point.

#![allow(clippy::unwrap_used, reason = "a test: what cannot be read must fail it")]

use oilway_catalogue::{house, lubricants};
use oilway_physics::{How, Ledger, Line, Term};
use oilway_solve::{design, evaluate};
use oilway_store::read_job;
use oilway_units::AnyQuantity;

fn ledger(name: &str) -> Ledger {
    let file = oilway_testkit::root().join("jobs").join(name).join("job.toml");
    let text = std::fs::read_to_string(&file).unwrap();
    let (job, mistakes) = read_job("job.toml", &text, house::catalogue(), lubricants::library());
    assert!(mistakes.is_empty(), "{name}: {mistakes:#?}");
    let design = design(&job.unwrap(), house::catalogue()).unwrap();
    let mut ledger = Ledger::on();
    evaluate(&design, &mut ledger);
    ledger
}

fn terms(how: &How) -> &[Term] {
    match how {
        How::Formula(_, t)
        | How::Sum(t)
        | How::Largest(t)
        | How::Smallest(t)
        | How::Chosen(_, t)
        | How::Solved(_, t) => t,
        How::Entered(..) | How::Part(..) => &[],
    }
}

/// The values of a line's terms; a name that nobody wrote is a mistake.
fn values(ledger: &Ledger, line: &Line) -> Vec<AnyQuantity> {
    let of = |term: &Term| match term {
        Term::Value(value) => *value,
        Term::Name(name) => {
            ledger
                .line(name)
                .unwrap_or_else(|| panic!("{} speaks of {name}, which nobody wrote", line.name))
                .value
        }
    };
    terms(&line.how).iter().map(of).collect()
}

fn again(ledger: &Ledger, line: &Line) -> Option<f64> {
    let values = values(ledger, line);
    let si = values.iter().map(|v| v.si);
    match &line.how {
        How::Formula(formula, _) => {
            let found = formula.evaluate(&values);
            Some(found.unwrap_or_else(|e| panic!("{} by {}: {e:?}", line.name, formula.id)).si)
        }
        How::Sum(_) => Some(si.sum()),
        How::Largest(_) => Some(si.fold(f64::NEG_INFINITY, f64::max)),
        How::Smallest(_) => Some(si.fold(f64::INFINITY, f64::min)),
        How::Chosen(..) | How::Solved(..) | How::Entered(..) | How::Part(..) => None,
    }
}

fn holds(name: &str) {
    let ledger = ledger(name);
    let mut worked_out = 0;
    for line in ledger.lines() {
        let Some(found) = again(&ledger, line) else { continue };
        let near = found == line.value.si
            || (found - line.value.si).abs() <= 1e-9 * found.abs().max(line.value.si.abs());
        assert!(near, "{name}: {} says {found}, stands {}", line.name, line.value.si);
        worked_out += 1;
    }
    assert!(worked_out > 200, "{name}: only {worked_out} lines say how they came to be");
}

#[test]
fn every_line_of_the_dairy_gives_its_number_once_more() {
    holds("dairy");
}

#[test]
fn every_line_of_the_oil_spindle_gives_its_number_once_more() {
    holds("oil-spindle");
}

#[test]
fn every_line_of_the_quarry_gives_its_number_once_more() {
    holds("quarry");
}

#[test]
fn every_line_of_the_job_with_gaps_gives_its_number_once_more() {
    holds("gaps");
}

/// From a number down through its formulas one ends at what was said, assumed, or stands on a part.
#[test]
fn every_point_leads_down_to_what_somebody_said_or_the_tool_assumed() {
    let ledger = ledger("dairy");
    for line in ledger.lines().filter(|l| l.name.ends_with(".moving") || l.name.ends_with(".required")) {
        let mut open = vec![line.name.clone()];
        let mut entered = 0;
        let mut seen = std::collections::BTreeSet::new();
        while let Some(name) = open.pop() {
            let Some(next) = ledger.line(&name).filter(|_| seen.insert(name.clone())) else { continue };
            entered += usize::from(matches!(next.how, How::Entered(..) | How::Part(..)));
            open.extend(terms(&next.how).iter().filter_map(|t| match t {
                Term::Name(name) => Some(name.clone()),
                Term::Value(_) => None,
            }));
        }
        assert!(entered >= 3, "{} rests on {entered} entries", line.name);
    }
}
