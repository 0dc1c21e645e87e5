//! A cold start for programs.

use oilway_physics::grease::classes::Band;
use oilway_solve::cold_start::{ColdAnswer, Open, Reach};
use oilway_text::{Message, Reader, say};
use oilway_units::Pressure;
use schemars::JsonSchema;
use serde::Serialize;

use super::check::verdict_word;
use super::quantity::QuantityData;
use crate::show::cold_start as words;

/// The answer of `cold-start`.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ColdStartAnswer {
    /// `oilway.cold-start.1`
    pub version: &'static str,
    /// What must not be done; it comes before every number.
    pub stop: String,
    /// works, works with care, will not work or cannot tell yet.
    pub verdict: &'static str,
    /// One sentence to read aloud.
    pub says: String,
    /// The temperature for which it is worked out.
    pub temperature: QuantityData,
    /// Pressure needed before anything flows.
    pub need: BandData,
    /// Pressure that the pump can give.
    pub have: BandData,
    /// Down to where it starts.
    pub coldest: ColdestData,
    /// The limit that the lubricant states, where it comes before the pressure does.
    pub stated: Option<QuantityData>,
    /// What lasts.
    pub remedies: Vec<RemedyData>,
    /// What to do in the next hour.
    pub next_hour: Vec<String>,
    /// The one question that narrows the answer most; none where everything is known.
    pub question: Option<String>,
    /// The rule for the maintenance plan, if the cold is the limit.
    pub plan: Vec<String>,
    /// What is not known exactly, the weightiest first.
    pub open: Vec<OpenData>,
    /// What the numbers hold and what they do not.
    pub counted: String,
}

/// A pressure and its band.
#[derive(Debug, Serialize, JsonSchema)]
pub struct BandData {
    /// Lowest.
    pub low: QuantityData,
    /// With every entry at its typical value.
    pub typical: QuantityData,
    /// Highest.
    pub high: QuantityData,
}

/// Down to where it starts, over everything that is not known.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ColdestData {
    /// The easiest case.
    pub best: ReachData,
    /// With every entry at its typical value.
    pub typical: ReachData,
    /// The hardest case.
    pub worst: ReachData,
}

/// How far down.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ReachData {
    /// `down to` a temperature, `beyond` all cold, or `never`.
    pub reach: &'static str,
    /// The temperature, for `down to`.
    pub temperature: Option<QuantityData>,
}

/// A remedy.
#[derive(Debug, Serialize, JsonSchema)]
pub struct RemedyData {
    /// What to change.
    pub what: String,
    /// How far down it starts then.
    pub coldest: ReachData,
}

/// What is not known exactly.
#[derive(Debug, Serialize, JsonSchema)]
pub struct OpenData {
    /// The box.
    pub name: &'static str,
    /// Lower end.
    pub low: QuantityData,
    /// The value taken.
    pub typical: QuantityData,
    /// Upper end.
    pub high: QuantityData,
    /// Why that was taken.
    pub why: String,
    /// Swing of the margin over the range, as a share of what is available.
    pub weight: f64,
    /// Where start and no start meet, if that is inside the range.
    pub turns_at: Option<QuantityData>,
}

impl ColdStartAnswer {
    pub(crate) fn new(answer: &ColdAnswer, reader: &Reader) -> Self {
        let told = |message: &Message| say(message, reader);
        let [best, typical, worst] = answer.coldest.map(|reach| ReachData::new(reach, reader));
        let remedies = words::remedies(answer);
        ColdStartAnswer {
            version: "oilway.cold-start.1",
            stop: told(&words::STOP),
            verdict: verdict_word(answer.verdict),
            says: told(&words::sentence(answer)),
            temperature: QuantityData::new(answer.temperature, reader),
            need: BandData::new(&answer.need, reader),
            have: BandData::new(&answer.have, reader),
            coldest: ColdestData { best, typical, worst },
            stated: answer.stated.map(|stated| QuantityData::new(stated, reader)),
            remedies: remedies
                .iter()
                .map(|(what, reach, _)| RemedyData {
                    what: told(what),
                    coldest: ReachData::new(*reach, reader),
                })
                .collect(),
            next_hour: words::HOUR.iter().map(told).collect(),
            question: words::question(answer).as_ref().map(told),
            plan: words::plan(answer).iter().map(told).collect(),
            open: answer.open.iter().map(|open| OpenData::new(open, reader)).collect(),
            counted: told(&words::COUNTED),
        }
    }
}

impl BandData {
    fn new(band: &Band<Pressure>, reader: &Reader) -> Self {
        let of = |pressure: Pressure| QuantityData::new(pressure, reader);
        BandData { low: of(band.low), typical: of(band.typical), high: of(band.high) }
    }
}

impl ReachData {
    fn new(reach: Reach, reader: &Reader) -> Self {
        let (reach, temperature) = match reach {
            Reach::DownTo(limit) => ("down to", Some(QuantityData::new(limit, reader))),
            Reach::Beyond => ("beyond", None),
            Reach::Never => ("never", None),
        };
        ReachData { reach, temperature }
    }
}

impl OpenData {
    fn new(open: &Open, reader: &Reader) -> Self {
        OpenData {
            name: open.name,
            low: QuantityData::new(open.low, reader),
            typical: QuantityData::new(open.typical, reader),
            high: QuantityData::new(open.high, reader),
            why: say(&words::why_taken(open), reader),
            weight: if open.weight.is_finite() { open.weight } else { 1.0 },
            turns_at: open.turns_at.map(|value| QuantityData::new(value, reader)),
        }
    }
}
