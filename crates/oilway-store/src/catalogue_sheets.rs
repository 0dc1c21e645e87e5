//! The catalogue as a workbook: one sheet for each kind, one for all ports, and back into catalogue files.

use std::collections::BTreeMap;

use oilway_catalogue::kinds::KINDS;
use oilway_catalogue::{Catalogue, Field, Kind, Part, Price, Value, What, catalogue_over};
use oilway_text::{Message, message};
use oilway_units::UnitSystem;
use rust_xlsxwriter::{DocProperties, ExcelDateTime, Format, Workbook, Worksheet, XlsxError};

use crate::asked::quoted;
use crate::job::amount;
use crate::sheets::{Assembly, Cell, CellPlace, Grid, Sheet, SheetMistake, read_grid};

/// The sheet of the ports of all parts.
const PORTS: &str = "ports";
/// What parts several values in one cell.
const SEPARATOR: char = ';';
/// The columns that every kind has before its own.
const COMMON: [&str; 4] = ["id", "description", "price", "source"];
const PORT_COLUMNS: [&str; 9] =
    ["part", "mark", "role", "thread", "sex", "face", "internal", "shipped_with", "bore"];

/// The catalogue as a workbook; the same bytes for the same catalogue.
///
/// # Errors
/// The reason that the writer of workbooks names: more rows than a sheet can hold.
pub fn write_catalogue_sheets(catalogue: &Catalogue) -> Result<Vec<u8>, Message> {
    workbook(catalogue).map_err(|error| message!("store-cannot-make-workbook", reason = error.to_string()))
}

fn workbook(catalogue: &Catalogue) -> Result<Vec<u8>, XlsxError> {
    let mut workbook = Workbook::new();
    let date = ExcelDateTime::from_ymd(2000, 1, 1)?;
    workbook.set_properties(&DocProperties::new().set_title("Catalogue").set_creation_datetime(&date));
    for kind in KINDS {
        kind_sheet(workbook.add_worksheet(), *kind, catalogue)?;
    }
    ports_sheet(workbook.add_worksheet(), catalogue)?;
    workbook.save_to_buffer()
}

fn headers(sheet: &mut Worksheet, headers: impl Iterator<Item = &'static str>) -> Result<(), XlsxError> {
    let bold = Format::new().set_bold();
    let text = Format::new().set_num_format("@");
    for (column, header) in (0u16..).zip(headers) {
        sheet.set_column_format(column, &text)?.set_column_width(column, 18.0)?;
        sheet.write_with_format(0, column, header, &bold)?;
    }
    sheet.set_freeze_panes(1, 1)?;
    Ok(())
}

fn kind_sheet(
    sheet: &mut Worksheet,
    kind: &'static dyn Kind,
    catalogue: &Catalogue,
) -> Result<(), XlsxError> {
    sheet.set_name(kind.id())?;
    headers(sheet, COMMON.into_iter().chain(kind.fields().iter().map(|field| field.name)))?;
    for (row, part) in (1u32..).zip(catalogue.of_kind(kind.id())) {
        let price = part.price.as_ref().map(Price::to_string).unwrap_or_default();
        let common = [part.id.clone(), part.description.clone(), price, part.source.clone()];
        let values = part.values.iter().map(|value| value.as_ref().map(cell).unwrap_or_default());
        for (column, text) in
            (0u16..).zip(common.into_iter().chain(values)).filter(|(_, text)| !text.is_empty())
        {
            sheet.write_string(row, column, text)?;
        }
    }
    Ok(())
}

/// A value as the text of a cell.
fn cell(value: &Value) -> String {
    let joined = |texts: Vec<String>| texts.join("; ");
    match value {
        Value::Quantity(quantity) => amount(*quantity, UnitSystem::Metric),
        Value::Quantities(list) => joined(list.iter().map(|q| amount(*q, UnitSystem::Metric)).collect()),
        Value::Word(word) => (*word).to_owned(),
        Value::Text(text) => text.clone(),
        Value::Texts(list) => joined(list.clone()),
        Value::Flag(flag) => if *flag { "yes" } else { "no" }.to_owned(),
    }
}

fn ports_sheet(sheet: &mut Worksheet, catalogue: &Catalogue) -> Result<(), XlsxError> {
    sheet.set_name(PORTS)?;
    headers(sheet, PORT_COLUMNS.into_iter())?;
    let rows = catalogue.parts().flat_map(|part| part.ports.iter().map(move |port| (part, port)));
    for (row, (part, port)) in (1u32..).zip(rows) {
        let bore = port.bore.map(|bore| amount(bore, UnitSystem::Metric)).unwrap_or_default();
        let texts = [
            part.id.as_str(),
            &port.mark,
            port.role.word(),
            &port.thread,
            port.sex.word(),
            &port.face,
            port.internal.word(),
            &port.shipped_with,
            &bore,
        ];
        for (column, text) in (0u16..).zip(texts).filter(|(_, text)| !text.is_empty()) {
            sheet.write_string(row, column, text)?;
        }
    }
    Ok(())
}

