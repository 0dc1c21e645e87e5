//! Text in TOML put together from cells, with the cell of every stretch, so that what the readers of files find wrong is told in the
//! sheet.

use core::ops::Range;

use oilway_text::Mistake;

use super::{CellPlace, SheetMistake};
use crate::asked::quoted;

/// The text and where each stretch of it comes from.
#[derive(Default)]
pub(crate) struct Assembly {
    pub(crate) text: String,
    stretches: Vec<(Range<usize>, CellPlace)>,
}

impl Assembly {
    /// Text that comes from no cell.
    pub(crate) fn plain(&mut self, text: &str) {
        self.text.push_str(text);
    }

    /// Text that comes from a cell.
    pub(crate) fn of_cell(&mut self, text: &str, place: &CellPlace) {
        let start = self.text.len();
        self.text.push_str(text);
        self.stretches.push((start..self.text.len(), place.clone()));
    }

    /// A header of a table; what is missing in the table is told at this cell.
    pub(crate) fn header(&mut self, header: &str, place: &CellPlace) {
        self.plain("\n");
        self.of_cell(header, place);
        self.plain("\n");
    }

    /// A key and its value; what is wrong with either is told at this cell.
    pub(crate) fn line(&mut self, key: &str, value: &str, place: &CellPlace) {
        self.of_cell(&format!("{} = {value}", bare_or_quoted(key)), place);
        self.plain("\n");
    }

    /// The cell of a byte: of all stretches that hold it the narrowest.
    pub(crate) fn place(&self, byte: usize) -> Option<&CellPlace> {
        let holds = self.stretches.iter().filter(|(stretch, _)| stretch.contains(&byte));
        holds.min_by_key(|(stretch, _)| stretch.len()).map(|(_, place)| place)
    }

    /// Mistakes in the text as mistakes in the sheet. What belongs to no cell is told at the first.
    pub(crate) fn in_cells(
        &self,
        file: &str,
        mistakes: Vec<Mistake>,
        otherwise: &CellPlace,
    ) -> Vec<SheetMistake> {
        let told = |mistake: Mistake| {
            let place = self.place(mistake.at.start).unwrap_or(otherwise);
            SheetMistake::new(file, place, mistake.what, mistake.cure)
        };
        mistakes.into_iter().map(told).collect()
    }
}

/// A key as TOML wants it.
fn bare_or_quoted(key: &str) -> String {
    let bare = !key.is_empty() && key.chars().all(|c| c.is_ascii_alphanumeric() || matches!(c, '_' | '-'));
    if bare { key.to_owned() } else { quoted(key) }
}

/// A number or a range of numbers without a unit: `30`, `0,5`, `3/4`, `6..8`.
pub(crate) fn is_bare_number(text: &str) -> bool {
    let any_digit = text.chars().any(|c| c.is_ascii_digit());
    any_digit && text.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | ',' | '/' | '-' | '−' | ' '))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_narrowest_stretch_names_the_cell() {
        let place = |row, column| CellPlace { sheet: "Points".into(), row, column };
        let mut assembly = Assembly::default();
        assembly.header("[[point]]", &place(4, 0));
        assembly.line("bore", "\"30\"", &place(4, 3));
        let byte = assembly.text.find("30").unwrap();
        assert_eq!(assembly.place(byte), Some(&place(4, 3)));
        assert_eq!(assembly.place(assembly.text.find("[[").unwrap()), Some(&place(4, 0)));
        assert_eq!(assembly.place(0), None);
    }

    #[test]
    fn a_bare_number_has_digits_and_nothing_that_could_be_a_unit() {
        assert!(["30", "0,5", "3/4", "6..8", "1 1/2", "-25"].into_iter().all(is_bare_number));
        assert!(!["30 mm", "unknown", "?", "", "M6x1", "1\""].into_iter().any(is_bare_number));
    }
}
