//! `oilway ladder`: all pressures of a system on one scale.

use oilway_documents::{sheets, text};
use oilway_physics::Ledger;
use oilway_text::Reader;

use crate::bench;
use crate::desk::{Desk, Reply};
use crate::json::ladder::LadderAnswer;
use crate::page::WIDTH;
use crate::request::Request;
use crate::trouble::Trouble;
use crate::verbs::{Input, Takes, Verb};

pub(crate) static VERB: Verb = Verb {
    name: "ladder",
    title: "oilway-verb-ladder",
    about: "oilway-verb-ladder-about",
    inputs: &[Input { name: "job", takes: Takes::Word, value: "JOB", help: "oilway-input-job" }],
    examples: &["ladder jobs/dairy"],
    run,
    schema: Some(crate::json::schema::<LadderAnswer>),
};

fn run(desk: &Desk, request: &Request) -> Result<Reply, Trouble> {
    let opened = bench::open(desk, request.word("job").unwrap_or_default(), &[])?;
    let worked = bench::work(desk, &opened.job, &opened.catalogue, &mut Ledger::off())?;
    let reader = desk.reader(worked.design.units);
    let sheet = sheets::ladder(&worked.design, &worked.answer, &worked.findings);
    let data = |reader: &Reader| LadderAnswer::new(&sheet, reader);
    Ok(desk.reply(worked.answer.verdict.into(), reader, data, |page| {
        page.sheet(&text::write(&sheet, &reader, WIDTH))
    }))
}
