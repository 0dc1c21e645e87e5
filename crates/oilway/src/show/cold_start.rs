//! A cold start on a page: what must not be done, one sentence to read aloud, what lasts, what helps in the next hour, the one question.

use oilway_model::Verdict;
use oilway_solve::cold_start::{ColdAnswer, Cure, Open, Reach, TRACED};
use oilway_text::{Arg, Message, message};
use oilway_units::Origin;

use super::span::{span, turning_value};
use crate::json::check::verdict_word;
use crate::page::Page;

/// Things taken that are shown before somebody asks for all.
const FIRST: usize = 3;

/// What can be done within the hour, in this order.
pub(crate) const HOUR: [Message; 3] = [
    Message::new("oilway-cold-hour-hands"),
    Message::new("oilway-cold-hour-warm"),
    Message::new("oilway-cold-hour-wait"),
];

/// What comes first.
pub(crate) const STOP: Message = Message::new("oilway-cold-stop");
/// What the numbers hold and what they do not.
pub(crate) const COUNTED: Message = Message::new("oilway-cold-counted");

/// The whole answer.
pub(crate) fn answer(page: &mut Page, answer: &ColdAnswer, all: bool) {
    page.loud(&STOP);
    page.gap();
    page.loud(&message!("oilway-cold-verdict", verdict = verdict_word(answer.verdict)));
    page.loud(&sentence(answer));
    band(answer).iter().chain(&stated(answer)).for_each(|says| page.say(says));
    page.heading(&message!("oilway-cold-remedies"));
    remedies(answer).iter().for_each(|(_, _, says)| page.item("  - ", says));
    page.heading(&message!("oilway-cold-hour"));
    HOUR.iter().for_each(|says| page.item("  - ", says));
    page.gap();
    question(answer).iter().for_each(|says| page.loud(says));
    plan(answer).iter().for_each(|says| page.say(says));
    taken(page, answer, all);
    page.gap();
    page.say(&COUNTED);
    page.say(&message!("oilway-local-codes"));
}

/// The sentence to read aloud.
pub(crate) fn sentence(answer: &ColdAnswer) -> Message {
    let stuck = answer.recharges == Some(false) && answer.need.typical <= answer.have.typical;
    let key = match (answer.starts, answer.coldest[1]) {
        (true, Reach::Beyond) => "oilway-cold-starts-always",
        (true, _) => "oilway-cold-starts",
        (false, Reach::Never) if stuck => "oilway-cold-stuck-always",
        (false, _) if stuck => "oilway-cold-stuck",
        (false, Reach::Never) => "oilway-cold-never",
        (false, _) => "oilway-cold-will-not",
    };
    let says = Message::new(key)
        .with("temperature", answer.temperature)
        .with("need", answer.need.typical)
        .with("have", answer.have.typical)
        .with("coldest", reach(answer.coldest[1]));
    if answer.verdict == Verdict::CannotTellYet { message!("oilway-cold-usual", said = says) } else { says }
}

fn reach(reach: Reach) -> Message {
    match reach {
        Reach::DownTo(limit) => message!("oilway-cold-down-to", temperature = limit),
        Reach::Beyond => message!("oilway-cold-beyond"),
        Reach::Never => message!("oilway-cold-not-enough"),
    }
}

/// What the ranges do to it; none where everything is known.
pub(crate) fn band(answer: &ColdAnswer) -> Option<Message> {
    let [best, _, worst] = answer.coldest;
    (!answer.open.is_empty()).then(|| {
        message!(
            "oilway-cold-band",
            need = (answer.need.low, answer.need.high),
            have = (answer.have.low, answer.have.high),
            best = reach(best),
            worst = reach(worst)
        )
    })
}

/// The limit that the lubricant states for itself.
pub(crate) fn stated(answer: &ColdAnswer) -> Option<Message> {
    answer.stated.map(|stated| message!("oilway-cold-stated", stated = stated))
}

