//! A line shut at both ends that warms.

use oilway_units::{PerTemperature, Pressure, TemperatureDifference};

use crate::{Range, formula};

formula! {
    /// Pressure rise of a full line that is shut at both ends and warms.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::disc::locked_in_pressure;
    /// use oilway_units::{PerTemperature, Pressure, TemperatureDifference};
    ///
    /// // Ten kelvins of sun on a 6 × 1 mm steel tube between two check valves.
    /// let rise = locked_in_pressure(
    ///     TemperatureDifference::from_kelvins(10.0), PerTemperature::from_per_kelvin(7.0e-4),
    ///     PerTemperature::from_per_kelvin(12.0e-6), Pressure::from_megapascals(1600.0), Pressure::from_megapascals(36_200.0),
    /// );
    /// assert_eq!(format!("{:.0}", rise.bar()), "102");
    /// ```
    LOCKED_IN = "disc/locked-in",
    title: "Pressure rise of a shut-in line that warms",
    equation: "Δp = (β − 3 α) ΔT / (1/K + 1/Kw)",
    validity: "The line is full and holds tight. One per cent of entrained air lowers the figure steeply: put it into K. A negative answer means that the wall grows more than the liquid, and a void forms instead. A line between two check valves needs its own relief or a vented end.",
    sources: [
        "own-derivation", "volume balance of liquid and wall", Own
    ],
    fn locked_in_pressure(
        rise: TemperatureDifference, "ΔT", "warming while shut in", Range::NotNegative;
        expansion: PerTemperature, "β", "volume expansion of the lubricant", Range::NotNegative;
        wall_expansion: PerTemperature, "α", "linear expansion of the wall", Range::NotNegative;
        modulus: Pressure, "K", "bulk modulus of the lubricant as it is, with its air", Range::Positive;
        wall_modulus: Pressure, "Kw", "stiffness of the wall against widening", Range::Positive;
    ) -> Pressure, "Δp", "pressure rise" {
        let free = (expansion.per_kelvin() - 3.0 * wall_expansion.per_kelvin()) * rise.kelvins();
        let (k, kw) = (modulus.pascals(), wall_modulus.pascals());
        Pressure::from_pascals(free * k / (1.0 + k / kw))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rise(kelvins: f64, alpha: f64, wall: f64) -> f64 {
        locked_in_pressure(
            TemperatureDifference::from_kelvins(kelvins),
            PerTemperature::from_per_kelvin(7e-4),
            PerTemperature::from_per_kelvin(alpha),
            Pressure::from_megapascals(1600.0),
            Pressure::from_pascals(wall),
        )
        .bar()
    }

    #[test]
    fn a_wall_that_neither_expands_nor_gives_leaves_beta_times_k() {
        assert!((rise(10.0, 0.0, 1e30) - 112.0).abs() < 1e-9);
        assert_eq!(rise(0.0, 0.0, 1e30), 0.0);
    }

    #[test]
    fn a_wall_that_grows_as_fast_as_the_liquid_feels_nothing() {
        assert!(rise(10.0, 7e-4 / 3.0, 36.2e9).abs() < 1e-9);
    }

    #[test]
    fn the_volumes_balance() {
        // Second route: what the liquid wants more than the wall offers is taken up by the two stiffnesses.
        let p = rise(25.0, 1.2e-5, 36.2e9) * 1e5;
        let taken = p / 1.6e9 + p / 36.2e9;
        assert!((taken / ((7e-4 - 3.6e-5) * 25.0) - 1.0).abs() < 1e-13);
    }
}
