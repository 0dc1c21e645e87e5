//! The inlet: what pushes lubricant into the cylinder, and whether it comes in time.

use oilway_units::{
    AbsolutePressure, Density, Flow, Force, Frequency, Length, Mass, Pressure, Ratio, Time, Volume,
};

use crate::air::piston_area;
use crate::pipe_flow::FREE_FALL;
use crate::{Range, formula};

formula! {
    /// Pressure that pushes lubricant into the cylinder of a pump.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pump::feed_pressure;
    /// use oilway_units::{AbsolutePressure, Density, Length, Pressure};
    ///
    /// let feed = feed_pressure(
    ///     AbsolutePressure::from_bar(1.013), AbsolutePressure::from_bar(0.2), Density::from_kilograms_per_cubic_metre(900.0),
    ///     Length::from_metres(0.25), Pressure::ZERO,
    /// );
    /// assert_eq!(format!("{:.3}", feed.bar()), "0.835");
    /// ```
    FEED_PRESSURE = "pump/feed-pressure",
    title: "Pressure that feeds a pump's cylinder",
    equation: "Δp = (p_a − p_min) + ρ g h + p_f",
    validity: "The atmosphere helps only while no air reaches the inlet another way: through a funnel in stiff grease, a cracked pick-up or a jammed follower. p_min is 0.2 bar for slow pumps on oil and for grease, 0.5 bar for grease with air in it, 0.8 bar for oil pumps at speed (practice and memory). A negative answer feeds nothing.",
    sources: [
        "own-derivation", "pressure balance at the inlet", Own;
        "common-practice", "lowest pressures to tolerate", CommonPractice
    ],
    fn feed_pressure(
        atmosphere: AbsolutePressure, "p_a", "pressure of the surroundings, absolute", Range::NotNegative;
        lowest: AbsolutePressure, "p_min", "lowest pressure tolerated in the cylinder, absolute", Range::NotNegative;
        density: Density, "ρ", "density of the lubricant", Range::NotNegative;
        head: Length, "h", "height of the lubricant above the inlet, negative for a lift", Range::Any;
        follower: Pressure, "p_f", "pressure of the follower plate, its seal taken off", Range::Any;
    ) -> Pressure, "Δp", "pressure that feeds" {
        let column = density.kilograms_per_cubic_metre() * FREE_FALL * head.metres();
        atmosphere.above(lowest) + Pressure::from_pascals(column) + follower
    }
}

formula! {
    /// Pressure that a follower plate adds.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pump::follower_pressure;
    /// use oilway_units::{Force, Length, Mass};
    ///
    /// let plate = follower_pressure(
    ///     Length::from_millimetres(300.0), Mass::from_kilograms(40.0), Force::from_newtons(0.0), Force::from_newtons(0.0),
    /// );
    /// assert_eq!(format!("{:.4}", plate.bar()), "0.0555");
    /// ```
    FOLLOWER_PRESSURE = "pump/follower-pressure",
    title: "Pressure of a follower plate",
    equation: "p = (m g + F_s − F_f) / (π D²/4)",
    validity: "The lid breathes above the plate and there is no air under it. Negative where the seal holds the plate back: that costs feed pressure. Small beside the atmosphere; what counts is that the plate keeps the surface closed.",
    sources: [
        "own-derivation", "force balance of the plate", Own
    ],
    fn follower_pressure(
        plate: Length, "D", "diameter of the plate", Range::Positive;
        weight: Mass, "m", "mass of the plate and what lies on it", Range::NotNegative;
        spring: Force, "F_s", "force of a spring on the plate", Range::NotNegative;
        friction: Force, "F_f", "friction of the seal against the wall", Range::NotNegative;
    ) -> Pressure, "p", "pressure added under the plate" {
        let force = Force::from_newtons(weight.kilograms() * FREE_FALL) + spring - friction;
        Pressure::from_pascals(force.newtons() / piston_area(plate).square_metres())
    }
}

