//! The Herschel–Bulkley fluid, the law of every grease line: a yield stress first, then thinning with shear.

use core::f64::consts::PI;

use oilway_units::{Consistency, Flow, Length, Pressure, Ratio, Speed};

use crate::{Range, formula};

formula! {
    /// Flow of a Herschel–Bulkley fluid (grease) through a round line under a known pressure drop.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::herschel_bulkley_flow;
    /// use oilway_units::{Consistency, Length, Pressure, Ratio};
    ///
    /// // 5 m of 4 mm bore at 80 bar, a grease of the NLGI 2 kind.
    /// let flow = herschel_bulkley_flow(
    ///     Length::from_millimetres(4.0), Length::from_metres(5.0), Pressure::from_bar(80.0),
    ///     Pressure::from_pascals(650.0), Consistency::from_pascal_seconds_to_the_n(20.6), Ratio::from_fraction(0.605),
    /// );
    /// assert_eq!(format!("{:.1}", flow.cubic_centimetres_per_minute()), "136.0");
    /// ```
    HERSCHEL_BULKLEY_FLOW = "pipe-flow/herschel-bulkley",
    title: "Flow of a grease through a round line",
    equation: "Q = π R³ n (τw/K)^(1/n) (1−φ)^((n+1)/n) [(1−φ)²/(3n+1) + 2φ(1−φ)/(2n+1) + φ²/(n+1)] if φ < 1, else 0;  φ = τ0/τw,  τw = Δp D/(4 L),  R = D/2",
    validity: "Exact for steady, laminar, isothermal flow without slip at the wall, far from the inlet. Real grease slips a little and holds air: both lower the pressure, so the formula errs to the safe side. Laminar is the caller's to check; a grease line always is.",
    sources: [
        "chhabra-richardson", "eq. 3.14 and its group", Memory;
        "own-derivation", "re-derived, checked against numerical integration and 40-digit arithmetic", Own
    ],
    fn herschel_bulkley_flow(
        bore: Length, "D", "inner diameter of the line", Range::Positive;
        length: Length, "L", "length of the line", Range::Positive;
        drop: Pressure, "Δp", "pressure lost along the line", Range::NotNegative;
        yield_stress: Pressure, "τ0", "stress below which nothing moves", Range::NotNegative;
        consistency: Consistency, "K", "stress above the yield stress at a shear rate of one per second", Range::Positive;
        index: Ratio, "n", "flow index: below one the grease thins with shear", Range::Positive;
    ) -> Flow, "Q", "volume flow" {
        let (d, l, dp) = (bore.metres(), length.metres(), drop.pascals());
        let (tau_0, k, n) = (yield_stress.pascals(), consistency.pascal_seconds_to_the_n(), index.fraction());

        // What lies above the yield limit, taken as a difference of pressures, so that nothing cancels near it;
        // the limit is the very expression of `start_pressure`, so that exactly that pressure moves nothing.
        let above = dp - 4.0 * tau_0 * l / d;
        if above <= 0.0 {
            return Flow::ZERO;
        }
        let (r, moving) = (0.5 * d, above / dp);
        // (τw/K)^(1/n) (1−φ)^((n+1)/n) = (s/K)^(1/n) (1−φ) with s = τw − τ0: one power instead of two.
        let s = above * d / (4.0 * l);
        let flow = PI * r * r * r * n * libm::pow(s / k, 1.0 / n) * profile(n, moving, 1.0 - moving);
        Flow::from_cubic_metres_per_second(flow)
    }
}

