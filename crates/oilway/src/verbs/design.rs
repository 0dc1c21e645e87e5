//! `oilway design`: the whole job: every open choice made, every number worked out, every sheet written.

use std::path::{Path, PathBuf};

use oilway_documents::sheets::SHEETS;
use oilway_documents::{csv, parts_list, sheets, text};

use oilway_physics::Ledger;
use oilway_solve::Study;
use oilway_store::write_lock;
use oilway_text::{Reader, message};

use crate::bench::{self, Worked};
use crate::desk::{Desk, Reply};
use crate::files;
use crate::json::design::DesignAnswer;
use crate::json::{self, print};
use crate::page::WIDTH;
use crate::request::Request;
use crate::show;
use crate::trouble::Trouble;
use crate::verbs::{Input, Takes, Verb};

pub(crate) static VERB: Verb = Verb {
    name: "design",
    title: "oilway-verb-design",
    about: "oilway-verb-design-about",
    inputs: &[
        Input { name: "job", takes: Takes::Word, value: "JOB", help: "oilway-input-job" },
        Input { name: "out", takes: Takes::Option, value: "FOLDER", help: "oilway-input-out" },
        Input { name: "sheet", takes: Takes::OptionOf(NAMES), value: "SHEET", help: "oilway-input-sheet" },
        Input { name: "pin", takes: Takes::Flag, value: "", help: "oilway-input-pin" },
        Input { name: "reopen", takes: Takes::Option, value: "PLACE", help: "oilway-input-design-reopen" },
    ],
    examples: &[
        "design jobs/dairy",
        "design jobs/dairy --sheet ports",
        "design jobs/oil-spindle --both --out sheets",
    ],
    run,
    schema: Some(json::schema::<DesignAnswer>),
};

/// The words of the sheets, in the order of [`SHEETS`].
const NAMES: &[&str] = &[
    "answer",
    "delivery",
    "lines",
    "package",
    "ladder",
    "ports",
    "build",
    "parts",
    "settings",
    "findings",
    "cautions",
    "assumptions",
    "reasons",
];

fn run(desk: &Desk, request: &Request) -> Result<Reply, Trouble> {
    let opened = bench::open(desk, request.word("job").unwrap_or_default(), request.words("reopen"))?;
    let mut worked = bench::work(desk, &opened.job, &opened.catalogue, &mut Ledger::off())?;
    let study = bench::study(desk, &worked.design);
    worked.answer.verdict = study.weigh(worked.answer.verdict);
    let reader = desk.reader(worked.design.units);
    let mut written = Vec::new();
    if let Some(folder) = request.word("out") {
        written = write_all(Path::new(folder), &worked, &study, &reader)?;
    }
    if request.flag("pin") {
        let path = bench::lock_file(&opened.file);
        files::save(&path, write_lock(&worked.design.reasons).as_bytes())?;
        written.push(path);
    }
    if let Some(name) = request.word("sheet").filter(|_| !desk.json) {
        return Ok(Reply::with(worked.answer.verdict.into(), sheet(name, &worked, &study, &reader)));
    }
    Ok(answer(desk, &worked, &study, &written))
}

/// The answer: the one page, the weightiest assumptions, and what was written.
pub(crate) fn answer(desk: &Desk, worked: &Worked, study: &Study, written: &[PathBuf]) -> Reply {
    let reader = desk.reader(worked.design.units);
    let data = |reader: &Reader| DesignAnswer::new(worked, study, written, reader);
    desk.reply(worked.answer.verdict.into(), reader, data, |page| {
        let sheet = sheets::answer(&worked.design, &worked.answer, &worked.findings);
        page.sheet(&text::write(&sheet, &reader, WIDTH));
        show::span::assumptions(page, &study.assumptions, desk.all);
        if let Some(question) = show::question::question(&study.assumptions) {
            page.gap();
            page.say(&question);
        }
        if !written.is_empty() {
            page.gap();
            let names: Vec<String> = written.iter().map(|path| path.display().to_string()).collect();
            page.say(&message!("oilway-written", files = names));
        }
    })
}

fn sheet(name: &str, worked: &Worked, study: &Study, reader: &Reader) -> String {
    let papers = worked.papers(&study.assumptions);
    sheets::sheet_kind(name)
        .map_or_else(String::new, |kind| text::write(&(kind.make)(&papers), reader, WIDTH))
}

/// Every sheet as text, the parts list as a table, and the whole answer for programs.
pub(crate) fn write_all(
    folder: &Path,
    worked: &Worked,
    study: &Study,
    reader: &Reader,
) -> Result<Vec<PathBuf>, Trouble> {
    files::folder(folder)?;
    let mut written = Vec::new();
    let mut put = |name: String, text: String| -> Result<(), Trouble> {
        let path = folder.join(name);
        files::save(&path, text.as_bytes())?;
        written.push(path);
        Ok(())
    };
    for kind in SHEETS {
        put(format!("{}.txt", kind.id), sheet(kind.id, worked, study, reader))?;
    }
    put("parts.csv".to_owned(), csv::write(&sheets::list(&parts_list(&worked.design)), reader))?;
    let plain = Reader { both: false, ..*reader };
    put("design.json".to_owned(), print(&DesignAnswer::new(worked, study, &[], &plain)))?;
    Ok(written)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_sheet_can_be_asked_for_by_its_word() {
        let ids: Vec<&str> = SHEETS.iter().map(|kind| kind.id).collect();
        assert_eq!(NAMES, ids);
    }
}
