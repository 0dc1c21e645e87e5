//! `oilway check`: what the independent checker finds, with numbers, sources, cures, and what would turn each finding.

use oilway_documents::{sheets, text};
use oilway_physics::Ledger;
use oilway_text::{Reader, message};

use crate::bench;
use crate::desk::{Desk, Reply};
use crate::json::check::CheckAnswer;
use crate::page::WIDTH;
use crate::request::Request;
use crate::trouble::Trouble;
use crate::verbs::{Input, Takes, Verb};

pub(crate) static VERB: Verb = Verb {
    name: "check",
    title: "oilway-verb-check",
    about: "oilway-verb-check-about",
    inputs: &[Input { name: "job", takes: Takes::Word, value: "JOB", help: "oilway-input-job" }],
    examples: &["check jobs/dairy", "check jobs/quarry --units us"],
    run,
    schema: Some(crate::json::schema::<CheckAnswer>),
};

fn run(desk: &Desk, request: &Request) -> Result<Reply, Trouble> {
    let opened = bench::open(desk, request.word("job").unwrap_or_default(), &[])?;
    let mut worked = bench::work(desk, &opened.job, &opened.catalogue, &mut Ledger::off())?;
    worked.answer.verdict = bench::study(desk, &worked.design).weigh(worked.answer.verdict);
    let reader = desk.reader(worked.design.units);
    let data = |reader: &Reader| CheckAnswer::new(&worked, reader);
    Ok(desk.reply(worked.answer.verdict.into(), reader, data, |page| {
        let sheet = sheets::findings(&worked.design, &worked.answer, &worked.findings);
        page.sheet(&text::write(&sheet, &reader, WIDTH));
        page.gap();
        page.say(&message!("oilway-local-codes"));
    }))
}
