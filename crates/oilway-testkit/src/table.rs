//! Values in columns: tables made by independent libraries and tables typed in from standards.
//!
//! A table begins with comment lines. `# rows = 148` is the guard for the number of rows and must be there;
//! `# sum d_mm = 10485.5` guards a column of numbers against slips of the pen.

use std::fs;

use crate::root;

/// A table of text with named columns.
#[derive(Clone, Debug)]
pub struct Table {
    name: String,
    columns: Vec<String>,
    cells: Vec<Vec<String>>,
}

/// One row of a [`Table`].
#[derive(Clone, Copy, Debug)]
pub struct Row<'a> {
    table: &'a Table,
    number: usize,
}

/// A table under `reference/`: `table("independent/herschel_bulkley_flow.csv")`.
///
/// # Panics
/// If the file is missing, does not read or fails its guards.
pub fn table(file: &str) -> Table {
    load(&format!("reference/{file}"))
}

/// A table under `data/`: `data_table("bearings/boundary.csv")`.
///
/// # Panics
/// If the file is missing, does not read or fails its guards.
pub fn data_table(file: &str) -> Table {
    load(&format!("data/{file}"))
}

fn load(name: &str) -> Table {
    match fs::read_to_string(root().join(name)) {
        Ok(text) => parse(name, &text),
        Err(error) => panic!("{name}: {error}"),
    }
}

fn parse(name: &str, text: &str) -> Table {
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
    let columns = match reader.headers() {
        Ok(headers) => headers.iter().map(str::to_owned).collect(),
        Err(error) => panic!("{name}: {error}"),
    };
    let mut cells = Vec::new();
    for record in reader.records() {
        match record {
            Ok(record) => cells.push(record.iter().map(str::to_owned).collect()),
            Err(error) => panic!("{name}: {error}"),
        }
    }
    let table = Table { name: name.to_owned(), columns, cells };
    table.guard(text);
    table
}

impl Table {
    /// The rows from top to bottom.
    pub fn rows(&self) -> impl Iterator<Item = Row<'_>> {
        (0..self.cells.len()).map(|number| Row { table: self, number })
    }

    /// How many rows there are.
    pub fn len(&self) -> usize {
        self.cells.len()
    }

    /// True without rows.
    pub fn is_empty(&self) -> bool {
        self.cells.is_empty()
    }

    /// The names of the columns.
    pub fn columns(&self) -> &[String] {
        &self.columns
    }

    fn column(&self, name: &str) -> usize {
        match self.columns.iter().position(|column| column == name) {
            Some(column) => column,
            None => panic!("{}: no column `{name}`, only {:?}", self.name, self.columns),
        }
    }

    fn guard(&self, text: &str) {
        let guards = || {
            text.lines().filter_map(|line| line.strip_prefix("# ")).filter_map(|line| line.split_once(" = "))
        };
        let rows = guards().find(|(key, _)| *key == "rows");
        match rows {
            Some((_, count)) => assert!(
                count.trim().parse() == Ok(self.len()),
                "{}: says rows = {count}, holds {}: a row was lost or added",
                self.name,
                self.len()
            ),
            None => panic!("{}: has no guard line `# rows = {}`", self.name, self.len()),
        }
        for (column, wanted) in guards().filter_map(|(key, sum)| Some((key.strip_prefix("sum ")?, sum))) {
            let sum: f64 = self.rows().filter_map(|row| row.maybe(column)).sum();
            let wanted: f64 = wanted.trim().parse().unwrap_or(f64::NAN);
            let close = (sum - wanted).abs() <= 1e-9 * wanted.abs().max(1.0);
            assert!(
                close,
                "{}: column {column} sums to {sum}, not to {wanted}: a number was mistyped",
                self.name
            );
        }
    }
}

impl Row<'_> {
    /// The text in this column.
    ///
    /// # Panics
    /// If there is no such column.
    pub fn text(&self, column: &str) -> &str {
        self.table.cells[self.number].get(self.table.column(column)).map_or("", String::as_str)
    }

    /// The number in this column.
    ///
    /// # Panics
    /// If there is no such column or no number in it.
    pub fn number(&self, column: &str) -> f64 {
        match self.maybe(column) {
            Some(number) => number,
            None => panic!("{self}: column {column} holds `{}`, not a number", self.text(column)),
        }
    }

    /// The number in this column, or nothing where the cell is empty or holds a word.
    ///
    /// # Panics
    /// If there is no such column.
    pub fn maybe(&self, column: &str) -> Option<f64> {
        self.text(column).trim().parse().ok()
    }
}

impl std::fmt::Display for Row<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} row {}", self.table.name, self.number + 1)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const GOOD: &str = "# rows = 2\n# sum d_mm = 22\nname,d_mm\na,10\nb,12\n";

    #[test]
    fn a_table_in_order_is_read() {
        let table = parse("good", GOOD);
        let sizes: Vec<f64> = table.rows().map(|row| row.number("d_mm")).collect();
        assert_eq!(sizes, [10.0, 12.0]);
    }

    #[test]
    #[should_panic(expected = "a row was lost or added")]
    fn a_lost_row_is_noticed() {
        parse("bad", &GOOD.replace("b,12\n", ""));
    }

    #[test]
    #[should_panic(expected = "a number was mistyped")]
    fn a_mistyped_number_is_noticed() {
        parse("bad", &GOOD.replace("b,12", "b,21"));
    }

    #[test]
    #[should_panic(expected = "has no guard line")]
    fn a_table_without_a_guard_is_refused() {
        parse("bad", &GOOD.replace("# rows = 2\n", ""));
    }

    #[test]
    #[should_panic(expected = "no column `e_mm`")]
    fn a_wrong_column_is_named() {
        let table = parse("good", GOOD);
        table.rows().for_each(|row| assert!(row.number("e_mm") > 0.0));
    }
}
