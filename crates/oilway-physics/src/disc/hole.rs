//! The flow of oil through the hole that a burst disc leaves.

use core::f64::consts::PI;

use oilway_units::{Density, Flow, Length, Pressure, Viscosity};

use crate::{Range, formula};

/// Discharge coefficient of a non-certified liquid device.
const DISCHARGE: f64 = 0.62;

formula! {
    /// Pressure that it takes to push oil through the hole of a burst disc.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::disc::hole_drop;
    /// use oilway_units::{Density, Flow, Length, Viscosity};
    ///
    /// let drop = hole_drop(
    ///     Length::from_millimetres(1.5), Length::from_millimetres(1.0), Flow::from_cubic_centimetres_per_minute(600.0),
    ///     Density::from_kilograms_per_cubic_metre(900.0), Viscosity::from_pascal_seconds(3.0),
    /// );
    /// assert_eq!(format!("{:.1}", drop.bar()), "4.9");
    /// ```
    HOLE_DROP = "disc/hole-drop",
    title: "Pressure drop of oil in a short round hole",
    equation: "Δp = ρ/2 · (Q / (Cd A))² + μ Q (24/d³ + 128 L/(π d⁴));  A = π d²/4,  Cd = 0.62",
    validity: "Newtonian oil; creeping flow and inertia added, which is exact at either end and a fair guess between. Not for grease: take a tube longer by 0.589 d. A torn disc opens less than its hole: use the certified net area, or half the area of the hole.",
    sources: [
        "sampson-1891", "hole in a thin plate, Q = Δp d³/(24 μ)", SecondHand;
        "dagan-1982", "hole of finite length", Memory;
        "api-520-1", "discharge coefficient 0.62", SecondHand
    ],
    fn hole_drop(
        hole: Length, "d", "diameter of the hole", Range::Positive;
        land: Length, "L", "length of the hole", Range::NotNegative;
        flow: Flow, "Q", "flow to be passed", Range::NotNegative;
        density: Density, "ρ", "density of the oil", Range::NotNegative;
        viscosity: Viscosity, "μ", "viscosity of the oil as it is in the hole", Range::NotNegative;
    ) -> Pressure, "Δp", "pressure drop of the hole" {
        let (d, l, q) = (hole.metres(), land.metres(), flow.cubic_metres_per_second());
        let (rho, mu) = (density.kilograms_per_cubic_metre(), viscosity.pascal_seconds());

        let speed = q / (DISCHARGE * PI * d * d / 4.0);
        let inertia = rho / 2.0 * speed * speed;
        let creeping = mu * q * (24.0 + 128.0 * l / (PI * d)) / (d * d * d);
        Pressure::from_pascals(inertia + creeping)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn drop(land: f64, flow: f64, density: f64, viscosity: f64) -> f64 {
        hole_drop(
            Length::from_millimetres(2.0),
            Length::from_millimetres(land),
            Flow::from_litres_per_minute(flow),
            Density::from_kilograms_per_cubic_metre(density),
            Viscosity::from_pascal_seconds(viscosity),
        )
        .pascals()
    }

    #[test]
    fn no_flow_costs_nothing() {
        assert_eq!(drop(1.0, 0.0, 900.0, 1.0), 0.0);
    }

    #[test]
    fn without_viscosity_the_orifice_equation_is_left() {
        let q = 2e-3 / 60.0;
        let area = PI * 1e-6;
        let back = DISCHARGE * area * (2.0 * drop(1.0, 2.0, 900.0, 0.0) / 900.0).sqrt();
        assert!((back / q - 1.0).abs() < 1e-14);
    }

    #[test]
    fn the_ends_count_as_0_589_diameters_of_tube() {
        // Second route: 24/d³ equals the drop of a tube of 3π/16 d.
        let tube = |l: f64| 128.0 * 0.5 * l * (1e-3 / 60.0) / (PI * 0.002_f64.powi(4));
        let length = 1e-3 + 3.0 * PI / 16.0 * 0.002;
        assert!((drop(1.0, 1.0, 0.0, 0.5) / tube(length) - 1.0).abs() < 1e-13);
    }
}
