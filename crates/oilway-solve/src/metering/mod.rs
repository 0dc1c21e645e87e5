//! Metering of one progressive divider: which piston size feeds which point, in which way, at which period.
//!
//! A reader finds here, in the order of the work:
//!
//! - what is asked: [`OneDivider`], [`Wanted`], [`SectionSize`], [`Limits`], [`PeriodRange`];
//! - [`choose_sections`]: the exact search, giving an [`Optimum`] with its [`Proof`] or an [`Infeasible`] reason;
//! - [`feasible_periods`] and [`acceptable_inflow`]: the seam for a tree of dividers, where the pattern of a
//!   secondary is fixed and the question is which inflow serves it.
//!
//! # The question
//! ```text
//! choose T and one feed for each point i, with u_i the volume that feed gives per full cycle,
//!   lo_i q_i T ≤ 360000 u_i ≤ hi_i q_i T        band, percent of the demand q_i in mm³/h, T in s
//!   outlets of each size even in number         a piston has two outlets of its size
//!   N_min ≤ pistons ≤ N_max
//!   least Σ cost of pistons + Σ cost of joints and tees
//! ```
//! A feed is one outlet, both outlets of one piston joined, or outlets combined by tees. Each is an offer with a
//! volume, a cost, a number of outlets and a parity (the sizes it takes an odd number of outlets from), so the split
//! and joined form and the tee form are one and the same search.
//!
//! # Why the answer is exact
//! 1. The offers open to a point change only where T crosses an end of some window `[360000u/(hi q), 360000u/(lo q)]`.
//!    Between two such breakpoints lies a *class* of periods in which the set of offers is constant, hence also the
//!    least cost: at most `2·d·m + 1` classes for `d` distinct points and `m` offers.
//! 2. Inside a class the assignment is solved by dynamic programme over the points. A state is the parity of each
//!    size still open and the outlets spent beyond one per point; per state only the best survives. A size
//!    is closed as soon as no later point can take it, so that with points in order of demand the number of open
//!    sizes is the width of a band and not the length of the catalogue.
//! 3. Classes wait in a queue ordered by a lower bound (cheapest offers with an even total of outlets) and the search
//!    stops when no bound in the queue is below the best answer. Nothing is left out by judgement.
//!
//! # Effort
//! Per class `O(n · 2^w · x · o)`: `n` points, `w` open sizes, `x` spare outlets allowed by the piston limit (1 when
//! that limit cannot bind), `o` offers of one point in its band. With one outlet or a joined piston per point `w` is
//! the count of sizes in a band, mostly 1 to 4; with tees `w` may reach the number of sizes.
//! Points of equal demand, band and freedom share windows and offers.
//!
//! # Equal costs
//! Among answers of equal cost the search takes the least *worst error* `max(r, 1/r)` over all points and all periods
//! of the range (the same order as `|ln r|`, without logarithms), then the shortest period, then the least sum of the
//! points' errors in whole parts per million at that period, then the order of points and offers. All of it is
//! whole-number arithmetic: same question, same answer, on every machine.
//!
//! # Limits of validity
//! Delivered shares only: pressures, leakage past small pistons and the speed of the divider are judged elsewhere.

mod answer;
mod assignment;
mod diagnose;
mod faults;
mod fraction;
mod ground;
mod infeasible;
mod menu;
mod offers;
mod periods;
mod problem;
mod search;

pub use answer::{Choice, Optimum, Period, PistonUse, Proof};
pub use faults::Fault;
pub use fraction::Fraction;
pub use infeasible::{Infeasible, NearestPeriods, RatioGap};
pub use periods::{Span, acceptable_inflow, feasible_periods};
pub use problem::{Combining, Feed, Given, Limits, OneDivider, PeriodRange, SectionSize, Tees, Wanted};

/// The cheapest sections for these points, proven, or the reason why there are none.
///
/// The points of one divider in any order, the sizes it may be built from, and the limits of its kind. A point whose
/// feed is already settled says so in [`Wanted::allowed`]. For a secondary only the ratios of the shares matter:
/// call it with [`PeriodRange::free`].
///
/// # Errors
/// [`Infeasible`] names every fault of the question, or the smallest reason found why no divider serves the points,
/// or says that the effort allowed was spent before the proof was complete.
///
/// # Example
/// ```
/// use oilway_solve::metering::{choose_sections, Combining, Limits, PeriodRange, SectionSize, Wanted};
///
/// // Six equal points of 100 mm³/h on three pistons: 50 mm³ every 1800 s is just what they want.
/// let points = vec![Wanted::new(100, 90, 130); 6];
/// let sizes = [SectionSize { volume_mm3: 50, cost: 20 }];
/// let limits = Limits {
///     pistons: (3, 12),
///     combining: Combining::joined_at(3),
///     period: PeriodRange::seconds(600, 3600, 10),
///     effort: Limits::USUAL_EFFORT,
/// };
/// let found = choose_sections(&points, &sizes, &limits).expect("six outlets make three pistons");
/// assert_eq!((found.objective, found.proof.lower_bound, found.period.ticks), (60, 60, 1800));
///
/// // With two points two pistons at most could be used: the divider cannot be built.
/// assert!(choose_sections(&points[..2], &sizes, &limits).is_err());
/// ```
pub fn choose_sections(
    points: &[Wanted],
    sizes: &[SectionSize],
    limits: &Limits,
) -> Result<Optimum, Infeasible> {
    let faults = faults::faults(points, sizes, limits);
    if !faults.is_empty() {
        return Err(Infeasible::Faults { faults });
    }
    let ground = ground::Ground::new(points, sizes, limits);
    match search::search(&ground, limits.effort) {
        search::Verdict::Best { found, proof } => Ok(answer::optimum(&ground, &found, proof)),
        search::Verdict::Spent { found, proof } => Err(Infeasible::EffortSpent {
            lower_bound: proof.lower_bound,
            best: found.map(|found| Box::new(answer::optimum(&ground, &found, proof))),
        }),
        search::Verdict::Nothing => Err(diagnose::reason(&ground, limits.effort)),
    }
}
