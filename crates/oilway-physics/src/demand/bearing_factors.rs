//! Corrections of the greasing interval, by two methods that must not be mixed.

use oilway_units::{Ratio, Temperature};

use super::ROUNDING;
use crate::{Range, formula};

formula! {
    /// The correction of the greasing interval for the bearing's temperature, by the trade's rule of 15 kelvins.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::temperature_factor;
    /// use oilway_units::Temperature;
    ///
    /// let factor = |celsius| temperature_factor(Temperature::from_celsius(celsius)).fraction();
    /// assert_eq!(format!("{:.2} {:.2} {:.2}", factor(85.0), factor(100.0), factor(40.0)), "0.50 0.25 2.00");
    /// ```
    TEMPERATURE_FACTOR = "demand/temperature-factor",
    title: "Correction of the greasing interval for temperature",
    equation: "f = 2^((70 °C − T) / 15 K), at most 2",
    validity: "T at the outer ring, up to the grease's own limit. Below 70 °C the interval may double once and not more. Other pages halve it in 10 to 15 K. Not together with demand/housing-temperature-factor.",
    sources: [
        "trade-bearing", "half for every 15 K above 70 °C, two independent pages; doubling once below", Seen
    ],
    fn temperature_factor(
        temperature: Temperature, "T", "temperature of the outer ring", Range::Positive;
    ) -> Ratio, "f", "multiplies the interval" {
        Ratio::from_fraction(libm::exp2((70.0 - temperature.celsius()) / 15.0).min(2.0))
    }
}

formula! {
    /// The correction of the greasing interval for temperature, by a military handbook.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::temperature_factor_handbook;
    /// use oilway_units::Temperature;
    ///
    /// let factor = temperature_factor_handbook(Temperature::from_fahrenheit(200.0));
    /// assert_eq!(format!("{:.3}", factor.fraction()), "0.250");
    /// ```
    TEMPERATURE_FACTOR_HANDBOOK = "demand/temperature-factor-handbook",
    title: "Correction of the greasing interval for temperature, by a military handbook",
    equation: "f = 0.5^((T − 150 °F) / 25 °F) above 150 °F, else 1",
    validity: "The handbook halves the time between flushing and repacking for every 25 °F (14 K) above 150 °F (65 °C) and says nothing of cooler bearings, where 1 is kept. A second opinion beside demand/temperature-factor, never a further factor.",
    sources: ["mil-hdbk-1164", "11.6.4 d", Seen],
    fn temperature_factor_handbook(
        temperature: Temperature, "T", "temperature of the bearing", Range::Positive;
    ) -> Ratio, "f", "multiplies the interval" {
        Ratio::from_fraction(libm::exp2((150.0 - temperature.fahrenheit()) / 25.0).min(1.0))
    }
}

formula! {
    /// The temperature factor of the factor-product method, in steps.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::housing_temperature_factor;
    /// use oilway_units::Temperature;
    ///
    /// let factor = |celsius| housing_temperature_factor(Temperature::from_celsius(celsius)).fraction();
    /// assert_eq!([factor(60.0), factor(65.0), factor(80.0), factor(93.0), factor(93.1)], [1.0, 0.5, 0.2, 0.2, 0.1]);
    /// ```
    HOUSING_TEMPERATURE_FACTOR = "demand/housing-temperature-factor",
    title: "Temperature factor of the factor-product method",
    equation: "F = 1.0 below 65 °C; 0.5 from 65 to 80 °C; 0.2 from 80 to 93 °C; 0.1 above",
    validity: "Temperature of the housing. Part of demand/service-factor; not together with demand/temperature-factor. Where two steps touch, the shorter interval is taken.",
    sources: ["maintenance-training", "table of Ft", Memory],
    fn housing_temperature_factor(
        temperature: Temperature, "T", "temperature of the housing", Range::Positive;
    ) -> Ratio, "F", "multiplies the interval" {
        // A step is reached when the temperature is reached, whatever the last bit of its conversion says.
        let reached = |celsius: f64| temperature.kelvin() >= (celsius + 273.15) * (1.0 - ROUNDING);
        let passed = |celsius: f64| temperature.kelvin() > (celsius + 273.15) * (1.0 + ROUNDING);
        Ratio::from_fraction(if passed(93.0) {
            0.1
        } else if reached(80.0) {
            0.2
        } else if reached(65.0) {
            0.5
        } else {
            1.0
        })
    }
}

