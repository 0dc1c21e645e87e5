//! Metering of the whole tree of dividers.
//!
//! Only shares matter inside a secondary, so each is solved on its own with its period free; what it hands up is the span of
//! inflow that keeps all its points inside their bands. The divider above sees it as a point with that band. The exact search is
//! [`crate::metering`]; an optimiser over the whole tree at once can take this file's place later.

use std::sync::Arc;

use oilway_catalogue::kinds::{Divider as Body, Section as SectionPart};
use oilway_catalogue::{Catalogue, Part};
use oilway_model::{Choice, Feed as FedBy, Job, SectionWish};
use oilway_text::message;
use oilway_units::{Flow, Time, Volume};

use crate::Obstacle;
use crate::layout::price;
use crate::metering::{Combining, Feed, Infeasible, Limits, Optimum, PeriodRange, SectionSize, Wanted, choose_sections};
use crate::need::Need;

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
}

/// The whole tree, and the time of one cycle of the first divider.
#[derive(Clone, Debug)]
pub(crate) struct TreeMetering {
    /// One for each divider of the job.
    pub dividers: Vec<Metered>,
    /// Running time of the machine for one cycle of the first divider.
    pub period: Time,
}

/// What a divider is asked for.
#[derive(Clone, Copy, Debug)]
struct Ask {
    served: Served,
    least: Flow,
    most: Flow,
}

/// A tenth of a cubic millimetre an hour is fine enough for any demand, and keeps large systems inside 32 bits.
const DEMAND_STEP: f64 = 10.0;
/// An upper edge that does not count, in multiples of the lower.
const NO_EDGE: f64 = 40.0;
/// Widening of the upper edges that is tried, in turn, where the sizes on offer cannot keep the bands.
const WIDENINGS: [f64; 5] = [1.0, 1.25, 1.6, 2.5, 6.3];

/// Chooses the sections of all dividers.
///
/// # Errors
/// Each divider for which no sections serve, with the reason.
pub(crate) fn meter(job: &Job, catalogue: &Catalogue, needs: &[Need]) -> Result<TreeMetering, Vec<Obstacle>> {
    let mut metered: Vec<Option<Metered>> = vec![None; job.dividers.len()];
    let mut obstacles = Vec::new();
    // Parents stand before children in a job, so backwards every secondary is solved before its primary.
    for divider in (0..job.dividers.len()).rev() {
        match asks_of(job, divider, needs, &metered).and_then(|asks| one_divider(job, catalogue, divider, &asks)) {
            Ok(found) => metered[divider] = Some(found),
            Err(obstacle) => obstacles.push(obstacle),
        }
    }
    if !obstacles.is_empty() {
        obstacles.reverse();
        return Err(obstacles);
    }
    let dividers: Vec<Metered> = metered.into_iter().flatten().collect();
    let period = first_period(job, &dividers);
    Ok(TreeMetering { dividers, period })
}

/// The period of the first divider: as given by a fixed pause, else such that the point that is served least gets what it
/// needs, unless another would then get more than its band allows.
fn first_period(job: &Job, dividers: &[Metered]) -> Time {
    if let Some(pause) = job.pause.chosen() {
        return *pause;
    }
    let root = job.dividers.iter().zip(dividers).find(|(wish, _)| wish.fed_by == FedBy::Pump).map(|(_, d)| d);
    let Some(root) = root else { return Time::from_hours(1.0) };
    let full = root.inflow_low / job.conditions.practice.band_low.get().fraction().max(0.01);
    root.cycle / full.min(root.inflow_high)
}

