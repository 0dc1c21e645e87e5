//! Reading quantities as the trade writes and says them.
//!
//! | form | read as |
//! |---|---|
//! | `12 mm` `12mm` `0.47 in` `3/4 in` `1 1/2 in` `1-1/2 in` `½ in` `half inch` | a value |
//! | `0,7 mm` `1 000 mm` `2.5e-8 1/Pa` `40:1` `-10 °C` `minus ten °C` | a value |
//! | `2 h 30 min` `5' 6"` | a value, the sum (lengths and times) |
//! | `6..8 m` `6 to 8 m` `from 6 to 8 m` `between 6 and 8 m` | a range |
//! | `6-8 m` | a range, if both numbers are positive and no unit stands between |
//! | `40 m ± 10 %` `40 m ± 2 m` `40 ± 2 m` | a range |
//! | `about 40 m` `ca. 40 m` `~40 m` | a range of ± 10 %, for temperatures ± 5 K |
//! | `unknown` `?` | not known |
//!
//! A pressure is a gauge pressure, with or without `(g)`; a pressure above vacuum says `abs` or `(a)`. `1,000 mm` is
//! not guessed at: it may mean one or a thousand.

use crate::numeral::{Fault, numeral, unsigned, word};
use crate::spelling::{counterpart, nearest};
use crate::unit::fold;
use crate::{AnyQuantity, Dimension, Quantity, Ratio, ReadError, ReadErrorKind, Said, Unit, show_exact};

/// More characters than any quantity needs.
const MOST_CHARACTERS: usize = 200;
/// So much of a text is quoted in an error.
const QUOTED_CHARACTERS: usize = 60;
/// What "about" means: a tenth to either side. A temperature has no tenth; five kelvins stand for it.
const ABOUT: f64 = 0.1;
const ABOUT_KELVINS: f64 = 5.0;
/// Signs that are a fraction, as [`crate::numeral`] knows them.
const VULGAR: [char; 9] = ['½', '⅓', '⅔', '¼', '¾', '⅛', '⅜', '⅝', '⅞'];

/// Reads a quantity of this type.
///
/// # Errors
/// [`ReadError`] with what is wrong and what would do instead.
///
/// ```
/// use oilway_units::{Length, Pressure, Said, read};
/// assert_eq!(read::<Length>("3/4 in"), Ok(Said::Value(Length::from_inches(0.75))));
/// assert_eq!(read("6..8 m"), Ok(Said::Range(Length::from_metres(6.0), Length::from_metres(8.0))));
/// assert_eq!(read::<Pressure>("unknown"), Ok(Said::Unknown));
/// assert!(read::<Pressure>("12").is_err());
/// ```
pub fn read<T: Quantity>(text: &str) -> Result<Said<T>, ReadError> {
    Ok(read_any(T::DIMENSION, text)?.map(|quantity| T::from_si(quantity.si)))
}

/// Reads a quantity of a dimension known only at run time.
///
/// # Errors
/// [`ReadError`] with what is wrong and what would do instead.
pub fn read_any(dimension: Dimension, text: &str) -> Result<Said<AnyQuantity>, ReadError> {
    let length = text.chars().count();
    let said = if length > MOST_CHARACTERS {
        Err(ReadErrorKind::TooLong { length, most: MOST_CHARACTERS })
    } else {
        statement(dimension, text.trim())
    };
    said.map_err(|kind| ReadError { text: quoted(text.trim()), dimension, kind })
}

/// The front of a text, for an error.
fn quoted(text: &str) -> String {
    let mut front: String = text.chars().take(QUOTED_CHARACTERS).collect();
    if front.len() < text.len() {
        front.push('…');
    }
    front
}

type Reading<T> = Result<T, ReadErrorKind>;

fn statement(dimension: Dimension, text: &str) -> Reading<Said<AnyQuantity>> {
    if text.is_empty() {
        return Err(ReadErrorKind::Empty);
    }
    if ["?", "unknown", "not known"].iter().any(|known| text.eq_ignore_ascii_case(known)) {
        return Ok(Said::Unknown);
    }
    if let Some(rest) = about(text) {
        return match statement(dimension, rest.trim_start())? {
            Said::Value(value) if dimension == Dimension::Temperature => spread(value, ABOUT_KELVINS),
            Said::Value(value) => spread(value, value.si.abs() * ABOUT),
            other => Ok(other),
        };
    }
    if let Some((value, tolerance)) = around(text, &["±", "+/-", "+-"]) {
        return with_tolerance(dimension, value, tolerance);
    }
    if let Some((first, second)) = two_ends(text) {
        return range(side(dimension, first)?, side(dimension, second)?, dimension);
    }
    if let Some(said) = hyphen(dimension, text)? {
        return Ok(said);
    }
    let side = side(dimension, text)?;
    side.quantity(dimension, None).map(Said::Value)
}

/// What follows a word for "about".
fn about(text: &str) -> Option<&str> {
    let words =
        ["about", "approximately", "approx.", "approx", "around", "roughly", "circa", "ca.", "ca", "c."];
    text.strip_prefix(['~', '≈']).or_else(|| words.iter().find_map(|about| word(text, about)))
}

