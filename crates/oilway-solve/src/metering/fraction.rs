//! A fraction of whole numbers, compared exactly: shares and periods must not depend on rounding.

use std::cmp::Ordering;

/// A fraction that is never negative. A denominator of zero means "without bound" and is above every other.
#[derive(Clone, Copy, Debug)]
pub struct Fraction {
    numerator: u128,
    denominator: u128,
}

impl Fraction {
    /// One: a point that gets exactly what it wants.
    pub const ONE: Self = Self { numerator: 1, denominator: 1 };

    /// No bound at all.
    pub const UNBOUNDED: Self = Self { numerator: 1, denominator: 0 };

    /// The fraction `numerator / denominator`; over zero it is [`Fraction::UNBOUNDED`].
    #[must_use]
    pub const fn new(numerator: u128, denominator: u128) -> Self {
        if denominator == 0 { Self::UNBOUNDED } else { Self { numerator, denominator } }
    }

    /// The upper number.
    #[must_use]
    pub const fn numerator(self) -> u128 {
        self.numerator
    }

    /// The lower number; zero if there is no bound.
    #[must_use]
    pub const fn denominator(self) -> u128 {
        self.denominator
    }

    /// The value as a floating number, for display; infinite if there is no bound.
    #[must_use]
    pub fn value(self) -> f64 {
        self.numerator as f64 / self.denominator as f64
    }

    /// The fraction or its inverse, whichever is not below one.
    #[must_use]
    pub(super) const fn above_one(self) -> Self {
        if self.numerator >= self.denominator { self } else { Self::new(self.denominator, self.numerator) }
    }

    /// Whole millionths by which the fraction exceeds one; for a fraction not below one and of moderate size.
    pub(super) fn millionths_over_one(self) -> u64 {
        let over = self.numerator.saturating_sub(self.denominator);
        let millionths = over.saturating_mul(1_000_000).checked_div(self.denominator);
        millionths.and_then(|m| u64::try_from(m).ok()).unwrap_or(u64::MAX / 4096)
    }
}

impl Ord for Fraction {
    fn cmp(&self, other: &Self) -> Ordering {
        let left = self.numerator.checked_mul(other.denominator);
        let right = other.numerator.checked_mul(self.denominator);
        match (left, right) {
            (Some(left), Some(right)) => left.cmp(&right),
            _ => by_whole_parts(*self, *other),
        }
    }
}

/// Compares by whole parts and inverted remainders, which cannot overflow (Euclid).
fn by_whole_parts(mut a: Fraction, mut b: Fraction) -> Ordering {
    loop {
        match (a.denominator, b.denominator) {
            (0, 0) => return Ordering::Equal,
            (0, _) => return Ordering::Greater,
            (_, 0) => return Ordering::Less,
            _ => {}
        }
        let whole = (a.numerator / a.denominator).cmp(&(b.numerator / b.denominator));
        if whole != Ordering::Equal {
            return whole;
        }
        // The remainders are below one; the larger remainder has the smaller inverse.
        let rest_a = Fraction { numerator: a.denominator, denominator: a.numerator % a.denominator };
        let rest_b = Fraction { numerator: b.denominator, denominator: b.numerator % b.denominator };
        (a, b) = (rest_b, rest_a);
    }
}

impl PartialOrd for Fraction {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl PartialEq for Fraction {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Fraction {}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn no_bound_is_above_every_number() {
        assert!(Fraction::UNBOUNDED > Fraction::new(u128::MAX, 1));
        assert_eq!(Fraction::new(5, 0), Fraction::UNBOUNDED);
        assert_eq!(by_whole_parts(Fraction::UNBOUNDED, Fraction::ONE), Ordering::Greater);
    }

    #[test]
    fn numbers_too_large_to_multiply_are_still_told_apart() {
        let big = u128::MAX / 2;
        assert!(Fraction::new(big, big - 1) > Fraction::new(big + 1, big));
        assert_eq!(Fraction::new(big, 3), Fraction::new(big, 3));
    }

    proptest! {
        #[test]
        fn both_ways_of_comparing_agree(a in 0u128..5000, b in 0u128..5000, c in 0u128..5000, d in 1u128..5000) {
            let (x, y) = (Fraction::new(a, b), Fraction::new(c, d));
            prop_assert_eq!(x.cmp(&y), by_whole_parts(x, y));
        }
    }
}
