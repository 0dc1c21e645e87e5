//! Grease for one replenishment of a rolling bearing, and the space that it may fill.

use core::f64::consts::PI;

use oilway_units::{Length, Mass, Volume};

use crate::{Range, formula};

/// 1 g for each mm² is 1000 kg for each m².
const GRAMS_PER_SQUARE_MILLIMETRE: f64 = 1e3;
/// Density of bearing steel, kg/m³.
const STEEL: f64 = 7800.0;

formula! {
    /// Grease for one replenishment of a rolling bearing from its side.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::grease_quantity_side;
    /// use oilway_units::Length;
    ///
    /// // Bearing 22220: outside 180 mm, width 46 mm.
    /// let grease = grease_quantity_side(Length::from_millimetres(180.0), Length::from_millimetres(46.0));
    /// assert_eq!(format!("{:.1}", grease.grams()), "41.4");
    /// ```
    GREASE_QUANTITY_SIDE = "demand/grease-side",
    title: "Grease for one replenishment of a rolling bearing from the side",
    equation: "G = 0.005 · D · B   (G in g, D and B in mm)",
    validity: "Replenishment at the interval of the rule demand/grease-interval. B is the width; the height of a thrust bearing, the whole width T of a tapered roller bearing, the width of the bearing of series 62 in an insert unit. An automatic system spreads it over the interval in small shots: overfilling heats the bearing.",
    sources: [
        "neale-1995", "A20.5", Seen;
        "trade-bearing", "the same rule", Seen
    ],
    fn grease_quantity_side(
        outside: Length, "D", "outside diameter of the bearing", Range::Positive;
        width: Length, "B", "width of the bearing", Range::Positive;
    ) -> Mass, "G", "grease for one replenishment" {
        Mass::from_kilograms(0.005 * GRAMS_PER_SQUARE_MILLIMETRE * outside.metres() * width.metres())
    }
}

formula! {
    /// Grease for one replenishment of a rolling bearing through groove and holes in the middle of its outer ring.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::grease_quantity_through_ring;
    /// use oilway_units::Length;
    ///
    /// let grease = grease_quantity_through_ring(Length::from_millimetres(180.0), Length::from_millimetres(46.0));
    /// assert_eq!(format!("{:.2}", grease.grams()), "16.56");
    /// ```
    GREASE_QUANTITY_THROUGH_RING = "demand/grease-through-ring",
    title: "Grease for one replenishment of a rolling bearing through its outer ring",
    equation: "G = 0.002 · D · B   (G in g, D and B in mm)",
    validity: "The grease enters between the rows, so that less is wanted than from the side. Only for bearings with groove and holes in the outer ring.",
    sources: ["trade-bearing", "relubrication quantity, quoted in open documentation", SecondHand],
    fn grease_quantity_through_ring(
        outside: Length, "D", "outside diameter of the bearing", Range::Positive;
        width: Length, "B", "width of the bearing", Range::Positive;
    ) -> Mass, "G", "grease for one replenishment" {
        Mass::from_kilograms(0.002 * GRAMS_PER_SQUARE_MILLIMETRE * outside.metres() * width.metres())
    }
}

formula! {
    /// The free space inside a rolling bearing: the ring between bore and outside less the metal in it.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::bearing_free_space;
    /// use oilway_units::{Length, Mass};
    ///
    /// // Bearing 6210: 50 x 90 x 20 mm, 0.46 kg.
    /// let space = bearing_free_space(
    ///     Length::from_millimetres(50.0), Length::from_millimetres(90.0), Length::from_millimetres(20.0),
    ///     Mass::from_kilograms(0.46),
    /// );
    /// assert_eq!(space.map(|v| format!("{:.2}", v.cubic_centimetres())), Some("28.99".to_string()));
    /// ```
    BEARING_FREE_SPACE = "demand/free-space",
    title: "Free space inside a rolling bearing",
    equation: "V = π/4 · B · (D² − d²) − m / ρs,  ρs = 7.8 g/cm³",
    validity: "Bearings of steel, with a cage of steel; a cage of brass or plastic leaves a little more or less. No answer where the mass is more than the ring can hold: then a dimension or the mass is wrong. First fill 30 to 50 per cent of it in ordinary service, all of it for very slow bearings that need protection against corrosion.",
    sources: [
        "own-derivation", "geometry", Own;
        "trade-bearing", "the form", Memory;
        "neale-1995", "A20.5, share of the space to fill", Seen
    ],
    fn bearing_free_space(
        bore: Length, "d", "bore of the bearing", Range::NotNegative;
        outside: Length, "D", "outside diameter of the bearing", Range::Positive;
        width: Length, "B", "width of the bearing", Range::Positive;
        mass: Mass, "m", "mass of the bearing", Range::NotNegative;
    ) -> Option<Volume>, "V", "free space" {
        let (d, da, b) = (bore.metres(), outside.metres(), width.metres());
        let free = PI / 4.0 * b * (da - d) * (da + d) - mass.kilograms() / STEEL;
        (free > 0.0).then(|| Volume::from_cubic_metres(free))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(value: f64) -> Length {
        Length::from_millimetres(value)
    }

    #[test]
    fn the_inch_form_of_the_side_rule_agrees() {
        // 0.114 oz for each square inch, the constant as printed in a maintenance article; exact is 0.11379.
        let grease = grease_quantity_side(Length::from_inches(3.0), Length::from_inches(2.0));
        assert!((grease.ounces() / (0.114 * 6.0) - 1.0).abs() < 0.002, "{} oz", grease.ounces());
    }

    #[test]
    fn through_the_ring_takes_two_fifths_of_the_quantity_from_the_side() {
        let (side, ring) =
            (grease_quantity_side(mm(90.0), mm(20.0)), grease_quantity_through_ring(mm(90.0), mm(20.0)));
        assert!((ring / side - 0.4).abs() < 1e-15);
    }

    #[test]
    fn an_impossible_mass_has_no_free_space() {
        let solid = PI / 4.0 * 0.02 * (0.09 * 0.09 - 0.05 * 0.05) * STEEL;
        let space = |mass: f64| bearing_free_space(mm(50.0), mm(90.0), mm(20.0), Mass::from_kilograms(mass));
        assert_eq!(space(solid * 1.0001), None);
        assert!(space(solid * 0.9999).is_some());
    }

    #[test]
    fn bore_and_outside_entered_the_wrong_way_round_have_no_free_space() {
        assert_eq!(bearing_free_space(mm(90.0), mm(50.0), mm(20.0), Mass::ZERO), None);
    }
}
