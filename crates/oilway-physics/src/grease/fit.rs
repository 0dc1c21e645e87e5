//! From a measured flow curve to the three numbers of a grease.
//!
//! The fit makes the relative misses small, so that the slow end, which decides whether a line starts, counts as much as
//! the fast end. For a given index n the law is linear in yield stress and consistency: these two are solved for
//! exactly, and only n is searched.

use oilway_text::{Message, message};
use oilway_units::{Consistency, Pressure, Ratio, ShearRate};

/// A fitted flow curve and how well it fits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// Yield stress τ0; zero when the curve shows none.
    pub yield_stress: Pressure,
    /// Consistency factor K.
    pub consistency: Consistency,
    /// Flow index n.
    pub index: Ratio,
    /// The largest relative miss of a row, without its sign.
    pub largest_error: Ratio,
    /// The root of the mean square of the relative misses.
    pub root_mean_square: Ratio,
}

/// Why rows give no flow curve.
#[derive(Clone, Debug, PartialEq)]
pub enum NoFit {
    /// Three numbers need at least three different shear rates.
    TooFewRates {
        /// How many different ones came.
        got: usize,
    },
    /// A shear rate or a stress that is not above zero, or not a number.
    NotPositive {
        /// The row, counted from one.
        row: usize,
    },
    /// The stress does not rise with the shear rate.
    NotRising,
    /// The index that fits best lies at an end of what a grease can have.
    IndexAtEnd {
        /// The end.
        index: Ratio,
    },
}

impl NoFit {
    /// What to say about it.
    pub fn message(&self) -> Message {
        match self {
            NoFit::TooFewRates { got } => message!("physics-fit-too-few", got = *got, wanted = LEAST_RATES),
            NoFit::NotPositive { row } => message!("physics-fit-not-positive", row = *row),
            NoFit::NotRising => Message::new("physics-fit-not-rising"),
            NoFit::IndexAtEnd { index } => message!(
                "physics-fit-index",
                index = index.fraction(),
                low = LOWEST_INDEX.fraction(),
                high = HIGHEST_INDEX.fraction(),
            ),
        }
    }
}

const LEAST_RATES: usize = 3;
/// No lubricating grease is known outside; a best fit at an end means another law or a spoiled measurement.
const LOWEST_INDEX: Ratio = Ratio::from_fraction(0.05);
const HIGHEST_INDEX: Ratio = Ratio::from_fraction(1.5);
/// Steps of the first search over the index.
const STEPS: usize = 145;
/// Turns of the golden section: each leaves 0.618 of the bracket, so these reach the digits of a double.
const TURNS: usize = 80;

/// Fits τ = τ0 + K γ̇ⁿ to rows of shear rate and stress at one temperature, with τ0 ≥ 0.
///
/// ```
/// use oilway_physics::grease::fit;
/// use oilway_units::{Pressure, ShearRate};
///
/// let rows = [(1.0, 112.0), (10.0, 145.0), (100.0, 282.0), (1000.0, 823.0)]
///     .map(|(rate, stress)| (ShearRate::from_per_second(rate), Pressure::from_pascals(stress)));
/// let fit = fit::herschel_bulkley(&rows).expect("a rising curve");
/// assert!((fit.index.fraction() - 0.6).abs() < 0.02);
/// assert!(fit.largest_error.percent() < 1.0);
/// ```
///
/// # Errors
/// [`NoFit`] when the rows are too few, not positive, do not rise, or follow no such law.
pub fn herschel_bulkley(rows: &[(ShearRate, Pressure)]) -> Result<Fit, NoFit> {
    check(rows)?;
    let curve = Curve::new(rows);
    let step = (HIGHEST_INDEX.fraction() - LOWEST_INDEX.fraction()) / STEPS as f64;
    let index = |i: usize| LOWEST_INDEX.fraction() + step * i as f64;
    let best =
        (0..=STEPS).min_by(|&a, &b| curve.miss(index(a)).total_cmp(&curve.miss(index(b)))).unwrap_or(0);
    if best == 0 || best == STEPS {
        return Err(NoFit::IndexAtEnd { index: Ratio::from_fraction(index(best)) });
    }
    let n = golden(|n| curve.miss(n), index(best - 1), index(best + 1));
    curve.fit(n).ok_or(NoFit::NotRising)
}

