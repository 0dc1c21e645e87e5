//! The pressure ladder in letters: one scale from the bottom to the top, a column for each season and one for the disc, and a
//! legend with every exact pressure.

use oilway_text::{Arg, Reader, message};
use oilway_units::{Dimension, Pressure, Unit, UnitSystem};

use super::table;
use super::width::{columns, said};
use super::wrap::padded;
use crate::sheet::{Align, BandSort, Column, Ladder, LadderColumn, LadderMark, Table};

/// Lines of the scale, about: a sheet holds it together with its legend.
const ROWS: f64 = 24.0;
/// Width of a column of the picture.
const COLUMN: usize = 12;

/// The lines of a ladder.
pub(super) fn lines(ladder: &Ladder, reader: &Reader, width: usize) -> Vec<String> {
    let mut marks: Vec<&LadderMark> = ladder.marks.iter().collect();
    marks.sort_by(|a, b| b.at.total_cmp(&a.at));
    let scale = Scale::new(ladder.top, reader.units);
    let mut lines = Vec::new();
    // Where the picture does not fit, the legend alone says everything.
    if columns_wide(ladder) <= width {
        lines.push(head(ladder, reader));
        lines.extend((0..=scale.rows).rev().map(|row| picture_row(ladder, &marks, &scale, row, width)));
        lines.push(String::new());
    }
    lines.extend(table::lines(&legend(ladder, &marks, &scale), reader, width));
    lines
}

/// A scale in whole steps of the reader's unit.
struct Scale {
    unit: &'static Unit,
    step: f64,
    rows: usize,
}

impl Scale {
    fn new(top: Pressure, system: UnitSystem) -> Self {
        let unit = unit_of(system);
        let top = unit.of_si(top.pascals());
        let top = if top.is_finite() && top > 0.0 { top } else { 1.0 };
        let step = round_step(top / ROWS);
        // Bounded by the choice of the step: at most ROWS and one.
        let rows = libm::ceil(top / step).clamp(1.0, ROWS + 1.0) as usize;
        Scale { unit, step, rows }
    }

    /// The row of a pressure; none above the scale.
    fn row(&self, pressure: Pressure) -> Option<usize> {
        let row = libm::floor(self.unit.of_si(pressure.pascals()) / self.step);
        (row >= 0.0 && row <= self.rows as f64).then_some(row as usize)
    }

    /// The row in which a band ends; the top where it goes beyond.
    fn last_row(&self, pressure: Pressure) -> usize {
        self.row(pressure).unwrap_or(if pressure > Pressure::ZERO { self.rows } else { 0 })
    }
}

fn unit_of(system: UnitSystem) -> &'static Unit {
    let symbol = match system {
        UnitSystem::Metric => "bar",
        UnitSystem::Us => "psi",
    };
    Unit::named(Dimension::Pressure, symbol).unwrap_or(Unit::main(Dimension::Pressure))
}

/// The next of 1, 2, 5, 10, 20 … that is no less.
fn round_step(least: f64) -> f64 {
    let power = libm::pow(10.0, libm::floor(libm::log10(least)));
    [1.0, 2.0, 5.0]
        .into_iter()
        .map(|one| one * power)
        .find(|step| *step >= least * (1.0 - 1e-12))
        .unwrap_or(10.0 * power)
}

fn columns_wide(ladder: &Ladder) -> usize {
    AXIS + 2 + COLUMN * ladder.columns.len() + 6
}

/// Width of the axis.
const AXIS: usize = 8;

fn head(ladder: &Ladder, reader: &Reader) -> String {
    let mut line = padded(unit_of(reader.units).symbol(), AXIS, Align::Right);
    line.push_str("  ");
    for column in &ladder.columns {
        let title: String = said(&column.title, reader);
        let title = super::wrap::wrap(&title, COLUMN - 1).into_iter().next().unwrap_or_default();
        line.push_str(&padded(&title, COLUMN, Align::Left));
    }
    line
}

