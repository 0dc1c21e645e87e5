//! The design: a job in which every choice is made. It holds parts, lines, ports and settings, and no pressures.

use std::sync::Arc;

use oilway_catalogue::Part;
use oilway_text::Message;
use oilway_units::{Entry, Length, Pressure, Time, UnitSystem};

use crate::{Conditions, Leg, Network, Point};

/// The side of a divider on which an outlet sits, seen from the inlet end with the outlets up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Side {
    /// Left.
    Left,
    /// Right.
    Right,
}

/// What becomes of an outlet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum OutletUse {
    /// It feeds the line to this node.
    To(usize),
    /// It is joined inside its section to the opposite outlet, which gives both volumes.
    WithOpposite,
    /// It is led to an outlet of another section: section index and side.
    Bridged(usize, Side),
    /// A plug is in it: the divider stops at the first cycle. Legal as data, never right.
    Plugged,
    /// Nothing is in it: it spills.
    Open,
}

/// A working section.
#[derive(Clone, Debug)]
pub struct Section {
    /// The section part.
    pub part: Arc<Part>,
    /// The left outlet.
    pub left: OutletUse,
    /// The right outlet.
    pub right: OutletUse,
}

/// A series progressive divider.
#[derive(Clone, Debug)]
pub struct Divider {
    /// Its name.
    pub name: String,
    /// Its node.
    pub node: usize,
    /// The place where it sits, by index.
    pub place: usize,
    /// Inlet and end section.
    pub body: Arc<Part>,
    /// Its working sections, from the inlet on.
    pub sections: Vec<Section>,
    /// Whether a cycle switch watches it.
    pub cycle_switch: bool,
}

/// Where the pump's block sits.
#[derive(Clone, Debug)]
pub enum Mounting {
    /// On the reservoir, with its inlet in the lubricant.
    OnReservoir,
    /// Away from it, with an inlet line.
    Remote(Vec<Leg>),
}

/// What a port holds.
#[derive(Clone, Debug)]
pub enum Filling {
    /// A part of the design: the line's fitting, a plug, the gauge, the relief assembly.
    Part(Arc<Part>),
    /// Open on purpose: an exhaust with its silencer left off, a weep hole.
    OpenByIntent(Message),
    /// Nothing was decided.
    Nothing,
}

/// One port of a device and what goes into it.
#[derive(Clone, Debug)]
pub struct Device {
    /// The part whose port it is, by part id.
    pub of: Arc<Part>,
    /// The port's mark.
    pub mark: String,
    /// What goes in, from the port outwards: an adapter and then the gauge, for example.
    pub holds: Vec<Filling>,
    /// Whether a shut-off sits between the pump and this port.
    pub behind_shut_off: bool,
    /// Whether a one-way part in it points away from the device; none if it holds no one-way part.
    pub flows_out: Option<bool>,
}

impl Device {
    /// Whether the port stands under the pump's pressure.
    pub fn sees_pressure(&self) -> bool {
        let port = self.of.ports.iter().find(|p| p.mark == self.mark);
        port.is_some_and(|p| p.internal == oilway_catalogue::Internal::Pressure)
    }
}

/// A joint of the lines: from a component's thread to a tube or hose end, or from tube to hose.
#[derive(Clone, Debug)]
pub struct Joint {
    /// Where it is: `point.cold belt 1`, `divider.washer inlet`, `line.stacker guide 1.2`.
    pub at: String,
    /// The thread or tube end on the side of the pump.
    pub from: JointEnd,
    /// The thread or tube end on the far side.
    pub to: JointEnd,
    /// The fitting and adapters that join them, from the pump side on; empty where the catalogue has none.
    pub parts: Vec<Arc<Part>>,
}

/// One side of a joint.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct JointEnd {
    /// Thread by standard and size, or `tube 8`; none if nobody knows it yet.
    pub thread: Option<String>,
    /// Male or female.
    pub sex: oilway_catalogue::Sex,
}

/// The pump package.
#[derive(Clone, Debug)]
pub struct Package {
    /// The place where it stands, by index.
    pub place: usize,
    /// The pump.
    pub pump: Arc<Part>,
    /// The reservoir.
    pub reservoir: Arc<Part>,
    /// The port block.
    pub block: Arc<Part>,
    /// How it is mounted.
    pub mounting: Mounting,
    /// The air valve; none for an electric pump.
    pub valve: Option<Arc<Part>>,
    /// The air regulator; none for an electric pump.
    pub regulator: Option<Arc<Part>>,
    /// Air pressure set at the regulator; none for an electric pump.
    pub air_setting: Option<Pressure>,
    /// The burst disc.
    pub disc: Option<Arc<Part>>,
    /// Its holder.
    pub holder: Option<Arc<Part>>,
    /// Piped discharge behind the holder, if any.
    pub discharge: Vec<Leg>,
    /// The gauge.
    pub gauge: Option<Arc<Part>>,
    /// The controller, if it comes with the package.
    pub controller: Option<Arc<Part>>,
    /// Every port and what goes into it.
    pub devices: Vec<Device>,
    /// Spare discs in the bag.
    pub spare_discs: u32,
}

/// How the system is run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Control {
    /// Pause between two lubrication events, running time of the machine.
    pub pause: Time,
    /// Cycles of the first divider in one event, counted by its cycle switch.
    pub cycles: u32,
    /// Longest time of an event before the alarm.
    pub time_out: Time,
}

/// Why the tool chose something.
#[derive(Clone, Debug)]
pub struct Reason {
    /// What was chosen: `package.disc`, `divider.washer.sections`.
    pub at: String,
    /// The choice, as the lock file would hold it.
    pub chosen: String,
    /// Whether it was given or pinned and merely kept.
    pub kept: bool,
    /// Why.
    pub why: Message,
}

/// A complete system.
#[derive(Clone, Debug)]
pub struct Design {
    /// The job's name.
    pub name: String,
    /// The units in which its readers like to read.
    pub units: Option<UnitSystem>,
    /// Everything that surrounds it.
    pub conditions: Conditions,
    /// The points it serves.
    pub points: Vec<Point>,
    /// The tree of lines.
    pub network: Network,
    /// Tubes and hoses in use.
    pub conduits: Vec<Arc<Part>>,
    /// The dividers.
    pub dividers: Vec<Divider>,
    /// The package.
    pub package: Package,
    /// The settings.
    pub control: Control,
    /// The joints of the lines.
    pub joints: Vec<Joint>,
    /// Why each choice was made.
    pub reasons: Vec<Reason>,
    /// Cutting allowance and the like: tube lengths are bought by the parts list with this addition.
    pub cutting_allowance: Entry<Length>,
}
