//! The oil that leaves a full hydrodynamic film at its ends.
//!
//! The side flow is kept as a share of that of an infinitely short bearing, which is known exactly: the share depends
//! little on the eccentricity and smoothly on length over diameter, so that a few stations carry the whole field.

use core::f64::consts::PI;

use oilway_units::{Flow, Frequency, Length, Ratio};

use super::ROUNDING;
use crate::{Range, formula};

/// Eccentricity ratios of the stations.
const ECCENTRICITY: [f64; 4] = [0.2, 0.4, 0.6, 0.8];

/// Length over diameter, and the side flow over (radius · clearance · speed · length) at each eccentricity.
///
/// From 1/4 to 1 it is total flow times side share, as the charts of Raimondi and Boyd give them and as a solution of
/// the Reynolds equation confirms within their last digit. Above, only that solution stands behind the numbers.
#[expect(clippy::approx_constant, reason = "0.318 is a side share read off a chart, not 1/π")]
const SIDE_FLOW: [(f64, [f64; 4]); 5] = [
    (0.25, [3.76 * 0.329, 4.37 * 0.566, 4.99 * 0.744, 5.60 * 0.884]),
    (0.5, [3.72 * 0.318, 4.29 * 0.550, 4.85 * 0.730, 5.41 * 0.874]),
    (1.0, [3.59 * 0.280, 3.99 * 0.498, 4.33 * 0.681, 4.62 * 0.844]),
    (1.5, [0.821, 1.593, 2.321, 3.014]),
    (2.0, [0.670, 1.280, 1.840, 2.363]),
];

formula! {
    /// The side flow of a plain bearing that runs on a full film: an upper bound for a total-loss feed.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::bearing_side_flow;
    /// use oilway_units::{Frequency, Length, Ratio};
    ///
    /// // 100 mm shaft, 100 mm long, 0.05 mm radial clearance, 10 turns a second.
    /// let flow = bearing_side_flow(
    ///     Length::from_millimetres(50.0), Length::from_millimetres(0.05), Frequency::from_per_second(10.0),
    ///     Length::from_millimetres(100.0), Ratio::from_fraction(0.6),
    /// );
    /// assert_eq!(flow.map(|q| format!("{:.3}", q.cubic_centimetres_per_second())), Some("7.372".to_string()));
    /// ```
    BEARING_SIDE_FLOW = "demand/bearing-side-flow",
    title: "Side flow of a plain bearing on a full film",
    equation: "Qs = qs(L/d, ε) · r · c · N · L;  qs = 2π ε · g,  g by the table and 1 for a very short bearing",
    validity: "Full 360° bearing, laminar, oil fed along the widest gap, film broken where the pressure would fall below that of the surroundings. Eccentricity ratio 0.2 to 0.8, length up to twice the diameter; no answer outside. Between the stations the error is within 2 per cent. Only this flow must be replaced; in moderate service half or less of it still carries the load, so it is an upper bound for a total-loss feed. Pins and slow bushes never reach a film.",
    sources: [
        "raimondi-boyd-1958", "charts of flow and side flow", Memory;
        "own-computed", "finite-difference solution of the Reynolds equation, repeated in the tests", Own;
        "booser-khonsari-2011", "half or less still carries the load", Seen
    ],
    fn bearing_side_flow(
        radius: Length, "r", "radius of the shaft", Range::Positive;
        clearance: Length, "c", "radial clearance", Range::Positive;
        speed: Frequency, "N", "speed of the shaft", Range::NotNegative;
        length: Length, "L", "length of the bearing", Range::Positive;
        eccentricity: Ratio, "ε", "eccentricity of the shaft over the radial clearance", Range::Between(0.2, 0.8);
    ) -> Option<Flow>, "Qs", "oil that leaves at the ends" {
        let (r, c, n, l) = (radius.metres(), clearance.metres(), speed.per_second(), length.metres());
        let share = share_of_short_bearing(l / (2.0 * r), eccentricity.fraction())?;
        let side_flow = 2.0 * PI * eccentricity.fraction() * share;
        Some(Flow::from_cubic_metres_per_second(side_flow * r * c * n * l))
    }
}

/// The side flow as a share of that of an infinitely short bearing, 2π ε; linear in the eccentricity and in the square of
/// length over diameter, in which it begins.
fn share_of_short_bearing(slenderness: f64, eccentricity: f64) -> Option<f64> {
    let reach =
        |value: f64, low: f64, high: f64| value >= low * (1.0 - ROUNDING) && value <= high * (1.0 + ROUNDING);
    if !reach(eccentricity, ECCENTRICITY[0], ECCENTRICITY[3]) || !reach(slenderness, 0.0, SIDE_FLOW[4].0) {
        return None;
    }
    let square = slenderness * slenderness;
    let mut below = (0.0, 1.0);
    for (station, flows) in SIDE_FLOW {
        let here = (station * station, share_at(&flows, eccentricity));
        if slenderness <= station {
            return Some(between(below, here, square));
        }
        below = here;
    }
    Some(below.1)
}