fn picture_row(ladder: &Ladder, marks: &[&LadderMark], scale: &Scale, row: usize, width: usize) -> String {
    let here = |column: Option<usize>| -> String {
        let letters = marks
            .iter()
            .enumerate()
            .filter(|(_, mark)| mark.column == column && scale.row(mark.at) == Some(row));
        letters.map(|(number, _)| letter(number)).collect::<Vec<_>>().join(" ")
    };
    let across = here(None);
    let mut line = padded(&format!("{}", scale.step * row as f64), AXIS, Align::Right);
    line.push_str(" |");
    for (number, column) in ladder.columns.iter().enumerate() {
        line.push_str(&cell(column, scale, row, &here(Some(number)), !across.is_empty()));
    }
    if !across.is_empty() {
        line.push(' ');
        line.push_str(&across);
    }
    super::width::pieces(&line, width).into_iter().next().unwrap_or_default()
}

/// A column in one row: its band, the letters of its own marks, and the line of a mark that holds across.
fn cell(column: &LadderColumn, scale: &Scale, row: usize, letters: &str, crossed: bool) -> String {
    let inside = |low: Pressure, high: Pressure| {
        let first = scale.row(low).unwrap_or(usize::MAX);
        (first..=scale.last_row(high)).contains(&row)
    };
    let bands = column.bands.iter().filter(|band| inside(band.low, band.high));
    let mut sorts: Vec<BandSort> = bands.map(|band| band.sort).collect();
    sorts.sort();
    sorts.dedup();
    let ground = if crossed { "." } else { " " };
    let filled: String = sorts.iter().map(|sort| fill(*sort).repeat(4 / sorts.len().max(1))).collect();
    let filled = if filled.is_empty() { ground.repeat(4) } else { filled };
    let text = if letters.is_empty() { filled } else { format!("{filled} {letters}") };
    let rest = COLUMN.saturating_sub(columns(&text));
    format!("{text}{}", ground.repeat(rest))
}

/// How a band is filled: told apart in grey and in a bad copy.
const fn fill(sort: BandSort) -> &'static str {
    match sort {
        BandSort::Working => "#",
        BandSort::Burst => "X",
        BandSort::Window => ":",
    }
}

/// `a` to `z`, then `a1` and so on.
fn letter(number: usize) -> String {
    let letter = char::from(b'a' + (number % 26) as u8);
    match number / 26 {
        0 => letter.to_string(),
        round => format!("{letter}{round}"),
    }
}

fn legend(ladder: &Ladder, marks: &[&LadderMark], scale: &Scale) -> Table {
    let mut table = Table::new([
        Column::words(message!("documents-ladder-sign")),
        Column::numbers(message!("documents-ladder-pressure")),
        Column::words(message!("documents-ladder-what")),
    ]);
    for (number, mark) in marks.iter().enumerate() {
        let what = if scale.row(mark.at).is_none() {
            message!("documents-ladder-above", what = mark.what.clone())
        } else {
            mark.what.clone()
        };
        let title =
            mark.column.and_then(|column| ladder.columns.get(column)).map(|column| column.title.clone());
        let what = match title {
            Some(title) => message!("documents-ladder-in-column", column = title, what = what),
            None => what,
        };
        table.rows.push(vec![letter(number).into(), mark.at.into(), what.into()]);
    }
    for column in &ladder.columns {
        for band in &column.bands {
            let what = match band.sort {
                BandSort::Working => message!("documents-ladder-working", column = column.title.clone()),
                BandSort::Burst => message!("documents-ladder-burst"),
                BandSort::Window => message!("documents-ladder-window"),
            };
            let span = Arg::Span(band.low.into(), band.high.into());
            table.rows.push(vec![fill(band.sort).repeat(4).into(), span, what.into()]);
        }
    }
    table
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_are_round_and_the_scale_reaches_its_top() {
        assert_eq!(round_step(3.1), 5.0);
        assert_eq!(round_step(5.0), 5.0);
        assert_eq!(round_step(0.011), 0.02);
        for top in [0.2, 7.0, 96.0, 99.9, 251.0, 4000.0] {
            let scale = Scale::new(Pressure::from_bar(top), UnitSystem::Metric);
            assert!(scale.row(Pressure::from_bar(top)).is_some(), "{top}");
            assert!(scale.rows <= 25, "{top}: {} rows", scale.rows);
        }
    }

    #[test]
    fn a_scale_without_a_top_still_stands() {
        for top in [0.0, f64::NAN, f64::INFINITY, -5.0] {
            assert!(Scale::new(Pressure::from_bar(top), UnitSystem::Us).rows >= 1);
        }
    }

    #[test]
    fn letters_never_run_out() {
        assert_eq!([letter(0), letter(25), letter(26), letter(53)], ["a", "z", "a1", "b2"]);
    }
}