fn asks_of(job: &Job, divider: usize, needs: &[Need], metered: &[Option<Metered>]) -> Result<Vec<Ask>, Obstacle> {
    let points = job.points.iter().enumerate().filter(|(_, p)| p.divider == divider).map(|(number, _)| {
        let need = &needs[number];
        let edge = need.band_high.map_or(NO_EDGE, |high| high.fraction());
        Ok(Ask {
            served: Served::Point(number),
            least: need.required * need.band_low.fraction(),
            most: need.required * edge,
        })
    });
    let below = job.dividers.iter().enumerate().filter(|(_, d)| d.fed_by == FedBy::Divider(divider)).map(|(number, wish)| {
        let solved = metered[number].as_ref().ok_or_else(|| Obstacle {
            at: format!("divider.{}", job.dividers[divider].name),
            what: message!("solve-divider-below-failed", below = wish.name.as_str()),
            cure: message!("solve-cure-below-first"),
        })?;
        Ok(Ask { served: Served::Divider(number), least: solved.inflow_low, most: solved.inflow_high })
    });
    let asks: Vec<Ask> = points.chain(below).collect::<Result<_, Obstacle>>()?;
    if asks.is_empty() {
        return Err(Obstacle {
            at: format!("divider.{}", job.dividers[divider].name),
            what: message!("solve-divider-serves-nothing"),
            cure: message!("solve-cure-serves-nothing"),
        });
    }
    Ok(asks)
}

/// A body and the sections that fit it.
struct Range {
    body: Arc<Part>,
    limits: Body,
    sizes: Vec<(Arc<Part>, SectionPart)>,
}

fn ranges(job: &Job, catalogue: &Catalogue, divider: usize) -> Vec<Range> {
    let wish = &job.dividers[divider];
    let mut ranges: Vec<Range> = catalogue
        .of_kind("divider")
        .filter(|part| wish.part.chosen().is_none_or(|id| *id == part.id))
        .filter_map(|part| {
            let limits = Body::of(part)?;
            let mut sizes: Vec<_> = catalogue
                .of_kind("section")
                .filter_map(|s| SectionPart::of(s).map(|view| (Arc::clone(s), view)))
                .filter(|(_, view)| view.fits.contains(&part.id))
                .collect();
            sizes.sort_by(|a, b| a.1.volume.total_cmp(&b.1.volume).then_with(|| a.0.id.cmp(&b.0.id)));
            Some(Range { body: Arc::clone(part), limits, sizes })
        })
        .collect();
    // Somebody must see that it cycles: the first divider carries the switch wherever the catalogue has one with it.
    let first = wish.fed_by == FedBy::Pump;
    if first && wish.part.is_open() && ranges.iter().any(|r| r.limits.cycle_switch) {
        ranges.retain(|r| r.limits.cycle_switch);
    }
    ranges.sort_by_key(|r| (price(&r.body), r.body.id.clone()));
    ranges
}

fn one_divider(job: &Job, catalogue: &Catalogue, divider: usize, asks: &[Ask]) -> Result<Metered, Obstacle> {
    let wish = &job.dividers[divider];
    let at = format!("divider.{}", wish.name);
    let ranges = ranges(job, catalogue, divider);
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
    let mut reason = None;
    for widened in WIDENINGS {
        let mut best: Option<(i64, Metered)> = None;
        for range in &ranges {
            match search(range, asks, widened) {
                Ok((cost, found)) if best.as_ref().is_none_or(|(c, _)| cost < *c) => best = Some((cost, found)),
                Ok(_) => {}
                Err(why) => reason = reason.or(Some(why)),
            }
        }
        if let Some((_, found)) = best {
            return Ok(found);
        }
    }
    let (what, cure) = crate::infeasible::explain(reason, &|ask| name_of(job, asks[ask].served), asks.len());
    Err(Obstacle { at, what, cure })
}

