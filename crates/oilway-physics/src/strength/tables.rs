//! Plain tables beside the formulas: shares and stresses, each with its source and how far it was read.

use oilway_units::{Length, Pressure, Ratio, Temperature};

use crate::demand::tables::Sourced;
use crate::{Source, Standing};

/// Stress allowed to annealed copper, by temperature; `astm-b280`, second-hand.
pub const COPPER_ANNEALED: &[(Temperature, Pressure)] = &[
    (Temperature::from_fahrenheit(100.0), Pressure::from_psi(6000.0)),
    (Temperature::from_fahrenheit(150.0), Pressure::from_psi(5100.0)),
    (Temperature::from_fahrenheit(200.0), Pressure::from_psi(4900.0)),
    (Temperature::from_fahrenheit(250.0), Pressure::from_psi(4800.0)),
    (Temperature::from_fahrenheit(300.0), Pressure::from_psi(4700.0)),
    (Temperature::from_fahrenheit(350.0), Pressure::from_psi(4000.0)),
    (Temperature::from_fahrenheit(400.0), Pressure::from_psi(3000.0)),
];

/// Share of full scale at which a gauge may work under steady pressure.
pub const GAUGE_STEADY: Sourced<Ratio> = Sourced { value: Ratio::from_fraction(0.75), source: GAUGE };
/// Share of full scale at which a gauge may work under pulsating pressure.
pub const GAUGE_PULSATING: Sourced<Ratio> = Sourced { value: Ratio::from_fraction(2.0 / 3.0), source: GAUGE };

const GAUGE: Source = Source { key: "en-837-2", place: "selection of the range", standing: Standing::Memory };

/// Burst over working pressure of hose, and of plastic lines that hold pressure.
pub const HOSE_SAFETY: Sourced<Ratio> = Sourced {
    value: Ratio::from_fraction(4.0),
    source: Source {
        key: "iso-3949",
        place: "burst at least four times working pressure",
        standing: Standing::SecondHand,
    },
};

/// Least radius of a bend over the outside diameter, metal tube bent cold with a bender.
pub const LEAST_BEND: Sourced<Ratio> = Sourced {
    value: Ratio::from_fraction(3.0),
    source: Source {
        key: "trade-tube",
        place: "steel and stainless; soft copper to 12 mm",
        standing: Standing::SecondHand,
    },
};

/// The design pressure of power piping over that of process piping: a rule of thumb.
pub const POWER_PIPING: Sourced<Ratio> = Sourced {
    value: Ratio::from_fraction(0.94),
    source: Source { key: "b31-1", place: "published rule of thumb", standing: Standing::SecondHand },
};

/// Fatigue strength of the steel E235 for pulsating pressure.
pub const E235_FATIGUE: Sourced<Pressure> = Sourced {
    value: Pressure::from_megapascals(226.0),
    source: Source { key: "din-2413-1993", place: "load case III", standing: Standing::Memory },
};

/// Short-time strength of flexible polyamide at 23 °C, from one published tube; for an unknown grade.
pub const POLYAMIDE: Sourced<Pressure> = Sourced {
    value: Pressure::from_megapascals(25.0),
    source: Source {
        key: "trade-tube",
        place: "6 x 4 mm bursts at 1450 psi",
        standing: Standing::SecondHand,
    },
};

/// Share of the nominal wall of precision steel tube that its tolerance leaves, by outside diameter; `din-2413-1993`, memory.
pub fn wall_factor(outside: Length) -> Ratio {
    // Half a millimetre stands between the sizes 5, 6 and 8, 10: the rows are sizes, not ranges.
    Ratio::from_fraction(match outside.millimetres() {
        d if d < 5.5 => 0.80,
        d if d < 9.0 => 0.85,
        _ => 0.90,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hot_copper_is_never_stronger() {
        assert!(COPPER_ANNEALED.windows(2).all(|pair| pair[0].0 < pair[1].0 && pair[0].1 > pair[1].1));
        // Guard of the typed numbers: 6000 + 5100 + 4900 + 4800 + 4700 + 4000 + 3000 psi.
        let sum: f64 = COPPER_ANNEALED.iter().map(|row| row.1.psi()).sum();
        assert!((sum - 32_500.0).abs() < 1e-6);
    }

    #[test]
    fn thin_tubes_lose_the_larger_share_of_their_wall() {
        let share = |d: f64| wall_factor(Length::from_millimetres(d)).fraction();
        assert_eq!([4.0, 5.0, 6.0, 8.0, 10.0, 18.0].map(share), [0.80, 0.80, 0.85, 0.85, 0.90, 0.90]);
    }

    #[test]
    fn the_polyamide_strength_gives_its_tube_back() {
        let mm = Length::from_millimetres;
        let burst = crate::strength::barlow_mean(mm(6.0), mm(1.0), POLYAMIDE.value);
        assert!((burst.psi() - 1450.0).abs() < 5.0, "{}", burst.psi());
    }
}
