//! The cells of a file that hold something.

use std::collections::BTreeMap;

use super::CellPlace;

/// More rows than any survey or catalogue has.
pub(crate) const MOST_ROWS: u32 = 20_000;
/// More columns than any survey or catalogue has.
pub(crate) const MOST_COLUMNS: u32 = 256;
/// More characters than any cell needs.
pub(crate) const MOST_CHARACTERS: usize = 4000;

/// What stands in a cell.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Cell {
    /// A text.
    Text(String),
    /// A number.
    Number(f64),
    /// Yes or no.
    Flag(bool),
}

impl Cell {
    /// As text, in the form in which files hold it.
    pub(crate) fn text(&self) -> String {
        match self {
            Cell::Text(text) => text.trim().to_owned(),
            Cell::Number(number) => number.to_string(),
            Cell::Flag(flag) => flag.to_string(),
        }
    }
}

/// One sheet: row from one and column from zero to cell.
#[derive(Clone, Debug, Default)]
pub(crate) struct Sheet {
    pub(crate) name: String,
    pub(crate) cells: BTreeMap<(u32, u32), Cell>,
}

impl Sheet {
    pub(crate) fn place(&self, row: u32, column: u32) -> CellPlace {
        CellPlace { sheet: self.name.clone(), row, column }
    }

    /// The cells of a row, from the left.
    pub(crate) fn row(&self, row: u32) -> impl Iterator<Item = (u32, &Cell)> {
        self.cells.range((row, 0)..(row + 1, 0)).map(|(&(_, column), cell)| (column, cell))
    }

    /// The rows that hold something, from this one on.
    pub(crate) fn rows_from(&self, first: u32) -> Vec<u32> {
        let mut rows: Vec<u32> = self.cells.range((first, 0)..).map(|(&(row, _), _)| row).collect();
        rows.dedup();
        rows
    }

    /// The text of a cell; empty if there is none.
    pub(crate) fn text(&self, row: u32, column: u32) -> String {
        self.cells.get(&(row, column)).map(Cell::text).unwrap_or_default()
    }
}

/// The sheets of a file.
#[derive(Clone, Debug, Default)]
pub(crate) struct Grid {
    pub(crate) sheets: Vec<Sheet>,
}

impl Grid {
    /// The sheet of this name; capitals do not count.
    pub(crate) fn sheet(&self, name: &str) -> Option<&Sheet> {
        self.sheets.iter().find(|sheet| sheet.name.trim().eq_ignore_ascii_case(name))
    }
}
