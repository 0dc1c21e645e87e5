//! The text of a job file from the cells of a survey.

use std::collections::BTreeMap;

use oilway_text::message;

use super::columns::{
    self, Column, Form, GIVEN_FROM, GIVEN_INTERVAL, GIVEN_QUANTITY, HOSE_LENGTH, TUBE_LENGTH, TUBE_PLACE,
    TUBE_RISE,
};
use crate::asked::quoted;
use crate::job::FORMAT;
use crate::sheets::{Assembly, Cell, CellPlace, Grid, Sheet, SheetMistake, is_bare_number};

/// What the first cell of a row begins with that is no part of the survey.
pub(super) const HINT: &str = "(how to fill)";
const EXAMPLE: &str = "EXAMPLE";

/// A value of a row: its text in TOML and its cell.
struct Entry {
    value: String,
    place: CellPlace,
}

/// A row of a table by key.
struct Row {
    place: CellPlace,
    entries: BTreeMap<String, Entry>,
}

impl Row {
    /// The text of an entry without its quotes.
    fn name(&self, key: &str) -> Option<(String, CellPlace)> {
        let entry = self.entries.get(key)?;
        let text = entry.value.parse::<toml_edit::Value>().ok()?.as_str()?.to_owned();
        Some((text, entry.place.clone()))
    }
}

/// The text of the job and what cannot even be put into it.
pub(super) fn job_text(file: &str, grid: &Grid) -> (Assembly, Vec<SheetMistake>) {
    let mut mistakes = Vec::new();
    // A file of one table is the table of the points.
    let only = (grid.sheets.len() == 1).then(|| &grid.sheets[0]);
    let points_sheet = grid.sheet("Points").or(only);
    let mut rows = |sheet: Option<&Sheet>, columns: &[Column]| match sheet {
        Some(sheet) => rows_of(file, sheet, columns, &mut mistakes),
        None => Vec::new(),
    };
    let points = rows(points_sheet, &columns::points());
    let dividers = rows(grid.sheet("Dividers"), &columns::dividers());
    let places = rows(grid.sheet("Places"), &columns::places());
    let mut site = grid.sheet("Site").map(site_entries).unwrap_or_default();

    let mut assembly = Assembly::default();
    assembly.plain(&format!("oilway = {}\n", quoted(FORMAT)));
    put_general(&mut assembly, &mut site, file);
    put_places(&mut assembly, &places, &[&points, &dividers]);
    put_dividers(&mut assembly, &dividers, &points, &places);
    for row in &points {
        put_row(&mut assembly, "[[point]]", row);
    }
    put_package(&mut assembly, &mut site, &places, &[&points, &dividers]);
    (assembly, mistakes)
}

/// The rows below the header; each column's header names its key and its unit.
fn rows_of(file: &str, sheet: &Sheet, columns: &[Column], mistakes: &mut Vec<SheetMistake>) -> Vec<Row> {
    let headers: BTreeMap<u32, (String, String)> =
        sheet.row(1).map(|(column, cell)| (column, key_and_unit(&cell.text()))).collect();
    let Some(name_column) = headers.iter().find(|(_, (key, _))| key == "name").map(|(column, _)| *column)
    else {
        let place = sheet.place(1, 0);
        mistakes.push(SheetMistake::new(
            file,
            &place,
            message!("store-no-headers"),
            message!("store-no-headers-cure"),
        ));
        return Vec::new();
    };
    let form =
        |key: &str| columns.iter().find(|column| column.key == key).map_or(Form::Text, |column| column.form);
    let mut rows = Vec::new();
    for row in sheet.rows_from(2) {
        let first = sheet.text(row, name_column);
        if first.starts_with(HINT) || first.starts_with(EXAMPLE) {
            continue;
        }
        let mut entries = BTreeMap::new();
        for (column, cell) in sheet.row(row) {
            let place = sheet.place(row, column);
            let Some((key, unit)) = headers.get(&column) else {
                mistakes.push(SheetMistake::new(
                    file,
                    &place,
                    message!("store-no-header"),
                    message!("store-no-header-cure"),
                ));
                continue;
            };
            if key != "remark" {
                entries.insert(key.clone(), Entry { value: value(cell, unit, form(key)), place });
            }
        }
        if !entries.is_empty() {
            rows.push(Row { place: sheet.place(row, name_column), entries });
        }
    }
    rows
}

/// `bore [mm]` as key and unit.
fn key_and_unit(header: &str) -> (String, String) {
    match header.split_once('[') {
        Some((key, unit)) => (key.trim().to_owned(), unit.trim_end().trim_end_matches(']').trim().to_owned()),
        None => (header.trim().to_owned(), String::new()),
    }
}

