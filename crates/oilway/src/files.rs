//! Files for the verbs: read and written through the store, with its sentences for what went wrong.

use std::path::Path;

use oilway_catalogue::{Catalogue, house};
use oilway_store::SheetMistake;
use oilway_store::files::FileProblem;
use oilway_text::{Message, message};

use crate::desk::Desk;
use crate::exit::Exit;
use crate::trouble::Trouble;

/// The text of a file.
pub(crate) fn text(path: &str) -> Result<String, Trouble> {
    oilway_store::files::load_text(Path::new(path)).map_err(trouble)
}

/// The text of a job file; a folder that reaches here has no job in it.
pub(crate) fn job_text(path: &str) -> Result<String, Trouble> {
    if Path::new(path).is_dir() {
        let what = message!("oilway-no-job-here", folder = path);
        return Err(Trouble::Told(Exit::Files, vec![(what, message!("oilway-no-job-here-cure"))]));
    }
    text(path)
}

/// The bytes of a file.
pub(crate) fn bytes(path: &str) -> Result<Vec<u8>, Trouble> {
    oilway_store::files::load(Path::new(path)).map_err(trouble)
}

/// Saves a file whole or not at all.
pub(crate) fn save(path: &Path, bytes: &[u8]) -> Result<(), Trouble> {
    oilway_store::files::save(path, bytes).map_err(trouble)
}

/// Saves a file that must not be there yet: what somebody wrote by hand is not lost to a slip of the hand.
pub(crate) fn save_new(path: &Path, bytes: &[u8]) -> Result<(), Trouble> {
    if path.exists() {
        let file = path.display().to_string();
        let what = message!("oilway-file-is-there", file = file);
        return Err(Trouble::Told(Exit::Files, vec![(what, message!("oilway-file-is-there-cure"))]));
    }
    save(path, bytes)
}

/// Makes a folder, with those above it.
pub(crate) fn folder(path: &Path) -> Result<(), Trouble> {
    std::fs::create_dir_all(path).map_err(|error| {
        let what =
            message!("oilway-no-folder", folder = path.display().to_string(), reason = error.to_string());
        Trouble::Told(Exit::Files, vec![(what, message!("oilway-no-folder-cure"))])
    })
}

/// What the store could not do.
pub(crate) fn trouble(problem: FileProblem) -> Trouble {
    Trouble::Told(Exit::Files, vec![(problem.what, problem.cure)])
}

/// Mistakes in cells of a spreadsheet.
pub(crate) fn cells(mistakes: Vec<SheetMistake>) -> Trouble {
    let told = |mistake: SheetMistake| {
        let cell = format!("{}{}", mistake.column, mistake.row);
        let what = if mistake.sheet.is_empty() {
            message!("oilway-in-cell", file = mistake.file, cell = cell, what = mistake.what)
        } else {
            message!(
                "oilway-in-sheet",
                file = mistake.file,
                sheet = mistake.sheet,
                cell = cell,
                what = mistake.what
            )
        };
        (what, mistake.cure)
    };
    Trouble::Told(Exit::Mistakes, mistakes.into_iter().map(told).collect())
}

/// The parts that a job may use: the house range, with the user's own folder over it.
pub(crate) fn catalogue(desk: &Desk) -> Result<Catalogue, Trouble> {
    match &desk.catalogue {
        None => Ok(house::catalogue().clone()),
        Some(folder) => own_catalogue(folder),
    }
}

/// A folder of parts over the house range; all its mistakes if it has any.
pub(crate) fn own_catalogue(folder: &Path) -> Result<Catalogue, Trouble> {
    let read = oilway_store::read_catalogue(folder).map_err(trouble)?;
    if !read.problems.is_empty() {
        let list: Vec<(Message, Message)> = read.problems.into_iter().map(|p| (p.what, p.cure)).collect();
        return Err(Trouble::Told(Exit::Files, list));
    }
    if !read.mistakes.is_empty() {
        return Err(Trouble::Mistakes(read.texts, read.mistakes));
    }
    Ok(read.catalogue)
}
