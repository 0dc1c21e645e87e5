//! From a quantity and an interval to a rate, and back to the dose of one cycle.

use oilway_units::{Density, Flow, Mass, Time, Volume};

use crate::{Range, formula};

formula! {
    /// The volume of a mass of lubricant: bearing rules speak of grams, metering devices of cubic centimetres.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::volume_of_mass;
    /// use oilway_units::{Density, Mass};
    ///
    /// let volume = volume_of_mass(Mass::from_grams(9.0), Density::from_grams_per_cubic_centimetre(0.9));
    /// assert_eq!(format!("{:.2}", volume.cubic_centimetres()), "10.00");
    /// ```
    VOLUME_OF_MASS = "demand/mass-to-volume",
    title: "Volume of a mass of lubricant",
    equation: "V = G / ρ",
    validity: "Exact. Where no data sheet gives the density, 0.9 g/cm³ for grease and 0.88 g/cm³ for mineral oil are customary; heavily filled greases are denser.",
    sources: [
        "own-derivation", "definition of density", Own;
        "common-practice", "the two customary densities", CommonPractice
    ],
    fn volume_of_mass(
        mass: Mass, "G", "mass of the lubricant", Range::NotNegative;
        density: Density, "ρ", "its density", Range::Positive;
    ) -> Volume, "V", "volume" {
        Volume::from_cubic_metres(mass.kilograms() / density.kilograms_per_cubic_metre())
    }
}

formula! {
    /// The mean rate of a point that gets a quantity at every interval.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::mean_rate;
    /// use oilway_units::{Time, Volume};
    ///
    /// // A spherical roller bearing of bore 100 mm at 1500 a minute: 46 cm³ every 533.3 h.
    /// let rate = mean_rate(Volume::from_cubic_centimetres(46.0), Time::from_hours(533.333));
    /// assert_eq!(format!("{:.4}", rate.cubic_centimetres_per_hour()), "0.0863");
    /// ```
    MEAN_RATE = "demand/rate",
    title: "Mean rate of a quantity given at every interval",
    equation: "q = V / t",
    validity: "Exact as a mean. Running hours drive what wear asks for, calendar hours what sealing, washing-out and corrosion ask for: where both apply, work out both and take the larger rate.",
    sources: [
        "own-derivation", "definition of a mean rate", Own;
        "common-practice", "the larger of the two rates", CommonPractice
    ],
    fn mean_rate(
        quantity: Volume, "V", "volume given at each interval", Range::NotNegative;
        interval: Time, "t", "time from one replenishment to the next", Range::Positive;
    ) -> Flow, "q", "mean rate" {
        Flow::from_cubic_metres_per_second(quantity.cubic_metres() / interval.seconds())
    }
}

formula! {
    /// The volume that a point wants in each cycle of the system.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::dose_per_cycle;
    /// use oilway_units::{Flow, Time};
    ///
    /// let dose = dose_per_cycle(Flow::from_cubic_centimetres_per_hour(0.06), Time::from_minutes(30.0));
    /// assert_eq!(format!("{:.3}", dose.cubic_centimetres()), "0.030");
    /// ```
    DOSE_PER_CYCLE = "demand/dose-per-cycle",
    title: "Volume wanted by a point in each lubrication cycle",
    equation: "v = q · T",
    validity: "Exact. The dose at the point; what the line swallows by giving way, and the error of the metering device, come on top.",
    sources: ["own-derivation", "definition of a mean rate", Own],
    fn dose_per_cycle(
        rate: Flow, "q", "mean rate wanted by the point", Range::NotNegative;
        period: Time, "T", "time from one lubrication cycle to the next", Range::NotNegative;
    ) -> Volume, "v", "volume of one dose" {
        Volume::from_cubic_metres(rate.cubic_metres_per_second() * period.seconds())
    }
}

formula! {
    /// The least rate that keeps the lubricant in a point's own line from growing too old.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::freshness_rate;
    /// use oilway_units::{Time, Volume};
    ///
    /// // 78.5 cm³ between divider and pin, at most 52 weeks of 100 running hours.
    /// let rate = freshness_rate(Volume::from_cubic_centimetres(78.54), Time::from_hours(5200.0));
    /// assert_eq!(format!("{:.4}", rate.cubic_centimetres_per_hour()), "0.0151");
    /// ```
    FRESHNESS_RATE = "demand/freshness",
    title: "Least rate that keeps a point's own line fresh",
    equation: "q = V / a",
    validity: "Plug flow through the point's own line. Lubricant near the wall is older than the mean, so the limit deserves a reserve. A narrower line helps more than a larger dose.",
    sources: ["own-derivation", "content of the line over the age allowed", Own],
    fn freshness_rate(
        tail: Volume, "V", "content of the line that serves this point alone", Range::NotNegative;
        age: Time, "a", "largest age allowed at the point, in running time", Range::Positive;
    ) -> Flow, "q", "least mean rate" {
        Flow::from_cubic_metres_per_second(tail.cubic_metres() / age.seconds())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rate_times_its_interval_gives_the_quantity_back() {
        let (quantity, interval) = (Volume::from_cubic_centimetres(46.0), Time::from_hours(533.0));
        let back = dose_per_cycle(mean_rate(quantity, interval), interval);
        assert!((back / quantity - 1.0).abs() < 1e-15);
    }

    #[test]
    fn a_mass_weighs_what_its_volume_weighs() {
        let density = Density::from_kilograms_per_cubic_metre(890.0);
        let mass = Mass::from_grams(5.0);
        assert!((density * volume_of_mass(mass, density) / mass - 1.0).abs() < 1e-15);
    }

    #[test]
    fn an_empty_line_asks_for_nothing() {
        assert_eq!(freshness_rate(Volume::ZERO, Time::from_weeks(52.0)), Flow::ZERO);
    }

    #[test]
    fn at_the_freshness_rate_the_line_is_changed_once_in_the_age_allowed() {
        let (tail, age) = (Volume::from_cubic_centimetres(80.0), Time::from_hours(5000.0));
        assert!(((tail / freshness_rate(tail, age)) / age - 1.0).abs() < 1e-15);
    }
}
