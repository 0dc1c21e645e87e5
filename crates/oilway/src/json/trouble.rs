//! Mistakes for programs.

use oilway_text::{Message, Mistake, Reader, say};
use schemars::JsonSchema;
use serde::Serialize;

use crate::trouble::Trouble;

/// Why there is no answer: every verb gives this instead of its own structure when it ends with 6 or 7.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ProblemsAnswer {
    /// `oilway.problems.1`
    pub version: &'static str,
    /// All that was found, in the order of the files.
    pub problems: Vec<ProblemData>,
}

/// One problem.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ProblemData {
    /// The file, if it stands in one.
    pub file: Option<String>,
    /// The line, counted from one.
    pub line: Option<usize>,
    /// The column in characters, counted from one.
    pub column: Option<usize>,
    /// What is wrong.
    pub what: String,
    /// What cures it.
    pub cure: String,
    /// The cure as a patch, where one is known.
    pub fix: Option<FixData>,
}

/// A patch: bytes to replace, and what to put there.
#[derive(Debug, Serialize, JsonSchema)]
pub struct FixData {
    /// The first byte to replace.
    pub from: usize,
    /// The first byte to keep again.
    pub to: usize,
    /// What to put there.
    pub with: String,
}

impl ProblemsAnswer {
    pub(crate) fn new(trouble: &Trouble, reader: &Reader) -> Self {
        let problems = match trouble {
            Trouble::Mistakes(texts, mistakes) => {
                mistakes.iter().map(|m| in_file(texts, m, reader)).collect()
            }
            Trouble::Told(_, list) => list.iter().map(|(what, cure)| told(what, cure, reader)).collect(),
        };
        ProblemsAnswer { version: "oilway.problems.1", problems }
    }
}

fn in_file(texts: &[(String, String)], mistake: &Mistake, reader: &Reader) -> ProblemData {
    let text = texts.iter().find(|(file, _)| *file == mistake.file).map(|(_, text)| text.as_str());
    let place = text.map(|text| mistake.line_column(text));
    let fix = mistake.fix.as_ref();
    ProblemData {
        file: Some(mistake.file.clone()),
        line: place.map(|(line, _)| line),
        column: place.map(|(_, column)| column),
        what: say(&mistake.what, reader),
        cure: say(&mistake.cure, reader),
        fix: fix.map(|(at, with)| FixData { from: at.start, to: at.end, with: with.clone() }),
    }
}

fn told(what: &Message, cure: &Message, reader: &Reader) -> ProblemData {
    let (what, cure) = (say(what, reader), say(cure, reader));
    ProblemData { file: None, line: None, column: None, what, cure, fix: None }
}
