//! [`Desk`]: how the one who asks wants to read, and [`Reply`]: what a verb hands back.

use std::io::{self, IsTerminal};
use std::path::PathBuf;

use clap::ArgMatches;
use oilway_text::Reader;
use oilway_units::UnitSystem;
use serde::Serialize;

use crate::exit::Exit;
use crate::json;
use crate::page::Page;

/// The wishes that hold for every verb.
#[derive(Clone, Debug)]
pub struct Desk {
    /// The units that were asked for, by option or surroundings.
    pub(crate) units: Option<UnitSystem>,
    /// Both systems of units.
    pub(crate) both: bool,
    /// Everything, not only the first lines of long lists.
    pub(crate) all: bool,
    /// JSON instead of a page.
    pub(crate) json: bool,
    /// Weight of letters on the answer's page.
    pub(crate) paint: bool,
    /// Weight of letters beside it.
    pub(crate) paint_beside: bool,
    /// Whether somebody watches, so that progress is worth showing.
    pub(crate) watched: bool,
    /// The user's own parts, over the house range.
    pub(crate) catalogue: Option<PathBuf>,
}

/// What a verb hands back.
#[derive(Debug)]
pub struct Reply {
    /// How it ended.
    pub(crate) exit: Exit,
    /// The answer.
    pub(crate) out: String,
    /// Remarks that do not belong to the answer.
    pub(crate) remarks: String,
}

impl Desk {
    /// The wishes on the command line, in the surroundings and of the terminal.
    pub(crate) fn new(matches: &ArgMatches) -> Self {
        let matches = matches.subcommand().map_or(matches, |(_, inner)| inner);
        let no_colour = std::env::var_os("NO_COLOR").is_some_and(|value| !value.is_empty());
        let paint = |terminal: bool| match matches.get_one::<String>("colour").map(String::as_str) {
            Some("always") => true,
            Some("never") => false,
            _ => terminal && !no_colour,
        };
        Desk {
            units: matches.get_one::<String>("units").and_then(|name| name.parse().ok()),
            both: matches.get_flag("both"),
            all: matches.get_flag("all"),
            json: matches.get_flag("json"),
            paint: paint(io::stdout().is_terminal()),
            paint_beside: paint(io::stderr().is_terminal()),
            watched: io::stderr().is_terminal(),
            catalogue: matches.get_one::<String>("catalogue").map(PathBuf::from),
        }
    }

    /// Who reads: the units asked for come before those of the job.
    pub(crate) fn reader(&self, job: Option<UnitSystem>) -> Reader {
        let units = self.units.or(job).unwrap_or_default();
        Reader { both: self.both, ..Reader::new(units) }
    }

    /// The answer in the form that was asked for; only that form is made.
    pub(crate) fn reply<T: Serialize>(
        &self,
        exit: Exit,
        reader: Reader,
        data: impl FnOnce(&Reader) -> T,
        page: impl FnOnce(&mut Page),
    ) -> Reply {
        if self.json {
            // In JSON every quantity carries its number in SI; the words beside it need one system only.
            let reader = Reader { both: false, ..reader };
            return Reply { exit, out: json::print(&data(&reader)), remarks: String::new() };
        }
        let mut paper = Page::new(reader, self.paint);
        page(&mut paper);
        Reply { exit, out: paper.finish(), remarks: String::new() }
    }
}

impl Reply {
    /// A text that is the answer whatever form was asked for: a script, a manual, a file for the next program.
    pub(crate) fn plain(out: String) -> Reply {
        Reply::with(Exit::Works, out)
    }
    /// A text that is the answer, and how it ended.
    pub(crate) fn with(exit: Exit, out: String) -> Reply {
        Reply { exit, out, remarks: String::new() }
    }
}
