//! The job: what the engineer said, with every choice given, open or pinned.

use oilway_units::{Entry, Length, Pressure, Time, UnitSystem};

use crate::{Choice, Conditions, Point};

/// A principle of distribution.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Principle {
    /// Series progressive.
    Progressive,
    /// Parallel single line.
    Parallel,
}

/// A stretch of line as the job tells it.
#[derive(Clone, Debug)]
pub struct LegWish {
    /// The place it runs through, by index.
    pub place: usize,
    /// Its length.
    pub length: Entry<Length>,
    /// How much it rises towards the point.
    pub rise: Entry<Length>,
    /// The tube or hose, by part id.
    pub conduit: Choice<String>,
    /// Whether it must be a hose because something moves.
    pub flexible: bool,
}

/// The way to a divider.
pub type RouteWish = Vec<LegWish>;

/// A working section as the job gives it.
#[derive(Clone, Debug, PartialEq)]
pub struct SectionWish {
    /// The section, by part id.
    pub part: String,
    /// The points or dividers that it serves: one name where its two outlets are joined, two names where they are not.
    pub serves: Vec<String>,
}

/// What feeds a divider.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Feed {
    /// The pump.
    Pump,
    /// An outlet of another divider, by index.
    Divider(usize),
}

/// A divider as the job tells it.
#[derive(Clone, Debug)]
pub struct DividerWish {
    /// Its name, unique among dividers and points.
    pub name: String,
    /// The place where it sits, by index.
    pub place: usize,
    /// What feeds it.
    pub fed_by: Feed,
    /// The way from what feeds it.
    pub route: RouteWish,
    /// The divider, by part id.
    pub part: Choice<String>,
    /// Its working sections.
    pub sections: Choice<Vec<SectionWish>>,
}

/// The pump package as the job tells it. Every choice is a part id unless it is a quantity.
#[derive(Clone, Debug, Default)]
pub struct PackageWish {
    /// The place where it stands, by index.
    pub place: usize,
    /// Whether the block sits on the reservoir or away from it.
    pub remote: Choice<bool>,
    /// The inlet line of a pump away from its reservoir.
    pub inlet: RouteWish,
    /// The pump.
    pub pump: Choice<String>,
    /// The reservoir.
    pub reservoir: Choice<String>,
    /// The port block.
    pub block: Choice<String>,
    /// The air valve.
    pub valve: Choice<String>,
    /// Air pressure set at the regulator.
    pub regulator: Choice<Pressure>,
    /// The burst disc.
    pub disc: Choice<String>,
    /// The disc holder, and with it where the disc discharges.
    pub holder: Choice<String>,
    /// Length of a piped discharge.
    pub discharge: Option<Entry<Length>>,
    /// The gauge.
    pub gauge: Choice<String>,
    /// The controller.
    pub controller: Choice<String>,
}

/// A choice that an earlier run made and somebody approved.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pinned {
    /// Where in the job: `package.disc`, `divider.washer.sections`.
    pub at: String,
    /// What was chosen, as the lock file holds it.
    pub chosen: String,
}

/// A job.
#[derive(Clone, Debug)]
pub struct Job {
    /// Its name.
    pub name: String,
    /// The customer's request or a note, free text.
    pub note: String,
    /// The units in which its readers like to read.
    pub units: Option<UnitSystem>,
    /// Everything that surrounds the system.
    pub conditions: Conditions,
    /// The lubrication points.
    pub points: Vec<Point>,
    /// The dividers, parents before children.
    pub dividers: Vec<DividerWish>,
    /// The pump package.
    pub package: PackageWish,
    /// The principle of distribution.
    pub principle: Choice<Principle>,
    /// Pause between two lubrication events.
    pub pause: Choice<Time>,
}
