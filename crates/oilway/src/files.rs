//! Files for the verbs: read and written through the store, with its sentences for what went wrong.

use std::path::Path;

use crate::exit::Exit;
use crate::trouble::Trouble;

/// The text of a file.
pub(crate) fn text(path: &str) -> Result<String, Trouble> {
    oilway_store::files::load_text(Path::new(path)).map_err(trouble)
}

/// What the store could not do.
pub(crate) fn trouble(problem: oilway_store::files::FileProblem) -> Trouble {
    Trouble::Told(Exit::Files, vec![(problem.what, problem.cure)])
}
