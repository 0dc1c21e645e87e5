//! The command line, made from the table of verbs.

use clap::builder::{PossibleValuesParser, StringValueParser, Styles};
use clap::{Arg, ArgAction, Command};
use oilway_text::{Message, Reader, say};

use crate::verbs::{Input, Takes, VERBS, Verb};

/// The whole command line.
pub(crate) fn command() -> Command {
    let verbs = VERBS.iter().map(|verb| subcommand(verb));
    Command::new("oilway")
        .version(env!("CARGO_PKG_VERSION"))
        .about(told("oilway-about"))
        .after_help(told("oilway-after-help"))
        .styles(Styles::plain())
        .subcommand_required(true)
        .arg_required_else_help(true)
        .max_term_width(crate::page::WIDTH)
        .args(common())
        .subcommands(verbs)
}

fn told(key: &'static str) -> String {
    say(&Message::new(key), &Reader::default())
}

/// What every verb understands.
fn common() -> Vec<Arg> {
    let choice = |name: &'static str, help, values: &'static [&'static str]| {
        Arg::new(name)
            .long(name)
            .help(told(help))
            .value_parser(PossibleValuesParser::new(values))
            .global(true)
    };
    let flag = |name: &'static str, help| {
        Arg::new(name).long(name).help(told(help)).action(ArgAction::SetTrue).global(true)
    };
    let mut all = vec![
        choice("units", "oilway-option-units", &["metric", "us"]).value_name("SYSTEM").env("OILWAY_UNITS"),
        flag("both", "oilway-option-both"),
        flag("all", "oilway-option-all"),
        flag("json", "oilway-option-json"),
        choice("colour", "oilway-option-colour", &["auto", "always", "never"])
            .value_name("WHEN")
            .default_value("auto"),
        Arg::new("catalogue")
            .long("catalogue")
            .value_name("FOLDER")
            .help(told("oilway-option-catalogue"))
            .env("OILWAY_CATALOGUE")
            .global(true),
    ];
    for arg in &mut all {
        *arg = core::mem::take(arg).help_heading(told("oilway-heading-common"));
    }
    all
}

fn subcommand(verb: &Verb) -> Command {
    let examples: Vec<String> = verb.examples.iter().map(|line| format!("  oilway {line}")).collect();
    let after = format!("{}\n{}", told("oilway-heading-examples"), examples.join("\n"));
    Command::new(verb.name)
        .about(told(verb.title))
        .long_about(format!("{}\n\n{}", told(verb.title), told(verb.about)))
        .after_help(after)
        .args(verb.inputs.iter().map(argument))
}

fn argument(input: &Input) -> Arg {
    let arg = Arg::new(input.name).help(told(input.help)).value_name(input.value);
    let texts = StringValueParser::new();
    match input.takes {
        Takes::Word => arg.required(true).value_parser(texts),
        Takes::PerhapsWord => arg.value_parser(texts),
        Takes::Words => arg.num_args(0..).value_parser(texts),
        Takes::OneOf(words) => arg.required(true).value_parser(PossibleValuesParser::new(words)),
        Takes::Flag => {
            Arg::new(input.name).help(told(input.help)).long(input.name).action(ArgAction::SetTrue)
        }
        Takes::Option => arg.long(input.name).value_parser(texts),
        Takes::OptionOf(words) => arg.long(input.name).value_parser(PossibleValuesParser::new(words)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_command_line_is_sound() {
        command().debug_assert();
    }

    #[test]
    fn every_text_of_the_table_has_a_sentence() {
        let mut keys = Vec::new();
        for verb in VERBS {
            keys.extend([verb.title, verb.about]);
            keys.extend(verb.inputs.iter().map(|input| input.help));
        }
        for key in keys {
            assert_ne!(told(key), format!("[{key}]"));
        }
    }
}
