//! Reservoirs: what they hold and what of it can be used.

use core::f64::consts::FRAC_PI_4;

use oilway_text::message;

use super::Medium;
use super::contradiction::Found;
use crate::{Contradiction, Part, Role};

kind! {
    /// A reservoir.
    Reservoir, ReservoirKind = "reservoir", "a vessel that keeps the lubricant for the pump";
    @contradictions contradictions;
    gross: needed Quantity(Volume, Positive), "what it holds when full";
    usable: needed Quantity(Ratio, Between(0.0, 1.0)), "share that the pump can take out";
    follower: maybe Flag(), "a plate lies on the grease and presses it down";
    follower_weight: maybe Quantity(Mass, Positive), "mass of that plate";
    diameter: needed Quantity(Length, Positive), "inner diameter";
    height: maybe Quantity(Length, Positive), "inner height";
    reserve: needed Quantity(Volume, NotNegative), "usable volume that is left when the low level signal comes";
    lubricants: needed Words(Medium), "what it may hold";
    low_switch: maybe Flag(), "a switch for low level is built in";
}

/// Heights are rounded to whole millimetres, and corners take a little.
const ROUNDING: f64 = 1.02;

fn contradictions(reservoir: &Reservoir, part: &Part) -> Vec<Contradiction> {
    let mut found = Found::default();
    let usable = reservoir.gross * reservoir.usable.fraction();
    found.when(reservoir.reserve >= usable, "reserve", || {
        message!("catalogue-reserve-too-large", reserve = reservoir.reserve, usable = usable)
    });
    if let Some(height) = reservoir.height {
        let cylinder = reservoir.diameter * reservoir.diameter * height * FRAC_PI_4;
        found.when(reservoir.gross > cylinder * ROUNDING, "gross", || {
            message!("catalogue-larger-than-its-shell", gross = reservoir.gross, shell = cylinder)
        });
    }
    found.when(reservoir.follower_weight.is_some() && !reservoir.follower, "follower_weight", || {
        message!("catalogue-weight-without-plate")
    });
    found.lacks_port(part, Role::Outlet);
    found.lacks_port(part, Role::Fill);
    found.0
}
