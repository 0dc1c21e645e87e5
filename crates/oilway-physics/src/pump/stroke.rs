//! The stroke: what it displaces and what the stiffness of the lubricant takes back.

use oilway_units::{Length, Pressure, Ratio, Volume};

use crate::air::piston_area;
use crate::{Range, formula};

formula! {
    /// Volume that one stroke of a plunger delivers.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pump::stroke_volume;
    /// use oilway_units::{Length, Ratio};
    ///
    /// let volume = stroke_volume(
    ///     Length::from_millimetres(16.0), Length::from_millimetres(80.0), Ratio::from_fraction(0.95),
    /// );
    /// assert_eq!(format!("{:.2}", volume.cubic_centimetres()), "15.28");
    /// ```
    STROKE_VOLUME = "pump/stroke-volume",
    title: "Volume of one stroke",
    equation: "V = π d²/4 · s · η",
    validity: "η falls with a starving inlet, with slip past the check valves and with the compression of the dead volume. A differential plunger gives half of V on each way.",
    sources: [
        "own-derivation", "geometry", Own
    ],
    fn stroke_volume(
        plunger: Length, "d", "diameter of the plunger", Range::NotNegative;
        stroke: Length, "s", "length of the stroke", Range::NotNegative;
        efficiency: Ratio, "η", "share of the displacement that is delivered", Range::Between(0.0, 1.0);
    ) -> Volume, "V", "volume delivered" {
        piston_area(plunger) * stroke * efficiency.fraction()
    }
}

formula! {
    /// Volume of each stroke that only squeezes what stays in the pump.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pump::compression_loss;
    /// use oilway_units::{Pressure, Volume};
    ///
    /// let loss = compression_loss(
    ///     Volume::from_cubic_centimetres(8.0), Pressure::from_bar(200.0), Pressure::from_megapascals(1600.0),
    /// );
    /// assert_eq!(format!("{:.2}", loss.cubic_centimetres()), "0.10");
    /// ```
    COMPRESSION_LOSS = "pump/compression-loss",
    title: "Volume that a stroke loses to compression",
    equation: "V = V_d p / K",
    validity: "A small compression, p well below K. About 1.6 GPa for oil without air, much less with it: put the air into K. Never more than the stroke itself: then nothing is delivered.",
    sources: [
        "own-derivation", "definition of the secant modulus", Own
    ],
    fn compression_loss(
        dead: Volume, "V_d", "volume that stays in the pump at the end of the stroke", Range::NotNegative;
        pressure: Pressure, "p", "pressure of delivery", Range::NotNegative;
        modulus: Pressure, "K", "bulk modulus of the lubricant as it is, with its air", Range::Positive;
    ) -> Volume, "V", "volume lost in each stroke" {
        dead * (pressure / modulus)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_stroke_is_the_difference_of_two_fillings() {
        let d = Length::from_millimetres(10.0);
        let full = |s: f64| {
            stroke_volume(d, Length::from_millimetres(s), Ratio::from_fraction(1.0)).cubic_millimetres()
        };
        assert!((full(35.0) - full(10.0) - full(25.0)).abs() < 1e-9);
        assert_eq!(full(0.0), 0.0);
    }

    #[test]
    fn half_the_efficiency_gives_half_the_stroke() {
        let at = |eta: f64| {
            let (d, s) = (Length::from_millimetres(10.0), Length::from_millimetres(20.0));
            stroke_volume(d, s, Ratio::from_fraction(eta)).cubic_millimetres()
        };
        assert!((at(0.5) - at(1.0) / 2.0).abs() < 1e-12);
        assert!((at(1.0) - 500.0 * core::f64::consts::PI).abs() < 1e-9);
    }

    #[test]
    fn without_pressure_or_dead_volume_nothing_is_lost() {
        let k = Pressure::from_megapascals(1600.0);
        assert_eq!(compression_loss(Volume::from_litres(1.0), Pressure::ZERO, k), Volume::ZERO);
        assert_eq!(compression_loss(Volume::ZERO, Pressure::from_bar(200.0), k), Volume::ZERO);
    }

    #[test]
    fn the_pressure_that_the_loss_explains_is_the_one_put_in() {
        // Second route: K times the relative change of volume.
        let dead = Volume::from_cubic_centimetres(8.0);
        let k = Pressure::from_megapascals(1600.0);
        let loss = compression_loss(dead, Pressure::from_bar(123.0), k);
        assert!((k.bar() * (loss / dead) - 123.0).abs() < 1e-9);
    }
}
