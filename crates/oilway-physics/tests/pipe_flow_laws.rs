//! Laws of flow in round lines that hold for any input, tried on many.

use oilway_physics::pipe_flow::*;
use oilway_units::{Consistency, Density, Flow, Length, Pressure, Ratio, Viscosity};
use proptest::prelude::*;

/// A value between two ends, spread evenly over its logarithm.
fn over_decades(low: f64, high: f64) -> impl Strategy<Value = f64> {
    (low.ln()..high.ln()).prop_map(f64::exp)
}

#[derive(Clone, Copy, Debug)]
struct Line {
    bore: Length,
    length: Length,
    yield_stress: Pressure,
    consistency: Consistency,
    index: Ratio,
}

impl Line {
    fn flow(&self, drop: Pressure) -> Flow {
        herschel_bulkley_flow(self.bore, self.length, drop, self.yield_stress, self.consistency, self.index)
    }
    fn drop(&self, flow: Flow) -> Pressure {
        herschel_bulkley_drop(self.bore, self.length, flow, self.yield_stress, self.consistency, self.index)
    }
    fn start(&self) -> Pressure {
        start_pressure(self.bore, self.length, self.yield_stress)
    }
}

prop_compose! {
    fn grease_line()(
        bore in over_decades(1e-3, 0.05),
        length in over_decades(0.01, 300.0),
        yield_stress in prop_oneof![Just(0.0), over_decades(0.1, 5000.0)],
        consistency in over_decades(0.01, 1000.0),
        index in 0.25..1.3,
    ) -> Line {
        Line {
            bore: Length::from_metres(bore),
            length: Length::from_metres(length),
            yield_stress: Pressure::from_pascals(yield_stress),
            consistency: Consistency::from_pascal_seconds_to_the_n(consistency),
            index: Ratio::from_fraction(index),
        }
    }
}

proptest! {
    #[test]
    fn the_drop_gives_back_the_pressure_that_made_the_flow(line in grease_line(), above in over_decades(1e-4, 1e4)) {
        // Some pressure above the yield limit, from a ten-thousandth of it to ten thousand times.
        let drop = line.start() * (1.0 + above) + Pressure::from_pascals(above);
        let back = line.drop(line.flow(drop));
        prop_assert!((back / drop - 1.0).abs() < 1e-11, "{back:?} {drop:?}");
    }

    #[test]
    fn the_flow_gives_back_the_flow_that_cost_the_drop(line in grease_line(), q in over_decades(1e-11, 1e-3)) {
        let flow = Flow::from_cubic_metres_per_second(q);
        let drop = line.drop(flow);
        // Beside the yield limit the digits of the drop are spent on the limit: what is left decides.
        let left = (drop - line.start()) / drop;
        prop_assume!(left > 1e-6);
        let n = line.index.fraction();
        let allowed = 1e-11 + 1e-15 * (1.0 / n + 1.0) / left;
        prop_assert!((line.flow(drop) / flow - 1.0).abs() < allowed, "{:?} {flow:?}", line.flow(drop));
    }

    #[test]
    fn more_flow_always_costs_more(line in grease_line(), q in over_decades(1e-11, 1e-3), more in 1.001..10.0) {
        let flow = Flow::from_cubic_metres_per_second(q);
        prop_assert!(line.drop(flow * more) > line.drop(flow));
        prop_assert!(line.drop(flow) >= line.start());
    }

    #[test]
    fn a_wider_bore_never_costs_more(line in grease_line(), q in over_decades(1e-11, 1e-3), wider in 1.0..4.0) {
        let flow = Flow::from_cubic_metres_per_second(q);
        let wide = Line { bore: line.bore * wider, ..line };
        prop_assert!(wide.drop(flow).pascals() <= line.drop(flow).pascals() * (1.0 + 1e-12));
    }

    #[test]
    fn twice_the_length_costs_twice(line in grease_line(), q in over_decades(1e-11, 1e-3)) {
        let flow = Flow::from_cubic_metres_per_second(q);
        let twice = Line { length: line.length * 2.0, ..line };
        prop_assert!((twice.drop(flow) / line.drop(flow) - 2.0).abs() < 1e-12);
    }

    #[test]
    fn stresses_scale_the_pressure(line in grease_line(), q in over_decades(1e-11, 1e-3), scale in over_decades(0.01, 100.0)) {
        let flow = Flow::from_cubic_metres_per_second(q);
        let stiff = Line { yield_stress: line.yield_stress * scale, consistency: line.consistency * scale, ..line };
        prop_assert!((stiff.drop(flow) / line.drop(flow) / scale - 1.0).abs() < 1e-11);
    }

    #[test]
    fn nothing_moves_at_or_below_the_start_pressure(line in grease_line(), share in 0.0..=1.0) {
        prop_assert_eq!(line.flow(line.start() * share), Flow::ZERO);
    }

    #[test]
    fn the_middle_runs_between_once_and_three_times_the_mean(line in grease_line(), above in over_decades(1e-3, 1e3)) {
        let drop = line.start() * (1.0 + above) + Pressure::from_pascals(above);
        let centre = centre_speed(line.bore, line.length, drop, line.yield_stress, line.consistency, line.index);
        let share = centre / mean_speed(line.bore, line.flow(drop));
        prop_assert!((1.0 - 1e-12..3.0).contains(&share), "{share}");
    }

    #[test]
    fn any_finite_input_gives_a_number_or_none_and_never_a_panic(
        values in prop::array::uniform6(prop_oneof![any::<f64>().prop_filter("finite", |v| v.is_finite()), Just(0.0), Just(-1.0)]),
    ) {
        for formula in oilway_physics::registry().filter(|f| f.id.starts_with("pipe-flow/") || f.id.starts_with("oil/") || f.id.starts_with("grease/")) {
            let inputs: Vec<f64> = (0..formula.inputs.len()).map(|i| values[i % values.len()]).collect();
            let _ = (formula.evaluate_si)(&inputs);
        }
    }

    #[test]
    fn more_oil_always_costs_more_even_over_the_transition(
        bore in 0.002..0.05, q in over_decades(1e-8, 1e-1), more in 1.0001..2.0, mu in over_decades(1e-3, 10.0), rough in 0.0..0.05,
    ) {
        let bore = Length::from_metres(bore);
        let drop = |q: f64| darcy_drop(
            bore, Length::from_metres(3.0), Flow::from_cubic_metres_per_second(q),
            Density::from_kilograms_per_cubic_metre(880.0), Viscosity::from_pascal_seconds(mu), bore * rough,
        );
        prop_assert!(drop(q * more) > drop(q));
    }

    #[test]
    fn lubricant_and_wall_are_softer_together_than_the_softer_of_them(fluid in over_decades(1e6, 3e9), wall in over_decades(1e7, 1e12)) {
        let (fluid, wall) = (Pressure::from_pascals(fluid), Pressure::from_pascals(wall));
        let both = effective_modulus(fluid, wall);
        prop_assert!(both < fluid && both < wall);
        prop_assert!(both >= fluid.min(wall) * 0.499_999);
    }
}
