//! Reads TOML files into typed values, with every mistake in one run.
//!
//! [`Reading::new`] takes the text of a file; [`Reading::root`] gives its [`Table`], whose getters give typed values
//! with their places and note what is wrong. A getter that gives nothing has noted why, unless the key is simply not
//! there. [`Reading::finish`] adds the keys that nobody asked for, each with the nearest right word, and gives all
//! mistakes in the order of the text.
//!
//! Files come from people and from anywhere: a file is read up to [`LARGEST_FILE`], tables nest up to the 80 levels that
//! the TOML reader allows, and no text makes the reading panic.

mod item;
mod nearest;
mod node;
mod table;

use core::cell::{Cell, RefCell};
use core::ops::Range;

use oilway_text::{Message, Mistake, message};
use toml::de::DeTable;

pub use item::Item;
pub use nearest::nearest;
use node::{Fields, Node, What};
pub use table::Table;

/// The largest file that is read, in bytes: some twenty thousand points, or ten thousand parts.
pub const LARGEST_FILE: usize = 8 << 20;

/// A value and the bytes in which it stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Placed<T> {
    /// The value.
    pub value: T,
    /// Where it stands.
    pub at: Range<usize>,
}

impl<T> Placed<T> {
    /// The same place with another value.
    pub fn map<U>(self, change: impl FnOnce(T) -> U) -> Placed<U> {
        Placed { value: change(self.value), at: self.at }
    }
}

/// A file while it is read.
#[derive(Debug)]
pub struct Reading {
    file: String,
    text: String,
    root: Fields,
    /// The lines in which the file is no TOML; what else seems wrong in them only follows from that.
    broken: Vec<Range<usize>>,
    mistakes: RefCell<Vec<Mistake>>,
    hushed: Cell<bool>,
}

impl Reading {
    /// Begins to read a file: its name as people know it, and its text.
    pub fn new(file: impl Into<String>, text: &str) -> Self {
        let mut reading = Reading {
            file: file.into(),
            text: text.to_owned(),
            root: Fields::default(),
            broken: Vec::new(),
            mistakes: RefCell::default(),
            hushed: Cell::new(false),
        };
        if text.len() > LARGEST_FILE {
            let what = message!("reading-too-large", size = text.len(), most = LARGEST_FILE);
            reading.note(0..0, what, message!("reading-split-file"), None);
            return reading;
        }
        let (table, errors) = DeTable::parse_recoverable(text);
        for error in errors {
            let at = reading.inside(error.span().unwrap_or(text.len()..text.len()));
            // What else the line is accused of follows from its first error.
            if reading.broken.iter().any(|line| line.contains(&at.start)) {
                continue;
            }
            reading.broken.push(reading.lines_of(&at));
            let what = message!("reading-syntax", reason = error.message());
            reading.note(at, what, message!("reading-syntax-cure"), None);
        }
        reading.root = node::fields(table.get_ref());
        reading
    }

    /// The whole file as a table.
    pub fn root(&self) -> Table<'_> {
        Table::new(self, &self.root, 0..self.text.len())
    }

    /// The name of the file.
    pub fn file(&self) -> &str {
        &self.file
    }

    /// The line of a byte of its text, from 1.
    pub fn line(&self, byte: usize) -> usize {
        self.text.bytes().take(byte).filter(|byte| *byte == b'\n').count() + 1
    }

    /// Notes a mistake; for what only the caller can judge.
    pub fn note(&self, at: Range<usize>, what: Message, cure: Message, fix: Option<(Range<usize>, String)>) {
        self.mistakes.borrow_mut().push(Mistake { file: self.file.clone(), at, what, cure, fix });
    }

    /// Whether the file is no TOML somewhere: then what seems to be missing may only have been lost.
    pub fn is_broken(&self) -> bool {
        !self.broken.is_empty()
    }

    /// Ends the reading: all mistakes, with the keys that nobody asked for, in the order of the text.
    pub fn finish(self) -> Vec<Mistake> {
        if !self.hushed.get() {
            self.unknown_keys_of(&self.root);
        }
        let mut mistakes = self.mistakes.into_inner();
        let spoiled = |mistake: &Mistake| {
            mistake.what.key != "reading-syntax"
                && self.broken.iter().any(|line| line.contains(&mistake.at.start))
        };
        mistakes.retain(|mistake| !spoiled(mistake));
        mistakes.sort_by_key(|mistake| (mistake.at.start, mistake.at.end));
        mistakes
    }

    /// Ends the reading of a file whose purpose is unclear, so that no key of it can be judged.
    pub fn give_up(self) -> Vec<Mistake> {
        self.hushed.set(true);
        self.finish()
    }

    /// Depth is bounded by the TOML reader, which refuses to nest further than 80 levels at a time.
    fn unknown_keys(&self, node: &Node) {
        match &node.what {
            What::List(nodes) => nodes.iter().for_each(|node| self.unknown_keys(node)),
            What::Table(fields) => self.unknown_keys_of(fields),
            _ => {}
        }
    }

    fn unknown_keys_of(&self, fields: &Fields) {
        if !fields.opened.get() {
            return;
        }
        for entry in &fields.entries {
            if entry.asked.get() {
                self.unknown_keys(&entry.node);
            } else {
                self.note_unknown_key(entry, &fields.asked_for.borrow());
            }
        }
    }

    fn note_unknown_key(&self, entry: &node::Entry, known: &[String]) {
        let what = message!("reading-unknown-key", key = &entry.key);
        let free = known.iter().filter(|key| *key != &entry.key).map(String::as_str);
        match nearest(&entry.key, free.clone()) {
            Some(near) => {
                let fix = Some((entry.key_at.clone(), near.to_owned()));
                self.note(entry.key_at.clone(), what, message!("reading-perhaps", word = near), fix);
            }
            None => {
                let known: Vec<&str> = free.collect();
                self.note(entry.key_at.clone(), what, message!("reading-known-keys", keys = known), None);
            }
        }
    }

    /// A range that lies inside the text, whatever the TOML reader says.
    fn inside(&self, at: Range<usize>) -> Range<usize> {
        let end = at.end.min(self.text.len());
        at.start.min(end)..end
    }

    /// From the start of the first line to the end of the last line that a range touches, the line end included.
    fn lines_of(&self, at: &Range<usize>) -> Range<usize> {
        let bytes = self.text.as_bytes();
        let start =
            bytes[..at.start].iter().rposition(|byte| *byte == b'\n').map_or(0, |newline| newline + 1);
        let end =
            bytes[at.end..].iter().position(|byte| *byte == b'\n').map_or(bytes.len(), |to| at.end + to);
        start..end + 1
    }
}
