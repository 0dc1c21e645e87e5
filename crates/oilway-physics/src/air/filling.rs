//! How long a chamber takes to fill and to empty through a conductance: closed forms of ISO 6358 flow.

use oilway_units::{AbsolutePressure, Conductance, Ratio, Time, Volume};

use super::REFERENCE_PRESSURE;
use crate::{Range, formula};

/// V / (n C p0), the time in which choked flow moves the pressure by its own size.
fn time_constant(volume: Volume, conductance: Conductance, exponent: Ratio) -> f64 {
    volume.cubic_metres()
        / (exponent.fraction() * conductance.cubic_metres_per_second_pascal() * REFERENCE_PRESSURE)
}

/// The integral of dr over the share of choked flow, from no pressure to the ratio `r` of the supply.
fn filled(r: f64, b: f64) -> f64 {
    if r <= b { r } else { b + (1.0 - b) * libm::asin(((r - b) / (1.0 - b)).min(1.0)) }
}

/// ∫ dt / (1 + a t²) from 0 to `t`: an area hyperbolic tangent for negative `a`, an arc tangent for positive, `t` between;
/// near a = 0 the series keeps both from cancelling.
fn rational(a: f64, t: f64) -> f64 {
    let x = a * t * t;
    if x.abs() < SMALL {
        t * (1.0 - x / 3.0 + x * x / 5.0)
    } else if x < 0.0 {
        libm::atanh((-x).sqrt()) / (-a).sqrt()
    } else {
        libm::atan(x.sqrt()) / a.sqrt()
    }
}

/// Where the series takes over: its next term is x³/7, below the last digit.
const SMALL: f64 = 1e-5;

/// Time constants from this pressure down to the atmosphere, while the flow is not choked. `over` is the pressure over that
/// of the atmosphere.
///
/// With u of the conductance law and t² = (1 − u)/(1 + u) the integral ∫ du / ((k + u) √(1 − u²)), k = b/(1 − b), becomes
/// 2/(k + 1) · ∫ dt / (1 + a t²) with a = (k − 1)/(k + 1) = 2 b − 1.
fn emptied(over: f64, b: f64) -> f64 {
    let t = ((over - 1.0) / (over + 1.0 - 2.0 * b * over)).max(0.0).sqrt();
    2.0 * (1.0 - b) * rational(2.0 * b - 1.0, t)
}

formula! {
    /// Time to fill a chamber through a conductance from one pressure to another.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::air::fill_time;
    /// use oilway_units::{AbsolutePressure, Conductance, Ratio, Volume};
    ///
    /// // 1 litre through C 1, b 0.3, from the atmosphere to 98 % of 6 bar on the gauge.
    /// let time = fill_time(
    ///     Volume::from_litres(1.0), Conductance::from_litres_per_second_bar(1.0), Ratio::from_fraction(0.3),
    ///     AbsolutePressure::from_bar(7.013), AbsolutePressure::from_bar(1.013), AbsolutePressure::from_bar(1.013 + 5.88),
    ///     Ratio::from_fraction(1.0),
    /// )
    /// .unwrap();
    /// assert_eq!(format!("{:.2}", time.seconds()), "1.10");
    /// ```
    FILL_TIME = "air/fill-time",
    title: "Time to fill a chamber through a conductance",
    equation: "t = V / (n C p0) · (F(r2) − F(r1));  r = p / p_s;  F = r if r ≤ b, else b + (1 − b) asin((r − b)/(1 − b))",
    validity: "Air at 20 °C from a supply that does not give way. n = 1 is isothermal, slow and in metal walls; 1.4 is adiabatic, fast. A real chamber never reaches the supply exactly, so the target must lie below it: state the fraction. No time where the target is passed already.",
    sources: [
        "own-derivation", "integral of the conductance law; agrees with numerical integration", Own;
        "pneumatics-course", "worked answers", Seen
    ],
    fn fill_time(
        volume: Volume, "V", "volume to be filled", Range::NotNegative;
        conductance: Conductance, "C", "sonic conductance of the path", Range::Positive;
        critical_ratio: Ratio, "b", "ratio of pressures below which the flow is choked", Range::Between(0.0, 0.99);
        supply: AbsolutePressure, "p_s", "supply pressure, absolute", Range::Positive;
        from: AbsolutePressure, "p1", "pressure at the start, absolute", Range::NotNegative;
        to: AbsolutePressure, "p2", "pressure to be reached, absolute", Range::NotNegative;
        exponent: Ratio, "n", "1 isothermal to 1.4 adiabatic", Range::Between(1.0, 1.4);
    ) -> Option<Time>, "t", "time of filling" {
        if to >= supply || conductance <= Conductance::ZERO {
            return None;
        }
        if to <= from {
            return Some(Time::ZERO);
        }
        let b = critical_ratio.fraction();
        let (r1, r2) = (from.pascals() / supply.pascals(), to.pascals() / supply.pascals());
        let tau = time_constant(volume, conductance, exponent);
        Some(Time::from_seconds(tau * (filled(r2, b) - filled(r1, b))))
    }
}

