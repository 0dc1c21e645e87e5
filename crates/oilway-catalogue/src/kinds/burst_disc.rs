//! Burst discs: bursting-disc safety devices in the sense of ISO 4126.

use oilway_text::message;

use super::contradiction::Found;
use crate::{Contradiction, Part};

words! {
    /// For which lubricant a disc is meant.
    DiscUse {
        /// For grease.
        Grease = "grease",
        /// For oil.
        Oil = "oil",
        /// For both.
        Either = "either",
    }
}

kind! {
    /// A burst disc.
    BurstDisc, BurstDiscKind = "burst disc", "a disc that bursts before anything else does";
    @contradictions contradictions;
    nominal: needed Quantity(Pressure, Positive), "marked burst pressure";
    tolerance: needed Quantity(Ratio, Between(0.0, 0.5)), "burst tolerance: spread of single discs about the marked pressure, to either side";
    range_plus: needed Quantity(Ratio, Between(0.0, 0.5)), "manufacturing range above the ordered pressure; none for a disc in hand";
    range_minus: needed Quantity(Ratio, Between(0.0, 0.5)), "manufacturing range below the ordered pressure; none for a disc in hand";
    marked_at: needed Quantity(Temperature, Any), "temperature for which the pressure is marked";
    below: needed Quantity(PerTemperature, NotNegative), "how much stronger it gets for each kelvin below that temperature";
    above: needed Quantity(PerTemperature, NotNegative), "how much weaker it gets for each kelvin above it";
    ratio: needed Quantity(Ratio, Between(0.1, 1.0)), "operating ratio: largest working pressure over lowest burst pressure that it stands for long";
    liquid: maybe Flag(), "it opens fully in a system that is full of liquid";
    holder: needed Parts("disc holder"), "the holders into which it goes";
    lubricant: needed Word(DiscUse), "for which lubricant it is meant";
}

fn contradictions(disc: &BurstDisc, _: &Part) -> Vec<Contradiction> {
    let mut found = Found::default();
    found.when(!disc.liquid, "liquid", || message!("catalogue-disc-not-for-liquid"));
    found.0
}
