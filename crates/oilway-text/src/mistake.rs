//! [`Mistake`]: something wrong in a file: where it stands, what is wrong, what cures it, and the cure as a patch where
//! one is known. Whoever reads files returns all their mistakes in one run; whoever prints them draws the lines.

use core::ops::Range;

use crate::Message;

/// Something wrong in a text file.
#[derive(Clone, Debug, PartialEq)]
pub struct Mistake {
    /// The name of the file, as the user knows it.
    pub file: String,
    /// Where it stands, in bytes of the file's text.
    pub at: Range<usize>,
    /// What is wrong, with the reason.
    pub what: Message,
    /// What cures it.
    pub cure: Message,
    /// The cure as a patch: the bytes to replace and what to put there.
    pub fix: Option<(Range<usize>, String)>,
}

impl Mistake {
    /// Line and column of its beginning, both counted from one, columns in characters.
    ///
    /// ```
    /// use oilway_text::{Mistake, message};
    ///
    /// let text = "bore = \"8 mm\"\nµ = 3\n";
    /// let at = text.find('3').unwrap_or(0);
    /// let what = message!("span");
    /// let mistake = Mistake { file: "job.toml".into(), at: at..at + 1, cure: what.clone(), what, fix: None };
    /// assert_eq!(mistake.line_column(text), (2, 5));
    /// ```
    pub fn line_column(&self, text: &str) -> (usize, usize) {
        // A position inside a character or behind the end counts as the character before it.
        let mut start = self.at.start.min(text.len());
        while !text.is_char_boundary(start) {
            start -= 1;
        }
        let before = text.get(..start).unwrap_or("");
        let line = before.matches('\n').count() + 1;
        let column = before.rsplit('\n').next().unwrap_or("").chars().count() + 1;
        (line, column)
    }

    /// The text with the patch put in, if there is one and it fits this text.
    pub fn patched(&self, text: &str) -> Option<String> {
        let (at, with) = self.fix.as_ref()?;
        let (before, behind) = (text.get(..at.start)?, text.get(at.end..)?);
        Some(format!("{before}{with}{behind}"))
    }
}
