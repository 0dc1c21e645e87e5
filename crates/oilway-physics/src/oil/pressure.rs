//! Viscosity of an oil against pressure.

use oilway_units::{PerPressure, Pressure, Ratio, Viscosity};

use crate::{Range, formula};

formula! {
    /// How many times thicker an oil is under pressure, by Barus' law.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::oil::barus_factor;
    /// use oilway_units::{PerPressure, Pressure};
    ///
    /// let factor = barus_factor(PerPressure::from_per_gigapascal(20.0), Pressure::from_bar(200.0));
    /// assert_eq!(format!("{:.4}", factor.fraction()), "1.4918");
    /// ```
    BARUS_FACTOR = "oil/barus",
    title: "How much pressure thickens an oil",
    equation: "η/η0 = exp(α p)",
    validity: "To some 1000 bar; beyond, the law climbs too fast. The coefficient falls as the oil warms: 15 to 30 per GPa at 30 to 100 °C for mineral oils, more when cold.",
    sources: [
        "barus-1893", "exponential law", SecondHand;
        "stachowiak-batchelor", "Table 2.3, coefficients", Seen
    ],
    fn barus_factor(
        coefficient: PerPressure, "α", "pressure coefficient of the viscosity", Range::NotNegative;
        pressure: Pressure, "p", "gauge pressure", Range::Any;
    ) -> Ratio, "η/η0", "viscosity over viscosity at no pressure" {
        Ratio::from_fraction(libm::exp(coefficient.per_pascal() * pressure.pascals()))
    }
}

formula! {
    /// Mean thickening of an oil along a line that loses its pressure to nothing: the factor for the whole line.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::oil::mean_barus_factor;
    /// use oilway_units::{PerPressure, Pressure};
    ///
    /// let factor = mean_barus_factor(PerPressure::from_per_gigapascal(20.0), Pressure::from_bar(400.0));
    /// assert_eq!(format!("{:.3}", factor.fraction()), "1.453");
    /// ```
    MEAN_BARUS_FACTOR = "oil/mean-barus",
    title: "Mean thickening of an oil along a line",
    equation: "x / (1 − e^−x),  x = α Δp",
    validity: "Exact for laminar flow of a Barus oil from Δp down to no pressure in a line of one bore. With a back pressure multiply by exp(α p2) as well.",
    sources: [
        "own-derivation", "Hagen–Poiseuille integrated along the line with η = η0 exp(α p)", Own
    ],
    fn mean_barus_factor(
        coefficient: PerPressure, "α", "pressure coefficient of the viscosity", Range::NotNegative;
        drop: Pressure, "Δp", "pressure lost along the line", Range::NotNegative;
    ) -> Ratio, "factor", "mean viscosity over viscosity at no pressure" {
        let x = coefficient.per_pascal() * drop.pascals();
        // Both sides of the fraction vanish together.
        Ratio::from_fraction(if x == 0.0 { 1.0 } else { x / -libm::expm1(-x) })
    }
}

formula! {
    /// Pressure that an oil loses along a line, with its thickening under pressure followed along the line.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::oil::barus_drop;
    /// use oilway_units::{PerPressure, Pressure};
    ///
    /// // A line that would lose 100 bar if the oil stayed thin, with 50 bar at its far end.
    /// let drop = barus_drop(Pressure::from_bar(100.0), PerPressure::from_per_gigapascal(20.0), Pressure::from_bar(50.0));
    /// assert_eq!(format!("{:.2}", drop.unwrap().bar()), "124.89");
    /// ```
    BARUS_DROP = "oil/barus-drop",
    title: "Pressure drop of a line with the oil's thickening under pressure",
    equation: "Δp = −ln(1 − α Δp0 e^(α p2)) / α",
    validity: "Laminar flow of a Barus oil in a line of one bore and temperature. Without an answer where α Δp0 e^(α p2) reaches 1: the oil thickens faster than any pressure can push it.",
    sources: [
        "own-derivation", "dp/dx = (Δp0/L) e^(α p) integrated from the far end", Own
    ],
    fn barus_drop(
        thin_drop: Pressure, "Δp0", "drop at the viscosity of no pressure", Range::NotNegative;
        coefficient: PerPressure, "α", "pressure coefficient of the viscosity", Range::NotNegative;
        far_end: Pressure, "p2", "gauge pressure at the far end", Range::Any;
    ) -> Option<Pressure>, "Δp", "pressure lost along the line" {
        let alpha = coefficient.per_pascal();
        if alpha <= 0.0 {
            return Some(thin_drop);
        }
        let x = alpha * thin_drop.pascals() * libm::exp(alpha * far_end.pascals());
        (x < 1.0).then(|| Pressure::from_pascals(-libm::log1p(-x) / alpha))
    }
}

