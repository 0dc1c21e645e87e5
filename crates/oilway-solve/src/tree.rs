//! Metering of the whole tree of dividers.
//!
//! Only shares matter inside a secondary, so each is solved on its own with its period free; what it hands up is the span of
//! inflow that keeps all its points inside their bands. The divider above sees it as a point with that band. The exact search is
//! [`crate::metering`]; an optimiser over the whole tree at once can take this file's place later.

use std::sync::Arc;

use oilway_catalogue::{Catalogue, Part};
use oilway_model::{Feed as FedBy, Job, SectionWish};
use oilway_text::message;
use oilway_units::{Flow, Quantity, Ratio, Time, Volume};

use crate::Obstacle;
use crate::given_sections::keep_given;
use crate::infeasible::{Question, explain};
use crate::layout::price;
use crate::metering::{
    Combining, Feed, Infeasible, Limits, Optimum, PeriodRange, SectionSize, Wanted, choose_sections,
};
use crate::need::Need;
use crate::ranges::{Range, allowed, ranges};

/// What an outlet group serves: a point or a divider below, by index in the job.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Served {
    /// A point.
    Point(usize),
    /// A divider.
    Divider(usize),
}

/// How one consumer is fed by its divider.
#[derive(Clone, Debug)]
pub(crate) struct FedConsumer {
    /// The consumer.
    pub served: Served,
    /// How it is fed, sizes by index in `sizes`.
    pub feed: Feed,
    /// Volume for each cycle of the divider.
    pub volume: Volume,
}

/// A divider with its sections chosen.
#[derive(Clone, Debug)]
pub(crate) struct Metered {
    /// Inlet and end section.
    pub body: Arc<Part>,
    /// The sizes that its consumers name.
    pub sizes: Vec<Arc<Part>>,
    /// Its consumers.
    pub fed: Vec<FedConsumer>,
    /// Sections as the job gave them, kept in their order; none where they were open.
    pub given: Option<Vec<SectionWish>>,
    /// Volume of a full cycle.
    pub cycle: Volume,
    /// Least inflow that gives every consumer its lower edge.
    pub inflow_low: Flow,
    /// Most inflow that no consumer's upper edge forbids.
    pub inflow_high: Flow,
    /// How far the upper edges had to be widened, 1 if not at all.
    pub widened: f64,
    /// Whether tees were needed.
    pub teed: bool,
    /// Whether the search proved that no cheaper sections serve.
    pub proven: bool,
}

/// The whole tree, and how often the first divider must turn.
#[derive(Clone, Debug)]
pub(crate) struct TreeMetering {
    /// One for each divider of the job.
    pub dividers: Vec<Metered>,
    /// Volume of a full cycle of the first divider.
    pub cycle: Volume,
    /// Running time of the machine for one cycle of the first divider.
    pub rhythm: Rhythm,
}

/// The times that one cycle of the first divider may take.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Rhythm {
    /// Faster, and somebody gets more than his band allows.
    pub shortest: Time,
    /// Everybody gets what he needs, unless another would get too much.
    pub wanted: Time,
    /// Slower, and somebody gets less than his band allows.
    pub longest: Time,
}

/// What a divider is asked for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Ask {
    /// Who asks.
    pub served: Served,
    /// The least that keeps him in his band.
    pub least: Flow,
    /// What he needs; between the least and the most.
    pub full: Flow,
    /// The most.
    pub most: Flow,
}

/// A tenth of a cubic millimetre an hour is fine enough for any demand, and keeps large systems inside 32 bits.
const DEMAND_STEP: f64 = 10.0;
/// An upper edge that does not count, in multiples of the lower.
const NO_EDGE: f64 = 40.0;
/// Widening of the upper edges that is tried, in turn, where the sizes on offer cannot keep the bands.
const WIDENINGS: [f64; 5] = [1.0, 1.25, 1.6, 2.5, 6.3];

/// Chooses the sections of all dividers of a job, round after round: what is asked again is not searched again.
#[derive(Debug)]
pub(crate) struct Meter<'a> {
    job: &'a Job,
    ranges: Vec<Range>,
    /// For each divider what hangs on it, points first.
    fed: Vec<Vec<Served>>,
    /// For each divider what it was asked last, and the answer.
    answered: Vec<Option<(Vec<Ask>, Metered)>>,
}

