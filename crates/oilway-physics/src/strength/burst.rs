//! The wall that yields through and through, and the standard that takes a quarter of it.

use oilway_units::{Length, Pressure};

use crate::{Range, formula};

formula! {
    /// An estimate of the pressure at which a metal tube bursts.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::strength::burst_estimate;
    /// use oilway_units::{Length, Pressure};
    ///
    /// let mm = Length::from_millimetres;
    /// let burst = burst_estimate(mm(6.0), mm(4.0), Pressure::from_megapascals(340.0));
    /// assert_eq!(format!("{:.0}", burst.bar()), "1379");
    /// ```
    BURST_ESTIMATE = "strength/plastic-burst",
    title: "Estimate of the burst pressure of a metal tube",
    equation: "pb = Rm · ln(D/d)",
    validity: "The whole wall flows at the tensile strength: ductile metal, short time, straight tube. Indicative only, for drawing a ladder of pressures; never a rating. Zero where the bore is not smaller than the outside.",
    sources: [
        "iso-10763", "the same form without its factor of four", SecondHand;
        "own-derivation", "cylinder that yields through its wall", Own
    ],
    fn burst_estimate(
        outside: Length, "D", "outside diameter", Range::Positive;
        bore: Length, "d", "bore", Range::Positive;
        tensile: Pressure, "Rm", "tensile strength", Range::Positive;
    ) -> Pressure, "pb", "burst pressure" {
        let (da, d) = (outside.metres(), bore.metres());
        // ln(1 + x) keeps the digits of a thin wall.
        if da > d { tensile * libm::log1p((da - d) / d) } else { Pressure::ZERO }
    }
}

formula! {
    /// The nominal pressure of a plain-end steel tube for fluid power.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::strength::iso_10763;
    /// use oilway_units::{Length, Pressure};
    ///
    /// let mm = Length::from_millimetres;
    /// let nominal = iso_10763(mm(6.0), mm(4.0), Pressure::from_megapascals(340.0));
    /// assert_eq!(format!("{:.0}", nominal.bar()), "345");
    /// ```
    ISO_10763 = "strength/iso-10763",
    title: "Nominal pressure of a steel tube by ISO 10763",
    equation: "p = Rm · ln(D/d) / 4",
    validity: "Plain-end steel tube, nominal dimensions, minimum tensile strength. A quarter of the burst estimate. Zero where the bore is not smaller than the outside.",
    sources: ["iso-10763", "read on a technical page that names the standard", SecondHand],
    fn iso_10763(
        outside: Length, "D", "outside diameter", Range::Positive;
        bore: Length, "d", "bore", Range::Positive;
        tensile: Pressure, "Rm", "least tensile strength", Range::Positive;
    ) -> Pressure, "p", "nominal pressure" {
        burst_estimate(outside, bore, tensile) / 4.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::strength::barlow_mean;

    fn mm(value: f64) -> Length {
        Length::from_millimetres(value)
    }

    #[test]
    fn a_bore_of_outside_over_e_bursts_at_the_tensile_strength() {
        let burst =
            burst_estimate(mm(10.0 * core::f64::consts::E), mm(10.0), Pressure::from_megapascals(400.0));
        assert!((burst.megapascals() - 400.0).abs() < 1e-9);
    }

    #[test]
    fn a_thin_wall_follows_the_ring_at_its_mean_diameter() {
        let tensile = Pressure::from_megapascals(400.0);
        let (d, t) = (1.0, 1e-7);
        let ratio = burst_estimate(Length::from_metres(d), Length::from_metres(d - 2.0 * t), tensile)
            / barlow_mean(Length::from_metres(d), Length::from_metres(t), tensile);
        // The subtraction in the argument costs the digits here, not the formula.
        assert!((ratio - 1.0).abs() < 1e-8, "{ratio}");
    }

    #[test]
    fn without_a_wall_nothing_is_allowed() {
        let tensile = Pressure::from_megapascals(400.0);
        assert_eq!(iso_10763(mm(6.0), mm(6.0), tensile), Pressure::ZERO);
        assert_eq!(iso_10763(mm(6.0), mm(7.0), tensile), Pressure::ZERO);
        assert!(iso_10763(mm(6.0), mm(5.9), tensile) > Pressure::ZERO);
    }
}
