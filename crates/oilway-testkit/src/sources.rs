//! The list of sources, as far as the guards need it.

use std::collections::BTreeMap;
use std::fs;
use std::sync::LazyLock;

use serde::Deserialize;

use crate::{Standing, root};

/// One entry of `data/sources.toml`.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SourceEntry {
    /// Author and title.
    pub title: String,
    /// Edition, year or part; may be empty.
    pub edition: String,
    /// How far the text was read.
    pub standing: Standing,
    /// What to know before leaning on it; may be empty.
    pub note: String,
}

static SOURCES: LazyLock<BTreeMap<String, SourceEntry>> = LazyLock::new(|| {
    let read = fs::read_to_string(root().join("data/sources.toml")).map_err(|error| error.to_string());
    match read.and_then(|text| toml::from_str(&text).map_err(|error| error.to_string())) {
        Ok(entries) => entries,
        Err(error) => panic!("data/sources.toml: {error}"),
    }
});

/// The entries of `data/sources.toml` by key.
///
/// # Panics
/// If the file is missing or does not read.
pub fn sources() -> &'static BTreeMap<String, SourceEntry> {
    &SOURCES
}