formula! {
    /// Time to empty a chamber to the atmosphere through a conductance.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::air::exhaust_time;
    /// use oilway_units::{AbsolutePressure, Conductance, Ratio, Volume};
    ///
    /// // 1 litre through C 1, b 0.3, from 6 bar on the gauge until 2 % of it is left.
    /// let time = exhaust_time(
    ///     Volume::from_litres(1.0), Conductance::from_litres_per_second_bar(1.0), Ratio::from_fraction(0.3),
    ///     AbsolutePressure::from_bar(1.013), AbsolutePressure::from_bar(7.013), AbsolutePressure::from_bar(1.013 + 0.12),
    ///     Ratio::from_fraction(1.0),
    /// )
    /// .unwrap();
    /// assert_eq!(format!("{:.2}", time.seconds()), "1.98");
    /// ```
    EXHAUST_TIME = "air/exhaust-time",
    title: "Time to empty a chamber through a conductance",
    equation: "t = V / (n C p0) · (ln(p1/p*) + I(p2) − I(p*)) with p* = p_a/b, choked above it;  I = 2 (1 − b) ∫ dt / (1 + (2b − 1) t²) from t(p) down,  t² = (p − p_a) / (p + p_a − 2 b p)",
    validity: "Air at 20 °C. n = 1 is isothermal, slow and in metal walls; 1.4 is adiabatic, fast. The chamber never falls to the atmosphere exactly, so the target must lie above it. No time where the pressure is below the target already.",
    sources: [
        "own-derivation", "integral of the conductance law; agrees with numerical integration", Own;
        "pneumatics-course", "worked answers", Seen
    ],
    fn exhaust_time(
        volume: Volume, "V", "volume to be emptied", Range::NotNegative;
        conductance: Conductance, "C", "sonic conductance of the path", Range::Positive;
        critical_ratio: Ratio, "b", "ratio of pressures below which the flow is choked", Range::Between(0.0, 0.99);
        atmosphere: AbsolutePressure, "p_a", "pressure of the surroundings, absolute", Range::Positive;
        from: AbsolutePressure, "p1", "pressure at the start, absolute", Range::NotNegative;
        to: AbsolutePressure, "p2", "pressure to be reached, absolute", Range::NotNegative;
        exponent: Ratio, "n", "1 isothermal to 1.4 adiabatic", Range::Between(1.0, 1.4);
    ) -> Option<Time>, "t", "time of emptying" {
        if to <= atmosphere || conductance <= Conductance::ZERO {
            return None;
        }
        if from <= to {
            return Some(Time::ZERO);
        }
        let b = critical_ratio.fraction();
        let (start, end) = (from.pascals() / atmosphere.pascals(), to.pascals() / atmosphere.pascals());
        // Above 1/b the flow is choked and the pressure falls as an exponential.
        let choked_down_to = if b > 0.0 { 1.0 / b } else { f64::INFINITY };
        let choked = if start > choked_down_to { libm::log(start / end.max(choked_down_to)) } else { 0.0 };
        let unchoked = emptied(start.min(choked_down_to), b) - emptied(end.min(choked_down_to), b);
        Some(Time::from_seconds(time_constant(volume, conductance, exponent) * (choked + unchoked)))
    }
}

