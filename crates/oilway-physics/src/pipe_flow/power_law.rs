//! The power-law fluid: a grease so soft, or so fast, that its yield stress no longer counts.

use core::f64::consts::PI;

use oilway_units::{Consistency, Flow, Length, Pressure, Ratio};

use crate::{Range, formula};

formula! {
    /// Flow of a power-law fluid through a round line under a known pressure drop.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::power_law_flow;
    /// use oilway_units::{Consistency, Length, Pressure, Ratio};
    ///
    /// let flow = power_law_flow(
    ///     Length::from_millimetres(8.0), Length::from_metres(5.0), Pressure::from_bar(5.0),
    ///     Consistency::from_pascal_seconds_to_the_n(20.0), Ratio::from_fraction(0.6),
    /// );
    /// assert_eq!(format!("{:.1}", flow.cubic_centimetres_per_minute()), "120.0");
    /// ```
    POWER_LAW_FLOW = "pipe-flow/power-law",
    title: "Flow of a power-law fluid through a round line",
    equation: "Q = π R³ n / (3n + 1) · (τw / K)^(1/n);  R = D / 2,  τw = Δp D / (4 L)",
    validity: "Exact for steady, laminar, isothermal flow without slip at the wall, far from the inlet. Grease has a yield stress as well; without it the pressure to start is missed.",
    sources: [
        "darby", "eqs. 6-42 to 6-44", Seen;
        "chhabra-richardson", "eq. 3.5", Memory
    ],
    fn power_law_flow(
        bore: Length, "D", "inner diameter of the line", Range::Positive;
        length: Length, "L", "length of the line", Range::Positive;
        drop: Pressure, "Δp", "pressure lost along the line", Range::NotNegative;
        consistency: Consistency, "K", "stress at a shear rate of one per second", Range::Positive;
        index: Ratio, "n", "flow index: below one the fluid thins with shear", Range::Positive;
    ) -> Flow, "Q", "volume flow" {
        let (d, l, dp) = (bore.metres(), length.metres(), drop.pascals());
        let (k, n) = (consistency.pascal_seconds_to_the_n(), index.fraction());
        if dp <= 0.0 {
            return Flow::ZERO;
        }
        let (r, tau_w) = (0.5 * d, dp * d / (4.0 * l));
        let flow = PI * r * r * r * n / (3.0 * n + 1.0) * libm::pow(tau_w / k, 1.0 / n);
        Flow::from_cubic_metres_per_second(flow)
    }
}

#[cfg(test)]
mod tests {
    use oilway_units::Viscosity;

    use super::*;
    use crate::pipe_flow::newtonian_flow;

    const BORE: Length = Length::from_metres(0.006);
    const LENGTH: Length = Length::from_metres(12.0);

    fn flow(bar: f64, consistency: f64, index: f64) -> f64 {
        let drop = Pressure::from_bar(bar);
        let consistency = Consistency::from_pascal_seconds_to_the_n(consistency);
        power_law_flow(BORE, LENGTH, drop, consistency, Ratio::from_fraction(index)).cubic_metres_per_second()
    }

    #[test]
    fn an_index_of_one_gives_hagen_poiseuille() {
        let oil = newtonian_flow(BORE, LENGTH, Pressure::from_bar(7.0), Viscosity::from_pascal_seconds(1.3));
        assert!((flow(7.0, 1.3, 1.0) / oil.cubic_metres_per_second() - 1.0).abs() < 1e-14);
    }

    #[test]
    fn no_pressure_moves_nothing() {
        assert_eq!(flow(0.0, 5.0, 0.7), 0.0);
        assert!(flow(1e-6, 5.0, 0.7) > 0.0);
    }

    #[test]
    fn doubling_the_flow_costs_two_to_the_n() {
        // By hand from the equation: with n = 0.585 twice the flow costs 1.5 times the pressure.
        let n = 0.584_962_500_721_156;
        assert!((flow(15.0, 5.0, n) / flow(10.0, 5.0, n) - 2.0).abs() < 1e-12);
    }

    #[test]
    fn agrees_with_the_integrated_profile() {
        let (r, n, k, tau_w) = (0.003_f64, 0.6_f64, 9.0_f64, 7e5 * 0.006 / 48.0);
        let speed = |x: f64| {
            let e = (n + 1.0) / n;
            n * r / (n + 1.0) * (tau_w / k).powf(1.0 / n) * (1.0 - (x / r).powf(e))
        };
        let (steps, h) = (20_000, r / 20_000.0);
        let rings = (0..steps).map(|i| (f64::from(i) + 0.5) * h);
        let total: f64 = rings.map(|x| 2.0 * PI * x * h * speed(x)).sum();
        assert!((flow(7.0, k, n) / total - 1.0).abs() < 1e-8);
    }
}