/// The share at one station.
fn share_at(flows: &[f64; 4], eccentricity: f64) -> f64 {
    let node = |i: usize| (ECCENTRICITY[i], flows[i] / (2.0 * PI * ECCENTRICITY[i]));
    let i = ECCENTRICITY[1..3].iter().filter(|e| eccentricity > **e).count();
    between(node(i), node(i + 1), eccentricity)
}

/// The straight line through two points.
fn between((x0, y0): (f64, f64), (x1, y1): (f64, f64), x: f64) -> f64 {
    y0 + (y1 - y0) * (x - x0) / (x1 - x0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Second route: the Reynolds equation on a grid over the whole turn and half the length, by over-relaxation, with
    /// negative pressures set to zero. Returns the side flow over r·c·N·L.
    fn reynolds(slenderness: f64, eccentricity: f64) -> f64 {
        let (n, m) = (180usize, 30usize);
        let (dt, dz, k) = (2.0 * PI / n as f64, 1.0 / m as f64, 1.0 / (slenderness * slenderness));
        let cube = |angle: f64| (1.0 + eccentricity * angle.cos()).powi(3);
        let here: Vec<f64> = (0..n).map(|i| cube(i as f64 * dt)).collect();
        let after: Vec<f64> = (0..n).map(|i| cube((i as f64 + 0.5) * dt)).collect();
        let mut p = vec![0.0f64; n * (m + 1)];
        loop {
            let (mut change, mut largest) = (0.0f64, 0.0f64);
            for i in 1..n {
                let (left, right) = (i - 1, (i + 1) % n);
                let (back, ahead, side) =
                    (after[left] / (dt * dt), after[i] / (dt * dt), k * here[i] / (dz * dz));
                let wedge =
                    eccentricity * (((i as f64 - 0.5) * dt).cos() - ((i as f64 + 0.5) * dt).cos()) / dt;
                for j in 0..m {
                    let inner = p[i * (m + 1) + if j == 0 { 1 } else { j - 1 }];
                    let flows = ahead * p[right * (m + 1) + j]
                        + back * p[left * (m + 1) + j]
                        + side * (inner + p[i * (m + 1) + j + 1]);
                    let old = p[i * (m + 1) + j];
                    let new = (old + 1.9 * ((flows + wedge) / (back + ahead + 2.0 * side) - old)).max(0.0);
                    p[i * (m + 1) + j] = new;
                    (change, largest) = (change.max((new - old).abs()), largest.max(new));
                }
            }
            if change < 1e-9 * largest {
                break;
            }
        }
        let slope = |i: usize| (4.0 * p[i * (m + 1) + m - 1] - p[i * (m + 1) + m - 2]) / (2.0 * dz);
        PI * k * (0..n).map(|i| here[i] * slope(i) * dt).sum::<f64>()
    }

    fn side_flow(slenderness: f64, eccentricity: f64) -> Option<f64> {
        let (r, c, n) = (0.05, 5e-5, 10.0);
        let l = 2.0 * r * slenderness;
        bearing_side_flow(
            Length::from_metres(r),
            Length::from_metres(c),
            Frequency::from_per_second(n),
            Length::from_metres(l),
            Ratio::from_fraction(eccentricity),
        )
        .map(|q| q.cubic_metres_per_second() / (r * c * n * l))
    }

    #[test]
    fn every_station_agrees_with_the_reynolds_equation() {
        for (slenderness, _) in SIDE_FLOW {
            for eccentricity in ECCENTRICITY {
                let (here, there) =
                    (side_flow(slenderness, eccentricity).unwrap(), reynolds(slenderness, eccentricity));
                // Charts of three figures, and a grid of 180 by 30.
                assert!((here / there - 1.0).abs() < 4e-3, "{slenderness} {eccentricity}: {here} {there}");
            }
        }
    }

    #[test]
    fn between_the_stations_the_error_is_within_two_per_cent() {
        for (slenderness, eccentricity) in [(0.35, 0.5), (0.75, 0.3), (0.75, 0.7), (1.25, 0.5), (1.75, 0.3)] {
            let (here, there) =
                (side_flow(slenderness, eccentricity).unwrap(), reynolds(slenderness, eccentricity));
            assert!((here / there - 1.0).abs() < 0.02, "{slenderness} {eccentricity}: {here} {there}");
        }
    }

    #[test]
    fn a_very_short_bearing_follows_the_short_bearing_theory() {
        // Side flow 2π ε: mean speed of the film times what the gap loses from its widest to its narrowest place.
        assert!((side_flow(1e-6, 0.5).unwrap() / PI - 1.0).abs() < 1e-9);
    }

    #[test]
    fn outside_the_table_there_is_no_answer() {
        assert!(side_flow(1.0, 0.2).is_some() && side_flow(1.0, 0.8).is_some());
        assert!(side_flow(1.0, 0.19).is_none() && side_flow(1.0, 0.81).is_none());
        assert!(side_flow(2.0, 0.5).is_some() && side_flow(2.01, 0.5).is_none());
        assert!(side_flow(1.0, f64::NAN).is_none());
    }
}
