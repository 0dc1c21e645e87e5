//! [`Exact`]: conversion factors as fractions of whole numbers. Nearly every factor of the trade is one by definition
//! (1 in is 254/10000 m), and a value is multiplied and divided so that the double nearest to the true value comes out:
//! 0.75 in and 19.05 mm are the same length to the last bit.

/// A factor, reduced to lowest terms.
#[derive(Clone, Copy)]
pub(crate) struct Exact {
    above: u128,
    below: u128,
}

impl Exact {
    /// The product of two factors.
    pub(crate) const fn by(self, other: Exact) -> Exact {
        exact(self.above * other.above, self.below * other.below)
    }
    /// The quotient of two factors.
    pub(crate) const fn per(self, other: Exact) -> Exact {
        exact(self.above * other.below, self.below * other.above)
    }
    /// So much of this unit in the SI unit.
    pub(crate) const fn to_si(self, value: f64) -> f64 {
        quotient(value, self.above as f64, self.below as f64)
    }
    /// So much of the SI unit in this unit.
    pub(crate) const fn of_si(self, si: f64) -> f64 {
        quotient(si, self.below as f64, self.above as f64)
    }
}

/// `value · above / below` with one rounding in the end instead of one at each step, so that neighbouring doubles in
/// one unit stay neighbours in another.
const fn quotient(value: f64, above: f64, below: f64) -> f64 {
    if below == 1.0 || above == 1.0 {
        return value * above / below;
    }
    let (product, lost) = product(value, above);
    let first = product / below;
    let (back, lost_back) = self::product(first, below);
    let corrected = first + ((product - back) - lost_back + lost) / below;
    // Only numbers near the largest overflow on the way; they need no last bit.
    if corrected.is_finite() { corrected } else { value * above / below }
}

/// The product as a double and what the rounding lost (Dekker 1971).
const fn product(a: f64, b: f64) -> (f64, f64) {
    let product = a * b;
    let ((a1, a2), (b1, b2)) = (halves(a), halves(b));
    (product, ((a1 * b1 - product) + a1 * b2 + a2 * b1) + a2 * b2)
}

/// A double as the sum of two of half its figures (Veltkamp 1968).
const fn halves(a: f64) -> (f64, f64) {
    let shifted = 134_217_729.0 * a; // 2²⁷ + 1
    let upper = shifted - (shifted - a);
    (upper, a - upper)
}

/// The factor `above / below`. Used in constants only, where a factor too large for its type stops the build.
pub(crate) const fn exact(above: u128, below: u128) -> Exact {
    let (mut a, mut b) = (above, below);
    while b != 0 {
        (a, b) = (b, a % b);
    }
    Exact { above: above / a, below: below / a }
}
/// A multiple of the SI unit.
pub(crate) const fn times(number: u128) -> Exact {
    exact(number, 1)
}
/// A part of the SI unit.
pub(crate) const fn part(number: u128) -> Exact {
    exact(1, number)
}

/// 60 s.
pub(crate) const MINUTE: Exact = times(60);
/// 3600 s.
pub(crate) const HOUR: Exact = times(3_600);
/// 86 400 s.
pub(crate) const DAY: Exact = times(86_400);
/// By definition 1 in = 25.4 mm.
pub(crate) const INCH: Exact = exact(254, 10_000);
/// 12 in.
pub(crate) const FOOT: Exact = times(12).by(INCH);
/// A cube of one inch.
pub(crate) const CUBIC_INCH: Exact = INCH.by(INCH).by(INCH);
/// A cube of one foot.
pub(crate) const CUBIC_FOOT: Exact = FOOT.by(FOOT).by(FOOT);
/// By definition the US gallon has 231 cubic inches.
pub(crate) const GALLON: Exact = times(231).by(CUBIC_INCH);
/// By definition 1 lb = 0.453 592 37 kg.
pub(crate) const POUND: Exact = exact(45_359_237, 100_000_000);
/// One kilogram times the standard acceleration of free fall, by definition 9.806 65 m/s².
pub(crate) const KILOGRAM_FORCE: Exact = exact(980_665, 100_000);
/// One pound times the standard acceleration of free fall.
pub(crate) const POUND_FORCE: Exact = POUND.by(KILOGRAM_FORCE);
/// One pound-force on each square inch.
pub(crate) const PSI: Exact = POUND_FORCE.per(INCH.by(INCH));