/// What stands in a cell as a value in TOML.
fn value(cell: &Cell, unit: &str, form: Form) -> String {
    let text = cell.text();
    match form {
        Form::Flag if matches!(text.to_lowercase().as_str(), "yes" | "true") => "true".to_owned(),
        Form::Flag if matches!(text.to_lowercase().as_str(), "no" | "false") => "false".to_owned(),
        Form::Whole if text.parse::<u32>().is_ok() => text,
        Form::Words => {
            let words: Vec<String> = text.split(',').map(|word| quoted(word.trim())).collect();
            format!("[{}]", words.join(", "))
        }
        Form::Text if !unit.is_empty() && is_bare_number(&text) => quoted(&format!("{text} {unit}")),
        Form::Text | Form::Flag | Form::Whole => quoted(&text),
    }
    .trim()
    .to_owned()
}

/// The sheet of the site: what is asked, the answer, how to write it, the key.
const LABEL: u32 = 0;
const ANSWER: u32 = 1;
const KEY: u32 = 3;

fn site_entries(sheet: &Sheet) -> BTreeMap<String, Entry> {
    let asked = columns::site();
    let mut entries = BTreeMap::new();
    for row in sheet.rows_from(2) {
        let (key, Some(cell)) = (sheet.text(row, KEY), sheet.cells.get(&(row, ANSWER))) else { continue };
        let form =
            asked.iter().find(|(_, column)| column.key == key).map_or(Form::Text, |(_, column)| column.form);
        let (_, unit) = key_and_unit(&sheet.text(row, LABEL));
        entries.insert(key, Entry { value: value(cell, &unit, form), place: sheet.place(row, ANSWER) });
    }
    entries
}

/// Name, units and request, then the tables that hold one thing each.
fn put_general(assembly: &mut Assembly, site: &mut BTreeMap<String, Entry>, file: &str) {
    if !site.contains_key("name") {
        let stem = file.rsplit(['/', '\\']).next().unwrap_or(file);
        let stem = stem.rsplit_once('.').map_or(stem, |(stem, _)| stem);
        assembly.plain(&format!("name = {} # not in the survey: taken from its file\n", quoted(stem)));
    }
    let top: Vec<String> = site.keys().filter(|key| !key.contains('.')).cloned().collect();
    for key in top {
        if let Some(entry) = site.remove(&key) {
            assembly.line(&key, &entry.value, &entry.place);
        }
    }
    let tables = tables(site);
    for table in tables.iter().filter(|table| *table != "package") {
        put_table(assembly, site, table);
    }
    if !tables.iter().any(|table| table == "lubricant") {
        assembly.plain("\n# The survey does not say what is to be pumped: ask.\n[lubricant]\n");
        assembly.plain("name = \"unknown grease\"\nkind = \"grease\"\nclass = \"unknown\"\n");
    }
}

/// The tables that the keys of the site name, each once.
fn tables(site: &BTreeMap<String, Entry>) -> Vec<String> {
    let mut tables: Vec<String> =
        site.keys().filter_map(|key| key.split_once('.')).map(|(table, _)| table.to_owned()).collect();
    tables.dedup();
    tables
}

fn put_table(assembly: &mut Assembly, site: &mut BTreeMap<String, Entry>, table: &str) {
    let prefix = format!("{table}.");
    let keys: Vec<String> = site.keys().filter(|key| key.starts_with(&prefix)).cloned().collect();
    let Some(first) = keys.first().and_then(|key| site.get(key)) else { return };
    let place = first.place.clone();
    assembly.header(&format!("[{table}]"), &place);
    for key in keys {
        if let Some(entry) = site.remove(&key) {
            assembly.line(key.trim_start_matches(&prefix), &entry.value, &entry.place);
        }
    }
}

/// The places of the sheet, or those that points and dividers name.
fn put_places(assembly: &mut Assembly, places: &[Row], named_in: &[&[Row]]) {
    for row in places {
        put_row(assembly, "[[place]]", row);
    }
    if places.is_empty() {
        for (name, place) in names_used(named_in, "place") {
            assembly.plain("\n# The survey does not say how cold and hot it gets here: ask.");
            assembly.header("[[place]]", &place);
            assembly.line("name", &quoted(&name), &place);
        }
    }
}

