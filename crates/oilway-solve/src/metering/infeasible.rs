//! Why there is no divider for these points: the smallest reason found, with its numbers.

use super::answer::{Optimum, Period};
use super::faults::Fault;
use super::fraction::Fraction;
use super::periods::Span;

/// Why there is no answer. Points and sizes are named by their place in the question, from zero.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Infeasible {
    /// The question itself is at fault.
    Faults {
        /// Every fault found.
        faults: Vec<Fault>,
    },
    /// The number of pistons that would serve the points lies outside what the divider allows, or the counts
    /// that can be reached leave out those allowed.
    PistonCount {
        /// Fewest and most pistons that would serve the points.
        needed: (u64, u64),
        /// Fewest and most pistons allowed.
        allowed: (u32, u32),
    },
    /// No two volumes on offer are in a ratio that keeps both points in their bands, at any period whatever.
    /// Cure: another size between, wider bands, or a divider of their own for the one or the other.
    BandAgainstSizes {
        /// The two points.
        points: (usize, usize),
        /// The ratios they accept and those on offer.
        ratios: Box<RatioGap>,
    },
    /// One or two points could be served, but at no period of the range.
    PeriodRange {
        /// The point or the two points.
        points: Vec<usize>,
        /// Periods outside the range, or between its steps, that would serve them.
        nearest: Box<NearestPeriods>,
    },
    /// Any two of the points have a period in common, but not all of them; leaving out any one would give one.
    NoCommonPeriod {
        /// The points.
        points: Vec<usize>,
    },
    /// At every period that suits all points some outlets stay without a partner: a piston has two outlets, and none
    /// may be closed. Cure: one more point, a joined piston, a tee, or a return of the outlet to the reservoir.
    Unpaired {
        /// Sizes of the outlets left over, as few as can be.
        sizes: Vec<usize>,
        /// A period at which it is these.
        period: Period,
    },
    /// The effort allowed was spent before there was a proof. Cure: more effort, fewer sizes, fewer outlets combined.
    EffortSpent {
        /// No divider costs less than this.
        lower_bound: u64,
        /// The best divider found, not proven to be the cheapest.
        best: Option<Box<Optimum>>,
    },
}

/// A gap between the ratios that two points accept and those that the sizes offer. The ratio is that of the volume of
/// the first point to that of the second.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RatioGap {
    /// Ratios that the two bands accept.
    pub accepted: Span,
    /// Next ratio on offer below, if any.
    pub below: Option<Fraction>,
    /// Next ratio on offer above, if any.
    pub above: Option<Fraction>,
}

/// Periods, in seconds, that would serve points which no period of the range serves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NearestPeriods {
    /// The nearest that are shorter than the range.
    pub below: Option<Span>,
    /// Some inside the range, but between its steps.
    pub between: Option<Span>,
    /// The nearest that are longer than the range.
    pub above: Option<Span>,
}
