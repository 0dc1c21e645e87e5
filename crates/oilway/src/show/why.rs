//! How a number came to be, on a page: each number with its formula, and indented below it the numbers that went into it.

use std::collections::BTreeSet;

use oilway_model::Reason;
use oilway_physics::{How, Ledger, Line, Term};
use oilway_text::{Message, message};
use oilway_units::Origin;

use crate::json::why::terms;
use crate::page::{Page, Set};
use crate::show::formula::of_source;

/// Names of numbers shown before somebody asks for all.
const MOST_NAMES: usize = 40;

/// Numbers that can be asked for, with their values.
pub(crate) fn list(page: &mut Page, lines: &[&Line], all: bool) {
    let most = if all { usize::MAX } else { MOST_NAMES };
    let mut rows = Vec::new();
    for line in lines.iter().take(most) {
        rows.push(vec![line.name.clone(), page.quantity(line.value)]);
    }
    page.table(&[Set::Left, Set::Left], &rows);
    page.gap();
    if lines.len() > most {
        page.say(&message!("oilway-more-numbers", more = lines.len() - most));
    }
    page.say(&message!("oilway-numbers-foot"));
}

/// A choice and its reason.
pub(crate) fn choice(page: &mut Page, reason: &Reason) {
    page.loud(&message!("oilway-choice", at = reason.at.as_str(), chosen = reason.chosen.as_str()));
    page.item("  ", &reason.why);
    page.gap();
    page.say(&message!("oilway-local-codes"));
}

/// A number down to what somebody said.
pub(crate) fn chain(page: &mut Page, ledger: &Ledger, line: &Line) {
    let mut seen = BTreeSet::new();
    let value = message!("oilway-number", name = line.name.as_str(), value = line.value);
    page.loud(&value);
    below(page, ledger, line, 1, &mut seen);
    page.gap();
    page.say(&message!("oilway-local-codes"));
}

/// More steps than any chain of the house has; a bound all the same, for the page's sake.
const DEEPEST: usize = 16;

fn below(page: &mut Page, ledger: &Ledger, line: &Line, depth: usize, seen: &mut BTreeSet<String>) {
    seen.insert(line.name.clone());
    let indent = "  ".repeat(depth);
    page.item(&indent, &how(line));
    let formula = match &line.how {
        How::Formula(formula, _) => Some(*formula),
        _ => None,
    };
    if let Some(formula) = formula {
        for equation in formula.equation.split('\n') {
            page.paragraph(&format!("{indent}    "), equation.trim());
        }
        for source in formula.sources {
            page.item(&indent, &of_source(source));
        }
    }
    for (place, term) in terms(&line.how).iter().enumerate() {
        let letter =
            formula.and_then(|formula| formula.inputs.get(place)).map_or("·", |symbol| symbol.letter);
        let mark = format!("{indent}{letter} = ");
        match term {
            Term::Value(value) => {
                let meaning =
                    formula.and_then(|formula| formula.inputs.get(place)).map_or("", |symbol| symbol.meaning);
                page.item(&mark, &message!("oilway-constant", value = *value, meaning = meaning));
            }
            Term::Name(name) => named(page, ledger, name, &mark, depth, seen),
        }
    }
}

fn named(
    page: &mut Page,
    ledger: &Ledger,
    name: &str,
    mark: &str,
    depth: usize,
    seen: &mut BTreeSet<String>,
) {
    let Some(line) = ledger.line(name) else {
        page.paragraph(mark, name);
        return;
    };
    let value = message!("oilway-number-term", name = name, value = line.value);
    if seen.contains(name) && !terms(&line.how).is_empty() {
        page.item(mark, &message!("oilway-number-above", number = value));
        return;
    }
    page.item(mark, &value);
    if depth < DEEPEST {
        below(page, ledger, line, depth + 1, seen);
    }
}

fn how(line: &Line) -> Message {
    match &line.how {
        How::Formula(formula, _) => message!("oilway-how-formula", title = formula.title, id = formula.id),
        How::Sum(_) => message!("oilway-how-sum"),
        How::Largest(_) => message!("oilway-how-largest"),
        How::Smallest(_) => message!("oilway-how-smallest"),
        How::Entered(origin, place) => entered(*origin, place),
        How::Part(part, field) => message!("oilway-how-part", part = part.as_str(), field = *field),
        How::Chosen(why, _) => message!("oilway-how-chosen", why = why.clone()),
        How::Solved(why, _) => message!("oilway-how-solved", why = why.clone()),
    }
}

fn entered(origin: Origin, place: &str) -> Message {
    match origin {
        Origin::Said => message!("oilway-how-said", place = place),
        Origin::Measured => message!("oilway-how-measured", place = place),
        Origin::Plate => message!("oilway-how-plate", place = place),
        Origin::Assumed(key) => message!("oilway-how-assumed", place = place, what = Message::new(key)),
    }
}
