//! Stiffness of an oil, and how little air it takes to soften it.

use oilway_units::{AbsolutePressure, KinematicViscosity, Pressure, Ratio, Temperature};

use crate::{Range, formula};

/// The pressure at which the fraction of air is stated.
const REFERENCE: f64 = AbsolutePressure::STANDARD_ATMOSPHERE.pascals();

formula! {
    /// Isothermal secant bulk modulus of a mineral oil, estimated from its viscosity at 20 °C.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::oil::secant_modulus;
    /// use oilway_units::{KinematicViscosity, Pressure, Temperature};
    ///
    /// let modulus = secant_modulus(
    ///     KinematicViscosity::from_square_millimetres_per_second(100.0), Temperature::from_celsius(40.0), Pressure::from_bar(200.0),
    /// );
    /// assert_eq!(format!("{:.3}", modulus.megapascals() / 1000.0), "1.551");
    /// ```
    SECANT_MODULUS = "oil/secant-modulus",
    title: "Stiffness of a mineral oil",
    equation: "K = { [1.30 + 0.15 log ν20] · 10^(0.0023 (20 − t)) · 10⁴ + 5.6 p } bar,  ν20 in mm²/s, t in °C, p in bar",
    validity: "Mineral oils without air, slow changes (seconds and longer). An estimate within some 5 to 10 %; the formula is written from memory. Greases are taken as their base oil: no open measurement was found.",
    sources: [
        "hayward-1970", "isothermal secant modulus", Memory
    ],
    fn secant_modulus(
        viscosity_20: KinematicViscosity, "ν20", "viscosity at 20 °C and no pressure", Range::Positive;
        temperature: Temperature, "t", "temperature", Range::Positive;
        pressure: Pressure, "p", "gauge pressure", Range::NotNegative;
    ) -> Pressure, "K", "pressure over relative loss of volume" {
        let (nu, t, p) = (viscosity_20.square_millimetres_per_second(), temperature.celsius(), pressure.bar());
        let at_no_pressure = (1.30 + 0.15 * libm::log10(nu)) * libm::exp10(0.0023 * (20.0 - t)) * 1e4;
        Pressure::from_bar(at_no_pressure + 5.6 * p)
    }
}

formula! {
    /// Tangent bulk modulus of a lubricant that holds free air.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::oil::modulus_with_air;
    /// use oilway_units::{Pressure, Ratio};
    ///
    /// // Two percent of air at atmosphere soften an oil to a tenth at 5 bar, and hardly at 200 bar.
    /// let modulus = |bar| modulus_with_air(Pressure::from_megapascals(1600.0), Ratio::from_percent(2.0), Pressure::from_bar(bar));
    /// assert_eq!(format!("{:.1}", modulus(5.0).megapascals()), "158.1");
    /// assert_eq!(format!("{:.0}", modulus(200.0).megapascals()), "1587");
    /// ```
    MODULUS_WITH_AIR = "oil/modulus-with-air",
    title: "Stiffness of a lubricant with air in it",
    equation: "K = (A + B) / (A/Kl + B/p),  A = (1 − a0) e^(−(p − p0)/Kl),  B = a0 p0 / p,  p absolute, p0 = 1.01325 bar",
    validity: "Slow changes, the air at the temperature of the lubricant, none of it dissolving: the soft side. Only a measurement settles the fraction of air; 1 to 5 % by volume is usual for grease (judged).",
    sources: [
        "merritt-1967", "chapter 1", Memory;
        "own-derivation", "volume balance written without linearising", Own
    ],
    fn modulus_with_air(
        modulus: Pressure, "Kl", "modulus of the lubricant without air", Range::Positive;
        air_fraction: Ratio, "a0", "share of free air in the volume, at atmosphere", Range::Between(0.0, 1.0);
        pressure: Pressure, "p", "gauge pressure", Range::NotNegative;
    ) -> Pressure, "K", "modulus of the mixture" {
        mixture(modulus, air_fraction, pressure, 1.0)
    }
}

formula! {
    /// Tangent bulk modulus of a lubricant with free air in a change too quick for the air to stay at temperature.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::oil::modulus_with_air_fast;
    /// use oilway_units::{Pressure, Ratio};
    ///
    /// let modulus = modulus_with_air_fast(
    ///     Pressure::from_megapascals(1600.0), Ratio::from_percent(2.0), Pressure::from_bar(5.0), Ratio::from_fraction(1.4),
    /// );
    /// assert_eq!(format!("{:.0}", modulus.megapascals()), "136");
    /// ```
    MODULUS_WITH_AIR_FAST = "oil/modulus-with-air-fast",
    title: "Stiffness of a lubricant with air in a quick change",
    equation: "K = (A + B) / (A/Kl + B/(N p)),  A = (1 − a0) e^(−(p − p0)/Kl),  B = a0 (p0/p)^(1/N),  p absolute, p0 = 1.01325 bar",
    validity: "As oil/modulus-with-air, the whole way from atmosphere being quick. N is 1 for a change of seconds and longer, 1.4 for one without exchange of heat.",
    sources: [
        "merritt-1967", "chapter 1", Memory;
        "own-derivation", "volume balance written without linearising", Own
    ],
    fn modulus_with_air_fast(
        modulus: Pressure, "Kl", "modulus of the lubricant without air", Range::Positive;
        air_fraction: Ratio, "a0", "share of free air in the volume, at atmosphere", Range::Between(0.0, 1.0);
        pressure: Pressure, "p", "gauge pressure", Range::NotNegative;
        gas_exponent: Ratio, "N", "polytropic exponent of the air", Range::Between(1.0, 1.67);
    ) -> Pressure, "K", "modulus of the mixture" {
        mixture(modulus, air_fraction, pressure, gas_exponent.fraction())
    }
}

