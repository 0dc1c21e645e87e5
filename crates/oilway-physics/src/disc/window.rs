//! The window of set pressures: high enough to live, low enough to protect.

use oilway_units::{Pressure, Ratio};

use super::burst::FLOOR;
use crate::{Range, formula};

formula! {
    /// How near the working peak comes to the lowest burst pressure.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::disc::operating_ratio;
    /// use oilway_units::Pressure;
    ///
    /// let ratio = operating_ratio(Pressure::from_bar(155.0), Pressure::ZERO, Pressure::from_bar(237.5));
    /// assert_eq!(format!("{:.4}", ratio.fraction()), "0.6526");
    /// ```
    OPERATING_RATIO = "disc/operating-ratio",
    title: "Operating ratio of a disc: working peak over lowest burst pressure",
    equation: "r = (P − B) / D_min",
    validity: "The handbook reading, over the minimum burst pressure after tolerance; another reading in use divides by the marked pressure and gives a smaller number. The working pressure is the peak over cold, hot, highest air and pulsation, not the mean.",
    sources: [
        "zappe", "ch. 6, pages 216 and 223", Seen;
        "leckner", "part 4, back pressure", Seen
    ],
    fn operating_ratio(
        working: Pressure, "P", "highest working peak at the disc", Range::NotNegative;
        back_low: Pressure, "B", "lowest back pressure on the outlet side before bursting", Range::NotNegative;
        lowest_burst: Pressure, "D_min", "lowest pressure across the disc at which it bursts", Range::Positive;
    ) -> Ratio, "r", "share of the lowest burst pressure in use" {
        Ratio::from_fraction((working - back_low) / lowest_burst)
    }
}

formula! {
    /// The lowest set pressure with which a disc lives.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::disc::window_low;
    /// use oilway_units::{Pressure, Ratio};
    ///
    /// let low = window_low(
    ///     Pressure::from_bar(155.0), Pressure::ZERO, Ratio::from_fraction(0.7), Ratio::from_percent(5.0),
    ///     Ratio::from_fraction(1.0), Ratio::from_fraction(0.0),
    /// );
    /// assert_eq!(format!("{:.2}", low.bar()), "233.08");
    /// ```
    WINDOW_LOW = "disc/window-low",
    title: "Lowest set pressure of a disc that gives it a satisfactory life",
    equation: "S_lo = M / (1 − b);  M − t(M) = (P − B) / (r f_hot),  t = the larger of s M and 2 psi",
    validity: "The set pressure at which the operating ratio is just r. Zero where the back pressure alone carries the working peak. r is that of the disc type, lowered for cyclic service; no published derating for pulsation was found.",
    sources: [
        "zappe", "ch. 6, pages 216 and 223", Seen;
        "own-derivation", "inverse of disc/lowest-burst", Own
    ],
    fn window_low(
        working: Pressure, "P", "highest working peak at the disc", Range::NotNegative;
        back_low: Pressure, "B", "lowest back pressure on the outlet side before bursting", Range::NotNegative;
        ratio: Ratio, "r", "largest operating ratio of the disc type", Range::Between(0.05, 1.0);
        tolerance_share: Ratio, "s", "burst tolerance as a share of the mark; 5 % by the rule", Range::Between(0.0, 0.5);
        hot_factor: Ratio, "f_hot", "burst pressure at the hottest disc over that at the marking temperature", Range::Between(0.01, 5.0);
        range_minus: Ratio, "b", "manufacturing range downwards, as a share of the order", Range::Between(0.0, 0.5);
    ) -> Pressure, "S_lo", "lowest set pressure that lives" {
        let needed = (working - back_low) * (1.0 / (ratio.fraction() * hot_factor.fraction()));
        if needed <= Pressure::ZERO {
            return Pressure::ZERO;
        }
        // M − max(s M, 2 psi) grows with M, so each branch gives a bound and the larger one holds.
        let marked = (needed * (1.0 / (1.0 - tolerance_share.fraction()))).max(needed + FLOOR);
        marked * (1.0 / (1.0 - range_minus.fraction()))
    }
}

