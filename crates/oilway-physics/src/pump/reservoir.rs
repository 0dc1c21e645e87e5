//! The reservoir: how long a filling lasts, how large it must be, how much it grows in the sun.

use oilway_units::{Count, Density, Flow, Ratio, Temperature, Time, Volume};

use crate::{Range, formula};

/// Thermal constant of the lubricating-oil group at 15 °C, kg/m³ per kelvin.
const OIL_GROUP: f64 = 0.6278;

formula! {
    /// Running time that one filling lasts.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pump::refill_interval;
    /// use oilway_units::{Flow, Ratio, Volume};
    ///
    /// let lasts = refill_interval(
    ///     Volume::from_litres(30.0), Ratio::from_fraction(0.85), Flow::from_cubic_centimetres_per_hour(3.5),
    /// );
    /// assert_eq!(format!("{:.0}", lasts.hours()), "7286");
    /// ```
    REFILL_INTERVAL = "pump/refill-interval",
    title: "Running time that one filling lasts",
    equation: "t = k V / Q",
    validity: "Running hours: pump/calendar-interval turns them into days. Usable about 0.85 with a follower, 0.80 with a scraper, 0.70 to 0.90 for oil with a low suction (common practice). At least a month for machinery is asked for; a year and more makes old grease.",
    sources: [
        "own-derivation", "volume over use", Own;
        "common-practice", "usable shares", CommonPractice;
        "neale-1995", "C15, checklist, refill intervals", Seen
    ],
    fn refill_interval(
        gross: Volume, "V", "gross volume of the reservoir", Range::NotNegative;
        usable: Ratio, "k", "share of the gross volume that can be used", Range::Between(0.0, 1.0);
        use_rate: Flow, "Q", "use while running", Range::Positive;
    ) -> Time, "t", "running time between fillings" {
        gross * usable.fraction() / use_rate
    }
}

formula! {
    /// Days on the calendar for a running time.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pump::calendar_interval;
    /// use oilway_units::{Count, Time};
    ///
    /// // 88 h a week: 16 h on five and a half days.
    /// let days = calendar_interval(Time::from_hours(7286.0), Time::from_hours(16.0), Count::from_number(5.5));
    /// assert_eq!(format!("{:.0}", days.weeks()), "83");
    /// ```
    CALENDAR_INTERVAL = "pump/calendar-interval",
    title: "Time on the calendar for a running time",
    equation: "t = t_run · 7 · 24 h / (h d)",
    validity: "A mean over whole weeks; the day itself may fall before or after an idle weekend.",
    sources: [
        "own-derivation", "working hours of a week", Own
    ],
    fn calendar_interval(
        running: Time, "t_run", "running time", Range::NotNegative;
        hours_per_day: Time, "h", "running time in a working day, at most 24 h", Range::Between(1.0, 86_400.0);
        days_per_week: Count, "d", "working days in a week, at most 7", Range::Between(0.01, 7.0);
    ) -> Time, "t", "time on the calendar" {
        let running_share = hours_per_day.days() * days_per_week.number() / 7.0;
        running / running_share
    }
}

formula! {
    /// Gross volume that a reservoir needs.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pump::reservoir_gross;
    /// use oilway_units::{Flow, Ratio, Time, Volume};
    ///
    /// // 34 points of 0.4 cm³ three times an hour, 30 days, a reserve of 8 hours.
    /// let use_rate = Flow::from_cubic_centimetres_per_hour(34.0 * 0.4 * 3.0);
    /// let gross = reservoir_gross(
    ///     use_rate, Time::from_days(30.0), use_rate * Time::from_hours(8.0), Ratio::from_fraction(1.05),
    ///     Ratio::from_fraction(0.85),
    /// );
    /// assert_eq!(format!("{:.1}", gross.litres()), "36.7");
    /// ```
    RESERVOIR = "pump/reservoir",
    title: "Gross volume of a reservoir",
    equation: "V = (Q t + V_r) · x / k",
    validity: "The reserve covers the longest time from the low-level signal until somebody comes, plus a cycle. x is a ratio of volumes, 1.05 for five per cent. Add the thickness of a follower plate and its wiper to what is lost.",
    sources: [
        "own-derivation", "sum of use, reserve and growth", Own;
        "common-practice", "usable shares", CommonPractice
    ],
    fn reservoir_gross(
        use_rate: Flow, "Q", "use while running", Range::NotNegative;
        period: Time, "t", "running time between fillings", Range::NotNegative;
        reserve: Volume, "V_r", "volume left at the low-level signal", Range::NotNegative;
        expansion: Ratio, "x", "volume warm over volume as filled", Range::Between(1.0, 2.0);
        usable: Ratio, "k", "share of the gross volume that can be used", Range::Between(0.01, 1.0);
    ) -> Volume, "V", "gross volume" {
        (use_rate * period + reserve) * (expansion.fraction() / usable.fraction())
    }
}

