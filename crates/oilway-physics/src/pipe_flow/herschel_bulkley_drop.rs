//! The pressure that a known flow of grease costs: the inverse of the Herschel–Bulkley flow, and the innermost loop
//! of every network calculation.
//!
//! In u = ln s, with s = τw − τ0 the wall stress above the yield stress, the logarithm of the flow rises with a slope
//! between 1/n and 1/n + 1 and bends downward only (see the test). Newton's method started below the root therefore
//! climbs to it without ever passing it, and two closed forms give starts that are always below: the power law
//! (all stress above yield spent as if there were no plug) and the thin sheared layer (as if there were only plug).
//! Halley's correction of each step, which needs no further logarithm, halves the number of steps.

use core::f64::consts::PI;

use oilway_units::{Consistency, Flow, Length, Pressure, Ratio};

use super::herschel_bulkley::{profile, profile_bend, profile_slope};
use crate::{Range, formula};

formula! {
    /// Pressure that a known flow of grease loses along a round line.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::herschel_bulkley_drop;
    /// use oilway_units::{Consistency, Flow, Length, Pressure, Ratio};
    ///
    /// let grease = (
    ///     Pressure::from_pascals(650.0), Consistency::from_pascal_seconds_to_the_n(20.6), Ratio::from_fraction(0.605),
    /// );
    /// let (bore, length) = (Length::from_millimetres(4.0), Length::from_metres(5.0));
    /// let drop = |flow| herschel_bulkley_drop(bore, length, Flow::from_cubic_centimetres_per_minute(flow), grease.0, grease.1, grease.2);
    /// assert_eq!(format!("{:.1}", drop(136.0).bar()), "80.0");
    /// assert_eq!(format!("{:.1}", drop(0.0).bar()), "32.5"); // at rest: the pressure that the line holds back
    /// ```
    HERSCHEL_BULKLEY_DROP = "pipe-flow/herschel-bulkley-drop",
    title: "Pressure that a grease loses along a round line",
    equation: "Δp = 4 L (τ0 + s) / D,  s from Q = π R³ n (s/K)^(1/n) (1−φ) [(1−φ)²/(3n+1) + 2φ(1−φ)/(2n+1) + φ²/(n+1)],  φ = τ0/(τ0+s)",
    validity: "As pipe-flow/herschel-bulkley, of which it is the inverse. At no flow any pressure up to 4 τ0 L / D can stand; the result is then that limit.",
    sources: [
        "chhabra-richardson", "eq. 3.14 and its group", Memory;
        "own-derivation", "inverse by Newton's method in ln(τw − τ0)", Own
    ],
    fn herschel_bulkley_drop(
        bore: Length, "D", "inner diameter of the line", Range::Positive;
        length: Length, "L", "length of the line", Range::NotNegative;
        flow: Flow, "Q", "volume flow", Range::NotNegative;
        yield_stress: Pressure, "τ0", "stress below which nothing moves", Range::NotNegative;
        consistency: Consistency, "K", "stress above the yield stress at a shear rate of one per second", Range::Positive;
        index: Ratio, "n", "flow index: below one the grease thins with shear", Range::Positive;
    ) -> Pressure, "Δp", "pressure lost along the line; at no flow the most that can stand" {
        let (d, l, q) = (bore.metres(), length.metres(), flow.cubic_metres_per_second());
        let (tau_0, k, n) = (yield_stress.pascals(), consistency.pascal_seconds_to_the_n(), index.fraction());
        let (limit, r) = (4.0 * tau_0 * l / d, 0.5 * d);
        if q <= 0.0 {
            return Pressure::from_pascals(limit);
        }
        let (s, _) = stress_above_yield(q / (PI * r * r * r * n), tau_0, k, n);
        Pressure::from_pascals(limit + 4.0 * s * l / d)
    }
}

/// The error after a step is of the order of its cube: below this size, nothing that a double can hold is left.
const LAST_STEP: f64 = 1e-5;
/// Never reached: two or three steps are usual, four the most seen in the sweep of the tests.
const MOST_STEPS: usize = 50;

