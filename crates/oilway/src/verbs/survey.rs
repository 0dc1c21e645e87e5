//! `oilway survey`: the spreadsheet that a fitter fills, and the job file made of it.

use std::path::Path;

use oilway_catalogue::lubricants::library;
use oilway_store::{read_survey, survey_template};
use oilway_text::message;

use crate::desk::{Desk, Reply};
use crate::exit::Exit;
use crate::files;
use crate::json::saved::SavedAnswer;
use crate::request::Request;
use crate::trouble::Trouble;
use crate::verbs::{Input, Takes, Verb};

pub(crate) static VERB: Verb = Verb {
    name: "survey",
    title: "oilway-verb-survey",
    about: "oilway-verb-survey-about",
    inputs: &[
        Input {
            name: "action",
            takes: Takes::OneOf(&["write", "read"]),
            value: "ACTION",
            help: "oilway-input-survey-action",
        },
        Input { name: "file", takes: Takes::Word, value: "FILE", help: "oilway-input-survey-file" },
        Input { name: "job", takes: Takes::PerhapsWord, value: "JOB", help: "oilway-input-survey-job" },
    ],
    examples: &["survey write survey.xlsx"],
    run,
    schema: Some(crate::json::schema::<SavedAnswer>),
};

fn run(desk: &Desk, request: &Request) -> Result<Reply, Trouble> {
    let file = request.word("file").unwrap_or_default();
    if request.word("action") == Some("write") {
        let bytes = survey_template()
            .map_err(|what| Trouble::Told(Exit::Files, vec![(what, message!("oilway-no-folder-cure"))]))?;
        files::save_new(Path::new(file), &bytes)?;
        return Ok(SavedAnswer::reply(
            desk,
            "oilway.survey.1",
            file,
            message!("oilway-survey-written", file = file),
        ));
    }
    let catalogue = files::catalogue(desk)?;
    let survey = read_survey(file, &files::bytes(file)?, &catalogue, library());
    let Some(text) = survey.job_text else {
        return Err(files::cells(survey.mistakes));
    };
    let job = request
        .word("job")
        .map_or_else(|| Path::new(file).with_extension("toml"), |job| Path::new(job).to_owned());
    files::save_new(&job, text.as_bytes())?;
    let job = job.display().to_string();
    Ok(SavedAnswer::reply(
        desk,
        "oilway.survey.1",
        &job,
        message!("oilway-survey-read", file = file, job = job.as_str()),
    ))
}
