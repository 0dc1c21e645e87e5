//! [`Trouble`]: why a verb has no answer, and how that is told: to a person with the lines of the file, to a program as JSON.

use oilway_text::{Message, Mistake};

use crate::desk::Desk;
use crate::exit::Exit;
use crate::json::trouble::ProblemsAnswer;
use crate::show;

/// Why there is no answer.
#[derive(Debug)]
pub enum Trouble {
    /// Mistakes in files, with the text of each file.
    Mistakes(Vec<(String, String)>, Vec<Mistake>),
    /// Something wrong with what was asked, or a file that could not be read or written: how it ends, what, and the cure of each.
    Told(Exit, Vec<(Message, Message)>),
}

impl Trouble {
    /// One mistake in what was asked.
    pub(crate) fn asked(what: Message, cure: Message) -> Trouble {
        Trouble::Told(Exit::Mistakes, vec![(what, cure)])
    }

    /// Exit code, what goes to the answer, and what goes beside it.
    pub(crate) fn told(&self, desk: &Desk) -> (Exit, String, String) {
        let exit = match self {
            Trouble::Mistakes(..) => Exit::Mistakes,
            Trouble::Told(exit, _) => *exit,
        };
        if desk.json {
            return (exit, crate::json::print(&ProblemsAnswer::new(self, &desk.reader(None))), String::new());
        }
        let text = match self {
            Trouble::Mistakes(texts, mistakes) => show::mistakes::mistakes(texts, mistakes, desk),
            Trouble::Told(_, list) => show::mistakes::told(list, desk),
        };
        (exit, String::new(), text)
    }
}
