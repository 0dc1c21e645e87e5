//! The force balance of an air-driven pump: what pressure it can press against before it stalls.

use core::f64::consts::PI;

use oilway_units::{Area, Force, Length, Pressure, Ratio};

use crate::{Range, formula};

formula! {
    /// Face of a round piston.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::air::piston_area;
    /// use oilway_units::Length;
    ///
    /// assert_eq!(format!("{:.1}", piston_area(Length::from_millimetres(100.0)).square_centimetres()), "78.5");
    /// ```
    PISTON_AREA = "air/piston-area",
    title: "Face of a round piston",
    equation: "A = π D² / 4",
    validity: "Geometry. A piston rod takes its own area away on its side.",
    sources: [
        "own-derivation", "geometry", Own
    ],
    fn piston_area(
        diameter: Length, "D", "diameter of the piston", Range::NotNegative;
    ) -> Area, "A", "face of the piston" {
        diameter * diameter * (PI / 4.0)
    }
}

formula! {
    /// How many times the air pressure a pump presses at most.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::air::area_ratio;
    /// use oilway_units::Length;
    ///
    /// let ratio = area_ratio(Length::from_millimetres(100.0), Length::from_millimetres(16.0));
    /// assert_eq!(format!("{:.2}", ratio.fraction()), "39.06");
    /// ```
    AREA_RATIO = "air/area-ratio",
    title: "Pressure ratio of an air-driven pump",
    equation: "i = (D / d)²",
    validity: "The full face of the air piston drives the pressing stroke. Where the rod side drives it, take air/rod-side-area-ratio; a pump that delivers both ways has two ratios.",
    sources: [
        "pei-rp700", "glossary, pressure ratio", Seen
    ],
    fn area_ratio(
        air_piston: Length, "D", "diameter of the air piston", Range::Positive;
        plunger: Length, "d", "diameter of the plunger in the lubricant", Range::Positive;
    ) -> Ratio, "i", "area of the air piston over area of the plunger" {
        let across = air_piston / plunger;
        Ratio::from_fraction(across * across)
    }
}

formula! {
    /// How many times the air pressure a pump presses at most, when air on the rod side drives the stroke.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::air::rod_side_area_ratio;
    /// use oilway_units::Length;
    ///
    /// let ratio = rod_side_area_ratio(
    ///     Length::from_millimetres(100.0), Length::from_millimetres(20.0), Length::from_millimetres(16.0),
    /// );
    /// assert_eq!(format!("{:.1}", ratio.fraction()), "37.5");
    /// ```
    ROD_SIDE_AREA_RATIO = "air/rod-side-area-ratio",
    title: "Pressure ratio of a pump driven from the rod side",
    equation: "i = (D² − d_r²) / d², not below 0",
    validity: "Geometry of the driving side. A rod as wide as the piston leaves nothing to drive.",
    sources: [
        "pei-rp700", "glossary, pressure ratio", Seen;
        "own-derivation", "rod area taken away", Own
    ],
    fn rod_side_area_ratio(
        air_piston: Length, "D", "diameter of the air piston", Range::Positive;
        rod: Length, "d_r", "diameter of the rod on the driven side", Range::NotNegative;
        plunger: Length, "d", "diameter of the plunger in the lubricant", Range::Positive;
    ) -> Ratio, "i", "driving area over area of the plunger" {
        let (big, small, d) = (air_piston.metres(), rod.metres(), plunger.metres());
        Ratio::from_fraction(((big - small) * (big + small)).max(0.0) / (d * d))
    }
}

formula! {
    /// Pressure at which an air-driven pump stands still.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::air::stall_pressure;
    /// use oilway_units::{Pressure, Ratio};
    ///
    /// let stall = stall_pressure(Ratio::from_fraction(3.0), Pressure::from_psi(100.0), Ratio::from_fraction(1.0));
    /// assert_eq!(format!("{:.0}", stall.psi()), "300");
    /// ```
    STALL = "air/stall",
    title: "Stall pressure of an air-driven pump by its ratio",
    equation: "p = η i p_air",
    validity: "At rest η is about 0.85 to 0.95, moving 0.7 to 0.9 (common practice). For protection take η = 1 and the highest pressure that the supply can give, not the setting of the regulator: a regulator is not counted as protection.",
    sources: [
        "pei-rp700", "glossary, 3:1 gives 300 psi from 100 psi", Seen;
        "common-practice", "efficiencies", CommonPractice;
        "asme-viii-ug127", "note to UG-125(g), on regulators", Seen
    ],
    fn stall_pressure(
        ratio: Ratio, "i", "area of the air piston over area of the plunger", Range::Positive;
        air: Pressure, "p_air", "air pressure at the motor, gauge", Range::NotNegative;
        efficiency: Ratio, "η", "share left by seals and spring", Range::Between(0.0, 1.0);
    ) -> Pressure, "p", "lubricant pressure at which the pump stands still" {
        air * (ratio.fraction() * efficiency.fraction())
    }
}

