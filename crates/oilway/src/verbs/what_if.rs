//! `oilway what-if`: one or more values changed in memory, and what that does: before and after, side by side.

use core::ops::Range;

use oilway_catalogue::lubricants::library;
use oilway_physics::Ledger;
use oilway_store::change::set_value;
use oilway_text::{Message, Mistake, Reader, message};

use crate::bench::{self, Opened, Worked};
use crate::desk::{Desk, Reply};
use crate::json::what_if::WhatIfAnswer;
use crate::request::Request;
use crate::show;
use crate::trouble::Trouble;
use crate::verbs::{Input, Takes, Verb};

pub(crate) static VERB: Verb = Verb {
    name: "what-if",
    title: "oilway-verb-what-if",
    about: "oilway-verb-what-if-about",
    inputs: &[
        Input { name: "job", takes: Takes::Word, value: "JOB", help: "oilway-input-job" },
        Input { name: "changes", takes: Takes::Words, value: "PLACE=VALUE", help: "oilway-input-changes" },
    ],
    examples: &[
        "what-if jobs/dairy 'place.cold room.temperature=-10 °C'",
        "what-if jobs/dairy air.lowest='5 bar'",
    ],
    run,
    schema: Some(crate::json::schema::<WhatIfAnswer>),
};

/// Before and after.
#[derive(Debug)]
pub(crate) struct Compared {
    /// The job as it stands.
    pub(crate) before: Worked,
    /// The job with the changes.
    pub(crate) after: Worked,
}

fn run(desk: &Desk, request: &Request) -> Result<Reply, Trouble> {
    let opened = bench::open(desk, request.word("job").unwrap_or_default(), &[])?;
    let changes = request.words("changes");
    if changes.is_empty() {
        return Err(Trouble::asked(message!("oilway-no-change"), message!("oilway-no-change-cure")));
    }
    let text = changed(&opened, changes)?;
    let before = bench::work(desk, &opened.job, &opened.catalogue, &mut Ledger::off())?;
    let changed = bench::opened(desk, opened.file.clone(), text, &[])?;
    let after = bench::work(desk, &changed.job, &changed.catalogue, &mut Ledger::off())?;
    let exit = after.answer.verdict.into();
    let reader = desk.reader(before.design.units);
    let compared = Compared { before, after };
    let data = |reader: &Reader| WhatIfAnswer::new(&compared, reader);
    Ok(desk.reply(exit, reader, data, |page| show::what_if::compared(page, &compared)))
}

/// What the changes are called where a mistake in one of them is told.
const CHANGES: &str = "what-if";

/// The text of the job with all the changes; every mistake is told at the change that makes it, since the file has no such line.
fn changed(opened: &Opened, changes: &[String]) -> Result<String, Trouble> {
    let (mut text, mut told) = (opened.text.clone(), String::new());
    let mut mistakes = Vec::new();
    for change in changes {
        let begin = told.len();
        told.push_str(change);
        told.push('\n');
        let sign = change.find('=');
        let at = sign.map_or(change.as_str(), |sign| &change[..sign]);
        let place = begin..begin + at.len();
        let Some(sign) = sign else {
            let (what, cure) =
                (message!("oilway-no-change-pair", text = change), message!("oilway-no-change-cure"));
            mistakes.push(mistake(place, what, cure));
            continue;
        };
        let value = begin + sign + 1..begin + change.len();
        match set_value(&opened.file, &text, at.trim(), &change[sign + 1..], &opened.catalogue, library()) {
            Ok(changed) => text = changed,
            Err(list) => mistakes.extend(list.into_iter().map(|told| {
                let at = if is_of_the_place(told.what.key) { place.clone() } else { value.clone() };
                mistake(at, told.what, told.cure)
            })),
        }
    }
    if mistakes.is_empty() {
        Ok(text)
    } else {
        Err(Trouble::Mistakes(vec![(CHANGES.to_owned(), told)], mistakes))
    }
}

fn mistake(at: Range<usize>, what: Message, cure: Message) -> Mistake {
    Mistake { file: CHANGES.to_owned(), at, what, cure, fix: None }
}

/// Whether a mistake is one in the place of a change rather than in its value.
fn is_of_the_place(key: &str) -> bool {
    const OF_THE_PLACE: [&str; 5] = [
        "reading-unknown-key",
        "store-change-place",
        "store-change-member",
        "store-change-stretch",
        "store-one-of-several",
    ];
    OF_THE_PLACE.contains(&key)
}
