//! Plain tables beside the formulas: factors, limits and defaults, each row with its source and how far it was read.
//!
//! The keys are lasting words for job files and handbook; where a table has grades, row 0 is the mildest.

use oilway_units::{Count, Flow, Length, Mass, Ratio, Speed, Time, Volume};

use crate::{Source, Standing};

/// A default or a bound with its source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sourced<T> {
    /// The value.
    pub value: T,
    /// Where it comes from.
    pub source: Source,
}

/// A row of a table: key, value, source.
pub type Row = (&'static str, f64, Source);

const fn source(key: &'static str, place: &'static str, standing: Standing) -> Source {
    Source { key, place, standing }
}

const NEALE_INTERVAL: Source = source("neale-1995", "A20.5 Table 20.4", Standing::Seen);
const TRADE_THRUST: Source =
    source("trade-bearing", "thrust bearings listed beside spherical and tapered", Standing::Seen);
const TRAINING: Source = source("maintenance-training", "factor tables", Standing::Memory);
const PRACTICE: Source = source("common-practice", "no source", Standing::CommonPractice);
const KAPPA: Source = source("iso-281-2007", "judgement of κ, with the trade's words", Standing::Memory);
const JUDGED: Source = source("own-derivation", "grades between the bounds of practice", Standing::Own);

/// Factor k of the greasing interval, by kind of bearing.
pub const BEARING_FACTOR: &[Row] = &[
    ("radial ball", 10.0, NEALE_INTERVAL),
    ("cylindrical roller", 5.0, NEALE_INTERVAL),
    ("needle roller", 5.0, NEALE_INTERVAL),
    ("spherical roller", 1.0, NEALE_INTERVAL),
    ("tapered roller", 1.0, NEALE_INTERVAL),
    ("thrust", 1.0, TRADE_THRUST),
];

/// Solid contamination, factor Fc of the factor-product method.
pub const CONTAMINATION: &[Row] = &[
    ("light, non-abrasive", 1.0, TRAINING),
    ("heavy, non-abrasive", 0.7, TRAINING),
    ("light, abrasive", 0.4, TRAINING),
    ("heavy, abrasive", 0.2, TRAINING),
];

/// Moisture, factor Fm of the factor-product method.
pub const MOISTURE: &[Row] = &[
    ("mostly below 80 % humidity", 1.0, TRAINING),
    ("80 to 90 % humidity", 0.7, TRAINING),
    ("occasional condensation", 0.4, TRAINING),
    ("occasional water on the housing", 0.1, TRAINING),
];

/// Vibration by its peak velocity, factor Fv of the factor-product method.
pub const VIBRATION: &[Row] =
    &[("below 5 mm/s", 1.0, TRAINING), ("5 to 10 mm/s", 0.6, TRAINING), ("above 10 mm/s", 0.3, TRAINING)];

/// Position of the shaft, factor Fp of the factor-product method.
pub const SHAFT_POSITION: &[Row] =
    &[("horizontal", 1.0, TRAINING), ("45 degrees", 0.5, TRAINING), ("vertical", 0.3, TRAINING)];

/// The trade's own corrections of the greasing interval, to go with the temperature factor.
pub const TRADE_CORRECTION: &[Row] = &[
    ("vertical shaft", 0.5, source("trade-bearing", "vertical shaft", Standing::Seen)),
    ("bore above 300 mm", 0.5, source("trade-bearing", "to start with", Standing::Seen)),
    (
        "ring-guided cage of a cylindrical roller bearing",
        0.5,
        source("trade-bearing", "certain cages", Standing::Seen),
    ),
];

/// Grease of a replenishment in g for each mm² of D·B, by how often it is given.
pub const QUANTITY_BY_INTERVAL: &[Row] = &[
    ("weekly", 0.002, source("trade-bearing", "quantity by interval", Standing::Memory)),
    ("monthly", 0.003, source("trade-bearing", "quantity by interval", Standing::Memory)),
    ("yearly", 0.004, source("trade-bearing", "quantity by interval", Standing::Memory)),
    ("after years of standstill", 0.010, source("trade-bearing", "quantity by interval", Standing::Memory)),
];

/// Least and largest share of the free space of a bearing to fill at first, in ordinary service.
pub const FIRST_FILL: Sourced<(Ratio, Ratio)> = Sourced {
    value: (Ratio::from_percent(30.0), Ratio::from_percent(50.0)),
    source: source("neale-1995", "A20.5", Standing::Seen),
};

/// Calendar time after which a bearing is greased whatever its running hours.
pub const LONGEST_CALENDAR_INTERVAL: Sourced<Time> = Sourced {
    value: Time::from_years(4.0),
    source: source("mil-hdbk-1164", "48 months between lubrications", Standing::Seen),
};

/// Lower and upper end of the speed index up to which grease serves, by type of bearing.
pub const GREASE_SPEED_INDEX: Sourced<(Count, Count)> = Sourced {
    value: (Count::from_number(300_000.0), Count::from_number(350_000.0)),
    source: source("neale-1995", "C8.1, general guide table", Standing::Seen),
};

/// Lower and upper end of the speed index up to which oil serves, by type of bearing.
pub const OIL_SPEED_INDEX: Sourced<(Count, Count)> = Sourced {
    value: (Count::from_number(450_000.0), Count::from_number(500_000.0)),
    source: source("neale-1995", "C8.1, general guide table", Standing::Seen),
};

/// Surface speed above which a military handbook asks for oil instead of grease: coarser than the speed index.
pub const GREASE_SURFACE_SPEED: Sourced<Speed> = Sourced {
    value: Speed::from_feet_per_minute(1000.0),
    source: source("mil-hdbk-1164", "11.6.4 e, 12 000 in/min", Standing::Seen),
};

/// Viscosity ratio from which the film is wanted.
pub const KAPPA_WANTED: Sourced<Ratio> = Sourced { value: Ratio::from_fraction(1.0), source: KAPPA };
/// Viscosity ratio above which more brings nothing; count it as this.
pub const KAPPA_ENOUGH: Sourced<Ratio> = Sourced { value: Ratio::from_fraction(4.0), source: KAPPA };
/// Viscosity ratio below which lubrication is boundary; between this and 1 additives against wear are wanted.
pub const KAPPA_BOUNDARY: Sourced<Ratio> = Sourced { value: Ratio::from_fraction(0.4), source: KAPPA };
/// Viscosity ratio below which the standard does not reach.
pub const KAPPA_OUTSIDE: Sourced<Ratio> = Sourced { value: Ratio::from_fraction(0.1), source: KAPPA };

/// Lowest, customary and highest oil for each inch of bore and each row of a rolling bearing.
pub const OIL_PER_INCH: Sourced<(Flow, Flow, Flow)> = Sourced {
    value: (
        Flow::from_cubic_centimetres_per_hour(0.1),
        Flow::from_cubic_centimetres_per_hour(0.2),
        Flow::from_cubic_centimetres_per_hour(0.3),
    ),
    source: source("neale-1995", "C8.5; the middle is judged", Standing::Seen),
};

/// Oil for each inch of bore and each row of a preloaded unit, at most.
pub const OIL_PER_INCH_PRELOADED: Sourced<Flow> = Sourced {
    value: Flow::from_cubic_centimetres_per_hour(0.6),
    source: source("neale-1995", "C8.5", Standing::Seen),
};

/// Film that is renewed on a plain bearing or slideway.
pub const FILM: Sourced<Length> = Sourced { value: Length::from_millimetres(0.025), source: PRACTICE };
/// Time in which oil renews it.
pub const FILM_PERIOD_OIL: Sourced<Time> = Sourced { value: Time::from_hours(1.0), source: PRACTICE };
/// Time in which grease renews it.
pub const FILM_PERIOD_GREASE: Sourced<Time> = Sourced { value: Time::from_hours(4.0), source: PRACTICE };
/// Least and largest multiplier of the film rate for dirt, water and heat.
pub const FILM_MULTIPLIER: Sourced<(f64, f64)> = Sourced { value: (1.0, 4.0), source: PRACTICE };
/// Grades of that multiplier; practice gives only its ends.
pub const FILM_SURROUNDINGS: &[Row] = &[
    ("clean and dry", 1.0, PRACTICE),
    ("some dirt, damp or warm", 2.0, JUDGED),
    ("heavy dirt, splash or hot", 3.0, JUDGED),
    ("abrasive dirt, washing or spray", 4.0, PRACTICE),
];

/// Share of the side flow of a full film that still carries the load in moderate service: least and customary.
pub const STARVED_FILM: Sourced<(Ratio, Ratio)> = Sourced {
    value: (Ratio::from_fraction(0.25), Ratio::from_fraction(0.5)),
    source: source("booser-khonsari-2011", "half or less; the quarter from memory", Standing::Seen),
};

/// Least and largest share of the demand that a point should be given: under-delivery is the worse fault.
pub const DELIVERY_BAND: Sourced<(Ratio, Ratio)> =
    Sourced { value: (Ratio::from_percent(90.0), Ratio::from_percent(150.0)), source: PRACTICE };

/// Least rate of a point in an automatic grease system, for sealing, freshness and the smallest dose.
pub const LEAST_RATE: Sourced<Flow> =
    Sourced { value: Flow::from_cubic_centimetres_per_hour(0.01), source: PRACTICE };

/// Shortest, customary and longest travel of a linear guide or screw between two lubrications.
pub const TRAVEL: Sourced<(Length, Length, Length)> = Sourced {
    value: (Length::from_kilometres(50.0), Length::from_kilometres(100.0), Length::from_kilometres(500.0)),
    source: PRACTICE,
};

/// Least and largest grease of one relubrication of a small carriage of a ball guide.
pub const SMALL_CARRIAGE: Sourced<(Mass, Mass)> = Sourced {
    value: (Mass::from_grams(0.5), Mass::from_grams(1.2)),
    source: source("trade-linear-guide", "mounting instruction of one guide", Standing::Seen),
};

/// Share of a screw nut's free space to fill, least and most, and the share that the balls take.
pub const SCREW_NUT: Sourced<(Ratio, Ratio, Ratio)> = Sourced {
    value: (Ratio::from_fraction(1.0 / 3.0), Ratio::from_fraction(0.5), Ratio::from_fraction(0.5)),
    source: PRACTICE,
};

/// Least, customary and largest volume of a drop of oil.
pub const DROP: Sourced<(Volume, Volume, Volume)> = Sourced {
    value: (
        Volume::from_cubic_centimetres(0.03),
        Volume::from_cubic_centimetres(0.04),
        Volume::from_cubic_centimetres(0.05),
    ),
    source: PRACTICE,
};

/// Least and largest shot for each joint of a chain.
pub const CHAIN_SHOT: Sourced<(Volume, Volume)> = Sourced {
    value: (Volume::from_cubic_centimetres(0.01), Volume::from_cubic_centimetres(0.05)),
    source: PRACTICE,
};

/// Shortest and longest running time between two applications of shots to a chain.
pub const CHAIN_INTERVAL: Sourced<(Time, Time)> =
    Sourced { value: (Time::from_hours(8.0), Time::from_hours(40.0)), source: PRACTICE };

/// Shortest and longest running time between two changes of a gear coupling's grease.
pub const COUPLING_INTERVAL: Sourced<(Time, Time)> =
    Sourced { value: (Time::from_hours(4000.0), Time::from_hours(8000.0)), source: PRACTICE };

/// Share of the power lost in each spur or helical mesh, least and most.
pub const MESH_LOSS: Sourced<(Ratio, Ratio)> = Sourced {
    value: (Ratio::from_fraction(0.005), Ratio::from_fraction(0.01)),
    source: source("booser-vol2", "chapter on gears", Standing::Seen),
};

/// How a chain is lubricated at a speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChainMethod {
    /// The lasting word.
    pub key: &'static str,
    /// The highest chain speed at which it serves.
    pub up_to: Speed,
    /// Fewest and most drops a minute, for drip feeds; no most where the source gives none.
    pub drops_per_minute: Option<(f64, Option<f64>)>,
    /// Where it comes from.
    pub source: Source,
}