formula! {
    /// Time in which the cylinder fills again.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pump::refill_time;
    /// use oilway_units::{Flow, Volume};
    ///
    /// let time = refill_time(
    ///     Volume::from_cubic_centimetres(3.0), Flow::from_cubic_centimetres_per_second(1.561),
    /// );
    /// assert_eq!(format!("{:.2}", time.unwrap().seconds()), "1.92");
    /// ```
    INLET_TIME = "pump/inlet-time",
    title: "Time in which a pump's cylinder fills again",
    equation: "t = V / Q",
    validity: "Q is the flow that the feed pressure moves through port, strainer, check valve and inlet line in a row. No answer where nothing flows: the pump starves whatever its speed.",
    sources: [
        "own-derivation", "volume over flow", Own
    ],
    fn refill_time(
        stroke: Volume, "V", "volume of one stroke", Range::NotNegative;
        flow: Flow, "Q", "flow that the inlet lets in", Range::NotNegative;
    ) -> Option<Time>, "t", "time to fill" {
        (flow > Flow::ZERO).then(|| stroke / flow)
    }
}

formula! {
    /// The fastest stroke rate at which the cylinder still fills.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pump::largest_stroke_rate;
    /// use oilway_units::{Ratio, Time};
    ///
    /// let rate = largest_stroke_rate(Time::from_seconds(3.0 / 1.561), Ratio::from_fraction(0.5));
    /// assert_eq!(format!("{:.1}", rate.per_minute()), "15.6");
    /// ```
    LARGEST_STROKE_RATE = "pump/largest-stroke-rate",
    title: "Fastest stroke rate at which the cylinder fills",
    equation: "n = a / t",
    validity: "a is the suction part of the cycle: half for a plain crank or air motor, less for a single-acting one with quick return.",
    sources: [
        "own-derivation", "suction part of the cycle", Own
    ],
    fn largest_stroke_rate(
        refill: Time, "t", "time in which the cylinder fills", Range::Positive;
        suction_share: Ratio, "a", "share of the cycle spent on suction", Range::Between(0.0, 1.0);
    ) -> Frequency, "n", "strokes in a time" {
        Frequency::from_per_second(suction_share.fraction() / refill.seconds())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_lift_takes_away_what_a_head_gives() {
        let feed = |metres: f64| {
            feed_pressure(
                AbsolutePressure::from_bar(1.0),
                AbsolutePressure::from_bar(1.0),
                Density::from_kilograms_per_cubic_metre(900.0),
                Length::from_metres(metres),
                Pressure::ZERO,
            )
            .pascals()
        };
        assert_eq!(feed(0.0), 0.0);
        assert_eq!(feed(-1.0), -feed(1.0));
        // Second route: the weight of a column of one square metre.
        assert!((feed(2.0) - 2.0 * 900.0 * 9.806_65).abs() < 1e-9);
    }

    #[test]
    fn a_stiff_seal_holds_the_plate_back() {
        let newtons = Force::from_newtons;
        let plate = |spring: f64, friction: f64| {
            follower_pressure(Length::from_millimetres(200.0), Mass::ZERO, newtons(spring), newtons(friction))
                .bar()
        };
        assert_eq!(plate(150.0, 150.0), 0.0);
        assert!(plate(0.0, 150.0) < 0.0);
        assert!((plate(600.0, 150.0) - 450.0 / (core::f64::consts::PI * 0.01) / 1e5).abs() < 1e-12);
    }

    #[test]
    fn without_flow_the_cylinder_never_fills() {
        assert_eq!(refill_time(Volume::from_cubic_centimetres(3.0), Flow::ZERO), None);
        assert_eq!(refill_time(Volume::ZERO, Flow::from_litres_per_minute(1.0)), Some(Time::ZERO));
    }

    #[test]
    fn at_the_fastest_rate_suction_takes_just_the_refill_time() {
        let refill = Time::from_seconds(0.7);
        let rate = largest_stroke_rate(refill, Ratio::from_fraction(0.4));
        assert!((0.4 / rate.per_second() - 0.7).abs() < 1e-15);
    }
}
