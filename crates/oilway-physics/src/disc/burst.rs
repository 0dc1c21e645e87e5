//! From the ordered pressure to the lowest and the highest pressure at which a disc of the lot can burst.

use oilway_units::{Pressure, Ratio};

use crate::{Range, formula};

/// The share of the rule above 40 psi.
const SHARE: f64 = 0.05;

/// The tolerance around a marked pressure: a share of it, and never less than the 2 psi of the rule. A floor instead of
/// two branches: at the rule's 5 % both meet at 40 psi, so the two readings are the same.
pub(super) fn tolerance(marked: Pressure, share: Ratio) -> Pressure {
    (marked * share.fraction()).max(FLOOR)
}

/// The 2 psi of the rule.
pub(super) const FLOOR: Pressure = Pressure::from_psi(2.0);

formula! {
    /// How far a single disc may burst above or below the pressure marked on it.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::disc::burst_tolerance;
    /// use oilway_units::Pressure;
    ///
    /// assert_eq!(format!("{:.2}", burst_tolerance(Pressure::from_psi(30.0)).psi()), "2.00");
    /// assert_eq!(format!("{:.2}", burst_tolerance(Pressure::from_bar(250.0)).bar()), "12.50");
    /// ```
    BURST_TOLERANCE = "disc/tolerance",
    title: "Burst tolerance of a disc by its marked pressure",
    equation: "t = 2 psi if M ≤ 40 psi, else 0.05 M",
    validity: "The tolerance that the vessel code allows. A disc maker's certificate wins where it is tighter or wider. The metric text of the rule rounds to 15 kPa up to 300 kPa, which is 0.012 bar more than 2 psi.",
    sources: [
        "asme-viii-ug127", "UG-127(a)(1), 2015 text", Seen
    ],
    fn burst_tolerance(
        marked: Pressure, "M", "burst pressure marked on the disc", Range::NotNegative;
    ) -> Pressure, "t", "largest difference between burst pressure and mark" {
        tolerance(marked, Ratio::from_fraction(SHARE))
    }
}

formula! {
    /// The lowest pressure difference at which a disc of this order can burst.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::disc::lowest_burst;
    /// use oilway_units::{Pressure, Ratio};
    ///
    /// // An aluminium disc of 250 bar in a hot place: factor 0.78 at 100 °C.
    /// let lowest = lowest_burst(
    ///     Pressure::from_bar(250.0), Ratio::from_fraction(0.0), Ratio::from_percent(5.0), Ratio::from_fraction(0.78),
    /// );
    /// assert_eq!(format!("{:.2}", lowest.bar()), "185.25");
    /// ```
    LOWEST_BURST = "disc/lowest-burst",
    title: "Lowest pressure difference at which a disc of the lot bursts",
    equation: "D_min = (M − t) f_hot;  M = S (1 − b),  t = the larger of s M and 2 psi",
    validity: "A sound disc, the right way round, in its own holder. Pulsation and fatigue are not in it: they are the operating ratio's. A disc in hand has b = 0 and S = its mark. No tolerance below 2 psi is credited, whatever is declared.",
    sources: [
        "zappe", "ch. 6, pages 216 and 222", Seen;
        "asme-viii-ug127", "UG-127(a)(1), 2015 text", Seen;
        "own-derivation", "chain from order to burst", Own
    ],
    fn lowest_burst(
        specified: Pressure, "S", "burst pressure ordered, or marked on a disc in hand", Range::NotNegative;
        range_minus: Ratio, "b", "manufacturing range downwards, as a share of the order", Range::Between(0.0, 0.5);
        tolerance_share: Ratio, "s", "burst tolerance as a share of the mark; 5 % by the rule", Range::Between(0.0, 0.5);
        hot_factor: Ratio, "f_hot", "burst pressure at the hottest disc over that at the marking temperature", Range::Between(0.0, 5.0);
    ) -> Pressure, "D_min", "lowest pressure across the disc at which it bursts" {
        let marked = specified * (1.0 - range_minus.fraction());
        let weakest = marked - tolerance(marked, tolerance_share);
        weakest.max(Pressure::ZERO) * hot_factor.fraction()
    }
}

