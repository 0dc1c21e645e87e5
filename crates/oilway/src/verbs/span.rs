//! `oilway span`: what the unknowns and ranges of a job do to the answer, which of them matter, and the one question to ask.

use oilway_physics::Ledger;

use crate::bench;
use crate::desk::{Desk, Reply};
use crate::json::span::SpanAnswer;
use crate::request::Request;
use crate::show;
use crate::trouble::Trouble;
use crate::verbs::{Input, Takes, Verb};

pub(crate) static VERB: Verb = Verb {
    name: "span",
    title: "oilway-verb-span",
    about: "oilway-verb-span-about",
    inputs: &[Input { name: "job", takes: Takes::Word, value: "JOB", help: "oilway-input-job" }],
    examples: &["span jobs/gaps", "span jobs/dairy --all"],
    run,
    schema: Some(crate::json::schema::<SpanAnswer>),
};

fn run(desk: &Desk, request: &Request) -> Result<Reply, Trouble> {
    let opened = bench::open(desk, request.word("job").unwrap_or_default(), &[])?;
    let worked = bench::work(desk, &opened.job, &opened.catalogue, &mut Ledger::off())?;
    let study = bench::study(desk, &worked.design);
    let verdict = study.weigh(worked.answer.verdict);
    let data = |reader: &_| SpanAnswer::new(&study, reader);
    let reader = desk.reader(worked.design.units);
    Ok(desk.reply(verdict.into(), reader, data, |page| show::span::study(page, &study, verdict, desk.all)))
}