fn check(rows: &[(ShearRate, Pressure)]) -> Result<(), NoFit> {
    let good = |value: f64| value > 0.0 && value.is_finite();
    if let Some(row) = rows.iter().position(|row| !(good(row.0.per_second()) && good(row.1.pascals()))) {
        return Err(NoFit::NotPositive { row: row + 1 });
    }
    let mut sorted = rows.to_vec();
    sorted.sort_by(|a, b| a.0.total_cmp(&b.0));
    let rates = sorted.chunk_by(|a, b| a.0 == b.0).count();
    if rates < LEAST_RATES {
        return Err(NoFit::TooFewRates { got: rates });
    }
    match (sorted.first(), sorted.last()) {
        (Some(slow), Some(fast)) if fast.1 > slow.1 => Ok(()),
        _ => Err(NoFit::NotRising),
    }
}

/// The rows in numbers, rates over their geometric mean so that no power overflows.
struct Curve {
    rows: Vec<(f64, f64)>,
    mean: f64,
}

impl Curve {
    fn new(rows: &[(ShearRate, Pressure)]) -> Self {
        let logs: f64 = rows.iter().map(|row| libm::log(row.0.per_second())).sum();
        let mean = libm::exp(logs / rows.len() as f64);
        Curve { rows: rows.iter().map(|row| (row.0.per_second() / mean, row.1.pascals())).collect(), mean }
    }

    /// Yield stress, and stress above it at the mean rate, that make the relative misses smallest for this index.
    fn linear(&self, n: f64) -> (f64, f64) {
        // Unknowns a and b in a x + b y = 1 with x = 1/τ and y = rateⁿ/τ. The part of y along x is taken out first, for
        // the plain normal equations lose half of the digits at small n.
        let xy: Vec<(f64, f64)> =
            self.rows.iter().map(|&(rate, tau)| (1.0 / tau, libm::pow(rate, n) / tau)).collect();
        let sum = |term: fn(f64, f64) -> f64| xy.iter().map(|&(x, y)| term(x, y)).sum::<f64>();
        let (x1, y1, xx, yy) = (sum(|x, _| x), sum(|_, y| y), sum(|x, _| x * x), sum(|_, y| y * y));
        let along = sum(|x, y| x * y) / xx;
        let rest = |x: f64, y: f64| y - along * x;
        let b = xy.iter().map(|&(x, y)| rest(x, y)).sum::<f64>()
            / xy.iter().map(|&(x, y)| rest(x, y) * rest(x, y)).sum::<f64>();
        let a = x1 / xx - b * along;
        if a < 0.0 { (0.0, y1 / yy) } else { (a, b) }
    }

    fn misses(&self, n: f64, a: f64, b: f64) -> impl Iterator<Item = f64> {
        self.rows.iter().map(move |&(rate, tau)| (a + b * libm::pow(rate, n)) / tau - 1.0)
    }

    /// The sum of the squares of the relative misses.
    fn miss(&self, n: f64) -> f64 {
        let (a, b) = self.linear(n);
        self.misses(n, a, b).map(|miss| miss * miss).sum()
    }

    fn fit(&self, n: f64) -> Option<Fit> {
        let (a, b) = self.linear(n);
        let largest = self.misses(n, a, b).map(f64::abs).fold(0.0, f64::max);
        (b > 0.0 && b.is_finite()).then(|| Fit {
            yield_stress: Pressure::from_pascals(a),
            consistency: Consistency::from_pascal_seconds_to_the_n(b / libm::pow(self.mean, n)),
            index: Ratio::from_fraction(n),
            largest_error: Ratio::from_fraction(largest),
            root_mean_square: Ratio::from_fraction((self.miss(n) / self.rows.len() as f64).sqrt()),
        })
    }
}