/// Each remedy, how far it reaches, and the sentence about it.
pub(crate) fn remedies(answer: &ColdAnswer) -> Vec<(Message, Reach, Message)> {
    let one = |&(cure, down): &(Cure, Reach)| {
        let what = match cure {
            Cure::Softer => message!("oilway-cold-softer"),
            Cure::Wider => message!("oilway-cold-wider"),
            Cure::Traced => message!("oilway-cold-traced", temperature = TRACED),
        };
        let key = match down {
            Reach::DownTo(_) => "oilway-cold-remedy",
            Reach::Beyond => "oilway-cold-remedy-beyond",
            Reach::Never => "oilway-cold-remedy-not-enough",
        };
        let says = Message::new(key).with("what", what.clone()).with("reach", reach(down));
        (what, down, says)
    };
    answer.cures.iter().map(one).collect()
}

/// The one question that narrows the answer most.
pub(crate) fn question(answer: &ColdAnswer) -> Option<Message> {
    let open = answer.open.first()?;
    let (at, question) = (open.name.replace('_', " "), ask(open.name));
    let range = span(open.low, open.high);
    Some(match open.turns_at {
        Some(value) => message!(
            "oilway-question-turns",
            question = question,
            at = at,
            span = range,
            value = turning_value(value, open.high)
        ),
        None => message!("oilway-question", question = question, at = at, span = range),
    })
}

fn ask(name: &str) -> Message {
    Message::new(match name {
        "temperature" => "oilway-cold-ask-temperature",
        "yield" => "oilway-cold-ask-yield",
        "yield_at" => "oilway-cold-ask-yield-at",
        "halving" => "oilway-cold-ask-halving",
        "rest" => "oilway-cold-ask-rest",
        "length" => "oilway-cold-ask-length",
        "bore" => "oilway-cold-ask-bore",
        "pressure" => "oilway-cold-ask-pressure",
        "ratio" => "oilway-cold-ask-ratio",
        "air" => "oilway-cold-ask-air",
        "efficiency" => "oilway-cold-ask-efficiency",
        "reset" => "oilway-cold-ask-reset",
        _ => "oilway-cold-ask-end",
    })
}

/// The rule for the maintenance plan, and the hardest case as long as the question is open.
pub(crate) fn plan(answer: &ColdAnswer) -> Vec<Message> {
    let Some(plan) = answer.plan else {
        let wrong = answer.coldest[1] != Reach::Beyond;
        return wrong.then(|| message!("oilway-cold-plan-wrong")).into_iter().collect();
    };
    let worst = match answer.coldest[2] {
        _ if answer.open.is_empty() => None,
        Reach::DownTo(limit) if limit > plan => Some(message!("oilway-cold-plan-worst", worst = limit)),
        Reach::Never => Some(message!("oilway-cold-plan-open")),
        _ => None,
    };
    [message!("oilway-cold-plan", plan = plan)].into_iter().chain(worst).collect()
}

/// What was taken, and why.
pub(crate) fn why_taken(open: &Open) -> Message {
    match open.origin {
        Origin::Assumed(key) if !key.is_empty() => Message::new(key),
        _ => message!("oilway-cold-taken-said"),
    }
}

fn taken(page: &mut Page, answer: &ColdAnswer, all: bool) {
    if answer.open.is_empty() {
        return;
    }
    page.heading(&message!("oilway-assumptions"));
    let most = if all { answer.open.len() } else { FIRST.min(answer.open.len()) };
    for (number, open) in answer.open.iter().take(most).enumerate() {
        let range = Arg::from(span(open.low, open.high));
        let says = message!(
            "oilway-cold-taken",
            name = open.name.replace('_', " "),
            span = range,
            what = why_taken(open)
        );
        page.item(&format!("{:>3}. ", number + 1), &says);
    }
    if answer.open.len() > most {
        page.say(&message!("oilway-more-assumptions", more = answer.open.len() - most));
    }
}
