//! `oilway manual`: the manual pages, made from the table of verbs.

use std::path::Path;

use clap::Command;
use clap_mangen::Man;
use oilway_text::message;

use crate::command::command;
use crate::desk::{Desk, Reply};
use crate::exit::Exit;
use crate::files;
use crate::request::Request;
use crate::trouble::Trouble;
use crate::verbs::{Input, Takes, VERBS, Verb};

pub(crate) static VERB: Verb = Verb {
    name: "manual",
    title: "oilway-verb-manual",
    about: "oilway-verb-manual-about",
    inputs: &[
        Input { name: "verb", takes: Takes::PerhapsWord, value: "VERB", help: "oilway-input-verb" },
        Input { name: "out", takes: Takes::Option, value: "FOLDER", help: "oilway-input-manual-out" },
    ],
    examples: &["manual", "manual calc", "manual --out man"],
    run,
    schema: None,
};

fn run(_: &Desk, request: &Request) -> Result<Reply, Trouble> {
    let mut whole = command().disable_help_subcommand(true);
    whole.build();
    if let Some(folder) = request.word("out") {
        return all(&whole, Path::new(folder));
    }
    match request.word("verb") {
        None => Ok(Reply::plain(page(whole))),
        Some(name) => match whole.find_subcommand(name) {
            Some(verb) => Ok(Reply::plain(page(named(verb)))),
            None => Err(no_verb(name)),
        },
    }
}

/// A verb under the name that its page has.
fn named(verb: &Command) -> Command {
    verb.clone()
        .name(format!("oilway-{}", verb.get_name()))
        .display_name(format!("oilway-{}", verb.get_name()))
}

fn page(command: Command) -> String {
    let mut page = Vec::new();
    // Writing into memory does not fail.
    let _ = Man::new(command).render(&mut page);
    String::from_utf8_lossy(&page).into_owned()
}

fn all(whole: &Command, folder: &Path) -> Result<Reply, Trouble> {
    files::folder(folder)?;
    files::save(&folder.join("oilway.1"), page(whole.clone()).as_bytes())?;
    for verb in whole.get_subcommands() {
        let path = folder.join(format!("oilway-{}.1", verb.get_name()));
        files::save(&path, page(named(verb)).as_bytes())?;
    }
    Ok(Reply::plain(format!("{}\n", folder.display())))
}

/// The table holds no verb of this name.
pub(crate) fn no_verb(name: &str) -> Trouble {
    let cure = match oilway_catalogue::reading::nearest(name, VERBS.iter().map(|verb| verb.name)) {
        Some(near) => message!("oilway-perhaps", word = near),
        None => message!("oilway-no-verb-cure"),
    };
    Trouble::Told(Exit::Mistakes, vec![(message!("oilway-no-verb", name = name), cure)])
}
