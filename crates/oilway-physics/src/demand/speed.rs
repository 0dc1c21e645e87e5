//! Is the bearing too fast for grease, and is the oil thick enough for the speed?

use oilway_units::{Count, Frequency, KinematicViscosity, Length, Ratio};

use super::ROUNDING;
use crate::{Range, formula};

formula! {
    /// The speed index of a rolling bearing, in mm/min.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::speed_index;
    /// use oilway_units::{Frequency, Length};
    ///
    /// let index = speed_index(
    ///     Length::from_millimetres(60.0), Length::from_millimetres(110.0), Frequency::from_per_minute(5000.0),
    /// );
    /// assert_eq!(format!("{:.0}", index.number()), "300000");
    /// ```
    SPEED_INDEX = "demand/speed-index",
    title: "Speed index of a rolling bearing",
    equation: "A = d · n up to d = 65 mm, else (d + D)/2 · n   (mm, 1/min)",
    validity: "Grease up to 300 000 to 350 000, oil up to 450 000 to 500 000, by type of bearing. The index jumps at 65 mm of bore, as the guide does.",
    sources: ["neale-1995", "C8.1, general guide table", Seen],
    fn speed_index(
        bore: Length, "d", "bore of the bearing", Range::Positive;
        outside: Length, "D", "outside diameter of the bearing", Range::Positive;
        speed: Frequency, "n", "speed", Range::NotNegative;
    ) -> Count, "A", "speed index, mm/min" {
        let d = bore.millimetres();
        let counts = if d > 65.0 * (1.0 + ROUNDING) { 0.5 * (d + outside.millimetres()) } else { d };
        Count::from_number(counts * speed.per_minute())
    }
}

formula! {
    /// The viscosity that a rolling bearing wants at its running temperature.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::reference_viscosity;
    /// use oilway_units::{Frequency, Length};
    ///
    /// let wanted = reference_viscosity(Frequency::from_per_minute(1500.0), Length::from_millimetres(70.0));
    /// assert_eq!(format!("{:.2}", wanted.square_millimetres_per_second()), "13.89");
    /// ```
    REFERENCE_VISCOSITY = "demand/reference-viscosity",
    title: "Reference viscosity of a rolling bearing",
    equation: "ν1 = 45000 · n^−0.83 · Dpw^−0.5 below 1000 1/min, else 4500 · n^−0.5 · Dpw^−0.5   (mm²/s, 1/min, mm)",
    validity: "Radial and thrust rolling bearings; the mean of bore and outside diameter may stand for the pitch diameter. The branches miss one another by 2.3 per cent at 1000 1/min: the jump is the standard's. A common error takes the first branch at all speeds.",
    sources: ["iso-281-2007", "reference viscosity ν1", SecondHand],
    fn reference_viscosity(
        speed: Frequency, "n", "speed of the bearing", Range::Positive;
        pitch_diameter: Length, "Dpw", "pitch diameter of the rolling elements", Range::Positive;
    ) -> KinematicViscosity, "ν1", "reference viscosity" {
        let (n, d) = (speed.per_minute(), pitch_diameter.millimetres());
        let by_speed =
            if n < 1000.0 * (1.0 - ROUNDING) { 45_000.0 * libm::pow(n, -0.83) } else { 4500.0 / n.sqrt() };
        KinematicViscosity::from_square_millimetres_per_second(by_speed / d.sqrt())
    }
}

formula! {
    /// The viscosity ratio κ: is the oil, or the base oil of the grease, thick enough?
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::viscosity_ratio;
    /// use oilway_units::KinematicViscosity;
    ///
    /// let nu = KinematicViscosity::from_square_millimetres_per_second;
    /// assert_eq!(format!("{:.2}", viscosity_ratio(nu(27.18), nu(13.89)).fraction()), "1.96");
    /// ```
    VISCOSITY_RATIO = "demand/viscosity-ratio",
    title: "Viscosity ratio of a rolling bearing",
    equation: "κ = ν / ν1",
    validity: "Both at the running temperature; for grease ν is that of the base oil. From 1 to 4 good, above 4 no further benefit (count it as 4), below 1 additives and shorter intervals, below 0.4 boundary lubrication, below 0.1 outside the standard.",
    sources: ["iso-281-2007", "viscosity ratio κ; the judgement from memory", Memory],
    fn viscosity_ratio(
        viscosity: KinematicViscosity, "ν", "viscosity at the running temperature", Range::NotNegative;
        reference: KinematicViscosity, "ν1", "reference viscosity of the bearing", Range::Positive;
    ) -> Ratio, "κ", "viscosity ratio" {
        Ratio::from_fraction(viscosity / reference)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wanted(speed: f64, diameter: f64) -> f64 {
        reference_viscosity(Frequency::from_per_minute(speed), Length::from_millimetres(diameter))
            .square_millimetres_per_second()
    }

    #[test]
    fn a_thousand_a_minute_belongs_to_the_upper_branch_in_whatever_unit_it_came() {
        let exact = 4500.0 / (1000f64 * 70.0).sqrt();
        assert!((wanted(1000.0, 70.0) / exact - 1.0).abs() < 1e-12);
        let from_hours =
            reference_viscosity(Frequency::from_per_hour(60_000.0), Length::from_millimetres(70.0));
        assert!((from_hours.square_millimetres_per_second() / exact - 1.0).abs() < 1e-12);
    }

    #[test]
    fn the_jump_at_a_thousand_a_minute_is_that_of_the_standard() {
        // By hand: 45000·1000^−0.83 / (4500·1000^−0.5) = 10·1000^−0.33 = 10^0.01.
        let jump = wanted(999.999_999, 70.0) / wanted(1000.0, 70.0);
        assert!((jump - 10f64.powf(0.01)).abs() < 1e-8, "{jump}");
    }

    #[test]
    fn four_times_the_diameter_wants_half_the_viscosity() {
        assert!((wanted(300.0, 40.0) / wanted(300.0, 160.0) - 2.0).abs() < 1e-12);
    }

    #[test]
    fn a_bore_of_sixty_five_counts_itself_and_a_larger_one_its_mean_diameter() {
        let index = |d: Length, da: f64| {
            speed_index(d, Length::from_millimetres(da), Frequency::from_per_minute(1000.0)).number()
        };
        assert!((index(Length::from_millimetres(65.0), 120.0) - 65_000.0).abs() < 1e-6);
        assert!((index(Length::from_inches(65.0 / 25.4), 120.0) - 65_000.0).abs() < 1e-6);
        assert!((index(Length::from_millimetres(70.0), 125.0) - 97_500.0).abs() < 1e-6);
    }

    #[test]
    fn oil_as_thick_as_wanted_has_ratio_one() {
        let nu = KinematicViscosity::from_square_millimetres_per_second(17.0);
        assert_eq!(viscosity_ratio(nu, nu).fraction(), 1.0);
    }
}
