//! The atmosphere by height: less of it pushes lubricant into a pump on a mountain.

use oilway_units::{AbsolutePressure, Length};

use crate::{Range, formula};

/// Sea-level temperature of the standard atmosphere in kelvins.
const SEA_LEVEL: f64 = 288.15;
/// Fall of temperature with height in the lowest layer, K/m.
const LAPSE: f64 = 0.0065;
/// g0 / (R·lapse) with g0 9.80665 m/s² and R 287.05287 J/(kg·K).
const EXPONENT: f64 = 9.806_65 / (287.052_87 * LAPSE);

formula! {
    /// Air pressure at a height above the sea, in the standard atmosphere.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::air::atmosphere_at;
    /// use oilway_units::Length;
    ///
    /// assert_eq!(format!("{:.3}", atmosphere_at(Length::from_metres(2000.0)).bar()), "0.795");
    /// ```
    ATMOSPHERE = "air/atmosphere",
    title: "Air pressure by height above the sea",
    equation: "p = 1.01325 bar · (1 − 0.0065 h / 288.15 K)^5.25588",
    validity: "Standard atmosphere from 2 km below the sea to 11 km above it; the height is taken as geopotential, which is 0.03 % off at 5 km. Weather moves the true pressure by up to 5 %.",
    sources: [
        "iso-2533", "troposphere", Memory
    ],
    fn atmosphere_at(
        altitude: Length, "h", "height above the sea", Range::Between(-2000.0, 11_000.0);
    ) -> AbsolutePressure, "p", "mean air pressure" {
        let warmth = (1.0 - LAPSE * altitude.metres() / SEA_LEVEL).max(0.0);
        AbsolutePressure::from_pascals(AbsolutePressure::STANDARD_ATMOSPHERE.pascals() * libm::pow(warmth, EXPONENT))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pascals(metres: f64) -> f64 {
        atmosphere_at(Length::from_metres(metres)).pascals()
    }

    #[test]
    fn at_the_sea_it_is_the_standard_atmosphere() {
        assert_eq!(pascals(0.0), 101_325.0);
    }

    #[test]
    fn far_outside_the_layer_it_stays_a_number() {
        assert_eq!(pascals(1e6), 0.0);
    }

    #[test]
    fn the_column_of_air_weighs_what_the_pressure_falls() {
        // Second route: hydrostatics with the gas law, by steps of a metre from the sea to 3 km.
        let mut p = 101_325.0;
        for step in 0..3000 {
            let warmth = SEA_LEVEL - LAPSE * (f64::from(step) + 0.5);
            p *= libm::exp(-9.806_65 / (287.052_87 * warmth));
        }
        assert!((pascals(3000.0) / p - 1.0).abs() < 1e-8);
    }
}
