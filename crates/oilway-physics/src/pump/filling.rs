//! Filling, priming and age: volumes over flows, and the force on a lid that nobody expects.

use oilway_units::{Flow, Force, Length, Pressure, Time, Volume};

use crate::air::piston_area;
use crate::{Range, formula};

formula! {
    /// How old the lubricant is when it leaves the line at a point.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pump::age_at_point;
    /// use oilway_units::{Flow, Volume};
    ///
    /// // A branch that holds 48 cm³ and gets 0.4 cm³ a day.
    /// let age = age_at_point(Volume::from_cubic_centimetres(48.0), Flow::from_cubic_centimetres_per_hour(0.4 / 24.0));
    /// assert_eq!(format!("{:.0}", age.days()), "120");
    /// ```
    AGE = "pump/age",
    title: "Age of the lubricant at a point",
    equation: "t = V / Q",
    validity: "Plug flow: first in, first out, which grease does best. V is all that lies between the reservoir and the point, each part over the flow through it: add the ages of lines that share their flow.",
    sources: [
        "own-derivation", "volume over flow", Own
    ],
    fn age_at_point(
        content: Volume, "V", "content of the line on the way", Range::NotNegative;
        rate: Flow, "Q", "mean flow through it", Range::Positive;
    ) -> Time, "t", "time on the way" {
        content / rate
    }
}

formula! {
    /// Time to fill empty lines.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pump::priming_time;
    /// use oilway_units::{Flow, Volume};
    ///
    /// let time = priming_time(
    ///     Volume::from_cubic_centimetres(4122.0), Flow::from_cubic_centimetres_per_minute(100.0),
    /// );
    /// assert_eq!(format!("{:.1}", time.minutes()), "41.2");
    /// ```
    PRIMING_TIME = "pump/priming-time",
    title: "Time to fill empty lines",
    equation: "t = V / Q",
    validity: "The pump keeps its delivery while the back pressure of the growing plug rises. Open every end, fill the nearest first, close when lubricant comes without air. The burst disc stays in place, and no bearing may see the pressure of the main.",
    sources: [
        "own-derivation", "volume over flow", Own;
        "common-practice", "order of filling", CommonPractice
    ],
    fn priming_time(
        content: Volume, "V", "content of all lines to be filled", Range::NotNegative;
        delivery: Flow, "Q", "delivery of the pump", Range::Positive;
    ) -> Time, "t", "time to fill" {
        content / delivery
    }
}

formula! {
    /// Force with which a pressure lifts the lid of a reservoir.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pump::lid_force;
    /// use oilway_units::{Length, Pressure};
    ///
    /// let force = lid_force(Pressure::from_bar(1.0), Length::from_millimetres(300.0));
    /// assert_eq!(format!("{:.2}", force.kilonewtons()), "7.07");
    /// ```
    LID_FORCE = "pump/lid-force",
    title: "Force on the lid of a reservoir",
    equation: "F = p π D²/4",
    validity: "A fill pump dead-heads at its ratio times the air, while a reservoir is a vessel without pressure: keep the vent open, stop the fill pump's air at the high level, let an overflow be seen, and stay with it.",
    sources: [
        "own-derivation", "pressure on a round lid", Own
    ],
    fn lid_force(
        pressure: Pressure, "p", "pressure in the reservoir", Range::NotNegative;
        diameter: Length, "D", "diameter of the lid", Range::NotNegative;
    ) -> Force, "F", "force on the lid" {
        pressure * piston_area(diameter)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_empty_line_ages_nothing_and_half_the_flow_ages_twice() {
        let age = |v: f64, q: f64| {
            age_at_point(Volume::from_cubic_centimetres(v), Flow::from_cubic_centimetres_per_hour(q)).hours()
        };
        assert_eq!(age(0.0, 1.0), 0.0);
        assert!((age(10.0, 0.5) - 2.0 * age(10.0, 1.0)).abs() < 1e-12);
        assert!((age(10.0, 2.5) - 4.0).abs() < 1e-12);
    }

    #[test]
    fn two_lines_fill_one_after_the_other() {
        let fill = |v: f64| priming_time(Volume::from_litres(v), Flow::from_litres_per_minute(0.1)).seconds();
        assert!((fill(2.5) + fill(1.6) - fill(4.1)).abs() < 1e-9);
    }

    #[test]
    fn a_lid_under_no_pressure_lies_still() {
        assert_eq!(lid_force(Pressure::ZERO, Length::from_metres(1.0)), Force::ZERO);
        let one = lid_force(Pressure::from_pascals(1.0), Length::from_metres(2.0)).newtons();
        assert!((one - core::f64::consts::PI).abs() < 1e-14);
    }
}
