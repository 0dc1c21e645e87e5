//! Reads the files of a catalogue into parts, with every mistake of all files in one run.
//!
//! A file says its `kind` once, or each part says its own; a `source` for the whole file likewise. Every part is a table
//! `[[part]]` with `id`, `description`, perhaps a `price` (`12.50 EUR`), the fields of its kind, and its ports as
//! `[[part.port]]`. A part with a mistake in it is left out, so that nobody calculates with half of one.

mod part_row;
mod port_row;
mod references;

use std::collections::BTreeMap;

use oilway_text::{Mistake, message};

use crate::kinds::KINDS;
use crate::reading::{Item, Reading, Table, nearest};
use crate::{Catalogue, Kind, Part, kinds};
use part_row::{Row, row};

/// The parts of a catalogue and what is wrong in its files, each given by name and text.
///
/// ```
/// use oilway_catalogue::catalogue_from;
///
/// let file = r#"
///     kind = "gauge"
///     source = "from its dial"
///     [[part]]
///     id = "7"
///     description = "Gauge to 100 bar."
///     full_scale = "100"
///     port = [ { mark = "stem", role = "joint", thread = "G 1/4", sex = "male", internal = "pressure" } ]
/// "#;
/// let (parts, mistakes) = catalogue_from(&[("gauge.toml", file)]);
/// assert!(parts.is_empty());
/// assert_eq!(mistakes[0].fix.as_ref().unwrap().1, "\"100 bar\"");
/// ```
pub fn catalogue_from(files: &[(&str, &str)]) -> (Vec<Part>, Vec<Mistake>) {
    catalogue_over(&Catalogue::default(), files)
}

/// The same for files that lie over another catalogue: they may name its parts, and a part of the same id takes the place
/// of the one below.
pub fn catalogue_over(below: &Catalogue, files: &[(&str, &str)]) -> (Vec<Part>, Vec<Mistake>) {
    let readings: Vec<Reading> = files.iter().map(|(name, text)| Reading::new(*name, text)).collect();
    let mut whole = vec![true; readings.len()];
    let mut rows: Vec<(usize, Row)> = Vec::new();
    for (file, reading) in readings.iter().enumerate() {
        match rows_of(reading) {
            Some(found) => rows.extend(found.into_iter().map(|row| (file, row))),
            None => whole[file] = false,
        }
    }
    doubled(&readings, &mut rows);
    references::check(below, &readings, &mut rows);
    let mistakes = readings
        .into_iter()
        .zip(whole)
        .flat_map(|(reading, whole)| if whole { reading.finish() } else { reading.give_up() });
    let mistakes = mistakes.collect();
    (rows.into_iter().filter_map(|(_, row)| row.part.filter(|_| row.sound)).collect(), mistakes)
}

/// The rows of one file; none if not even its kind can be made out.
fn rows_of(reading: &Reading) -> Option<Vec<Row>> {
    let root = reading.root();
    let common = match root.item("kind") {
        Some(item) => Some(kind_in(&item)?),
        None => None,
    };
    let source = root.text("source").map(|placed| placed.value.to_owned()).unwrap_or_default();
    let tables = root.tables("part");
    Some(
        tables
            .iter()
            .map(|table| {
                kind_of(table, common).map_or_else(|| Row::lost(table), |kind| row(table, kind, &source))
            })
            .collect(),
    )
}

/// The kind that a part says, or else that of its file.
fn kind_of(table: &Table<'_>, common: Option<&'static dyn Kind>) -> Option<&'static dyn Kind> {
    if common.is_some() && !table.has("kind") {
        return common;
    }
    kind_in(&table.needed("kind")?)
}

fn kind_in(item: &Item<'_>) -> Option<&'static dyn Kind> {
    let text = item.text()?;
    let found = kinds::kind(text.value.trim());
    if found.is_none() {
        let words = || KINDS.iter().map(|kind| kind.id());
        let what = message!("catalogue-unknown-kind", kind = text.value);
        match nearest(text.value, words()) {
            Some(near) => {
                let fix = Some((text.at.clone(), format!("\"{near}\"")));
                item.reading().note(text.at, what, message!("reading-perhaps", word = near), fix);
            }
            None => item.wrong(what, message!("catalogue-known-kinds", kinds = words().collect::<Vec<_>>())),
        }
    }
    found
}

/// An id must stand once: the first row keeps it.
fn doubled(readings: &[Reading], rows: &mut [(usize, Row)]) {
    let mut first: BTreeMap<String, (usize, usize)> = BTreeMap::new();
    for (file, row) in rows {
        let Some(id) = &row.id else { continue };
        if let Some((other_file, other_at)) = first.get(&id.value) {
            let other = &readings[*other_file];
            let cure =
                message!("catalogue-doubled-id-cure", file = other.file(), line = other.line(*other_at));
            readings[*file].note(
                id.at.clone(),
                message!("catalogue-doubled-id", id = id.value.as_str()),
                cure,
                None,
            );
            row.sound = false;
        } else {
            first.insert(id.value.clone(), (*file, id.at.start));
        }
    }
}
