//! Linear rolling guides and ball screws: intervals by travel, and the first fill of a nut.

use core::f64::consts::PI;

use oilway_units::{Frequency, Length, Ratio, Time, Volume};

use crate::{Range, formula};

formula! {
    /// The running time in which a guide makes the travel after which it wants fresh lubricant.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::travel_interval;
    /// use oilway_units::{Frequency, Length};
    ///
    /// let interval = travel_interval(
    ///     Length::from_kilometres(100.0), Length::from_centimetres(80.0), Frequency::from_per_minute(20.0),
    /// );
    /// assert_eq!(format!("{:.1}", interval.hours()), "104.2");
    /// ```
    TRAVEL_INTERVAL = "demand/travel-interval",
    title: "Running time of a linear guide between two lubrications",
    equation: "t = s / (L · C)",
    validity: "L is the whole way of one cycle, forth and back. Customary s is 100 km, from 50 to 500 by load and surroundings. A stroke below twice the carriage's length does not spread the lubricant: insert a full stroke at each lubrication. Infinite where nothing moves.",
    sources: [
        "plant-standard", "constants 1666.67 (cm) and 656.168 (in) for 1 km", Seen;
        "own-derivation", "meaning of the constants", Own;
        "common-practice", "travel between two lubrications", CommonPractice
    ],
    fn travel_interval(
        travel: Length, "s", "travel between two lubrications", Range::Positive;
        travel_per_cycle: Length, "L", "whole way of one cycle, forth and back", Range::Positive;
        cycles: Frequency, "C", "cycles in a time", Range::Positive;
    ) -> Time, "t", "running time between two lubrications" {
        Time::from_seconds(travel.metres() / (travel_per_cycle.metres() * cycles.per_second()))
    }
}

formula! {
    /// The running time in which the nut of a screw makes the travel after which it wants fresh lubricant.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::screw_interval;
    /// use oilway_units::{Frequency, Length};
    ///
    /// let interval = screw_interval(
    ///     Length::from_kilometres(100.0), Length::from_millimetres(10.0), Frequency::from_per_minute(600.0),
    /// );
    /// assert_eq!(format!("{:.1}", interval.hours()), "277.8");
    /// ```
    SCREW_INTERVAL = "demand/screw-interval",
    title: "Running time of a screw and nut between two lubrications",
    equation: "t = s / (P · n)",
    validity: "The travel rule of linear guides carried over to screws. Customary results are 100 to 500 h of running.",
    sources: [
        "own-derivation", "travel of the nut is lead times turns", Own;
        "common-practice", "100 to 500 h", CommonPractice
    ],
    fn screw_interval(
        travel: Length, "s", "travel of the nut between two lubrications", Range::Positive;
        lead: Length, "P", "lead of the screw", Range::Positive;
        speed: Frequency, "n", "speed of the screw while it turns", Range::Positive;
    ) -> Time, "t", "running time between two lubrications" {
        Time::from_seconds(travel.metres() / (lead.metres() * speed.per_second()))
    }
}

formula! {
    /// The first fill of the nut of a ball or roller screw.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::screw_nut_fill;
    /// use oilway_units::{Length, Ratio};
    ///
    /// let fill = screw_nut_fill(
    ///     Length::from_millimetres(43.0), Length::from_millimetres(35.0), Length::from_millimetres(60.0),
    ///     Ratio::from_fraction(0.5), Ratio::from_fraction(0.5),
    /// );
    /// assert_eq!(fill.map(|v| format!("{:.2}", v.cubic_centimetres())), Some("7.35".to_string()));
    /// ```
    SCREW_NUT_FILL = "demand/screw-nut-fill",
    title: "First fill of a screw's nut",
    equation: "V = φ · π/4 · (dm² − d1²) · L · (1 − fb)",
    validity: "An estimate. Customary are φ = 1/3 to 1/2 and fb = 0.5. No answer where the nut's bore is not larger than the root of the screw.",
    sources: [
        "common-practice", "share to fill, share taken by the balls", CommonPractice;
        "own-derivation", "geometry", Own
    ],
    fn screw_nut_fill(
        nut_bore: Length, "dm", "bore of the nut", Range::Positive;
        root: Length, "d1", "root diameter of the screw", Range::NotNegative;
        length: Length, "L", "length of the nut", Range::Positive;
        fill: Ratio, "φ", "share of the free space to fill", Range::Between(0.0, 1.0);
        ball_share: Ratio, "fb", "share of the space that the balls take", Range::Between(0.0, 1.0);
    ) -> Option<Volume>, "V", "volume of the first fill" {
        let (dm, d1) = (nut_bore.metres(), root.metres());
        let space = PI / 4.0 * (dm - d1) * (dm + d1) * length.metres();
        let free = space * (1.0 - ball_share.fraction());
        (dm > d1).then(|| Volume::from_cubic_metres(free * fill.fraction()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_guide_moved_by_a_screw_has_the_interval_of_its_screw() {
        // One turn is one cycle of one lead.
        let (travel, lead, speed) = (
            Length::from_kilometres(80.0),
            Length::from_millimetres(10.0),
            Frequency::from_per_minute(600.0),
        );
        assert_eq!(travel_interval(travel, lead, speed), screw_interval(travel, lead, speed));
    }

    #[test]
    fn the_travel_made_in_the_interval_is_the_travel_asked_for() {
        let (way, cycles) = (Length::from_metres(3.2), Frequency::from_per_minute(12.5));
        let interval = travel_interval(Length::from_kilometres(100.0), way, cycles);
        let made = way.metres() * cycles.per_second() * interval.seconds();
        assert!((made / 1e5 - 1.0).abs() < 1e-15);
    }

    #[test]
    fn a_nut_no_wider_than_the_screw_cannot_be_filled() {
        let fill = |bore: f64| {
            let mm = Length::from_millimetres;
            screw_nut_fill(mm(bore), mm(35.0), mm(60.0), Ratio::from_fraction(0.5), Ratio::from_fraction(0.5))
        };
        assert_eq!(fill(35.0), None);
        assert_eq!(fill(34.0), None);
        assert!(fill(35.1).is_some());
    }
}
