//! Fields that several kinds share, and short ways to declare the others.

use core::f64::consts::PI;

use oilway_units::Dimension;

use super::{PointField, Wanted};
use crate::Range;

/// One millimetre in SI.
pub(super) const MM: f64 = 1e-3;
/// One turn, swing or cycle a minute in SI.
pub(super) const PER_MINUTE: f64 = 1.0 / 60.0;
/// One degree in SI.
pub(super) const DEGREE: f64 = PI / 180.0;
/// One hour in SI.
pub(super) const HOUR: f64 = 3600.0;

/// The least, the largest, and what is taken where nobody knows: lowest, typical, highest. In SI.
pub(super) struct Span {
    pub(super) range: (f64, f64),
    pub(super) unknown: [f64; 3],
}

/// A span from numbers in a unit of this size.
pub(super) const fn span(unit: f64, range: (f64, f64), unknown: [f64; 3]) -> Span {
    Span {
        range: (range.0 * unit, range.1 * unit),
        unknown: [unknown[0] * unit, unknown[1] * unit, unknown[2] * unit],
    }
}

/// A quantity that the demand needs: left out, it is unknown.
pub(super) const fn needed(
    name: &'static str,
    dimension: Dimension,
    span: Span,
    meaning: &'static str,
) -> PointField {
    let (low, high) = span.range;
    let wanted = Wanted::Quantity { dimension, range: Range::Between(low, high), unknown: span.unknown };
    PointField { name, wanted, needed: true, meaning }
}

/// A quantity that need not apply: left out, it does not.
pub(super) const fn if_any(
    name: &'static str,
    dimension: Dimension,
    span: Span,
    meaning: &'static str,
) -> PointField {
    PointField { needed: false, ..needed(name, dimension, span, meaning) }
}

/// A word out of a list; the first is taken where nobody knows.
pub(super) const fn word(
    name: &'static str,
    words: &'static [&'static str],
    meaning: &'static str,
) -> PointField {
    PointField { name, wanted: Wanted::Word(words), needed: true, meaning }
}

const SPEEDS: (f64, f64) = (0.001, 100_000.0);
const SWINGS: (f64, f64) = (0.001, 10_000.0);

/// Speed of whatever turns, where the demand needs it.
pub(super) const SPEED: PointField = needed(
    "speed",
    Dimension::Frequency,
    span(PER_MINUTE, SPEEDS, [10.0, 100.0, 1500.0]),
    "Turns of the moving ring or shaft in a time, at its fastest lasting speed: nameplate of the drive and its ratio, or count turns against a clock. Not counted where the motion is swings.",
);

/// Speed of whatever turns, where only remarks and checks use it.
pub(super) const SPEED_IF_ANY: PointField = if_any(
    "speed",
    Dimension::Frequency,
    span(PER_MINUTE, SPEEDS, [1.0, 30.0, 300.0]),
    "Turns of the moving part in a time, if it turns. The rate does not follow from it; checks and remarks use it.",
);

/// How far it swings.
pub(super) const SWING: PointField = if_any(
    "swing",
    Dimension::Angle,
    span(DEGREE, (0.1, 720.0), [10.0, 45.0, 180.0]),
    "Whole angle from one end of the swing to the other, if it swings: from the drawing or with a protractor.",
);

/// How often it swings.
pub(super) const SWING_RATE: PointField = if_any(
    "swing_rate",
    Dimension::Frequency,
    span(PER_MINUTE, SWINGS, [1.0, 10.0, 60.0]),
    "Full swings in a time, there and back, if it swings: count them against a clock.",
);

/// Whether it turns or swings.
pub(super) const MOTION: PointField = word(
    "motion",
    &["turns", "swings"],
    "Turns: goes round and round. Swings: goes to and fro; then swing and swing_rate are needed of a rolling bearing.",
);
