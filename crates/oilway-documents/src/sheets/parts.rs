//! The parts list with its prices, what it cannot hold, the spares and the seals.

use oilway_catalogue::Price;
use oilway_model::{Answer, Design, Finding};
use oilway_text::{Arg, Message, message};

use crate::names;
use crate::parts_list::{Amount, PartsLine, line_price, open_positions, parts_list, seals, spares, totals};
use crate::sheet::{Block, Column, Sheet, Table};
use crate::words;

/// The parts list.
pub fn parts(design: &Design, _: &Answer, _: &[Finding]) -> Sheet {
    let lines = parts_list(design);
    let mut blocks: Vec<Block> = Vec::new();
    let unpriced = totals(&lines).unpriced;
    if !unpriced.is_empty() {
        let items: Vec<u32> = unpriced;
        blocks.push(Block::Say(message!("documents-unpriced", lines = items.len(), items = items)));
    }
    blocks.extend(open_places(design));
    blocks.push(Block::Table(list(&lines)));
    blocks.push(Block::Say(message!("documents-parts-words", allowance = design.cutting_allowance.get())));
    blocks.push(Block::Heading(message!("documents-head-spares")));
    blocks.push(Block::Table(spares_table(design)));
    blocks.push(Block::Heading(message!("documents-head-seals")));
    blocks.push(Block::Say(message!("documents-seals-no-article")));
    blocks.push(Block::Table(seals_table(design)));
    Sheet { title: message!("documents-title-parts", job = design.name.as_str()), blocks }
}

/// The places that the list cannot hold, if there are any.
pub(super) fn open_places(design: &Design) -> Vec<Block> {
    let open = open_positions(design);
    if open.is_empty() {
        return Vec::new();
    }
    vec![Block::Say(message!("documents-open", places = open.len())), Block::List(open)]
}

/// Positions named in a line before the rest are counted only.
const NAMED: usize = 3;

/// The list as a table: for the sheet and for the spreadsheet.
pub fn list(lines: &[PartsLine]) -> Table {
    let mut table = Table::new([
        Column::numbers(message!("documents-column-item")),
        Column::words(message!("documents-column-article")),
        Column::words(message!("documents-column-description")),
        Column::numbers(message!("documents-column-quantity")),
        Column::words(message!("documents-column-unit")),
        Column::words(message!("documents-column-position")),
        Column::numbers(message!("documents-column-unit-price")),
        Column::numbers(message!("documents-column-price")),
    ]);
    table.rows = lines.iter().map(row).collect();
    let sums = totals(lines);
    let complete = sums.unpriced.is_empty();
    table.foot = sums.sums.iter().map(|sum| foot(sum, complete)).collect();
    table
}

fn row(line: &PartsLine) -> Vec<Arg> {
    let unit = match line.amount {
        Amount::Pieces(_) => message!("documents-unit-piece"),
        Amount::Metres { .. } => message!("documents-unit-metre"),
    };
    vec![
        line.item.into(),
        line.id().into(),
        words::description(&line.part).into(),
        line.amount.bought().into(),
        unit.into(),
        positions(&line.at),
        line.unit_price().map_or_else(no_price, |price| price.to_string().into()),
        line_price(line).map_or_else(no_price, |price| price.to_string().into()),
    ]
}

fn no_price() -> Arg {
    message!("documents-no-price").into()
}

fn foot(sum: &Price, complete: bool) -> Vec<Arg> {
    let what = if complete { message!("documents-total") } else { message!("documents-total-incomplete") };
    let empty = || Arg::from("");
    vec![empty(), empty(), what.into(), empty(), empty(), empty(), empty(), sum.to_string().into()]
}

/// The first positions by name, equal ones counted, like ones in a row, the rest as a number.
fn positions(at: &[Message]) -> Arg {
    let mut rows: Vec<Vec<(&Message, usize)>> = Vec::new();
    for place in counted(at) {
        match rows.iter_mut().find(|row| row.iter().all(|known| in_a_row(*known, place))) {
            Some(row) => row.push(place),
            None => rows.push(vec![place]),
        }
    }
    let mut rest: usize = rows.iter().skip(NAMED).flatten().map(|(_, times)| times).sum();
    let mut named = Vec::new();
    for row in rows.iter().take(NAMED) {
        let (said, left_over) = said(row);
        named.push(said);
        rest += left_over;
    }
    if rest == 0 { named.into() } else { message!("documents-at-more", places = named, more = rest).into() }
}

/// Every place once, with how often it is there.
fn counted(at: &[Message]) -> Vec<(&Message, usize)> {
    let mut found: Vec<(&Message, usize)> = Vec::new();
    for place in at {
        match found.iter_mut().find(|(known, _)| *known == place) {
            Some((_, times)) => *times += 1,
            None => found.push((place, 1)),
        }
    }
    found
}

/// Whether two places differ in the name only: `line to belt 1` and `line to belt 2`.
fn in_a_row((a, times): (&Message, usize), (b, others): (&Message, usize)) -> bool {
    let without = |place: &Message| -> Vec<(&'static str, Arg)> {
        place.args.iter().filter(|(name, _)| *name != NAME).cloned().collect()
    };
    times == 1 && others == 1 && a.key == b.key && own_name(a).is_some() && without(a) == without(b)
}

/// How sentences call the name of a place.
const NAME: &str = "name";

fn own_name(place: &Message) -> Option<&str> {
    place.args.iter().find_map(|(name, arg)| match arg {
        Arg::Text(text) if *name == NAME => Some(text.as_str()),
        _ => None,
    })
}

/// A row of places, and how many of them are not named.
fn said(row: &[(&Message, usize)]) -> (Message, usize) {
    let Some((first, times)) = row.first() else { return (message!("documents-none"), 0) };
    if *times > 1 {
        return (message!("documents-at-times", place = (*first).clone(), times = *times), 0);
    }
    let mut place = (*first).clone();
    if row.len() == 1 {
        return (place, 0);
    }
    let names: Vec<&str> = row.iter().filter_map(|(place, _)| own_name(place)).collect();
    let (names, left_over) = names::first(&names, NAMED);
    let own = place.args.iter_mut().filter(|(name, _)| *name == NAME);
    own.for_each(|(_, arg)| *arg = names.clone().into());
    (place, left_over)
}

fn spares_table(design: &Design) -> Table {
    let mut table = Table::new([
        Column::words(message!("documents-column-article")),
        Column::words(message!("documents-column-description")),
        Column::numbers(message!("documents-column-quantity")),
        Column::words(message!("documents-column-why")),
    ]);
    for spare in spares(design) {
        let description = words::description(&spare.part);
        table.rows.push(vec![
            spare.part.id.as_str().into(),
            description.into(),
            spare.quantity.into(),
            spare.why.into(),
        ]);
    }
    table
}

fn seals_table(design: &Design) -> Table {
    let mut table = Table::new([
        Column::words(message!("documents-column-thread")),
        Column::numbers(message!("documents-column-joints")),
        Column::words(message!("documents-column-seal")),
    ]);
    let row = |seal: crate::parts_list::Seal| vec![seal.thread.into(), seal.joints.into(), seal.seal.into()];
    table.rows = seals(design).into_iter().map(row).collect();
    table
}
