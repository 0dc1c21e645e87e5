//! A foil disc by its metal: for sense, never for making one.

use oilway_units::{Length, Pressure};

use crate::{Range, formula};

formula! {
    /// About where a thin foil over a round hole bursts.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::disc::foil_burst;
    /// use oilway_units::{Length, Pressure};
    ///
    /// // Brass sheet of 2 mil on a 3/8 in hole, tensile strength 18 750 psi.
    /// let burst = foil_burst(Pressure::from_psi(18_750.0), Length::from_inches(0.002), Length::from_inches(0.375));
    /// assert_eq!(format!("{:.0}", burst.psi()), "400");
    /// ```
    FOIL_BURST = "disc/foil-burst",
    title: "Burst pressure of a foil disc, for sense only",
    equation: "p = 4 σ t / d",
    validity: "The foil bulges to about a half sphere before it goes; published predictions are good to about 13 %, scatter of five home-made discs was 2.5 %. It shows why a disc in a holder with another hole bursts at another pressure. Never make, stack or shim discs: the marked pressure comes from a test of the lot.",
    sources: [
        "watzlavick", "tests of brass and aluminium foil", Seen;
        "own-derivation", "thin half sphere; stresses of the tests recomputed", Own
    ],
    fn foil_burst(
        stress: Pressure, "σ", "tensile strength of the foil", Range::NotNegative;
        thickness: Length, "t", "thickness of the foil", Range::NotNegative;
        hole: Length, "d", "diameter of the free hole", Range::Positive;
    ) -> Pressure, "p", "burst pressure, about" {
        stress * (4.0 * (thickness / hole))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_pressure_on_the_half_sphere_balances_the_stress_in_its_rim() {
        // Second route: force on the projected circle equals stress on the ring of the rim.
        let (sigma, t, d) = (61.4e6, 0.127e-3, 9.525e-3);
        let ring = core::f64::consts::PI * d * t * sigma;
        let circle = core::f64::consts::PI * d * d / 4.0;
        let burst = foil_burst(Pressure::from_pascals(sigma), Length::from_metres(t), Length::from_metres(d));
        assert!((burst.pascals() / (ring / circle) - 1.0).abs() < 1e-14);
    }

    #[test]
    fn two_foils_burst_at_double_and_a_double_hole_at_half() {
        let burst = |t: f64, d: f64| {
            foil_burst(
                Pressure::from_megapascals(100.0),
                Length::from_millimetres(t),
                Length::from_millimetres(d),
            )
            .bar()
        };
        assert!((burst(0.2, 6.0) / burst(0.1, 6.0) - 2.0).abs() < 1e-14);
        assert!((burst(0.1, 12.0) / burst(0.1, 6.0) - 0.5).abs() < 1e-14);
        assert_eq!(burst(0.0, 6.0), 0.0);
    }
}
