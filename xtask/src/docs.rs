//! The pages that are made from the program, so that they cannot disagree with it.

use std::collections::BTreeMap;
use std::fs;
use std::path::PathBuf;

use oilway::Exit;
use oilway::verbs::{Input, Takes, VERBS, Verb};
use oilway_catalogue::{What, kinds};
use oilway_physics::points::{self, Wanted};
use oilway_physics::{Formula, Range, Source, Symbol};
use oilway_text::{Message, Reader, name_of, say};
use oilway_units::{AnyQuantity, Dimension, UnitSystem, show};

use crate::markdown::{head, page, row};
use crate::{Outcome, root};

/// The folders in which everything is made here.
const FOLDERS: [&str; 2] = ["docs/generated", "docs/schema"];

/// Writes every page, and takes away what no longer is one.
pub(crate) fn run(_: &[String]) -> Outcome {
    let pages = pages();
    let mut changed = 0;
    for (path, text) in &pages {
        let path = root().join(path);
        if fs::read_to_string(&path).ok().as_ref() != Some(text) {
            let folder = path.parent().map_or_else(root, PathBuf::from);
            fs::create_dir_all(folder)
                .and_then(|()| fs::write(&path, text))
                .map_err(|error| error.to_string())?;
            changed += 1;
        }
    }
    for path in strangers(&pages) {
        fs::remove_file(root().join(path)).map_err(|error| error.to_string())?;
        changed += 1;
    }
    Ok(format!("{} pages, {changed} changed", pages.len()))
}

/// Files in the folders that no page is made for.
fn strangers(pages: &BTreeMap<String, String>) -> Vec<String> {
    let mut folders: Vec<PathBuf> = FOLDERS.iter().map(|folder| root().join(folder)).collect();
    let mut found = Vec::new();
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
            let path = entry.path();
            if path.is_dir() {
                folders.push(path);
            } else if let Ok(inside) = path.strip_prefix(root()) {
                let name = inside.to_string_lossy().replace('\\', "/");
                if !pages.contains_key(&name) {
                    found.push(name);
                }
            }
        }
    }
    found
}

/// Every page by its path.
pub(crate) fn pages() -> BTreeMap<String, String> {
    let mut pages = BTreeMap::new();
    let mut put = |name: &str, text: String| pages.insert(format!("docs/generated/{name}.md"), text);
    put("commands", commands());
    put("exit-codes", exit_codes());
    put("points", point_kinds());
    put("parts", part_kinds());
    put("rules", rules());
    let mut families: BTreeMap<&str, Vec<&Formula>> = BTreeMap::new();
    for formula in oilway_physics::registry() {
        families.entry(formula.id.split('/').next().unwrap_or_default()).or_default().push(formula);
    }
    for (family, formulas) in &families {
        put(
            &format!("formulas/{family}"),
            page(family, &formulas.iter().map(|f| formula(f)).collect::<String>()),
        );
    }
    for (name, schema) in oilway::schemas() {
        pages.insert(format!("docs/schema/{name}.json"), schema);
    }
    pages
}

fn told(key: &'static str) -> String {
    say(&Message::new(key), &Reader::default())
}

fn shown(dimension: Dimension, si: f64) -> String {
    show(AnyQuantity::new(dimension, si), UnitSystem::Metric)
}

fn allowed(dimension: Dimension, range: Range) -> String {
    match range {
        Range::Any => "any".to_owned(),
        Range::NotNegative => "zero or more".to_owned(),
        Range::Positive => "more than zero".to_owned(),
        Range::Between(low, high) => format!("{} to {}", shown(dimension, low), shown(dimension, high)),
    }
}

fn source(source: &Source) -> String {
    format!("`{}`, {} ({})", source.key, source.place, source.standing.word())
}

fn commands() -> String {
    let mut body = String::new();
    for verb in VERBS {
        body.push_str(&command(verb));
    }
    page("Commands", &body)
}

fn command(verb: &Verb) -> String {
    let usage: Vec<String> = verb.inputs.iter().map(usage).collect();
    let mut text = format!("## oilway {}\n\n{}. {}\n\n", verb.name, told(verb.title), told(verb.about));
    text.push_str(&format!("```text\noilway {} {}\n```\n\n", verb.name, usage.join(" ")));
    if !verb.inputs.is_empty() {
        text.push_str(&head(["input", "what"]));
        for input in verb.inputs {
            text.push_str(&row([&format!("`{}`", usage_of(input)), &told(input.help)]));
        }
        text.push('\n');
    }
    if !verb.examples.is_empty() {
        let lines: Vec<String> = verb.examples.iter().map(|line| format!("oilway {line}\n")).collect();
        text.push_str(&format!("```sh\n{}```\n\n", lines.concat()));
    }
    text
}

fn usage(input: &Input) -> String {
    match input.takes {
        Takes::Word | Takes::OneOf(_) => usage_of(input),
        _ => format!("[{}]", usage_of(input)),
    }
}

