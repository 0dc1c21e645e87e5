//! How much a closed tube grows under pressure: what a dose loses on its way.

use oilway_units::{Length, Pressure, Ratio};

use super::thick_wall::rings;
use crate::{Range, formula};

formula! {
    /// The growth of the content of a closed tube under pressure.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::strength::tube_growth;
    /// use oilway_units::{Length, Pressure, Ratio};
    ///
    /// // Steel 6 x 1 at 300 bar.
    /// let mm = Length::from_millimetres;
    /// let growth = tube_growth(
    ///     mm(6.0), mm(4.0), Pressure::from_bar(300.0), Pressure::from_megapascals(210_000.0), Ratio::from_fraction(0.3),
    /// );
    /// assert_eq!(growth.map(|g| format!("{:.2}", g.percent())), Some("0.08".to_string()));
    /// ```
    TUBE_GROWTH = "strength/tube-growth",
    title: "Growth of the content of a closed tube under pressure",
    equation: "ΔV/V = 2·εθ + εz;  εθ = (σθ − ν(σr + σz))/E,  εz = (σz − ν(σθ + σr))/E  at the bore",
    validity: "Elastic, small strains, closed ends free to move. Stresses at the bore: σθ = p(D²+d²)/(D²−d²), σr = −p, σz = p·d²/(D²−d²). Plastic creeps: take the long-time modulus. No answer without a wall.",
    sources: [
        "own-derivation", "strains of the elastic cylinder", Own;
        "lame", "stresses at the bore", SecondHand
    ],
    fn tube_growth(
        outside: Length, "D", "outside diameter", Range::Positive;
        bore: Length, "d", "bore", Range::Positive;
        pressure: Pressure, "p", "pressure inside", Range::NotNegative;
        young: Pressure, "E", "modulus of elasticity", Range::Positive;
        poisson: Ratio, "ν", "Poisson's ratio", Range::Between(0.0, 0.5);
    ) -> Option<Ratio>, "ΔV/V", "growth over the content at rest" {
        let (sum, difference) = rings(outside, bore)?;
        let nu = poisson.fraction();
        let (hoop, radial) = (sum / difference, -1.0);
        let axial = bore.metres() * bore.metres() / difference;
        let (round, along) = (hoop - nu * (radial + axial), axial - nu * (hoop + radial));
        Some(Ratio::from_fraction((pressure / young) * (2.0 * round + along)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn percent(outside: f64, bore: f64, bar: f64, young: f64, poisson: f64) -> f64 {
        let mm = Length::from_millimetres;
        let (p, e) = (Pressure::from_bar(bar), Pressure::from_megapascals(young));
        tube_growth(mm(outside), mm(bore), p, e, Ratio::from_fraction(poisson)).unwrap().percent()
    }

    #[test]
    fn a_thin_tube_grows_as_thin_shells_do() {
        // Second route: σθ = p d/(2t), σz = half of it, σr = 0: ΔV/V = p d/(2 t E)·(5/2 − 2ν).
        let (d, t, nu, share) = (1000.0, 0.01, 0.3, 1e6 / 210e9);
        let shell = 100.0 * share * d / (2.0 * t) * (2.5 - 2.0 * nu);
        assert!((percent(d + 2.0 * t, d, 10.0, 210_000.0, nu) / shell - 1.0).abs() < 1e-4);
    }

    #[test]
    fn the_three_tubes_of_the_reference_are_met() {
        // Own, computed for the reference, two figures; moduli from memory.
        assert!((percent(6.0, 4.0, 300.0, 210_000.0, 0.3) - 0.08).abs() < 0.005);
        assert!((percent(6.0, 4.0, 50.0, 120_000.0, 0.34) - 0.02).abs() < 0.005);
        assert!((percent(6.0, 4.0, 30.0, 400.0, 0.4) - 4.1).abs() < 0.05);
        assert!((percent(6.0, 4.0, 30.0, 1400.0, 0.4) - 1.2).abs() < 0.05);
    }

    #[test]
    fn without_pressure_nothing_grows_and_without_a_wall_nothing_is_known() {
        assert_eq!(percent(6.0, 4.0, 0.0, 210_000.0, 0.3), 0.0);
        let mm = Length::from_millimetres;
        let p = Pressure::from_bar(1.0);
        assert_eq!(tube_growth(mm(6.0), mm(6.0), p, p, Ratio::from_fraction(0.3)), None);
    }
}
