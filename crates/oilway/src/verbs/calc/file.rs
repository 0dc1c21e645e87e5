//! A file of cases: one case a row (`.csv`, `.tsv`) or a line (`.jsonl`), calculated one by one, with every bad cell named in one run.

use std::path::Path;

use oilway_physics::Formula;
use oilway_text::message;
use oilway_units::{AnyQuantity, Unit, show_exact};

use super::case::{self, Given, Problem};
use crate::desk::{Desk, Reply};
use crate::exit::Exit;
use crate::files;
use crate::json;
use crate::json::calc::{CalcAnswer, Case, ResultData};
use crate::progress::Progress;
use crate::trouble::Trouble;

/// A row as it stands in the file: its number for people, and its cells by column.
struct Row {
    number: usize,
    cells: Vec<(String, String)>,
}

/// More mistakes than this are counted, not told.
const MOST_TOLD: usize = 50;

pub(super) fn cases(
    desk: &Desk,
    formula: &'static Formula,
    given: &Given,
    file: &str,
) -> Result<Reply, Trouble> {
    if !given.problems.is_empty() {
        return Err(Trouble::Told(Exit::Mistakes, given.problems.clone()));
    }
    let text = files::text(file)?;
    let lines = Path::new(file).extension().is_some_and(|ending| ending == "jsonl" || ending == "ndjson");
    let rows = if lines { json_lines(&text) } else { table(&text) };
    let rows = rows.map_err(|problems| Trouble::Told(Exit::Mistakes, problems))?;
    if rows.is_empty() {
        return Err(Trouble::asked(
            message!("oilway-no-cases", file = file),
            message!("oilway-no-cases-cure"),
        ));
    }
    let _progress = Progress::begin(desk, &message!("oilway-progress-cases"));
    let mut done = Vec::with_capacity(rows.len());
    let mut problems = Vec::new();
    for row in &rows {
        match calculated(formula, given, row) {
            Ok(case) => done.push(case),
            Err(list) => problems.extend(list),
        }
    }
    if !problems.is_empty() {
        return Err(Trouble::Told(Exit::Mistakes, capped(problems)));
    }
    if desk.json {
        let data = |reader: &_| CalcAnswer {
            version: "oilway.calc.1",
            formulas: vec![formula.into()],
            results: done.iter().map(|case| ResultData::new(case, reader)).collect(),
        };
        return Ok(desk.reply(Exit::Works, desk.reader(None), data, |_| {}));
    }
    Ok(Reply::plain(if lines { as_lines(&rows, &done) } else { as_table(&rows, &done) }))
}

fn capped(mut problems: Vec<Problem>) -> Vec<Problem> {
    let more = problems.len().saturating_sub(MOST_TOLD);
    problems.truncate(MOST_TOLD);
    if more > 0 {
        problems.push((message!("oilway-more-mistakes", more = more), message!("oilway-more-cells-cure")));
    }
    problems
}

fn calculated(formula: &'static Formula, given: &Given, row: &Row) -> Result<Case, Vec<Problem>> {
    let here = |(what, cure): Problem| (message!("oilway-in-row", row = row.number, what = what), cure);
    let mut values = given.clone();
    for (column, cell) in &row.cells {
        let (name, unit) = header(column);
        // Other columns, a name or a remark, are the user's own; a misspelt one shows as an input that is missing.
        let Ok(place) = case::place(formula, name) else { continue };
        let bare = unit.filter(|_| cell.trim().parse::<f64>().is_ok());
        let text = bare.map_or_else(|| cell.clone(), |unit| format!("{} {unit}", cell.trim()));
        values.take(formula, place, &text);
    }
    case::calculated(formula, &values).map_err(|list| list.into_iter().map(here).collect())
}

/// `bore [mm]`: the name, and the unit of bare numbers below it.
fn header(column: &str) -> (&str, Option<&str>) {
    match column.trim().strip_suffix(']').and_then(|rest| rest.split_once('[')) {
        Some((name, unit)) => (name.trim(), Some(unit.trim())),
        None => (column.trim(), None),
    }
}

