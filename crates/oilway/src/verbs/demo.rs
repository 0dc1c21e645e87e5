//! `oilway demo`: a whole invented job, from the survey to the sheets.

use std::path::Path;

use oilway_physics::Ledger;
use oilway_text::message;

use super::design::{answer, write_all};
use crate::bench;
use crate::desk::{Desk, Reply};
use crate::exit::Exit;
use crate::files;
use crate::json::design::DesignAnswer;
use crate::page::Page;
use crate::request::Request;
use crate::trouble::Trouble;
use crate::verbs::{Input, Takes, Verb};

pub(crate) static VERB: Verb = Verb {
    name: "demo",
    title: "oilway-verb-demo",
    about: "oilway-verb-demo-about",
    inputs: &[Input { name: "out", takes: Takes::Option, value: "FOLDER", help: "oilway-input-demo-out" }],
    examples: &["demo", "demo --units us --out sheets"],
    run,
    schema: Some(crate::json::schema::<DesignAnswer>),
};

/// The job of the dairy, as it stands in `jobs/`.
const JOB: &str = include_str!("../../../../jobs/dairy/job.toml");

fn run(desk: &Desk, request: &Request) -> Result<Reply, Trouble> {
    let folder = Path::new(request.word("out").unwrap_or("out"));
    let file = folder.join("job.toml");
    files::folder(folder)?;
    // Somebody may have made this job his own: then it is not the demo any more.
    if file.exists() && files::text(&file.display().to_string())? != JOB {
        let what = message!("oilway-demo-is-there", file = file.display().to_string());
        return Err(Trouble::Told(Exit::Files, vec![(what, message!("oilway-demo-is-there-cure"))]));
    }
    files::save(&file, JOB.as_bytes())?;
    let opened = bench::opened(desk, file.display().to_string(), JOB.to_owned(), &[])?;
    let mut worked = bench::work(desk, &opened.job, &opened.catalogue, &mut Ledger::off())?;
    let study = bench::study(desk, &worked.design);
    worked.answer.verdict = study.weigh(worked.answer.verdict);
    let reader = desk.reader(worked.design.units);
    let mut written = write_all(folder, &worked, &study, &reader)?;
    written.insert(0, file);
    let mut reply = answer(desk, &worked, &study, &written);
    if !desk.json {
        let mut page = Page::new(reader, desk.paint);
        page.gap();
        let job = opened.file.as_str();
        page.say(&message!("oilway-demo-next", job = job));
        for line in ["check", "why", "span", "ladder"] {
            page.line(&format!("    oilway {line} {job}"));
        }
        reply.out.push('\n');
        reply.out.push_str(&page.finish());
    }
    // The demo has done what it should when it ran to its end, whatever its verdict.
    Ok(Reply { exit: Exit::Works, ..reply })
}
