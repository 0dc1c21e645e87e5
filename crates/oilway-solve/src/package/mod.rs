//! The pump package: pump, air setting, disc and line bores are chosen together, for each leans on the others.
//!
//! The disc sets the highest pressure that may stand in the main for long; the pump with its air setting must stall below that and
//! yet push the worst path; the lines decide what the worst path asks. All pairs of pump and disc are tried, the lines are sized for
//! what each pair can give, and the cheapest sound set is taken.

use std::rc::Rc;
use std::sync::Arc;

use oilway_catalogue::kinds::{AirRegulator, BurstDisc, Drive, Pump};
use oilway_catalogue::{Catalogue, Part, Role};
use oilway_model::{Job, Season};
use oilway_text::{Message, message};
use oilway_units::{Flow, Pressure};

use crate::equipment::{block, parts_between, regulator, takes_pump, valve};
use crate::joints::Joiner;
use crate::layout::{Layout, price};
use crate::lines::Bores;
use crate::losses::Losses;
use crate::protection::{DiscHere, discs};
use crate::reservoir::{Vessel, reservoir};
use crate::source;
use crate::tree::TreeMetering;

/// A pump with what screws onto it, its setting, a disc and the bores that go with them.
#[derive(Clone, Debug)]
pub(crate) struct Power {
    /// The pump.
    pub pump: Arc<Part>,
    /// The block into which it screws.
    pub block: Arc<Part>,
    /// The reservoir under it.
    pub vessel: Vessel,
    /// Its air valve.
    pub valve: Option<Arc<Part>>,
    /// Its regulator.
    pub regulator: Option<Arc<Part>>,
    /// The air setting.
    pub setting: Option<Pressure>,
    /// The disc.
    pub disc: Option<DiscHere>,
    /// The bores.
    pub bores: Rc<Bores>,
    /// Why this set.
    pub why: Message,
}

/// A pump under trial with what screws onto it.
struct Candidate {
    pump: Arc<Part>,
    data: Pump,
    block: Arc<Part>,
    vessel: Vessel,
    valve: Option<Arc<Part>>,
    regulator: Option<(Arc<Part>, AirRegulator)>,
    /// Discs of which a holder goes into the block.
    discs: Vec<DiscHere>,
}

/// Chooses pump, setting, disc and bores. None if no pump can be had at all.
pub(crate) fn power(
    job: &Job,
    catalogue: &Catalogue,
    layout: &Layout,
    metering: &TreeMetering,
    losses: &Losses,
    use_rate: Flow,
    joiner: &mut Joiner,
) -> Option<Power> {
    let mut best: Option<(Rank, Power)> = None;
    for candidate in candidates(job, catalogue, use_rate, joiner) {
        let with_disc = candidate.discs.iter().map(Some).chain(candidate.discs.is_empty().then_some(None));
        for disc in with_disc {
            let trial = Trial { of: &candidate, disc };
            let (rank, power) = trial.run(job, layout, metering, losses);
            if best.as_ref().is_none_or(|(r, _)| rank < *r) {
                best = Some((rank, power));
            }
        }
    }
    best.map(|(_, power)| power)
}

/// The pumps that a job may use, each with its surroundings: the given one alone, or all that suit lubricant, place and supply.
fn candidates(job: &Job, catalogue: &Catalogue, use_rate: Flow, joiner: &mut Joiner) -> Vec<Candidate> {
    let mut found = Vec::new();
    for (pump, data) in pumps(job, catalogue) {
        let Some(block) = block(job, catalogue, &pump) else { continue };
        let Some(vessel) = reservoir(job, catalogue, use_rate, &block, joiner) else { continue };
        let valve = valve(job, catalogue, &pump);
        let regulator = regulator(job, catalogue, &pump, valve.as_deref())
            .and_then(|part| AirRegulator::of(&part).map(|data| (part, data)));
        let discs = fitting_discs(job, catalogue, &block, joiner);
        found.push(Candidate { pump, data, block, vessel, valve, regulator, discs });
    }
    found
}

fn pumps(job: &Job, catalogue: &Catalogue) -> Vec<(Arc<Part>, Pump)> {
    let conditions = &job.conditions;
    let place = conditions.places.get(job.package.place);
    let given_block = job.package.block.chosen().and_then(|id| catalogue.part(id));
    let suits = |part: &Part, pump: &Pump| {
        let driven = if pump.drive.is_air() {
            conditions.air.is_some()
        } else {
            conditions.electric.as_ref().is_some_and(|e| pump.voltage == Some(e.voltage))
        };
        let warm = place.is_none_or(|p| p.coldest.get() >= pump.coldest && p.hottest.get() <= pump.hottest);
        let seated = given_block.is_none_or(|block| takes_pump(block, part));
        driven && warm && seated && pump.lubricants.contains(&crate::reservoir::medium(conditions))
    };
    let mut found: Vec<(Arc<Part>, Pump)> = catalogue
        .of_kind("pump")
        .filter(|part| job.package.pump.chosen().is_none_or(|id| *id == part.id))
        .filter_map(|part| Pump::of(part).map(|data| (Arc::clone(part), data)))
        .filter(|(part, data)| !job.package.pump.is_open() || suits(part, data))
        .collect();
    found.sort_by_key(|(part, _)| (price(part), part.id.clone()));
    found
}

