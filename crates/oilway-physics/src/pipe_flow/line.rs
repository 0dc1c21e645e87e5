//! A line as a vessel and as a height: its content, the head of a rise, and what ends and fittings add to its length.

use core::f64::consts::PI;

use oilway_units::{Density, Length, Pressure, Ratio, Volume};

use crate::{Range, formula};

/// Standard acceleration of free fall, m/s², exact by definition.
pub(crate) const FREE_FALL: f64 = 9.806_65;

formula! {
    /// Volume that fills a round line.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::line_content;
    /// use oilway_units::Length;
    ///
    /// let content = line_content(Length::from_millimetres(8.0), Length::from_metres(30.0));
    /// assert_eq!(format!("{:.3}", content.litres()), "1.508");
    /// ```
    LINE_CONTENT = "pipe-flow/content",
    title: "Content of a round line",
    equation: "V = π D² L / 4",
    validity: "Geometry, at no pressure.",
    sources: [
        "own-derivation", "cylinder", Own
    ],
    fn line_content(
        bore: Length, "D", "inner diameter of the line", Range::Positive;
        length: Length, "L", "length of the line", Range::NotNegative;
    ) -> Volume, "V", "volume that fills the line" {
        let d = bore.metres();
        Volume::from_cubic_metres(0.25 * PI * d * d * length.metres())
    }
}

formula! {
    /// Pressure that a column of lubricant costs on a rise, or gives on a fall.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::static_head;
    /// use oilway_units::{Density, Length};
    ///
    /// let head = static_head(Density::from_kilograms_per_cubic_metre(900.0), Length::from_metres(10.0));
    /// assert_eq!(format!("{:.3}", head.bar()), "0.883");
    /// ```
    STATIC_HEAD = "pipe-flow/static-head",
    title: "Head of a column of lubricant",
    equation: "Δp = ρ g h",
    validity: "A filled column of one density, standard gravity 9.80665 m/s². In grease the yield stress may hold the column up: then the head counts only when it moves.",
    sources: [
        "own-derivation", "weight of a column", Own
    ],
    fn static_head(
        density: Density, "ρ", "density", Range::Positive;
        rise: Length, "h", "height of the outlet above the inlet; negative for a fall", Range::Any;
    ) -> Pressure, "Δp", "pressure that the rise costs" {
        Pressure::from_pascals(density.kilograms_per_cubic_metre() * FREE_FALL * rise.metres())
    }
}

formula! {
    /// Length of line that costs as much as a fitting, in creeping flow.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::fitting_length;
    /// use oilway_units::{Length, Ratio};
    ///
    /// // An elbow of turbulent loss 0.75 in 4 mm bore counts as nearly six bores of line.
    /// let length = fitting_length(Length::from_millimetres(4.0), Ratio::from_fraction(0.75));
    /// assert_eq!(format!("{:.1}", length.millimetres()), "23.4");
    /// ```
    FITTING_LENGTH = "pipe-flow/fitting-length",
    title: "Length of line that costs as much as a fitting",
    equation: "Le = A / 64 · D,  A = 500 k",
    validity: "The author of the loss law stops at Re = 20; that it holds in the creeping flow of grease and for fluids with a yield stress is judged, not sourced. In a narrow fitting count the length of its own passage at its own bore instead.",
    sources: [
        "steffe", "2.10, eqs. 2.117 and 2.118", Seen;
        "own-derivation", "A/Re solved for a length of laminar line; below Re 20 judged", Own
    ],
    fn fitting_length(
        bore: Length, "D", "inner diameter of the line", Range::Positive;
        turbulent_loss: Ratio, "k", "loss coefficient of the fitting in turbulent flow", Range::NotNegative;
    ) -> Length, "Le", "equivalent length of line" {
        bore * (500.0 * turbulent_loss.fraction() / 64.0)
    }
}

formula! {
    /// Length of bore that costs as much as the two ends of a short hole, in creeping flow.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pipe_flow::end_length;
    /// use oilway_units::Length;
    ///
    /// assert_eq!(format!("{:.3}", end_length(Length::from_millimetres(1.0)).millimetres()), "0.589");
    /// ```
    END_LENGTH = "pipe-flow/end-length",
    title: "Length of bore that costs as much as the ends of a hole",
    equation: "Le = 3π/16 · d = 0.589 d",
    validity: "Creeping Newtonian flow into and out of a hole in a thin plate, added to the land of the hole. For grease an approximation of our own: no published entrance loss of a yield-stress fluid was found.",
    sources: [
        "sampson-1891", "Q = Δp d³ / (24 μ)", SecondHand;
        "dagan-1982", "hole of finite length as the sum of both", Memory;
        "own-derivation", "24/d³ = 128 Le / (π d⁴)", Own
    ],
    fn end_length(
        bore: Length, "d", "diameter of the hole", Range::Positive;
    ) -> Length, "Le", "equivalent length of bore" {
        bore * (3.0 * PI / 16.0)
    }
}

#[cfg(test)]
mod tests {
    use oilway_units::{Flow, Viscosity};

    use super::*;
    use crate::pipe_flow::newtonian_drop;

    #[test]
    fn an_empty_length_holds_nothing_and_content_grows_with_the_square_of_the_bore() {
        let (bore, length) = (Length::from_millimetres(6.0), Length::from_metres(3.0));
        assert_eq!(line_content(bore, Length::ZERO), Volume::ZERO);
        assert!((line_content(bore * 2.0, length) / line_content(bore, length) - 4.0).abs() < 1e-14);
    }

    #[test]
    fn a_rise_costs_what_a_fall_gives() {
        let (density, rise) = (Density::from_kilograms_per_cubic_metre(880.0), Length::from_metres(2.5));
        assert_eq!(static_head(density, rise), -static_head(density, -rise));
        assert_eq!(static_head(density, Length::ZERO), Pressure::ZERO);
        // Ten metres of water weigh close to an atmosphere.
        let water = static_head(Density::from_kilograms_per_cubic_metre(1000.0), Length::from_metres(10.0));
        assert!((water.bar() - 0.980_665).abs() < 1e-12);
    }

    #[test]
    fn the_ends_of_a_thin_hole_cost_what_sampson_says() {
        let (hole, flow) = (Length::from_millimetres(1.0), Flow::from_cubic_centimetres_per_minute(20.0));
        let oil = Viscosity::from_pascal_seconds(0.2);
        let ours = newtonian_drop(hole, end_length(hole), flow, oil).pascals();
        let sampson = 24.0 * 0.2 * flow.cubic_metres_per_second() / 1e-9;
        assert!((ours / sampson - 1.0).abs() < 1e-13);
    }

    #[test]
    fn the_fitting_length_costs_what_the_loss_law_says() {
        // A/Re · ρV²/2 against 128 μ Le Q/(π D⁴), both by hand.
        let (d, rho, mu, q, k) = (0.004, 900.0, 0.5, 1e-5, 0.75);
        let v = 4.0 * q / (PI * d * d);
        let loss = 500.0 * k / (rho * v * d / mu) * rho * v * v / 2.0;
        let length = fitting_length(Length::from_metres(d), Ratio::from_fraction(k));
        let line = newtonian_drop(
            Length::from_metres(d),
            length,
            Flow::from_cubic_metres_per_second(q),
            Viscosity::from_pascal_seconds(mu),
        );
        assert!((line.pascals() / loss - 1.0).abs() < 1e-14);
        assert_eq!(fitting_length(Length::from_metres(d), Ratio::ZERO), Length::ZERO);
    }
}