formula! {
    /// Pressure at which an air-driven pump stands still, from its spring and friction.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::air::stall_by_force;
    /// use oilway_units::{Force, Length, Pressure};
    ///
    /// let stall = stall_by_force(
    ///     Length::from_millimetres(63.0), Length::from_millimetres(10.0), Pressure::from_bar(6.0),
    ///     Force::from_newtons(180.0), Force::from_newtons(60.0),
    /// );
    /// assert_eq!(format!("{:.1}", stall.bar()), "207.6");
    /// ```
    STALL_BY_FORCE = "air/stall-by-force",
    title: "Stall pressure of an air-driven pump by its forces",
    equation: "p = (p_air π D²/4 − F_s − F_f) / (π d²/4), not below 0",
    validity: "The vented side breathes freely; a blocked breather takes air/trapped off. The spring is that at the end of the stroke. For protection leave spring and friction out.",
    sources: [
        "own-derivation", "force balance at rest", Own
    ],
    fn stall_by_force(
        air_piston: Length, "D", "diameter of the air piston", Range::Positive;
        plunger: Length, "d", "diameter of the plunger in the lubricant", Range::Positive;
        air: Pressure, "p_air", "air pressure at the motor, gauge", Range::NotNegative;
        spring: Force, "F_s", "force of the return spring", Range::NotNegative;
        friction: Force, "F_f", "friction of the seals", Range::NotNegative;
    ) -> Pressure, "p", "lubricant pressure at which the pump stands still" {
        let pressing = air * piston_area(air_piston) - spring - friction;
        Pressure::from_pascals(pressing.newtons().max(0.0) / piston_area(plunger).square_metres())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(value: f64) -> Length {
        Length::from_millimetres(value)
    }

    #[test]
    fn without_spring_and_friction_the_forces_give_the_ratio() {
        let none = Force::from_newtons(0.0);
        let forces = stall_by_force(mm(80.0), mm(12.0), Pressure::from_bar(5.0), none, none);
        let nominal = stall_pressure(
            area_ratio(mm(80.0), mm(12.0)),
            Pressure::from_bar(5.0),
            Ratio::from_fraction(1.0),
        );
        assert!((forces / nominal - 1.0).abs() < 1e-14);
    }

    #[test]
    fn a_spring_stronger_than_the_air_presses_nothing() {
        let stall = stall_by_force(
            mm(63.0),
            mm(10.0),
            Pressure::from_bar(0.5),
            Force::from_newtons(180.0),
            Force::ZERO,
        );
        assert_eq!(stall, Pressure::ZERO);
    }

    #[test]
    fn a_thin_rod_changes_little_and_a_thick_one_takes_all() {
        let full = area_ratio(mm(100.0), mm(16.0)).fraction();
        assert!((rod_side_area_ratio(mm(100.0), mm(0.0), mm(16.0)).fraction() / full - 1.0).abs() < 1e-14);
        assert_eq!(rod_side_area_ratio(mm(100.0), mm(100.0), mm(16.0)).fraction(), 0.0);
        assert_eq!(rod_side_area_ratio(mm(100.0), mm(120.0), mm(16.0)).fraction(), 0.0);
    }

    #[test]
    fn the_area_of_a_circle_is_that_of_a_polygon_of_many_corners() {
        let n = 100_000.0;
        let polygon = n / 2.0 * 0.05 * 0.05 * libm::sin(2.0 * PI / n);
        assert!((piston_area(mm(100.0)).square_metres() / polygon - 1.0).abs() < 1e-8);
    }
}
