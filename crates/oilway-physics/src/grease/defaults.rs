//! What to take for a grease when nobody has measured it: bands that go on the list of assumptions of a job.

use oilway_units::{Density, Ratio, TemperatureDifference};

use super::classes::Band;
use crate::{Source, Standing};

/// Warming that halves the yield stress; `b` of `grease/yield-stress`.
pub const HALVING: Band<TemperatureDifference> = Band {
    low: TemperatureDifference::from_kelvins(15.0),
    typical: TemperatureDifference::from_kelvins(20.0),
    high: TemperatureDifference::from_kelvins(40.0),
};
/// Where [`HALVING`] comes from.
pub const HALVING_SOURCE: Source = Source { key: "lugt", place: "halving step", standing: Standing::Memory };

/// Factor on the yield stress for the first stroke after a long rest. No open figure was found.
pub const AFTER_REST: Band<Ratio> = Band {
    low: Ratio::from_fraction(1.0),
    typical: Ratio::from_fraction(1.5),
    high: Ratio::from_fraction(2.0),
};
/// Where [`AFTER_REST`] comes from.
pub const AFTER_REST_SOURCE: Source =
    Source { key: "common-practice", place: "judged", standing: Standing::CommonPractice };

/// Density of a mineral-oil grease without heavy solids.
pub const DENSITY: Band<Density> = Band {
    low: Density::from_kilograms_per_cubic_metre(850.0),
    typical: Density::from_kilograms_per_cubic_metre(900.0),
    high: Density::from_kilograms_per_cubic_metre(950.0),
};
/// Where [`DENSITY`] comes from.
pub const DENSITY_SOURCE: Source =
    Source { key: "common-practice", place: "no source", standing: Standing::CommonPractice };

/// Share of free air in a grease, by volume at atmosphere: it cannot shed the air stirred in during filling.
pub const AIR: Band<Ratio> =
    Band { low: Ratio::from_percent(1.0), typical: Ratio::from_percent(2.0), high: Ratio::from_percent(5.0) };
/// Where [`AIR`] comes from.
pub const AIR_SOURCE: Source = Source {
    key: "common-practice",
    place: "judged; entrainment confirmed by delgado-2005",
    standing: Standing::CommonPractice,
};
