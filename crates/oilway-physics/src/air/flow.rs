//! Flow of air through a valve, by its sonic conductance.

use oilway_units::{AbsolutePressure, Conductance, Flow, Ratio, Temperature};

use super::REFERENCE_TEMPERATURE;
use crate::{Range, formula};

/// Share of the choked flow that is left at this ratio of pressures.
pub(super) fn share(downstream_over_upstream: f64, critical: f64) -> f64 {
    if downstream_over_upstream >= 1.0 {
        return 0.0;
    }
    if downstream_over_upstream <= critical {
        return 1.0;
    }
    let u = (downstream_over_upstream - critical) / (1.0 - critical);
    ((1.0 - u) * (1.0 + u)).sqrt()
}

formula! {
    /// Flow of free air through a valve, a tube or a silencer of known conductance.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::air::conductance_flow;
    /// use oilway_units::{AbsolutePressure, Conductance, Ratio, Temperature};
    ///
    /// let flow = conductance_flow(
    ///     Conductance::from_litres_per_second_bar(2.0), AbsolutePressure::from_bar(7.013), AbsolutePressure::from_bar(5.013),
    ///     Ratio::from_fraction(0.3), Temperature::from_celsius(20.0),
    /// );
    /// assert_eq!(format!("{:.0}", flow.litres_per_minute()), "678");
    /// ```
    CHOKED_FLOW = "air/choked-flow",
    title: "Air flow by sonic conductance, choked and below",
    equation: "q = C p1 √(T0/T1) · (1 if p2/p1 ≤ b, else √(1 − ((p2/p1 − b)/(1 − b))²))",
    validity: "Steady flow of dry air from p1 to p2; nothing where p2 is not below p1. b is 0.2 to 0.5 for real valves, near 0 for long tubes. The index 0.5 is used; the edition of 2013 lets it be measured and adds a cracking pressure.",
    sources: [
        "iso-6358", "part 1, flow-rate characteristics", SecondHand;
        "pneumatics-course", "same form, worked answers", Seen
    ],
    fn conductance_flow(
        conductance: Conductance, "C", "sonic conductance", Range::NotNegative;
        upstream: AbsolutePressure, "p1", "pressure before, absolute", Range::NotNegative;
        downstream: AbsolutePressure, "p2", "pressure behind, absolute", Range::NotNegative;
        critical_ratio: Ratio, "b", "ratio of pressures below which the flow is choked", Range::Between(0.0, 0.99);
        temperature: Temperature, "T1", "temperature of the air before", Range::Positive;
    ) -> Flow, "q", "flow of free air at 20 °C and 1 bar" {
        let (p1, p2) = (upstream.pascals(), downstream.pascals());
        if p1 <= p2 || p1 <= 0.0 {
            return Flow::ZERO;
        }
        let choked = conductance.cubic_metres_per_second_pascal() * p1;
        let thinned = (REFERENCE_TEMPERATURE / temperature.kelvin()).sqrt();
        Flow::from_cubic_metres_per_second(choked * thinned * share(p2 / p1, critical_ratio.fraction()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn flow(upstream: f64, downstream: f64, critical: f64) -> f64 {
        conductance_flow(
            Conductance::from_litres_per_second_bar(2.0),
            AbsolutePressure::from_bar(upstream),
            AbsolutePressure::from_bar(downstream),
            Ratio::from_fraction(critical),
            Temperature::from_kelvin(293.15),
        )
        .litres_per_second()
    }

    #[test]
    fn equal_pressures_move_nothing_and_a_backward_pressure_neither() {
        assert_eq!(flow(6.0, 6.0, 0.3), 0.0);
        assert_eq!(flow(6.0, 7.0, 0.3), 0.0);
        assert_eq!(flow(0.0, 0.0, 0.3), 0.0);
    }

    #[test]
    fn choked_and_unchoked_meet_at_the_critical_ratio() {
        assert!((flow(8.0, 2.4, 0.3) - 16.0).abs() < 1e-12);
        assert!((flow(8.0, 2.4 + 1e-9, 0.3) - 16.0).abs() < 1e-9);
        assert_eq!(flow(8.0, 0.0, 0.3), flow(8.0, 1.0, 0.3));
    }

    #[test]
    fn the_unchoked_part_is_a_quarter_of_an_ellipse() {
        // Second route: u² + (q/q_max)² = 1 on every point of the curve.
        for step in 1..100 {
            let r = 0.3 + 0.7 * f64::from(step) / 100.0;
            let (u, v) = ((r - 0.3) / 0.7, flow(8.0, 8.0 * r, 0.3) / 16.0);
            assert!((u * u + v * v - 1.0).abs() < 1e-13);
        }
    }
}
