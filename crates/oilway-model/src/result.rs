//! What follows from a design under a set of conditions.

use oilway_text::Message;
use oilway_units::{
    AnyQuantity, Flow, Frequency, Pressure, Ratio, Temperature, TemperatureDifference, Time, Volume,
};

use crate::{Season, Verdict};

/// Delivered against required, for one point.
#[derive(Clone, Debug)]
pub struct Delivery {
    /// What the rule or the machine builder asks for, running hours.
    pub formula: Flow,
    /// What the design serves: the formula, or the floor if that is higher.
    pub required: Flow,
    /// Which floor raised it, if one did.
    pub raised_by: Option<Message>,
    /// What the point gets.
    pub delivered: Flow,
    /// Volume at each cycle of its divider.
    pub dose: Volume,
    /// Lowest delivery that is accepted, of required.
    pub band_low: Ratio,
    /// Highest delivery that is accepted, of required; none at the floor.
    pub band_high: Option<Ratio>,
    /// How long the lubricant stands in the point's own tail, calendar time.
    pub age_in_tail: Time,
    /// How old it is on arrival, with the lines before and the reservoir, calendar time.
    pub age: Time,
    /// Content of the point's own tail.
    pub tail: Volume,
    /// Remarks beside the demand.
    pub notes: Vec<Message>,
    /// The rule that decided: a formula id, or `given`.
    pub rule: &'static str,
    /// Viscosity ratio κ where it applies.
    pub viscosity_ratio: Option<f64>,
}

/// The three pressures of one path from the pump to a point, at the pump.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PathPressures {
    /// To set everything moving, lubricant just stopped.
    pub start: Pressure,
    /// To set everything moving after rest.
    pub start_rested: Pressure,
    /// To keep it moving at the design flow.
    pub moving: Pressure,
    /// What remains at the far end of the path after the pump side is let down.
    pub residual: Pressure,
    /// The flow that the pump pushes through this path.
    pub flow: Flow,
    /// The pressure at the pump while it does so.
    pub at_pump: Pressure,
}

/// What the pump can do in one season.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PumpState {
    /// Stall pressure at the setting and the lowest air.
    pub stall: Pressure,
    /// Stall pressure that a failed regulator and the highest possible air can reach.
    pub stall_possible: Pressure,
    /// Highest flow, set by drive, valve and inlet.
    pub flow_limit: Flow,
    /// Strokes or cycles at that flow.
    pub rate: Frequency,
    /// Free air of one pump cycle, ISO 8778.
    pub free_air: Volume,
    /// Time that one fill of the cylinder takes, against the time it has.
    pub fill_time: Option<Time>,
    /// The time that it has.
    pub fill_time_available: Time,
}

/// One season.
#[derive(Clone, Debug)]
pub struct SeasonResult {
    /// Which.
    pub season: Season,
    /// The paths, one for each point.
    pub paths: Vec<PathPressures>,
    /// The point whose path asks most in motion.
    pub worst_moving: usize,
    /// The point whose path asks most at the start.
    pub worst_start: usize,
    /// The pump.
    pub pump: PumpState,
    /// Time of one lubrication event.
    pub event_time: Option<Time>,
}

/// The coldest day.
#[derive(Clone, Debug)]
pub struct ColdLimit {
    /// How much colder than the job's coldest day it may get, in every place outdoors (or everywhere, if none is).
    pub reserve: TemperatureDifference,
    /// The place that the sentence names, by index, and its temperature at the limit.
    pub place: usize,
    /// The temperature there at the limit.
    pub temperature: Temperature,
    /// Where each remedy would move it.
    pub remedies: Vec<Remedy>,
    /// The warmest limit that lubricant, pump or a line states for itself, and whose it is: what it says counts before any
    /// pressure does.
    pub stated: Option<(String, Temperature)>,
}

/// A remedy for the cold and what it brings.
#[derive(Clone, Debug)]
pub struct Remedy {
    /// The remedy.
    pub what: Message,
    /// The new limit at the same place; none where the cold is no longer the limit as far down as anybody looks.
    pub temperature: Option<Temperature>,
}

/// The overpressure window.
#[derive(Clone, Debug)]
pub struct Protection {
    /// Highest working pressure at the disc.
    pub working: Pressure,
    /// Lowest burst of the chosen disc, warm.
    pub lowest_burst: Option<Pressure>,
    /// Highest burst of the chosen disc, cold.
    pub highest_burst: Option<Pressure>,
    /// Highest steady pressure that the disc stands.
    pub steady_maximum: Option<Pressure>,
    /// Lowest nominal that would live.
    pub window_low: Pressure,
    /// Highest nominal that would protect.
    pub window_high: Pressure,
    /// The weakest protected part and its rating.
    pub weakest: (String, Pressure),
    /// Pressure held at the pump while it relieves.
    pub relieving: Option<Pressure>,
    /// Pressure that stays in the main after the disc has burst and the pump has stopped.
    pub stays: Option<Pressure>,
    /// Highest air setting at which the disc's steady maximum holds.
    pub highest_setting: Option<Pressure>,
}

/// Reservoir and consumption.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Supply {
    /// Consumption while the machine runs.
    pub use_rate: Flow,
    /// Calendar time between refills.
    pub refill: Time,
    /// Calendar time between the low-level signal and empty.
    pub reserve: Time,
    /// Pressure that feeds the pump's inlet in the cold.
    pub feed: Pressure,
    /// Free air per hour of running, mean.
    pub air_per_hour: Volume,
}

/// A span of a number over the open entries.
#[derive(Clone, Debug)]
pub struct Span {
    /// The number's name: `peak.cold`, `demand.total`.
    pub name: &'static str,
    /// At the typical values.
    pub typical: AnyQuantity,
    /// Lowest found.
    pub low: AnyQuantity,
    /// Highest found.
    pub high: AnyQuantity,
}

/// An assumption or a range, and how much it matters.
#[derive(Clone, Debug)]
pub struct Assumption {
    /// Where in the job.
    pub at: String,
    /// What is assumed.
    pub what: Message,
    /// Its range.
    pub low: AnyQuantity,
    /// Its range.
    pub high: AnyQuantity,
    /// Swing of the deciding margin over the range, as a share of the pressure available: the order in which it is listed.
    pub weight: f64,
    /// Whether the verdict turns inside the range, and at which value.
    pub turns_at: Option<AnyQuantity>,
}

/// Everything that follows.
#[derive(Clone, Debug)]
pub struct Answer {
    /// One for each point.
    pub deliveries: Vec<Delivery>,
    /// Cold, normal, hot.
    pub seasons: Vec<SeasonResult>,
    /// The coldest day.
    pub cold_limit: Option<ColdLimit>,
    /// The window.
    pub protection: Protection,
    /// Reservoir and consumption.
    pub supply: Supply,
    /// The verdict in one word; the checker's findings decide it.
    pub verdict: Verdict,
}