fn name_of(job: &Job, served: Served) -> String {
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

fn search(range: &Range, asks: &[Ask], widened: f64) -> Result<(i64, Metered), Infeasible> {
    let wanted: Vec<Wanted> = asks.iter().map(|ask| wanted(ask, widened)).collect();
    let sizes: Vec<SectionSize> = range
        .sizes
        .iter()
        .map(|(part, view)| SectionSize { volume_mm3: whole(view.volume), cost: u32::try_from(price(part)).unwrap_or(u32::MAX) })
        .collect();
    let pistons = (range.limits.sections_min.number() as u32, range.limits.sections_max.number() as u32);
    let joinable = range.sizes.iter().all(|(_, view)| view.joinable);
    let ask = |combining: Combining| {
        let period = PeriodRange::free(&wanted, &sizes, &combining);
        choose_sections(&wanted, &sizes, &Limits { pistons, combining, period, effort: Limits::USUAL_EFFORT / 30 })
    };
    let join = joinable.then_some(JOIN_COST);
    let tees = Some(crate::metering::Tees { most_outlets: 3, cost: TEE_COST });
    let (optimum, teed) = match ask(Combining { join_cost: join, tees: None }) {
        Ok(optimum) => (optimum, false),
        Err(first) => match ask(Combining { join_cost: join, tees }) {
            Ok(optimum) => (optimum, true),
            Err(_) => return Err(first),
        },
    };
    let cost = price(&range.body) + i64::try_from(optimum.objective).unwrap_or(i64::MAX / 4);
    Ok((cost, metered(range, asks, &optimum, widened, teed)))
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
    with_spans(range, asks, fed, widened, teed, None)
}

fn with_spans(
    range: &Range, asks: &[Ask], fed: Vec<FedConsumer>, widened: f64, teed: bool, given: Option<Vec<SectionWish>>,
) -> Metered {
    let cycle: Volume = fed.iter().map(|f| f.volume).sum();
    let spans = asks.iter().zip(&fed).map(|(ask, f)| (ask.least * (cycle / f.volume), ask.most * (cycle / f.volume)));
    let (low, high) = spans.fold((Flow::ZERO, Flow::from_si_max()), |(low, high), (a, b)| (low.max(a), high.min(b)));
    Metered {
        body: Arc::clone(&range.body),
        sizes: range.sizes.iter().map(|(part, _)| Arc::clone(part)).collect(),
        fed,
        given,
        cycle,
        inflow_low: low,
        // Where the bands do not meet the lower edges rule, and the checker tells who gets too much.
        inflow_high: high.max(low),
        widened,
        teed,
    }
}

trait Largest {
    fn from_si_max() -> Self;
}
impl Largest for Flow {
    fn from_si_max() -> Self {
        Flow::from_cubic_metres_per_second(f64::MAX)
    }
}

/// Keeps the sections that the job gives; whether they serve is the checker's to say.
fn keep_given(
    job: &Job, ranges: &[Range], divider: usize, sections: &[SectionWish], asks: &[Ask],
) -> Result<Metered, Obstacle> {
    let at = format!("divider.{}.sections", job.dividers[divider].name);
    let fails = |what, cure| Obstacle { at: at.clone(), what, cure };
    let range = ranges
        .iter()
        .find(|range| sections.iter().all(|s| range.sizes.iter().any(|(part, _)| part.id == s.part)))
        .ok_or_else(|| fails(message!("solve-sections-do-not-fit"), message!("solve-cure-sections-do-not-fit")))?;
    let mut fed = Vec::with_capacity(asks.len());
    for ask in asks {
        let name = name_of(job, ask.served);
        let feed = given_feed(range, sections, &name);
        if feed.is_empty() {
            return Err(fails(
                message!("solve-section-forgets", name = name.as_str()),
                message!("solve-cure-section-forgets", name = name.as_str()),
            ));
        }
        let volume = feed.iter().map(|&size| range.sizes[size].1.volume).sum();
        let feed = match feed.as_slice() {
            [one] => Feed::One(*one),
            [a, b] if a == b && joined(sections, &name) => Feed::Joined(*a),
            _ => Feed::Teed(feed),
        };
        fed.push(FedConsumer { served: ask.served, feed, volume });
    }
    Ok(with_spans(range, asks, fed, 1.0, false, Some(sections.to_vec())))
}

/// The outlets that given sections lead to one consumer, by size.
fn given_feed(range: &Range, sections: &[SectionWish], name: &str) -> Vec<usize> {
    let mut outlets = Vec::new();
    for section in sections {
        let Some(size) = range.sizes.iter().position(|(part, _)| part.id == section.part) else { continue };
        let times = section.serves.iter().filter(|s| *s == name).count();
        // One name alone stands for both outlets.
        let times = if section.serves.len() == 1 { times * 2 } else { times };
        outlets.extend(core::iter::repeat_n(size, times));
    }
    outlets.sort_unstable();
    outlets
}

fn joined(sections: &[SectionWish], name: &str) -> bool {
    sections.iter().any(|s| s.serves.len() == 1 && s.serves[0] == name)
}


/// Whether a divider's sections were given.
pub(crate) fn sections_kept(choice: &Choice<Vec<SectionWish>>) -> bool {
    !choice.is_open()
}
