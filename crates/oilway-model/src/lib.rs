//! Types only: what the engineer said ([`Job`]), what was decided ([`Design`]), what follows from it ([`Answer`] and its parts)
//! and what is to be thought of it ([`Finding`]).
//!
//! Nothing here computes a pressure or makes a choice; the few methods turn a lubricant or a place into the state that a
//! formula needs, or walk over the entries of which a study of spreads moves one after the other.

mod choice;
mod conditions;
mod design;
mod finding;
mod job;
mod lubricant;
mod network;
mod point;
mod result;
mod walk;

pub use choice::Choice;
pub use conditions::{
    Air, Conditions, CurrentKind, Duty, Electric, Limits, Place, Practice, Season, Site, Surroundings,
};
pub use design::{
    Control, Design, Device, Divider, Filling, Joint, JointEnd, Mounting, OutletUse, Package, Reason,
    Section, Side,
};
pub use finding::{Evidence, Finding, Severity, Verdict};
pub use job::{DividerWish, Feed, Job, LegWish, PackageWish, Pinned, Principle, RouteWish, SectionWish};
pub use lubricant::{FlowCurve, Fluid, Grease, GreaseRow, GreaseSpan, Lubricant, Oil, ROUGHNESS, Substance};
pub use network::{End, Leg, Network, Node};
pub use point::{AnyEntry, Given, Point, PointEntry};
pub use result::{
    Answer, Assumption, ColdLimit, Delivery, PathPressures, Protection, PumpState, Remedy, SeasonResult,
    Span, Supply,
};
pub use walk::EntryVisitor;
