//! The spread: what the open entries do to the answer, which of them matter, and where the verdict turns.
//!
//! The same model is run again: each open entry at its two ends while the rest stay typical, then all together over a
//! low-discrepancy sample (Halton, fixed order). Interval arithmetic is not used: it overstates.

use oilway_model::{Assumption, Design, Season, Span};
use oilway_physics::Ledger;
use oilway_text::message;
use oilway_units::{AnyQuantity, Dimension, Flow, Origin, Ratio};

use crate::evaluate::evaluate;

/// Result of a study.
#[derive(Clone, Debug)]
pub struct Study {
    /// Spans of the key numbers.
    pub spans: Vec<Span>,
    /// Open entries, the weightiest first.
    pub assumptions: Vec<Assumption>,
}

/// Samples of all entries together; few, because the ends one at a time already hold the extremes of a monotone model.
const SAMPLES: usize = 48;
/// Halving steps that find where a verdict turns.
const TURN_STEPS: usize = 12;

/// The key numbers of one run.
#[derive(Clone, Debug)]
struct Keys {
    values: Vec<(&'static str, AnyQuantity)>,
    margin: f64,
}

#[derive(Clone, Debug)]
struct OpenHere {
    at: String,
    dimension: Dimension,
    low: f64,
    typical: f64,
    high: f64,
    origin: Origin,
}

/// Studies the spread of a design.
pub fn study(design: &Design) -> Study {
    let mut work = design.clone();
    work.visit_entries(&mut |_, entry| {
        let typical = entry.typical_si();
        entry.put_si(typical);
    });
    let open = open_entries(&mut work);
    let typical = keys(&work);
    let mut spans: Vec<Span> = typical
        .values
        .iter()
        .map(|&(name, value)| Span { name, typical: value, low: value, high: value })
        .collect();
    let mut assumptions: Vec<Assumption> = Vec::with_capacity(open.len());
    for (number, entry) in open.iter().enumerate() {
        let ends = [entry.low, entry.high].map(|si| {
            put(&mut work, number, si);
            keys(&work)
        });
        ends.iter().for_each(|keys| widen(&mut spans, keys));
        assumptions.push(assumption(&mut work, number, entry, &ends));
        put(&mut work, number, entry.typical);
    }
    sample(&mut work, &open, &mut spans);
    assumptions.sort_by(|a, b| b.weight.total_cmp(&a.weight).then_with(|| a.at.cmp(&b.at)));
    Study { spans, assumptions }
}

fn open_entries(design: &mut Design) -> Vec<OpenHere> {
    let mut open = Vec::new();
    design.visit_entries(&mut |at, entry| {
        if entry.high_si() > entry.low_si() {
            open.push(OpenHere {
                at: at.to_owned(),
                dimension: entry.dimension(),
                low: entry.low_si(),
                typical: entry.typical_si(),
                high: entry.high_si(),
                origin: entry.origin(),
            });
        }
    });
    open
}

/// Puts a value into the open entry with this number.
fn put(design: &mut Design, number: usize, si: f64) {
    let mut at = 0;
    design.visit_entries(&mut |_, entry| {
        if entry.high_si() > entry.low_si() {
            if at == number {
                entry.put_si(si);
            }
            at += 1;
        }
    });
}

fn keys(design: &Design) -> Keys {
    let answer = evaluate(design, &mut Ledger::off());
    let cold = answer.seasons.iter().find(|s| s.season == Season::Cold);
    let mut values = Vec::new();
    let mut margin = f64::NEG_INFINITY;
    if let Some(cold) = cold {
        let start = cold.paths[cold.worst_start].start_rested;
        let moving = cold.paths[cold.worst_moving].moving;
        margin = 1.0 - start.max(moving) / cold.pump.stall.max(oilway_units::Pressure::from_pascals(1.0));
        values.push(("peak.cold.start", start.into()));
        values.push(("peak.cold.moving", moving.into()));
        values.push(("stall", cold.pump.stall.into()));
    }
    let required: Flow = answer.deliveries.iter().map(|d| d.required).sum();
    let least = answer
        .deliveries
        .iter()
        .filter(|d| d.required > Flow::ZERO)
        .map(|d| d.delivered / d.required)
        .fold(f64::INFINITY, f64::min);
    values.push(("demand.total", required.into()));
    values
        .push(("delivered.least", Ratio::from_fraction(if least.is_finite() { least } else { 0.0 }).into()));
    values.push(("refill", answer.supply.refill.into()));
    if let Some(limit) = &answer.cold_limit {
        values.push(("cold.limit", limit.temperature.into()));
    }
    Keys { values, margin }
}

fn widen(spans: &mut [Span], keys: &Keys) {
    for span in spans {
        if let Some((_, value)) = keys.values.iter().find(|(name, _)| *name == span.name) {
            span.low.si = span.low.si.min(value.si);
            span.high.si = span.high.si.max(value.si);
        }
    }
}

fn assumption(work: &mut Design, number: usize, entry: &OpenHere, ends: &[Keys; 2]) -> Assumption {
    let swing = (ends[0].margin - ends[1].margin).abs();
    let demand_swing = relative_swing(ends, "demand.total");
    let turns = (ends[0].margin < 0.0) != (ends[1].margin < 0.0);
    let quantity = |si| AnyQuantity { dimension: entry.dimension, si };
    let what = match entry.origin {
        Origin::Assumed(key) => oilway_text::Message::new(key),
        Origin::Said | Origin::Measured | Origin::Plate => message!("solve-range-said"),
    };
    Assumption {
        at: entry.at.clone(),
        what,
        low: quantity(entry.low),
        high: quantity(entry.high),
        weight: if swing.is_finite() { swing.max(0.25 * demand_swing) } else { 1.0 },
        turns_at: turns.then(|| quantity(turn(work, number, entry, ends[0].margin < 0.0))),
    }
}

fn relative_swing(ends: &[Keys; 2], name: &str) -> f64 {
    let of = |keys: &Keys| keys.values.iter().find(|(n, _)| *n == name).map_or(0.0, |(_, v)| v.si);
    let (a, b) = (of(&ends[0]), of(&ends[1]));
    let largest = a.abs().max(b.abs());
    if largest > 0.0 { (a - b).abs() / largest } else { 0.0 }
}

/// The value at which the margin changes sign, by halving.
fn turn(work: &mut Design, number: usize, entry: &OpenHere, low_fails: bool) -> f64 {
    let (mut a, mut b) = (entry.low, entry.high);
    for _ in 0..TURN_STEPS {
        let middle = 0.5 * (a + b);
        put(work, number, middle);
        if (keys(work).margin < 0.0) == low_fails { a = middle } else { b = middle }
    }
    0.5 * (a + b)
}

/// All open entries together, at the points of a Halton sequence.
fn sample(work: &mut Design, open: &[OpenHere], spans: &mut [Span]) {
    if open.len() < 2 {
        return;
    }
    for run in 1..=SAMPLES {
        let mut number = 0;
        work.visit_entries(&mut |_, entry| {
            let (low, high) = (entry.low_si(), entry.high_si());
            if high > low {
                let share = halton(run, PRIMES[number % PRIMES.len()], number / PRIMES.len());
                entry.put_si(low + (high - low) * share);
                number += 1;
            }
        });
        widen(spans, &keys(work));
    }
}

const PRIMES: [usize; 16] = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53];

/// The radical inverse of `index` in a prime base, turned by a golden step for entries beyond the list of primes.
fn halton(index: usize, base: usize, round: usize) -> f64 {
    let (mut rest, mut scale, mut value) = (index, 1.0 / base as f64, 0.0);
    while rest > 0 {
        value += (rest % base) as f64 * scale;
        rest /= base;
        scale /= base as f64;
    }
    let turned = value + 0.618_033_988_749_894_9 * round as f64;
    turned - libm::floor(turned)
}
