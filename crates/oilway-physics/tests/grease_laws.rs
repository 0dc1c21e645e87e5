//! Laws of greases that hold for any grease, tried on many.

use oilway_physics::grease::curve::{self, Row};
use oilway_physics::grease::*;
use oilway_units::{
    Consistency, Flow, Length, Pressure, Ratio, ShearRate, Temperature, TemperatureDifference,
};
use proptest::prelude::*;

fn over_decades(low: f64, high: f64) -> impl Strategy<Value = f64> {
    (low.ln()..high.ln()).prop_map(f64::exp)
}

fn stress(rate: f64, tau_0: f64, k: f64, n: f64) -> Pressure {
    herschel_bulkley_stress(
        ShearRate::from_per_second(rate),
        Pressure::from_pascals(tau_0),
        Consistency::from_pascal_seconds_to_the_n(k),
        Ratio::from_fraction(n),
    )
}

proptest! {
    #[test]
    fn a_warmer_grease_is_always_softer(tau in over_decades(1.0, 5000.0), t in -50.0..150.0, warmer in 0.01..50.0, b in 10.0..60.0) {
        let at = |t: f64| yield_stress_at(
            Pressure::from_pascals(tau), Temperature::from_celsius(t), TemperatureDifference::from_kelvins(b),
        );
        prop_assert!(at(t + warmer) < at(t));
    }

    #[test]
    fn steps_of_temperature_multiply(a in -50.0..50.0, b in -50.0..50.0) {
        let factor = |warmer: f64| yield_stress_at(
            Pressure::from_pascals(1.0), Temperature::from_celsius(25.0 + warmer), TemperatureDifference::from_kelvins(20.0),
        ).pascals();
        prop_assert!((factor(a) * factor(b) / factor(a + b) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn faster_shear_always_takes_more_stress(
        rate in over_decades(1e-3, 1e5), more in 1.01..10.0, tau_0 in 0.0..2000.0, k in over_decades(0.1, 500.0), n in 0.2..1.3,
    ) {
        prop_assert!(stress(rate * more, tau_0, k, n) > stress(rate, tau_0, k, n));
        prop_assert!(stress(rate, tau_0, k, n) > Pressure::from_pascals(tau_0));
    }

    #[test]
    fn a_grease_that_thins_shears_faster_at_the_wall_than_its_label(bore in 0.001..0.05, q in over_decades(1e-10, 1e-3), n in 0.1..0.999) {
        let label = nominal_shear_rate(Length::from_metres(bore), Flow::from_cubic_metres_per_second(q));
        prop_assert!(wall_shear_rate(label, Ratio::from_fraction(n)) > label);
    }

    #[test]
    fn the_fit_finds_the_curve_that_made_the_rows(
        tau_0 in prop_oneof![Just(0.0), over_decades(5.0, 2000.0)], k in over_decades(0.5, 200.0), n in 0.25..1.2,
    ) {
        let rows: Vec<(ShearRate, Pressure)> = [0.1, 0.7, 4.0, 25.0, 150.0, 1000.0]
            .map(|rate| (ShearRate::from_per_second(rate), stress(rate, tau_0, k, n))).to_vec();
        let fit = fit::herschel_bulkley(&rows).map_err(|reason| TestCaseError::fail(format!("{reason:?}")))?;
        prop_assert!(fit.largest_error.fraction() < 1e-6, "{fit:?}");
        prop_assert!(fit.root_mean_square <= fit.largest_error);
        prop_assert!((fit.index.fraction() - n).abs() < 1e-3, "{fit:?}");
    }

    #[test]
    fn any_rows_are_fitted_or_refused_and_never_panic(
        rows in prop::collection::vec((any::<f64>(), any::<f64>()), 0..8),
    ) {
        let rows: Vec<(ShearRate, Pressure)> =
            rows.into_iter().map(|(r, t)| (ShearRate::from_per_second(r), Pressure::from_pascals(t))).collect();
        let _ = fit::herschel_bulkley(&rows);
    }

    #[test]
    fn a_curve_between_two_rows_lies_between_them(
        t in 0.0..=1.0, tau in (over_decades(1.0, 5000.0), over_decades(1.0, 5000.0)), n in (0.3..1.0, 0.3..1.0),
    ) {
        let row = |celsius: f64, tau: f64, n: f64| Row {
            temperature: Temperature::from_celsius(celsius),
            yield_stress: Pressure::from_pascals(tau),
            consistency: Consistency::from_pascal_seconds_to_the_n(0.05 * tau),
            index: Ratio::from_fraction(n),
        };
        let rows = [row(-20.0, tau.0, n.0), row(40.0, tau.1, n.1)];
        let Some(between) = curve::interpolate(&rows, Temperature::from_celsius(-20.0 + 59.999 * t)) else {
            return Err(TestCaseError::fail("no row"));
        };
        let inside = |value: f64, a: f64, b: f64| value >= a.min(b) * (1.0 - 1e-12) && value <= a.max(b) * (1.0 + 1e-12);
        prop_assert!(inside(between.yield_stress.pascals(), tau.0, tau.1));
        prop_assert!(inside(between.consistency.pascal_seconds_to_the_n(), 0.05 * tau.0, 0.05 * tau.1));
        prop_assert!(inside(between.index.fraction(), n.0, n.1));
    }
}