/// The place of the smallest value between two ends that embrace it.
fn golden(value: impl Fn(f64) -> f64, mut low: f64, mut high: f64) -> f64 {
    const SHARE: f64 = 0.618_033_988_749_894_9;
    for _ in 0..TURNS {
        let (left, right) = (high - SHARE * (high - low), low + SHARE * (high - low));
        if value(left) <= value(right) { high = right } else { low = left }
    }
    0.5 * (low + high)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grease::herschel_bulkley_stress;

    fn rows(pairs: &[(f64, f64)]) -> Vec<(ShearRate, Pressure)> {
        pairs.iter().map(|&(r, t)| (ShearRate::from_per_second(r), Pressure::from_pascals(t))).collect()
    }

    #[test]
    fn an_exact_curve_comes_back() {
        for (tau_0, k, n) in
            [(650.0, 20.6, 0.605), (189.0, 4.1, 0.797), (0.0, 3.0, 0.9), (2000.0, 150.0, 0.3)]
        {
            let curve: Vec<(ShearRate, Pressure)> = [0.1, 1.0, 5.0, 30.0, 200.0, 1500.0]
                .map(ShearRate::from_per_second)
                .map(|rate| {
                    let (tau_0, k) =
                        (Pressure::from_pascals(tau_0), Consistency::from_pascal_seconds_to_the_n(k));
                    (rate, herschel_bulkley_stress(rate, tau_0, k, Ratio::from_fraction(n)))
                })
                .to_vec();
            let fit = herschel_bulkley(&curve).expect("an exact curve");
            assert!((fit.yield_stress.pascals() - tau_0).abs() < 1e-4 * (tau_0 + k), "{fit:?}");
            assert!((fit.consistency.pascal_seconds_to_the_n() / k - 1.0).abs() < 1e-4, "{fit:?}");
            assert!((fit.index.fraction() - n).abs() < 1e-5, "{fit:?}");
            assert!(fit.largest_error.fraction() < 1e-6 && fit.root_mean_square <= fit.largest_error);
        }
    }

    #[test]
    fn three_rows_are_met_exactly() {
        let fit =
            herschel_bulkley(&rows(&[(1.0, 300.0), (10.0, 400.0), (100.0, 700.0)])).expect("three rates");
        assert!(fit.largest_error.fraction() < 1e-6, "{fit:?}");
        // By hand: the steps 100 and 300 over the same factor of rate give 10ⁿ = 3.
        assert!((fit.index.fraction() - 3f64.log10()).abs() < 1e-6);
        assert!((fit.yield_stress.pascals() - 250.0).abs() < 1e-2);
        assert!((fit.consistency.pascal_seconds_to_the_n() - 50.0).abs() < 1e-2);
    }

    #[test]
    fn rows_that_carry_no_curve_are_refused_with_the_reason() {
        assert_eq!(herschel_bulkley(&[]), Err(NoFit::TooFewRates { got: 0 }));
        let two = rows(&[(1.0, 300.0), (1.0, 310.0), (10.0, 400.0)]);
        assert_eq!(herschel_bulkley(&two), Err(NoFit::TooFewRates { got: 2 }));
        let bad = rows(&[(1.0, 300.0), (10.0, f64::NAN), (100.0, 700.0)]);
        assert_eq!(herschel_bulkley(&bad), Err(NoFit::NotPositive { row: 2 }));
        let falling = rows(&[(1.0, 300.0), (10.0, 290.0), (100.0, 280.0)]);
        assert_eq!(herschel_bulkley(&falling), Err(NoFit::NotRising));
        let thickening = rows(&[(1.0, 1.0), (10.0, 100.0), (100.0, 10_000.0)]);
        assert!(matches!(herschel_bulkley(&thickening), Err(NoFit::IndexAtEnd { .. })));
    }

    #[test]
    fn scaling_the_rates_or_the_stresses_scales_the_fit() {
        let pairs = [(0.5, 210.0), (3.0, 250.0), (40.0, 410.0), (300.0, 900.0), (900.0, 1500.0)];
        let fit = herschel_bulkley(&rows(&pairs)).expect("a rising curve");
        let stiffer = herschel_bulkley(&rows(&pairs.map(|(r, t)| (r, 3.0 * t)))).expect("a rising curve");
        assert!((stiffer.yield_stress / fit.yield_stress - 3.0).abs() < 1e-4);
        let slower = herschel_bulkley(&rows(&pairs.map(|(r, t)| (r / 60.0, t)))).expect("a rising curve");
        assert!((slower.index.fraction() - fit.index.fraction()).abs() < 1e-5);
        assert!((slower.yield_stress / fit.yield_stress - 1.0).abs() < 1e-4);
    }
}
