//! Workbooks. Nothing of a workbook is trusted: what it unpacks to is measured before anything is read, and cells are taken one by
//! one, so that a far-off cell costs no more than a near one.

use std::io::{Cursor, Read};

use calamine::{DataRef, Reader, Xlsx, open_workbook_from_rs};
use oilway_text::{Message, message};

use super::grid::{MOST_CHARACTERS, MOST_COLUMNS, MOST_ROWS};
use super::{Cell, CellPlace, Grid, Sheet, SheetMistake};

/// A survey of thousands of points unpacks to a few MB.
const MOST_UNPACKED: u64 = 64 * 1024 * 1024;
const MOST_SHEETS: usize = 100;
/// So many mistakes are told of one file at most.
const MOST_MISTAKES: usize = 200;

/// Reads every sheet of a workbook.
pub(super) fn read(file: &str, bytes: &[u8]) -> (Grid, Vec<SheetMistake>) {
    let whole = CellPlace { sheet: String::new(), row: 1, column: 0 };
    let refuse =
        |what: Message, cure: Message| (Grid::default(), vec![SheetMistake::new(file, &whole, what, cure)]);
    match unpacked_size(bytes) {
        Ok(size) if size <= MOST_UNPACKED => {}
        Ok(_) => {
            let most = MOST_UNPACKED / 1024 / 1024;
            return refuse(
                message!("store-unpacks-too-large", most = most),
                message!("store-too-many-cells-cure"),
            );
        }
        Err(error) => {
            return refuse(
                message!("store-no-workbook", reason = error.to_string()),
                message!("store-no-workbook-cure"),
            );
        }
    }
    match sheets(file, bytes) {
        Ok(read) => read,
        Err(error) => refuse(
            message!("store-no-workbook", reason = error.to_string()),
            message!("store-no-workbook-cure"),
        ),
    }
}

/// What the file unpacks to, or just above the bound if it is more. The sizes that it states itself are not believed.
fn unpacked_size(bytes: &[u8]) -> Result<u64, zip::result::ZipError> {
    let mut archive = zip::ZipArchive::new(Cursor::new(bytes))?;
    let mut total = 0;
    for index in 0..archive.len() {
        let entry = archive.by_index(index)?;
        let left = MOST_UNPACKED + 1 - total;
        total += std::io::copy(&mut entry.take(left), &mut std::io::sink())?;
        if total > MOST_UNPACKED {
            break;
        }
    }
    Ok(total)
}

fn sheets(file: &str, bytes: &[u8]) -> Result<(Grid, Vec<SheetMistake>), calamine::XlsxError> {
    let mut workbook: Xlsx<_> = open_workbook_from_rs(Cursor::new(bytes))?;
    let mut grid = Grid::default();
    let mut mistakes = Vec::new();
    for name in workbook.sheet_names().into_iter().take(MOST_SHEETS) {
        let mut sheet = Sheet { name: name.clone(), ..Sheet::default() };
        let mut cells = workbook.worksheet_cells_reader(&name)?;
        while let Some(cell) = cells.next_cell()? {
            let (row, column) = cell.get_position();
            let place = CellPlace { sheet: name.clone(), row: row.saturating_add(1), column };
            match value(cell.get_value(), row, column) {
                Ok(Some(value)) => {
                    sheet.cells.insert((place.row, column), value);
                }
                Ok(None) => {}
                Err((what, cure)) if mistakes.len() < MOST_MISTAKES => {
                    mistakes.push(SheetMistake::new(file, &place, what, cure));
                }
                Err(_) => break,
            }
        }
        grid.sheets.push(sheet);
    }
    Ok((grid, mistakes))
}

/// What stands in a cell; nothing for an empty one.
fn value(value: &DataRef<'_>, row: u32, column: u32) -> Result<Option<Cell>, (Message, Message)> {
    let cell = match value {
        DataRef::Empty => return Ok(None),
        DataRef::String(text) if text.trim().is_empty() => return Ok(None),
        DataRef::SharedString(text) if text.trim().is_empty() => return Ok(None),
        DataRef::String(text) => Cell::Text(text.trim().to_owned()),
        DataRef::SharedString(text) => Cell::Text(text.trim().to_owned()),
        DataRef::Int(number) => Cell::Text(number.to_string()),
        DataRef::Float(number) => Cell::Number(*number),
        DataRef::Bool(flag) => Cell::Flag(*flag),
        DataRef::DateTime(_) | DataRef::DateTimeIso(_) | DataRef::DurationIso(_) => {
            return Err((message!("store-cell-date"), message!("store-cell-date-cure")));
        }
        DataRef::Error(error) => {
            return Err((
                message!("store-cell-error", error = error.to_string()),
                message!("store-cell-error-cure"),
            ));
        }
    };
    let long = matches!(&cell, Cell::Text(text) if text.chars().count() > MOST_CHARACTERS);
    if long || row >= MOST_ROWS || column >= MOST_COLUMNS {
        return Err((message!("store-cell-too-large"), message!("store-too-many-cells-cure")));
    }
    Ok(Some(cell))
}
