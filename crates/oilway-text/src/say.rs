//! [`say`]: turns a message into the sentence that a reader gets.

use std::sync::OnceLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::resolver::errors::{ReferenceKind, ResolverError};
use fluent_bundle::{FluentArgs, FluentError, FluentResource, FluentValue};
use oilway_units::{AnyQuantity, show, show_span};

use crate::catalogues::ENGLISH;
use crate::{Arg, Language, Message, Reader, message};

/// The sentence of this message for this reader.
///
/// What is missing shows: a key without a sentence comes out as `[key]`, an argument that the sentence wants and the
/// message lacks as `[name]`.
///
/// ```
/// use oilway_text::{Reader, message, say};
/// use oilway_units::Length;
///
/// let said = message!("span", low = Length::from_metres(6.0), high = "more");
/// assert_eq!(say(&said, &Reader::default()), "6 m to more");
/// assert_eq!(say(&message!("span", low = "1"), &Reader::default()), "1 to [high]");
/// ```
pub fn say(message: &Message, reader: &Reader) -> String {
    let bundle = bundle(reader.language);
    let Some(pattern) = bundle.get_message(message.key).and_then(|found| found.value()) else {
        return format!("[{}]", message.key);
    };
    let mut args = FluentArgs::with_capacity(message.args.len());
    for (name, arg) in &message.args {
        args.set(*name, value(arg, reader));
    }
    let mut errors = Vec::new();
    let sentence = bundle.format_pattern(pattern, Some(&args), &mut errors);
    if errors.is_empty() {
        return sentence.into_owned();
    }
    for name in missing(&errors) {
        args.set(name.to_owned(), format!("[{name}]"));
    }
    bundle.format_pattern(pattern, Some(&args), &mut Vec::new()).into_owned()
}

/// The names of arguments that the sentence asked for in vain.
fn missing(errors: &[FluentError]) -> impl Iterator<Item = &str> {
    errors.iter().filter_map(|error| match error {
        FluentError::ResolverError(ResolverError::Reference(ReferenceKind::Variable { id })) => {
            Some(id.as_str())
        }
        _ => None,
    })
}

/// An argument as a sentence takes it. Counts stay numbers, so that a sentence can choose its plural by them.
fn value(arg: &Arg, reader: &Reader) -> FluentValue<'static> {
    match arg {
        Arg::Count(count) => FluentValue::from(*count),
        other => FluentValue::from(words(other, reader)),
    }
}

/// An argument as words.
fn words(arg: &Arg, reader: &Reader) -> String {
    match arg {
        Arg::Quantity(quantity) => quantity_words(*quantity, reader),
        Arg::Span(low, high) => span_words(*low, *high, reader),
        Arg::Text(text) => text.clone(),
        Arg::Count(count) => count.to_string(),
        Arg::Number(number) => number_words(*number),
        Arg::Message(message) => say(message, reader),
        Arg::List(items) => list_words(items, reader),
    }
}

fn quantity_words(quantity: AnyQuantity, reader: &Reader) -> String {
    if reader.both { oilway_units::show_both(quantity, reader.units) } else { show(quantity, reader.units) }
}

/// Both ends in one unit; a range narrower than the figures shown is said as one value.
fn span_words(low: AnyQuantity, high: AnyQuantity, reader: &Reader) -> String {
    if show(low, reader.units) == show(high, reader.units) {
        return quantity_words(high, reader);
    }
    let span = |system| {
        let [low, high] = show_span(low, high, system);
        say(&message!("span", low = low, high = high), reader)
    };
    let (first, second) = (span(reader.units), span(reader.units.other()));
    if reader.both && first != second { format!("{first} ({second})") } else { first }
}

/// A bare number in at most four significant figures.
fn number_words(number: f64) -> String {
    // What the formatter writes, the parser reads.
    let short: f64 = format!("{number:.3e}").parse().unwrap_or(number);
    if short == 0.0 { "0".to_owned() } else { short.to_string() }
}

/// `a, b and c`, built from the end by the two sentences for lists.
fn list_words(items: &[Arg], reader: &Reader) -> String {
    let mut rest = items.iter().rev().map(|item| words(item, reader));
    let Some(last) = rest.next() else { return String::new() };
    let Some(before) = rest.next() else { return last };
    let pair = say(&message!("list-pair", first = before, second = last), reader);
    rest.fold(pair, |rest, first| say(&message!("list-more", first = first, rest = rest), reader))
}

/// The sentences of a language, read on first use.
fn bundle(language: Language) -> &'static FluentBundle<FluentResource> {
    static ENGLISH_BUNDLE: OnceLock<FluentBundle<FluentResource>> = OnceLock::new();
    match language {
        Language::English => ENGLISH_BUNDLE.get_or_init(|| read_catalogues("en", ENGLISH)),
    }
}

fn read_catalogues(language: &str, files: &[(&str, &str)]) -> FluentBundle<FluentResource> {
    let mut bundle = FluentBundle::new_concurrent(vec![language.parse().unwrap_or_default()]);
    // Marks of writing direction around each argument would end up in files and sheets.
    bundle.set_use_isolating(false);
    for (_, text) in files {
        // A test reads every catalogue without an error. Should one slip through, its sound sentences still serve,
        // and the others show their key.
        let resource = FluentResource::try_new((*text).to_owned()).unwrap_or_else(|(sound, _)| sound);
        bundle.add_resource_overriding(resource);
    }
    bundle
}
