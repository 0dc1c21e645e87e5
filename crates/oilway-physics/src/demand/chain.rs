//! Roller chains: drops by the minute, or a shot for each joint.

use oilway_units::{Count, Flow, Frequency, Volume};

use crate::{Range, formula};

formula! {
    /// The oil that a drip feed gives a chain.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::chain_drops;
    /// use oilway_units::{Frequency, Volume};
    ///
    /// let rate = chain_drops(Frequency::from_per_minute(10.0), Volume::from_cubic_centimetres(0.04));
    /// assert_eq!(format!("{:.1}", rate.cubic_centimetres_per_hour()), "24.0");
    /// ```
    CHAIN_DROPS = "demand/chain-drops",
    title: "Oil of a drip feed",
    equation: "q = Nd · Vd",
    validity: "Drops by the minute follow from the chain's speed, for each strand. A drop is 0.03 to 0.05 cm³: practice, no source. Chains want oil; grease does not reach the joints in normal use.",
    sources: [
        "neale-1995", "C9, drops by the minute; B2, no grease", Seen;
        "common-practice", "volume of a drop", CommonPractice
    ],
    fn chain_drops(
        drops: Frequency, "Nd", "drops in a time", Range::NotNegative;
        drop: Volume, "Vd", "volume of a drop", Range::Positive;
    ) -> Flow, "q", "mean oil rate" {
        drop * drops
    }
}

formula! {
    /// The oil of one automatic application to a chain: a shot for each joint.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::chain_shots;
    /// use oilway_units::{Count, Volume};
    ///
    /// let oil = chain_shots(Count::from_number(120.0), Volume::from_cubic_centimetres(0.02));
    /// assert_eq!(format!("{:.1}", oil.cubic_centimetres()), "2.4");
    /// ```
    CHAIN_SHOTS = "demand/chain-shots",
    title: "Oil of one application to all joints of a chain",
    equation: "v = i · vp",
    validity: "One revolution of the chain. A shot is 0.01 to 0.05 cm³ for each joint, repeated every 8 to 40 h of running: practice, no source. Count both strands' joints of a double chain.",
    sources: ["common-practice", "shots for chains", CommonPractice],
    fn chain_shots(
        links: Count, "i", "joints of the chain", Range::NotNegative;
        shot: Volume, "vp", "volume of a shot", Range::Positive;
    ) -> Volume, "v", "oil of one application" {
        shot * links.number()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shots_cost_a_fraction_of_the_slowest_drip() {
        // 5 drops a minute of 0.04 cm³ against 120 joints of 0.05 cm³ every 8 h: the reason for giving shots.
        let drip = chain_drops(Frequency::from_per_minute(5.0), Volume::from_cubic_centimetres(0.04));
        let shots = chain_shots(Count::from_number(120.0), Volume::from_cubic_centimetres(0.05));
        let rate = shots.cubic_centimetres() / 8.0;
        assert!((drip.cubic_centimetres_per_hour() - 12.0).abs() < 1e-12);
        assert!(rate < 0.1 * drip.cubic_centimetres_per_hour());
    }

    #[test]
    fn sixty_drops_a_minute_are_one_a_second() {
        let drop = Volume::from_cubic_millimetres(40.0);
        let rate = chain_drops(Frequency::from_per_minute(60.0), drop);
        assert!((rate.cubic_metres_per_second() / drop.cubic_metres() - 1.0).abs() < 1e-15);
    }
}
