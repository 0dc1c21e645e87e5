//! What was assumed, the weightiest first: how far the deciding margin swings over its range, and where the verdict turns.

use oilway_model::{Assumption, Design, PointEntry};
use oilway_text::{Arg, Message, message};
use oilway_units::{AnyQuantity, Dimension, Ratio};

use crate::sheet::{Block, Column, Sheet, Table};
use crate::words;

/// The assumptions of a study, and the words that were taken where nobody knew.
pub fn assumptions(design: &Design, assumptions: &[Assumption]) -> Sheet {
    let mut blocks = Vec::new();
    match assumptions.first() {
        Some(first) => {
            blocks.push(Block::Say(message!(
                "documents-assumptions-first",
                at = first.at.as_str(),
                what = first.what.clone()
            )));
            blocks.push(Block::Table(table(assumptions)));
            blocks.push(Block::Say(message!("documents-assumptions-words")));
        }
        None => blocks.push(Block::Say(message!("documents-no-assumptions"))),
    }
    let taken = taken_words(design);
    if !taken.is_empty() {
        blocks.push(Block::Heading(message!("documents-head-taken-words")));
        blocks.push(Block::List(taken));
    }
    Sheet { title: message!("documents-title-assumptions", job = design.name.as_str()), blocks }
}

fn table(assumptions: &[Assumption]) -> Table {
    let mut table = Table::new([
        Column::words(message!("documents-column-where")),
        Column::words(message!("documents-column-assumed")),
        Column::numbers(message!("documents-column-range")),
        Column::numbers(message!("documents-column-weight")),
        Column::numbers(message!("documents-column-turns")),
    ]);
    let row = |assumption: &Assumption| {
        vec![
            assumption.at.as_str().into(),
            assumption.what.clone().into(),
            Arg::Span(assumption.low, assumption.high),
            Ratio::from_fraction(assumption.weight).into(),
            assumption.turns_at.map_or_else(words::none, |value| turning_value(value, assumption.high)),
        ]
    };
    table.rows = assumptions.iter().map(row).collect();
    table
}

/// The value where the verdict turns, written like the range that it lies in: a range that reaches two and more is one of factors.
fn turning_value(value: AnyQuantity, high: AnyQuantity) -> Arg {
    let factors = high.dimension == Dimension::Ratio && high.si >= 2.0;
    if factors { message!("documents-factor", factor = value.si).into() } else { value.into() }
}

fn taken_words(design: &Design) -> Vec<Message> {
    let mut taken = Vec::new();
    for point in &design.points {
        for (field, entry) in point.kind.fields().iter().zip(&point.entries) {
            if let PointEntry::Word { word, assumed: true } = entry {
                taken.push(message!(
                    "documents-taken-word",
                    point = point.name.as_str(),
                    field = field.name,
                    word = *word
                ));
            }
        }
    }
    taken
}