/// The discs that suit and of which a holder goes into the relief port; all that suit where none does.
fn fitting_discs(job: &Job, catalogue: &Catalogue, block: &Part, joiner: &mut Joiner) -> Vec<DiscHere> {
    let all = discs(job, catalogue);
    let mut goes_in = |disc: &DiscHere| {
        let holders = BurstDisc::of(&disc.part).map(|d| d.holder).unwrap_or_default();
        let allowed = |id: &String| job.package.holder.chosen().is_none_or(|given| given == id);
        holders
            .iter()
            .filter(|id| allowed(id))
            .filter_map(|id| catalogue.part(id))
            .any(|holder| parts_between(block, Role::Relief, holder, joiner).is_some())
    };
    let fitting: Vec<DiscHere> = all.iter().filter(|disc| goes_in(disc)).cloned().collect();
    if fitting.is_empty() { all } else { fitting }
}

/// Smaller is better: sound before lame, a full reservoir before a short one, roomy before thin, a pump that stalls at a blocked
/// line before one that bursts the disc there, one that cycles by itself before one that somebody must switch for every
/// stroke, then the price.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
struct Rank {
    lame: u8,
    /// By how much the pump falls short of the need; among lame sets the least lame is shown.
    shortfall: f64,
    short: bool,
    thin: bool,
    bursts: bool,
    switched: bool,
    price: f64,
    tightness: f64,
}

/// A margin between the highest burst and the weakest rating that is thinner than this is no margin. Common practice, no source.
const THIN: f64 = 1.02;

/// Share of the disc's steady maximum up to which a pump is set where there is a choice: a gauge is read to a few per cent and a
/// regulator creeps. Common practice, no source.
const ROOM: f64 = 0.95;

/// One pair of pump and disc under trial.
struct Trial<'a> {
    of: &'a Candidate,
    disc: Option<&'a DiscHere>,
}

