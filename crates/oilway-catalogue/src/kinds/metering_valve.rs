//! Metering valves of single-line parallel systems.

use super::Medium;
use super::contradiction::{Found, crossed};
use crate::{Contradiction, Part, Role};

kind! {
    /// A metering valve of a single-line parallel system: it gives its dose when the line rises and recharges when the line
    /// is let down.
    MeteringValve, MeteringValveKind = "metering valve", "gives one dose when the line rises, recharges when it is let down";
    @rating |valve| Some(valve.rated);
    @contradictions contradictions;
    dose_min: needed Quantity(Volume, Positive), "smallest dose that it can be set to";
    dose_max: needed Quantity(Volume, Positive), "largest dose that it can be set to";
    fires_at: needed Quantity(Pressure, Positive), "pressure at its inlet that makes it give its dose";
    resets_below: needed Quantity(Pressure, Positive), "pressure at its inlet below which it recharges";
    rated: needed Quantity(Pressure, Positive), "highest steady pressure";
    lubricants: needed Words(Medium), "for which lubricant it is meant";
    indicator: maybe Flag(), "a pin shows every dose";
}

fn contradictions(valve: &MeteringValve, part: &Part) -> Vec<Contradiction> {
    let mut found = Found::default();
    found.when(valve.dose_min > valve.dose_max, "dose_min", || {
        crossed("dose_min", valve.dose_min, "dose_max", valve.dose_max)
    });
    found.when(valve.resets_below >= valve.fires_at, "resets_below", || {
        crossed("resets_below", valve.resets_below, "fires_at", valve.fires_at)
    });
    found.when(valve.fires_at >= valve.rated, "fires_at", || {
        crossed("fires_at", valve.fires_at, "rated", valve.rated)
    });
    found.lacks_port(part, Role::Inlet);
    found.lacks_port(part, Role::Outlet);
    found.0
}
