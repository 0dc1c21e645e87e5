//! Tables without boxes: columns in line, numbers to the right; where a sheet is too narrow for columns, one line for each cell.

use oilway_text::{Arg, Reader};

use super::width::{TIED, columns, said, said_alone};
use super::wrap::{hanging, padded, wrap};
use crate::sheet::{Align, Table};

/// Spaces between two columns.
const GAP: usize = 2;
/// A column of words may be squeezed to this, and no further: narrower ones cannot be read.
const NARROWEST: usize = 14;

/// The lines of a table.
pub(super) fn lines(table: &Table, reader: &Reader, width: usize) -> Vec<String> {
    let titles: Vec<String> = table.columns.iter().map(|column| said(&column.title, reader)).collect();
    let cells = |row: &Vec<Arg>| -> Vec<String> {
        (0..titles.len()).map(|i| row.get(i).map_or(String::new(), |cell| said_alone(cell, reader))).collect()
    };
    let rows: Vec<Vec<String>> = table.rows.iter().map(cells).collect();
    let foot: Vec<Vec<String>> = table.foot.iter().map(cells).collect();
    let all = || rows.iter().chain(&foot);
    match widths(&titles, all(), width) {
        Some(widths) => in_columns(table, &titles, &rows, &foot, &widths),
        None => all().flat_map(|row| one_below_the_other(&titles, row, width)).collect(),
    }
}

/// The widths of the columns; none if they cannot stand beside each other.
fn widths<'a>(
    titles: &[String],
    rows: impl Iterator<Item = &'a Vec<String>>,
    width: usize,
) -> Option<Vec<usize>> {
    let mut natural: Vec<usize> = titles.iter().map(|title| columns(title)).collect();
    let mut least: Vec<usize> = titles.iter().map(|title| longest_word(title)).collect();
    for row in rows {
        for ((natural, least), cell) in natural.iter_mut().zip(&mut least).zip(row) {
            *natural = (*natural).max(columns(cell));
            *least = (*least).max(longest_word(cell));
        }
    }
    let room = width.checked_sub(GAP * titles.len().saturating_sub(1))?;
    if natural.iter().sum::<usize>() <= room {
        return Some(natural);
    }
    let mut widths: Vec<usize> = least.iter().map(|least| (*least).min(NARROWEST)).collect();
    let mut left = room.checked_sub(widths.iter().sum())?;
    // What is left goes to the narrowest column that still lacks some, so that short ones stand on one line.
    while left > 0 {
        let lacking = (0..widths.len()).filter(|&i| widths[i] < natural[i]).min_by_key(|&i| widths[i]);
        let Some(lacking) = lacking else { break };
        widths[lacking] += 1;
        left -= 1;
    }
    Some(widths)
}

fn longest_word(text: &str) -> usize {
    text.split(' ').map(columns).max().unwrap_or(0)
}

fn in_columns(
    table: &Table,
    titles: &[String],
    rows: &[Vec<String>],
    foot: &[Vec<String>],
    widths: &[usize],
) -> Vec<String> {
    let aligns: Vec<Align> = table.columns.iter().map(|column| column.align).collect();
    let rule = widths.iter().map(|width| "-".repeat(*width)).collect::<Vec<_>>().join(&" ".repeat(GAP));
    let mut lines = row_lines(titles, widths, &aligns);
    lines.push(rule.clone());
    lines.extend(rows.iter().flat_map(|row| row_lines(row, widths, &aligns)));
    if !foot.is_empty() {
        lines.push(rule);
        lines.extend(foot.iter().flat_map(|row| row_lines(row, widths, &aligns)));
    }
    lines
}

fn row_lines(cells: &[String], widths: &[usize], aligns: &[Align]) -> Vec<String> {
    let wrapped: Vec<Vec<String>> =
        cells.iter().zip(widths).map(|(cell, width)| wrap(cell, *width)).collect();
    let height = wrapped.iter().map(Vec::len).max().unwrap_or(0);
    let line = |number: usize| {
        let cells = wrapped.iter().zip(widths).zip(aligns);
        let texts = cells.map(|((lines, width), align)| {
            padded(lines.get(number).map_or("", String::as_str), *width, *align)
        });
        texts.collect::<Vec<_>>().join(&" ".repeat(GAP))
    };
    (0..height).map(line).collect()
}

/// A row as lines of title and cell, with an empty line behind it.
fn one_below_the_other(titles: &[String], row: &[String], width: usize) -> Vec<String> {
    let filled = titles.iter().zip(row).filter(|(_, cell)| !cell.is_empty());
    let mut lines: Vec<String> = filled
        .flat_map(|(title, cell)| hanging("", "    ", &format!("{}:{TIED}{cell}", title), width))
        .collect();
    if !lines.is_empty() {
        lines.push(String::new());
    }
    lines
}