formula! {
    /// Viscosity of an oil under pressure by Roelands' law, which holds further than Barus'.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::oil::roelands_viscosity;
    /// use oilway_units::{Pressure, Ratio, Viscosity};
    ///
    /// let viscosity = roelands_viscosity(
    ///     Viscosity::from_pascal_seconds(0.1), Pressure::from_bar(200.0), Ratio::from_fraction(0.6),
    /// );
    /// assert_eq!(format!("{:.4}", viscosity.pascal_seconds()), "0.1556");
    /// ```
    ROELANDS_VISCOSITY = "oil/roelands",
    title: "Viscosity of an oil under pressure",
    equation: "η = η0 exp{ (ln η0 + 9.67) [ (1 + 5.1·10⁻⁹ p)^Z − 1 ] },  η0 in Pa·s, p in Pa",
    validity: "20 to 150 °C and to some 3000 bar as its authors claim; colder is an extrapolation. Z near 0.6 for mineral oils, 0.5 to 0.7 (from memory).",
    sources: [
        "roelands-1963", "range of the law", SecondHand;
        "stachowiak-batchelor", "chapter 2, form and constants", Seen
    ],
    fn roelands_viscosity(
        viscosity: Viscosity, "η0", "viscosity at the temperature and no pressure", Range::Positive;
        pressure: Pressure, "p", "gauge pressure", Range::NotNegative;
        exponent: Ratio, "Z", "pressure exponent of the oil", Range::Between(0.0, 2.0);
    ) -> Viscosity, "η", "viscosity under pressure" {
        let (eta, p, z) = (viscosity.pascal_seconds(), pressure.pascals(), exponent.fraction());
        let bracket = libm::expm1(z * libm::log1p(5.1e-9 * p));
        Viscosity::from_pascal_seconds(eta * libm::exp((libm::log(eta) + 9.67) * bracket))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn alpha(per_gigapascal: f64) -> PerPressure {
        PerPressure::from_per_gigapascal(per_gigapascal)
    }

    #[test]
    fn without_pressure_nothing_thickens() {
        assert_eq!(barus_factor(alpha(20.0), Pressure::ZERO).fraction(), 1.0);
        assert_eq!(mean_barus_factor(alpha(20.0), Pressure::ZERO).fraction(), 1.0);
        let eta = Viscosity::from_pascal_seconds(0.3);
        assert_eq!(roelands_viscosity(eta, Pressure::ZERO, Ratio::from_fraction(0.6)), eta);
    }

    #[test]
    fn the_mean_starts_as_half_of_the_thickening() {
        let factor = mean_barus_factor(alpha(20.0), Pressure::from_pascals(1.0)).fraction();
        assert!((factor - 1.0 - 1e-8).abs() < 1e-15);
    }

    #[test]
    fn the_mean_agrees_with_the_integrated_line() {
        // Second route: mean of 1/η over the pressure, by the midpoint rule.
        let (a, drop) = (30e-9, 4e7);
        let n = 10_000;
        let mean: f64 = (0..n).map(|i| (-a * drop * (f64::from(i) + 0.5) / f64::from(n)).exp()).sum::<f64>()
            / f64::from(n);
        let ours = mean_barus_factor(alpha(30.0), Pressure::from_pascals(drop)).fraction();
        assert!((ours * mean - 1.0).abs() < 1e-8);
    }

    #[test]
    fn the_drop_agrees_with_the_mean_thickening_of_the_line() {
        // Second route: Δp = Δp0 · e^(α p2) · x / (1 − e^−x), x = α Δp.
        for (thin, far) in [(1e5, 0.0), (1e7, 0.0), (1e7, 5e6), (2e7, 1e7)] {
            let drop =
                barus_drop(Pressure::from_pascals(thin), alpha(20.0), Pressure::from_pascals(far)).unwrap();
            let mean = mean_barus_factor(alpha(20.0), drop).fraction();
            let at_far_end = barus_factor(alpha(20.0), Pressure::from_pascals(far)).fraction();
            assert!((thin * at_far_end * mean / drop.pascals() - 1.0).abs() < 1e-12);
        }
    }

    #[test]
    fn an_oil_that_thickens_too_fast_cannot_be_pushed() {
        assert_eq!(barus_drop(Pressure::from_pascals(5e7), alpha(20.0), Pressure::ZERO), None);
        assert!(barus_drop(Pressure::from_pascals(4.99e7), alpha(20.0), Pressure::ZERO).is_some());
        assert_eq!(
            barus_drop(Pressure::from_bar(3.0), alpha(0.0), Pressure::from_bar(9.0)),
            Some(Pressure::from_bar(3.0))
        );
    }

    #[test]
    fn roelands_starts_with_the_barus_slope_that_belongs_to_it() {
        // α(p → 0) = 5.1e-9 Z (ln η0 + 9.67).
        let (eta, z, p) = (0.1_f64, 0.6, 10.0);
        let slope = 5.1e-9 * z * (eta.ln() + 9.67);
        let ours = roelands_viscosity(
            Viscosity::from_pascal_seconds(eta),
            Pressure::from_pascals(p),
            Ratio::from_fraction(z),
        );
        assert!(((ours.pascal_seconds() / eta - 1.0) / (slope * p) - 1.0).abs() < 1e-6);
    }
}
