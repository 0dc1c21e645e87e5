//! Conductances: of tubes, of parts rated by Cv or Kv, and of several in a row.

use core::f64::consts::PI;

use oilway_units::{Conductance, Count, Length, Ratio};

use super::{REFERENCE_DENSITY, REFERENCE_TEMPERATURE};
use crate::{Range, formula};

/// Gas constant of air in J/(kg·K), as the course rounds it.
const GAS: f64 = 287.0;
/// Conductance of the entry into a tube for each square metre of bore, in m³/(s·Pa): 0.16 dm³/(s·bar) for each mm².
const ENTRY: f64 = 0.16e-8 / 1e-6;
/// Conductance of Cv 1: from the gas equation of the control valves, N9 24.6, Y 0.667, xT 0.72 of its range 0.65 to 0.80.
const CV: Conductance = Conductance::from_litres_per_second_bar(3.95);
/// Conductance of Kv 1 (m³/h), the same.
const KV: Conductance = Conductance::from_litres_per_second_bar(4.56);

formula! {
    /// Conductance of two resistances to air in a row.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::air::conductance_in_series;
    /// use oilway_units::Conductance;
    ///
    /// let c = Conductance::from_litres_per_second_bar;
    /// let path = conductance_in_series(conductance_in_series(c(1.2), c(1.0)), c(3.0));
    /// assert_eq!(format!("{:.2}", path.litres_per_second_bar()), "0.74");
    /// ```
    SERIES = "air/series",
    title: "Conductance of two resistances to air in a row",
    equation: "1/C² = 1/C1² + 1/C2²",
    validity: "Exact where both have b = 0, otherwise a few per cent low: 7 % in a checked path of valve, tube and silencer. Side by side conductances add.",
    sources: [
        "pneumatics-course", "rule of squares", Seen;
        "own-derivation", "exact for b = 0; compared with the full march", Own
    ],
    fn conductance_in_series(
        first: Conductance, "C1", "conductance of the first", Range::NotNegative;
        second: Conductance, "C2", "conductance of the second", Range::NotNegative;
    ) -> Conductance, "C", "conductance of both in a row" {
        let (small, large) = (first.min(second), first.max(second));
        if small <= Conductance::ZERO {
            return Conductance::ZERO;
        }
        // The ratio of the two stays below one, so nothing overflows.
        let part = small / large;
        small * (1.0 / (1.0 + part * part).sqrt())
    }
}

formula! {
    /// Conductance of a plain tube by its friction alone.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::air::tube_conductance;
    /// use oilway_units::{Length, Ratio};
    ///
    /// let tube = tube_conductance(
    ///     Length::from_millimetres(4.0), Length::from_metres(2.0), Ratio::from_fraction(0.02),
    /// );
    /// assert_eq!(format!("{:.2}", tube.litres_per_second_bar()), "1.16");
    /// ```
    TUBE = "air/tube",
    title: "Conductance of a plain tube by friction alone",
    equation: "C = (π d²/4) / (ρ0 √(R T0 f L/d));  ρ0 = 1.185 kg/m³,  R = 287 J/(kg K),  T0 = 293.15 K",
    validity: "Long tubes, where b is near 0. A short one is ruled by its entry: take air/tube-with-entry.",
    sources: [
        "pneumatics-course", "tube conductance", Seen
    ],
    fn tube_conductance(
        bore: Length, "d", "inner diameter of the tube", Range::Positive;
        length: Length, "L", "length of the tube", Range::Positive;
        friction: Ratio, "f", "friction factor, about 0.02", Range::Positive;
    ) -> Conductance, "C", "sonic conductance" {
        let (d, l, f) = (bore.metres(), length.metres(), friction.fraction());
        let area = PI * d * d / 4.0;
        let speed = (GAS * REFERENCE_TEMPERATURE * f * l / d).sqrt();
        Conductance::from_cubic_metres_per_second_pascal(area / (REFERENCE_DENSITY * speed))
    }
}

formula! {
    /// Conductance of a plain tube with its entry.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::air::tube_with_entry_conductance;
    /// use oilway_units::{Length, Ratio};
    ///
    /// let tube = tube_with_entry_conductance(Length::from_millimetres(4.0), Length::from_metres(1.0), Ratio::from_fraction(0.02));
    /// assert_eq!(format!("{:.1}", tube.litres_per_second_bar()), "1.3");
    /// ```
    TUBE_WITH_ENTRY = "air/tube-with-entry",
    title: "Conductance of a plain tube with its entry",
    equation: "1/C² = 1/C_f² + 1/C_e²;  C_f of air/tube,  C_e = 0.16 dm³/(s bar) for each mm² of bore",
    validity: "Smooth plastic tube of ordinary length, f about 0.02. Bends and fittings come on top. Recomputes the course's table of 20 values within its rounding.",
    sources: [
        "pneumatics-course", "tube conductance with entry, table by bore and length", Seen
    ],
    fn tube_with_entry_conductance(
        bore: Length, "d", "inner diameter of the tube", Range::Positive;
        length: Length, "L", "length of the tube", Range::Positive;
        friction: Ratio, "f", "friction factor, about 0.02", Range::Positive;
    ) -> Conductance, "C", "sonic conductance" {
        let entry = Conductance::from_cubic_metres_per_second_pascal(ENTRY * PI / 4.0 * bore.metres() * bore.metres());
        conductance_in_series(tube_conductance(bore, length, friction), entry)
    }
}

