//! [`Page`]: plain text for a terminal, a printer or a wall: headings, wrapped sentences, aligned tables. At most [`WIDTH`] columns wide;
//! weight of letters doubles a word and never carries a meaning of its own.

use anstyle::{Effects, Style};
use oilway_text::{Message, Reader, say};
use oilway_units::AnyQuantity;
use unicode_width::UnicodeWidthStr;

/// Columns of a page.
pub(crate) const WIDTH: usize = 100;
/// Columns between two columns of a table.
const GAP: usize = 2;

/// Heavy letters for what must be seen first.
const HEAVY: Style = Style::new().effects(Effects::BOLD);

/// How the writer of sheets begins a line that must be read before anything else.
const STOP: &str = "!! ";

/// How a column of a table is set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Set {
    /// Words, from the left.
    Left,
    /// Numbers, to the right.
    Right,
}

/// A page in the making.
pub(crate) struct Page {
    text: String,
    reader: Reader,
    paint: bool,
}

impl Page {
    pub(crate) fn new(reader: Reader, paint: bool) -> Self {
        Page { text: String::new(), reader, paint }
    }

    /// The sentence for this reader.
    pub(crate) fn words(&self, message: &Message) -> String {
        clean(&say(message, &self.reader))
    }
    /// The quantity for this reader.
    pub(crate) fn quantity(&self, quantity: impl Into<AnyQuantity>) -> String {
        self.words(&Message::new("oilway-value").with("value", quantity.into()))
    }

    /// A heading with a line of its own and a gap above.
    pub(crate) fn heading(&mut self, message: &Message) {
        self.gap();
        let words = self.words(message);
        self.heavy(&words, "");
    }
    /// A sentence that must be seen first.
    pub(crate) fn loud(&mut self, message: &Message) {
        let words = self.words(message);
        self.heavy(&words, "");
    }
    fn heavy(&mut self, words: &str, indent: &str) {
        for line in wrapped(words, WIDTH.saturating_sub(width(indent))) {
            let painted = if self.paint { format!("{HEAVY}{line}{HEAVY:#}") } else { line };
            self.line(&format!("{indent}{painted}"));
        }
    }
    /// A sentence.
    pub(crate) fn say(&mut self, message: &Message) {
        let words = self.words(message);
        self.paragraph("", &words);
    }
    /// A sentence behind a mark, its further lines under its first.
    pub(crate) fn item(&mut self, mark: &str, message: &Message) {
        let words = self.words(message);
        self.paragraph(mark, &words);
    }
    /// Words behind a mark, wrapped under themselves.
    pub(crate) fn paragraph(&mut self, mark: &str, words: &str) {
        let indent = " ".repeat(width(mark));
        for (number, line) in
            wrapped(words, WIDTH.saturating_sub(width(mark)).max(20)).into_iter().enumerate()
        {
            self.line(&format!("{}{line}", if number == 0 { mark } else { &indent }));
        }
    }
    /// A line as it stands.
    pub(crate) fn line(&mut self, line: &str) {
        self.text.push_str(line.trim_end());
        self.text.push('\n');
    }
    /// An empty line, unless there is one or the page is still empty.
    pub(crate) fn gap(&mut self) {
        if !self.text.is_empty() && !self.text.ends_with("\n\n") {
            self.text.push('\n');
        }
    }
    /// A text that is already set.
    pub(crate) fn set(&mut self, text: &str) {
        text.lines().for_each(|line| self.line(line));
    }

    /// A sheet that is already set, its lines that must be seen first in heavy letters.
    pub(crate) fn sheet(&mut self, text: &str) {
        for line in text.lines() {
            if self.paint && line.starts_with(STOP) {
                self.line(&format!("{HEAVY}{line}{HEAVY:#}"));
            } else {
                self.line(line);
            }
        }
    }

