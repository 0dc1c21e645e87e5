//! The NLGI classes: cone penetration, and what a grease of the class may do in a line when nobody has measured it.

use oilway_units::{Consistency, Length, Pressure, Ratio};

use crate::{Source, Standing};

/// A value that is not known better than this.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band<T> {
    /// The low end.
    pub low: T,
    /// What to take when one number must do.
    pub typical: T,
    /// The high end.
    pub high: T,
}

/// One NLGI class.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Class {
    /// The name: `000` to `6`.
    pub name: &'static str,
    /// The smallest worked penetration at 25 °C, the stiff end.
    pub stiffest: Length,
    /// The largest worked penetration at 25 °C, the soft end.
    pub softest: Length,
    /// Bands of the flow curve at 25 °C; none for classes too stiff for a line.
    pub design: Option<Design>,
}

/// Bands of the flow curve of a class at 25 °C. A pressure from them is a band, never one number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Design {
    /// Yield stress τ0.
    pub yield_stress: Band<Pressure>,
    /// Consistency factor K.
    pub consistency: Band<Consistency>,
    /// Flow index n.
    pub index: Band<Ratio>,
}

/// Where the penetrations come from.
pub const PENETRATION_SOURCE: Source = Source {
    key: "astm-d217",
    place: "NLGI ranges of worked penetration, three reproductions",
    standing: Standing::SecondHand,
};

/// Where the bands come from: judged between values recalled from memory, the cone test and practice. The typical yield
/// stress and the ends are judged; typical K is the geometric mean of its ends, typical n the middle, both rounded.
pub const DESIGN_SOURCE: Source =
    Source { key: "own-derivation", place: "bands for classes, judged", standing: Standing::Own };

/// Penetration is counted in tenths of a millimetre.
const fn penetration(tenths: f64) -> Length {
    Length::from_millimetres(tenths / 10.0)
}

const fn class(name: &'static str, stiffest: f64, softest: f64, design: Option<Design>) -> Class {
    Class { name, stiffest: penetration(stiffest), softest: penetration(softest), design }
}

/// Low, typical and high of τ0 in Pa, of K in Pa·sⁿ and of n.
const fn design(tau_0: [f64; 3], k: [f64; 3], n: [f64; 3]) -> Option<Design> {
    Some(Design {
        yield_stress: Band {
            low: Pressure::from_pascals(tau_0[0]),
            typical: Pressure::from_pascals(tau_0[1]),
            high: Pressure::from_pascals(tau_0[2]),
        },
        consistency: Band {
            low: Consistency::from_pascal_seconds_to_the_n(k[0]),
            typical: Consistency::from_pascal_seconds_to_the_n(k[1]),
            high: Consistency::from_pascal_seconds_to_the_n(k[2]),
        },
        index: Band {
            low: Ratio::from_fraction(n[0]),
            typical: Ratio::from_fraction(n[1]),
            high: Ratio::from_fraction(n[2]),
        },
    })
}

/// The classes, softest first.
pub static CLASSES: [Class; 9] = [
    class("000", 445.0, 475.0, design([0.0, 10.0, 30.0], [0.5, 1.2, 3.0], [0.8, 0.9, 1.0])),
    class("00", 400.0, 430.0, design([10.0, 30.0, 100.0], [1.0, 2.4, 6.0], [0.7, 0.8, 0.9])),
    class("0", 355.0, 385.0, design([50.0, 100.0, 200.0], [2.0, 4.9, 12.0], [0.65, 0.75, 0.85])),
    class("1", 310.0, 340.0, design([100.0, 200.0, 400.0], [3.0, 8.7, 25.0], [0.5, 0.65, 0.8])),
    class("2", 265.0, 295.0, design([200.0, 500.0, 1000.0], [10.0, 24.0, 60.0], [0.4, 0.55, 0.7])),
    class("3", 220.0, 250.0, design([500.0, 1000.0, 2000.0], [30.0, 67.0, 150.0], [0.3, 0.45, 0.6])),
    class("4", 175.0, 205.0, None),
    class("5", 130.0, 160.0, None),
    class("6", 85.0, 115.0, None),
];

/// The class to which a worked penetration belongs; between the bands there is none.
///
/// ```
/// use oilway_physics::grease::classes;
/// use oilway_units::Length;
///
/// let name = |millimetres| classes::of_penetration(Length::from_millimetres(millimetres)).map(|class| class.name);
/// assert_eq!(name(28.0), Some("2"));
/// assert_eq!(name(30.0), None);
/// ```
pub fn of_penetration(worked: Length) -> Option<Class> {
    CLASSES.iter().copied().find(|class| (class.stiffest..=class.softest).contains(&worked))
}

/// The class of this name.
pub fn named(name: &str) -> Option<Class> {
    CLASSES.iter().copied().find(|class| class.name == name)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_band_of_penetration_is_thirty_wide_with_fifteen_between() {
        for class in CLASSES {
            assert!(((class.softest - class.stiffest).millimetres() - 3.0).abs() < 1e-12, "{class:?}");
        }
        for pair in CLASSES.windows(2) {
            assert!(((pair[0].stiffest - pair[1].softest).millimetres() - 1.5).abs() < 1e-12, "{pair:?}");
        }
    }

    #[test]
    fn the_ends_of_a_band_belong_to_it_and_the_gap_to_none() {
        let name =
            |tenths: f64| of_penetration(Length::from_millimetres(tenths / 10.0)).map(|class| class.name);
        assert_eq!(name(265.0), Some("2"));
        assert_eq!(name(295.0), Some("2"));
        assert_eq!(name(300.0), None);
        assert_eq!(name(476.0), None);
        assert_eq!(name(84.0), None);
        assert_eq!(named("000").map(|class| class.softest), Some(Length::from_millimetres(47.5)));
        assert_eq!(named("7"), None);
    }

    #[test]
    fn stiffer_classes_have_stiffer_bands_and_thin_more() {
        let designs: Vec<Design> = CLASSES.iter().filter_map(|class| class.design).collect();
        assert_eq!(designs.len(), 6);
        for pair in designs.windows(2) {
            assert!(pair[0].yield_stress.typical < pair[1].yield_stress.typical);
            assert!(pair[0].consistency.typical < pair[1].consistency.typical);
            assert!(pair[0].index.typical > pair[1].index.typical);
        }
    }

    #[test]
    fn the_typical_values_are_what_the_source_says_they_are() {
        for design in CLASSES.iter().filter_map(|class| class.design) {
            let k = design.consistency;
            let mean = (k.low.pascal_seconds_to_the_n() * k.high.pascal_seconds_to_the_n()).sqrt();
            assert!((k.typical.pascal_seconds_to_the_n() / mean - 1.0).abs() < 0.03, "{design:?}");
            let middle = 0.5 * (design.index.low + design.index.high);
            assert!((design.index.typical - middle).abs().fraction() < 1e-12, "{design:?}");
            assert!(
                design.yield_stress.low < design.yield_stress.typical
                    && design.yield_stress.typical < design.yield_stress.high
            );
        }
    }
}
