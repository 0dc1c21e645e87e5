//! The time from one greasing of a rolling bearing to the next, and the speed that counts in it.

use core::f64::consts::PI;

use oilway_units::{Angle, Frequency, Length, Ratio, Time};

use crate::{Range, formula};

/// Results of the rule beyond this are not used: grease ages at rest too.
pub const LONGEST_INTERVAL: Time = Time::from_hours(30_000.0);

formula! {
    /// The base interval between two greasings of a rolling bearing, in running hours.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::grease_interval;
    /// use oilway_units::{Frequency, Length, Ratio};
    ///
    /// let interval = |bore: f64, speed: f64, k: f64| {
    ///     grease_interval(Length::from_millimetres(bore), Frequency::from_per_minute(speed), Ratio::from_fraction(k))
    /// };
    /// assert_eq!(interval(50.0, 1500.0, 10.0).map(|t| t.hours().round()), Some(11_199.0));
    /// // A spherical roller bearing of bore 200 mm at 3000 a minute is beyond the rule.
    /// assert_eq!(interval(200.0, 3000.0, 1.0), None);
    /// ```
    GREASE_INTERVAL = "demand/grease-interval",
    title: "Base interval between two greasings of a rolling bearing",
    equation: "t = k · (14·10⁶ / (n·√d) − 4·d), at most 30 000 h   (t in h, n in 1/min, d in mm)",
    validity: "Outer ring at 70 °C, horizontal shaft, inner ring turning, clean, ordinary load (up to about 0.15 of the dynamic capacity), ordinary lithium-soap grease. No answer where the bracket is not positive: the speed is beyond the rule, ask for oil or for the bearing's own data. Beware of a misprint in circulation with k outside only the first term: 12 999 h instead of 11 199 h for k 10, d 50, n 1500.",
    sources: [
        "neale-1995", "A20.5 Table 20.4: variables and bearing factors; the equation itself is a picture there", Seen;
        "trade-bearing", "the equation with the bracket around both terms, in one technical guide to drive elements", Seen;
        "maintenance-training", "the same equation and factors", Memory;
        "plant-standard", "cap of 32 000 h; an open implementation caps at 30 000 h", Seen
    ],
    fn grease_interval(
        bore: Length, "d", "bore of the bearing", Range::Positive;
        speed: Frequency, "n", "speed of the inner ring against the outer", Range::Positive;
        bearing_factor: Ratio, "k", "10 for radial ball, 5 for cylindrical and needle roller, 1 for spherical, tapered and thrust bearings", Range::Positive;
    ) -> Option<Time>, "t", "running time between two greasings" {
        let (d, n, k) = (bore.millimetres(), speed.per_minute(), bearing_factor.fraction());
        let bracket = 14e6 / (n * d.sqrt()) - 4.0 * d;
        (bracket > 0.0).then(|| Time::from_hours(k * bracket).min(LONGEST_INTERVAL))
    }
}

formula! {
    /// The interval after the corrections for temperature and service.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::corrected_interval;
    /// use oilway_units::{Ratio, Time};
    ///
    /// // 85 °C halves it, a vertical shaft halves it again.
    /// let interval = corrected_interval(Time::from_hours(1419.0), Ratio::from_fraction(0.5 * 0.5));
    /// assert_eq!(format!("{:.0}", interval.hours()), "355");
    /// ```
    CORRECTED_INTERVAL = "demand/corrected-interval",
    title: "Interval between two greasings after all corrections",
    equation: "t = f · t0, at most 30 000 h",
    validity: "f is the product of the corrections of one method: either demand/temperature-factor with 0.5 for a vertical shaft, 0.5 for a bore above 300 mm, or demand/service-factor. The two methods differ by up to a factor of three for the same hot bearing; their factors must not be mixed. The cap counts before and after the corrections, so that a slow bearing in rough service is shortened from 30 000 h.",
    sources: [
        "trade-bearing", "corrections multiply", Seen;
        "maintenance-training", "product of six factors", Memory
    ],
    fn corrected_interval(
        base: Time, "t0", "base interval", Range::NotNegative;
        factor: Ratio, "f", "product of the corrections", Range::NotNegative;
    ) -> Time, "t", "running time between two greasings" {
        (base * factor.fraction()).min(LONGEST_INTERVAL)
    }
}