formula! {
    /// Speed of the plug in the middle of a grease line: the first sign of a new grease arrives with it.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::centre_speed;
    /// use oilway_units::{Consistency, Length, Pressure, Ratio};
    ///
    /// let speed = centre_speed(
    ///     Length::from_millimetres(4.0), Length::from_metres(5.0), Pressure::from_bar(80.0),
    ///     Pressure::from_pascals(650.0), Consistency::from_pascal_seconds_to_the_n(20.6), Ratio::from_fraction(0.605),
    /// );
    /// assert_eq!(format!("{:.2}", speed.metres_per_second()), "0.25");
    /// ```
    CENTRE_SPEED = "pipe-flow/centre-speed",
    title: "Speed in the middle of a grease line",
    equation: "u = n R / (n+1) · (τw/K)^(1/n) (1−φ)^((n+1)/n) if φ < 1, else 0;  φ = τ0/τw,  τw = Δp D/(4 L),  R = D/2",
    validity: "As pipe-flow/herschel-bulkley. For an oil, τ0 = 0 and n = 1, it is twice the mean speed.",
    sources: [
        "berk", "eq. 2.30 at the plug", Seen;
        "chhabra-richardson", "eq. 3.14 and its group", Memory
    ],
    fn centre_speed(
        bore: Length, "D", "inner diameter of the line", Range::Positive;
        length: Length, "L", "length of the line", Range::Positive;
        drop: Pressure, "Δp", "pressure lost along the line", Range::NotNegative;
        yield_stress: Pressure, "τ0", "stress below which nothing moves", Range::NotNegative;
        consistency: Consistency, "K", "stress above the yield stress at a shear rate of one per second", Range::Positive;
        index: Ratio, "n", "flow index: below one the grease thins with shear", Range::Positive;
    ) -> Speed, "u", "speed of the plug" {
        let (d, l, dp) = (bore.metres(), length.metres(), drop.pascals());
        let (tau_0, k, n) = (yield_stress.pascals(), consistency.pascal_seconds_to_the_n(), index.fraction());
        let above = dp - 4.0 * tau_0 * l / d;
        if above <= 0.0 {
            return Speed::ZERO;
        }
        let s = above * d / (4.0 * l);
        Speed::from_metres_per_second(0.5 * n * d / (n + 1.0) * libm::pow(s / k, 1.0 / n) * (above / dp))
    }
}

/// (1−φ) times the square bracket of the flow equation; `moving` is 1−φ and `plug` is φ.
pub(super) fn profile(n: f64, moving: f64, plug: f64) -> f64 {
    let bracket =
        moving * moving / (3.0 * n + 1.0) + 2.0 * plug * moving / (2.0 * n + 1.0) + plug * plug / (n + 1.0);
    moving * bracket
}

/// The derivative of [`profile`] over `moving`, collected so that every term is positive.
pub(super) fn profile_slope(n: f64, moving: f64, plug: f64) -> f64 {
    let (a, b, c) = (3.0 * n + 1.0, 2.0 * n + 1.0, n + 1.0);
    moving * moving / (a * b) + 2.0 * plug * moving / (b * c) + plug * plug / c
}

/// The second derivative of [`profile`] over `moving`.
pub(super) fn profile_bend(n: f64, moving: f64, plug: f64) -> f64 {
    let (a, b, c) = (3.0 * n + 1.0, 2.0 * n + 1.0, n + 1.0);
    2.0 * (moving / (a * b) + (plug - moving) / (b * c) - plug / c)
}

#[cfg(test)]
mod tests {
    use oilway_units::Viscosity;

    use super::*;
    use crate::pipe_flow::{bingham_flow, power_law_flow};

    const BORE: Length = Length::from_metres(0.008);
    const LENGTH: Length = Length::from_metres(5.0);

    fn flow(pascals: f64, tau_0: f64, k: f64, n: f64) -> f64 {
        let drop = Pressure::from_pascals(pascals);
        let (tau_0, k) = (Pressure::from_pascals(tau_0), Consistency::from_pascal_seconds_to_the_n(k));
        herschel_bulkley_flow(BORE, LENGTH, drop, tau_0, k, Ratio::from_fraction(n)).cubic_metres_per_second()
    }

    #[test]
    fn an_index_of_one_gives_the_bingham_plastic() {
        for tau_0 in [0.0, 1.0, 150.0, 199.9] {
            let bingham = bingham_flow(
                BORE,
                LENGTH,
                Pressure::from_bar(5.0),
                Pressure::from_pascals(tau_0),
                Viscosity::from_pascal_seconds(2.0),
            );
            let ours = flow(5e5, tau_0, 2.0, 1.0);
            assert!((ours / bingham.cubic_metres_per_second() - 1.0).abs() < 1e-11, "{tau_0}");
        }
    }

    #[test]
    fn no_yield_stress_gives_the_power_law() {
        for n in [0.3, 0.605, 1.0, 1.4] {
            let (k, index) = (Consistency::from_pascal_seconds_to_the_n(20.0), Ratio::from_fraction(n));
            let power = power_law_flow(BORE, LENGTH, Pressure::from_bar(5.0), k, index);
            assert!((flow(5e5, 0.0, 20.0, n) / power.cubic_metres_per_second() - 1.0).abs() < 1e-14);
        }
    }

