//! The spread: what the open entries do to the answer, which of them matter, and where the verdict turns.
//!
//! The same model is run again: each open entry at its two ends while the rest stay typical, then all at the ends that make a number
//! least and most, then all together over a low-discrepancy sample (Halton, fixed order). Interval arithmetic is not used: it
//! overstates.

use oilway_model::{Assumption, Design, Season, Span, Verdict};
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

impl Study {
    /// The verdict once it is known what nobody knows: where a fact of the job can turn it inside its range, nobody can tell yet. A
    /// rule of practice that could turn it asks for care, not for a measurement.
    pub fn weigh(&self, verdict: Verdict) -> Verdict {
        let turns = |practice: bool| {
            self.assumptions.iter().any(|a| a.turns_at.is_some() && a.at.starts_with("practice.") == practice)
        };
        match verdict {
            Verdict::Works | Verdict::WorksWithCare if turns(false) => Verdict::CannotTellYet,
            Verdict::Works if turns(true) => Verdict::WorksWithCare,
            other => other,
        }
    }
}

/// Samples of all entries together; few, because the corners already hold the extremes of a model that goes one way with each entry.
const SAMPLES: usize = 48;
/// Halving steps that find where a verdict turns.
const TURN_STEPS: usize = 12;

/// The key numbers of one run.
#[derive(Clone, Debug)]
struct Keys {
    values: Vec<(&'static str, AnyQuantity)>,
    margin: f64,
    /// Whether a point gets less than its band allows.
    starves: bool,
}

impl Keys {
    /// Whether the system fails: the pump stands still on the coldest day, or a point starves. How much a point should get at least is a
    /// rule that somebody set and no fact that could be measured: moving the rule itself turns no verdict.
    fn fails(&self, at: &str) -> bool {
        self.margin < 0.0 || (self.starves && !SET_BY_RULE.contains(&at))
    }
}

/// The entries that say how much is enough.
const SET_BY_RULE: [&str; 4] = ["practice.floor", "practice.band_low", "practice.band_high", "limits.age"];

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
    let mut alone: Vec<[Keys; 2]> = Vec::with_capacity(open.len());
    for (number, entry) in open.iter().enumerate() {
        let ends = [entry.low, entry.high].map(|si| {
            put(&mut work, number, si);
            keys(&work)
        });
        ends.iter().for_each(|keys| widen(&mut spans, keys));
        assumptions.push(assumption(&mut work, number, entry, &typical, &ends));
        put(&mut work, number, entry.typical);
        alone.push(ends);
    }
    corners(&mut work, &open, &alone, &mut spans);
    sample(&mut work, &open, &mut spans);
    assumptions.sort_by(|a, b| {
        // What can turn the verdict is asked first, however little it swings the pressure.
        let turns = b.turns_at.is_some().cmp(&a.turns_at.is_some());
        turns.then_with(|| b.weight.total_cmp(&a.weight)).then_with(|| a.at.cmp(&b.at))
    });
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
    // A hair is forgiven where a choice lands on the edge of a band.
    let starves =
        |d: &oilway_model::Delivery| d.delivered < d.required * d.band_low.fraction() * (1.0 - 1e-9);
    let starves = answer.deliveries.iter().any(starves);
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
    Keys { values, margin, starves }
}

fn widen(spans: &mut [Span], keys: &Keys) {
    for span in spans {
        if let Some((_, value)) = keys.values.iter().find(|(name, _)| *name == span.name) {
            span.low.si = span.low.si.min(value.si);
            span.high.si = span.high.si.max(value.si);
        }
    }
}

fn assumption(
    work: &mut Design,
    number: usize,
    entry: &OpenHere,
    typical: &Keys,
    ends: &[Keys; 2],
) -> Assumption {
    let swing = (ends[0].margin - ends[1].margin).abs();
    let demand_swing = relative_swing(ends, "demand.total");
    let turning = [entry.low, entry.high]
        .into_iter()
        .zip(ends)
        .find(|(_, keys)| keys.fails(&entry.at) != typical.fails(&entry.at));
    let turns_at = turning.map(|(end, _)| turn(work, number, entry, end, typical.fails(&entry.at)));
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
        turns_at: turns_at.map(quantity),
    }
}

fn relative_swing(ends: &[Keys; 2], name: &str) -> f64 {
    let (a, b) = (value_of(&ends[0], name), value_of(&ends[1], name));
    let largest = a.abs().max(b.abs());
    if largest > 0.0 { (a - b).abs() / largest } else { 0.0 }
}

/// The value between the typical one and an end at which the verdict turns, by halving.
fn turn(work: &mut Design, number: usize, entry: &OpenHere, end: f64, fails_typically: bool) -> f64 {
    let (mut a, mut b) = (entry.typical, end);
    for _ in 0..TURN_STEPS {
        let middle = 0.5 * (a + b);
        put(work, number, middle);
        if keys(work).fails(&entry.at) == fails_typically { a = middle } else { b = middle }
    }
    0.5 * (a + b)
}

/// For each key number the two corners at which every entry stands at the end that alone made it least, and most. Where the number goes
/// one way with each entry, whatever the others are, these are its extremes.
fn corners(work: &mut Design, open: &[OpenHere], alone: &[[Keys; 2]], spans: &mut [Span]) {
    if open.len() < 2 {
        return;
    }
    let names: Vec<&'static str> = spans.iter().map(|span| span.name).collect();
    for name in names {
        for most in [false, true] {
            let ends = open.iter().zip(alone).map(|(entry, [low, high])| {
                let (a, b) = (value_of(low, name), value_of(high, name));
                if (b > a) == most { entry.high } else { entry.low }
            });
            put_all(work, &ends.collect::<Vec<_>>());
            widen(spans, &keys(work));
        }
    }
}

/// Puts a value into every open entry.
fn put_all(design: &mut Design, values: &[f64]) {
    let mut values = values.iter();
    design.visit_entries(&mut |_, entry| {
        if entry.high_si() > entry.low_si()
            && let Some(&si) = values.next()
        {
            entry.put_si(si);
        }
    });
}

fn value_of(keys: &Keys, name: &str) -> f64 {
    keys.values.iter().find(|(n, _)| *n == name).map_or(0.0, |(_, v)| v.si)
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

#[cfg(test)]
mod tests;