formula! {
    /// The speed of a turning bearing that makes the same way in its races as an oscillating one.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::oscillation_speed;
    /// use oilway_units::{Angle, Frequency};
    ///
    /// // 20 swings a minute through 90° in all, 45° to either side.
    /// let speed = oscillation_speed(Frequency::from_per_minute(20.0), Angle::from_degrees(45.0));
    /// assert_eq!(format!("{:.1}", speed.per_minute()), "10.0");
    /// ```
    OSCILLATION_SPEED = "demand/oscillation-speed",
    title: "Turning speed equal to an oscillation",
    equation: "n = n_osc · 4 φ / 360°",
    validity: "Way for way. Below about 90° of total swing the lubricant is not carried along the race: treat the point as a slow bush and shorten the interval.",
    sources: [
        "own-derivation", "way of the rolling elements in one full swing", Own;
        "common-practice", "limit of 90° total swing", CommonPractice
    ],
    fn oscillation_speed(
        oscillations: Frequency, "n_osc", "full swings, there and back", Range::NotNegative;
        half_angle: Angle, "φ", "swing to either side of the middle", Range::NotNegative;
    ) -> Frequency, "n", "equal turning speed" {
        Frequency::from_per_second(oscillations.per_second() * 4.0 * half_angle.radians() / (2.0 * PI))
    }
}

formula! {
    /// The speed that counts in the interval rule where the outer ring turns.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::outer_ring_speed;
    /// use oilway_units::{Frequency, Length};
    ///
    /// let speed = outer_ring_speed(
    ///     Frequency::from_per_minute(600.0), Length::from_millimetres(80.0), Length::from_millimetres(140.0),
    /// );
    /// assert_eq!(format!("{:.1}", speed.per_minute()), "763.6");
    /// ```
    OUTER_RING_SPEED = "demand/outer-ring-speed",
    title: "Speed that counts where the outer ring of a bearing turns",
    equation: "n_eff = n · D / dm,  dm = (d + D) / 2",
    validity: "Outer ring turning, or an unbalanced weight on the shaft. The trade's rule puts n·D in the place of n·dm in the speed factor; carrying it over to the interval rule is this project's own step.",
    sources: [
        "trade-bearing", "n·D instead of n·dm", Seen;
        "own-derivation", "carried over to the interval rule", Own
    ],
    fn outer_ring_speed(
        speed: Frequency, "n", "speed of the outer ring", Range::NotNegative;
        bore: Length, "d", "bore of the bearing", Range::NotNegative;
        outside: Length, "D", "outside diameter of the bearing", Range::Positive;
    ) -> Frequency, "n_eff", "speed to put into the interval rule" {
        speed * (2.0 * outside.metres() / (bore.metres() + outside.metres()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn interval(bore: f64, speed: f64, k: f64) -> Option<f64> {
        grease_interval(
            Length::from_millimetres(bore),
            Frequency::from_per_minute(speed),
            Ratio::from_fraction(k),
        )
        .map(Time::hours)
    }

    #[test]
    fn the_factor_stands_before_the_whole_bracket() {
        // Exact value of the right form; the misprint would give 12 999 h.
        let right = 10.0 * (14e6 / (1500.0 * 50f64.sqrt()) - 200.0);
        assert!((interval(50.0, 1500.0, 10.0).unwrap() / right - 1.0).abs() < 1e-12);
    }

    #[test]
    fn the_rule_ends_exactly_where_its_bracket_closes() {
        // n√d·4d = 14e6 at d = 100: n = 3500.
        assert_eq!(interval(100.0, 3500.1, 1.0), None);
        assert!(interval(100.0, 3499.9, 1.0).is_some_and(|t| t < 0.02));
    }

    #[test]
    fn a_slow_bearing_gets_the_longest_interval_and_not_more() {
        assert_eq!(interval(25.0, 100.0, 10.0), Some(LONGEST_INTERVAL.hours()));
        assert_eq!(interval(25.0, 1e-300, 10.0), Some(LONGEST_INTERVAL.hours()));
        assert!(interval(25.0, 950.0, 10.0).is_some_and(|t| t < LONGEST_INTERVAL.hours()));
    }

    #[test]
    fn a_correction_above_one_does_not_pass_the_longest_interval() {
        let corrected = corrected_interval(Time::from_hours(20_000.0), Ratio::from_fraction(2.0));
        assert_eq!(corrected, LONGEST_INTERVAL);
    }

    #[test]
    fn a_half_turn_to_either_side_is_two_turns_a_swing() {
        let speed = oscillation_speed(Frequency::from_per_minute(7.0), Angle::from_degrees(180.0));
        assert!((speed.per_minute() - 14.0).abs() < 1e-12);
    }

    #[test]
    fn a_very_thin_ring_counts_the_same_from_either_side() {
        let (n, d) = (Frequency::from_per_minute(600.0), Length::from_millimetres(80.0));
        assert!((outer_ring_speed(n, d, d) / n - 1.0).abs() < 1e-15);
        assert!(outer_ring_speed(n, d, d * 2.0) > n);
    }
}