formula! {
    /// How much a filling grows from cold to hot.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::pump::expansion_ratio;
    /// use oilway_units::{Density, Temperature};
    ///
    /// let ratio = expansion_ratio(
    ///     Density::from_kilograms_per_cubic_metre(890.0), Temperature::from_celsius(-20.0), Temperature::from_celsius(40.0),
    /// );
    /// assert_eq!(format!("{:.4}", ratio.fraction()), "1.0430");
    /// ```
    EXPANSION = "pump/expansion",
    title: "Growth of a filling from cold to hot",
    equation: "x = exp(e(T_h) − e(T_c));  e(T) = α ΔT (1 + 0.8 α ΔT),  ΔT = T − 15 °C,  α = 0.6278 / ρ15",
    validity: "Mineral lubricating oils of about 800 to 1160 kg/m³. For grease take the value of its base oil (common practice). The reservoir wall grows too, which is left out on the safe side.",
    sources: [
        "astm-d1250", "lubricating-oil group", SecondHand;
        "common-practice", "grease as its base oil", CommonPractice
    ],
    fn expansion_ratio(
        density_15: Density, "ρ15", "density at 15 °C", Range::Positive;
        cold: Temperature, "T_c", "temperature when filled", Range::Positive;
        hot: Temperature, "T_h", "highest temperature", Range::Positive;
    ) -> Ratio, "x", "volume hot over volume cold" {
        let alpha = OIL_GROUP / density_15.kilograms_per_cubic_metre();
        let growth = |temperature: Temperature| {
            let warmer = alpha * (temperature.celsius() - 15.0);
            warmer * (1.0 + 0.8 * warmer)
        };
        Ratio::from_fraction(libm::exp(growth(hot) - growth(cold)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn hours(value: f64) -> Time {
        Time::from_hours(value)
    }

    #[test]
    fn round_the_clock_the_calendar_is_the_running_time() {
        let t = calendar_interval(hours(100.0), hours(24.0), Count::from_number(7.0));
        assert!((t.hours() - 100.0).abs() < 1e-12);
        let shift = calendar_interval(hours(40.0), hours(8.0), Count::from_number(5.0));
        assert!((shift.weeks() - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_reservoir_lasts_the_period_that_it_was_sized_for() {
        // Second route: the interval of the sized reservoir gives the period back, reserve and growth left out.
        let q = Flow::from_cubic_centimetres_per_hour(12.0);
        let k = Ratio::from_fraction(0.8);
        let gross = reservoir_gross(q, hours(700.0), Volume::ZERO, Ratio::from_fraction(1.0), k);
        assert!((refill_interval(gross, k, q).hours() - 700.0).abs() < 1e-9);
    }

    #[test]
    fn an_empty_or_unusable_reservoir_lasts_no_time() {
        let q = Flow::from_cubic_centimetres_per_hour(12.0);
        assert_eq!(refill_interval(Volume::ZERO, Ratio::from_fraction(0.8), q), Time::ZERO);
        assert_eq!(refill_interval(Volume::from_litres(8.0), Ratio::from_fraction(0.0), q), Time::ZERO);
    }

    #[test]
    fn cold_to_hot_and_back_gives_one() {
        let c = Temperature::from_celsius;
        let x = |cold: f64, hot: f64| {
            expansion_ratio(Density::from_kilograms_per_cubic_metre(890.0), c(cold), c(hot)).fraction()
        };
        assert_eq!(x(20.0, 20.0), 1.0);
        assert!((x(-20.0, 40.0) * x(40.0, -20.0) - 1.0).abs() < 1e-14);
        assert!((x(-20.0, 15.0) * x(15.0, 40.0) / x(-20.0, 40.0) - 1.0).abs() < 1e-14);
    }
}
