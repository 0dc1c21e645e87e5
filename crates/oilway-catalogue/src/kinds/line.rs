//! Tubes and hoses.

use oilway_text::message;
use oilway_units::Length;

use super::contradiction::{Found, crossed};
use crate::{Contradiction, Part};

words! {
    /// What a tube is made of.
    TubeMaterial {
        /// Stainless steel.
        StainlessSteel = "stainless steel",
        /// Carbon steel.
        CarbonSteel = "carbon steel",
        /// Copper.
        Copper = "copper",
        /// Polyamide.
        Polyamide = "polyamide",
    }
}

kind! {
    /// A tube, sold by the metre.
    Tube, TubeKind = "tube", "a tube, by the metre";
    @rating |tube| tube.rated;
    @contradictions tube_contradictions;
    outside: needed Quantity(Length, Positive), "outside diameter";
    wall: needed Quantity(Length, Positive), "thickness of the wall";
    material: needed Word(TubeMaterial), "what it is made of";
    rated: maybe Quantity(Pressure, Positive), "highest steady pressure";
    basis: maybe Text(), "formula, stress and tolerance from which that pressure comes";
    coil: maybe Quantity(Length, Positive), "length of the coil or bar in which it comes";
    bend_radius: maybe Quantity(Length, Positive), "smallest radius of a bend, to the centre line";
    coldest: maybe Quantity(Temperature, Any), "coldest use";
    hottest: maybe Quantity(Temperature, Any), "hottest use at the rated pressure";
}

impl Tube {
    /// The inner diameter.
    pub fn bore(&self) -> Length {
        self.outside - self.wall * 2.0
    }
}

fn tube_contradictions(tube: &Tube, _: &Part) -> Vec<Contradiction> {
    let mut found = Found::default();
    found.when(tube.bore() <= Length::ZERO, "wall", || {
        message!("catalogue-wall-fills-tube", wall = tube.wall, outside = tube.outside)
    });
    found.when(tube.rated.is_some() && tube.basis.is_none(), "rated", || {
        message!("catalogue-rating-without-basis")
    });
    found.0
}

kind! {
    /// A hose, sold by the metre; its ends are fittings.
    Hose, HoseKind = "hose", "a hose, by the metre";
    @rating |hose| Some(hose.rated);
    @contradictions hose_contradictions;
    bore: needed Quantity(Length, Positive), "inner diameter";
    outside: maybe Quantity(Length, Positive), "outside diameter";
    rated: needed Quantity(Pressure, Positive), "highest steady pressure";
    burst: maybe Quantity(Pressure, Positive), "pressure at which a new one bursts";
    bend_radius: needed Quantity(Length, Positive), "smallest radius of a bend, to the centre line";
    growth: maybe Quantity(VolumePerLength, NotNegative), "how much more it holds at its rated pressure";
    coldest: needed Quantity(Temperature, Any), "coldest use";
    hottest: needed Quantity(Temperature, Any), "hottest use at the rated pressure";
    food: maybe Flag(), "it may be used beside food";
}

fn hose_contradictions(hose: &Hose, _: &Part) -> Vec<Contradiction> {
    let mut found = Found::default();
    found.when(hose.coldest >= hose.hottest, "coldest", || {
        crossed("coldest", hose.coldest, "hottest", hose.hottest)
    });
    if let Some(outside) = hose.outside {
        found.when(hose.bore >= outside, "bore", || crossed("bore", hose.bore, "outside", outside));
    }
    if let Some(burst) = hose.burst {
        found.when(hose.rated >= burst, "rated", || crossed("rated", hose.rated, "burst", burst));
    }
    found.0
}