impl<'a> Meter<'a> {
    /// A job on a catalogue.
    pub(crate) fn new(job: &'a Job, catalogue: &Catalogue) -> Self {
        let mut fed = vec![Vec::new(); job.dividers.len()];
        for (number, point) in job.points.iter().enumerate() {
            if let Some(on) = fed.get_mut(point.divider) {
                on.push(Served::Point(number));
            }
        }
        for (number, wish) in job.dividers.iter().enumerate() {
            if let FedBy::Divider(above) = wish.fed_by
                && let Some(on) = fed.get_mut(above)
            {
                on.push(Served::Divider(number));
            }
        }
        let answered = vec![None; job.dividers.len()];
        Meter { job, ranges: ranges(catalogue), fed, answered }
    }

    /// Chooses the sections for these needs.
    ///
    /// # Errors
    /// Each divider for which no sections serve, with the reason.
    pub(crate) fn meter(&mut self, needs: &[Need]) -> Result<TreeMetering, Vec<Obstacle>> {
        let mut metered: Vec<Option<Metered>> = vec![None; self.job.dividers.len()];
        let mut obstacles = Vec::new();
        // Parents stand before children in a job, so backwards every secondary is solved before its primary.
        for divider in (0..self.job.dividers.len()).rev() {
            let asks = asks_of(self.job, divider, &self.fed[divider], needs, &metered);
            match asks.and_then(|asks| self.one_divider(divider, asks)) {
                Ok(found) => metered[divider] = Some(found),
                Err(obstacle) => obstacles.push(obstacle),
            }
        }
        if !obstacles.is_empty() {
            obstacles.reverse();
            return Err(obstacles);
        }
        let dividers: Vec<Metered> = metered.into_iter().flatten().collect();
        let first = self
            .job
            .dividers
            .iter()
            .position(|wish| wish.fed_by == FedBy::Pump)
            .and_then(|number| dividers.get(number));
        let Some(first) = first else { return Err(vec![no_first_divider()]) };
        let (cycle, rhythm) = (first.cycle, rhythm(first, self.job.conditions.practice.band_low.get()));
        Ok(TreeMetering { dividers, cycle, rhythm })
    }

    fn one_divider(&mut self, divider: usize, asks: Vec<Ask>) -> Result<Metered, Obstacle> {
        if let Some((_, answer)) = self.answered[divider].as_ref().filter(|(asked, _)| *asked == asks) {
            return Ok(answer.clone());
        }
        let found = one_divider(self.job, &self.ranges, divider, &asks)?;
        self.answered[divider] = Some((asks, found.clone()));
        Ok(found)
    }
}

fn no_first_divider() -> Obstacle {
    Obstacle {
        at: "divider".to_owned(),
        what: message!("solve-one-first-divider", found = 0_usize),
        cure: message!("solve-cure-one-first-divider"),
    }
}

/// The point that is served least gets what it needs, unless another would then get more than its band allows.
fn rhythm(first: &Metered, band_low: Ratio) -> Rhythm {
    let full = full_inflow(first, band_low);
    Rhythm {
        shortest: first.cycle / first.inflow_high,
        wanted: first.cycle / full.min(first.inflow_high),
        longest: first.cycle / first.inflow_low,
    }
}

/// The inflow at which the consumer that is served least gets what it needs: every lower edge is the same share of a need.
fn full_inflow(metered: &Metered, band_low: Ratio) -> Flow {
    metered.inflow_low / band_low.fraction().max(0.01)
}

fn asks_of(
    job: &Job,
    divider: usize,
    fed: &[Served],
    needs: &[Need],
    metered: &[Option<Metered>],
) -> Result<Vec<Ask>, Obstacle> {
    let ask = |served: Served| match served {
        Served::Point(point) => Ok(ask_of_point(served, &needs[point])),
        Served::Divider(below) => {
            let solved = metered[below].as_ref().ok_or_else(|| Obstacle {
                at: format!("divider.{}", job.dividers[divider].name),
                what: message!("solve-divider-below-failed", below = job.dividers[below].name.as_str()),
                cure: message!("solve-cure-below-first"),
            })?;
            let full = full_inflow(solved, job.conditions.practice.band_low.get()).min(solved.inflow_high);
            Ok(Ask { served, least: solved.inflow_low, full, most: solved.inflow_high })
        }
    };
    let asks: Vec<Ask> = fed.iter().copied().map(ask).collect::<Result<_, Obstacle>>()?;
    if asks.is_empty() {
        return Err(Obstacle {
            at: format!("divider.{}", job.dividers[divider].name),
            what: message!("solve-divider-serves-nothing"),
            cure: message!("solve-cure-serves-nothing"),
        });
    }
    Ok(asks)
}

