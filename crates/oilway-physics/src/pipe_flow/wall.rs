//! How a line gives under pressure: the stiffness of tube and hose, and of the lubricant together with them.

use core::f64::consts::PI;

use oilway_units::{Density, Length, Pressure, Ratio, Speed, VolumePerLength};

use crate::{Range, formula};

formula! {
    /// Stiffness of a thick tube that is free to move lengthwise and carries no end load.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::wall_modulus;
    /// use oilway_units::{Length, Pressure, Ratio};
    ///
    /// let steel = wall_modulus(
    ///     Length::from_millimetres(4.0), Length::from_millimetres(6.0), Pressure::from_megapascals(206e3), Ratio::from_fraction(0.3),
    /// );
    /// assert_eq!(format!("{:.0}", steel.megapascals()), "35517");
    /// ```
    WALL_MODULUS = "pipe-flow/wall-modulus",
    title: "Stiffness of a tube against inner pressure",
    equation: "1/K = (2/E) [(1+ν) Do² + (1−ν) Di²] / (Do² − Di²)",
    validity: "Elastic, thick or thin wall, ends without axial load. Closed or anchored ends make it up to 10 % stiffer. Plastic tube creeps and softens when warm: take E at temperature and duration. Without a wall the result is zero.",
    sources: [
        "merritt-1967", "chapter 1", Memory;
        "lame", "thick cylinder, open ends", Own
    ],
    fn wall_modulus(
        bore: Length, "Di", "inner diameter", Range::Positive;
        outside: Length, "Do", "outer diameter", Range::Positive;
        young: Pressure, "E", "modulus of elasticity of the wall", Range::Positive;
        poisson: Ratio, "ν", "contraction of the wall across its stretch", Range::Between(0.0, 0.5);
    ) -> Pressure, "K", "pressure over relative growth of the content" {
        let (i, o, nu) = (bore.metres(), outside.metres(), poisson.fraction());
        let wall = (o - i) * (o + i);
        if wall <= 0.0 {
            return Pressure::ZERO;
        }
        Pressure::from_pascals(0.5 * young.pascals() * wall / ((1.0 + nu) * o * o + (1.0 - nu) * i * i))
    }
}

formula! {
    /// Stiffness of a thick tube that is held at its ends.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::wall_modulus_anchored;
    /// use oilway_units::{Length, Pressure, Ratio};
    ///
    /// let steel = wall_modulus_anchored(
    ///     Length::from_millimetres(4.0), Length::from_millimetres(6.0), Pressure::from_megapascals(206e3), Ratio::from_fraction(0.3),
    /// );
    /// assert_eq!(format!("{:.2}", steel.megapascals() / 1000.0), "37.37");
    /// ```
    WALL_MODULUS_ANCHORED = "pipe-flow/wall-modulus-anchored",
    title: "Stiffness of a tube held at its ends",
    equation: "1/K = 2 (1+ν) [(1−2ν) Di² + Do²] / (E (Do² − Di²))",
    validity: "Elastic, thick or thin wall, no stretch lengthwise. Without a wall the result is zero.",
    sources: [
        "lame", "thick cylinder, no axial strain", Own
    ],
    fn wall_modulus_anchored(
        bore: Length, "Di", "inner diameter", Range::Positive;
        outside: Length, "Do", "outer diameter", Range::Positive;
        young: Pressure, "E", "modulus of elasticity of the wall", Range::Positive;
        poisson: Ratio, "ν", "contraction of the wall across its stretch", Range::Between(0.0, 0.5);
    ) -> Pressure, "K", "pressure over relative growth of the content" {
        let (i, o, nu) = (bore.metres(), outside.metres(), poisson.fraction());
        let wall = (o - i) * (o + i);
        if wall <= 0.0 {
            return Pressure::ZERO;
        }
        let softness = 2.0 * (1.0 + nu) * ((1.0 - 2.0 * nu) * i * i + o * o);
        Pressure::from_pascals(young.pascals() * wall / softness)
    }
}