fn usage_of(input: &Input) -> String {
    match input.takes {
        Takes::Word | Takes::PerhapsWord => input.value.to_owned(),
        Takes::Words => format!("{}…", input.value),
        Takes::OneOf(words) => words.join("|"),
        Takes::Flag => format!("--{}", input.name),
        Takes::Option => format!("--{} {}", input.name, input.value),
        Takes::OptionOf(words) => format!("--{} {}", input.name, words.join("|")),
    }
}

fn exit_codes() -> String {
    let mut body = head(["code", "meaning"]);
    for exit in Exit::ALL {
        body.push_str(&row([&exit.code().to_string(), &told(exit.meaning())]));
    }
    page("Exit codes", &body)
}

fn formula(formula: &Formula) -> String {
    let mut text =
        format!("## {}\n\n{}.\n\n```text\n{}\n```\n\n", formula.id, formula.title, formula.equation);
    text.push_str(&head(["letter", "name", "measures", "meaning", "allowed"]));
    for symbol in formula.inputs.iter().chain([&formula.output]) {
        text.push_str(&symbol_row(symbol));
    }
    text.push_str(&format!("\n**Holds.** {}\n\n**Source.**\n\n", formula.validity));
    for of in formula.sources {
        text.push_str(&format!("* {}\n", source(of)));
    }
    text.push('\n');
    text
}

fn symbol_row(symbol: &Symbol) -> String {
    let dimension = say(&name_of(symbol.dimension), &Reader::default());
    let range = allowed(symbol.dimension, symbol.range);
    row([symbol.letter, &format!("`{}`", symbol.name), &dimension, symbol.meaning, &range])
}

fn point_kinds() -> String {
    let mut body = "What may be written of each kind of lubrication point in a job file. Where a needed field is unknown, the tool goes on \
                    with the span in the last column and says so.\n\n"
        .to_owned();
    for kind in points::KINDS {
        body.push_str(&format!("## {}\n\n{}\n\n", kind.id(), kind.title()));
        body.push_str(&head(["field", "meaning", "allowed", "needed", "if unknown"]));
        for field in kind.fields() {
            let (allowed, unknown) = match field.wanted {
                Wanted::Quantity { dimension, range, unknown: [low, typical, high] } => {
                    let shown = |si| shown(dimension, si);
                    (
                        allowed(dimension, range),
                        format!("{}, {} to {}", shown(typical), shown(low), shown(high)),
                    )
                }
                Wanted::Word(words) => {
                    (words.join(", "), words.first().copied().unwrap_or_default().to_owned())
                }
            };
            let needed = if field.needed { "yes" } else { "no" };
            let unknown = if field.needed { unknown } else { String::new() };
            body.push_str(&row([&format!("`{}`", field.name), field.meaning, &allowed, needed, &unknown]));
        }
        body.push('\n');
    }
    page("Kinds of lubrication points", &body)
}

fn part_kinds() -> String {
    let mut body = "What may be written of each kind of part in a catalogue file.\n\n".to_owned();
    for kind in kinds::KINDS {
        body.push_str(&format!("## {}\n\n{}\n\n", kind.id(), kind.title()));
        body.push_str(&head(["field", "meaning", "what", "needed"]));
        for field in kind.fields() {
            let needed = if field.needed { "yes" } else { "no" };
            body.push_str(&row([&format!("`{}`", field.name), field.meaning, &what(field.what), needed]));
        }
        body.push('\n');
    }
    page("Kinds of parts", &body)
}

fn what(what: What) -> String {
    let name = |dimension| say(&name_of(dimension), &Reader::default());
    match what {
        What::Quantity(dimension, range) => format!("{}; {}", name(dimension), allowed(dimension, range)),
        What::Quantities(dimension, range) => {
            format!("several of {}; {}", name(dimension), allowed(dimension, range))
        }
        What::Word(words) => words.join(", "),
        What::Words(words) => format!("several of {}", words.join(", ")),
        What::Text => "text".to_owned(),
        What::Texts => "several texts".to_owned(),
        What::Part(kind) => format!("id of a part of kind {kind}"),
        What::Parts(kind) => format!("ids of parts of kind {kind}"),
        What::Flag => "true or false".to_owned(),
    }
}

fn rules() -> String {
    let mut body = String::new();
    for rule in oilway_check::rules() {
        body.push_str(&format!("## {}\n\n{}\n\n", rule.id(), rule.title()));
        body.push_str(&format!(
            "**Finds.** {}\n\n**Why it matters.** {}\n\n",
            rule.finds(),
            rule.why_it_matters()
        ));
        body.push_str(&format!(
            "**Example.** {}\n\n**Source.** {}\n\n",
            rule.example(),
            source(&rule.source())
        ));
    }
    page("Rules of the checker", &body)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_pages_on_the_disk_are_those_of_the_program() {
        let pages = pages();
        let stale: Vec<&String> = pages
            .iter()
            .filter(|(path, text)| fs::read_to_string(root().join(path)).ok().as_ref() != Some(*text))
            .map(|(path, _)| path)
            .collect();
        assert!(stale.is_empty(), "run `cargo xtask docs`: {stale:?}");
        assert_eq!(strangers(&pages), [""; 0], "run `cargo xtask docs`");
    }
}
