//! One check value and the comparison with it.

use std::collections::BTreeMap;
use std::fmt;

use oilway_units::{AnyQuantity, Dimension, Quantity, read_any};
use serde::Deserialize;

/// How far a value can be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Standing {
    /// The text was read.
    Seen,
    /// Read in a text that quotes or reprints it.
    SecondHand,
    /// Written from memory.
    Memory,
    /// What the trade does, no text behind it.
    CommonPractice,
    /// Derived or computed for this project, outside the program.
    Own,
}

impl Standing {
    /// The word that stands in files.
    pub const fn word(self) -> &'static str {
        match self {
            Standing::Seen => "seen",
            Standing::SecondHand => "second-hand",
            Standing::Memory => "memory",
            Standing::CommonPractice => "common-practice",
            Standing::Own => "own",
        }
    }
}

/// One published or independently computed value: what is given, what must come out, how near, and why so near.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Check {
    /// What the case is.
    pub name: String,
    /// The id of the formula that it judges; empty where it judges several or none.
    pub formula: String,
    /// A key of `data/sources.toml`.
    pub source: String,
    /// Page, example, table or row.
    pub place: String,
    /// How far the value can be trusted.
    pub status: Standing,
    given: BTreeMap<String, String>,
    #[serde(default)]
    expect: BTreeMap<String, String>,
    /// True if the formula must give no answer.
    #[serde(default)]
    pub refused: bool,
    /// The largest relative deviation.
    #[serde(default)]
    pub tolerance: f64,
    within: Option<String>,
    /// Why the tolerance is what it is.
    pub because: String,
    /// What a reader must know beside the numbers.
    pub note: Option<String>,
    /// The file that it was read from; filled in by the reader.
    #[serde(skip)]
    pub(crate) file: String,
}

impl Check {
    /// The given quantity under this symbol.
    ///
    /// # Panics
    /// If the row gives no such symbol or its text is not one value of that dimension.
    pub fn given<T: Quantity>(&self, symbol: &str) -> T {
        T::from_si(self.given_any(symbol, T::DIMENSION).si)
    }

    /// The given quantity under this symbol, of a dimension known only at run time.
    ///
    /// # Panics
    /// As [`Check::given`].
    pub fn given_any(&self, symbol: &str, dimension: Dimension) -> AnyQuantity {
        self.value(&self.given, "given", symbol, dimension)
    }

    /// The given text under this symbol, where it is a word and not a quantity.
    ///
    /// # Panics
    /// If the row gives no such symbol.
    pub fn given_word(&self, symbol: &str) -> &str {
        self.text(&self.given, "given", symbol)
    }

    /// Whether the row gives this symbol.
    pub fn gives(&self, symbol: &str) -> bool {
        self.given.contains_key(symbol)
    }

    /// The symbols that the row gives.
    pub fn given_symbols(&self) -> impl Iterator<Item = &str> {
        self.given.keys().map(String::as_str)
    }

    /// The expected quantity under this symbol.
    ///
    /// # Panics
    /// As [`Check::given`].
    pub fn expected<T: Quantity>(&self, symbol: &str) -> T {
        T::from_si(self.value(&self.expect, "expect", symbol, T::DIMENSION).si)
    }

    /// The expected text under this symbol, where it is a word and not a quantity.
    ///
    /// # Panics
    /// If the row expects no such symbol.
    pub fn expected_word(&self, symbol: &str) -> &str {
        self.text(&self.expect, "expect", symbol)
    }

    /// Whether the row expects something under this symbol.
    pub fn expects(&self, symbol: &str) -> bool {
        self.expect.contains_key(symbol)
    }

    /// The symbols under which the row expects something.
    pub fn expected_symbols(&self) -> impl Iterator<Item = &str> {
        self.expect.keys().map(String::as_str)
    }

    /// Compares a result with the row.
    ///
    /// # Panics
    /// If the two differ by more than the tolerance. The text names file, case, source, place, both numbers, the
    /// tolerance and the reason for it.
    pub fn holds<T: Quantity>(&self, symbol: &str, value: T) {
        self.holds_any(symbol, AnyQuantity::from(value));
    }