/// The wall stress above the yield stress at which (s/K)^(1/n) · profile equals `q`, and the steps that it took.
fn stress_above_yield(q: f64, tau_0: f64, k: f64, n: f64) -> (f64, usize) {
    let (ln_q, ln_k) = (libm::log(q), libm::log(k));
    let power_law = ln_k + n * (ln_q + libm::log(3.0 * n + 1.0));
    if tau_0 <= 0.0 {
        return (libm::exp(power_law), 0);
    }
    let thin_layer = (n * (ln_q + libm::log((n + 1.0) * tau_0)) + ln_k) / (n + 1.0);
    let mut u = power_law.max(thin_layer);
    for step in 1..=MOST_STEPS {
        let s = libm::exp(u);
        let (moving, plug) = (1.0 / (1.0 + tau_0 / s), tau_0 / (s + tau_0));
        let g = profile(n, moving, plug);
        let miss = ln_q - ((u - ln_k) / n + libm::log(g));
        // Slope and bend over u of ln g, by d moving / du = moving · plug.
        let (per, g_slope) = (moving * plug, profile_slope(n, moving, plug) / g);
        let slope = 1.0 / n + per * g_slope;
        let g_bend = profile_bend(n, moving, plug) / g - g_slope * g_slope;
        let bend = per * ((plug - moving) * g_slope + per * g_bend);
        let newton = miss / slope;
        // The bend is never upward, so the correction lengthens a climb; it may double it, not more.
        let move_by = newton / (1.0 + 0.5 * newton * bend / slope).max(0.5);
        if move_by.abs() <= LAST_STEP || move_by.is_nan() {
            // e^x to the digits of a double for so small a step.
            return (s * (1.0 + move_by * (1.0 + 0.5 * move_by)), step);
        }
        u += move_by;
    }
    (libm::exp(u), MOST_STEPS)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pipe_flow::{herschel_bulkley_flow, newtonian_drop, start_pressure};
    use oilway_units::Viscosity;

    const BORE: Length = Length::from_metres(0.006);
    const LENGTH: Length = Length::from_metres(10.0);

    fn drop(q: f64, tau_0: f64, k: f64, n: f64) -> Pressure {
        herschel_bulkley_drop(
            BORE,
            LENGTH,
            Flow::from_cubic_metres_per_second(q),
            Pressure::from_pascals(tau_0),
            Consistency::from_pascal_seconds_to_the_n(k),
            Ratio::from_fraction(n),
        )
    }

    #[test]
    fn no_flow_costs_what_the_line_holds_back() {
        let start = start_pressure(BORE, LENGTH, Pressure::from_pascals(500.0));
        assert_eq!(drop(0.0, 500.0, 20.0, 0.6), start);
        assert_eq!(drop(0.0, 0.0, 20.0, 0.6), Pressure::ZERO);
        assert!(drop(1e-12, 500.0, 20.0, 0.6) > start);
    }

    #[test]
    fn without_yield_stress_and_with_an_index_of_one_it_is_hagen_poiseuille() {
        let oil = newtonian_drop(
            BORE,
            LENGTH,
            Flow::from_cubic_metres_per_second(3e-6),
            Viscosity::from_pascal_seconds(1.7),
        );
        assert!((drop(3e-6, 0.0, 1.7, 1.0) / oil - 1.0).abs() < 1e-14);
        // A yield stress too small to matter must not disturb it either.
        assert!((drop(3e-6, 1e-12, 1.7, 1.0) / oil - 1.0).abs() < 1e-13);
    }

    #[test]
    fn undoes_the_flow_over_the_whole_field() {
        let mut most = 0;
        for n in [0.25, 0.4, 0.605, 0.8, 1.0, 1.3] {
            for tau_0 in [1e-3, 1.0, 50.0, 650.0, 5000.0] {
                for k in [0.05, 2.0, 20.6, 500.0] {
                    for exponent in -14..=-3 {
                        let q = libm::pow(10.0, f64::from(exponent));
                        let (s, steps) = stress_above_yield(q, tau_0, k, n);
                        let moving = s / (s + tau_0);
                        let back = libm::pow(s / k, 1.0 / n) * profile(n, moving, tau_0 / (s + tau_0));
                        assert!(
                            (back / q - 1.0).abs() < 2e-13 / n,
                            "n {n} tau_0 {tau_0} k {k} q {q}: {back}"
                        );
                        most = most.max(steps);
                    }
                }
            }
        }
        assert!(most <= 4, "{most} steps");
    }

    #[test]
    fn agrees_with_bisection_on_the_flow() {
        // Second route: bisect the flow formula between the yield limit and a pressure that is certainly enough.
        let (tau_0, k) = (Pressure::from_pascals(650.0), Consistency::from_pascal_seconds_to_the_n(20.6));
        let n = Ratio::from_fraction(0.605);
        let q = 2e-6;
        let (mut low, mut high) = (0.0, 1e9);
        for _ in 0..200 {
            let middle = 0.5 * (low + high);
            let flow = herschel_bulkley_flow(BORE, LENGTH, Pressure::from_pascals(middle), tau_0, k, n);
            if flow.cubic_metres_per_second() < q { low = middle } else { high = middle }
        }
        assert!((drop(q, 650.0, 20.6, 0.605).pascals() / low - 1.0).abs() < 1e-12);
    }

    #[test]
    fn the_logarithm_of_the_flow_bends_downward_only() {
        // What the method rests on: the slope over u = ln s never rises.
        for n in [0.05, 0.25, 0.6, 1.0, 2.0] {
            let slope = |u: f64| {
                let s = libm::exp(u);
                let (moving, plug) = (s / (s + 1.0), 1.0 / (s + 1.0));
                1.0 / n + moving * plug * profile_slope(n, moving, plug) / profile(n, moving, plug)
            };
            let slopes: Vec<f64> = (-200..200).map(|i| slope(f64::from(i) * 0.1)).collect();
            assert!(slopes.windows(2).all(|pair| pair[1] <= pair[0] + 1e-14), "n {n}");
        }
    }

    #[test]
    fn absurd_numbers_end_without_a_hang() {
        for q in [1e-300, 1e300, f64::MAX, f64::MIN_POSITIVE] {
            for n in [1e-3, 1e3] {
                let _ = drop(q, 1e300, 1e-300, n);
                let _ = drop(q, 1e-300, 1e300, n);
            }
        }
    }
}