formula! {
    /// Conductance of a valve rated by Cv.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::air::conductance_of_cv;
    /// use oilway_units::Count;
    ///
    /// assert_eq!(format!("{:.3}", conductance_of_cv(Count::from_number(0.3)).litres_per_second_bar()), "1.185");
    /// ```
    CONDUCTANCE_OF_CV = "air/cv",
    title: "Conductance of a valve rated by Cv",
    equation: "C = 3.95 dm³/(s bar) · Cv",
    validity: "At the choked point; 3.75 to 4.16 by the make of the valve. Below it the two rating systems bend differently.",
    sources: [
        "iec-60534-2-1", "gas equation, constants recalled, computed for this project", Memory;
        "pneumatics-course", "C about 4 Cv", Seen
    ],
    fn conductance_of_cv(
        cv: Count, "Cv", "flow coefficient in US units", Range::NotNegative;
    ) -> Conductance, "C", "sonic conductance" {
        CV * cv.number()
    }
}

formula! {
    /// Conductance of a valve rated by Kv.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::air::conductance_of_kv;
    /// use oilway_units::Count;
    ///
    /// assert_eq!(format!("{:.2}", conductance_of_kv(Count::from_number(1.0)).litres_per_second_bar()), "4.56");
    /// ```
    CONDUCTANCE_OF_KV = "air/kv",
    title: "Conductance of a valve rated by Kv",
    equation: "C = 4.56 dm³/(s bar) · Kv",
    validity: "Kv in m³/h at 1 bar; at the choked point; 4.34 to 4.81 by the make of the valve.",
    sources: [
        "iec-60534-2-1", "gas equation, constants recalled, computed for this project", Memory;
        "pneumatics-course", "Kv = 0.865 Cv", Seen
    ],
    fn conductance_of_kv(
        kv: Count, "Kv", "flow coefficient in m³/h", Range::NotNegative;
    ) -> Conductance, "C", "sonic conductance" {
        KV * kv.number()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn c(value: f64) -> Conductance {
        Conductance::from_litres_per_second_bar(value)
    }

    #[test]
    fn two_alike_in_a_row_pass_the_root_of_a_half() {
        let both = conductance_in_series(c(1.0), c(1.0)).litres_per_second_bar();
        assert!((both - core::f64::consts::FRAC_1_SQRT_2).abs() < 1e-15);
    }

    #[test]
    fn a_shut_valve_in_the_row_passes_nothing_and_a_wide_one_hides() {
        assert_eq!(conductance_in_series(c(0.0), c(1.0)), Conductance::ZERO);
        assert_eq!(conductance_in_series(c(0.0), c(0.0)), Conductance::ZERO);
        assert_eq!(conductance_in_series(c(1.0), c(1e9)).litres_per_second_bar(), 1.0);
    }

    #[test]
    fn the_pressures_in_a_row_without_choking_agree() {
        // Second route: with b = 0 each obeys q² = C² (p1² − p2²); march from 7 to 2 bar through both.
        let (c1, c2) = (0.8, 1.3);
        let path = conductance_in_series(c(c1), c(c2)).litres_per_second_bar();
        let q = path * (49.0_f64 - 4.0).sqrt();
        let middle = (49.0 - (q / c1) * (q / c1)).sqrt();
        let end = (middle * middle - (q / c2) * (q / c2)).sqrt();
        assert!((end - 2.0).abs() < 1e-12);
    }

    #[test]
    fn a_very_short_tube_is_its_entry_and_a_very_long_one_its_friction() {
        let bore = Length::from_millimetres(4.0);
        let f = Ratio::from_fraction(0.02);
        let entry = 0.16 * PI / 4.0 * 16.0;
        let short = tube_with_entry_conductance(bore, Length::from_metres(1e-9), f).litres_per_second_bar();
        assert!((short / entry - 1.0).abs() < 1e-6);
        let far = Length::from_kilometres(100.0);
        let friction = tube_conductance(bore, far, f);
        assert!((tube_with_entry_conductance(bore, far, f) / friction - 1.0).abs() < 1e-4);
    }

    #[test]
    fn kv_and_cv_of_one_valve_give_one_conductance() {
        // Kv = 0.865 Cv; the two constants are rounded to three figures.
        let by_cv = conductance_of_cv(Count::from_number(1.0));
        let by_kv = conductance_of_kv(Count::from_number(0.865));
        assert!((by_cv / by_kv - 1.0).abs() < 2e-3);
    }
}
