//! The ISO viscosity grades: bands of kinematic viscosity at 40 °C that do not touch.

use oilway_units::KinematicViscosity;

use crate::{Source, Standing};

/// One viscosity grade of ISO 3448.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Grade {
    /// The number in the name: 68 of VG 68.
    pub number: u16,
    /// Middle of the band at 40 °C; for the four thinnest grades it is not the number.
    pub middle: KinematicViscosity,
    /// Lower end of the band, ten percent below the middle.
    pub lowest: KinematicViscosity,
    /// Upper end of the band, ten percent above the middle.
    pub highest: KinematicViscosity,
    /// Where the row was read.
    pub source: Source,
}

/// A row: the number of the grade, and lowest, middle and highest viscosity in mm²/s as the table prints them.
const fn row(number: u16, lowest: f64, middle: f64, highest: f64, standing: Standing) -> Grade {
    Grade {
        number,
        middle: KinematicViscosity::from_square_millimetres_per_second(middle),
        lowest: KinematicViscosity::from_square_millimetres_per_second(lowest),
        highest: KinematicViscosity::from_square_millimetres_per_second(highest),
        source: Source { key: "iso-3448", place: "table of the grades", standing },
    }
}

/// The grades, thinnest first. Eighteen were read in two reproductions of the table; the two thickest are from memory.
pub static GRADES: [Grade; 20] = [
    row(2, 1.98, 2.2, 2.42, Standing::SecondHand),
    row(3, 2.88, 3.2, 3.52, Standing::SecondHand),
    row(5, 4.14, 4.6, 5.06, Standing::SecondHand),
    row(7, 6.12, 6.8, 7.48, Standing::SecondHand),
    row(10, 9.0, 10.0, 11.0, Standing::SecondHand),
    row(15, 13.5, 15.0, 16.5, Standing::SecondHand),
    row(22, 19.8, 22.0, 24.2, Standing::SecondHand),
    row(32, 28.8, 32.0, 35.2, Standing::SecondHand),
    row(46, 41.4, 46.0, 50.6, Standing::SecondHand),
    row(68, 61.2, 68.0, 74.8, Standing::SecondHand),
    row(100, 90.0, 100.0, 110.0, Standing::SecondHand),
    row(150, 135.0, 150.0, 165.0, Standing::SecondHand),
    row(220, 198.0, 220.0, 242.0, Standing::SecondHand),
    row(320, 288.0, 320.0, 352.0, Standing::SecondHand),
    row(460, 414.0, 460.0, 506.0, Standing::SecondHand),
    row(680, 612.0, 680.0, 748.0, Standing::SecondHand),
    row(1000, 900.0, 1000.0, 1100.0, Standing::SecondHand),
    row(1500, 1350.0, 1500.0, 1650.0, Standing::SecondHand),
    row(2200, 1980.0, 2200.0, 2420.0, Standing::Memory),
    row(3200, 2880.0, 3200.0, 3520.0, Standing::Memory),
];

/// The grade to which an oil of this viscosity at 40 °C belongs; between the bands there is none.
///
/// ```
/// use oilway_physics::oil::grade_of;
/// use oilway_units::KinematicViscosity;
///
/// let number = |mm2_s| grade_of(KinematicViscosity::from_square_millimetres_per_second(mm2_s)).map(|g| g.number);
/// assert_eq!(number(70.0), Some(68));
/// assert_eq!(number(38.0), None);
/// ```
pub fn grade_of(at_40: KinematicViscosity) -> Option<Grade> {
    GRADES.iter().copied().find(|grade| (grade.lowest..=grade.highest).contains(&at_40))
}

/// The grade of this number.
pub fn grade(number: u16) -> Option<Grade> {
    GRADES.iter().copied().find(|grade| grade.number == number)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn number(mm2_s: f64) -> Option<u16> {
        grade_of(KinematicViscosity::from_square_millimetres_per_second(mm2_s)).map(|grade| grade.number)
    }

    #[test]
    fn every_band_is_its_middle_plus_and_minus_ten_percent() {
        for grade in GRADES {
            assert!((grade.lowest / grade.middle - 0.9).abs() < 1e-12, "{grade:?}");
            assert!((grade.highest / grade.middle - 1.1).abs() < 1e-12, "{grade:?}");
        }
    }

    #[test]
    fn the_bands_rise_and_never_touch() {
        assert!(GRADES.windows(2).all(|pair| pair[0].highest < pair[1].lowest));
    }

    #[test]
    fn the_ends_of_a_band_belong_to_it_and_the_gap_to_none() {
        assert_eq!(number(28.8), Some(32));
        assert_eq!(number(35.2), Some(32));
        assert_eq!(number(38.0), None);
        assert_eq!(number(28.79), None);
        assert_eq!(number(1.0), None);
        assert_eq!(number(9999.0), None);
    }

    #[test]
    fn grades_are_found_by_number() {
        assert_eq!(grade(220).map(|grade| grade.middle.square_millimetres_per_second()), Some(220.0));
        assert_eq!(grade(200), None);
    }
}
