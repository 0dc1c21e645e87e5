//! The flow curve itself, and the shear rates at the wall of a line.

use core::f64::consts::PI;

use oilway_units::{Consistency, Flow, Length, Pressure, Ratio, ShearRate};

use crate::{Range, formula};

formula! {
    /// Stress in a grease that is sheared at a known rate.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::grease::herschel_bulkley_stress;
    /// use oilway_units::{Consistency, Pressure, Ratio, ShearRate};
    ///
    /// let stress = herschel_bulkley_stress(
    ///     ShearRate::from_per_second(100.0), Pressure::from_pascals(650.0),
    ///     Consistency::from_pascal_seconds_to_the_n(20.6), Ratio::from_fraction(0.605),
    /// );
    /// assert_eq!(format!("{:.0}", stress.pascals()), "984");
    /// ```
    HERSCHEL_BULKLEY_STRESS = "grease/stress",
    title: "Stress in a sheared grease",
    equation: "τ = τ0 + K γ̇^n",
    validity: "Steady shear inside the range of rates to which τ0, K and n were fitted. At rest the result is the stress that just does not shear the grease.",
    sources: [
        "chhabra-richardson", "Herschel–Bulkley model", Memory;
        "steffe", "2.2", Seen
    ],
    fn herschel_bulkley_stress(
        shear_rate: ShearRate, "γ̇", "rate of shear", Range::NotNegative;
        yield_stress: Pressure, "τ0", "stress below which nothing moves", Range::NotNegative;
        consistency: Consistency, "K", "stress above the yield stress at a shear rate of one per second", Range::Positive;
        index: Ratio, "n", "flow index", Range::Positive;
    ) -> Pressure, "τ", "shear stress" {
        let sheared = consistency.pascal_seconds_to_the_n() * libm::pow(shear_rate.per_second(), index.fraction());
        yield_stress + Pressure::from_pascals(sheared)
    }
}

formula! {
    /// Nominal shear rate at the wall of a round line: the one that apparent viscosities are plotted over.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::grease::nominal_shear_rate;
    /// use oilway_units::{Flow, Length};
    ///
    /// let rate = nominal_shear_rate(Length::from_millimetres(4.0), Flow::from_cubic_centimetres_per_minute(100.0));
    /// assert_eq!(format!("{:.0}", rate.per_second()), "265");
    /// ```
    NOMINAL_SHEAR_RATE = "grease/nominal-shear-rate",
    title: "Nominal shear rate at the wall of a line",
    equation: "S = 32 Q / (π D³)",
    validity: "The true rate for an oil; for a grease a label shared by all bores, since stress over S is one curve when nothing slips.",
    sources: [
        "astm-d1092", "Poiseuille's equation as the standard uses it", Seen;
        "neale-1995", "C14.3", Seen
    ],
    fn nominal_shear_rate(
        bore: Length, "D", "inner diameter of the line", Range::Positive;
        flow: Flow, "Q", "volume flow", Range::NotNegative;
    ) -> ShearRate, "S", "nominal shear rate" {
        let d = bore.metres();
        ShearRate::from_per_second(32.0 * flow.cubic_metres_per_second() / (PI * d * d * d))
    }
}

formula! {
    /// True shear rate at the wall of a round line, from the nominal one.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::grease::wall_shear_rate;
    /// use oilway_units::{Ratio, ShearRate};
    ///
    /// let rate = wall_shear_rate(ShearRate::from_per_second(265.0), Ratio::from_fraction(0.5));
    /// assert_eq!(rate.per_second(), 331.25);
    /// ```
    WALL_SHEAR_RATE = "grease/wall-shear-rate",
    title: "True shear rate at the wall of a line",
    equation: "γ̇w = S (3n′ + 1) / (4n′),  n′ = d ln τw / d ln S",
    validity: "Any fluid without slip. n′ is the local slope of the measured curve; it equals n only for a power law, and is smaller for a grease near its yield stress.",
    sources: [
        "steffe", "2.2 and eqs. 2.119 to 2.121, Rabinowitsch–Mooney", Seen
    ],
    fn wall_shear_rate(
        nominal: ShearRate, "S", "nominal shear rate", Range::NotNegative;
        index: Ratio, "n′", "slope of the wall stress over the nominal rate, both as logarithms", Range::Positive;
    ) -> ShearRate, "γ̇w", "shear rate at the wall" {
        let n = index.fraction();
        nominal * ((3.0 * n + 1.0) / (4.0 * n))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pipe_flow::{power_law_flow, wall_stress};

    #[test]
    fn at_rest_only_the_yield_stress_is_left() {
        let (tau_0, k) = (Pressure::from_pascals(300.0), Consistency::from_pascal_seconds_to_the_n(9.0));
        let stress = |rate| {
            herschel_bulkley_stress(ShearRate::from_per_second(rate), tau_0, k, Ratio::from_fraction(0.6))
        };
        assert_eq!(stress(0.0), tau_0);
        assert_eq!(stress(1.0).pascals(), 309.0);
    }

    #[test]
    fn an_oil_has_the_nominal_rate_at_its_wall() {
        let rate = ShearRate::from_per_second(40.0);
        assert_eq!(wall_shear_rate(rate, Ratio::from_fraction(1.0)), rate);
    }

    #[test]
    fn the_true_rate_at_the_wall_gives_back_the_wall_stress() {
        // Second route: flow of a power law, its nominal rate, the true rate, and the flow curve at that rate.
        let (bore, length) = (Length::from_millimetres(6.0), Length::from_metres(4.0));
        let (k, n) = (Consistency::from_pascal_seconds_to_the_n(14.0), Ratio::from_fraction(0.45));
        let drop = Pressure::from_bar(9.0);
        let rate = wall_shear_rate(nominal_shear_rate(bore, power_law_flow(bore, length, drop, k, n)), n);
        let stress = herschel_bulkley_stress(rate, Pressure::ZERO, k, n);
        assert!((stress / wall_stress(bore, length, drop) - 1.0).abs() < 1e-13);
    }
}
