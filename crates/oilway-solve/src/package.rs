//! The pump package: pump, air setting, disc and line bores are chosen together, for each leans on the others.
//!
//! The disc sets the highest pressure that may stand in the main for long; the pump with its air setting must stall below that and
//! yet push the worst path; the lines decide what the worst path asks. All pairs of pump and disc are tried, the lines are sized for
//! what each pair can give, and the cheapest sound set is taken.

use std::sync::Arc;

use oilway_catalogue::kinds::{AirRegulator, Drive, Medium, Pump, Reservoir};
use oilway_catalogue::{Catalogue, Part};
use oilway_model::{Conditions, Job, Season};
use oilway_text::{Message, message};
use oilway_units::{Flow, Pressure, Time};

use crate::layout::{Layout, price};
use crate::lines::{Bores, Losses};
use crate::protection::{DiscHere, discs};
use crate::source;
use crate::tree::TreeMetering;

/// A pump, its setting, a disc and the bores that go with them.
#[derive(Clone, Debug)]
pub(crate) struct Power {
    /// The pump.
    pub pump: Arc<Part>,
    /// Its regulator.
    pub regulator: Option<Arc<Part>>,
    /// The air setting.
    pub setting: Option<Pressure>,
    /// The disc.
    pub disc: Option<DiscHere>,
    /// The bores.
    pub bores: Bores,
    /// Why this set.
    pub why: Message,
}

/// What limits the pressure of the package apart from the disc: the lowest rating of the parts that are fixed by now.
fn fixed_rating(metering: &TreeMetering, block: &Part, pump: &Part) -> Pressure {
    let rating = |part: &Part| part.kind.rating(part).unwrap_or(Pressure::from_bar(1e4));
    metering.dividers.iter().map(|d| rating(&d.body)).fold(rating(block).min(rating(pump)), Pressure::min)
}

/// One pair of pump and disc under trial.
struct Trial<'a> {
    pump: &'a Arc<Part>,
    data: &'a Pump,
    regulator: Option<(Arc<Part>, AirRegulator)>,
    disc: Option<&'a DiscHere>,
}

/// Chooses pump, setting, disc and bores.
pub(crate) fn power(
    job: &Job, catalogue: &Catalogue, layout: &Layout, metering: &TreeMetering, losses: &Losses, block: &Arc<Part>,
) -> Option<Power> {
    let pumps = pumps(job, catalogue);
    let discs = discs(job, catalogue);
    let mut best: Option<(Rank, Power)> = None;
    for (pump, data) in &pumps {
        let with_disc = discs.iter().map(Some).chain(discs.is_empty().then_some(None));
        for disc in with_disc {
            let trial = Trial { pump, data, regulator: regulator(job, catalogue, data), disc };
            let Some((rank, power)) = trial.run(job, layout, metering, losses, block) else { continue };
            if best.as_ref().is_none_or(|(r, _)| rank < *r) {
                best = Some((rank, power));
            }
        }
    }
    best.map(|(_, power)| power)
}

/// Smaller is better: sound before lame, roomy before thin, then the price.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
struct Rank {
    lame: u8,
    thin: u8,
    price: f64,
    tightness: f64,
}

/// A margin between disc and setting or rating that is thinner than this is no margin. Common practice, no source.
const THIN: f64 = 1.02;

