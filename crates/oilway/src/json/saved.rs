//! A file that a verb wrote, for programs.

use oilway_text::{Message, say};
use schemars::JsonSchema;
use serde::Serialize;

use crate::desk::{Desk, Reply};
use crate::exit::Exit;

/// The answer of a verb that writes a file and nothing else.
#[derive(Debug, Serialize, JsonSchema)]
pub struct SavedAnswer {
    /// `oilway.<verb>.1`
    pub version: &'static str,
    /// The file that was written.
    pub file: String,
    /// What was done, in a sentence.
    pub says: String,
}

impl SavedAnswer {
    /// The answer in the form that was asked for.
    pub(crate) fn reply(desk: &Desk, version: &'static str, file: &str, says: Message) -> Reply {
        let reader = desk.reader(None);
        let data = |reader: &_| SavedAnswer { version, file: file.to_owned(), says: say(&says, reader) };
        desk.reply(Exit::Works, reader, data, |page| page.say(&says))
    }

    /// A list of names instead of something done, one in a line.
    pub(crate) fn listed(desk: &Desk, version: &'static str, file: &str, list: &str) -> Reply {
        let reader = desk.reader(None);
        let data = |_: &_| SavedAnswer { version, file: file.to_owned(), says: list.to_owned() };
        desk.reply(Exit::Works, reader, data, |page| page.set(list))
    }
}
