//! [`Request`]: what was asked of a verb, as plain texts by the names of its inputs. A command line makes one; so can anything else that
//! calls a verb.

use std::collections::BTreeMap;

use clap::ArgMatches;

use crate::verbs::{Takes, VERBS, Verb};

/// The texts given for each input of a verb.
#[derive(Clone, Debug, Default)]
pub struct Request {
    given: BTreeMap<&'static str, Vec<String>>,
}

impl Request {
    /// The only or first text of an input.
    pub(crate) fn word(&self, input: &str) -> Option<&str> {
        self.words(input).first().map(String::as_str)
    }
    /// All texts of an input.
    pub(crate) fn words(&self, input: &str) -> &[String] {
        self.given.get(input).map_or(&[], Vec::as_slice)
    }
    /// Whether a flag was set.
    pub(crate) fn flag(&self, input: &str) -> bool {
        self.given.contains_key(input)
    }
}

/// The verb that the command line names, and what it gave for each of its inputs.
pub(crate) fn read(matches: &ArgMatches) -> Option<(&'static Verb, Request)> {
    let (name, inner) = matches.subcommand()?;
    let verb = VERBS.iter().copied().find(|verb| verb.name == name)?;
    let mut request = Request::default();
    for input in verb.inputs {
        let texts: Vec<String> = match input.takes {
            Takes::Flag if inner.get_flag(input.name) => Vec::new(),
            Takes::Flag => continue,
            _ => match inner.get_many::<String>(input.name) {
                Some(texts) => texts.cloned().collect(),
                None => continue,
            },
        };
        request.given.insert(input.name, texts);
    }
    Some((verb, request))
}
