//! Text parted by semicolons, commas or tabs, as spreadsheets save it.

use oilway_text::message;

use super::grid::{MOST_CHARACTERS, MOST_COLUMNS, MOST_ROWS};
use super::{Cell, CellPlace, Grid, Sheet, SheetMistake};

/// Reads the one table of such a file.
pub(super) fn read(file: &str, bytes: &[u8]) -> (Grid, Vec<SheetMistake>) {
    let text = decoded(bytes);
    let mut sheet = Sheet::default();
    let mut mistakes = Vec::new();
    let mut note = |row, column, what, cure| {
        let place = CellPlace { sheet: String::new(), row, column };
        mistakes.push(SheetMistake::new(file, &place, what, cure));
    };
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(separator(&text))
        .from_reader(text.as_bytes());
    for (index, record) in reader.records().enumerate() {
        // A file of more rows is cut below, so the index fits.
        let row = u32::try_from(index).unwrap_or(u32::MAX).saturating_add(1);
        if row > MOST_ROWS {
            note(
                row,
                0,
                message!("store-too-many-rows", most = MOST_ROWS),
                message!("store-too-many-cells-cure"),
            );
            break;
        }
        let record = match record {
            Ok(record) => record,
            Err(error) => {
                note(
                    row,
                    0,
                    message!("store-no-table", reason = error.to_string()),
                    message!("store-no-table-cure"),
                );
                break;
            }
        };
        for (column, text) in record.iter().enumerate() {
            let column = u32::try_from(column).unwrap_or(u32::MAX);
            if column >= MOST_COLUMNS || text.chars().count() > MOST_CHARACTERS {
                note(row, column, message!("store-cell-too-large"), message!("store-too-many-cells-cure"));
            } else if !text.trim().is_empty() {
                sheet.cells.insert((row, column), Cell::Text(text.trim().to_owned()));
            }
        }
    }
    (Grid { sheets: vec![sheet] }, mistakes)
}

/// The text: UTF-8, or else the one byte for each character in which older spreadsheets save.
fn decoded(bytes: &[u8]) -> String {
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    match core::str::from_utf8(bytes) {
        Ok(text) => text.to_owned(),
        Err(_) => bytes.iter().map(|&byte| char::from(byte)).collect(),
    }
}

/// What parts the cells: of the candidates the one that stands most often in the first line outside of quotes.
fn separator(text: &str) -> u8 {
    let mut quoted = false;
    let mut counts = [(b';', 0u32), (b',', 0), (b'\t', 0)];
    for byte in text.lines().next().unwrap_or("").bytes() {
        if byte == b'"' {
            quoted = !quoted;
        }
        for (candidate, count) in &mut counts {
            *count += u32::from(byte == *candidate && !quoted);
        }
    }
    // On equal counts the first, so that the order above decides.
    counts.iter().rev().max_by_key(|(_, count)| *count).map_or(b';', |(candidate, _)| *candidate)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cells(text: &[u8]) -> Vec<String> {
        let (grid, mistakes) = read("points.csv", text);
        assert_eq!(mistakes, []);
        grid.sheets[0].cells.values().map(Cell::text).collect()
    }

    #[test]
    fn semicolons_commas_and_tabs_part_the_cells() {
        assert_eq!(cells(b"name;bore\na;0,5 mm\n"), ["name", "bore", "a", "0,5 mm"]);
        assert_eq!(cells(b"name,bore\na,\"0,5 mm\"\n"), ["name", "bore", "a", "0,5 mm"]);
        assert_eq!(cells(b"name\tbore\na\t0,5 mm\n"), ["name", "bore", "a", "0,5 mm"]);
    }

    #[test]
    fn degrees_of_an_older_spreadsheet_are_read() {
        assert_eq!(cells(b"name;at\na;60 \xb0C\n"), ["name", "at", "a", "60 °C"]);
        assert_eq!(cells("\u{feff}name;at\na;60 °C\n".as_bytes()), ["name", "at", "a", "60 °C"]);
    }

    #[test]
    fn more_rows_than_any_survey_has_are_refused_in_their_place() {
        let rows = "a\n".repeat(MOST_ROWS as usize + 5);
        let (grid, mistakes) = read("points.csv", rows.as_bytes());
        assert_eq!(grid.sheets[0].cells.len(), MOST_ROWS as usize);
        assert_eq!((mistakes.len(), mistakes[0].row), (1, MOST_ROWS + 1));
    }
}