/// The texts before and behind the first of these signs.
fn around<'a>(text: &'a str, signs: &[&str]) -> Option<(&'a str, &'a str)> {
    signs.iter().find_map(|sign| text.split_once(sign))
}

/// The two ends of a range written with dots or words.
fn two_ends(text: &str) -> Option<(&str, &str)> {
    if let Some((first, second)) = around(text, &["..", "…"]) {
        return Some((first, second.trim_start_matches('.')));
    }
    // Lower case of ASCII only, so that places in both texts agree.
    let small = text.to_ascii_lowercase();
    let split = |start: usize, middle: &str| {
        let at = small.find(middle)?;
        Some((text.get(start..at)?, text.get(at + middle.len()..)?))
    };
    if small.starts_with("between ") {
        return split("between ".len(), " and ");
    }
    let start = if small.starts_with("from ") { "from ".len() } else { 0 };
    split(start, " to ")
}

/// `6-8 m`: two positive numbers, no unit between.
fn hyphen(dimension: Dimension, text: &str) -> Reading<Option<Said<AnyQuantity>>> {
    let Ok((low, rest)) = unsigned(text) else { return Ok(None) };
    let Some(behind) = rest.trim_start().strip_prefix(['-', '–', '—', '−']) else { return Ok(None) };
    let Ok((high, unit)) = unsigned(behind.trim_start()) else { return Ok(None) };
    let ends = [(low, ""), (high, unit.trim())].map(|(number, unit)| Side {
        number,
        written: text,
        unit,
        more: None,
    });
    let [first, second] = ends;
    range(first, second, dimension).map(Some)
}

/// A number, the text of its unit (possibly none), and how it stood there.
struct Side<'a> {
    number: f64,
    written: &'a str,
    unit: &'a str,
    /// What a chain such as `2 h 30 min` adds, in SI.
    more: Option<(&'static Unit, f64)>,
}

fn side(dimension: Dimension, text: &str) -> Reading<Side<'_>> {
    let (number, rest) = numeral(text).map_err(number_fault)?;
    let unit = rest.trim();
    let written = text.trim().strip_suffix(unit).unwrap_or(text).trim();
    if dimension == Dimension::Ratio
        && let Some(behind) = unit.strip_prefix(':')
        && let Ok((below, rest)) = unsigned(behind.trim_start())
    {
        return Ok(Side { number: number / below, written, unit: rest.trim(), more: None });
    }
    let more = chain(dimension, unit)?.map(|(first, rest)| (first, if number < 0.0 { -rest } else { rest }));
    Ok(Side { number, written, unit, more })
}

/// `h 30 min` behind a 2, `' 6"` behind a 5: the first unit and the SI value of the rest.
fn chain(dimension: Dimension, unit: &str) -> Reading<Option<(&'static Unit, f64)>> {
    let chained = matches!(dimension, Dimension::Length | Dimension::Time);
    if !chained || Unit::named(dimension, unit).is_some() {
        return Ok(None);
    }
    let Some(at) = unit.find(|c: char| c.is_ascii_digit() || VULGAR.contains(&c)) else { return Ok(None) };
    let (first, rest) = unit.split_at(at);
    // `ft2` is no chain of feet and two of something.
    let parted = first.ends_with(|c: char| !c.is_alphanumeric());
    let Some(first) = Unit::named(dimension, first).filter(|_| parted) else { return Ok(None) };
    let rest = side(dimension, rest)?.quantity(dimension, None)?;
    Ok((rest.si < first.to_si(1.0)).then_some((first, rest.si)))
}

impl Side<'_> {
    /// The quantity, in its own unit or, if none stands there, in that of the other side.
    fn quantity(&self, dimension: Dimension, other: Option<&'static Unit>) -> Reading<AnyQuantity> {
        let unit = match (self.more, self.unit, other) {
            (Some((unit, _)), ..) => unit,
            (None, "", Some(unit)) => unit,
            (None, text, _) => unit_of(dimension, text, self)?,
        };
        let more = self.more.map_or(0.0, |(_, si)| si);
        possible(AnyQuantity::new(dimension, unit.to_si(self.number) + more))
    }

    /// The unit that this side names, for the other side to share.
    fn shared(&self, dimension: Dimension) -> Option<&'static Unit> {
        if self.unit.is_empty() { None } else { Unit::named(dimension, self.unit) }
    }
}

/// The quantity, if it can be.
fn possible(quantity: AnyQuantity) -> Reading<AnyQuantity> {
    if !quantity.si.is_finite() {
        return Err(ReadErrorKind::NotFinite);
    }
    let has_least = matches!(quantity.dimension, Dimension::Temperature | Dimension::AbsolutePressure);
    if has_least && quantity.si < 0.0 {
        return Err(ReadErrorKind::BelowNothing { least: AnyQuantity::new(quantity.dimension, 0.0) });
    }
    Ok(quantity)
}

