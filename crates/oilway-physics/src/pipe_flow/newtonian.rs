//! Oil in a round line: the pressure it costs and the flow a pressure moves.

use core::f64::consts::PI;

use oilway_units::{Flow, Length, Pressure, Viscosity};

use crate::{Range, formula};

formula! {
    /// Flow of a Newtonian liquid (any oil) through a round line under a known pressure drop.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::newtonian_flow;
    /// use oilway_units::{Length, Pressure, Viscosity};
    ///
    /// // Oil of 0.3 Pa·s in 10 m of 4 mm bore at 5 bar.
    /// let flow = newtonian_flow(
    ///     Length::from_millimetres(4.0), Length::from_metres(10.0), Pressure::from_bar(5.0),
    ///     Viscosity::from_pascal_seconds(0.3),
    /// );
    /// assert_eq!(format!("{:.1}", flow.cubic_centimetres_per_minute()), "62.8");
    /// ```
    NEWTONIAN_FLOW = "pipe-flow/newtonian",
    title: "Flow of an oil through a round line",
    equation: "Q = π D⁴ Δp / (128 μ L)",
    validity: "Exact for steady, laminar, isothermal flow far from the inlet, with one viscosity along the line. Laminar (Re below about 2000) is the caller's to check; a viscosity that rises with pressure is taken in by its mean.",
    sources: [
        "darby", "eq. 6-11, Hagen–Poiseuille", Seen
    ],
    fn newtonian_flow(
        bore: Length, "D", "inner diameter of the line", Range::Positive;
        length: Length, "L", "length of the line", Range::Positive;
        drop: Pressure, "Δp", "pressure lost along the line", Range::Any;
        viscosity: Viscosity, "μ", "dynamic viscosity", Range::Positive;
    ) -> Flow, "Q", "volume flow, with the sign of the drop" {
        let (d, l, dp, mu) = (bore.metres(), length.metres(), drop.pascals(), viscosity.pascal_seconds());
        Flow::from_cubic_metres_per_second(PI * d * d * d * d * dp / (128.0 * mu * l))
    }
}

formula! {
    /// Pressure that a known flow of a Newtonian liquid loses along a round line.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::newtonian_drop;
    /// use oilway_units::{Flow, Length, Viscosity};
    ///
    /// // A textbook's 100 ft of 1 in bore at 10 ft/s, oil of 100 mm²/s and 900 kg/m³: the book prints 60 psi.
    /// let drop = newtonian_drop(
    ///     Length::from_inches(1.0), Length::from_feet(100.0),
    ///     Flow::from_cubic_metres_per_second(0.001_544_4), Viscosity::from_pascal_seconds(0.09),
    /// );
    /// assert_eq!(format!("{:.0}", drop.psi()), "60");
    /// ```
    NEWTONIAN_DROP = "pipe-flow/newtonian-drop",
    title: "Pressure that an oil loses along a round line",
    equation: "Δp = 128 μ L Q / (π D⁴)",
    validity: "Exact for steady, laminar, isothermal flow far from the inlet, with one viscosity along the line. Above Re of about 2000 the drop is larger: see pipe-flow/darcy-drop.",
    sources: [
        "darby", "eq. 6-11, Hagen–Poiseuille", Seen
    ],
    fn newtonian_drop(
        bore: Length, "D", "inner diameter of the line", Range::Positive;
        length: Length, "L", "length of the line", Range::NotNegative;
        flow: Flow, "Q", "volume flow", Range::Any;
        viscosity: Viscosity, "μ", "dynamic viscosity", Range::Positive;
    ) -> Pressure, "Δp", "pressure lost along the line, with the sign of the flow" {
        let (d, l, q) = (bore.metres(), length.metres(), flow.cubic_metres_per_second());
        Pressure::from_pascals(128.0 * viscosity.pascal_seconds() * l * q / (PI * d * d * d * d))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const BORE: Length = Length::from_metres(0.00335);
    const LENGTH: Length = Length::from_metres(10.0);
    const OIL: Viscosity = Viscosity::from_pascal_seconds(0.0592);

    #[test]
    fn no_pressure_moves_nothing_and_no_flow_costs_nothing() {
        assert_eq!(newtonian_flow(BORE, LENGTH, Pressure::ZERO, OIL), Flow::ZERO);
        assert_eq!(newtonian_drop(BORE, LENGTH, Flow::ZERO, OIL), Pressure::ZERO);
    }

    #[test]
    fn the_drop_undoes_the_flow() {
        let drop = Pressure::from_bar(30.0);
        let back = newtonian_drop(BORE, LENGTH, newtonian_flow(BORE, LENGTH, drop, OIL), OIL);
        assert!((back / drop - 1.0).abs() < 1e-15);
    }

    #[test]
    fn twice_the_bore_carries_sixteen_times_the_flow() {
        let drop = Pressure::from_bar(3.0);
        let ratio = newtonian_flow(BORE * 2.0, LENGTH, drop, OIL) / newtonian_flow(BORE, LENGTH, drop, OIL);
        assert!((ratio - 16.0).abs() < 1e-13);
    }

    #[test]
    fn agrees_with_the_integrated_parabola() {
        // Second route: rings of the speed profile u = Δp (R² − r²) / (4 μ L), by the midpoint rule.
        let (r, l, mu, dp) = (0.5 * BORE.metres(), LENGTH.metres(), OIL.pascal_seconds(), 3e6);
        let n = 20_000;
        let h = r / f64::from(n);
        let rings = (0..n).map(|i| (f64::from(i) + 0.5) * h);
        let flow: f64 = rings.map(|x| 2.0 * PI * x * h * dp * (r * r - x * x) / (4.0 * mu * l)).sum();
        let ours = newtonian_flow(BORE, LENGTH, Pressure::from_pascals(dp), OIL);
        assert!((ours.cubic_metres_per_second() / flow - 1.0).abs() < 1e-8);
    }
}
