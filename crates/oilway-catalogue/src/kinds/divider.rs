//! Series progressive dividers: the set of inlet and end section, and the working sections between them.

use super::contradiction::{Found, crossed};
use crate::{Contradiction, Part, Role};

kind! {
    /// Inlet and end section of a series progressive divider, without its working sections.
    Divider, DividerKind = "divider", "inlet and end section of a series progressive divider";
    @rating |divider| Some(divider.rated);
    @contradictions contradictions;
    sections_min: needed Quantity(Count, Between(3.0, 40.0)), "the least number of working sections with which it can cycle";
    sections_max: needed Quantity(Count, Between(3.0, 40.0)), "the most working sections that it takes";
    drop: needed Quantity(Pressure, NotNegative), "pressure that it takes to move its pistons, from inlet to an unloaded outlet";
    rated: needed Quantity(Pressure, Positive), "highest steady pressure";
    cycles_max: needed Quantity(Frequency, Positive), "the most cycles in a time that it may make";
    cycle_switch: maybe Flag(), "a switch tells every cycle";
    outlet_difference_max: maybe Quantity(Pressure, Positive), "largest difference of pressure between two outlets at which it still meters";
}

fn contradictions(divider: &Divider, part: &Part) -> Vec<Contradiction> {
    let mut found = Found::default();
    found.when(divider.sections_min > divider.sections_max, "sections_min", || {
        crossed("sections_min", divider.sections_min, "sections_max", divider.sections_max)
    });
    found.when(divider.drop >= divider.rated, "drop", || {
        crossed("drop", divider.drop, "rated", divider.rated)
    });
    found.lacks_port(part, Role::Inlet);
    found.0
}
