//! How temperature moves the flow curve of a grease.

use oilway_units::{Consistency, Pressure, Ratio, Temperature, TemperatureDifference, Viscosity};

use crate::{Range, formula};

/// The temperature at which data sheets state a grease, °C.
const STATED_AT: f64 = 25.0;

formula! {
    /// Yield stress of a grease at any temperature, from that at 25 °C.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::grease::yield_stress_at;
    /// use oilway_units::{Pressure, Temperature, TemperatureDifference};
    ///
    /// let cold = yield_stress_at(
    ///     Pressure::from_pascals(650.0), Temperature::from_celsius(-20.0), TemperatureDifference::from_kelvins(20.0),
    /// );
    /// assert_eq!(format!("{:.0}", cold.pascals()), "3092");
    /// ```
    YIELD_STRESS_AT = "grease/yield-stress",
    title: "Yield stress of a grease at any temperature",
    equation: "τ0(T) = τ0(25 °C) · 2^((25 °C − T) / b)",
    validity: "The exponential form is read; the step b that halves the stress is from memory: 20 K, between 15 and 40 K by grease. Measure where a cold line decides. Not near the dropping point.",
    sources: [
        "cyriac-2015", "abstract: exponential in temperature", Seen;
        "lugt", "halving step", Memory
    ],
    fn yield_stress_at(
        yield_stress_25: Pressure, "τ0(25 °C)", "yield stress at 25 °C", Range::NotNegative;
        temperature: Temperature, "T", "temperature asked for", Range::Positive;
        halving: TemperatureDifference, "b", "warming that halves the yield stress", Range::Positive;
    ) -> Pressure, "τ0", "yield stress" {
        let steps = (STATED_AT - temperature.celsius()) / halving.kelvins();
        yield_stress_25 * libm::exp2(steps)
    }
}

formula! {
    /// Consistency factor of a grease at any temperature: it follows the viscosity of the base oil.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::grease::consistency_at;
    /// use oilway_units::{Consistency, Viscosity};
    ///
    /// let cold = consistency_at(
    ///     Consistency::from_pascal_seconds_to_the_n(20.0), Viscosity::from_pascal_seconds(4.5), Viscosity::from_pascal_seconds(0.45),
    /// );
    /// assert_eq!(cold.pascal_seconds_to_the_n(), 200.0);
    /// ```
    CONSISTENCY_AT = "grease/consistency",
    title: "Consistency factor of a grease at any temperature",
    equation: "K(T) = K(25 °C) · η(T) / η(25 °C)",
    validity: "Judged; supported at the cold end, where the base oil rules the pressure drop, and an upper bound at the warm end. The index n stays. Pressure may be put into η(T).",
    sources: [
        "hoshino", "summary: at low temperature the drop follows the base oil", SecondHand;
        "own-derivation", "proportional law, judged", Own
    ],
    fn consistency_at(
        consistency_25: Consistency, "K(25 °C)", "consistency factor at 25 °C", Range::Positive;
        base_oil: Viscosity, "η(T)", "viscosity of the base oil at the temperature", Range::Positive;
        base_oil_25: Viscosity, "η(25 °C)", "viscosity of the base oil at 25 °C", Range::Positive;
    ) -> Consistency, "K", "consistency factor" {
        consistency_25 * (base_oil / base_oil_25)
    }
}

formula! {
    /// Yield stress of a grease that has rested.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::grease::rested_yield;
    /// use oilway_units::{Pressure, Ratio};
    ///
    /// let rested = rested_yield(Pressure::from_pascals(240.0), Ratio::from_fraction(1.5));
    /// assert_eq!(rested.pascals(), 360.0);
    /// ```
    RESTED_YIELD = "grease/rested-yield",
    title: "Yield stress of a grease after rest",
    equation: "τ0r = x τ0",
    validity: "x between 1 and 2, usually 1.5, is judged: grease builds up again while it stands, by how much in a line was not found. An oil has nothing to build up.",
    sources: [
        "own-derivation", "factor on the yield stress in motion, judged", Own
    ],
    fn rested_yield(
        yield_stress: Pressure, "τ0", "yield stress in motion", Range::NotNegative;
        rest_factor: Ratio, "x", "yield stress after rest over yield stress in motion", Range::NotNegative;
    ) -> Pressure, "τ0r", "yield stress after rest" {
        yield_stress * rest_factor.fraction()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(celsius: f64, halving: f64) -> f64 {
        yield_stress_at(
            Pressure::from_pascals(500.0),
            Temperature::from_celsius(celsius),
            TemperatureDifference::from_kelvins(halving),
        )
        .pascals()
    }

    #[test]
    fn at_25_degrees_the_sheet_holds() {
        assert_eq!(at(25.0, 20.0), 500.0);
        let eta = Viscosity::from_pascal_seconds(0.3);
        let k = Consistency::from_pascal_seconds_to_the_n(12.0);
        assert_eq!(consistency_at(k, eta, eta), k);
    }

    #[test]
    fn every_step_of_warming_halves_the_yield_stress() {
        assert!((at(45.0, 20.0) / at(25.0, 20.0) - 0.5).abs() < 1e-14);
        assert!((at(-15.0, 40.0) / at(25.0, 40.0) - 2.0).abs() < 1e-14);
        // Second route: e to the power of a slope of ln 2 over b.
        let second = 500.0 * f64::exp(core::f64::consts::LN_2 / 15.0 * 55.0);
        assert!((at(-30.0, 15.0) / second - 1.0).abs() < 1e-12);
    }
}
