//! A divider fed by another: only shares matter inside the second one.

use oilway_units::{Flow, Frequency, Volume};

use crate::{Range, formula};

formula! {
    /// How often a secondary divider runs through its cycle.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::progressive::secondary_cycle_rate;
    /// use oilway_units::{Frequency, Volume};
    ///
    /// let rate = secondary_cycle_rate(
    ///     Volume::from_cubic_millimetres(320.0), Frequency::from_per_minute(15.480), Volume::from_cubic_millimetres(406.0),
    /// );
    /// assert_eq!(format!("{:.3}", rate.per_minute()), "12.201");
    /// ```
    SECONDARY_CYCLES = "progressive/secondary-cycles",
    title: "Cycle rate of a divider behind another",
    equation: "f2 = U f1 / V2",
    validity: "Mean over a long run; U / V2 need not be whole. Two levels are customary, three rare.",
    sources: [
        "own-derivation", "volume balance between the dividers", Own
    ],
    fn secondary_cycle_rate(
        group: Volume, "U", "volume of the primary outlets that feed the secondary, in a primary cycle", Range::NotNegative;
        primary: Frequency, "f1", "cycles of the primary", Range::NotNegative;
        cycle: Volume, "V2", "volume of a full cycle of the secondary", Range::Positive;
    ) -> Frequency, "f2", "cycles of the secondary" {
        primary * (group / cycle)
    }
}

formula! {
    /// What an outlet of a secondary divider delivers.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::progressive::nested_delivered_rate;
    /// use oilway_units::{Flow, Volume};
    ///
    /// let v = Volume::from_cubic_millimetres;
    /// let rate = nested_delivered_rate(
    ///     Flow::from_cubic_centimetres_per_minute(10.0), v(320.0), v(646.0), v(63.0), v(406.0),
    /// );
    /// assert_eq!(format!("{:.1}", rate.cubic_millimetres_per_minute()), "768.7");
    /// ```
    NESTED_DELIVERED = "progressive/nested-delivered",
    title: "Delivery of an outlet of a divider behind another",
    equation: "q = Q (U / V1) (w / V2)",
    validity: "Mean over a long run, without slip; over a short run an outlet may be one shot ahead or behind on each level.",
    sources: [
        "own-derivation", "shares multiply", Own
    ],
    fn nested_delivered_rate(
        inflow: Flow, "Q", "flow into the primary", Range::NotNegative;
        group: Volume, "U", "volume of the primary outlets that feed the secondary, in a primary cycle", Range::NotNegative;
        primary_cycle: Volume, "V1", "volume of a full cycle of the primary", Range::Positive;
        outlet: Volume, "w", "volume of the secondary's outlet in a full cycle", Range::NotNegative;
        secondary_cycle: Volume, "V2", "volume of a full cycle of the secondary", Range::Positive;
    ) -> Flow, "q", "mean delivery of the outlet" {
        inflow * (group / primary_cycle) * (outlet / secondary_cycle)
    }
}

#[cfg(test)]
mod tests {
    use super::super::{cycle_rate, delivered_rate};
    use super::*;

    fn mm3(value: f64) -> Volume {
        Volume::from_cubic_millimetres(value)
    }

    #[test]
    fn the_rates_level_by_level_agree_with_the_product_of_shares() {
        // Second route: cycles of the secondary times the volume of its outlet.
        let inflow = Flow::from_cubic_centimetres_per_minute(10.0);
        let f2 = secondary_cycle_rate(mm3(320.0), cycle_rate(inflow, mm3(646.0)), mm3(406.0));
        let by_cycles = mm3(63.0) * f2;
        let by_shares = nested_delivered_rate(inflow, mm3(320.0), mm3(646.0), mm3(63.0), mm3(406.0));
        assert!((by_cycles / by_shares - 1.0).abs() < 1e-14);
        let inner = delivered_rate(delivered_rate(inflow, mm3(320.0), mm3(646.0)), mm3(63.0), mm3(406.0));
        assert!((inner / by_shares - 1.0).abs() < 1e-14);
    }

    #[test]
    fn a_secondary_with_one_outlet_passes_all_that_its_group_gets() {
        let inflow = Flow::from_cubic_centimetres_per_minute(10.0);
        let all = nested_delivered_rate(inflow, mm3(320.0), mm3(646.0), mm3(406.0), mm3(406.0));
        assert!((all / delivered_rate(inflow, mm3(320.0), mm3(646.0)) - 1.0).abs() < 1e-14);
        assert_eq!(secondary_cycle_rate(mm3(320.0), Frequency::ZERO, mm3(406.0)), Frequency::ZERO);
    }
}