#[cfg(test)]
mod tests {
    use super::super::flow::share;
    use super::*;

    fn bar(value: f64) -> AbsolutePressure {
        AbsolutePressure::from_bar(value)
    }

    fn fill(b: f64, from: f64, to: f64) -> Option<f64> {
        let c = Conductance::from_litres_per_second_bar(1.0);
        let (b, n) = (Ratio::from_fraction(b), Ratio::from_fraction(1.0));
        fill_time(Volume::from_litres(1.0), c, b, bar(7.0), bar(from), bar(to), n).map(Time::seconds)
    }

    fn exhaust(b: f64, from: f64, to: f64) -> Option<f64> {
        let c = Conductance::from_litres_per_second_bar(1.0);
        let (b, n) = (Ratio::from_fraction(b), Ratio::from_fraction(1.0));
        exhaust_time(Volume::from_litres(1.0), c, b, bar(1.0), bar(from), bar(to), n).map(Time::seconds)
    }

    /// Second route: the differential equation with the pressure as the free variable, by Simpson's rule.
    fn marched(from: f64, to: f64, rate: impl Fn(f64) -> f64) -> f64 {
        let n = 20_000;
        let h = (to - from) / f64::from(n);
        let slowness = |p: f64| 1.0 / rate(p);
        (0..n)
            .map(|i| from + f64::from(i) * h)
            .map(|p| h / 6.0 * (slowness(p) + 4.0 * slowness(p + h / 2.0) + slowness(p + h)))
            .sum()
    }

    #[test]
    fn filling_agrees_with_the_marched_equation() {
        for b in [0.0, 0.1, 0.3, 0.5, 0.528, 0.8] {
            let marched = marched(1.0, 6.3, |p| 7.0 * share(p / 7.0, b));
            let closed = fill(b, 1.0, 6.3).unwrap();
            assert!((closed / marched - 1.0).abs() < 1e-7, "b {b}: {closed} {marched}");
        }
    }

    #[test]
    fn emptying_agrees_with_the_marched_equation_on_both_sides_of_a_half() {
        for b in [0.0, 0.1, 0.3, 0.4999, 0.5, 0.5001, 0.528, 0.8] {
            let marched = marched(7.0, 1.1, |p| -p * share(1.0 / p, b));
            let closed = exhaust(b, 7.0, 1.1).unwrap();
            assert!((closed / marched - 1.0).abs() < 1e-7, "b {b}: {closed} {marched}");
        }
    }

    #[test]
    fn the_series_joins_the_closed_forms_on_either_side() {
        for t in [0.01, 0.5, 1.0] {
            for side in [-1.0, 1.0] {
                let at = |x: f64| rational(side * x / (t * t), t) / t;
                // A step of 2e-8 in x moves the answer by a third of it, and no more.
                let moved = (at(0.999 * SMALL) - at(1.001 * SMALL)) * side;
                assert!((moved - 2e-8 / 3.0).abs() < 1e-13, "{t} {side} {moved:e}");
            }
        }
    }

    #[test]
    fn the_supply_and_the_atmosphere_are_never_reached() {
        assert_eq!(fill(0.3, 1.0, 7.0), None);
        assert_eq!(fill(0.3, 1.0, 8.0), None);
        assert_eq!(exhaust(0.3, 7.0, 1.0), None);
        assert_eq!(exhaust(0.3, 7.0, 0.5), None);
    }

    #[test]
    fn a_target_passed_already_takes_no_time() {
        assert_eq!(fill(0.3, 5.0, 4.0), Some(0.0));
        assert_eq!(exhaust(0.3, 2.0, 3.0), Some(0.0));
    }

    #[test]
    fn choked_emptying_is_an_exponential_and_choked_filling_a_straight_line() {
        assert!((exhaust(0.2, 50.0, 5.0).unwrap() - libm::log(10.0)).abs() < 1e-14);
        assert!((fill(0.8, 0.7, 1.4).unwrap() - 0.1).abs() < 1e-14);
    }
}
