//! Density of an oil against temperature, and the step from kinematic to dynamic viscosity.

use oilway_units::{Density, KinematicViscosity, Temperature, Viscosity};

use crate::{Range, formula};

/// Expansion constant of the lubricating-oil group, kg/m³ per degree Fahrenheit.
const K1: f64 = 0.348_78;
/// The standard's own limits on the density at 60 °F, kg/m³.
const LIGHTEST: f64 = 800.9;
const HEAVIEST: f64 = 1163.5;
/// 15 °C lies exactly one degree Fahrenheit below the 60 °F of the standard.
const REFERENCE_STEP: f64 = -1.0;

formula! {
    /// Density of a lubricating oil at any temperature, from its density at 15 °C.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::oil::oil_density;
    /// use oilway_units::{Density, Temperature};
    ///
    /// let density = oil_density(Density::from_kilograms_per_cubic_metre(880.0), Temperature::from_celsius(40.0));
    /// assert_eq!(density.map(|d| format!("{:.2}", d.kilograms_per_cubic_metre())).as_deref(), Some("864.23"));
    /// ```
    OIL_DENSITY = "oil/density",
    title: "Density of an oil at any temperature",
    equation: "ρ = ρ60 exp(−a ΔT (1 + 0.8 a ΔT)),  a = 0.34878 / ρ60,  ΔT = t − 60 °F;  ρ60 from ρ15 by the same law",
    validity: "Lubricating oils of 800.9 to 1163.5 kg/m³ at 60 °F, at no pressure; no answer outside. The rounding of the standard and its shift of temperature scale, below 0.01 %, are left out. Fluorinated and some ester oils are not of this group.",
    sources: [
        "astm-d1250", "lubricating-oil group", SecondHand
    ],
    fn oil_density(
        density_15: Density, "ρ15", "density at 15 °C", Range::Positive;
        temperature: Temperature, "t", "temperature asked for", Range::Positive;
    ) -> Option<Density>, "ρ", "density" {
        let rho_60 = at_60_fahrenheit(density_15.kilograms_per_cubic_metre());
        if !(LIGHTEST..=HEAVIEST).contains(&rho_60) {
            return None;
        }
        let shrink = correction(rho_60, temperature.fahrenheit() - 60.0);
        Some(Density::from_kilograms_per_cubic_metre(rho_60 * shrink))
    }
}

formula! {
    /// Dynamic viscosity, the one that costs pressure, from the kinematic one that data sheets print.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::oil::dynamic_viscosity;
    /// use oilway_units::{Density, KinematicViscosity};
    ///
    /// let viscosity = dynamic_viscosity(
    ///     KinematicViscosity::from_square_millimetres_per_second(68.0), Density::from_kilograms_per_cubic_metre(864.23),
    /// );
    /// assert_eq!(format!("{:.6}", viscosity.pascal_seconds()), "0.058768");
    /// ```
    DYNAMIC_VISCOSITY = "oil/dynamic-viscosity",
    title: "Dynamic viscosity from kinematic",
    equation: "η = ν ρ",
    validity: "Definition; both at the same temperature and pressure.",
    sources: [
        "own-derivation", "definition", Own
    ],
    fn dynamic_viscosity(
        kinematic: KinematicViscosity, "ν", "kinematic viscosity", Range::Positive;
        density: Density, "ρ", "density", Range::Positive;
    ) -> Viscosity, "η", "dynamic viscosity" {
        kinematic * density
    }
}

/// The correction of volume, with the difference in degrees Fahrenheit.
fn correction(rho_60: f64, difference: f64) -> f64 {
    let x = K1 / rho_60 * difference;
    libm::exp(-x * (1.0 + 0.8 * x))
}

/// Each turn shrinks the error by 4·10⁻⁴, so four exhaust the digits of a double.
fn at_60_fahrenheit(rho_15: f64) -> f64 {
    let mut rho_60 = rho_15;
    for _ in 0..5 {
        rho_60 = rho_15 / correction(rho_60, REFERENCE_STEP);
    }
    rho_60
}

#[cfg(test)]
mod tests {
    use super::*;

    fn density(rho_15: f64, celsius: f64) -> Option<f64> {
        oil_density(Density::from_kilograms_per_cubic_metre(rho_15), Temperature::from_celsius(celsius))
            .map(Density::kilograms_per_cubic_metre)
    }

    #[test]
    fn at_15_degrees_nothing_changes() {
        for rho in [810.0, 880.0, 1100.0] {
            assert!((density(rho, 15.0).expect("of the group") / rho - 1.0).abs() < 1e-15);
        }
    }

    #[test]
    fn the_expansion_at_15_degrees_is_the_constant_over_the_density() {
        // Second route, from the notes on the standard: 0.34878 · 1.8 / ρ15 per kelvin.
        let (warm, cold) =
            (density(880.0, 15.5).expect("of the group"), density(880.0, 14.5).expect("of the group"));
        let expansion = (cold - warm) / 880.0;
        assert!((expansion / (0.6278 / 880.0) - 1.0).abs() < 2e-3, "{expansion}");
    }

    #[test]
    fn liquids_of_another_group_get_no_answer() {
        // 800.9 kg/m³ at 60 °F are 801.2 at 15 °C.
        assert_eq!(density(801.0, 40.0), None);
        assert!(density(801.5, 40.0).is_some());
        assert_eq!(density(1900.0, 40.0), None);
    }

    #[test]
    fn dynamic_is_kinematic_times_density() {
        let ours = dynamic_viscosity(
            KinematicViscosity::from_square_millimetres_per_second(100.0),
            Density::from_kilograms_per_cubic_metre(900.0),
        );
        assert!((ours.pascal_seconds() - 0.09).abs() < 1e-16);
    }
}
