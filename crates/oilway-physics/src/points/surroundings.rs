//! What dirt, water, heat and standing still do to a rate.

use oilway_units::{Count, Flow, Ratio, Temperature};

use super::working::{Kept, Working};
use super::{Demand, NoDemand};
use crate::{Formula, Range, formula};

/// From here grease counts as warm: the interval rule of bearings begins to shorten.
const WARM: f64 = 70.0;
/// From here it counts as hot: that rule has halved the interval.
const HOT: f64 = 85.0;

formula! {
    /// The multiplier of a film-renewal rate for dirt, water and heat.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::points::surroundings_multiplier;
    /// use oilway_units::{Count, Temperature};
    ///
    /// // Splashed with water (2) at 60 °C, hardly any dirt.
    /// let (clean, splash) = (Count::from_number(0.0), Count::from_number(2.0));
    /// assert_eq!(surroundings_multiplier(clean, splash, Temperature::from_celsius(60.0)).fraction(), 3.0);
    /// ```
    SURROUNDINGS_MULTIPLIER = "points/surroundings",
    title: "Multiplier of a film rate for dirt, water and heat",
    equation: "m = 1 + max(dirt, water, heat);  heat = 0 below 70 °C, 1 below 85 °C, else 2",
    validity: "Grades: dirt 0 none, 1 dust, 2 heavy, 3 abrasive; water 0 dry, 1 damp, 2 splash, 3 spray or washing. Practice gives only the ends, 1 for clean and dry to 4; the grades between are judged, and so is that the worst of the three counts and not their sum. A first value, never an acceptance limit.",
    sources: [
        "common-practice", "film-renewal rule: times 1 to 4 for dirt, water, heat", CommonPractice;
        "own-derivation", "grades between the ends, steps of temperature", Own
    ],
    fn surroundings_multiplier(
        dirt: Count, "dirt", "grade of dirt", Range::Between(0.0, 3.0);
        water: Count, "water", "grade of water", Range::Between(0.0, 3.0);
        temperature: Temperature, "T", "temperature of the point", Range::Positive;
    ) -> Ratio, "m", "multiplier" {
        let celsius = temperature.celsius();
        let heat = if celsius >= HOT { 2.0 } else if celsius >= WARM { 1.0 } else { 0.0 };
        Ratio::from_fraction(1.0 + dirt.max(water).number().max(heat).clamp(0.0, 3.0))
    }
}

formula! {
    /// A film-renewal rate in its surroundings.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::points::rate_in_surroundings;
    /// use oilway_units::{Flow, Ratio};
    ///
    /// let rate = rate_in_surroundings(Flow::from_cubic_centimetres_per_hour(0.02), Ratio::from_fraction(4.0));
    /// assert_eq!(format!("{:.2}", rate.cubic_centimetres_per_hour()), "0.08");
    /// ```
    RATE_IN_SURROUNDINGS = "points/rate-in-surroundings",
    title: "Film rate in its surroundings",
    equation: "q = m · q0",
    validity: "For film-renewal rates of sliding parts. Rolling bearings have factors of their own on the interval.",
    sources: ["common-practice", "film-renewal rule: times 1 to 4", CommonPractice],
    fn rate_in_surroundings(
        rate: Flow, "q0", "rate where it is clean, dry and cool", Range::NotNegative;
        multiplier: Ratio, "m", "multiplier for dirt, water and heat", Range::NotNegative;
    ) -> Flow, "q", "rate" {
        rate * multiplier.fraction()
    }
}

formula! {
    /// The share of a film rate that washing-out and sealing ask for even while the point stands.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::points::film_standing_share;
    /// use oilway_units::{Count, Ratio};
    ///
    /// // Spray (3) makes the rate four times as large: three quarters of it are for the water.
    /// let (clean, spray) = (Count::from_number(0.0), Count::from_number(3.0));
    /// assert_eq!(film_standing_share(clean, spray, Ratio::from_fraction(4.0)).fraction(), 0.75);
    /// ```
    FILM_STANDING_SHARE = "points/film-standing-share",
    title: "Share of a film rate that dirt and water ask for",
    equation: "p = max(dirt, water) / m",
    validity: "Of the multiplier m, 1 and what heat adds belong to wear; what dirt or water add is for sealing and against washing-out, which does not wait until the point moves. This project's reading of the rule that wear follows running and washing does not.",
    sources: [
        "common-practice", "wear follows running hours, sealing and washing-out do not", CommonPractice;
        "own-derivation", "the split of the multiplier", Own
    ],
    fn film_standing_share(
        dirt: Count, "dirt", "grade of dirt", Range::Between(0.0, 3.0);
        water: Count, "water", "grade of water", Range::Between(0.0, 3.0);
        multiplier: Ratio, "m", "multiplier for dirt, water and heat", Range::Between(1.0, 4.0);
    ) -> Ratio, "p", "share" {
        Ratio::from_fraction(dirt.max(water).number() / multiplier.fraction())
    }
}

