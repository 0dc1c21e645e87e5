//! The burst disc: its window between a long life and the strength of the weakest part.

use std::sync::Arc;

use oilway_catalogue::kinds::{BurstDisc, DiscUse};
use oilway_catalogue::{Catalogue, Part};
use oilway_model::{Conditions, Job, Season};
use oilway_physics::disc;
use oilway_units::{Pressure, Ratio, Temperature};

/// A disc at the place where it sits.
#[derive(Clone, Debug)]
pub(crate) struct DiscHere {
    /// The part.
    pub part: Arc<Part>,
    /// Its data.
    pub data: BurstDisc,
    /// Burst at the coldest over burst at the marking temperature.
    pub cold_factor: Ratio,
    /// Burst at the hottest over burst at the marking temperature.
    pub hot_factor: Ratio,
    /// Lowest burst: weakest of the lot, warm.
    pub lowest: Pressure,
    /// Highest burst: strongest of the lot, cold.
    pub highest: Pressure,
    /// Highest steady pressure that it stands for long.
    pub steady: Pressure,
}

impl DiscHere {
    /// A disc in a place of the job.
    pub(crate) fn new(part: &Arc<Part>, conditions: &Conditions, place: usize) -> Option<Self> {
        let data = BurstDisc::of(part)?;
        let (coldest, hottest) = disc_temperatures(conditions, place);
        let factor =
            |t: Temperature| disc::linear_temperature_factor(t, data.marked_at, data.below, data.above);
        let (a, b) = (factor(coldest), factor(hottest));
        let (cold_factor, hot_factor) = (a.max(b), a.min(b));
        let lowest = disc::lowest_burst(data.nominal, data.range_minus, data.tolerance, hot_factor);
        let highest = disc::highest_burst(data.nominal, data.range_plus, data.tolerance, cold_factor);
        let steady = disc::steady_maximum(lowest, data.ratio);
        Some(DiscHere { part: Arc::clone(part), data, cold_factor, hot_factor, lowest, highest, steady })
    }
}

/// The temperatures that a disc at a place can have.
pub(crate) fn disc_temperatures(conditions: &Conditions, place: usize) -> (Temperature, Temperature) {
    let fallback = Temperature::from_celsius(20.0);
    let at = |season| conditions.places.get(place).map_or(fallback, |p| p.temperature(season));
    (at(Season::Cold), at(Season::Hot).plus(conditions.practice.disc_warmer.get()))
}

/// The discs that a job may use, lowest first: the given one alone, or all that suit the lubricant.
pub(crate) fn discs(job: &Job, catalogue: &Catalogue) -> Vec<DiscHere> {
    let grease = job.conditions.lubricant.is_grease();
    let suits = |data: &BurstDisc| match data.lubricant {
        DiscUse::Grease => grease,
        DiscUse::Oil => !grease,
        DiscUse::Either => true,
    };
    let place = job.package.place;
    let mut found: Vec<DiscHere> = catalogue
        .of_kind("burst disc")
        .filter(|part| job.package.disc.chosen().is_none_or(|id| *id == part.id))
        .filter_map(|part| DiscHere::new(part, &job.conditions, place))
        .filter(|disc| !job.package.disc.is_open() || (suits(&disc.data) && disc.data.liquid))
        .collect();
    found.sort_by(|a, b| a.data.nominal.total_cmp(&b.data.nominal).then_with(|| a.part.id.cmp(&b.part.id)));
    found
}
