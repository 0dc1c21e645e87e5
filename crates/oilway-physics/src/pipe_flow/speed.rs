//! How fast a line runs, and whether its flow is laminar.

use core::f64::consts::PI;

use oilway_units::{Density, Flow, Length, Pressure, Ratio, Speed, Viscosity};

use crate::{Range, formula};

formula! {
    /// Mean speed in a round line.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::mean_speed;
    /// use oilway_units::{Flow, Length};
    ///
    /// let speed = mean_speed(Length::from_millimetres(4.0), Flow::from_cubic_centimetres_per_minute(100.0));
    /// assert_eq!(format!("{:.3}", speed.metres_per_second()), "0.133");
    /// ```
    MEAN_SPEED = "pipe-flow/mean-speed",
    title: "Mean speed in a round line",
    equation: "V = 4 Q / (π D²)",
    validity: "Geometry: flow over cross-section.",
    sources: [
        "own-derivation", "flow over cross-section", Own
    ],
    fn mean_speed(
        bore: Length, "D", "inner diameter of the line", Range::Positive;
        flow: Flow, "Q", "volume flow", Range::Any;
    ) -> Speed, "V", "mean speed" {
        let d = bore.metres();
        Speed::from_metres_per_second(4.0 * flow.cubic_metres_per_second() / (PI * d * d))
    }
}

formula! {
    /// Reynolds number of an oil in a round line: laminar below about 2000.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::reynolds;
    /// use oilway_units::{Density, Flow, Length, Viscosity};
    ///
    /// // 1 in bore at 10 ft/s, 100 mm²/s and 900 kg/m³: the textbook prints 774.
    /// let number = reynolds(
    ///     Length::from_inches(1.0), Flow::from_cubic_metres_per_second(0.001_544_4),
    ///     Density::from_kilograms_per_cubic_metre(900.0), Viscosity::from_pascal_seconds(0.09),
    /// );
    /// assert_eq!(format!("{:.0}", number.fraction()), "774");
    /// ```
    REYNOLDS = "pipe-flow/reynolds",
    title: "Reynolds number of an oil in a round line",
    equation: "Re = 4 ρ Q / (π D μ)",
    validity: "Newtonian liquids in full round lines. The flow is laminar below about 2000 to 2100.",
    sources: [
        "de-nevers", "chapter 6", Seen;
        "darby", "chapter 6", Seen
    ],
    fn reynolds(
        bore: Length, "D", "inner diameter of the line", Range::Positive;
        flow: Flow, "Q", "volume flow", Range::NotNegative;
        density: Density, "ρ", "density", Range::Positive;
        viscosity: Viscosity, "μ", "dynamic viscosity", Range::Positive;
    ) -> Ratio, "Re", "Reynolds number" {
        let (rho, q) = (density.kilograms_per_cubic_metre(), flow.cubic_metres_per_second());
        Ratio::from_fraction(4.0 * rho * q / (PI * bore.metres() * viscosity.pascal_seconds()))
    }
}

formula! {
    /// Reynolds number of any fluid in a round line, from its wall stress: Metzner and Reed's number.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::metzner_reed;
    /// use oilway_units::{Density, Pressure, Speed};
    ///
    /// // A grease line at walking pace: hopelessly laminar.
    /// let number = metzner_reed(
    ///     Density::from_kilograms_per_cubic_metre(900.0), Speed::from_metres_per_second(0.1), Pressure::from_pascals(1600.0),
    /// );
    /// assert_eq!(format!("{:.3}", number.fraction()), "0.045");
    /// ```
    METZNER_REED = "pipe-flow/reynolds-general",
    title: "Reynolds number of any fluid, from its wall stress",
    equation: "Re = 8 ρ V² / τw",
    validity: "Laminar flow of any fluid without slip, where the friction factor is 16 over this number; below about 2000 to 2100 the flow stays laminar. Needs the laminar wall stress.",
    sources: [
        "steffe", "eqs. 2.119 to 2.121, Metzner–Reed", Seen;
        "own-derivation", "f = 16/Re solved for Re with f = 2 τw / (ρ V²)", Own
    ],
    fn metzner_reed(
        density: Density, "ρ", "density", Range::Positive;
        speed: Speed, "V", "mean speed", Range::Any;
        wall_stress: Pressure, "τw", "shear stress at the wall", Range::Positive;
    ) -> Ratio, "Re", "generalised Reynolds number" {
        let v = speed.metres_per_second();
        Ratio::from_fraction(8.0 * density.kilograms_per_cubic_metre() * v * v / wall_stress.pascals())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pipe_flow::{newtonian_drop, wall_stress};

    #[test]
    fn for_an_oil_both_numbers_are_the_same() {
        let (bore, length) = (Length::from_millimetres(5.0), Length::from_metres(7.0));
        let (flow, oil) = (Flow::from_litres_per_minute(2.0), Viscosity::from_pascal_seconds(0.06));
        let density = Density::from_kilograms_per_cubic_metre(870.0);
        let stress = wall_stress(bore, length, newtonian_drop(bore, length, flow, oil));
        let general = metzner_reed(density, mean_speed(bore, flow), stress);
        assert!((general / reynolds(bore, flow, density, oil) - 1.0).abs() < 1e-14);
    }

    #[test]
    fn the_power_law_number_of_metzner_and_reed_comes_out() {
        // Second route: their own form, ρ V^(2−n) Dⁿ / (8^(n−1) K′) with K′ = K ((3n+1)/(4n))ⁿ.
        let (rho, v, d, k, n) = (1041.0_f64, 0.0728_f64, 0.0524_f64, 13.408_457_632_5_f64, 0.4_f64);
        let k_prime = k * ((3.0 * n + 1.0) / (4.0 * n)).powf(n);
        let theirs = rho * v.powf(2.0 - n) * d.powf(n) / (8f64.powf(n - 1.0) * k_prime);
        let tau_w = k_prime * (8.0 * v / d).powf(n);
        let ours = metzner_reed(
            Density::from_kilograms_per_cubic_metre(rho),
            Speed::from_metres_per_second(v),
            Pressure::from_pascals(tau_w),
        );
        assert!((ours.fraction() / theirs - 1.0).abs() < 1e-14);
        // geankoplis, example 3.5-1 (seen): 1.106.
        assert!((ours.fraction() - 1.106).abs() < 0.0005);
    }

    #[test]
    fn a_line_at_rest_has_no_speed_and_no_number() {
        let bore = Length::from_millimetres(5.0);
        assert_eq!(mean_speed(bore, Flow::ZERO), Speed::ZERO);
        let (density, oil) =
            (Density::from_kilograms_per_cubic_metre(870.0), Viscosity::from_pascal_seconds(0.06));
        assert_eq!(reynolds(bore, Flow::ZERO, density, oil), Ratio::ZERO);
    }
}