formula! {
    /// The highest set pressure with which a disc still protects the weakest part.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::disc::window_high;
    /// use oilway_units::{Pressure, Ratio};
    ///
    /// let high = window_high(
    ///     Pressure::from_bar(276.0), Pressure::from_bar(15.0), Ratio::from_percent(5.0), Ratio::from_fraction(1.0),
    ///     Ratio::from_fraction(0.0),
    /// );
    /// assert_eq!(format!("{:.2}", high.bar()), "248.57");
    /// ```
    WINDOW_HIGH = "disc/window-high",
    title: "Highest set pressure of a disc that protects the weakest part",
    equation: "S_hi = M / (1 + a);  M + t(M) = (R − B) / f_cold,  t = the larger of s M and 2 psi",
    validity: "Strict policy: the strongest disc of the lot, at its coldest, against the highest back pressure, bursts at or below the rating. The vessel code marks at the rating, so a disc may burst up to 5 % above it: that is another policy, never mixed in here. Zero where no set pressure protects.",
    sources: [
        "asme-viii-ug127", "UG-127(a)(1), 2015 text", Seen;
        "leckner", "part 4, back pressure", Seen;
        "own-derivation", "inverse of disc/highest-burst", Own
    ],
    fn window_high(
        rating: Pressure, "R", "rating of the weakest protected part at its temperature", Range::NotNegative;
        back_high: Pressure, "B", "highest back pressure on the outlet side before bursting", Range::NotNegative;
        tolerance_share: Ratio, "s", "burst tolerance as a share of the mark; 5 % by the rule", Range::Between(0.0, 0.5);
        cold_factor: Ratio, "f_cold", "burst pressure at the coldest disc over that at the marking temperature", Range::Between(0.01, 5.0);
        range_plus: Ratio, "a", "manufacturing range upwards, as a share of the order", Range::Between(0.0, 1.0);
    ) -> Pressure, "S_hi", "highest set pressure that protects" {
        let allowed = (rating - back_high) * (1.0 / cold_factor.fraction());
        let marked = (allowed * (1.0 / (1.0 + tolerance_share.fraction()))).min(allowed - FLOOR);
        marked.max(Pressure::ZERO) * (1.0 / (1.0 + range_plus.fraction()))
    }
}

formula! {
    /// The pressure difference that a disc stands for good.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::disc::steady_maximum;
    /// use oilway_units::{Pressure, Ratio};
    ///
    /// let steady = steady_maximum(Pressure::from_psi(150.0), Ratio::from_fraction(0.7));
    /// assert_eq!(format!("{:.0}", steady.psi()), "105");
    /// ```
    STEADY_MAXIMUM = "disc/steady-maximum",
    title: "Highest working peak across a disc",
    equation: "P_max = r D_min",
    validity: "Difference across the disc: add the lowest back pressure for the pressure at its inlet. Also the limit while a system is filled and primed.",
    sources: [
        "zappe", "ch. 6, page 223", Seen;
        "ludwig", "page 457, 105 psig at 0.70 asks for 150", Seen
    ],
    fn steady_maximum(
        lowest_burst: Pressure, "D_min", "lowest pressure across the disc at which it bursts", Range::NotNegative;
        ratio: Ratio, "r", "largest operating ratio of the disc type", Range::Between(0.0, 1.0);
    ) -> Pressure, "P_max", "highest working peak across the disc" {
        lowest_burst * ratio.fraction()
    }
}

#[cfg(test)]
mod tests {
    use super::super::{highest_burst, lowest_burst};
    use super::*;

    fn ratio(fraction: f64) -> Ratio {
        Ratio::from_fraction(fraction)
    }

    #[test]
    fn the_window_edges_walk_back_to_the_working_peak_and_to_the_rating() {
        for bar in [0.5, 1.7, 2.7579, 2.8, 20.0, 155.0, 700.0] {
            let p = Pressure::from_bar(bar);
            let low = window_low(p, Pressure::ZERO, ratio(0.7), ratio(0.05), ratio(0.8), ratio(0.05));
            let lowest = lowest_burst(low, ratio(0.05), ratio(0.05), ratio(0.8));
            assert!((operating_ratio(p, Pressure::ZERO, lowest).fraction() / 0.7 - 1.0).abs() < 1e-12);
            let high = window_high(p, Pressure::from_bar(0.1), ratio(0.05), ratio(1.2), ratio(0.1));
            let highest = highest_burst(high, ratio(0.1), ratio(0.05), ratio(1.2));
            assert!(((highest + Pressure::from_bar(0.1)) / p - 1.0).abs() < 1e-12);
        }
    }

    #[test]
    fn a_back_pressure_above_the_working_peak_asks_for_no_disc_strength() {
        let low = window_low(
            Pressure::from_bar(2.0),
            Pressure::from_bar(2.0),
            ratio(0.7),
            ratio(0.05),
            ratio(1.0),
            ratio(0.0),
        );
        assert_eq!(low, Pressure::ZERO);
    }

    #[test]
    fn a_rating_below_the_back_pressure_cannot_be_protected() {
        let high = window_high(
            Pressure::from_bar(2.0),
            Pressure::from_bar(3.0),
            ratio(0.05),
            ratio(1.0),
            ratio(0.0),
        );
        assert_eq!(high, Pressure::ZERO);
    }

    #[test]
    fn without_range_and_temperature_the_window_opens_at_1_58_times_the_peak() {
        // 1.05 / 0.95 / 0.70 = 1.5789: below it no set pressure serves, above it one does.
        let open = |factor: f64| {
            let p = Pressure::from_bar(100.0);
            let low = window_low(p, Pressure::ZERO, ratio(0.7), ratio(0.05), ratio(1.0), ratio(0.0));
            low <= window_high(p * factor, Pressure::ZERO, ratio(0.05), ratio(1.0), ratio(0.0))
        };
        assert!(!open(1.578));
        assert!(open(1.580));
    }
}