/// A catalogue read from a workbook.
#[derive(Clone, Debug, Default)]
pub struct CatalogueSheets {
    /// The parts without a mistake.
    pub parts: Vec<Part>,
    /// The same as a catalogue file, if nothing is wrong.
    pub file_text: Option<String>,
    /// What is wrong, by sheet, row and column.
    pub mistakes: Vec<SheetMistake>,
}

/// Reads a workbook of parts that lie over another catalogue and may name its parts.
pub fn read_catalogue_sheets(file: &str, bytes: &[u8], below: &Catalogue) -> CatalogueSheets {
    let (grid, mut mistakes) = read_grid(file, bytes);
    if grid.sheets.is_empty() {
        return CatalogueSheets { mistakes, ..CatalogueSheets::default() };
    }
    let (assembly, unread) = catalogue_text(file, &grid);
    mistakes.extend(unread);
    let (parts, wrong) = catalogue_over(below, &[(file, &assembly.text)]);
    let first = grid.sheets[0].place(1, 0);
    mistakes.extend(assembly.in_cells(file, wrong, &first));
    let file_text = mistakes.is_empty().then_some(assembly.text);
    CatalogueSheets { parts, file_text, mistakes }
}

fn catalogue_text(file: &str, grid: &Grid) -> (Assembly, Vec<SheetMistake>) {
    let mut assembly = Assembly::default();
    let mut mistakes = Vec::new();
    let mut ports = ports(grid.sheet(PORTS));
    for sheet in grid.sheets.iter().filter(|sheet| !sheet.name.eq_ignore_ascii_case(PORTS)) {
        let Some(kind) = KINDS.iter().find(|kind| kind.id().eq_ignore_ascii_case(sheet.name.trim())) else {
            let (what, cure) = (
                message!("store-sheet-of-no-kind", sheet = &sheet.name),
                message!("store-sheet-of-no-kind-cure"),
            );
            mistakes.push(SheetMistake::new(file, &sheet.place(1, 0), what, cure));
            continue;
        };
        let headers = header_row(sheet);
        for row in sheet.rows_from(2) {
            put_part(&mut assembly, *kind, sheet, row, &headers, &mut ports);
        }
    }
    for (id, place) in ports.into_iter().filter_map(|(id, rows)| Some((id, rows.into_iter().next()?.0))) {
        let (what, cure) =
            (message!("store-port-of-no-part", id = id), message!("store-port-of-no-part-cure"));
        mistakes.push(SheetMistake::new(file, &place, what, cure));
    }
    (assembly, mistakes)
}

fn header_row(sheet: &Sheet) -> BTreeMap<u32, String> {
    sheet.row(1).map(|(column, cell)| (column, cell.text())).collect()
}

/// A row of the sheet of ports: its first cell, and its cells by header.
type PortRow = (CellPlace, Vec<(String, String, CellPlace)>);

/// The rows of the sheet of ports by the id of their part.
fn ports(sheet: Option<&Sheet>) -> BTreeMap<String, Vec<PortRow>> {
    let mut by_part: BTreeMap<String, Vec<PortRow>> = BTreeMap::new();
    let Some(sheet) = sheet else { return by_part };
    let headers = header_row(sheet);
    for row in sheet.rows_from(2) {
        let mut id = String::new();
        let mut cells = Vec::new();
        for (column, cell) in sheet.row(row) {
            match headers.get(&column).map(String::as_str) {
                Some("part") => id = cell.text(),
                Some(header) => cells.push((header.to_owned(), cell.text(), sheet.place(row, column))),
                None => cells.push((String::new(), cell.text(), sheet.place(row, column))),
            }
        }
        by_part.entry(id).or_default().push((sheet.place(row, 0), cells));
    }
    by_part
}

fn put_part(
    assembly: &mut Assembly,
    kind: &'static dyn Kind,
    sheet: &Sheet,
    row: u32,
    headers: &BTreeMap<u32, String>,
    ports: &mut BTreeMap<String, Vec<PortRow>>,
) {
    let first = sheet.place(row, 0);
    assembly.header("[[part]]", &first);
    assembly.line("kind", &quoted(kind.id()), &first);
    let mut id = String::new();
    for (column, cell) in sheet.row(row) {
        let key = headers.get(&column).map_or("", String::as_str);
        if key == "id" {
            id = cell.text();
        }
        let field = kind.fields().iter().find(|field| field.name == key);
        assembly.line(key, &value(cell, field), &sheet.place(row, column));
    }
    for (place, cells) in ports.remove(&id).unwrap_or_default() {
        assembly.header("[[part.port]]", &place);
        for (key, text, place) in cells {
            assembly.line(&key, &quoted(&text), &place);
        }
    }
}

/// The text of a cell as the field wants it in TOML.
fn value(cell: &Cell, field: Option<&Field>) -> String {
    let text = cell.text();
    match field.map(|field| field.what) {
        Some(What::Flag) if text.eq_ignore_ascii_case("yes") || text == "true" => "true".to_owned(),
        Some(What::Flag) if text.eq_ignore_ascii_case("no") || text == "false" => "false".to_owned(),
        Some(What::Quantities(..) | What::Texts | What::Words(_) | What::Parts(_)) => {
            let items: Vec<String> = text.split(SEPARATOR).map(|item| quoted(item.trim())).collect();
            format!("[{}]", items.join(", "))
        }
        _ => quoted(&text),
    }
}
