//! [`Reader`]: who reads, in which units and in which language.

use oilway_units::UnitSystem;

/// The languages that have catalogues.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Language {
    /// English.
    #[default]
    English,
}

/// How somebody wants to read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reader {
    /// The units of every quantity.
    pub units: UnitSystem,
    /// The other system of units stands in brackets behind each quantity.
    pub both: bool,
    /// The language of the sentences.
    pub language: Language,
}

impl Reader {
    /// English sentences with one system of units.
    pub const fn new(units: UnitSystem) -> Self {
        Reader { units, both: false, language: Language::English }
    }
}

impl Default for Reader {
    fn default() -> Self {
        Reader::new(UnitSystem::Metric)
    }
}
