//! `oilway why`: how a number of a design came to be, down to what somebody said and to what was assumed, and why a choice was made.

use oilway_catalogue::reading::nearest;
use oilway_physics::{Ledger, Line};
use oilway_text::message;

use crate::bench;
use crate::desk::{Desk, Reply};
use crate::exit::Exit;
use crate::json::why::WhyAnswer;
use crate::request::Request;
use crate::show;
use crate::trouble::Trouble;
use crate::verbs::{Input, Takes, Verb};

pub(crate) static VERB: Verb = Verb {
    name: "why",
    title: "oilway-verb-why",
    about: "oilway-verb-why-about",
    inputs: &[
        Input { name: "job", takes: Takes::Word, value: "JOB", help: "oilway-input-job" },
        Input { name: "number", takes: Takes::Words, value: "NUMBER", help: "oilway-input-number" },
    ],
    examples: &[
        "why jobs/dairy",
        "why jobs/dairy supply.use",
        "why jobs/dairy package.disc",
        "why jobs/dairy washer chain 1 demand",
    ],
    run,
    schema: Some(crate::json::schema::<WhyAnswer>),
};

fn run(desk: &Desk, request: &Request) -> Result<Reply, Trouble> {
    let opened = bench::open(desk, request.word("job").unwrap_or_default(), &[])?;
    let mut ledger = Ledger::on();
    let worked = bench::work(desk, &opened.job, &opened.catalogue, &mut ledger)?;
    let reader = desk.reader(worked.design.units);
    let wanted = request.words("number").join(" ");
    // A choice has a reason and no formula.
    if let Some(reason) = worked.design.reasons.iter().find(|reason| reason.at == wanted) {
        let data = |reader: &_| WhyAnswer::choice(reason, reader);
        return Ok(desk.reply(Exit::Works, reader, data, |page| show::why::choice(page, reason)));
    }
    let found = matching(&ledger, &wanted);
    match found.as_slice() {
        [line] => {
            let data = |reader: &_| WhyAnswer::new(&ledger, line, reader);
            Ok(desk.reply(Exit::Works, reader, data, |page| show::why::chain(page, &ledger, line)))
        }
        [] => {
            let names = ledger.lines().map(|line| line.name.as_str());
            let places = worked.design.reasons.iter().map(|reason| reason.at.as_str());
            let cure = match nearest(&wanted, names.chain(places)) {
                Some(near) => message!("oilway-perhaps", word = near),
                None => message!("oilway-no-number-cure", job = opened.file.as_str()),
            };
            Err(Trouble::asked(message!("oilway-no-number", wanted = wanted), cure))
        }
        several => {
            let data = |reader: &_| WhyAnswer::list(several, reader);
            Ok(desk.reply(Exit::Works, reader, data, |page| show::why::list(page, several, desk.all)))
        }
    }
}

/// The number of this name, or all whose names hold every one of these words.
fn matching<'a>(ledger: &'a Ledger, wanted: &str) -> Vec<&'a Line> {
    if let Some(line) = ledger.line(wanted) {
        return vec![line];
    }
    let words: Vec<String> = wanted.split_whitespace().map(str::to_lowercase).collect();
    let fits = |line: &&Line| {
        let name = line.name.to_lowercase();
        words.iter().all(|word| name.contains(word.as_str()))
    };
    ledger.lines().filter(fits).collect()
}
