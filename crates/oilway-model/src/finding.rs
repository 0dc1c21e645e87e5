//! A finding: a judgement on a design, with its numbers, its source and its cure.

use oilway_physics::Source;
use oilway_text::Message;
use oilway_units::AnyQuantity;

/// How much a finding weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// Must not be built or started like this.
    Stop,
    /// Works, but somebody must know or watch something.
    Caution,
    /// Good to know.
    Note,
}

/// The four words in which every question is answered.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Verdict {
    /// It works.
    Works,
    /// It works if somebody takes care.
    WorksWithCare,
    /// It will not work.
    WillNotWork,
    /// The facts do not suffice.
    CannotTellYet,
}

/// A number behind a finding.
#[derive(Clone, Debug)]
pub struct Evidence {
    /// What it is.
    pub what: Message,
    /// The number.
    pub value: AnyQuantity,
}

/// A judgement on a design.
#[derive(Clone, Debug)]
pub struct Finding {
    /// The lasting id of the rule: `disc-window`.
    pub rule: &'static str,
    /// How much it weighs.
    pub severity: Severity,
    /// The thing that it speaks of, by name: a point, a divider, `package.disc`.
    pub at: String,
    /// What is found, with its numbers.
    pub what: Message,
    /// What to do.
    pub cure: Message,
    /// What would turn the verdict: at which temperature, pressure, length or dose.
    pub turns: Option<Message>,
    /// The numbers.
    pub evidence: Vec<Evidence>,
    /// Where the rule comes from.
    pub source: Source,
    /// Ids of the cautions that belong beside it.
    pub cautions: Vec<&'static str>,
}
