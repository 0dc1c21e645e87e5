//! Names of a job: what a name may be, and how places and dividers are found by theirs.

use std::collections::BTreeSet;

use oilway_catalogue::reading::{Item, Placed, Table};
use oilway_text::message;

use crate::asked::not_among;

/// More than anybody writes on a tag.
const LONGEST: usize = 80;

/// The name of a thing. The lock file and the command line part names by `,` and `|`, so a name has neither.
pub(super) fn name(table: &Table<'_>) -> Option<Placed<String>> {
    let item = table.needed("name")?;
    let text = item.text()?;
    let name = text.value.trim();
    let sound = !name.is_empty()
        && name.chars().count() <= LONGEST
        && !name.contains([',', '|'])
        && !name.chars().any(char::is_control);
    if !sound {
        item.wrong(
            message!("store-bad-name", name = shortened(name)),
            message!("store-bad-name-cure", most = LONGEST),
        );
        return None;
    }
    Some(Placed { value: name.to_owned(), at: text.at })
}

fn shortened(name: &str) -> String {
    // A tab or a line break looks like a space, so it is shown as it is written in the file.
    let shown = |c: char| if c.is_control() { c.escape_default().to_string() } else { c.to_string() };
    name.chars().take(LONGEST).map(shown).collect()
}

/// The places of a job by name.
pub(super) struct Places(pub(super) Vec<String>);

impl Places {
    /// The place that a table names under `place`. Where it names none, the place of what it belongs to holds; where there is
    /// none either, the only place of the job. A mistake is noted, and the first place stands in for it.
    pub(super) fn of(&self, table: &Table<'_>, otherwise: Option<usize>) -> usize {
        let only = if self.0.len() == 1 { Some(0) } else { None };
        if let (false, Some(place)) = (table.has("place"), otherwise.or(only)) {
            return place;
        }
        table.needed("place").and_then(|item| self.named(&item)).unwrap_or(0)
    }

    fn named(&self, item: &Item<'_>) -> Option<usize> {
        let text = item.text()?;
        let found = self.0.iter().position(|name| name == text.value.trim());
        if found.is_none() {
            let names: Vec<&str> = self.0.iter().map(String::as_str).collect();
            not_among(item, text.value, message!("store-unknown-place", name = text.value), &names);
        }
        found
    }
}

/// Takes a name, and notes it if somebody has it already.
pub(super) fn take(table: &Table<'_>, name: &Placed<String>, taken: &mut BTreeSet<String>) {
    if !taken.insert(name.value.clone()) {
        let what = message!("store-doubled-name", name = name.value.as_str());
        table.reading().note(name.at.clone(), what, message!("store-doubled-name-cure"), None);
    }
}
