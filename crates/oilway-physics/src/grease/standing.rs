//! Grease that stands by itself in a reservoir.

use oilway_units::{Density, Length, Pressure};

use crate::pipe_flow::FREE_FALL;
use crate::{Range, formula};

formula! {
    /// Depth of a funnel that stays open in a reservoir of grease: deeper, its walls slump.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::grease::standing_height;
    /// use oilway_units::{Density, Pressure};
    ///
    /// let depth = standing_height(Pressure::from_pascals(650.0), Density::from_kilograms_per_cubic_metre(900.0));
    /// assert_eq!(format!("{:.2}", depth.metres()), "0.29");
    /// ```
    STANDING_HEIGHT = "grease/standing-height",
    title: "Depth of a funnel that stays open in grease",
    equation: "H = 4 τ0 / (ρ g)",
    validity: "Critical height of a vertical cut, the yield stress taken for the cohesion of a soil. A reservoir deeper than this feeds by itself, a shallower one needs a follower or a paddle. Order of magnitude.",
    sources: [
        "own-derivation", "limit of rest in an upright bore as wide as it is deep; soil mechanics has the same height for a vertical cut (from memory)", Own
    ],
    fn standing_height(
        yield_stress: Pressure, "τ0", "yield stress at the temperature of the reservoir", Range::NotNegative;
        density: Density, "ρ", "density", Range::Positive;
    ) -> Length, "H", "depth that stands" {
        Length::from_metres(4.0 * yield_stress.pascals() / (density.kilograms_per_cubic_metre() * FREE_FALL))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pipe_flow::{start_pressure, static_head};

    #[test]
    fn an_oil_does_not_stand() {
        let density = Density::from_kilograms_per_cubic_metre(900.0);
        assert_eq!(standing_height(Pressure::ZERO, density), Length::ZERO);
    }

    #[test]
    fn the_height_is_that_at_which_a_bore_as_wide_as_it_would_run_out() {
        // Second route: in an upright tube of bore D the weight ρ g L moves the grease once ρ g > 4 τ0 / D, so D = H.
        let (tau, density) = (Pressure::from_pascals(189.0), Density::from_kilograms_per_cubic_metre(900.0));
        let height = standing_height(tau, density);
        let length = Length::from_metres(2.0);
        assert!((start_pressure(height, length, tau) / static_head(density, length) - 1.0).abs() < 1e-14);
    }
}