impl Trial<'_> {
    fn run(&self, job: &Job, layout: &Layout, metering: &TreeMetering, losses: &Losses) -> (Rank, Power) {
        let rating = self.fixed_rating(metering);
        let ceiling = self.disc.map_or(rating, |d| d.steady).min(rating);
        let use_share = job.conditions.practice.stall_use.get().fraction();
        let least_rating = self.least_rating(job);
        // With room to the disc first; right up to it only where nothing else serves.
        let fitting = |ceiling: Pressure| {
            let highest = self.highest_setting(job, ceiling);
            let budget = (self.stall(highest) * use_share).min(ceiling);
            (highest, losses.within(layout, budget, least_rating))
        };
        let (highest, fits) = match fitting(ceiling * ROOM) {
            (highest, Some(bores)) => (highest, Some(bores)),
            _ => fitting(ceiling),
        };
        let holds = fits.is_some();
        let bores = fits.unwrap_or_else(|| losses.widest(layout, least_rating));
        let setting = self.setting(job, highest, bores.need / use_share);
        let stall = self.stall(setting);
        // An air-driven pump stands at its stall whenever a line is shut, an electric one goes as high as its paths ask.
        let working = if self.of.data.drive.is_air() { stall } else { bores.need.min(stall) };
        let protects =
            self.disc.is_some_and(|d| d.highest <= rating && working <= d.steady * HAIR) && working <= rating;
        let weakest = bores.weakest.min(rating);
        let strength = self.disc.map_or(0.0, |d| weakest / d.highest);
        let life = self.disc.map_or(0.0, |d| d.steady / working);
        let cost = price(&self.of.pump) + price(&self.of.block) + self.disc.map_or(0, |d| price(&d.part));
        let rank = Rank {
            lame: u8::from(!holds) + u8::from(!protects) + u8::from(bores.need > stall),
            shortfall: (bores.need / stall.max(Pressure::from_pascals(1.0)) - 1.0).max(0.0),
            short: self.of.vessel.short,
            thin: strength < THIN,
            // A blocked line is the ordinary fault; it should be seen, and not cost a disc.
            bursts: self.disc.is_some_and(|d| stall > d.lowest),
            // A progressive system takes stroke after stroke until its cycle is complete. Common practice, no source.
            switched: matches!(self.of.data.drive, Drive::SpringReturn | Drive::DoubleActing),
            price: cost as f64 + bores.price,
            tightness: -life.min(strength),
        };
        (rank, self.power(setting, stall, bores, life.min(strength)))
    }

    fn power(&self, setting: Option<Pressure>, stall: Pressure, bores: Rc<Bores>, room: f64) -> Power {
        let why = message!("solve-why-power", need = bores.need, stall = stall, room = room);
        Power {
            pump: Arc::clone(&self.of.pump),
            block: Arc::clone(&self.of.block),
            vessel: self.of.vessel.clone(),
            valve: self.of.valve.clone(),
            regulator: self.of.regulator.as_ref().map(|(part, _)| Arc::clone(part)),
            setting,
            disc: self.disc.cloned(),
            bores,
            why,
        }
    }

    fn stall(&self, setting: Option<Pressure>) -> Pressure {
        source::stall(&self.of.data, setting.unwrap_or(Pressure::ZERO))
    }

    /// What limits the package apart from disc and lines: the lowest rating of the parts that are fixed by now.
    fn fixed_rating(&self, metering: &TreeMetering) -> Pressure {
        let rating = |part: &Part| part.kind.rating(part).unwrap_or(NO_LIMIT);
        let own = rating(&self.of.block).min(rating(&self.of.pump));
        metering.dividers.iter().map(|d| rating(&d.body)).fold(own, Pressure::min)
    }

    /// What every line must stand: the highest burst of the disc; without a disc the pump under the highest air that can be.
    fn least_rating(&self, job: &Job) -> Pressure {
        let possible = job.conditions.air.as_ref().map_or(Pressure::ZERO, |air| air.possible.get());
        self.disc.map_or_else(|| source::stall_without_friction(&self.of.data, possible), |d| d.highest)
    }

    /// Lubricant pressure at which the pump stands for each bar of air.
    fn stall_per_bar(&self) -> f64 {
        source::stall(&self.of.data, Pressure::from_bar(1.0)).bar().max(1e-9)
    }

    /// The highest air setting: below the lowest supply, below the regulator's range, and such that the pump stalls at the
    /// ceiling. None for an electric pump.
    fn highest_setting(&self, job: &Job, ceiling: Pressure) -> Option<Pressure> {
        if self.of.data.drive == Drive::Electric {
            return None;
        }
        if let Some(given) = job.package.regulator.chosen() {
            return Some(*given);
        }
        let (_, regulator) = self.of.regulator.as_ref()?;
        let supply = job.conditions.air.as_ref().map_or(Pressure::ZERO, |air| air.lowest.get());
        let limit = Pressure::from_bar(ceiling.bar() / self.stall_per_bar());
        let most = [supply, regulator.highest, limit, self.of.data.air_rated.unwrap_or(limit)]
            .into_iter()
            .fold(NO_LIMIT, Pressure::min);
        Some(on_step(most, regulator.step, libm::floor).max(regulator.lowest))
    }

    /// The lowest setting that serves the need with its margin; the highest allowed where the need is above it.
    fn setting(&self, job: &Job, highest: Option<Pressure>, wanted_stall: Pressure) -> Option<Pressure> {
        let highest = highest?;
        let Some((_, regulator)) = self.of.regulator.as_ref().filter(|_| job.package.regulator.is_open())
        else {
            return Some(highest);
        };
        let needed = Pressure::from_bar(wanted_stall.bar() / self.stall_per_bar());
        Some(on_step(needed, regulator.step, libm::ceil).max(regulator.lowest).min(highest))
    }
}

/// More than anything in lubrication stands.
const NO_LIMIT: Pressure = Pressure::from_bar(1e4);
/// A setting that lands on the limit to the last digit is inside.
const HAIR: f64 = 1.0 + 1e-9;

/// A pressure on a step of the regulator. A hair is forgiven so that 5.1 stays 5.1.
fn on_step(pressure: Pressure, step: Pressure, round: fn(f64) -> f64) -> Pressure {
    let steps = pressure / step;
    let near = libm::round(steps);
    let steps = if (steps - near).abs() < 1e-9 { near } else { round(steps) };
    // The step's own digits, so that 51 steps of a tenth of a bar read as 5.1 bar.
    Pressure::from_bar(libm::round(steps * step.bar() * 1e6) / 1e6)
}

/// The lubricant at the coldest of a place.
pub(crate) fn cold_fluid(job: &Job, place: usize) -> Option<oilway_model::Fluid> {
    let place = job.conditions.places.get(place)?;
    job.conditions.lubricant.at(place.temperature(Season::Cold))
}

#[cfg(test)]
mod tests;
