//! The full scale of a pressure gauge.

use oilway_units::{Pressure, Ratio};

use crate::{Range, formula};

/// The share of full scale that steady pressure may take; nothing may take more.
const LARGEST_SHARE: f64 = 0.75;

formula! {
    /// The least full scale of a gauge for a working pressure.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::strength::gauge_full_scale;
    /// use oilway_units::{Pressure, Ratio};
    ///
    /// // A piston pump pulses: 200 bar at two thirds of full scale.
    /// let scale = gauge_full_scale(Pressure::from_bar(200.0), Ratio::from_fraction(2.0 / 3.0));
    /// assert_eq!(format!("{:.0}", scale.bar()), "300");
    /// ```
    GAUGE_FULL_SCALE = "strength/gauge-range",
    title: "Least full scale of a pressure gauge",
    equation: "pfs = p / φ,  φ at most 3/4",
    validity: "φ is the share of full scale at which the gauge may work: 3/4 for steady, 2/3 for pulsating pressure. More than 3/4 is never granted. The full scale must also stand the highest pressure that a fault or a burst disc lets come. Take the next range above.",
    sources: ["en-837-2", "three quarters steady, two thirds pulsating", Memory],
    fn gauge_full_scale(
        working: Pressure, "p", "highest working pressure", Range::NotNegative;
        pulsating_share: Ratio, "φ", "share of full scale at which the gauge may work", Range::Between(0.1, 0.75);
    ) -> Pressure, "pfs", "least full scale" {
        working / pulsating_share.fraction().min(LARGEST_SHARE)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::strength::tables::{GAUGE_PULSATING, GAUGE_STEADY};

    #[test]
    fn pulsating_pressure_asks_for_the_larger_gauge() {
        let working = Pressure::from_bar(120.0);
        let (steady, pulsating) =
            (gauge_full_scale(working, GAUGE_STEADY.value), gauge_full_scale(working, GAUGE_PULSATING.value));
        assert!((steady.bar() - 160.0).abs() < 1e-9 && (pulsating.bar() - 180.0).abs() < 1e-9);
    }

    #[test]
    fn nobody_may_work_a_gauge_at_full_scale() {
        let scale = |share: f64| gauge_full_scale(Pressure::from_bar(120.0), Ratio::from_fraction(share));
        assert_eq!(scale(1.0), scale(0.75));
        assert!(scale(0.74) > scale(0.75));
    }
}