fn ask_of_point(served: Served, need: &Need) -> Ask {
    let edge = need.band_high.map_or(NO_EDGE, |high| high.fraction());
    Ask {
        served,
        least: need.required * need.band_low.fraction(),
        full: need.required,
        most: need.required * edge,
    }
}

fn one_divider(job: &Job, ranges: &[Range], divider: usize, asks: &[Ask]) -> Result<Metered, Obstacle> {
    let wish = &job.dividers[divider];
    let at = format!("divider.{}", wish.name);
    let ranges = allowed(ranges, wish);
    if ranges.is_empty() {
        let what = match wish.part.chosen() {
            Some(id) => message!("solve-no-such-divider", part = id.as_str()),
            None => message!("solve-no-divider-at-all"),
        };
        return Err(Obstacle { at, what, cure: message!("solve-add-part") });
    }
    if let Some(sections) = wish.sections.chosen() {
        return keep_given(job, &ranges, divider, sections, asks);
    }
    // The full amount first: the lower edge of a band is a tolerance, not a target.
    let full: Vec<Ask> = asks.iter().map(|ask| Ask { least: ask.full, ..*ask }).collect();
    let mut reason = None;
    let mut found = cheapest(&ranges, &full, asks, 1.0, &mut None);
    for widened in WIDENINGS {
        found = found.or_else(|| cheapest(&ranges, asks, asks, widened, &mut reason));
    }
    if let Some(found) = found {
        return Ok(found);
    }
    let name = |ask: usize| name_of(job, asks[ask].served);
    let (what, cure) = reason.map_or_else(
        || (message!("solve-no-sections", consumers = asks.len()), message!("solve-cure-split-divider")),
        |(why, range)| {
            let sizes: Vec<Volume> = range.sizes.iter().map(|(_, view)| view.volume).collect();
            explain(
                &why,
                &Question { name: &name, consumers: asks.len(), sizes: &sizes, time_scale: DEMAND_STEP },
            )
        },
    );
    Err(Obstacle { at, what, cure })
}

