//! The viscosity index: how little an oil thins as it warms.

use std::sync::LazyLock;

use oilway_units::{Count, KinematicViscosity};

use crate::{Range, formula};

/// Table 1 of the standard; the head of the file says where it was read.
const TABLE: &str = include_str!("../../../../data/oil/d2270.csv");

/// Viscosity at 100 °C, L and H, mm²/s, in rising order. Its test guards the count and the sums of the columns.
static ROWS: LazyLock<Vec<[f64; 3]>> = LazyLock::new(|| {
    let numbers = |line: &str| {
        let mut cells = line.split(',').map(|cell| cell.trim().parse::<f64>());
        Some([cells.next()?.ok()?, cells.next()?.ok()?, cells.next()?.ok()?])
    };
    TABLE.lines().filter_map(numbers).collect()
});

/// Below this viscosity at 100 °C the standard defines no index, mm²/s.
const LOWEST: f64 = 2.0;
/// From this viscosity at 100 °C on two polynomials take the place of the table, mm²/s.
const TABLE_END: f64 = 70.0;

formula! {
    /// Viscosity index of an oil from its viscosity at 40 °C and 100 °C, not rounded.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::oil::viscosity_index;
    /// use oilway_units::KinematicViscosity;
    ///
    /// // The standard's own example: 92.43.
    /// let index = viscosity_index(
    ///     KinematicViscosity::from_square_millimetres_per_second(73.30),
    ///     KinematicViscosity::from_square_millimetres_per_second(8.86),
    /// );
    /// assert_eq!(index.map(|i| format!("{:.2}", i.number())).as_deref(), Some("92.43"));
    /// ```
    VISCOSITY_INDEX = "oil/viscosity-index",
    title: "Viscosity index",
    equation: "U ≥ H: VI = 100 (L − U) / (L − H);  U < H: N = log(H/U) / log Y, VI = (10^N − 1) / 0.00715 + 100;  U, Y at 40 and 100 °C in mm²/s, L and H of the table at Y",
    validity: "Y of 2 mm²/s and more; above 70 mm²/s polynomials replace the table. The standard reports a whole number.",
    sources: [
        "astm-d2270", "sections 5 and 6", Seen;
        "lib-chemicals", "Table 1 in digitised form", SecondHand
    ],
    fn viscosity_index(
        at_40: KinematicViscosity, "U", "viscosity at 40 °C", Range::Positive;
        at_100: KinematicViscosity, "Y", "viscosity at 100 °C", Range::Positive;
    ) -> Option<Count>, "VI", "viscosity index" {
        let (u, y) = (at_40.square_millimetres_per_second(), at_100.square_millimetres_per_second());
        if y < LOWEST || u <= y {
            return None;
        }
        index(u, y).map(Count::from_number)
    }
}

formula! {
    /// Viscosity at 100 °C of an oil of which only the viscosity at 40 °C and the viscosity index are known.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::oil::viscosity_at_100;
    /// use oilway_units::{Count, KinematicViscosity};
    ///
    /// let hot = viscosity_at_100(KinematicViscosity::from_square_millimetres_per_second(220.0), Count::from_number(95.0));
    /// assert_eq!(hot.map(|v| format!("{:.1}", v.square_millimetres_per_second())).as_deref(), Some("18.8"));
    /// ```
    VISCOSITY_AT_100 = "oil/viscosity-at-100",
    title: "Viscosity at 100 °C from the viscosity index",
    equation: "Y such that VI(U, Y) of oil/viscosity-index is the given one",
    validity: "As oil/viscosity-index, of which it is the inverse. No answer where the index would ask for less than 2 mm²/s at 100 °C, or for as much as at 40 °C.",
    sources: [
        "astm-d2270", "sections 5 and 6", Seen;
        "own-derivation", "inverse by bisection", Own
    ],
    fn viscosity_at_100(
        at_40: KinematicViscosity, "U", "viscosity at 40 °C", Range::Positive;
        index: Count, "VI", "viscosity index", Range::Between(-1000.0, 1000.0);
    ) -> Option<KinematicViscosity>, "Y", "viscosity at 100 °C" {
        invert(at_40.square_millimetres_per_second(), index.number())
            .map(KinematicViscosity::from_square_millimetres_per_second)
    }
}

/// The index; `y` is at least [`LOWEST`].
fn index(u: f64, y: f64) -> Option<f64> {
    let (l, h) = bounds(y)?;
    let value = if u >= h {
        100.0 * (l - u) / (l - h)
    } else {
        let n = libm::log(h / u) / libm::log(y);
        (libm::exp10(n) - 1.0) / 0.00715 + 100.0
    };
    Some(value)
}

