//! Port blocks: where pump, line, relief, gauge and return meet.

use super::contradiction::Found;
use crate::{Contradiction, Part, Role};

words! {
    /// Where a port block can sit.
    BlockPlace {
        /// On the reservoir, with the inlet in the lubricant.
        OnReservoir = "on reservoir",
        /// Away from it, with an inlet line.
        Remote = "remote",
    }
}

kind! {
    /// A port block.
    PortBlock, PortBlockKind = "port block", "the block that carries the pump and all ports of the package";
    @rating |block| Some(block.rated);
    @contradictions contradictions;
    rated: needed Quantity(Pressure, Positive), "highest steady pressure of its pressure side";
    mounting: needed Words(BlockPlace), "where it can sit";
}

fn contradictions(_: &PortBlock, part: &Part) -> Vec<Contradiction> {
    let mut found = Found::default();
    for role in [Role::Inlet, Role::Outlet, Role::Relief, Role::Gauge] {
        found.lacks_port(part, role);
    }
    found.0
}