formula! {
    /// Stiffness of a hose from the growth that its data sheet gives at a pressure.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::hose_modulus;
    /// use oilway_units::{Length, Pressure, VolumePerLength};
    ///
    /// let hose = hose_modulus(
    ///     Length::from_millimetres(6.3), VolumePerLength::from_cubic_centimetres_per_metre(2.0), Pressure::from_bar(200.0),
    /// );
    /// assert_eq!(format!("{:.0}", hose.megapascals()), "312");
    /// ```
    HOSE_MODULUS = "pipe-flow/hose-modulus",
    title: "Stiffness of a hose from its volumetric expansion",
    equation: "K = (π D² / 4) p / (ΔV/L)",
    validity: "A mean between no pressure and the stated one; at rest and warm a hose is softer, in a quick pulse stiffer.",
    sources: [
        "iso-6801", "what the test measures; the conversion is a definition", Seen;
        "own-derivation", "definition of the modulus", Own
    ],
    fn hose_modulus(
        bore: Length, "D", "inner diameter", Range::Positive;
        expansion: VolumePerLength, "ΔV/L", "growth of the content for each length", Range::Positive;
        pressure: Pressure, "p", "pressure of that growth", Range::Positive;
    ) -> Pressure, "K", "pressure over relative growth of the content" {
        let d = bore.metres();
        Pressure::from_pascals(0.25 * PI * d * d * pressure.pascals() / expansion.cubic_metres_per_metre())
    }
}

formula! {
    /// Stiffness of the lubricant and of its line together.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::effective_modulus;
    /// use oilway_units::Pressure;
    ///
    /// let together = effective_modulus(Pressure::from_megapascals(1600.0), Pressure::from_megapascals(35_517.0));
    /// assert_eq!(format!("{:.0}", together.megapascals()), "1531");
    /// ```
    EFFECTIVE_MODULUS = "pipe-flow/effective-modulus",
    title: "Stiffness of the lubricant and of its line together",
    equation: "1/K = 1/Kf + 1/Kw",
    validity: "Small relative changes of volume. Air belongs into the modulus of the lubricant: oil/modulus-with-air.",
    sources: [
        "merritt-1967", "chapter 1", Memory
    ],
    fn effective_modulus(
        fluid: Pressure, "Kf", "modulus of the lubricant, with its air", Range::Positive;
        wall: Pressure, "Kw", "modulus of the wall", Range::Positive;
    ) -> Pressure, "K", "modulus of both together" {
        let (f, w) = (fluid.pascals(), wall.pascals());
        Pressure::from_pascals(f / (1.0 + f / w))
    }
}

formula! {
    /// Speed at which a pressure step runs along a line.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::wave_speed;
    /// use oilway_units::{Density, Pressure};
    ///
    /// let speed = wave_speed(Pressure::from_megapascals(1500.0), Density::from_kilograms_per_cubic_metre(890.0));
    /// assert_eq!(format!("{:.0}", speed.metres_per_second()), "1298");
    /// ```
    WAVE_SPEED = "pipe-flow/wave-speed",
    title: "Speed of a pressure step in a line",
    equation: "c = √(K / ρ)",
    validity: "No friction: a bound for the arrival of any signal. In grease and cold oil the pressure spreads as heat does, far slower.",
    sources: [
        "subramanya", "chapter 14", Seen
    ],
    fn wave_speed(
        modulus: Pressure, "K", "modulus of lubricant and line together", Range::Positive;
        density: Density, "ρ", "density", Range::Positive;
    ) -> Speed, "c", "speed of the step" {
        Speed::from_metres_per_second((modulus.pascals() / density.kilograms_per_cubic_metre()).sqrt())
    }
}