fn range(first: Side<'_>, second: Side<'_>, dimension: Dimension) -> Reading<Said<AnyQuantity>> {
    let first_alone = first.unit.is_empty() && first.more.is_none();
    let (low, high) = if first_alone {
        // The unit behind the second end holds for both; its faults are told first.
        let high = second.quantity(dimension, None)?;
        (first.quantity(dimension, second.shared(dimension))?, high)
    } else {
        (first.quantity(dimension, None)?, second.quantity(dimension, first.shared(dimension))?)
    };
    ends(low, high)
}

fn ends(low: AnyQuantity, high: AnyQuantity) -> Reading<Said<AnyQuantity>> {
    if low.si > high.si {
        Err(ReadErrorKind::Backwards { first: low, second: high })
    } else if low.si == high.si {
        Ok(Said::Value(low))
    } else {
        Ok(Said::Range(low, high))
    }
}

/// The value with so much (SI) to either side.
fn spread(value: AnyQuantity, half: f64) -> Reading<Said<AnyQuantity>> {
    let end = |si| possible(AnyQuantity::new(value.dimension, si));
    ends(end(value.si - half)?, end(value.si + half)?)
}

fn with_tolerance(dimension: Dimension, value: &str, tolerance: &str) -> Reading<Said<AnyQuantity>> {
    let value = side(dimension, value)?;
    let (number, rest) = numeral(tolerance).map_err(number_fault)?;
    if number < 0.0 {
        return Err(ReadErrorKind::BadTolerance);
    }
    let difference = difference(dimension);
    let unit = rest.trim();
    if matches!(fold(unit).as_str(), "%" | "percent") {
        // Of a share, `± 10 %` may mean a tenth of it or ten points; a temperature has no tenth.
        if number >= 100.0 || matches!(dimension, Dimension::Ratio | Dimension::Temperature) {
            return Err(ReadErrorKind::BadTolerance);
        }
        let value = value.quantity(dimension, None)?;
        return spread(value, value.si.abs() * Ratio::from_percent(number).fraction());
    }
    let own = value.shared(dimension);
    let half = match (unit, own) {
        // `40 m ± 2`: the unit of the value holds. A step of a scale with an offset is the same step.
        ("", Some(unit)) => unit.to_si(number) - unit.to_si(0.0),
        _ => {
            let text = Side { number, written: tolerance, unit, more: None };
            text.quantity(difference, None)?.si
        }
    };
    // `40 ± 2 m`: the unit of the tolerance holds for the value.
    spread(value.quantity(dimension, Unit::named(dimension, unit))?, half)
}

/// The dimension of a difference of two such quantities.
fn difference(dimension: Dimension) -> Dimension {
    match dimension {
        Dimension::Temperature => Dimension::TemperatureDifference,
        Dimension::AbsolutePressure => Dimension::Pressure,
        other => other,
    }
}

fn number_fault(fault: Fault) -> ReadErrorKind {
    match fault {
        Fault::None => ReadErrorKind::NoNumber,
        Fault::DoubtfulComma { decimal, thousands, rest } => {
            let whole = |number: String| format!("{number} {rest}").trim().to_owned();
            ReadErrorKind::DoubtfulComma { decimal: whole(decimal), thousands: whole(thousands) }
        }
    }
}

/// The unit that stands there, or what is wrong with it.
fn unit_of(dimension: Dimension, text: &str, side: &Side<'_>) -> Reading<&'static Unit> {
    if let Some(unit) = Unit::named(dimension, text) {
        return Ok(unit);
    }
    if text.is_empty() {
        return Err(ReadErrorKind::MissingUnit { examples: examples(dimension, side) });
    }
    let unit = quoted(text);
    // From the end: of a temperature and a difference of two, °C more often means the temperature.
    let elsewhere = Dimension::ALL.iter().rev().copied().find(|other| Unit::named(*other, text).is_some());
    let units = || Unit::of(dimension).iter().map(Unit::symbol).filter(|symbol| !symbol.is_empty()).collect();
    Err(match (dimension, elsewhere) {
        (Dimension::Pressure, Some(Dimension::AbsolutePressure)) => ReadErrorKind::AbsoluteForGauge { unit },
        (Dimension::AbsolutePressure, Some(Dimension::Pressure)) => {
            ReadErrorKind::GaugeForAbsolute { unit, instead: counterpart(text) }
        }
        (_, Some(measures)) => ReadErrorKind::WrongDimension { unit, measures, units: units() },
        (_, None) => ReadErrorKind::UnknownUnit { unit, nearest: nearest(dimension, text), units: units() },
    })
}

/// The same number with units that would do. A fraction is inches; the millimetres follow.
fn examples(dimension: Dimension, side: &Side<'_>) -> Vec<String> {
    let units = Unit::of(dimension);
    let usual = units.first();
    let customary = units.iter().find(|unit| unit.system() == Some(crate::UnitSystem::Us));
    let fraction = side.written.contains('/') || side.written.contains(VULGAR);
    if let (true, Dimension::Length, Some(usual), Some(inch)) = (fraction, dimension, usual, customary) {
        let converted = show_exact(AnyQuantity::new(dimension, inch.to_si(side.number)), usual);
        return vec![format!("{} {}", side.written, inch.symbol()), converted];
    }
    usual.into_iter().chain(customary).map(|unit| format!("{} {}", side.written, unit.symbol())).collect()
}
