//! The Bingham plastic: the file to read first.

use core::f64::consts::PI;

use oilway_units::{Flow, Length, Pressure, Viscosity};

use crate::{Range, formula};

formula! {
    /// Flow of a Bingham plastic through a round line under a known pressure drop.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::bingham_flow;
    /// use oilway_units::{Length, Pressure, Viscosity};
    ///
    /// // 5 m of 8 mm bore at 5 bar: the wall stress is 200 Pa, so the plug fills 0.75 of the radius.
    /// let flow = bingham_flow(
    ///     Length::from_millimetres(8.0), Length::from_metres(5.0), Pressure::from_bar(5.0),
    ///     Pressure::from_pascals(150.0), Viscosity::from_pascal_seconds(2.0),
    /// );
    /// assert_eq!(format!("{:.1}", flow.cubic_centimetres_per_minute()), "31.8");
    /// ```
    BINGHAM_FLOW = "pipe-flow/bingham",
    title: "Flow of a Bingham plastic through a round line",
    equation: "Q = π D⁴ Δp / (128 μp L) · (1 − 4/3 φ + 1/3 φ⁴) if φ < 1, else 0;  φ = τy / τw,  τw = Δp D / (4 L)",
    validity: "Exact for steady, laminar, isothermal flow without slip at the wall, far from the inlet. Laminar is the caller's to check.",
    sources: [
        "darby", "eqs. 6-54 ff., Buckingham–Reiner", Seen;
        "chhabra-richardson", "eq. 3.13", Memory
    ],
    fn bingham_flow(
        bore: Length, "D", "inner diameter of the line", Range::Positive;
        length: Length, "L", "length of the line", Range::Positive;
        drop: Pressure, "Δp", "pressure lost along the line", Range::NotNegative;
        yield_stress: Pressure, "τy", "stress below which nothing moves", Range::NotNegative;
        plastic_viscosity: Viscosity, "μp", "slope of stress over shear rate", Range::Positive;
    ) -> Flow, "Q", "volume flow" {
        let (d, l, dp) = (bore.metres(), length.metres(), drop.pascals());
        let (tau_y, mu_p) = (yield_stress.pascals(), plastic_viscosity.pascal_seconds());

        let tau_w = dp * d / (4.0 * l);
        if tau_w <= tau_y {
            return Flow::ZERO;
        }
        let phi = tau_y / tau_w;
        let newtonian = PI * d * d * d * d * dp / (128.0 * mu_p * l);
        // The bracket factored, so that nothing cancels as φ nears 1.
        let moving = (1.0 - phi) * (1.0 - phi) * (3.0 + 2.0 * phi + phi * phi) / 3.0;
        Flow::from_cubic_metres_per_second(newtonian * moving)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn flow(yield_stress: f64) -> f64 {
        bingham_flow(
            Length::from_millimetres(8.0),
            Length::from_metres(5.0),
            Pressure::from_bar(5.0),
            Pressure::from_pascals(yield_stress),
            Viscosity::from_pascal_seconds(2.0),
        )
        .cubic_metres_per_second()
    }

    #[test]
    fn no_yield_stress_gives_hagen_poiseuille() {
        let poiseuille = PI * 0.008_f64.powi(4) * 5e5 / (128.0 * 2.0 * 5.0);
        assert!((flow(0.0) / poiseuille - 1.0).abs() < 1e-15);
    }

    #[test]
    fn nothing_moves_at_the_yield_stress() {
        assert_eq!(flow(200.0), 0.0);
        assert!(flow(199.999) > 0.0);
    }

    #[test]
    fn agrees_with_the_integrated_profile() {
        // Second route: integrate the velocity profile of the annulus and add the plug, by the midpoint rule.
        let (r, l, dp, mu, tau_y) = (0.004, 5.0, 5e5, 2.0, 150.0);
        let rp = 2.0 * l * tau_y / dp;
        let speed = |x: f64| ((dp / (4.0 * mu * l)) * (r * r - x * x)) - tau_y / mu * (r - x);
        let n = 20_000;
        let h = (r - rp) / n as f64;
        let ring: f64 = (0..n).map(|i| rp + (i as f64 + 0.5) * h).map(|x| 2.0 * PI * x * speed(x) * h).sum();
        let total = ring + PI * rp * rp * speed(rp);
        assert!((flow(150.0) / total - 1.0).abs() < 1e-8, "{} {total}", flow(150.0));
    }
}