/// The cheapest over all bodies that serves what is strictly asked; the spans handed up are those of the bands.
fn cheapest<'r>(
    ranges: &[&'r Range],
    strict: &[Ask],
    bands: &[Ask],
    widened: f64,
    reason: &mut Option<(Infeasible, &'r Range)>,
) -> Option<Metered> {
    let mut best: Option<(i64, Metered)> = None;
    for (number, &range) in ranges.iter().enumerate() {
        // Ranges come with the cheapest body first: one that builds what an earlier one builds only costs more.
        let dearer = best.as_ref().is_some_and(|(cost, _)| range.least_cost(strict.len()) >= *cost);
        if dearer || ranges[..number].iter().any(|before| before.builds_like(range)) {
            continue;
        }
        match search(range, strict, bands, widened) {
            Ok((cost, found)) if best.as_ref().is_none_or(|(c, _)| cost < *c) => best = Some((cost, found)),
            Ok(_) => {}
            // The first range and the bands as they are: what comes later only says more of the same.
            Err(why) => *reason = reason.take().or(Some((why, range))),
        }
    }
    best.map(|(_, found)| found)
}

pub(crate) fn name_of(job: &Job, served: Served) -> String {
    match served {
        Served::Point(p) => job.points[p].name.clone(),
        Served::Divider(d) => job.dividers[d].name.clone(),
    }
}

/// Whole cubic millimetres; catalogues hold preferred numbers, which are whole.
fn whole(volume: Volume) -> u32 {
    let v = volume.cubic_millimetres().round();
    if v >= 1.0 && v <= f64::from(u32::MAX) { v as u32 } else { 0 }
}

/// A demand for the whole-number search and its band in percent.
fn wanted(ask: &Ask, widened: f64) -> Wanted {
    let demand = (ask.least.cubic_centimetres_per_hour() * 1000.0 * DEMAND_STEP).ceil().clamp(1.0, 4e9);
    let edge = (ask.most / ask.least * widened * 100.0).floor().clamp(100.0, 100_000.0);
    Wanted::new(demand as u32, 100, edge as u32)
}

fn search(range: &Range, strict: &[Ask], bands: &[Ask], widened: f64) -> Result<(i64, Metered), Infeasible> {
    let wanted: Vec<Wanted> = strict.iter().map(|ask| wanted(ask, widened)).collect();
    let sizes: Vec<SectionSize> = range
        .sizes
        .iter()
        .map(|(part, view)| SectionSize {
            volume_mm3: whole(view.volume),
            cost: u32::try_from(price(part)).unwrap_or(u32::MAX),
        })
        .collect();
    let pistons = range.pistons();
    let joinable = range.sizes.iter().all(|(_, view)| view.joinable);
    let ask = |combining: Combining| {
        let period = PeriodRange::free(&wanted, &sizes, &combining);
        choose_sections(
            &wanted,
            &sizes,
            &Limits { pistons, combining, period, effort: Limits::USUAL_EFFORT / 30 },
        )
    };
    let join_cost = joinable.then_some(JOIN_COST);
    let tees = Some(crate::metering::Tees { most_outlets: 3, cost: TEE_COST });
    let plain = ask(Combining { join_cost, tees: None }).or_else(best_so_far);
    let (found, teed) = match plain {
        Ok(found) => (found, false),
        Err(first) => match ask(Combining { join_cost, tees }).or_else(best_so_far) {
            Ok(found) => (found, true),
            Err(_) => return Err(first),
        },
    };
    let cost = price(&range.body) + i64::try_from(found.objective).unwrap_or(i64::MAX / 4);
    let proven = found.proof.lower_bound == found.objective;
    Ok((cost, Metered { proven, ..metered(range, bands, &found, widened, teed) }))
}

/// A search that ran out of effort may still have found sections, only without the proof that there are no cheaper ones.
fn best_so_far(reason: Infeasible) -> Result<Optimum, Infeasible> {
    match reason {
        Infeasible::EffortSpent { best: Some(best), .. } => Ok(*best),
        other => Err(other),
    }
}

/// Joining the outlets of a section costs a screw; hundredths of the catalogue's currency. Common practice, no source.
const JOIN_COST: u32 = 50;
/// A tee and its fittings, hundredths of the catalogue's currency. Common practice, no source.
const TEE_COST: u32 = 900;

fn metered(range: &Range, asks: &[Ask], optimum: &Optimum, widened: f64, teed: bool) -> Metered {
    let fed: Vec<FedConsumer> = asks
        .iter()
        .zip(&optimum.choices)
        .map(|(ask, choice)| FedConsumer {
            served: ask.served,
            feed: choice.feed.clone(),
            volume: Volume::from_cubic_millimetres(choice.volume as f64),
        })
        .collect();
    let cycle = fed.iter().map(|f| f.volume).sum();
    with_spans(range, asks, fed, cycle, widened, teed)
}

/// Adds the span of inflow that keeps every consumer inside its band.
pub(crate) fn with_spans(
    range: &Range,
    asks: &[Ask],
    fed: Vec<FedConsumer>,
    cycle: Volume,
    widened: f64,
    teed: bool,
) -> Metered {
    let spans =
        asks.iter().zip(&fed).map(|(ask, f)| (ask.least * (cycle / f.volume), ask.most * (cycle / f.volume)));
    let (low, high) =
        spans.fold((Flow::ZERO, Flow::from_si(f64::MAX)), |(low, high), (a, b)| (low.max(a), high.min(b)));
    Metered {
        body: Arc::clone(&range.body),
        sizes: range.sizes.iter().map(|(part, _)| Arc::clone(part)).collect(),
        fed,
        given: None,
        cycle,
        inflow_low: low,
        // Where the bands do not meet the lower edges rule, and the checker tells who gets too much.
        inflow_high: high.max(low),
        widened,
        teed,
        proven: true,
    }
}