    #[test]
    fn nothing_moves_at_the_yield_limit_and_something_does_just_above() {
        let start = 4.0 * 200.0 * 5.0 / 0.008;
        assert_eq!(flow(start, 200.0, 20.0, 0.6), 0.0);
        assert_eq!(flow(0.0, 0.0, 20.0, 0.6), 0.0);
        assert!(flow(start * (1.0 + 1e-9), 200.0, 20.0, 0.6) > 0.0);
    }

    #[test]
    fn just_above_the_yield_limit_the_published_asymptote_holds() {
        // φ → 1: Q → π R³ n/(n+1) (τw/K)^(1/n) (1−φ)^((n+1)/n).
        let (n, k, tau_0, moving) = (0.6, 20.0, 200.0, 1e-6);
        let tau_w = tau_0 / (1.0 - moving);
        let limit = PI * 0.004_f64.powi(3) * n / (n + 1.0)
            * libm::pow(tau_w / k, 1.0 / n)
            * libm::pow(moving, (n + 1.0) / n);
        let ours = flow(4.0 * tau_w * 5.0 / 0.008, tau_0, k, n);
        assert!((ours / limit - 1.0).abs() < 1e-5, "{ours} {limit}");
    }

    #[test]
    fn agrees_with_the_integrated_profile() {
        // Second route: the shear rate over the radius (Rabinowitsch), by the midpoint rule in τ.
        let (tau_0, k, n, tau_w) = (120.0, 9.0, 0.7, 200.0);
        let steps = 40_000;
        let h = (tau_w - tau_0) / f64::from(steps);
        let stresses = (0..steps).map(|i| tau_0 + (f64::from(i) + 0.5) * h);
        let integral: f64 = stresses.map(|t| t * t * ((t - tau_0) / k).powf(1.0 / n) * h).sum();
        let second = PI * 0.004_f64.powi(3) / (tau_w * tau_w * tau_w) * integral;
        assert!((flow(5e5, tau_0, k, n) / second - 1.0).abs() < 1e-7);
    }

    #[test]
    fn an_oil_runs_twice_as_fast_in_the_middle_and_a_power_law_as_its_index_says() {
        for n in [0.2, 0.6, 1.0] {
            let (drop, k) = (Pressure::from_bar(5.0), Consistency::from_pascal_seconds_to_the_n(3.0));
            let centre = centre_speed(BORE, LENGTH, drop, Pressure::ZERO, k, Ratio::from_fraction(n));
            let mean = flow(5e5, 0.0, 3.0, n) / (PI * 0.004 * 0.004);
            // u/V = (3n+1)/(n+1): coulson-richardson-1, solutions 3.38 (seen).
            assert!((centre.metres_per_second() / mean / ((3.0 * n + 1.0) / (n + 1.0)) - 1.0).abs() < 1e-13);
        }
    }

    #[test]
    fn the_middle_stands_still_at_the_yield_limit() {
        let k = Consistency::from_pascal_seconds_to_the_n(3.0);
        let tau_0 = Pressure::from_pascals(200.0);
        let speed =
            |bar| centre_speed(BORE, LENGTH, Pressure::from_bar(bar), tau_0, k, Ratio::from_fraction(0.6));
        assert_eq!(speed(5.0), Speed::ZERO);
        assert!(speed(5.01) > Speed::ZERO);
    }

    #[test]
    fn slope_and_bend_of_the_profile_are_its_derivatives() {
        for n in [0.3, 0.6, 1.0, 1.5] {
            for moving in [0.05, 0.5, 0.95] {
                let h = 1e-6;
                let (up, down) =
                    (profile(n, moving + h, 1.0 - moving - h), profile(n, moving - h, 1.0 - moving + h));
                let slope = profile_slope(n, moving, 1.0 - moving);
                assert!(((up - down) / (2.0 * h) / slope - 1.0).abs() < 1e-8, "{n} {moving}");
                let slope_at = |m: f64| profile_slope(n, m, 1.0 - m);
                let second = (slope_at(moving + h) - slope_at(moving - h)) / (2.0 * h);
                let bend = profile_bend(n, moving, 1.0 - moving);
                assert!((second - bend).abs() < 1e-8, "{n} {moving} {second} {bend}");
            }
        }
    }
}
