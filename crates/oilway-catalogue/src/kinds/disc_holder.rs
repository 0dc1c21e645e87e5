//! Holders of burst discs.

use oilway_text::message;

use super::contradiction::Found;
use crate::{Contradiction, Part, Role};

words! {
    /// Where the lubricant goes when the disc has burst.
    Discharge {
        /// Into the open, through a hole in the holder.
        Open = "open",
        /// Into a line that is led to a safe place.
        Piped = "piped",
        /// Against an indicator that jumps out and shows it.
        Indicator = "indicator",
        /// Against a switch that tells the controller.
        Switch = "switch",
    }
}

kind! {
    /// A holder for a burst disc.
    DiscHolder, DiscHolderKind = "disc holder", "the fitting that holds a burst disc";
    @rating |holder| holder.rated;
    @contradictions contradictions;
    discharge: needed Word(Discharge), "where the lubricant goes when the disc has burst";
    hole: needed Quantity(Length, Positive), "free hole behind the disc";
    land: needed Quantity(Length, Positive), "length of that hole";
    opens_at: maybe Quantity(Pressure, NotNegative), "pressure behind the disc that moves the indicator or switch; it adds to the back pressure";
    rated: maybe Quantity(Pressure, Positive), "highest pressure that the holder itself stands";
}

fn contradictions(holder: &DiscHolder, part: &Part) -> Vec<Contradiction> {
    let mut found = Found::default();
    found.lacks_port(part, Role::Inlet);
    if holder.discharge == Discharge::Piped {
        found.lacks_port(part, Role::Outlet);
    }
    let moves = matches!(holder.discharge, Discharge::Indicator | Discharge::Switch);
    found.when(moves && holder.opens_at.is_none(), "opens_at", || {
        message!("catalogue-holder-without-pressure")
    });
    found.0
}