/// Comma, semicolon or tab, whichever the first line holds most of.
fn separator(text: &str) -> u8 {
    let first = text.lines().next().unwrap_or("");
    let count = |sign: u8| first.bytes().filter(|&byte| byte == sign).count();
    [b'\t', b';', b','].into_iter().max_by_key(|&sign| count(sign)).unwrap_or(b',')
}

fn table(text: &str) -> Result<Vec<Row>, Vec<Problem>> {
    let mut reader =
        csv::ReaderBuilder::new().delimiter(separator(text)).comment(Some(b'#')).from_reader(text.as_bytes());
    let broken = |error: &csv::Error| {
        (message!("oilway-no-table", reason = error.to_string()), message!("oilway-no-table-cure"))
    };
    let columns = reader.headers().map_err(|error| vec![broken(&error)])?.clone();
    let mut rows = Vec::new();
    let mut problems = Vec::new();
    for record in reader.records() {
        match record {
            Ok(record) => {
                let number = record.position().map_or(0, |at| at.line() as usize);
                let cells =
                    columns.iter().zip(&record).map(|(column, cell)| (column.to_owned(), cell.to_owned()));
                rows.push(Row { number, cells: cells.collect() });
            }
            Err(error) => problems.push(broken(&error)),
        }
    }
    if problems.is_empty() { Ok(rows) } else { Err(capped(problems)) }
}

fn json_lines(text: &str) -> Result<Vec<Row>, Vec<Problem>> {
    let mut rows = Vec::new();
    let mut problems = Vec::new();
    for (index, line) in text.lines().enumerate().filter(|(_, line)| !line.trim().is_empty()) {
        match serde_json::from_str::<serde_json::Map<String, serde_json::Value>>(line) {
            Ok(object) => {
                let cell = |value: serde_json::Value| match value {
                    serde_json::Value::String(text) => text,
                    other => other.to_string(),
                };
                let cells = object.into_iter().map(|(column, value)| (column, cell(value))).collect();
                rows.push(Row { number: index + 1, cells });
            }
            Err(error) => problems.push((
                message!("oilway-no-object", row = index + 1, reason = error.to_string()),
                message!("oilway-no-object-cure"),
            )),
        }
    }
    if problems.is_empty() { Ok(rows) } else { Err(capped(problems)) }
}

/// A result with every figure, in the unit of files.
fn exact(quantity: AnyQuantity) -> String {
    show_exact(quantity, Unit::main(quantity.dimension))
}

fn results(case: &Case) -> [(&'static str, String); 3] {
    let end =
        |which: fn(&(AnyQuantity, AnyQuantity)) -> AnyQuantity| case.span.as_ref().map_or(case.middle, which);
    [
        ("result", exact(case.middle)),
        ("lowest", exact(end(|span| span.0))),
        ("highest", exact(end(|span| span.1))),
    ]
}

fn as_lines(rows: &[Row], cases: &[Case]) -> String {
    let mut out = String::new();
    for (row, case) in rows.iter().zip(cases) {
        let own = row.cells.iter().map(|(column, cell)| (column.clone(), cell.clone()));
        let new = results(case).map(|(column, cell)| (column.to_owned(), cell));
        let object: serde_json::Map<String, serde_json::Value> =
            own.chain(new).map(|(column, cell)| (column, serde_json::Value::String(cell))).collect();
        out.push_str(&json::line(&object));
    }
    out
}

fn as_table(rows: &[Row], cases: &[Case]) -> String {
    let mut writer = csv::Writer::from_writer(Vec::new());
    let own = rows.first().into_iter().flat_map(|row| row.cells.iter().map(|(column, _)| column.as_str()));
    let columns: Vec<&str> = own.chain(["result", "lowest", "highest"]).collect();
    // Writing into memory does not fail.
    let _ = writer.write_record(columns);
    for (row, case) in rows.iter().zip(cases) {
        let own = row.cells.iter().map(|(_, cell)| cell.clone());
        let _ = writer.write_record(own.chain(results(case).map(|(_, cell)| cell)));
    }
    writer.into_inner().map_or_else(|_| String::new(), |bytes| String::from_utf8_lossy(&bytes).into_owned())
}