    /// A table with aligned columns. Its widest column of words gives way where the page ends; nothing is cut.
    pub(crate) fn table(&mut self, set: &[Set], rows: &[Vec<String>]) {
        let columns = set.len();
        let cell =
            |row: &Vec<String>, column: usize| row.get(column).map_or(String::new(), |text| clean(text));
        let rows: Vec<Vec<String>> =
            rows.iter().map(|row| (0..columns).map(|column| cell(row, column)).collect()).collect();
        let mut widths: Vec<usize> = (0..columns)
            .map(|column| rows.iter().map(|row| width(&row[column])).max().unwrap_or(0))
            .collect();
        while total(&widths) > WIDTH {
            let words = (0..columns).filter(|&column| set[column] == Set::Left);
            let Some(widest) = words.max_by_key(|&column| (widths[column], column)) else { break };
            let excess = total(&widths) - WIDTH;
            if widths[widest] <= 12 {
                break;
            }
            widths[widest] = widths[widest].saturating_sub(excess).max(12);
        }
        for row in &rows {
            self.row(set, &widths, row);
        }
    }

    fn row(&mut self, set: &[Set], widths: &[usize], row: &[String]) {
        let cells: Vec<Vec<String>> =
            row.iter().zip(widths).map(|(text, &width)| wrapped(text, width)).collect();
        let height = cells.iter().map(Vec::len).max().unwrap_or(0);
        for number in 0..height {
            let mut line = String::new();
            for (column, lines) in cells.iter().enumerate() {
                let text = lines.get(number).map_or("", String::as_str);
                let space = " ".repeat(widths[column].saturating_sub(width(text)));
                match set[column] {
                    Set::Left => line.push_str(&format!("{text}{space}")),
                    Set::Right => line.push_str(&format!("{space}{text}")),
                }
                line.push_str(&" ".repeat(GAP));
            }
            self.line(&line);
        }
    }

    /// The page as text.
    pub(crate) fn finish(self) -> String {
        self.text
    }
}

fn total(widths: &[usize]) -> usize {
    widths.iter().sum::<usize>() + GAP * widths.len().saturating_sub(1)
}

/// Columns that a text takes on a terminal.
pub(crate) fn width(text: &str) -> usize {
    text.width()
}

/// A text without signs that move the cursor or turn the direction of writing: each shows as a mark instead. Line ends become spaces.
pub(crate) fn clean(text: &str) -> String {
    let shown = |c: char| match c {
        '\n' | '\t' | '\u{2028}' | '\u{2029}' => ' ',
        '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{200e}' | '\u{200f}' => '\u{fffd}',
        c if c.is_control() => '\u{fffd}',
        c => c,
    };
    text.chars().map(shown).collect()
}

/// The text in lines of at most so many columns, broken at spaces; a word longer than a line is broken inside.
pub(crate) fn wrapped(text: &str, columns: usize) -> Vec<String> {
    let columns = columns.max(1);
    let mut lines = Vec::new();
    let mut line = String::new();
    for word in text.split(' ') {
        let joined = width(&line) + width(word) + usize::from(!line.is_empty());
        if joined > columns && !line.is_empty() {
            lines.push(core::mem::take(&mut line));
        }
        if !line.is_empty() {
            line.push(' ');
        }
        for letter in word.chars() {
            let mut sign = [0; 4];
            let sign = letter.encode_utf8(&mut sign);
            if width(&line) + width(sign) > columns && !line.is_empty() {
                lines.push(core::mem::take(&mut line));
            }
            line.push_str(sign);
        }
    }
    lines.push(line);
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn words_are_wrapped_between_words_and_long_words_inside() {
        assert_eq!(wrapped("one two three", 7), ["one two", "three"]);
        assert_eq!(wrapped("abcdefgh ij", 3), ["abc", "def", "gh", "ij"]);
        assert_eq!(wrapped("", 10), [""]);
    }

    #[test]
    fn signs_that_move_the_cursor_show_as_marks() {
        assert_eq!(clean("a\u{1b}[31mb\nc\u{202e}d"), "a\u{fffd}[31mb c\u{fffd}d");
    }

    proptest! {
        #[test]
        fn no_table_is_wider_than_the_page(cells in prop::collection::vec(prop::collection::vec(".{0,80}", 3), 1..6)) {
            let mut page = Page::new(Reader::default(), false);
            page.table(&[Set::Left, Set::Left, Set::Left], &cells);
            for line in page.finish().lines() {
                prop_assert!(width(line) <= WIDTH, "{line}");
            }
        }
    }
}
