//! `oilway completions`: what a shell needs to complete a command line.

use clap_complete::Shell;

use crate::command::command;
use crate::desk::{Desk, Reply};
use crate::request::Request;
use crate::trouble::Trouble;
use crate::verbs::{Input, Takes, Verb};

const SHELLS: &[(&str, Shell)] = &[
    ("bash", Shell::Bash),
    ("elvish", Shell::Elvish),
    ("fish", Shell::Fish),
    ("powershell", Shell::PowerShell),
    ("zsh", Shell::Zsh),
];

pub(crate) static VERB: Verb = Verb {
    name: "completions",
    title: "oilway-verb-completions",
    about: "oilway-verb-completions-about",
    inputs: &[Input {
        name: "shell",
        takes: Takes::OneOf(&["bash", "elvish", "fish", "powershell", "zsh"]),
        value: "SHELL",
        help: "oilway-input-shell",
    }],
    examples: &["completions bash"],
    run,
    schema: None,
};

fn run(_: &Desk, request: &Request) -> Result<Reply, Trouble> {
    let wanted = request.word("shell").unwrap_or_default();
    let shell = SHELLS.iter().find(|(name, _)| *name == wanted).map_or(Shell::Bash, |(_, shell)| *shell);
    let mut script = Vec::new();
    clap_complete::generate(shell, &mut command(), "oilway", &mut script);
    Ok(Reply::plain(String::from_utf8_lossy(&script).into_owned()))
}