formula! {
    /// The product of the five service factors of the factor-product method; the sixth is the bearing factor of the interval.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::service_factor;
    /// use oilway_units::Ratio;
    ///
    /// let [hot, dusty, damp, quiet, level] = [0.5, 0.7, 0.7, 1.0, 1.0].map(Ratio::from_fraction);
    /// assert_eq!(format!("{:.3}", service_factor(hot, dusty, damp, quiet, level).fraction()), "0.245");
    /// ```
    SERVICE_FACTOR = "demand/service-factor",
    title: "Product of the service factors of the factor-product method",
    equation: "F = Ft · Fc · Fm · Fv · Fp",
    validity: "Ft from demand/housing-temperature-factor, the others from the tables of contamination, moisture, vibration and shaft position. All six tables stand from memory; equation and bearing factors agree with a second source. For a hot bearing it gives down to a third of the interval of the trade's corrections (at 80 °C), for a vertical shaft three fifths: state which method was used and show the other.",
    sources: ["maintenance-training", "factor-product method", Memory],
    fn service_factor(
        temperature_factor: Ratio, "Ft", "housing temperature", Range::Between(0.0, 1.0);
        contamination: Ratio, "Fc", "solid contamination", Range::Between(0.0, 1.0);
        moisture: Ratio, "Fm", "moisture", Range::Between(0.0, 1.0);
        vibration: Ratio, "Fv", "vibration", Range::Between(0.0, 1.0);
        position: Ratio, "Fp", "position of the shaft", Range::Between(0.0, 1.0);
    ) -> Ratio, "F", "multiplies the interval" {
        let surroundings = contamination.fraction() * moisture.fraction();
        Ratio::from_fraction(temperature_factor.fraction() * surroundings * vibration.fraction() * position.fraction())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn celsius(value: f64) -> Temperature {
        Temperature::from_celsius(value)
    }

    #[test]
    fn seventy_degrees_need_no_correction() {
        assert!((temperature_factor(celsius(70.0)).fraction() - 1.0).abs() < 1e-12);
    }

    #[test]
    fn below_fifty_five_degrees_the_interval_is_doubled_once_and_not_again() {
        assert_eq!(temperature_factor(celsius(54.9)).fraction(), 2.0);
        assert!(temperature_factor(celsius(55.1)).fraction() < 2.0);
        assert_eq!(temperature_factor(celsius(-40.0)).fraction(), 2.0);
    }

    #[test]
    fn the_handbook_begins_at_a_hundred_and_fifty_degrees_fahrenheit() {
        let factor = |f| temperature_factor_handbook(Temperature::from_fahrenheit(f)).fraction();
        assert_eq!(factor(149.0), 1.0);
        assert!((factor(151.0) - 0.5f64.powf(1.0 / 25.0)).abs() < 1e-12);
    }

    #[test]
    fn the_two_temperature_rules_part_most_at_eighty_degrees_and_there_by_a_factor_of_three() {
        // By hand: 2^(−10/15) / 0.2 = 3.15. What is said of the two methods in their validity rests on this.
        let ratio = |t: f64| {
            temperature_factor(celsius(t)).fraction() / housing_temperature_factor(celsius(t)).fraction()
        };
        assert!((ratio(80.0) - 3.15).abs() < 0.005);
        assert!((70..=93).all(|t| (1.0..=ratio(80.0)).contains(&ratio(f64::from(t)))));
    }

    #[test]
    fn a_step_given_in_fahrenheit_is_the_same_step() {
        // 65 °C is 149 °F exactly.
        assert_eq!(housing_temperature_factor(Temperature::from_fahrenheit(149.0)).fraction(), 0.5);
        assert_eq!(housing_temperature_factor(Temperature::from_fahrenheit(148.9)).fraction(), 1.0);
    }

    #[test]
    fn one_bad_factor_is_enough_to_shorten_the_interval() {
        let one = Ratio::from_fraction(1.0);
        assert_eq!(service_factor(one, one, one, one, one), one);
        let wet = Ratio::from_fraction(0.1);
        assert_eq!(service_factor(one, one, wet, one, one), wet);
    }
}