formula! {
    /// The highest pressure difference at which a disc of this order can still be whole.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::disc::highest_burst;
    /// use oilway_units::{Pressure, Ratio};
    ///
    /// // The same aluminium disc in the cold: it is stronger, which is the unsafe direction.
    /// let highest = highest_burst(
    ///     Pressure::from_bar(250.0), Ratio::from_fraction(0.0), Ratio::from_percent(5.0), Ratio::from_fraction(1.08),
    /// );
    /// assert_eq!(format!("{:.1}", highest.bar()), "283.5");
    /// ```
    HIGHEST_BURST = "disc/highest-burst",
    title: "Highest pressure difference at which a disc of the lot bursts",
    equation: "D_max = (M + t) f_cold;  M = S (1 + a),  t = the larger of s M and 2 psi",
    validity: "A sound disc, the right way round, in its own holder: one that is turned round, stacked, shimmed or in another hole bursts at another pressure. A disc in hand has a = 0 and S = its mark. No tolerance below 2 psi is credited, whatever is declared.",
    sources: [
        "zappe", "ch. 6, pages 216 and 222", Seen;
        "asme-viii-ug127", "UG-127(a)(1), 2015 text", Seen;
        "own-derivation", "chain from order to burst", Own
    ],
    fn highest_burst(
        specified: Pressure, "S", "burst pressure ordered, or marked on a disc in hand", Range::NotNegative;
        range_plus: Ratio, "a", "manufacturing range upwards, as a share of the order", Range::Between(0.0, 1.0);
        tolerance_share: Ratio, "s", "burst tolerance as a share of the mark; 5 % by the rule", Range::Between(0.0, 0.5);
        cold_factor: Ratio, "f_cold", "burst pressure at the coldest disc over that at the marking temperature", Range::Between(0.0, 5.0);
    ) -> Pressure, "D_max", "highest pressure across the disc at which it bursts" {
        let marked = specified * (1.0 + range_plus.fraction());
        (marked + tolerance(marked, tolerance_share)) * cold_factor.fraction()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ratio(fraction: f64) -> Ratio {
        Ratio::from_fraction(fraction)
    }

    #[test]
    fn both_branches_of_the_rule_meet_at_40_psi() {
        let at = |psi: f64| burst_tolerance(Pressure::from_psi(psi)).psi();
        assert_eq!(at(39.0), at(1.0));
        assert!((at(40.0) - 2.0).abs() < 1e-12);
        assert!((at(41.0) - 2.05).abs() < 1e-12);
    }

    #[test]
    fn a_disc_below_its_own_tolerance_may_burst_at_nothing() {
        let lowest = lowest_burst(Pressure::from_psi(1.5), ratio(0.0), ratio(0.05), ratio(1.0));
        assert_eq!(lowest, Pressure::ZERO);
    }

    #[test]
    fn the_chain_agrees_with_the_rule_walked_branch_by_branch() {
        // Second route: the two branches as the rule prints them.
        for psi in [5.0, 39.9, 40.0, 40.1, 41.0, 60.0, 3600.0] {
            for (a, b) in [(0.0, 0.0), (0.1, 0.05)] {
                let t = |m: f64| if m <= 40.0 { 2.0 } else { 0.05 * m };
                let (low, high) = (psi * (1.0 - b), psi * (1.0 + a));
                let s = Pressure::from_psi(psi);
                let lowest = lowest_burst(s, ratio(b), ratio(0.05), ratio(0.9)).psi();
                let highest = highest_burst(s, ratio(a), ratio(0.05), ratio(1.1)).psi();
                assert!((lowest - (low - t(low)) * 0.9).abs() < 1e-9);
                assert!((highest - (high + t(high)) * 1.1).abs() < 1e-9);
            }
        }
    }
}
