//! The law of the ledger: whatever a line says of how it came to be gives its number once more.

use oilway_model::{Answer, Choice, Design, Job, Season};
use oilway_physics::{How, Ledger, Line, Term};
use oilway_units::{AnyQuantity, Length};

use crate::testing::{catalogue, dairy, hall, hose, known, leg, span_grease, spindle, without_air};
use crate::{design, evaluate};

fn traced(job: &Job) -> (Design, Answer, Ledger) {
    let design = design(job, catalogue()).unwrap();
    let mut ledger = Ledger::on();
    let answer = evaluate(&design, &mut ledger);
    (design, answer, ledger)
}

/// Jobs that between them use every law of this module.
fn jobs() -> Vec<Job> {
    let mut piped = dairy();
    piped.package.discharge = Some(known(Length::from_metres(3.0)));
    let mut kept = hall();
    kept.package.regulator = Choice::Given(crate::testing::bar(5.0));
    kept.conditions.lubricant = span_grease();
    let mut remote = spindle();
    remote.package.inlet = vec![leg(0, 0.5)];
    remote.points[0].route.push(hose(0, 1.0));
    vec![hall(), piped, kept, spindle(), remote, without_air()]
}

fn term(ledger: &Ledger, of: &Line, term: &Term) -> AnyQuantity {
    match term {
        Term::Value(value) => *value,
        Term::Name(name) => {
            ledger
                .line(name)
                .unwrap_or_else(|| panic!("{} speaks of {name}, which nobody wrote", of.name))
                .value
        }
    }
}

fn near(a: f64, b: f64) -> bool {
    a == b || (a - b).abs() <= 1e-9 * a.abs().max(b.abs())
}

/// The number that a line's own words give, where they give one.
fn again(ledger: &Ledger, line: &Line) -> Option<f64> {
    let values =
        |terms: &[Term]| -> Vec<AnyQuantity> { terms.iter().map(|t| term(ledger, line, t)).collect() };
    match &line.how {
        How::Formula(formula, terms) => {
            let found = formula.evaluate(&values(terms));
            Some(found.unwrap_or_else(|e| panic!("{} by {}: {e:?}", line.name, formula.id)).si)
        }
        How::Sum(terms) => Some(values(terms).iter().map(|v| v.si).sum()),
        How::Largest(terms) => Some(values(terms).iter().map(|v| v.si).fold(f64::NEG_INFINITY, f64::max)),
        How::Smallest(terms) => Some(values(terms).iter().map(|v| v.si).fold(f64::INFINITY, f64::min)),
        How::Chosen(_, terms) | How::Solved(_, terms) => {
            values(terms);
            None
        }
        How::Entered(..) | How::Part(..) => None,
    }
}

#[test]
fn every_line_gives_its_number_once_more() {
    for job in jobs() {
        let (_, _, ledger) = traced(&job);
        for line in ledger.lines() {
            if let Some(found) = again(&ledger, line) {
                assert!(
                    near(found, line.value.si),
                    "{}: {} says {found}, stands {}",
                    job.name,
                    line.name,
                    line.value.si
                );
            }
        }
    }
}

#[test]
fn no_line_rests_on_itself() {
    for job in jobs() {
        let (_, _, ledger) = traced(&job);
        for line in ledger.lines() {
            let mut seen = std::collections::BTreeSet::new();
            let mut open = vec![line.name.clone()];
            while let Some(name) = open.pop() {
                let Some(next) = ledger.line(&name) else { continue };
                // What a choice looked at may itself follow from the choice; down the formulas there is no circle.
                let terms = match &next.how {
                    How::Formula(_, t)
                    | How::Sum(t)
                    | How::Largest(t)
                    | How::Smallest(t)
                    | How::Solved(_, t) => t.clone(),
                    How::Chosen(..) | How::Entered(..) | How::Part(..) => Vec::new(),
                };
                for term in terms {
                    let Term::Name(below) = term else { continue };
                    assert_ne!(below, line.name, "{} rests on itself by way of {name}", line.name);
                    if seen.insert(below.clone()) {
                        open.push(below);
                    }
                }
            }
        }
    }
}

#[test]
fn the_numbers_of_the_answer_stand_in_the_ledger_under_their_names() {
    for job in jobs() {
        let (design, answer, ledger) = traced(&job);
        let stands = |name: &str, found: f64| {
            let line = ledger.line(name).unwrap_or_else(|| panic!("{}: nobody wrote {name}", job.name));
            assert!(
                near(line.value.si, found),
                "{}: {name} stands as {}, the answer says {found}",
                job.name,
                line.value.si
            );
        };
        use oilway_units::Quantity;
        for (point, delivery) in design.points.iter().zip(&answer.deliveries) {
            let at = |what: &str| format!("point.{}.{what}", point.name);
            stands(&at("demand"), delivery.formula.si());
            stands(&at("required"), delivery.required.si());
            stands(&at("delivered"), delivery.delivered.si());
            stands(&at("dose"), delivery.dose.si());
            stands(&at("tail"), delivery.tail.si());
            stands(&at("age"), delivery.age.si());
            stands(&at("age_in_tail"), delivery.age_in_tail.si());
        }
        for season in &answer.seasons {
            let word = crate::season_word(season.season);
            for (point, path) in design.points.iter().zip(&season.paths) {
                let at = |what: &str| format!("path.{}.{word}.{what}", point.name);
                stands(&at("start"), path.start.si());
                stands(&at("start_rested"), path.start_rested.si());
                stands(&at("moving"), path.moving.si());
                stands(&at("residual"), path.residual.si());
                stands(&at("flow"), path.flow.si());
                stands(&at("at_pump"), path.at_pump.si());
            }
            stands(&format!("pump.{word}.flow_limit"), season.pump.flow_limit.si());
            if let Some(time) = season.event_time {
                stands(&format!("event.{word}.time"), time.si());
            }
            if let Some(fill) = season.pump.fill_time {
                stands(&format!("pump.{word}.fill_time"), fill.si());
            }
        }
        let cold = answer.seasons.iter().find(|s| s.season == Season::Cold).unwrap();
        stands("pump.stall", cold.pump.stall.si());
        stands("pump.cold.feed", answer.supply.feed.si());
        stands("supply.use", answer.supply.use_rate.si());
        stands("supply.refill", answer.supply.refill.si());
        stands("supply.reserve", answer.supply.reserve.si());
        let protection = &answer.protection;
        stands("disc.working", protection.working.si());
        stands("protection.weakest", protection.weakest.1.si());
        stands("disc.window.low", protection.window_low.si());
        stands("disc.window.high", protection.window_high.si());
        for (name, found) in [
            ("disc.lowest", protection.lowest_burst),
            ("disc.highest", protection.highest_burst),
            ("disc.steady", protection.steady_maximum),
            ("disc.relieving", protection.relieving),
            ("disc.stays", protection.stays),
        ] {
            stands(name, found.unwrap().si());
        }
    }
}

#[test]
fn a_ledger_that_is_off_changes_no_number_and_keeps_none() {
    let job = dairy();
    let (design, with, _) = traced(&job);
    let mut off = Ledger::off();
    let without = evaluate(&design, &mut off);
    assert_eq!(format!("{with:?}"), format!("{without:?}"));
    assert_eq!(off.lines().count(), 0);
}
