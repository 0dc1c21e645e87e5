//! One divider: what a full cycle takes and what each outlet gets of it.

use oilway_units::{Count, Flow, Frequency, Ratio, Time, Volume};

use crate::{Range, formula};

formula! {
    /// Volume of a full cycle of a progressive divider.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::progressive::cycle_volume;
    /// use oilway_units::Volume;
    ///
    /// // Sections of 40, 63 and 100 mm³ for each outlet.
    /// let cycle = cycle_volume(Volume::from_cubic_millimetres(40.0 + 63.0 + 100.0));
    /// assert_eq!(format!("{:.0}", cycle.cubic_millimetres()), "406");
    /// ```
    CYCLE_VOLUME = "progressive/cycle-volume",
    title: "Volume of a full cycle of a progressive divider",
    equation: "V_c = 2 Σ v",
    validity: "v is the volume of one outlet; each piston gives it to one side on the way there and to the other on the way back, joined or not. Holds while every working outlet is free.",
    sources: [
        "own-derivation", "two strokes of every piston", Own;
        "neale-1995", "C15.4, single line progressive", Seen
    ],
    fn cycle_volume(
        sum_of_sections: Volume, "Σ v", "sum over the sections of the volume of one outlet", Range::NotNegative;
    ) -> Volume, "V_c", "volume of a full cycle" {
        sum_of_sections * 2.0
    }
}

formula! {
    /// Share of the inflow that an outlet gets.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::progressive::outlet_share;
    /// use oilway_units::Volume;
    ///
    /// let share = outlet_share(Volume::from_cubic_centimetres(2.2), Volume::from_cubic_centimetres(4.2));
    /// assert_eq!(format!("{:.0}", share.percent()), "52");
    /// ```
    SHARE = "progressive/share",
    title: "Share of an outlet of a progressive divider",
    equation: "x = u / V_c",
    validity: "Exact over whole cycles; over a short run an outlet may be one shot ahead or behind. A joined piston gives 2 v, bridged outlets the sum of theirs.",
    sources: [
        "own-derivation", "volume balance of a cycle", Own
    ],
    fn outlet_share(
        outlet: Volume, "u", "volume of the outlet in a full cycle", Range::NotNegative;
        cycle: Volume, "V_c", "volume of a full cycle", Range::Positive;
    ) -> Ratio, "x", "share of the inflow" {
        Ratio::from_fraction(outlet / cycle)
    }
}

formula! {
    /// How often a divider runs through its cycle.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::progressive::cycle_rate;
    /// use oilway_units::{Flow, Volume};
    ///
    /// let rate = cycle_rate(Flow::from_cubic_centimetres_per_minute(10.0), Volume::from_cubic_millimetres(646.0));
    /// assert_eq!(format!("{:.3}", rate.per_minute()), "15.480");
    /// ```
    CYCLE_RATE = "progressive/cycles",
    title: "Cycle rate of a progressive divider",
    equation: "f = Q / V_c",
    validity: "Volume balance without slip past the pistons, which eats small shots at low rates. A switch on one piston gives one pulse for each cycle. Keep within the divider's own limits of rate.",
    sources: [
        "own-derivation", "volume balance of a cycle", Own
    ],
    fn cycle_rate(
        inflow: Flow, "Q", "flow into the divider", Range::NotNegative;
        cycle: Volume, "V_c", "volume of a full cycle", Range::Positive;
    ) -> Frequency, "f", "cycles in a time" {
        Frequency::from_per_second(inflow.cubic_metres_per_second() / cycle.cubic_metres())
    }
}

formula! {
    /// What an outlet of a divider delivers.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::progressive::delivered_rate;
    /// use oilway_units::{Flow, Volume};
    ///
    /// let rate = delivered_rate(
    ///     Flow::from_cubic_centimetres_per_minute(10.0), Volume::from_cubic_millimetres(100.0),
    ///     Volume::from_cubic_millimetres(646.0),
    /// );
    /// assert_eq!(format!("{:.3}", rate.cubic_centimetres_per_minute()), "1.548");
    /// ```
    DELIVERED = "progressive/delivered",
    title: "Delivery of an outlet of a progressive divider",
    equation: "q = Q u / V_c",
    validity: "Mean over whole cycles, without slip. The sum over all outlets is the inflow.",
    sources: [
        "own-derivation", "volume balance of a cycle", Own
    ],
    fn delivered_rate(
        inflow: Flow, "Q", "flow into the divider", Range::NotNegative;
        outlet: Volume, "u", "volume of the outlet in a full cycle", Range::NotNegative;
        cycle: Volume, "V_c", "volume of a full cycle", Range::Positive;
    ) -> Flow, "q", "mean delivery of the outlet" {
        inflow * (outlet / cycle)
    }
}

