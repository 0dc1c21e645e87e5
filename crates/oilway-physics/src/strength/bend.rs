//! The wall outside a bend.

use oilway_units::Length;

use crate::{Range, formula};

formula! {
    /// The wall that bending leaves on the outside of a bend.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::strength::bend_wall;
    /// use oilway_units::Length;
    ///
    /// // 6 x 1 bent to three diameters: 14 % thinner.
    /// let mm = Length::from_millimetres;
    /// assert_eq!(format!("{:.3}", bend_wall(mm(6.0), mm(1.0), mm(18.0)).millimetres()), "0.857");
    /// ```
    BEND_WALL = "strength/bend-wall",
    title: "Wall outside a bend",
    equation: "tb = t · (1 − D / (2R + D))",
    validity: "Cold bending with the neutral fibre on the centre line. R is the radius of the centre line, at least three outside diameters for steel and soft copper. Put the result in place of the wall for a bent line rated to the last bar.",
    sources: [
        "own-derivation", "stretch of the outer fibre, its volume kept", Own;
        "b31-3", "304.2.1 asks the wall of a bend to carry the pressure", Memory
    ],
    fn bend_wall(
        outside: Length, "D", "outside diameter", Range::Positive;
        wall: Length, "t", "wall before bending", Range::Positive;
        radius: Length, "R", "radius of the centre line", Range::Positive;
    ) -> Length, "tb", "wall outside the bend" {
        let centre = 2.0 * radius.metres();
        wall * (centre / (centre + outside.metres()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_straight_tube_keeps_its_wall() {
        let mm = Length::from_millimetres;
        assert!((bend_wall(mm(6.0), mm(1.0), mm(1e15)).millimetres() - 1.0).abs() < 1e-12);
    }

    #[test]
    fn three_diameters_cost_a_seventh_of_the_wall_whatever_the_size() {
        for d in [4.0, 6.35, 12.0] {
            let mm = Length::from_millimetres;
            assert!((bend_wall(mm(d), mm(0.7), mm(3.0 * d)).millimetres() / 0.7 - 6.0 / 7.0).abs() < 1e-14);
        }
    }
}
