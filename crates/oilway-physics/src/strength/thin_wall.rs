//! Thin walls: equilibrium of half a ring.

use oilway_units::{Length, Pressure};

use crate::{Range, formula};

formula! {
    /// The pressure of a thin-walled tube at a hoop stress, by its outside diameter.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::strength::barlow_outside;
    /// use oilway_units::{Length, Pressure};
    ///
    /// let mm = Length::from_millimetres;
    /// let pressure = barlow_outside(mm(10.0), mm(1.0), Pressure::from_megapascals(100.0));
    /// assert_eq!(format!("{:.0}", pressure.bar()), "200");
    /// ```
    BARLOW_OUTSIDE = "strength/barlow-outside",
    title: "Pressure of a tube by Barlow, outside diameter",
    equation: "p = 2 · S · t / D",
    validity: "Thin walls; for thicker ones on the safe side, since the outside diameter overstates the pull. No allowance for tolerance, thread or corrosion: use the least wall.",
    sources: [
        "barlow", "thin-wall equilibrium", SecondHand;
        "sae-j1065", "Appendix A", SecondHand
    ],
    fn barlow_outside(
        outside: Length, "D", "outside diameter", Range::Positive;
        wall: Length, "t", "wall", Range::Positive;
        stress: Pressure, "S", "stress in the wall", Range::Positive;
    ) -> Pressure, "p", "pressure at that stress" {
        stress * (2.0 * wall.metres() / outside.metres())
    }
}

formula! {
    /// The pressure of a thin-walled tube at a hoop stress, by its mean diameter.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::strength::barlow_mean;
    /// use oilway_units::{Length, Pressure};
    ///
    /// // Soft copper 6 x 1, 46 N/mm² up to 65 °C.
    /// let mm = Length::from_millimetres;
    /// let pressure = barlow_mean(mm(6.0), mm(1.0), Pressure::from_megapascals(46.0));
    /// assert_eq!(format!("{:.0}", pressure.bar()), "184");
    /// ```
    BARLOW_MEAN = "strength/barlow-mean",
    title: "Pressure of a tube by Barlow, mean diameter",
    equation: "p = 2 · S · t / (D − t)",
    validity: "Thin walls. The form used for copper in Europe and, with the short-time strength for S, for the burst of plastic tube. Zero for a wall of more than half the diameter.",
    sources: [
        "barlow", "thin-wall equilibrium at the mean diameter", SecondHand;
        "en-12449", "copper, in a publication of a copper trade body", SecondHand
    ],
    fn barlow_mean(
        outside: Length, "D", "outside diameter", Range::Positive;
        wall: Length, "t", "wall", Range::Positive;
        stress: Pressure, "S", "stress in the wall", Range::Positive;
    ) -> Pressure, "p", "pressure at that stress" {
        let (d, t) = (outside.metres(), wall.metres());
        if 2.0 * t > d {
            return Pressure::ZERO;
        }
        stress * (2.0 * t / (d - t))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const STRESS: Pressure = Pressure::from_megapascals(100.0);

    fn mm(value: f64) -> Length {
        Length::from_millimetres(value)
    }

    #[test]
    fn for_a_very_thin_wall_the_two_diameters_agree() {
        let ratio = barlow_mean(mm(100.0), mm(1e-6), STRESS) / barlow_outside(mm(100.0), mm(1e-6), STRESS);
        assert!((ratio - 1.0).abs() < 2e-8);
    }

    #[test]
    fn the_outside_diameter_is_the_safer_one() {
        assert!(barlow_outside(mm(6.0), mm(1.0), STRESS) < barlow_mean(mm(6.0), mm(1.0), STRESS));
    }

    #[test]
    fn a_wall_thicker_than_half_the_tube_holds_nothing() {
        assert_eq!(barlow_mean(mm(6.0), mm(3.1), STRESS), Pressure::ZERO);
        assert!(barlow_mean(mm(6.0), mm(2.9), STRESS) > Pressure::ZERO);
    }

    #[test]
    fn the_published_stainless_tube_holds_its_pressure() {
        // as-4041, second-hand: 6.35 x 0.90 mm less 10 % of wall, 138 N/mm²: 40.4 MPa printed to three figures.
        let pressure = barlow_mean(mm(6.35), mm(0.81), Pressure::from_megapascals(138.0));
        assert!((pressure.megapascals() - 40.4).abs() < 0.05, "{}", pressure.megapascals());
    }
}
