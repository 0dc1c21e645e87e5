//! Spans and assumptions on a page.

use oilway_model::{Assumption, Verdict};
use oilway_solve::Study;
use oilway_text::{Arg, Message, message};
use oilway_units::{AnyQuantity, Dimension, Ratio};

use super::question::question;
use crate::page::{Page, Set};

/// Assumptions shown before somebody asks for all.
const FIRST: usize = 3;

/// The whole study.
pub(crate) fn study(page: &mut Page, study: &Study, verdict: Verdict, all: bool) {
    let turns = study.assumptions.iter().any(|assumption| assumption.turns_at.is_some());
    page.loud(&match (verdict, turns) {
        (Verdict::CannotTellYet, _) => message!("oilway-span-open"),
        (_, true) => message!("oilway-span-practice"),
        (_, false) => message!("oilway-span-closed"),
    });
    if let Some(question) = question(&study.assumptions) {
        page.loud(&question);
    }
    page.heading(&message!("oilway-spans"));
    let head = ["oilway-span-number", "oilway-span-low", "oilway-span-typical", "oilway-span-high"];
    let mut rows = vec![head.map(|key| page.words(&Message::new(key))).to_vec()];
    for span in &study.spans {
        let name = page.words(&name(span.name));
        rows.push(vec![name, page.quantity(span.low), page.quantity(span.typical), page.quantity(span.high)]);
    }
    page.table(&[Set::Left, Set::Right, Set::Right, Set::Right], &rows);
    assumptions(page, &study.assumptions, all);
    page.gap();
    page.say(&message!("oilway-local-codes"));
}

/// The assumptions, the weightiest first: three, the rest if somebody asks.
pub(crate) fn assumptions(page: &mut Page, list: &[Assumption], all: bool) {
    if list.is_empty() {
        return;
    }
    page.heading(&message!("oilway-assumptions"));
    let most = if all { list.len() } else { FIRST.min(list.len()) };
    for (number, assumption) in list.iter().take(most).enumerate() {
        page.item(&format!("{:>3}. ", number + 1), &sentence(assumption));
    }
    if list.len() > most {
        page.say(&message!("oilway-more-assumptions", more = list.len() - most));
    }
}

pub(crate) fn span(low: AnyQuantity, high: AnyQuantity) -> Message {
    Message::new("oilway-value").with("value", Arg::Span(low, high))
}

fn sentence(assumption: &Assumption) -> Message {
    let said = message!(
        "oilway-assumption",
        at = assumption.at.as_str(),
        what = assumption.what.clone(),
        span = span(assumption.low, assumption.high),
        weight = Ratio::from_fraction(assumption.weight)
    );
    match assumption.turns_at {
        Some(value) => {
            message!("oilway-assumption-turns", said = said, value = turning_value(value, assumption.high))
        }
        None => said,
    }
}

/// The value where the verdict turns, in the words of the range that it lies in: a plain number in a range of plain numbers.
pub(crate) fn turning_value(value: AnyQuantity, high: AnyQuantity) -> Arg {
    let factors = high.dimension == Dimension::Ratio && high.si >= 2.0;
    if factors { Arg::Number(value.si) } else { Arg::Quantity(value) }
}

/// What a key number is called.
fn name(key: &'static str) -> Message {
    match key {
        "peak.cold.start" => message!("oilway-name-peak-start"),
        "peak.cold.moving" => message!("oilway-name-peak-moving"),
        "stall" => message!("oilway-name-stall"),
        "demand.total" => message!("oilway-name-demand"),
        "delivered.least" => message!("oilway-name-least"),
        "refill" => message!("oilway-name-refill"),
        "cold.limit" => message!("oilway-name-cold-limit"),
        other => message!("oilway-name-other", name = other),
    }
}