impl Trial<'_> {
    fn run(
        &self, job: &Job, layout: &Layout, metering: &TreeMetering, losses: &Losses, block: &Part,
    ) -> Option<(Rank, Power)> {
        let rating = fixed_rating(metering, block, self.pump);
        let least_rating = self.disc.map_or(Pressure::ZERO, |d| d.highest);
        let ceiling = self.ceiling(rating);
        let highest = self.highest_setting(job, ceiling);
        let stall = source::stall(self.data, highest.unwrap_or(Pressure::ZERO)).min(ceiling);
        let use_share = job.conditions.practice.stall_use.get().fraction();
        let protects = least_rating <= rating && (self.disc.is_none() || stall <= ceiling);
        let fits = losses.within(layout, stall * use_share, least_rating);
        let sound = fits.is_some() && protects && self.disc.is_some();
        let bores = fits.unwrap_or_else(|| losses.widest(layout, least_rating));
        let setting = self.setting(job, highest, bores.need / use_share);
        let stall = source::stall(self.data, setting.unwrap_or(Pressure::ZERO));
        let weakest = weakest_line(layout, &bores).min(rating);
        let room = self.disc.map_or(0.0, |d| (d.steady / stall).min(weakest / d.highest));
        let cost = price(self.pump) as f64 + self.disc.map_or(0, |d| price(&d.part)) as f64 + bores.price;
        let rank = Rank {
            lame: u8::from(!sound) + u8::from(!protects) + u8::from(bores.need > stall),
            thin: u8::from(room < THIN),
            price: cost,
            tightness: -room,
        };
        let why = message!("solve-why-power", need = bores.need, stall = stall, room = room);
        Some((
            rank,
            Power {
                pump: Arc::clone(self.pump),
                regulator: self.regulator.as_ref().map(|(part, _)| Arc::clone(part)),
                setting,
                disc: self.disc.cloned(),
                bores,
                why,
            },
        ))
    }

    /// The highest pressure that may stand in the main for long.
    fn ceiling(&self, rating: Pressure) -> Pressure {
        self.disc.map_or(rating, |d| d.steady).min(rating)
    }

    /// The highest air setting: below the lowest supply, below the regulator's range, and such that the pump stalls at the
    /// ceiling. None for an electric pump.
    fn highest_setting(&self, job: &Job, ceiling: Pressure) -> Option<Pressure> {
        let (_, regulator) = self.regulator.as_ref()?;
        if let Some(given) = job.package.regulator.chosen() {
            return Some(*given);
        }
        let supply = job.conditions.air.as_ref().map_or(Pressure::ZERO, |air| air.lowest.get());
        let per_bar = source::stall(self.data, Pressure::from_bar(1.0)).bar();
        let limit = Pressure::from_bar(ceiling.bar() / per_bar.max(1e-9));
        let most = [supply, regulator.highest, limit, self.data.air_rated.unwrap_or(limit)]
            .into_iter()
            .fold(Pressure::from_bar(1e4), Pressure::min);
        Some(on_step(most, regulator.step, libm::floor).max(regulator.lowest))
    }

    /// The lowest setting that serves the need with its margin; the highest allowed where the need is above it.
    fn setting(&self, job: &Job, highest: Option<Pressure>, wanted_stall: Pressure) -> Option<Pressure> {
        let highest = highest?;
        if !job.package.regulator.is_open() {
            return Some(highest);
        }
        let (_, regulator) = self.regulator.as_ref()?;
        let per_bar = source::stall(self.data, Pressure::from_bar(1.0)).bar();
        let needed = Pressure::from_bar(wanted_stall.bar() / per_bar.max(1e-9));
        Some(on_step(needed, regulator.step, libm::ceil).max(regulator.lowest).min(highest))
    }
}

/// A pressure on a step of the regulator. A hair is forgiven so that 5.1 stays 5.1.
fn on_step(pressure: Pressure, step: Pressure, round: fn(f64) -> f64) -> Pressure {
    let steps = pressure / step;
    let near = libm::round(steps);
    let steps = if (steps - near).abs() < 1e-9 { near } else { round(steps) };
    // The step's own digits, so that 51 steps of a tenth of a bar read as 5.1 bar.
    Pressure::from_bar(libm::round(steps * step.bar() * 1e6) / 1e6)
}

fn weakest_line(layout: &Layout, bores: &Bores) -> Pressure {
    let mut weakest = Pressure::from_bar(1e4);
    for (of_node, candidates) in bores.chosen.iter().zip(&layout.candidates) {
        for (&pick, open) in of_node.iter().zip(candidates) {
            weakest = weakest.min(layout.conduits[open[pick]].rated);
        }
    }
    weakest
}

fn medium(conditions: &Conditions) -> Medium {
    if conditions.lubricant.is_grease() { Medium::Grease } else { Medium::Oil }
}

