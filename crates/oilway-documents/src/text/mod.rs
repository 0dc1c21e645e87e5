//! Sheets as plain text: columns in line, no boxes, complete in grey, and never wider than asked whatever names they hold.

mod ladder;
mod table;
mod width;
mod wrap;

use oilway_text::{Message, Reader, message};

use crate::cautions::{Caution, Signal};
use crate::sheet::{Block, Sheet};
use width::{TIED, columns, said};
use wrap::{hanging, wrap};

/// Nothing can be read on less.
pub const NARROWEST: usize = 20;

/// The sheet as text. No line is wider than `width`, or than [`NARROWEST`] if that is more; a control character in a name
/// shows as a mark.
pub fn write(sheet: &Sheet, reader: &Reader, width: usize) -> String {
    let width = width.max(NARROWEST);
    let mut lines = underlined(&sheet.title, '=', reader, width);
    let mut before = None;
    for block in &sheet.blocks {
        if !belongs_to(before, block) {
            lines.push(String::new());
        }
        lines.extend(block_lines(block, reader, width));
        before = Some(block);
    }
    finished(&lines)
}

/// Whether a block stands right below the one before it.
fn belongs_to(before: Option<&Block>, block: &Block) -> bool {
    matches!((before, block), (Some(Block::Caution(_)), Block::Step { .. }) | (Some(Block::Heading(_)), _))
}

fn block_lines(block: &Block, reader: &Reader, width: usize) -> Vec<String> {
    match block {
        Block::Heading(message) => underlined(message, '-', reader, width),
        Block::Say(message) => wrap(&said(message, reader), width),
        Block::Stop(message) => {
            let stop = said(&message!("documents-stop", what = message.clone()), reader);
            hanging("!! ", "!! ", &stop, width)
        }
        Block::Table(table) => table::lines(table, reader, width),
        Block::Ladder(ladder) => ladder::lines(ladder, reader, width),
        Block::List(items) => {
            items.iter().flat_map(|item| hanging("- ", "  ", &said(item, reader), width)).collect()
        }
        Block::Step { number, what } => {
            let first = format!("{number:>2}. [ ] ");
            let rest = " ".repeat(columns(&first));
            hanging(&first, &rest, &said(what, reader), width)
        }
        Block::Caution(caution) => hanging("! ", "! ", &caution_text(caution, reader), width),
    }
}

/// Signal word, hazard, what to do, and the rule behind it with its standing.
fn caution_text(caution: &Caution, reader: &Reader) -> String {
    let signal = match caution.signal() {
        Signal::Warning => message!("documents-signal-warning"),
        Signal::Caution => message!("documents-signal-caution"),
    };
    let text = message!(
        "documents-caution",
        signal = signal,
        id = caution.id.as_str(),
        hazard = caution.hazard.as_str(),
        text = caution.text.as_str(),
        rule = caution.rule.as_str(),
        standing = caution.standing.as_str(),
    );
    said(&text, reader)
}

fn underlined(message: &Message, sign: char, reader: &Reader, width: usize) -> Vec<String> {
    let mut lines = wrap(&said(message, reader), width);
    let wide = lines.iter().map(|line| columns(line)).max().unwrap_or(0);
    lines.push(sign.to_string().repeat(wide));
    lines
}

/// One text, without spaces at the ends of lines and without empty lines in a row.
fn finished(lines: &[String]) -> String {
    let mut text = String::new();
    let mut empty = false;
    for line in lines {
        let line = line.replace(TIED, " ");
        let line = line.trim_end_matches(' ');
        if line.is_empty() && empty {
            continue;
        }
        empty = line.is_empty();
        text.push_str(line);
        text.push('\n');
    }
    text
}
