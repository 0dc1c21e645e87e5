//! A design and what follows from it, for programs.

use std::path::PathBuf;

use oilway_documents::{Amount, PartsLine, parts_list};
use oilway_model::{Answer, ColdLimit, Delivery, Design, Protection, SeasonResult};
use oilway_solve::{Study, season_word};
use oilway_text::{Reader, say};
use schemars::JsonSchema;
use serde::Serialize;

use super::check::{FindingData, verdict_word};
use super::parts::PriceData;
use super::quantity::QuantityData;
use super::span::AssumptionData;
use crate::bench::Worked;

/// The answer of `design` and `demo`.
#[derive(Debug, Serialize, JsonSchema)]
pub struct DesignAnswer {
    /// `oilway.design.1`
    pub version: &'static str,
    /// The job's name.
    pub job: String,
    /// works, works with care, will not work or cannot tell yet.
    pub verdict: &'static str,
    /// What the checker found, the gravest first.
    pub findings: Vec<FindingData>,
    /// Every choice, and why.
    pub choices: Vec<ChoiceData>,
    /// What each point needs and gets.
    pub points: Vec<PointData>,
    /// Pressures and times on the coldest, the usual and the hottest day.
    pub seasons: Vec<SeasonData>,
    /// The coldest day that the system stands.
    pub cold_limit: Option<ColdData>,
    /// The overpressure window.
    pub protection: ProtectionData,
    /// Reservoir and consumption.
    pub supply: SupplyData,
    /// How it is run.
    pub control: ControlData,
    /// What to buy.
    pub parts: Vec<BoughtData>,
    /// Assumptions and ranges, the weightiest first.
    pub assumptions: Vec<AssumptionData>,
    /// Files that were written.
    pub files: Vec<String>,
}

/// A choice.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ChoiceData {
    /// Where in the job.
    pub at: String,
    /// What was chosen.
    pub chosen: String,
    /// Whether it was given or pinned and merely kept.
    pub kept: bool,
    /// Why.
    pub why: String,
}

/// What a point needs and gets; rates are per running hour.
#[derive(Debug, Serialize, JsonSchema)]
pub struct PointData {
    /// The point.
    pub name: String,
    /// What the rule or the machine builder asks for.
    pub formula: QuantityData,
    /// The rule: a formula by its lasting name, or `given`.
    pub rule: &'static str,
    /// What the design serves.
    pub required: QuantityData,
    /// What the point gets.
    pub delivered: QuantityData,
    /// Volume of one cycle of its divider.
    pub dose: QuantityData,
    /// How old the lubricant is on arrival, calendar time.
    pub age: QuantityData,
    /// Remarks.
    pub notes: Vec<String>,
}

/// One season.
#[derive(Debug, Serialize, JsonSchema)]
pub struct SeasonData {
    /// cold, normal or hot.
    pub season: &'static str,
    /// Stall pressure of the pump at the lowest air.
    pub stall: QuantityData,
    /// What the worst path asks in motion, and its point.
    pub worst_moving: WorstData,
    /// What the worst path asks at the start after rest, and its point.
    pub worst_start: WorstData,
    /// Time of one lubrication event; none if it does not end.
    pub event_time: Option<QuantityData>,
}

/// The worst path of a sort.
#[derive(Debug, Serialize, JsonSchema)]
pub struct WorstData {
    /// The point at its end.
    pub point: String,
    /// The pressure at the pump.
    pub pressure: QuantityData,
}

/// The coldest day that the system stands.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ColdData {
    /// The place that the number names.
    pub place: String,
    /// The temperature there.
    pub temperature: QuantityData,
    /// What would move it, and to where.
    pub remedies: Vec<RemedyData>,
}

/// A remedy for the cold.
#[derive(Debug, Serialize, JsonSchema)]
pub struct RemedyData {
    /// The remedy.
    pub what: String,
    /// The new limit at the same place; none where the cold is no longer the limit.
    pub temperature: Option<QuantityData>,
}

/// The overpressure window.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ProtectionData {
    /// Highest working pressure at the disc.
    pub working: QuantityData,
    /// Lowest marked pressure that would live.
    pub window_low: QuantityData,
    /// Highest marked pressure that would protect.
    pub window_high: QuantityData,
    /// Lowest burst of the chosen disc.
    pub lowest_burst: Option<QuantityData>,
    /// Highest burst of the chosen disc.
    pub highest_burst: Option<QuantityData>,
    /// The weakest protected part.
    pub weakest: String,
    /// Its rating.
    pub rating: QuantityData,
}

/// Reservoir and consumption.
#[derive(Debug, Serialize, JsonSchema)]
pub struct SupplyData {
    /// Consumption while the machine runs.
    pub use_rate: QuantityData,
    /// Calendar time between refills.
    pub refill: QuantityData,
    /// Calendar time between the low-level signal and empty.
    pub reserve: QuantityData,
    /// Free air per running hour.
    pub air_per_hour: QuantityData,
}

/// How the system is run.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ControlData {
    /// Pause between two events, running time.
    pub pause: QuantityData,
    /// Cycles of the first divider in one event.
    pub cycles: u32,
    /// Longest time of an event before the alarm.
    pub time_out: QuantityData,
    /// Air pressure set at the regulator.
    pub air_setting: Option<QuantityData>,
}

/// A line of the parts list.
#[derive(Debug, Serialize, JsonSchema)]
pub struct BoughtData {
    /// Its number in the list.
    pub item: u32,
    /// The part.
    pub part: String,
    /// What it is.
    pub description: String,
    /// Pieces or whole metres to buy.
    pub amount: u64,
    /// pieces or metres.
    pub unit: &'static str,
    /// Price of a piece or a metre, if the catalogue says.
    pub price: Option<PriceData>,
}

