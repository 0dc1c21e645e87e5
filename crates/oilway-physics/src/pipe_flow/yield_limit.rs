//! Where nothing moves: the pressure that starts a grease line, how far a pressure reaches, and what stays behind.

use oilway_units::{Length, Pressure, Ratio};

use crate::{Range, formula};

formula! {
    /// Stress at the wall of a round line under a pressure drop, whatever the fluid.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::wall_stress;
    /// use oilway_units::{Length, Pressure};
    ///
    /// let stress = wall_stress(Length::from_millimetres(8.0), Length::from_metres(5.0), Pressure::from_bar(5.0));
    /// assert_eq!(stress, Pressure::from_pascals(200.0));
    /// ```
    WALL_STRESS = "pipe-flow/wall-stress",
    title: "Stress at the wall of a round line",
    equation: "τw = Δp D / (4 L)",
    validity: "Balance of forces on the content of the line: holds for every fluid and every regime, in steady flow and at the limit of rest.",
    sources: [
        "darby", "eq. 6-4", Seen
    ],
    fn wall_stress(
        bore: Length, "D", "inner diameter of the line", Range::Positive;
        length: Length, "L", "length of the line", Range::Positive;
        drop: Pressure, "Δp", "pressure lost along the line", Range::Any;
    ) -> Pressure, "τw", "shear stress at the wall" {
        Pressure::from_pascals(drop.pascals() * bore.metres() / (4.0 * length.metres()))
    }
}

formula! {
    /// Pressure that must be exceeded before grease moves through a line; as much also stays in the line after venting.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::start_pressure;
    /// use oilway_units::{Length, Pressure};
    ///
    /// // 30 m of 8 mm bore, 650 Pa: nothing happens below 97.5 bar.
    /// let start = start_pressure(Length::from_millimetres(8.0), Length::from_metres(30.0), Pressure::from_pascals(650.0));
    /// assert_eq!(format!("{:.1}", start.bar()), "97.5");
    /// ```
    START_PRESSURE = "pipe-flow/start-pressure",
    title: "Pressure that starts a grease line, and that stays in it after venting",
    equation: "Δpy = 4 τ0 L / D",
    validity: "Balance of forces, no slip at the wall. After a long rest the yield stress is higher than in flow: a factor of 1.5 to 2 on τ0 is the caller's to apply. Lines in series add.",
    sources: [
        "darby", "eq. 6-4 and section V", Seen;
        "own-derivation", "end state of a vented line, p(x) = min(P, pv + 4 τ0 x / D)", Own
    ],
    fn start_pressure(
        bore: Length, "D", "inner diameter of the line", Range::Positive;
        length: Length, "L", "length of the line", Range::NotNegative;
        yield_stress: Pressure, "τ0", "stress below which nothing moves", Range::NotNegative;
    ) -> Pressure, "Δpy", "pressure difference up to which nothing moves" {
        Pressure::from_pascals(4.0 * yield_stress.pascals() * length.metres() / bore.metres())
    }
}

formula! {
    /// Length of line over which an available pressure can just move grease; beyond it nothing ever arrives.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::yield_limit_length;
    /// use oilway_units::{Length, Pressure};
    ///
    /// let reach = yield_limit_length(Length::from_millimetres(4.0), Pressure::from_bar(100.0), Pressure::from_pascals(650.0));
    /// assert_eq!(format!("{:.1}", reach.metres()), "15.4");
    /// ```
    YIELD_LIMIT_LENGTH = "pipe-flow/reach",
    title: "How far a pressure can move a grease at all",
    equation: "L = Δp D / (4 τ0)",
    validity: "Balance of forces at the limit of rest: the flow there is zero. A fluid without yield stress has no such limit and the formula gives no number.",
    sources: [
        "darby", "eq. 6-4 and section V", Seen;
        "own-derivation", "the start pressure solved for the length", Own
    ],
    fn yield_limit_length(
        bore: Length, "D", "inner diameter of the line", Range::Positive;
        available: Pressure, "Δp", "pressure that can be spent along the line", Range::NotNegative;
        yield_stress: Pressure, "τ0", "stress below which nothing moves", Range::Positive;
    ) -> Length, "L", "length at which the grease just no longer moves" {
        Length::from_metres(available.pascals() * bore.metres() / (4.0 * yield_stress.pascals()))
    }
}

formula! {
    /// Share of the radius that moves as a solid plug in a grease line; one when all of it stands still.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::plug_share;
    /// use oilway_units::Pressure;
    ///
    /// let share = plug_share(Pressure::from_pascals(150.0), Pressure::from_pascals(200.0));
    /// assert_eq!(share.fraction(), 0.75);
    /// ```
    PLUG_SHARE = "pipe-flow/plug",
    title: "Share of the radius that moves as a plug",
    equation: "φ = min(τ0 / τw, 1)",
    validity: "The stress rises in proportion to the radius, whatever the fluid; the plug ends where it reaches the yield stress.",
    sources: [
        "darby", "section V", Seen;
        "coulson-richardson-1", "chapter 3, plug flow", Seen
    ],
    fn plug_share(
        yield_stress: Pressure, "τ0", "stress below which nothing moves", Range::NotNegative;
        wall_stress: Pressure, "τw", "shear stress at the wall", Range::NotNegative;
    ) -> Ratio, "φ", "radius of the plug over radius of the bore" {
        let (tau_0, tau_w) = (yield_stress.pascals(), wall_stress.pascals());
        // At no stress at all even an oil stands still.
        Ratio::from_fraction(if tau_w > tau_0 { tau_0 / tau_w } else { 1.0 })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const BORE: Length = Length::from_metres(0.008);

    #[test]
    fn the_start_pressure_brings_the_wall_exactly_to_the_yield_stress() {
        let (length, tau) = (Length::from_metres(20.0), Pressure::from_pascals(300.0));
        let start = start_pressure(BORE, length, tau);
        // Worked in the notes on vented lines: 30 bar stay in 20 m of 8 mm at 300 Pa.
        assert_eq!(format!("{:.6}", start.bar()), "30.000000");
        assert!((wall_stress(BORE, length, start) / tau - 1.0).abs() < 1e-15);
        assert!((yield_limit_length(BORE, start, tau) / length - 1.0).abs() < 1e-15);
    }

    #[test]
    fn an_oil_needs_no_pressure_to_start_and_reaches_without_end() {
        assert_eq!(start_pressure(BORE, Length::from_metres(20.0), Pressure::ZERO), Pressure::ZERO);
        assert!(!yield_limit_length(BORE, Pressure::from_bar(1.0), Pressure::ZERO).is_finite());
    }

    #[test]
    fn the_plug_fills_the_bore_exactly_at_the_yield_stress() {
        let tau = Pressure::from_pascals(300.0);
        assert_eq!(plug_share(tau, tau).fraction(), 1.0);
        assert_eq!(plug_share(tau, Pressure::ZERO).fraction(), 1.0);
        assert!(plug_share(tau, Pressure::from_pascals(300.001)).fraction() < 1.0);
        assert_eq!(plug_share(Pressure::ZERO, tau).fraction(), 0.0);
    }
}