formula! {
    /// Cycles of a divider while the pump runs once.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::progressive::cycles_per_event;
    /// use oilway_units::{Flow, Time, Volume};
    ///
    /// let cycles = cycles_per_event(
    ///     Flow::from_cubic_centimetres_per_minute(10.0), Time::from_seconds(30.0), Volume::from_cubic_millimetres(646.0),
    /// );
    /// assert_eq!(format!("{:.1}", cycles.number()), "7.7");
    /// ```
    CYCLES_PER_EVENT = "progressive/cycles-per-event",
    title: "Cycles of a progressive divider in one run of the pump",
    equation: "n = Q t / V_c",
    validity: "At least one is wanted, so that every point gets a shot each time. End the run by counting pulses rather than by time: then the viscosity does not matter. A stop in mid-cycle does no harm.",
    sources: [
        "own-derivation", "volume balance of a run", Own
    ],
    fn cycles_per_event(
        inflow: Flow, "Q", "flow into the divider while the pump runs", Range::NotNegative;
        on: Time, "t", "running time of the pump", Range::NotNegative;
        cycle: Volume, "V_c", "volume of a full cycle", Range::Positive;
    ) -> Count, "n", "cycles in one run" {
        Count::from_number(inflow * on / cycle)
    }
}

formula! {
    /// Largest error of a point over a short time, because shots are whole.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::progressive::short_run_error;
    /// use oilway_units::{Flow, Time, Volume};
    ///
    /// let error = short_run_error(
    ///     Volume::from_cubic_millimetres(100.0), Flow::from_cubic_millimetres_per_hour(400.0), Time::from_hours(8.0),
    /// );
    /// assert_eq!(format!("{:.1}", error.percent()), "3.1");
    /// ```
    SHORT_RUN_ERROR = "progressive/short-run-error",
    title: "Largest error of a point over a short time",
    equation: "e = u / (q t)",
    validity: "One shot ahead or behind; not seen in the mean rates. Falls with time.",
    sources: [
        "own-derivation", "one shot over the demand of the time", Own
    ],
    fn short_run_error(
        shot: Volume, "u", "volume of one shot", Range::NotNegative;
        demand: Flow, "q", "demand of the point", Range::Positive;
        over: Time, "t", "time looked at", Range::Positive;
    ) -> Ratio, "e", "error as a share of the demand" {
        Ratio::from_fraction(shot / (demand * over))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm3(value: f64) -> Volume {
        Volume::from_cubic_millimetres(value)
    }

    /// Second route: the divider as a machine. Piston after piston goes to its other side; counts volumes by outlet.
    fn turned(sections: &[f64], strokes: usize) -> (Vec<[f64; 2]>, f64) {
        let mut given = vec![[0.0; 2]; sections.len()];
        let mut sides = vec![0_usize; sections.len()];
        let mut taken = 0.0;
        for stroke in 0..strokes {
            let k = stroke % sections.len();
            given[k][sides[k]] += sections[k];
            sides[k] = 1 - sides[k];
            taken += sections[k];
        }
        (given, taken)
    }

    #[test]
    fn the_turning_pistons_give_the_same_cycle_and_shares() {
        let sections = [25.0, 63.0, 160.0, 40.0];
        let cycle = cycle_volume(mm3(sections.iter().sum()));
        let (given, taken) = turned(&sections, 2 * sections.len());
        assert!((cycle.cubic_millimetres() - taken).abs() < 1e-12);
        let (many, all) = turned(&sections, 2 * sections.len() * 50);
        for (k, v) in sections.into_iter().enumerate() {
            assert_eq!(given[k], [v, v]);
            let share = outlet_share(mm3(v), cycle).fraction();
            assert!((many[k][0] / all - share).abs() < 1e-12);
        }
    }

    #[test]
    fn no_inflow_turns_nothing() {
        assert_eq!(cycle_rate(Flow::ZERO, mm3(646.0)), Frequency::ZERO);
        assert_eq!(delivered_rate(Flow::ZERO, mm3(100.0), mm3(646.0)), Flow::ZERO);
        assert_eq!(cycles_per_event(Flow::from_litres_per_hour(1.0), Time::ZERO, mm3(646.0)), Count::ZERO);
    }

    #[test]
    fn the_outlets_together_deliver_the_inflow() {
        let outlets = [320.0, 100.0, 100.0, 126.0];
        let inflow = Flow::from_cubic_centimetres_per_minute(10.0);
        let sum: Flow = outlets.into_iter().map(|u| delivered_rate(inflow, mm3(u), mm3(646.0))).sum();
        assert!((sum / inflow - 1.0).abs() < 1e-14);
    }

    #[test]
    fn a_run_of_one_cycle_takes_one_cycle_volume() {
        let inflow = Flow::from_cubic_centimetres_per_minute(6.0);
        let on = mm3(646.0) / inflow;
        assert!((cycles_per_event(inflow, on, mm3(646.0)).number() - 1.0).abs() < 1e-14);
    }

    #[test]
    fn twice_the_time_halves_the_short_run_error() {
        let error = |hours: f64| {
            short_run_error(mm3(100.0), Flow::from_cubic_millimetres_per_hour(400.0), Time::from_hours(hours))
                .fraction()
        };
        assert!((error(0.25) - 1.0).abs() < 1e-12);
        assert!((error(2.0) * 2.0 - error(1.0)).abs() < 1e-15);
    }
}
