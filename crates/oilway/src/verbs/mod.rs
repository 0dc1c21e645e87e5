//! The table of verbs. A verb is one file and one line of [`VERBS`]; command line, help, completions, manual and schemas come from here.

mod calc;
mod check;
mod cold_start;
mod completions;
mod demo;
mod design;
mod explain;
mod ladder;
mod manual;
pub(crate) mod meter;
mod parts;
mod pin;
mod reopen;
mod schema;
mod span;
mod survey;
pub(crate) mod what_if;
mod why;

use schemars::Schema;

use crate::desk::{Desk, Reply};
use crate::request::Request;
use crate::trouble::Trouble;

/// Something that oilway does.
#[derive(Debug)]
pub struct Verb {
    /// The word on the command line.
    pub name: &'static str,
    /// Key of the line that says what it does.
    pub title: &'static str,
    /// Key of the paragraph that says how.
    pub about: &'static str,
    /// What it takes.
    pub inputs: &'static [Input],
    /// Command lines without the program's name; each is run by a test.
    pub examples: &'static [&'static str],
    /// Does it.
    pub run: fn(&Desk, &Request) -> Result<Reply, Trouble>,
    /// The schema of its JSON; none for a verb whose answer is a text for another program.
    pub schema: Option<fn() -> Schema>,
}

/// Something that a verb takes.
#[derive(Debug)]
pub struct Input {
    /// Its name.
    pub name: &'static str,
    /// How often, and what.
    pub takes: Takes,
    /// The word for its value in the help.
    pub value: &'static str,
    /// Key of the line that explains it.
    pub help: &'static str,
}

/// How an input is given.
#[derive(Clone, Copy, Debug)]
pub enum Takes {
    /// One text in its place.
    Word,
    /// One text in its place, or none.
    PerhapsWord,
    /// Any number of texts.
    Words,
    /// One of these words in its place.
    OneOf(&'static [&'static str]),
    /// `--name`
    Flag,
    /// `--name TEXT`
    Option,
    /// `--name WORD`, one of these.
    OptionOf(&'static [&'static str]),
}

pub(crate) use schema::schemas;

/// Every verb, in the order of the help.
pub static VERBS: &[&Verb] = &[
    &demo::VERB,
    &survey::VERB,
    &design::VERB,
    &check::VERB,
    &ladder::VERB,
    &why::VERB,
    &span::VERB,
    &what_if::VERB,
    &pin::VERB,
    &reopen::VERB,
    &explain::VERB,
    &cold_start::VERB,
    &calc::VERB,
    &meter::VERB,
    &parts::VERB,
    &schema::VERB,
    &completions::VERB,
    &manual::VERB,
];
