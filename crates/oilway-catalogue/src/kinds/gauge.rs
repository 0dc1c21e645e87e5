//! Pressure gauges.

use super::contradiction::Found;
use crate::{Contradiction, Part};

kind! {
    /// A pressure gauge.
    ///
    /// It holds pressure up to its full scale, which is therefore its rating: the highest burst of the disc has to stay
    /// inside. What it may *show* is less: three quarters of full scale at a steady pressure and two thirds at a pulsating
    /// one (EN 837-2, from memory; the text was not seen).
    Gauge, GaugeKind = "gauge", "shows the pressure";
    @rating |gauge| Some(gauge.full_scale);
    @contradictions |_, part| one_port(part);
    full_scale: needed Quantity(Pressure, Positive), "end of its scale";
    damped: maybe Flag(), "its movement is damped against pulsation";
    diameter: maybe Quantity(Length, Positive), "diameter of its dial";
}

fn one_port(part: &Part) -> Vec<Contradiction> {
    let mut found = Found::default();
    found.wants_ports(part, 1);
    found.0
}
