//! Friction in round lines of oil, laminar and turbulent.

use core::f64::consts::{LN_10, PI};

use oilway_units::{Density, Flow, Length, Pressure, Ratio, Viscosity};

use super::newtonian::newtonian_drop;
use super::speed::reynolds;
use crate::{Range, formula};

/// Where the laminar law is left. The turbulent factor there is half as large again, so the drop jumps upward.
pub const TRANSITION: f64 = 2040.0;

formula! {
    /// Darcy friction factor of a full round line.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::friction_factor;
    /// use oilway_units::Ratio;
    ///
    /// let factor = |re| friction_factor(Ratio::from_fraction(re), Ratio::ZERO).fraction();
    /// assert_eq!(factor(1000.0), 0.064);
    /// assert_eq!(format!("{:.7}", factor(10_000.0)), "0.0308830");
    /// ```
    FRICTION_FACTOR = "pipe-flow/friction-factor",
    title: "Darcy friction factor of a round line",
    equation: "f = 64 / Re if Re < 2040, else 1/√f = −2 log10( (ε/D) / 3.7 + 2.51 / (Re √f) )",
    validity: "Newtonian liquids. Between Re 2000 and 4000 the flow may be either: the turbulent value taken from 2040 on is the higher and so the safe one for pressure. Roughness up to ε/D of 0.05.",
    sources: [
        "darby", "eq. 6-11, laminar branch", Seen;
        "colebrook-1939", "through lib-fluids", SecondHand;
        "lib-fluids", "friction_factor, its transition at 2040", Own
    ],
    fn friction_factor(
        reynolds: Ratio, "Re", "Reynolds number", Range::Positive;
        relative_roughness: Ratio, "ε/D", "height of the roughness over the bore", Range::Between(0.0, 0.05);
    ) -> Ratio, "f", "Darcy friction factor, four times Fanning's" {
        let re = reynolds.fraction();
        Ratio::from_fraction(if re < TRANSITION { 64.0 / re } else { colebrook(re, relative_roughness.fraction()) })
    }
}

/// Colebrook's factor by Newton's method in y = 1/√f: y + 2 log10(ε/3.7 + 2.51 y / Re) = 0.
fn colebrook(re: f64, roughness: f64) -> f64 {
    let (a, b) = (roughness / 3.7, 2.51 / re);
    // Any start near ten lies in reach: the left side rises with y, with a slope between 1 and 1.2.
    let mut y = 8.0;
    for _ in 0..20 {
        let inner = a + b * y;
        let miss = y + 2.0 * libm::log10(inner);
        let step = miss / (1.0 + 2.0 / LN_10 * b / inner);
        y -= step;
        if step.abs() < 1e-15 * y {
            break;
        }
    }
    1.0 / (y * y)
}

formula! {
    /// Pressure that a flow of oil loses along a round line, laminar or turbulent.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::darcy_drop;
    /// use oilway_units::{Density, Flow, Length, Viscosity};
    ///
    /// // A textbook's 50 gallons a minute in 100 ft of 3.068 in bore, 50 mPa·s: 0.77 psi.
    /// let drop = darcy_drop(
    ///     Length::from_inches(3.068), Length::from_feet(100.0), Flow::from_gallons_per_minute(50.0),
    ///     Density::from_kilograms_per_cubic_metre(900.0), Viscosity::from_millipascal_seconds(50.0), Length::ZERO,
    /// );
    /// assert_eq!(format!("{:.2}", drop.psi()), "0.77");
    /// ```
    DARCY_DROP = "pipe-flow/darcy-drop",
    title: "Pressure that an oil loses along a line, laminar or turbulent",
    equation: "Δp = 128 μ L Q / (π D⁴) if Re < 2040, else Δp = f L/D · ρ V²/2;  f of pipe-flow/friction-factor, V = 4 Q / (π D²)",
    validity: "Newtonian liquids in full round lines, steady and isothermal, without fittings. See pipe-flow/friction-factor for the transition.",
    sources: [
        "darby", "chapter 6", Seen;
        "colebrook-1939", "through lib-fluids", SecondHand
    ],
    fn darcy_drop(
        bore: Length, "D", "inner diameter of the line", Range::Positive;
        length: Length, "L", "length of the line", Range::NotNegative;
        flow: Flow, "Q", "volume flow", Range::NotNegative;
        density: Density, "ρ", "density", Range::Positive;
        viscosity: Viscosity, "μ", "dynamic viscosity", Range::Positive;
        roughness: Length, "ε", "height of the roughness of the wall; drawn tube about 0.0015 mm", Range::NotNegative;
    ) -> Pressure, "Δp", "pressure lost along the line" {
        let re = reynolds(bore, flow, density, viscosity);
        if re.fraction() < TRANSITION {
            // Without the detour over Re, which has no value at rest.
            return newtonian_drop(bore, length, flow, viscosity);
        }
        let (d, l, q) = (bore.metres(), length.metres(), flow.cubic_metres_per_second());
        let f = friction_factor(re, Ratio::from_fraction(roughness / bore)).fraction();
        let v = 4.0 * q / (PI * d * d);
        Pressure::from_pascals(f * l / d * density.kilograms_per_cubic_metre() * v * v / 2.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn factor(re: f64, roughness: f64) -> f64 {
        friction_factor(Ratio::from_fraction(re), Ratio::from_fraction(roughness)).fraction()
    }

    #[test]
    fn the_laminar_branch_ends_just_below_the_transition() {
        assert!((factor(2039.99, 0.0) - 64.0 / 2039.99).abs() < 1e-17);
        assert!(factor(2040.0, 0.0) > 0.049);
    }

    #[test]
    fn the_turbulent_factor_satisfies_the_equation_it_comes_from() {
        for re in [2040.0, 4e3, 1e5, 1e8, 1e12] {
            for roughness in [0.0, 1e-6, 0.002, 0.05] {
                let f = factor(re, roughness);
                let right = -2.0 * (roughness / 3.7 + 2.51 / (re * f.sqrt())).log10();
                assert!((right * f.sqrt() - 1.0).abs() < 1e-13, "{re} {roughness}");
            }
        }
    }

    #[test]
    fn a_rougher_wall_never_helps() {
        assert!(factor(1e5, 0.002) > factor(1e5, 0.0));
        assert_eq!(factor(1e3, 0.002), factor(1e3, 0.0));
    }

    #[test]
    fn the_drop_by_the_factor_and_by_the_laminar_law_agree_below_the_transition() {
        let (bore, length) = (Length::from_millimetres(4.0), Length::from_metres(3.0));
        let (rho, oil) =
            (Density::from_kilograms_per_cubic_metre(870.0), Viscosity::from_pascal_seconds(0.01));
        let flow = Flow::from_litres_per_minute(3.0);
        let re = reynolds(bore, flow, rho, oil);
        assert!(re.fraction() > 1000.0 && re.fraction() < 2040.0);
        let v = 4.0 * flow.cubic_metres_per_second() / (PI * bore.metres() * bore.metres());
        let second = factor(re.fraction(), 0.0) * (length / bore) * 870.0 * v * v / 2.0;
        let ours = darcy_drop(bore, length, flow, rho, oil, Length::ZERO);
        assert!((ours.pascals() / second - 1.0).abs() < 1e-14);
        assert_eq!(darcy_drop(bore, length, Flow::ZERO, rho, oil, Length::ZERO), Pressure::ZERO);
    }
}
