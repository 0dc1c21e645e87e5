//! `oilway pin`: what the tool chose and the customer approved stays so, until somebody reopens it.

use oilway_physics::Ledger;
use oilway_store::write_lock;
use oilway_text::message;

use crate::bench;
use crate::desk::{Desk, Reply};
use crate::files;
use crate::json::check::verdict_word;
use crate::json::saved::SavedAnswer;
use crate::request::Request;
use crate::trouble::Trouble;
use crate::verbs::{Input, Takes, Verb};

pub(crate) static VERB: Verb = Verb {
    name: "pin",
    title: "oilway-verb-pin",
    about: "oilway-verb-pin-about",
    inputs: &[Input { name: "job", takes: Takes::Word, value: "JOB", help: "oilway-input-job" }],
    examples: &[],
    run,
    schema: Some(crate::json::schema::<SavedAnswer>),
};

fn run(desk: &Desk, request: &Request) -> Result<Reply, Trouble> {
    let opened = bench::open(desk, request.word("job").unwrap_or_default(), &[])?;
    let worked = bench::work(desk, &opened.job, &opened.catalogue, &mut Ledger::off())?;
    let path = bench::lock_file(&opened.file);
    files::save(&path, write_lock(&worked.design.reasons).as_bytes())?;
    let file = path.display().to_string();
    let says = message!("oilway-pinned", file = file.as_str(), count = worked.design.reasons.len());
    // What is pinned may still be wrong: the exit code says so, and the sentence.
    let verdict = worked.answer.verdict;
    let says = message!("oilway-pinned-verdict", says = says, verdict = verdict_word(verdict));
    let reply = SavedAnswer::reply(desk, "oilway.pin.1", &file, says);
    Ok(Reply { exit: verdict.into(), ..reply })
}
