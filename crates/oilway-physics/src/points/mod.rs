//! The kinds of lubrication point: what must be known of each, and how much lubricant it then needs.
//!
//! A kind is one file and one line of [`KINDS`]. Its [`PointField`]s drive the job file, the survey sheet, the handbook and the
//! gaps that the tool asks about; its [`PointKind::demand`] strings registered formulas together and writes each step
//! into the ledger. Nobody matches on kinds.

mod as_told;
mod ball_screw;
mod bearing_corrections;
mod chain;
mod coupling;
mod enclosed_gear;
mod fields;
mod linear_guide;
mod open_gear;
mod plain_bearing;
mod rolling_bearing;
mod slewing_ring;
mod slideway;
mod surroundings;
mod wire_rope;
mod working;

pub use ball_screw::*;
pub use bearing_corrections::*;
pub use linear_guide::*;
pub use rolling_bearing::*;
pub use slewing_ring::*;
pub use surroundings::*;
pub use wire_rope::*;

use oilway_text::Message;
use oilway_units::{
    AnyQuantity, Density, Dimension, Flow, Frequency, KinematicViscosity, Quantity, Temperature, Time, Volume,
};

use crate::{Formula, Ledger, Range};

/// What may be entered in a field of a point.
#[derive(Clone, Copy, Debug)]
pub enum Wanted {
    /// A quantity. If the engineer does not know it, the tool goes on with this span and says so.
    Quantity {
        /// What it measures.
        dimension: Dimension,
        /// The values that make sense, in SI.
        range: Range,
        /// Lowest, typical and highest value taken where it is unknown, in SI.
        unknown: [f64; 3],
    },
    /// One of these words; the first is taken, and said, where it is unknown.
    Word(&'static [&'static str]),
}

/// One thing that may be known of a point.
#[derive(Clone, Copy, Debug)]
pub struct PointField {
    /// The key in the job file and the column of the survey.
    pub name: &'static str,
    /// What may be entered.
    pub wanted: Wanted,
    /// True if leaving the key out is the same as "unknown"; false if leaving it out means that it does not apply.
    pub needed: bool,
    /// What it means, in English, with the usual place to read it.
    pub meaning: &'static str,
}

/// What the engineer entered, or the value in force, field by field.
#[derive(Clone, Debug, PartialEq)]
pub enum Answer {
    /// A quantity.
    Quantity(AnyQuantity),
    /// A word of the field's list.
    Word(&'static str),
    /// It does not apply.
    Nothing,
}

/// The answers of one point, in the order of its kind's fields.
#[derive(Clone, Copy, Debug)]
pub struct Answers<'a> {
    /// The kind's fields.
    pub fields: &'a [PointField],
    /// One answer for each field.
    pub answers: &'a [Answer],
}

impl Answers<'_> {
    fn answer(&self, name: &str) -> &Answer {
        self.fields
            .iter()
            .position(|f| f.name == name)
            .and_then(|i| self.answers.get(i))
            .unwrap_or(&Answer::Nothing)
    }
    /// The quantity in this field, if it applies and has this dimension.
    pub fn quantity<T: Quantity>(&self, name: &str) -> Option<T> {
        match self.answer(name) {
            Answer::Quantity(q) => q.get(),
            _ => None,
        }
    }
    /// The word in this field.
    pub fn word(&self, name: &str) -> Option<&'static str> {
        match self.answer(name) {
            Answer::Word(word) => Some(word),
            _ => None,
        }
    }
}

/// What surrounds a point and bears on its demand.
#[derive(Clone, Copy, Debug)]
pub struct Around {
    /// Temperature of the point while it runs: the hottest that its place knows.
    pub temperature: Temperature,
    /// Grease, or oil.
    pub grease: bool,
    /// Density of the lubricant.
    pub density: Density,
    /// Viscosity of the oil, or of the grease's base oil, at that temperature.
    pub base_viscosity: Option<KinematicViscosity>,
    /// Dirt, water and heat as a multiplier of film-renewal rates, 1 to 4.
    pub severity: Severity,
    /// Share of the machine's running time in which this point moves.
    pub duty: f64,
}