fn mixture(modulus: Pressure, air_fraction: Ratio, pressure: Pressure, exponent: f64) -> Pressure {
    let (k, a0) = (modulus.pascals(), air_fraction.fraction());
    let p = pressure.pascals() + REFERENCE;
    let liquid = (1.0 - a0) * libm::exp(-pressure.pascals() / k);
    let air = a0 * libm::pow(REFERENCE / p, 1.0 / exponent);
    Pressure::from_pascals((liquid + air) / (liquid / k + air / (exponent * p)))
}

formula! {
    /// Share of its volume that a lubricant with free air loses on the way to a pressure: what the pump must add.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::oil::compressed_fraction;
    /// use oilway_units::{Pressure, Ratio};
    ///
    /// let lost = compressed_fraction(Pressure::from_megapascals(1600.0), Ratio::from_percent(2.0), Pressure::from_bar(200.0));
    /// assert_eq!(format!("{:.2}", lost.percent()), "3.21");
    /// ```
    COMPRESSED_FRACTION = "oil/compressed-fraction",
    title: "Volume that pressing a lubricant costs",
    equation: "ΔV/V0 = (1 − a0)(1 − e^(−p/Kl)) + a0 p / (p + p0),  p gauge, p0 = 1.01325 bar",
    validity: "As oil/modulus-with-air, summed from atmosphere to the pressure. Add the growth of the line: pipe-flow/wall-modulus.",
    sources: [
        "merritt-1967", "chapter 1", Memory;
        "own-derivation", "volume balance written without linearising", Own
    ],
    fn compressed_fraction(
        modulus: Pressure, "Kl", "modulus of the lubricant without air", Range::Positive;
        air_fraction: Ratio, "a0", "share of free air in the volume, at atmosphere", Range::Between(0.0, 1.0);
        pressure: Pressure, "p", "gauge pressure", Range::NotNegative;
    ) -> Ratio, "ΔV/V0", "loss of volume over volume at atmosphere" {
        let (k, a0, p) = (modulus.pascals(), air_fraction.fraction(), pressure.pascals());
        // Each term by itself: taking the remaining volume from one would cancel at low pressure.
        Ratio::from_fraction((1.0 - a0) * -libm::expm1(-p / k) + a0 * p / (p + REFERENCE))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const OIL: Pressure = Pressure::from_megapascals(1600.0);

    fn percent(value: f64) -> Ratio {
        Ratio::from_percent(value)
    }

    #[test]
    fn without_air_the_oil_keeps_its_own_stiffness() {
        for bar in [0.0, 10.0, 400.0] {
            let with_none = modulus_with_air(OIL, Ratio::ZERO, Pressure::from_bar(bar));
            assert!((with_none / OIL - 1.0).abs() < 1e-15);
        }
        assert_eq!(compressed_fraction(OIL, percent(2.0), Pressure::ZERO), Ratio::ZERO);
    }

    #[test]
    fn pure_air_is_as_stiff_as_its_own_pressure() {
        let air = modulus_with_air(OIL, percent(100.0), Pressure::from_bar(5.0));
        assert!((air.pascals() / (5e5 + REFERENCE) - 1.0).abs() < 1e-14);
    }

    #[test]
    fn the_modulus_is_the_slope_of_the_compression() {
        // Second route: K = −V dp/dV by a central difference of the lost volume.
        for bar in [0.5, 5.0, 50.0, 300.0] {
            let (p, h) = (bar * 1e5, 50.0);
            let lost = |pascals: f64| {
                compressed_fraction(OIL, percent(3.0), Pressure::from_pascals(pascals)).fraction()
            };
            let slope = (lost(p + h) - lost(p - h)) / (2.0 * h);
            let second = (1.0 - lost(p)) / slope;
            let ours = modulus_with_air(OIL, percent(3.0), Pressure::from_pascals(p)).pascals();
            assert!((ours / second - 1.0).abs() < 1e-6, "{bar} {ours} {second}");
        }
    }

    #[test]
    fn warmth_softens_and_pressure_stiffens() {
        let modulus = |celsius: f64, bar: f64| {
            let nu = KinematicViscosity::from_square_millimetres_per_second(100.0);
            secant_modulus(nu, Temperature::from_celsius(celsius), Pressure::from_bar(bar))
        };
        assert!((modulus(20.0, 0.0).megapascals() - 1600.0).abs() < 1e-9);
        assert!(modulus(80.0, 0.0) < modulus(20.0, 0.0));
        assert!(modulus(20.0, 400.0) > modulus(20.0, 0.0));
    }
}