    /// Compares a result of a dimension known only at run time.
    ///
    /// # Panics
    /// As [`Check::holds`].
    pub fn holds_any(&self, symbol: &str, value: AnyQuantity) {
        if let Err(difference) = self.compare(symbol, value) {
            panic!("{difference}");
        }
    }

    /// Compares a word with the row.
    ///
    /// # Panics
    /// If the two differ.
    pub fn holds_word(&self, symbol: &str, value: &str) {
        let wanted = self.expected_word(symbol);
        assert!(
            value == wanted,
            "{self}\n  {symbol}: got `{value}`, wanted `{wanted}`\n  because {}",
            self.because
        );
    }

    /// Compares a result that may be missing: a row marked `refused` wants none, every other row wants one.
    ///
    /// # Panics
    /// If an answer came where none may, or none where one must, or if it differs.
    pub fn holds_or_refuses<T: Quantity>(&self, symbol: &str, value: Option<T>) {
        match (value, self.refused) {
            (Some(value), false) => self.holds(symbol, value),
            (None, true) => {}
            (Some(value), true) => {
                panic!(
                    "{self}\n  {symbol}: got {value:?}, but there is no answer\n  because {}",
                    self.because
                )
            }
            (None, false) => {
                panic!("{self}\n  {symbol}: no answer came, wanted `{}`", self.expected_word(symbol))
            }
        }
    }

    /// Whether a result agrees with the row, and if not, all there is to say about it.
    ///
    /// # Errors
    /// The text that [`Check::holds`] panics with.
    ///
    /// # Panics
    /// If the row does not expect anything under this symbol, or its text cannot be read.
    pub fn compare(&self, symbol: &str, value: AnyQuantity) -> Result<(), String> {
        let wanted = self.value(&self.expect, "expect", symbol, value.dimension);
        let within = match &self.within {
            Some(text) => self.read("within", text, value.dimension).si.abs(),
            None => 0.0,
        };
        let difference = (value.si - wanted.si).abs();
        // Written so that a result that is not a number fails.
        if difference <= within || difference <= self.tolerance * wanted.si.abs() {
            return Ok(());
        }
        let relative = if wanted.si == 0.0 { f64::INFINITY } else { difference / wanted.si.abs() };
        let allowed = match &self.within {
            Some(text) => format!("{:e} relative or {text}", self.tolerance),
            None => format!("{:e} relative", self.tolerance),
        };
        Err(format!(
            "{self}\n  {symbol}: got {:e} SI, wanted {:e} SI (`{}`), {relative:e} apart, allowed {allowed}\n  because {}",
            value.si,
            wanted.si,
            self.expected_word(symbol),
            self.because
        ))
    }

    fn text<'a>(&self, map: &'a BTreeMap<String, String>, field: &str, symbol: &str) -> &'a str {
        match map.get(symbol) {
            Some(text) => text,
            None => panic!(
                "{self}\n  {field} has no `{symbol}`, only {:?}: correct the row or the symbol",
                map.keys().collect::<Vec<_>>()
            ),
        }
    }

    fn value(
        &self,
        map: &BTreeMap<String, String>,
        field: &str,
        symbol: &str,
        dimension: Dimension,
    ) -> AnyQuantity {
        self.read(&format!("{field}.{symbol}"), self.text(map, field, symbol), dimension)
    }

    fn read(&self, place: &str, text: &str, dimension: Dimension) -> AnyQuantity {
        match read_any(dimension, text).map(|said| said.value()) {
            Ok(Some(quantity)) => quantity,
            Ok(None) => panic!("{self}\n  {place} = `{text}` is not one value: a check needs one"),
            Err(error) => panic!("{self}\n  {place} = `{text}` is not a {}: {error:?}", dimension.name()),
        }
    }
}

impl fmt::Display for Check {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {} ({}, {}; {})", self.file, self.name, self.source, self.place, self.status.word())
    }
}