/// L and H at a viscosity of at least [`LOWEST`] at 100 °C.
fn bounds(y: f64) -> Option<(f64, f64)> {
    if y >= TABLE_END {
        return Some((0.8353 * y * y + 14.67 * y - 216.0, 0.1684 * y * y + 11.85 * y - 97.0));
    }
    let next = ROWS.partition_point(|row| row[0] <= y);
    let (&[y0, l0, h0], &[y1, l1, h1]) = (ROWS.get(next.checked_sub(1)?)?, ROWS.get(next)?);
    let share = (y - y0) / (y1 - y0);
    Some((l0 + (l1 - l0) * share, h0 + (h1 - h0) * share))
}

/// The index rises with the viscosity at 100 °C (see the test), so halving the bracket finds it.
fn invert(u: f64, wanted: f64) -> Option<f64> {
    let (mut low, mut high) = (LOWEST, u);
    // The oil whose viscosity does not fall at all stands for the upper end.
    if high <= low || index(u, low)? > wanted || index(u, high)? < wanted {
        return None;
    }
    // Each turn halves the bracket; sixty exhaust the digits of a double.
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if index(u, middle)? < wanted {
            low = middle;
        } else {
            high = middle;
        }
    }
    Some(high)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm2_s(value: f64) -> KinematicViscosity {
        KinematicViscosity::from_square_millimetres_per_second(value)
    }
    fn vi(u: f64, y: f64) -> Option<f64> {
        viscosity_index(mm2_s(u), mm2_s(y)).map(Count::number)
    }

    #[test]
    fn the_table_is_whole() {
        // Count and sums as the head of the file states them: a digit lost or added shows.
        let sum = |column: usize| ROWS.iter().map(|row| row[column]).sum::<f64>();
        assert_eq!(ROWS.len(), 311);
        assert!((sum(0) - 7266.0).abs() < 1e-6, "{}", sum(0));
        assert!((sum(1) - 293_891.363).abs() < 1e-6, "{}", sum(1));
        assert!((sum(2) - 110_746.508).abs() < 1e-6, "{}", sum(2));
        assert!(ROWS.windows(2).all(|pair| (0..3).all(|c| pair[0][c] < pair[1][c])));
    }

    #[test]
    fn at_l_the_index_is_zero_and_at_h_it_is_a_hundred_from_both_sides() {
        for y in [2.0, 8.86, 33.3, 69.99, 70.0, 150.0] {
            let (l, h) = bounds(y).expect("defined from 2 mm²/s");
            assert!(vi(l, y).expect("defined").abs() < 1e-9);
            assert!((vi(h, y).expect("defined") - 100.0).abs() < 1e-9);
            assert!((vi(h * (1.0 - 1e-12), y).expect("defined") - 100.0).abs() < 1e-6);
        }
    }

    #[test]
    fn below_two_and_without_thinning_there_is_no_index() {
        assert_eq!(vi(5.0, 1.999), None);
        assert!(vi(5.0, 2.0).is_some());
        assert_eq!(vi(10.0, 10.0), None);
    }

    #[test]
    fn the_index_rises_with_the_viscosity_at_100() {
        for u in [5.0, 32.0, 220.0, 1500.0] {
            let indices: Vec<f64> = (0..5000)
                .map(|i| 2.0 + f64::from(i) * (f64::min(0.99 * u, 200.0) - 2.0) / 5000.0)
                .filter_map(|y| vi(u, y))
                .collect();
            assert_eq!(indices.len(), 5000);
            assert!(indices.windows(2).all(|pair| pair[0] < pair[1]), "{u}");
        }
    }

    #[test]
    fn the_viscosity_at_100_undoes_the_index() {
        for u in [10.0, 46.0, 220.0, 680.0, 3200.0] {
            for wanted in [-50.0, 0.0, 60.0, 95.0, 100.0, 150.0, 200.0] {
                if let Some(y) = viscosity_at_100(mm2_s(u), Count::from_number(wanted)) {
                    let back = vi(u, y.square_millimetres_per_second()).expect("defined");
                    assert!((back - wanted).abs() < 1e-9, "{u} {wanted} {back}");
                }
            }
            assert!(viscosity_at_100(mm2_s(u), Count::from_number(95.0)).is_some());
        }
        assert_eq!(viscosity_at_100(mm2_s(1.5), Count::from_number(95.0)), None);
        // At 2 mm²/s and 100 °C this oil has an index of −125: nothing lies below.
        assert_eq!(viscosity_at_100(mm2_s(10.0), Count::from_number(-126.0)), None);
        assert!(viscosity_at_100(mm2_s(10.0), Count::from_number(-125.0)).is_some());
    }
}
