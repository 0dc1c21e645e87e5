//! Rolling bearings by their designation: the boundary dimensions that a demand formula needs when a customer reads
//! `6210` off an old ring.
//!
//! The dimensions are those of ISO 15, ISO 355 and ISO 9628 as independent open tables print them; the file says which.

use std::sync::LazyLock;

use oilway_units::{Length, Mass, Ratio};

use crate::reading::nearest;

/// A rolling bearing as its designation describes it.
#[derive(Clone, Debug, PartialEq)]
pub struct Bearing {
    /// The basic designation.
    pub designation: &'static str,
    /// What sort it is: `deep groove ball`, `spherical roller`, …
    pub family: &'static str,
    /// Bore.
    pub bore: Length,
    /// Outside diameter.
    pub outside: Length,
    /// Width by which quantities of grease are reckoned: of the outer ring, or over all for a tapered bearing.
    pub width: Length,
    /// Width of an inner ring that is longer than the outer, as insert bearings have it.
    pub inner_width: Option<Length>,
    /// Factor of the sort in the formula for the interval of relubrication.
    pub interval_factor: Ratio,
    /// Mass, about.
    pub mass: Option<Mass>,
}

const TABLE: &str = include_str!("../../../data/bearings/boundary.csv");

/// The bearing with this designation; suffixes for seals, cages and clearance are passed over.
///
/// ```
/// use oilway_catalogue::bearings::bearing;
///
/// let found = bearing("6210-2RS C3").unwrap();
/// assert_eq!(found.designation, "6210");
/// assert_eq!((found.bore.millimetres().round(), found.outside.millimetres().round()), (50.0, 90.0));
/// assert!(bearing("62100").is_none());
/// ```
pub fn bearing(designation: &str) -> Option<&'static Bearing> {
    let wanted = plain(designation);
    bearings().iter().find(|bearing| wanted == bearing.designation).or_else(|| {
        let begins = |bearing: &&Bearing| {
            let rest = wanted.strip_prefix(bearing.designation);
            rest.is_some_and(|rest| !rest.starts_with(|first: char| first.is_ascii_digit()))
        };
        bearings().iter().filter(begins).max_by_key(|bearing| bearing.designation.len())
    })
}

/// The designation most like one that nobody knows.
pub fn nearest_designation(designation: &str) -> Option<&'static str> {
    nearest(designation, bearings().iter().map(|bearing| bearing.designation))
}

/// All bearings of the table, in its order.
pub fn bearings() -> &'static [Bearing] {
    static BEARINGS: LazyLock<Vec<Bearing>> = LazyLock::new(|| {
        let rows = || TABLE.lines().filter_map(row);
        let deep: Vec<Bearing> = rows().filter(|bearing| bearing.designation.starts_with("62")).collect();
        rows().map(|bearing| with_outer_ring(bearing, &deep)).collect()
    });
    &BEARINGS
}

/// Capitals, and nothing but letters and figures before the first sign that parts a suffix.
fn plain(designation: &str) -> String {
    let kept = designation.trim().to_uppercase();
    let kept = kept.split(['-', '/', '.', ',']).next().unwrap_or_default();
    kept.chars().filter(|c| !c.is_whitespace()).collect()
}

/// One line of the table; none for comments and the heading. The columns after these are words.
fn row(line: &'static str) -> Option<Bearing> {
    let cells: Vec<&str> = line.splitn(12, ',').collect();
    let [designation, family, bore, outside, width, over_all, _, _, factor, _, mass, _] = *cells.as_slice()
    else {
        return None;
    };
    let millimetres = |cell: &str| cell.parse().ok().map(Length::from_millimetres);
    Some(Bearing {
        designation,
        family,
        bore: millimetres(bore)?,
        outside: millimetres(outside)?,
        width: millimetres(over_all).or(millimetres(width))?,
        inner_width: None,
        interval_factor: Ratio::from_fraction(factor.parse().ok()?),
        mass: mass.parse().ok().map(Mass::from_kilograms),
    })
}

/// An insert bearing has the outer ring of the deep groove bearing of series 62 with the same bore number (common
/// practice, no source); the width in its row is that of the long inner ring.
fn with_outer_ring(bearing: Bearing, deep: &[Bearing]) -> Bearing {
    let Some(number) = bearing.designation.strip_prefix("UC2") else { return bearing };
    let ring = deep.iter().find(|deep| deep.designation.strip_prefix("62") == Some(number));
    let Some(ring) = ring.filter(|ring| ring.outside == bearing.outside) else { return bearing };
    Bearing { width: ring.width, inner_width: Some(bearing.width), ..bearing }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_is_whole() {
        // Guards against a lost or doubled row: counts of the file, own.
        let count = |family| bearings().iter().filter(|bearing| bearing.family == family).count();
        assert_eq!(bearings().len(), 140);
        assert_eq!(count("deep groove ball"), 60);
        assert_eq!(count("spherical roller"), 33);
        let mut names: Vec<_> = bearings().iter().map(|bearing| bearing.designation).collect();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), 140);
    }

    #[test]
    fn bore_numbers_from_04_on_are_a_fifth_of_the_bore() {
        // ISO 15 designation practice (memory): bore number times 5 mm for 20 mm and more.
        for bearing in bearings() {
            let digits: String = bearing.designation.chars().filter(char::is_ascii_digit).collect();
            let number: f64 = digits[digits.len() - 2..].parse().unwrap();
            if number >= 4.0 && bearing.bore.millimetres() >= 20.0 {
                assert!((bearing.bore.millimetres() - 5.0 * number).abs() < 1e-9, "{bearing:?}");
            }
        }
    }

    #[test]
    fn an_insert_bearing_is_reckoned_by_its_outer_ring() {
        let insert = bearing("UC208").unwrap();
        assert!((insert.width.millimetres() - 18.0).abs() < 1e-9);
        assert!(insert.inner_width.is_some_and(|inner| inner > insert.width));
        let all = bearings().iter().filter(|bearing| bearing.designation.starts_with("UC2"));
        assert!(all.clone().count() > 10 && all.clone().all(|bearing| bearing.inner_width.is_some()));
    }

    #[test]
    fn suffixes_are_passed_over_and_strangers_get_a_suggestion() {
        assert_eq!(bearing("6204 zz").unwrap().designation, "6204");
        assert_eq!(bearing("22210 EK").unwrap().designation, "22210");
        assert!(bearing("9999").is_none() && bearing("").is_none());
        assert_eq!(nearest_designation("6012x"), Some("6012"));
        assert_eq!(nearest_designation("gearbox"), None);
    }
}
