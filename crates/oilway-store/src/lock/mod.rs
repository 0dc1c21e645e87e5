//! The lock file `job.lock`, format `lock 1`: what the tool chose and somebody approved, beside the job file.
//!
//! It is text with one `[[choice]]` for each, in the order of the design: `at` says where in the job, `chosen` what. A later run
//! keeps these choices like given ones and reports when one no longer passes; what the engineer wants chosen anew is
//! reopened. `docs/job-file.md` tells the places and how each choice is written.

mod apply;

use core::ops::Range;

use oilway_catalogue::reading::Reading;
use oilway_model::{Pinned, Reason};
use oilway_text::Mistake;

use crate::asked::{finish, quoted};
use crate::job::is_this_format;
pub use apply::apply_lock;

/// The format that is written, and the newest that is read.
const FORMAT: &str = "lock 1";

/// A lock file as read.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Lock {
    /// Its name, for mistakes.
    pub file: String,
    /// Its choices in the order of the file, each with the bytes where it stands.
    pub choices: Vec<(Pinned, Range<usize>)>,
}

/// The text of the lock file for the choices of a design.
pub fn write_lock(reasons: &[Reason]) -> String {
    let mut text = format!("oilway = {}\n", quoted(FORMAT));
    for reason in reasons {
        text.push_str(&format!(
            "\n[[choice]]\nat = {}\nchosen = {}\n",
            quoted(&reason.at),
            quoted(&reason.chosen)
        ));
    }
    text
}

/// Reads a lock file; what is wrong with a choice is noted and the choice left out.
pub fn read_lock(file: &str, text: &str) -> (Lock, Vec<Mistake>) {
    let reading = Reading::new(file, text);
    let mut lock = Lock { file: file.to_owned(), choices: Vec::new() };
    if !is_this_format(&reading, FORMAT, "lock") {
        return (lock, reading.give_up());
    }
    for table in reading.root().tables("choice") {
        let at = table.needed_text("at");
        let chosen = table.needed_text("chosen");
        if let (Some(at), Some(chosen)) = (at, chosen) {
            let pinned = Pinned { at: at.value.trim().to_owned(), chosen: chosen.value.trim().to_owned() };
            lock.choices.push((pinned, at.at.start..chosen.at.end.max(at.at.end)));
        }
    }
    (lock, finish(reading))
}
