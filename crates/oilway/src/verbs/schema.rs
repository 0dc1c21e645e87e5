//! `oilway schema`: what the JSON of each verb holds.

use std::path::Path;

use schemars::Schema;

use super::manual::no_verb;
use crate::desk::{Desk, Reply};
use crate::files;
use crate::json::{print, schema, trouble::ProblemsAnswer};
use crate::request::Request;
use crate::trouble::Trouble;
use crate::verbs::{Input, Takes, VERBS, Verb};

pub(crate) static VERB: Verb = Verb {
    name: "schema",
    title: "oilway-verb-schema",
    about: "oilway-verb-schema-about",
    inputs: &[
        Input { name: "verb", takes: Takes::PerhapsWord, value: "VERB", help: "oilway-input-schema" },
        Input { name: "out", takes: Takes::Option, value: "FOLDER", help: "oilway-input-schema-out" },
    ],
    examples: &["schema", "schema calc"],
    run,
    schema: None,
};

/// The name of the schema of what every verb gives when there is no answer.
const PROBLEMS: &str = "problems";

/// Every schema by its name: that of a verb, and that of problems.
pub(crate) fn schemas() -> Vec<(&'static str, Schema)> {
    let of_verb = |verb: &&Verb| Some((verb.name, (verb.schema?)()));
    let mut all: Vec<_> = VERBS.iter().filter_map(of_verb).collect();
    all.push((PROBLEMS, schema::<ProblemsAnswer>()));
    all
}

fn run(_: &Desk, request: &Request) -> Result<Reply, Trouble> {
    if let Some(folder) = request.word("out") {
        files::folder(Path::new(folder))?;
        for (name, schema) in schemas() {
            files::save(&Path::new(folder).join(format!("{name}.json")), print(&schema).as_bytes())?;
        }
        return Ok(Reply::plain(format!("{folder}\n")));
    }
    let Some(wanted) = request.word("verb") else {
        let names: Vec<String> = schemas().into_iter().map(|(name, _)| format!("{name}\n")).collect();
        return Ok(Reply::plain(names.concat()));
    };
    match schemas().into_iter().find(|(name, _)| *name == wanted) {
        Some((_, schema)) => Ok(Reply::plain(print(&schema))),
        None => Err(no_verb(wanted)),
    }
}