/// The dividers of the sheet, or those that points name, each fed by the pump.
fn put_dividers(assembly: &mut Assembly, dividers: &[Row], points: &[Row], places: &[Row]) {
    for row in dividers {
        put_row(assembly, "[[divider]]", row);
    }
    if !dividers.is_empty() {
        return;
    }
    let mut named = names_used(&[points], "on");
    if named.is_empty()
        && let Some(first) = points.first()
    {
        named.push(("divider".to_owned(), first.place.clone()));
    }
    for (name, cell) in named {
        assembly.plain("\n# The survey does not say where this divider sits and how its line runs: ask.");
        assembly.header("[[divider]]", &cell);
        assembly.line("name", &quoted(&name), &cell);
        assembly.plain("fed_by = \"pump\"\n");
        // Beside the first point that hangs on it.
        let hangs = |row: &&Row| row.name("on").is_none_or(|(on, _)| on == name);
        let place = points.iter().find(hangs).and_then(|row| row.name("place"));
        if let Some((place, cell)) = place.or_else(|| places.first().and_then(|row| row.name("name"))) {
            assembly.line("place", &quoted(&place), &cell);
        }
    }
}

/// The names that rows use under a key, each once, in the order of the rows.
fn names_used(rows: &[&[Row]], key: &str) -> Vec<(String, CellPlace)> {
    let mut names: Vec<(String, CellPlace)> = Vec::new();
    for (name, place) in rows.iter().flat_map(|rows| rows.iter()).filter_map(|row| row.name(key)) {
        if !names.iter().any(|(known, _)| *known == name) {
            names.push((name, place));
        }
    }
    names
}

fn put_package(
    assembly: &mut Assembly,
    site: &mut BTreeMap<String, Entry>,
    places: &[Row],
    named_in: &[&[Row]],
) {
    if tables(site).iter().any(|table| table == "package") {
        return put_table(assembly, site, "package");
    }
    let first = places.first().and_then(|row| row.name("name"));
    if let Some((name, cell)) = first.or_else(|| names_used(named_in, "place").into_iter().next()) {
        assembly.plain("\n# The survey does not say where the pump stands: ask.");
        assembly.header("[package]", &cell);
        assembly.line("place", &quoted(&name), &cell);
    }
}

/// The columns that do not stand under their own key in the job file.
const GATHERED: [&str; 7] =
    [TUBE_LENGTH, TUBE_PLACE, TUBE_RISE, HOSE_LENGTH, GIVEN_QUANTITY, GIVEN_INTERVAL, GIVEN_FROM];

fn put_row(assembly: &mut Assembly, header: &str, row: &Row) {
    assembly.header(header, &row.place);
    let mut lines: Vec<(&String, &Entry)> =
        row.entries.iter().filter(|(key, _)| !GATHERED.contains(&key.as_str())).collect();
    // In the order of the columns, with the name before all else.
    lines.sort_by_key(|(key, entry)| (key.as_str() != "name", entry.place.column));
    for (key, entry) in lines {
        assembly.line(key, &entry.value, &entry.place);
    }
    let given = [("quantity", GIVEN_QUANTITY), ("interval", GIVEN_INTERVAL), ("from", GIVEN_FROM)];
    if given.iter().any(|(_, column)| row.entries.contains_key(*column)) {
        assembly.of_cell("given = ", &row.place);
        put_fields(assembly, row, &given);
        assembly.plain("\n");
    }
    put_route(assembly, row);
}

fn put_route(assembly: &mut Assembly, row: &Row) {
    let has = |key: &str| row.entries.contains_key(key);
    let (tube, hose) = ([TUBE_LENGTH, TUBE_PLACE, TUBE_RISE].iter().any(|key| has(key)), has(HOSE_LENGTH));
    if !tube && !hose {
        return;
    }
    assembly.of_cell("route = [ ", &row.place);
    if tube {
        put_fields(assembly, row, &[("length", TUBE_LENGTH), ("place", TUBE_PLACE), ("rise", TUBE_RISE)]);
    }
    if hose {
        assembly.plain(if tube { ", " } else { "" });
        assembly.plain("{ flexible = true, length = ");
        if let Some(entry) = row.entries.get(HOSE_LENGTH) {
            assembly.of_cell(&entry.value, &entry.place);
        }
        assembly.plain(" }");
    }
    assembly.plain(" ]\n");
}

/// A table in braces from some columns of a row.
fn put_fields(assembly: &mut Assembly, row: &Row, fields: &[(&str, &str)]) {
    assembly.of_cell("{ ", &row.place);
    let there: Vec<(&str, &Entry)> =
        fields.iter().filter_map(|(key, column)| Some((*key, row.entries.get(*column)?))).collect();
    for (number, (key, entry)) in there.iter().enumerate() {
        assembly.plain(if number > 0 { ", " } else { "" });
        assembly.of_cell(&format!("{key} = {}", entry.value), &entry.place);
    }
    assembly.plain(" }");
}