formula! {
    /// The share of a rolling bearing's rate that dirt and water ask for even while it stands.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::points::bearing_standing_share;
    /// use oilway_units::Ratio;
    ///
    /// let [clean, wet, quiet] = [1.0, 0.1, 1.0].map(Ratio::from_fraction);
    /// assert_eq!(bearing_standing_share(clean, wet, quiet).fraction(), 0.9);
    /// ```
    BEARING_STANDING_SHARE = "points/bearing-standing-share",
    title: "Share of a rolling bearing's rate that dirt and water ask for",
    equation: "p = Fv · (1 − Fc · Fm)",
    validity: "The rate is 1/(Fc·Fm·Fv) times that of a clean, dry, quiet bearing; what dirt and water add, 1/(Fc·Fm) − 1, is for sealing and against washing-out. This project's reading of the rule that wear follows running and washing does not.",
    sources: [
        "common-practice", "wear follows running hours, sealing and washing-out do not", CommonPractice;
        "own-derivation", "the split of the factors", Own
    ],
    fn bearing_standing_share(
        contamination: Ratio, "Fc", "factor of the interval for dirt", Range::Between(0.0, 1.0);
        moisture: Ratio, "Fm", "factor of the interval for water", Range::Between(0.0, 1.0);
        vibration: Ratio, "Fv", "factor of the interval for vibration", Range::Between(0.0, 1.0);
    ) -> Ratio, "p", "share" {
        Ratio::from_fraction(vibration.fraction() * (1.0 - contamination.fraction() * moisture.fraction()))
    }
}

formula! {
    /// The mean rate over the machine's running time of a point that moves only part of it.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::points::moving_share;
    /// use oilway_units::{Flow, Ratio};
    ///
    /// let full = Flow::from_cubic_centimetres_per_hour(0.1);
    /// let rate = moving_share(full, Ratio::from_fraction(0.6), Ratio::from_fraction(0.0));
    /// assert_eq!(format!("{:.3}", rate.cubic_centimetres_per_hour()), "0.060");
    /// ```
    MOVING_SHARE = "points/moving-share",
    title: "Mean rate of a point that moves part of the time",
    equation: "q = q1 · max(s, p)",
    validity: "A mean over the machine's running time. Wear asks only while the point moves, sealing and washing-out also while it stands: the larger of the two counts.",
    sources: ["common-practice", "the larger of both rates", CommonPractice],
    fn moving_share(
        rate: Flow, "q1", "rate of the point while it moves", Range::NotNegative;
        moving: Ratio, "s", "share of the machine's running time in which the point moves", Range::Between(0.0, 1.0);
        standing: Ratio, "p", "share of the rate that sealing and washing-out ask for", Range::Between(0.0, 1.0);
    ) -> Flow, "q", "mean rate" {
        rate * moving.max(standing).fraction()
    }
}

/// The demand of a sliding point from the rate that it has where it is clean, dry and cool.
pub(super) fn film_demand(
    mut working: Working<'_>,
    rate: Kept<Flow>,
    rule: &'static Formula,
) -> Result<Demand, NoDemand> {
    let (dirt, water, temperature) = (working.dirt(), working.water(), working.temperature());
    let multiplier = working.keep(
        "multiplier",
        &SURROUNDINGS_MULTIPLIER,
        surroundings_multiplier(dirt.value, water.value, temperature.value),
        &[dirt.into(), water.into(), temperature.into()],
    );
    let rough = working.keep(
        "rate.surroundings",
        &RATE_IN_SURROUNDINGS,
        rate_in_surroundings(rate.value, multiplier.value),
        &[rate.into(), multiplier.into()],
    );
    let standing = working.keep(
        "standing",
        &FILM_STANDING_SHARE,
        film_standing_share(dirt.value, water.value, multiplier.value),
        &[dirt.into(), water.into(), multiplier.into()],
    );
    working.demand(rough, standing, rule)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demand::tables::{FILM_MULTIPLIER, FILM_SURROUNDINGS};

    fn multiplier(dirt: f64, water: f64, celsius: f64) -> f64 {
        let count = Count::from_number;
        surroundings_multiplier(count(dirt), count(water), Temperature::from_celsius(celsius)).fraction()
    }

    #[test]
    fn the_grades_are_those_of_the_table_and_stay_between_its_ends() {
        for (grade, row) in FILM_SURROUNDINGS.iter().enumerate() {
            assert_eq!(multiplier(grade as f64, 0.0, 20.0), row.1);
            assert_eq!(multiplier(0.0, grade as f64, 20.0), row.1);
        }
        assert_eq!(multiplier(3.0, 3.0, 200.0), FILM_MULTIPLIER.value.1);
    }

    #[test]
    fn heat_counts_from_seventy_degrees_and_more_from_eighty_five() {
        assert_eq!([69.9, 70.1, 84.9, 85.1].map(|t| multiplier(0.0, 0.0, t)), [1.0, 2.0, 2.0, 3.0]);
    }

    #[test]
    fn the_worst_counts_and_not_the_sum() {
        assert_eq!(multiplier(1.0, 2.0, 72.0), multiplier(0.0, 2.0, 20.0));
    }

    #[test]
    fn a_point_that_stands_in_the_clean_needs_nothing_and_in_the_spray_nearly_all() {
        let (full, none) = (Flow::from_cubic_centimetres_per_hour(1.0), Ratio::ZERO);
        assert_eq!(moving_share(full, none, none), Flow::ZERO);
        let [one, tenth] = [1.0, 0.1].map(Ratio::from_fraction);
        assert_eq!(moving_share(full, none, bearing_standing_share(one, one, one)), Flow::ZERO);
        let washed = moving_share(full, none, bearing_standing_share(one, tenth, one));
        assert!((washed.cubic_centimetres_per_hour() - 0.9).abs() < 1e-12);
    }

    #[test]
    fn what_stands_and_what_moves_make_up_the_multiplier() {
        // Second route: wear m·s against sealing w − 1, both over m.
        for (dirt, water) in [(0.0, 0.0), (1.0, 0.0), (0.0, 3.0), (2.0, 1.0)] {
            let m = multiplier(dirt, water, 20.0);
            let share = film_standing_share(
                Count::from_number(dirt),
                Count::from_number(water),
                Ratio::from_fraction(m),
            );
            assert!((share.fraction() - (m - 1.0) / m).abs() < 1e-15);
        }
    }
}
