//! Answers of the exact search for programs.

use oilway_solve::metering::{Feed, Optimum};
use oilway_text::{Message, Reader, say};
use schemars::JsonSchema;
use serde::Serialize;

use crate::show::metering::reason;
use crate::verbs::meter::Metered;

/// The answer of `meter`.
#[derive(Debug, Serialize, JsonSchema)]
pub struct MeterAnswer {
    /// `oilway.meter.1`
    pub version: &'static str,
    /// The questions, in the order of the file.
    pub questions: Vec<QuestionData>,
    /// What was passed over, and why.
    pub remarks: Vec<String>,
}

/// One question and its answer.
#[derive(Debug, Serialize, JsonSchema)]
pub struct QuestionData {
    /// Its name.
    pub id: String,
    /// The cheapest divider, if there is one.
    pub best: Option<BestData>,
    /// Why there is none.
    pub reason: Option<String>,
    /// Whether the file holds a proven answer that differs.
    pub differs: bool,
}

/// The cheapest divider.
#[derive(Debug, Serialize, JsonSchema)]
pub struct BestData {
    /// Its cost.
    pub cost: u64,
    /// No divider costs less than this.
    pub lower_bound: u64,
    /// Period of one cycle, seconds.
    pub period_seconds: f64,
    /// Volume of one cycle, mm³.
    pub cycle_volume_mm3: u64,
    /// Largest ratio of delivered to wanted, or of wanted to delivered.
    pub worst_error: f64,
    /// Steps of the search.
    pub steps: u64,
    /// The feed of each point, in the order of the question.
    pub points: Vec<FeedData>,
}

/// How a point is fed.
#[derive(Debug, Serialize, JsonSchema)]
pub struct FeedData {
    /// `one outlet`, `joined` or `teed`.
    pub feed: &'static str,
    /// Sizes of its outlets by their place in the question, counted from zero.
    pub sizes: Vec<usize>,
    /// Volume per cycle, mm³.
    pub volume_mm3: u64,
    /// Delivered over wanted.
    pub share: f64,
}

impl MeterAnswer {
    pub(crate) fn new(answers: &[Metered], remarks: &[Message], reader: &Reader) -> Self {
        let question = |metered: &Metered| QuestionData {
            id: metered.asked.id.clone(),
            best: metered.found.as_ref().ok().map(BestData::from),
            reason: metered.found.as_ref().err().map(|why| say(&reason(why), reader)),
            differs: metered.differs(),
        };
        MeterAnswer {
            version: "oilway.meter.1",
            questions: answers.iter().map(question).collect(),
            remarks: remarks.iter().map(|remark| say(remark, reader)).collect(),
        }
    }
}

impl From<&Optimum> for BestData {
    fn from(best: &Optimum) -> Self {
        let point = |choice: &oilway_solve::metering::Choice| FeedData {
            feed: match choice.feed {
                Feed::One(_) => "one outlet",
                Feed::Joined(_) => "joined",
                Feed::Teed(_) => "teed",
            },
            sizes: choice.feed.outlets(),
            volume_mm3: choice.volume,
            share: choice.share.value(),
        };
        BestData {
            cost: best.objective,
            lower_bound: best.proof.lower_bound,
            period_seconds: best.period.seconds(),
            cycle_volume_mm3: best.cycle_volume,
            worst_error: best.worst_error.value(),
            steps: best.proof.nodes_explored,
            points: best.choices.iter().map(point).collect(),
        }
    }
}
