//! Formulas on a page.

use oilway_physics::{Formula, Range, Source, Symbol};
use oilway_text::{Message, message, name_of};
use oilway_units::AnyQuantity;

use crate::json::calc::Case;
use crate::page::{Page, Set};

/// All these formulas, family by family.
pub(crate) fn list(page: &mut Page, formulas: &[&'static Formula]) {
    let family = |formula: &Formula| formula.id.split('/').next().unwrap_or("");
    let mut rest = formulas;
    while let Some(first) = rest.first() {
        let count = rest.iter().take_while(|formula| family(formula) == family(first)).count();
        page.heading(&message!("oilway-family", name = family(first)));
        let rows: Vec<Vec<String>> = rest[..count]
            .iter()
            .map(|formula| vec![formula.id.to_owned(), formula.title.to_owned()])
            .collect();
        page.table(&[Set::Left, Set::Left], &rows);
        rest = &rest[count..];
    }
    page.gap();
    page.say(&message!("oilway-list-foot", count = formulas.len()));
}

/// One formula with all that is known of it, and how to use it.
pub(crate) fn explained(page: &mut Page, formula: &Formula) {
    head(page, formula);
    page.gap();
    let rows: Vec<Vec<String>> =
        formula.inputs.iter().chain([&formula.output]).map(|symbol| symbol_row(page, symbol)).collect();
    page.table(&[Set::Left, Set::Left, Set::Left, Set::Left], &rows);
    foot(page, formula);
    page.gap();
    let values: Vec<String> = formula.inputs.iter().map(|symbol| format!("{}='…'", symbol.name)).collect();
    page.say(&message!("oilway-try", command = format!("oilway calc {} {}", formula.id, values.join(" "))));
}

/// One formula with the result of a case.
pub(crate) fn result(page: &mut Page, formula: &Formula, case: &Case) {
    let value = match case.span {
        Some(span) => message!("oilway-result-span", value = case.middle, span = spanned(span)),
        None => message!("oilway-result", value = case.middle),
    };
    let said = message!("oilway-result-line", what = formula.output.meaning, value = value);
    page.loud(&said);
    page.gap();
    head(page, formula);
    page.gap();
    let mut rows = Vec::with_capacity(case.inputs.len());
    for (symbol, ends) in formula.inputs.iter().zip(&case.inputs) {
        let value = if ends.0 == ends.1 { page.quantity(ends.0) } else { page.words(&spanned(*ends)) };
        rows.push(vec![symbol.letter.to_owned(), symbol.name.to_owned(), value, symbol.meaning.to_owned()]);
    }
    page.table(&[Set::Left, Set::Left, Set::Left, Set::Left], &rows);
    foot(page, formula);
}

fn head(page: &mut Page, formula: &Formula) {
    page.paragraph("", &format!("{}: {}", formula.id, formula.title));
    for line in formula.equation.split('\n') {
        page.paragraph("    ", line.trim());
    }
}

fn foot(page: &mut Page, formula: &Formula) {
    page.gap();
    page.say(&message!("oilway-validity", validity = formula.validity));
    for source in formula.sources {
        page.say(&of_source(source));
    }
}

/// Where something comes from, and how far it can be trusted.
pub(crate) fn of_source(source: &Source) -> Message {
    message!("oilway-source", key = source.key, place = source.place, standing = source.standing.word())
}

fn spanned((low, high): (AnyQuantity, AnyQuantity)) -> Message {
    Message::new("oilway-value").with("value", oilway_text::Arg::Span(low, high))
}

fn symbol_row(page: &Page, symbol: &Symbol) -> Vec<String> {
    let what = page.words(&name_of(symbol.dimension));
    let bound = match symbol.range {
        Range::Any => String::new(),
        _ => page.words(&allowed(symbol)),
    };
    let meaning =
        if bound.is_empty() { symbol.meaning.to_owned() } else { format!("{}; {bound}", symbol.meaning) };
    vec![symbol.letter.to_owned(), symbol.name.to_owned(), what, meaning]
}

/// The values that an input may take.
pub(crate) fn allowed(symbol: &Symbol) -> Message {
    let quantity = |si| AnyQuantity::new(symbol.dimension, si);
    match symbol.range {
        Range::Any => message!("oilway-allowed-any"),
        Range::NotNegative => message!("oilway-allowed-not-negative"),
        Range::Positive => message!("oilway-allowed-positive"),
        Range::Between(low, high) => {
            message!("oilway-allowed-between", low = quantity(low), high = quantity(high))
        }
    }
}
