//! What joins: fittings, adapters, plugs, check valves and shut-off valves.

use super::contradiction::{Found, crossed};
use crate::{Contradiction, Part, Role};

words! {
    /// The shape of a fitting.
    Shape {
        /// Straight through.
        Straight = "straight",
        /// Round a corner.
        Elbow = "elbow",
        /// One into two.
        Tee = "tee",
    }
}

impl Shape {
    /// How many ends it has.
    pub const fn ends(self) -> usize {
        match self {
            Shape::Straight | Shape::Elbow => 2,
            Shape::Tee => 3,
        }
    }
}

kind! {
    /// A fitting between tube or hose ends and threads; its ends are its ports.
    Fitting, FittingKind = "fitting", "joins a tube or hose to a thread or to another";
    @rating |fitting| Some(fitting.rated);
    @contradictions |fitting, part| ends(part, fitting.shape.ends());
    shape: needed Word(Shape), "straight, round a corner or into two";
    rated: needed Quantity(Pressure, Positive), "highest steady pressure";
    bore: needed Quantity(Length, Positive), "narrowest passage";
    air: maybe Flag(), "it is made for compressed air only";
}

kind! {
    /// An adapter between two threads.
    Adapter, AdapterKind = "adapter", "joins two threads that do not fit each other";
    @rating |adapter| Some(adapter.rated);
    @contradictions |_, part| ends(part, 2);
    rated: needed Quantity(Pressure, Positive), "highest steady pressure";
    bore: needed Quantity(Length, Positive), "narrowest passage";
}

kind! {
    /// A plug that shuts a port for good.
    Plug, PlugKind = "plug", "shuts a port that is not used";
    @rating |plug| Some(plug.rated);
    @contradictions |_, part| ends(part, 1);
    rated: needed Quantity(Pressure, Positive), "highest steady pressure";
}

kind! {
    /// A check valve.
    CheckValve, CheckValveKind = "check valve", "lets through one way only";
    @rating |valve| Some(valve.rated);
    @contradictions check_contradictions;
    cracking: needed Quantity(Pressure, NotNegative), "pressure that opens it";
    rated: needed Quantity(Pressure, Positive), "highest steady pressure";
    bore: maybe Quantity(Length, Positive), "narrowest passage";
}

fn check_contradictions(valve: &CheckValve, part: &Part) -> Vec<Contradiction> {
    let mut found = Found::default();
    found.when(valve.cracking >= valve.rated, "cracking", || {
        crossed("cracking", valve.cracking, "rated", valve.rated)
    });
    found.lacks_port(part, Role::Inlet);
    found.lacks_port(part, Role::Outlet);
    found.0
}

kind! {
    /// A valve that shuts a line by hand. It must never stand between a pump and its burst disc.
    ShutOffValve, ShutOffValveKind = "shut-off valve", "shuts a line by hand";
    @rating |valve| Some(valve.rated);
    @contradictions |_, part| ends(part, 2);
    rated: needed Quantity(Pressure, Positive), "highest steady pressure";
    bore: maybe Quantity(Length, Positive), "narrowest passage";
    lockable: maybe Flag(), "it can be locked shut for work on the line";
}

fn ends(part: &Part, number: usize) -> Vec<Contradiction> {
    let mut found = Found::default();
    found.wants_ports(part, number);
    found.0
}