/// How rough the surroundings are, from the job's words.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Severity {
    /// Solid dirt: 0 clean, 1 dusty, 2 heavy, 3 abrasive.
    pub dirt: u8,
    /// Water: 0 dry, 1 damp, 2 splash, 3 spray or washing.
    pub water: u8,
    /// Vibration: 0 quiet, 1 noticeable, 2 heavy.
    pub vibration: u8,
}

/// What a point needs.
#[derive(Clone, Debug)]
pub struct Demand {
    /// Mean rate while the machine runs.
    pub rate: Flow,
    /// Quantity of one conventional replenishment, if the rule knows one.
    pub quantity: Option<Volume>,
    /// Interval of that replenishment, in running hours.
    pub interval: Option<Time>,
    /// First charge of an empty point.
    pub first_fill: Option<Volume>,
    /// The formula that decided the rate.
    pub rule: &'static Formula,
    /// Viscosity ratio κ of ISO 281 where it applies.
    pub viscosity_ratio: Option<f64>,
    /// Remarks that go beside the number.
    pub notes: Vec<Message>,
}

/// Why no demand can be stated.
#[derive(Clone, Debug, PartialEq)]
pub struct NoDemand {
    /// The reason, with its numbers.
    pub reason: Message,
    /// What to do about it.
    pub cure: Message,
}

/// A kind of lubrication point.
pub trait PointKind: Sync + core::fmt::Debug {
    /// The lasting word in job files, in plain English: `rolling bearing`.
    fn id(&self) -> &'static str;
    /// One line that says what it is.
    fn title(&self) -> &'static str;
    /// What may be known of it.
    fn fields(&self) -> &'static [PointField];
    /// What it needs. Numbers go into the ledger under `name` (`point.<its name>`).
    ///
    /// # Errors
    /// [`NoDemand`] where the formula does not reach, a speed beyond the interval rule for example.
    fn demand(
        &self,
        answers: Answers<'_>,
        around: &Around,
        ledger: &mut Ledger,
        name: &str,
    ) -> Result<Demand, NoDemand>;
    /// The turning speed, for checks of speed limits; none where nothing turns.
    fn speed(&self, _answers: Answers<'_>) -> Option<Frequency> {
        None
    }
}

/// Every kind of point.
pub static KINDS: &[&dyn PointKind] = &[
    &rolling_bearing::ROLLING_BEARING,
    &rolling_bearing::INSERT_BEARING,
    &rolling_bearing::TRACK_ROLLER,
    &plain_bearing::PLAIN_BEARING,
    &plain_bearing::PIN,
    &slideway::SLIDEWAY,
    &linear_guide::LINEAR_GUIDE,
    &ball_screw::BALL_SCREW,
    &slewing_ring::SLEWING_RING,
    &open_gear::OPEN_GEAR,
    &enclosed_gear::ENCLOSED_GEAR,
    &chain::CHAIN,
    &coupling::COUPLING,
    &plain_bearing::SPLINE,
    &wire_rope::WIRE_ROPE,
    &as_told::AS_TOLD,
];

/// The formulas that belong to kinds of point alone: what surroundings and standing still do, and rules of this project.
pub(crate) const FORMULAS: &[&Formula] = &[
    &SURROUNDINGS_MULTIPLIER,
    &RATE_IN_SURROUNDINGS,
    &FILM_STANDING_SHARE,
    &BEARING_STANDING_SHARE,
    &MOVING_SHARE,
    &MEAN_DIAMETER,
    &INTERVAL_FACTOR,
    &CARRIAGE_GREASE,
    &CARRIAGE_OIL,
    &SCREW_BALL,
    &RACEWAY_FILM,
    &ROPE_DRESSING,
];

/// The kind with this id.
pub fn kind(id: &str) -> Option<&'static dyn PointKind> {
    KINDS.iter().copied().find(|kind| kind.id() == id)
}
