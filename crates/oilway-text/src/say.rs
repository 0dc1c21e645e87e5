//! [`say`]: turns a message into the sentence that a reader gets.

use std::sync::OnceLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::resolver::errors::{ReferenceKind, ResolverError};
use fluent_bundle::types::FluentNumber;
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
    say_from(bundle(reader.language), message, reader)
}

/// The sentence that these catalogues hold for a message.
fn say_from(bundle: &FluentBundle<FluentResource>, message: &Message, reader: &Reader) -> String {
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

/// An argument as a sentence takes it. Counts stay numbers, so that a sentence can choose its plural by them; bare numbers too, so
/// that it can say how many figures it wants.
fn value(arg: &Arg, reader: &Reader) -> FluentValue<'static> {
    match arg {
        Arg::Count(count) => FluentValue::from(*count),
        Arg::Number(number) => {
            let mut number = FluentNumber::from(*number);
            number.options.maximum_significant_digits = Some(FIGURES);
            FluentValue::Number(number)
        }
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

/// Significant figures of a bare number, where the sentence asks for no others.
const FIGURES: usize = 4;
/// Figures beyond these are noise of the arithmetic; a sentence that asks for more gets no more.
const MOST_FIGURES: usize = 17;

/// A bare number as words.
fn number_words(number: f64) -> String {
    significant(number, FIGURES)
}

/// A number in at most so many significant figures.
fn significant(number: f64, figures: usize) -> String {
    let places = figures.clamp(1, MOST_FIGURES) - 1;
    // What the formatter writes, the parser reads.
    let short: f64 = format!("{number:.places$e}").parse().unwrap_or(number);
    if short == 0.0 { "0".to_owned() } else { short.to_string() }
}

/// A number with at most so many figures behind the point.
fn fractional(number: f64, places: usize) -> String {
    let places = places.min(MOST_FIGURES);
    let text = format!("{number:.places$}");
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// A number with as many figures as the sentence asks for; none where it does not care, as with a count.
///
/// Fluent's own writing of numbers leaves out the options that round. Figures behind the point win over significant ones: the
/// latter stand on every bare number, the former only where a sentence names them.
fn number(value: &FluentValue<'_>) -> Option<String> {
    let FluentValue::Number(number) = value else { return None };
    let options = &number.options;
    let text = match (options.maximum_fraction_digits, options.maximum_significant_digits) {
        (Some(places), _) => fractional(number.value, places),
        (None, Some(figures)) => significant(number.value, figures),
        (None, None) => return None,
    };
    let least = options.minimum_fraction_digits.unwrap_or(0).min(MOST_FIGURES);
    let behind = text.split_once('.').map_or(0, |(_, behind)| behind.len());
    if behind >= least || !number.value.is_finite() {
        return Some(text);
    }
    let point = if behind == 0 { "." } else { "" };
    Some(format!("{text}{point}{}", "0".repeat(least - behind)))
}

/// `NUMBER($x, …)`: notes on a number how it is to be written. What is no number, such as a quantity in the reader's units, already has
/// its writing and keeps it; the function that comes with Fluent would leave a hole in the sentence.
fn number_function<'a>(positional: &[FluentValue<'a>], named: &FluentArgs<'_>) -> FluentValue<'a> {
    match positional.first() {
        Some(FluentValue::Number(number)) => {
            let mut number = number.clone();
            number.options.merge(named);
            FluentValue::Number(number)
        }
        Some(other) => other.clone(),
        None => FluentValue::Error,
    }
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
    bundle.set_formatter(Some(|value, _| number(value)));
    // Refused only where the name is taken, and the bundle is new.
    let _ = bundle.add_function("NUMBER", number_function);
    for (_, text) in files {
        // A test reads every catalogue without an error. Should one slip through, its sound sentences still serve,
        // and the others show their key.
        let resource = FluentResource::try_new((*text).to_owned()).unwrap_or_else(|(sound, _)| sound);
        bundle.add_resource_overriding(resource);
    }
    bundle
}

#[cfg(test)]
mod tests {
    use super::*;
    use oilway_units::{Pressure, Ratio};

    /// What a sentence of the test's own says of one argument.
    fn said(sentence: &str, x: impl Into<Arg>) -> String {
        let bundle = read_catalogues("en", &[("own.ftl", sentence)]);
        let message = Message { key: "own", args: vec![("x", x.into())] };
        say_from(&bundle, &message, &Reader::default())
    }

    #[test]
    fn a_sentence_says_how_many_figures_it_wants() {
        let two = "own = { NUMBER($x, maximumFractionDigits: 2) } times";
        assert_eq!(said(two, 1.737_4), "1.74 times");
        assert_eq!(said(two, 12_345.678), "12345.68 times");
        assert_eq!(said(two, 1.5), "1.5 times");
        assert_eq!(said(two, 200.0), "200 times");
        assert_eq!(said(two, -0.001), "0 times");
        assert_eq!(said(two, 3usize), "3 times");
        let none = "own = { NUMBER($x, maximumFractionDigits: 0) }";
        assert_eq!(said(none, 99.6), "100");
        let always = "own = { NUMBER($x, minimumFractionDigits: 2, maximumFractionDigits: 2) }";
        assert_eq!(said(always, 1.5), "1.50");
        assert_eq!(said(always, 2.0), "2.00");
        let significant = "own = { NUMBER($x, maximumSignificantDigits: 2) }";
        assert_eq!(said(significant, 1.737_4), "1.7");
        assert_eq!(said(significant, 1234usize), "1200");
    }

    #[test]
    fn a_bare_number_has_four_figures_where_nothing_is_asked() {
        assert_eq!(said("own = { $x }", 1.0 / 3.0), "0.3333");
        assert_eq!(said("own = { NUMBER($x) }", 12_345.6), "12350");
        assert_eq!(said("own = { $x }", 12_345_678usize), "12345678");
    }

    /// From 2 on a ratio is said as a factor, below as a share; a range has one writing for both ends.
    #[test]
    fn the_ends_of_a_range_of_ratios_are_said_alike() {
        let span = |low, high| said("own = { $x }", (Ratio::from_fraction(low), Ratio::from_fraction(high)));
        assert_eq!(span(1.74, 2.0), "1.74 to 2");
        assert_eq!(span(0.9, 1.74), "90 to 174 %");
    }

    #[test]
    fn a_sentence_chooses_by_a_number() {
        let chosen = "own = { $x ->\n    [one] one part\n   *[other] { $x } parts\n }";
        assert_eq!(said(chosen, 1usize), "one part");
        assert_eq!(said(chosen, 1.0), "one part");
        assert_eq!(said(chosen, 1.5), "1.5 parts");
    }

    #[test]
    fn what_is_no_number_or_has_no_end_leaves_no_hole_in_the_sentence() {
        let two = "own = { NUMBER($x, minimumFractionDigits: 1, maximumFractionDigits: 2) }";
        assert_eq!(said(two, Pressure::from_bar(59.3)), "59.3 bar");
        assert_eq!(said(two, "many"), "many");
        assert_eq!(said(two, f64::INFINITY), "inf");
        assert_eq!(said(two, f64::NAN), "NaN");
        assert_eq!(said("own = { NUMBER($x, maximumFractionDigits: 400) }", 0.1), "0.10000000000000001");
        assert_eq!(said("own = { NUMBER($y, maximumFractionDigits: 2) }", 0.1), "[y]");
        let chosen = "own = { $x ->\n    [one] one\n   *[other] other\n }";
        for x in [f64::NAN, f64::INFINITY, f64::MAX, f64::MIN_POSITIVE, -1e-300] {
            assert_eq!(said(chosen, x), "other");
        }
    }
}
