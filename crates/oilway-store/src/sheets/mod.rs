//! Spreadsheets: what stands in their cells, and text put together from cells with the place of each, so that a mistake in the text can be
//! told as a mistake in a cell.

mod assembly;
mod csv_file;
mod grid;
mod xlsx_file;

use oilway_text::Message;

pub(crate) use assembly::{Assembly, is_bare_number};
pub(crate) use grid::{Cell, Grid, Sheet};

/// A cell: sheet, row counted from one, column counted from zero.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct CellPlace {
    pub(crate) sheet: String,
    pub(crate) row: u32,
    pub(crate) column: u32,
}

/// Something wrong in a spreadsheet.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetMistake {
    /// The name of the file, as the user knows it.
    pub file: String,
    /// The sheet; empty for a file that has only one.
    pub sheet: String,
    /// The row, counted from one.
    pub row: u32,
    /// The letters of the column.
    pub column: String,
    /// What is wrong.
    pub what: Message,
    /// What cures it.
    pub cure: Message,
}

impl SheetMistake {
    pub(crate) fn new(file: &str, place: &CellPlace, what: Message, cure: Message) -> Self {
        let column = letters(place.column);
        SheetMistake { file: file.to_owned(), sheet: place.sheet.clone(), row: place.row, column, what, cure }
    }
}

/// The letters of a column counted from zero: A, B … Z, AA.
fn letters(column: u32) -> String {
    let mut letters = Vec::new();
    let mut rest = column + 1;
    while rest > 0 {
        rest -= 1;
        letters.push(char::from(b'A' + (rest % 26) as u8));
        rest /= 26;
    }
    letters.iter().rev().collect()
}

/// Reads a file of either form: a workbook, or text parted by semicolons, commas or tabs.
pub(crate) fn read_grid(file: &str, bytes: &[u8]) -> (Grid, Vec<SheetMistake>) {
    const ZIP: &[u8] = b"PK\x03\x04";
    if bytes.starts_with(ZIP) { xlsx_file::read(file, bytes) } else { csv_file::read(file, bytes) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_have_the_letters_that_spreadsheets_show() {
        let of = |column| letters(column);
        assert_eq!(
            [of(0), of(25), of(26), of(51), of(52), of(701), of(702)],
            ["A", "Z", "AA", "AZ", "BA", "ZZ", "AAA"]
        );
    }
}