impl DesignAnswer {
    pub(crate) fn new(worked: &Worked, study: &Study, written: &[PathBuf], reader: &Reader) -> Self {
        let (design, answer) = (&worked.design, &worked.answer);
        let points = design.points.iter().zip(&answer.deliveries);
        DesignAnswer {
            version: "oilway.design.1",
            job: design.name.clone(),
            verdict: verdict_word(answer.verdict),
            findings: worked.findings.iter().map(|finding| FindingData::new(finding, reader)).collect(),
            choices: design.reasons.iter().map(|reason| ChoiceData::new(reason, reader)).collect(),
            points: points.map(|(point, delivery)| PointData::new(&point.name, delivery, reader)).collect(),
            seasons: answer.seasons.iter().map(|season| SeasonData::new(design, season, reader)).collect(),
            cold_limit: answer.cold_limit.as_ref().map(|limit| ColdData::new(design, limit, reader)),
            protection: ProtectionData::new(&answer.protection, reader),
            supply: SupplyData::new(answer, reader),
            control: ControlData::new(design, reader),
            parts: parts_list(design).iter().map(BoughtData::from).collect(),
            assumptions: study.assumptions.iter().map(|a| AssumptionData::new(a, reader)).collect(),
            files: written.iter().map(|path| path.display().to_string()).collect(),
        }
    }
}

impl ChoiceData {
    pub(crate) fn new(reason: &oilway_model::Reason, reader: &Reader) -> Self {
        ChoiceData {
            at: reason.at.clone(),
            chosen: reason.chosen.clone(),
            kept: reason.kept,
            why: say(&reason.why, reader),
        }
    }
}

impl PointData {
    fn new(name: &str, delivery: &Delivery, reader: &Reader) -> Self {
        PointData {
            name: name.to_owned(),
            formula: QuantityData::new(delivery.formula, reader),
            rule: delivery.rule,
            required: QuantityData::new(delivery.required, reader),
            delivered: QuantityData::new(delivery.delivered, reader),
            dose: QuantityData::new(delivery.dose, reader),
            age: QuantityData::new(delivery.age, reader),
            notes: delivery.notes.iter().map(|note| say(note, reader)).collect(),
        }
    }
}

impl SeasonData {
    fn new(design: &Design, season: &SeasonResult, reader: &Reader) -> Self {
        let worst = |at: usize, of: fn(&oilway_model::PathPressures) -> oilway_units::Pressure| WorstData {
            point: design.points.get(at).map_or_else(String::new, |point| point.name.clone()),
            pressure: QuantityData::new(season.paths.get(at).map(of).unwrap_or_default(), reader),
        };
        SeasonData {
            season: season_word(season.season),
            stall: QuantityData::new(season.pump.stall, reader),
            worst_moving: worst(season.worst_moving, |path| path.moving),
            worst_start: worst(season.worst_start, |path| path.start_rested),
            event_time: season.event_time.map(|time| QuantityData::new(time, reader)),
        }
    }
}

impl ColdData {
    fn new(design: &Design, limit: &ColdLimit, reader: &Reader) -> Self {
        let remedy = |remedy: &oilway_model::Remedy| RemedyData {
            what: say(&remedy.what, reader),
            temperature: remedy.temperature.map(|limit| QuantityData::new(limit, reader)),
        };
        let place = design.conditions.places.get(limit.place);
        ColdData {
            place: place.map_or_else(String::new, |place| place.name.clone()),
            temperature: QuantityData::new(limit.temperature, reader),
            remedies: limit.remedies.iter().map(remedy).collect(),
        }
    }
}

impl ProtectionData {
    fn new(protection: &Protection, reader: &Reader) -> Self {
        let said = |pressure| QuantityData::new(pressure, reader);
        ProtectionData {
            working: said(protection.working),
            window_low: said(protection.window_low),
            window_high: said(protection.window_high),
            lowest_burst: protection.lowest_burst.map(said),
            highest_burst: protection.highest_burst.map(said),
            weakest: protection.weakest.0.clone(),
            rating: said(protection.weakest.1),
        }
    }
}

impl SupplyData {
    fn new(answer: &Answer, reader: &Reader) -> Self {
        SupplyData {
            use_rate: QuantityData::new(answer.supply.use_rate, reader),
            refill: QuantityData::new(answer.supply.refill, reader),
            reserve: QuantityData::new(answer.supply.reserve, reader),
            air_per_hour: QuantityData::new(answer.supply.air_per_hour, reader),
        }
    }
}

impl ControlData {
    fn new(design: &Design, reader: &Reader) -> Self {
        ControlData {
            pause: QuantityData::new(design.control.pause, reader),
            cycles: design.control.cycles,
            time_out: QuantityData::new(design.control.time_out, reader),
            air_setting: design.package.air_setting.map(|air| QuantityData::new(air, reader)),
        }
    }
}

impl From<&PartsLine> for BoughtData {
    fn from(line: &PartsLine) -> Self {
        let price = line.unit_price();
        BoughtData {
            item: line.item,
            part: line.id().to_owned(),
            description: line.part.description.clone(),
            amount: line.amount.bought(),
            unit: match line.amount {
                Amount::Pieces(_) => "pieces",
                Amount::Metres { .. } => "metres",
            },
            price: price.map(|p| PriceData { hundredths: p.hundredths, currency: p.currency.clone() }),
        }
    }
}