formula! {
    /// Pressure by which a sudden stop of the flow exceeds what stood in the line before.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::surge;
    /// use oilway_units::{Density, Speed};
    ///
    /// let density = Density::from_kilograms_per_cubic_metre(890.0);
    /// let surge = surge(density, Speed::from_metres_per_second(1300.0), Speed::from_metres_per_second(0.5));
    /// assert_eq!(format!("{:.1}", surge.bar()), "5.8");
    /// ```
    SURGE = "pipe-flow/surge",
    title: "Pressure of a sudden stop",
    equation: "Δp = ρ c ΔV",
    validity: "A stop quicker than the way there and back of the step, 2 L / c, without friction: the most that can happen.",
    sources: [
        "subramanya", "chapter 14, Joukowsky", Seen
    ],
    fn surge(
        density: Density, "ρ", "density", Range::Positive;
        wave_speed: Speed, "c", "speed of a pressure step in the line", Range::Positive;
        change: Speed, "ΔV", "mean speed that is stopped", Range::Any;
    ) -> Pressure, "Δp", "rise of pressure" {
        let momentum = density.kilograms_per_cubic_metre() * change.metres_per_second();
        Pressure::from_pascals(momentum * wave_speed.metres_per_second())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const STEEL: Pressure = Pressure::from_megapascals(206e3);
    const NU: Ratio = Ratio::from_fraction(0.3);

    fn millimetres(value: f64) -> Length {
        Length::from_millimetres(value)
    }

    #[test]
    fn a_thin_wall_gives_the_thin_formula() {
        let (bore, outside) = (millimetres(1000.0), millimetres(1000.2));
        let thin = STEEL.pascals() * 0.1 / 1000.0;
        assert!((wall_modulus(bore, outside, STEEL, NU).pascals() / thin - 1.0).abs() < 1e-3);
    }

    #[test]
    fn no_wall_has_no_stiffness() {
        assert_eq!(wall_modulus(millimetres(6.0), millimetres(6.0), STEEL, NU), Pressure::ZERO);
        assert_eq!(wall_modulus_anchored(millimetres(6.0), millimetres(4.0), STEEL, NU), Pressure::ZERO);
        assert!(wall_modulus(millimetres(6.0), millimetres(6.001), STEEL, NU) > Pressure::ZERO);
    }

    #[test]
    fn agrees_with_the_stresses_of_the_thick_cylinder() {
        // Second route: hoop strain at the bore from Lamé's stresses, twice of it is the growth of the section.
        let (i, o, p, e, nu) = (3.0_f64, 4.0_f64, 1.0, 206e9, 0.3);
        let hoop = p * (o * o + i * i) / (o * o - i * i);
        let open = 2.0 * (hoop + nu * p) / e;
        let ours = wall_modulus(millimetres(6.0), millimetres(8.0), STEEL, NU).pascals();
        assert!((ours * open - 1.0).abs() < 1e-13);
        // Held ends: axial stress ν(σθ + σr) keeps the length.
        let axial = nu * (hoop - p);
        let held = 2.0 * (hoop - nu * (axial - p)) / e;
        let ours = wall_modulus_anchored(millimetres(6.0), millimetres(8.0), STEEL, NU).pascals();
        assert!((ours * held - 1.0).abs() < 1e-13);
    }

    #[test]
    fn two_springs_in_series_are_softer_than_either() {
        let (f, w) = (Pressure::from_megapascals(1600.0), Pressure::from_megapascals(83.3));
        let both = effective_modulus(f, w);
        assert!(both < w && both < f);
        // As stiff a wall as one likes leaves the lubricant alone.
        assert_eq!(effective_modulus(f, Pressure::from_megapascals(f64::INFINITY)), f);
    }

    #[test]
    fn a_textbook_water_hammer_comes_out() {
        // subramanya, example 14.12 (seen): thin pipe 2.5 m, 20 mm, K 1.43 GPa, E 207 GPa, 798.4 kg/m³: 980.4 m/s.
        let wall = Pressure::from_megapascals(207e3 * 0.02 / 2.5);
        let modulus = effective_modulus(Pressure::from_megapascals(1430.0), wall);
        let c = wave_speed(modulus, Density::from_kilograms_per_cubic_metre(798.4));
        assert!((c.metres_per_second() - 980.4).abs() < 0.05, "{c:?}");
    }
}
