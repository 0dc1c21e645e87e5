//! What programs read: one structure for each verb, its version in the field `version`, quantities in SI with the words beside them.
//!
//! A field is never renamed and never changes its meaning; a change that would break a reader gets a new version. The schemas in
//! `docs/schema/` are made from these structures.

pub mod calc;
pub mod check;
pub mod cold_start;
pub mod design;
pub mod explain;
pub mod ladder;
pub mod meter;
pub mod parts;
pub mod quantity;
pub mod saved;
pub mod span;
pub mod trouble;
pub mod what_if;
pub mod why;

use schemars::Schema;
use serde::Serialize;

/// The structure as text, indented, with a line end.
pub(crate) fn print<T: Serialize>(value: &T) -> String {
    // The structures here hold names, numbers and lists only: none of them can fail to be written.
    let mut text =
        serde_json::to_string_pretty(value).unwrap_or_else(|error| format!("{{\"error\": \"{error}\"}}"));
    text.push('\n');
    text
}

/// The structure in one line, with a line end.
pub(crate) fn line<T: Serialize>(value: &T) -> String {
    let mut text = serde_json::to_string(value).unwrap_or_else(|error| format!("{{\"error\": \"{error}\"}}"));
    text.push('\n');
    text
}

/// The schema of a structure.
pub(crate) fn schema<T: schemars::JsonSchema>() -> Schema {
    schemars::schema_for!(T)
}
