//! `oilway what-if`: one or more values changed in memory, and what that does: before and after, side by side.

use oilway_catalogue::lubricants::library;
use oilway_physics::Ledger;
use oilway_store::change::set_value;
use oilway_text::{Reader, message};

use crate::bench::{self, Worked};
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
    let mut text = opened.text.clone();
    for change in changes {
        let Some((at, value)) = change.split_once('=') else {
            return Err(Trouble::asked(
                message!("oilway-no-pair", text = change),
                message!("oilway-no-change-cure"),
            ));
        };
        text = set_value(&opened.file, &text, at.trim(), value, &opened.catalogue, library())
            .map_err(|mistakes| Trouble::Mistakes(vec![(opened.file.clone(), text.clone())], mistakes))?;
    }
    let before = bench::work(desk, &opened.job, &opened.catalogue, &mut Ledger::off())?;
    let changed = bench::opened(desk, opened.file.clone(), text, &[])?;
    let after = bench::work(desk, &changed.job, &changed.catalogue, &mut Ledger::off())?;
    let exit = after.answer.verdict.into();
    let reader = desk.reader(before.design.units);
    let compared = Compared { before, after };
    let data = |reader: &Reader| WhatIfAnswer::new(&compared, reader);
    Ok(desk.reply(exit, reader, data, |page| show::what_if::compared(page, &compared)))
}