/// The pumps that a job may use: the given one alone, or all that suit the lubricant and the supply.
fn pumps(job: &Job, catalogue: &Catalogue) -> Vec<(Arc<Part>, Pump)> {
    let conditions = &job.conditions;
    let place = conditions.places.get(job.package.place);
    let suits = |pump: &Pump| {
        let driven = if pump.drive.is_air() {
            conditions.air.is_some()
        } else {
            conditions.electric.as_ref().is_some_and(|e| pump.voltage == Some(e.voltage))
        };
        let warm = place.is_none_or(|p| p.coldest.get() >= pump.coldest && p.hottest.get() <= pump.hottest);
        driven && warm && pump.lubricants.contains(&medium(conditions))
    };
    let mut found: Vec<(Arc<Part>, Pump)> = catalogue
        .of_kind("pump")
        .filter(|part| job.package.pump.chosen().is_none_or(|id| *id == part.id))
        .filter_map(|part| Pump::of(part).map(|data| (Arc::clone(part), data)))
        .filter(|(_, data)| !job.package.pump.is_open() || suits(data))
        .collect();
    found.sort_by_key(|(part, _)| (price(part), part.id.clone()));
    found
}

fn regulator(job: &Job, catalogue: &Catalogue, pump: &Pump) -> Option<(Arc<Part>, AirRegulator)> {
    if pump.drive == Drive::Electric {
        return None;
    }
    let supply = job.conditions.air.as_ref().map_or(Pressure::ZERO, |air| air.possible.get());
    let mut all: Vec<(Arc<Part>, AirRegulator)> = catalogue
        .of_kind("air regulator")
        .filter_map(|part| AirRegulator::of(part).map(|data| (Arc::clone(part), data)))
        .collect();
    all.sort_by_key(|(part, data)| (data.supply_max < supply, price(part), part.id.clone()));
    all.into_iter().next()
}

/// The smallest reservoir that lasts as long as the customer wants, or the largest.
pub(crate) fn reservoir(job: &Job, catalogue: &Catalogue, use_rate: Flow) -> Option<(Arc<Part>, Message)> {
    let conditions = &job.conditions;
    let wanted = conditions.limits.refill_at_least.unwrap_or(USUAL_REFILL);
    let running = wanted * conditions.running_share();
    let needed = use_rate * running;
    let mut all: Vec<(Arc<Part>, Reservoir)> = catalogue
        .of_kind("reservoir")
        .filter(|part| job.package.reservoir.chosen().is_none_or(|id| *id == part.id))
        .filter_map(|part| Reservoir::of(part).map(|data| (Arc::clone(part), data)))
        .filter(|(_, data)| !job.package.reservoir.is_open() || data.lubricants.contains(&medium(conditions)))
        .collect();
    all.sort_by(|a, b| a.1.gross.total_cmp(&b.1.gross).then_with(|| price(&a.0).cmp(&price(&b.0))).then_with(|| a.0.id.cmp(&b.0.id)));
    let needs_plate = needs_follower(conditions, job.package.place);
    let good = |data: &Reservoir| data.gross * data.usable.fraction() >= needed && (data.follower || !needs_plate);
    let pick = all.iter().find(|(_, d)| good(d)).or_else(|| all.iter().rfind(|(_, d)| d.follower || !needs_plate)).or(all.last());
    pick.map(|(part, data)| {
        let usable = data.gross * data.usable.fraction();
        (Arc::clone(part), message!("solve-why-reservoir", usable = usable, needed = needed, wanted = wanted))
    })
}

/// Machinery is filled once a month at the most often (Neale, The Tribology Handbook, C15.4; seen).
const USUAL_REFILL: Time = Time::from_weeks(4.345);

/// Grease that stands as a wall higher than a hand lets the pump draw a funnel; then a plate must press it down.
fn needs_follower(conditions: &Conditions, place: usize) -> bool {
    let Some(place) = conditions.places.get(place) else { return false };
    if !conditions.lubricant.is_grease() {
        return false;
    }
    conditions.lubricant.at(place.temperature(Season::Cold)).is_some_and(|fluid| {
        oilway_physics::grease::standing_height(fluid.yield_stress, fluid.density).metres() > FUNNEL
    })
}

/// Height of a free-standing wall of grease above which a funnel must be expected: `pump-reservoir`, section 3 (own, borrowed from
/// soil mechanics): NLGI 2 at room temperature stands 0.29 m, NLGI 1 less than 0.1 m.
const FUNNEL: f64 = 0.15;
