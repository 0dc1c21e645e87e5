//! A table as comma-separated values (RFC 4180) for spreadsheets and business systems: one header line, bare numbers, the unit
//! of a column in its title.

use oilway_text::{Arg, Reader, message, say};
use oilway_units::{AnyQuantity, Dimension, Unit, UnitSystem, show_exact};

use crate::sheet::{Column, Table};

/// The table. A column that holds quantities of one dimension only is written in one unit, named in its title; sums at the foot
/// of the table are left out, for whoever reads the file makes his own.
pub fn write(table: &Table, reader: &Reader) -> String {
    let units: Vec<Option<&Unit>> =
        (0..table.columns.len()).map(|i| unit_of_column(table, i, reader.units)).collect();
    let titles = table.columns.iter().zip(&units).map(|(column, unit)| title(column, *unit, reader));
    let mut text = line(titles);
    for row in &table.rows {
        let cells = units
            .iter()
            .enumerate()
            .map(|(i, unit)| row.get(i).map_or(String::new(), |arg| cell(arg, *unit, reader)));
        text.push_str(&line(cells));
    }
    text
}

fn title(column: &Column, unit: Option<&Unit>, reader: &Reader) -> String {
    let title = say(&column.title, reader);
    match unit.map(Unit::symbol).filter(|symbol| !symbol.is_empty()) {
        Some(symbol) => format!("{title} [{symbol}]"),
        None => title,
    }
}

/// The unit of a column, if every filled cell holds a quantity of the same dimension.
fn unit_of_column(table: &Table, column: usize, system: UnitSystem) -> Option<&'static Unit> {
    let mut dimension: Option<Dimension> = None;
    for cell in table.rows.iter().filter_map(|row| row.get(column)) {
        match cell {
            Arg::Quantity(quantity) if dimension.is_none_or(|known| known == quantity.dimension) => {
                dimension = Some(quantity.dimension);
            }
            Arg::Text(text) if text.is_empty() => {}
            _ => return None,
        }
    }
    let dimension = dimension?;
    let of_system = || Unit::of(dimension).iter().find(|unit| unit.system() == Some(system));
    Some(if system == UnitSystem::Metric {
        Unit::main(dimension)
    } else {
        of_system().unwrap_or(Unit::main(dimension))
    })
}

fn cell(arg: &Arg, unit: Option<&Unit>, reader: &Reader) -> String {
    match (arg, unit) {
        (Arg::Quantity(quantity), Some(unit)) => number(*quantity, unit),
        (Arg::Count(count), _) => count.to_string(),
        _ => harmless(say(&message!("documents-alone", value = arg.clone()), reader)),
    }
}

fn number(quantity: AnyQuantity, unit: &Unit) -> String {
    let shown = show_exact(quantity, unit);
    shown.strip_suffix(unit.symbol()).unwrap_or(&shown).trim_end().to_owned()
}

/// A text that a spreadsheet would take for a formula gets an apostrophe before it.
fn harmless(text: String) -> String {
    let formula = text.starts_with(['=', '+', '-', '@', '\t', '\r']) && text.parse::<f64>().is_err();
    if formula { format!("'{text}") } else { text }
}

fn line(cells: impl Iterator<Item = String>) -> String {
    let mut line = cells.map(quoted).collect::<Vec<_>>().join(",");
    line.push_str("\r\n");
    line
}

fn quoted(cell: String) -> String {
    if cell.contains([',', '"', '\n', '\r']) { format!("\"{}\"", cell.replace('"', "\"\"")) } else { cell }
}

#[cfg(test)]
mod tests {
    use super::*;
    use oilway_units::{Length, Pressure};
    use proptest::prelude::*;

    fn table(rows: Vec<Vec<Arg>>) -> Table {
        let column = |key| Column::words(oilway_text::Message::new(key));
        Table { rows, ..Table::new([column("documents-column-part"), column("documents-column-length")]) }
    }

    /// What an independent reader finds.
    fn read(text: &str) -> Vec<Vec<String>> {
        let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(text.as_bytes());
        reader.records().map(|record| record.unwrap().iter().map(str::to_owned).collect()).collect()
    }

    #[test]
    fn a_column_of_lengths_has_bare_numbers_and_its_unit_in_the_title() {
        let rows = vec![
            vec!["tube".into(), Length::from_metres(2.5).into()],
            vec!["hose".into(), Length::from_millimetres(800.0).into()],
            vec!["elbow".into(), "".into()],
        ];
        let read = read(&write(&table(rows), &Reader::default()));
        assert_eq!(read[0], ["Part", "Length [mm]"]);
        assert_eq!(read[1], ["tube", "2500"]);
        assert_eq!(read[2], ["hose", "800"]);
        assert_eq!(read[3], ["elbow", ""]);
    }

    #[test]
    fn a_mixed_column_keeps_the_units_in_its_cells() {
        let rows = vec![
            vec!["a".into(), Length::from_metres(2.0).into()],
            vec!["b".into(), Pressure::from_bar(3.0).into()],
        ];
        let read = read(&write(&table(rows), &Reader::default()));
        assert_eq!(
            (read[0][1].as_str(), read[1][1].as_str(), read[2][1].as_str()),
            ("Length", "2 m", "3 bar")
        );
    }

    #[test]
    fn a_name_that_looks_like_a_formula_does_not_become_one() {
        let read = read(&write(&table(vec![vec!["=1+1".into(), "-10".into()]]), &Reader::default()));
        assert_eq!(read[1], ["'=1+1", "-10"]);
    }

    proptest! {
        #[test]
        fn whatever_a_name_holds_another_reader_finds_it_again(name in "\\PC*", other in any::<String>()) {
            let text = write(&table(vec![vec![name.clone().into(), other.clone().into()]]), &Reader::default());
            let found = read(&text);
            prop_assert_eq!(found.len(), 2);
            prop_assert_eq!(&found[1][0], &harmless(name));
            prop_assert_eq!(&found[1][1], &harmless(other));
        }
    }
}