const NEALE_CHAIN: Source = source("neale-1995", "C9", Standing::Seen);

/// Methods by chain speed, slowest first.
pub const CHAIN_METHODS: &[ChainMethod] = &[
    ChainMethod {
        key: "slow drip",
        up_to: Speed::from_metres_per_second(3.0),
        drops_per_minute: Some((5.0, Some(10.0))),
        source: NEALE_CHAIN,
    },
    ChainMethod {
        key: "fast drip",
        up_to: Speed::from_metres_per_second(7.5),
        drops_per_minute: Some((20.0, None)),
        source: NEALE_CHAIN,
    },
    ChainMethod {
        key: "spray",
        up_to: Speed::from_metres_per_second(f64::INFINITY),
        drops_per_minute: None,
        source: NEALE_CHAIN,
    },
];

/// The method for a chain of this speed; a limit belongs to the slower method. A speed that is not a number is sprayed.
pub fn chain_method(speed: Speed) -> &'static ChainMethod {
    CHAIN_METHODS
        .iter()
        .find(|method| speed <= method.up_to)
        .unwrap_or(&CHAIN_METHODS[CHAIN_METHODS.len() - 1])
}

/// The value of a row, by its key.
pub fn value(table: &[Row], key: &str) -> Option<f64> {
    table.iter().find(|row| row.0 == key).map(|row| row.1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn worse_surroundings_never_lengthen_an_interval_nor_thin_a_film() {
        for table in [CONTAMINATION, MOISTURE, VIBRATION, SHAFT_POSITION] {
            assert_eq!(table[0].1, 1.0);
            assert!(table.windows(2).all(|pair| pair[1].1 < pair[0].1 && pair[1].1 > 0.0));
        }
        assert!(FILM_SURROUNDINGS.windows(2).all(|pair| pair[1].1 > pair[0].1));
        assert_eq!(FILM_SURROUNDINGS[0].1, FILM_MULTIPLIER.value.0);
        assert_eq!(FILM_SURROUNDINGS[FILM_SURROUNDINGS.len() - 1].1, FILM_MULTIPLIER.value.1);
    }

    #[test]
    fn keys_are_unique_in_every_table_and_find_their_row() {
        let tables = [
            BEARING_FACTOR,
            CONTAMINATION,
            MOISTURE,
            VIBRATION,
            SHAFT_POSITION,
            TRADE_CORRECTION,
            QUANTITY_BY_INTERVAL,
            FILM_SURROUNDINGS,
        ];
        for table in tables {
            for row in table {
                assert_eq!(table.iter().filter(|other| other.0 == row.0).count(), 1, "{}", row.0);
                assert_eq!(value(table, row.0), Some(row.1));
            }
        }
        assert_eq!(value(BEARING_FACTOR, "plain"), None);
    }

    #[test]
    fn the_military_limit_of_surface_speed_is_five_metres_a_second() {
        // Printed twice in the handbook: 5 m/s and 12 000 in/min.
        assert!((GREASE_SURFACE_SPEED.value.metres_per_second() - 5.0).abs() < 0.1);
    }

    #[test]
    fn a_limit_of_speed_belongs_to_the_slower_method() {
        let key = |v: f64| chain_method(Speed::from_metres_per_second(v)).key;
        assert_eq!((key(0.0), key(3.0), key(3.01)), ("slow drip", "slow drip", "fast drip"));
        assert_eq!((key(7.5), key(7.51), key(f64::NAN)), ("fast drip", "spray", "spray"));
    }
}
