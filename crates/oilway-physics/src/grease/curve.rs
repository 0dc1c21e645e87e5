//! A grease whose flow curve is known at several temperatures: the curve at any temperature between them.

use oilway_units::{Consistency, Pressure, Ratio, Temperature};

/// The flow curve of a grease at one temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    /// The temperature of the measurement.
    pub temperature: Temperature,
    /// Yield stress τ0.
    pub yield_stress: Pressure,
    /// Consistency factor K.
    pub consistency: Consistency,
    /// Flow index n.
    pub index: Ratio,
}

/// The flow curve at a temperature inside the measured range, from the rows on both sides of it.
///
/// Yield stress and consistency run in even ratios over the temperature, the index in even steps; a yield stress that
/// vanishes at one end runs straight. Rows may come in any order. Outside the measured range there is no answer: how a
/// curve goes on is the caller's to judge, and its risk in the cold is large.
///
/// ```
/// use oilway_physics::grease::curve::{self, Row};
/// use oilway_units::{Consistency, Pressure, Ratio, Temperature};
///
/// let row = |celsius, tau, k, n| Row {
///     temperature: Temperature::from_celsius(celsius),
///     yield_stress: Pressure::from_pascals(tau),
///     consistency: Consistency::from_pascal_seconds_to_the_n(k),
///     index: Ratio::from_fraction(n),
/// };
/// let rows = [row(25.0, 400.0, 10.0, 0.6), row(-15.0, 1600.0, 90.0, 0.5)];
/// let between = curve::interpolate(&rows, Temperature::from_celsius(5.0)).expect("inside the range");
/// assert!((between.yield_stress.pascals() - 800.0).abs() < 1e-9);
/// assert!((between.consistency.pascal_seconds_to_the_n() - 30.0).abs() < 1e-9);
/// assert!((between.index.fraction() - 0.55).abs() < 1e-12);
/// assert_eq!(curve::interpolate(&rows, Temperature::from_celsius(-20.0)), None);
/// ```
pub fn interpolate(rows: &[Row], temperature: Temperature) -> Option<Row> {
    let colder = rows.iter().filter(|row| row.temperature <= temperature);
    let cold = colder.max_by(|a, b| a.temperature.total_cmp(&b.temperature))?;
    let warmer = rows.iter().filter(|row| row.temperature >= temperature);
    let warm = warmer.min_by(|a, b| a.temperature.total_cmp(&b.temperature))?;
    let span = warm.temperature.above(cold.temperature).kelvins();
    if span <= 0.0 {
        return Some(*cold);
    }
    let share = temperature.above(cold.temperature).kelvins() / span;
    let (k_cold, k_warm) =
        (cold.consistency.pascal_seconds_to_the_n(), warm.consistency.pascal_seconds_to_the_n());
    Some(Row {
        temperature,
        yield_stress: Pressure::from_pascals(even_ratio(
            cold.yield_stress.pascals(),
            warm.yield_stress.pascals(),
            share,
        )),
        consistency: Consistency::from_pascal_seconds_to_the_n(even_ratio(k_cold, k_warm, share)),
        index: cold.index + (warm.index - cold.index) * share,
    })
}

/// A value on the way from one to the other in even ratios; straight where one of them has no logarithm.
fn even_ratio(from: f64, to: f64, share: f64) -> f64 {
    if from > 0.0 && to > 0.0 { from * libm::pow(to / from, share) } else { from + (to - from) * share }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grease::yield_stress_at;
    use oilway_units::TemperatureDifference;

    fn row(celsius: f64, tau: f64) -> Row {
        Row {
            temperature: Temperature::from_celsius(celsius),
            yield_stress: Pressure::from_pascals(tau),
            consistency: Consistency::from_pascal_seconds_to_the_n(10.0),
            index: Ratio::from_fraction(0.6),
        }
    }

    #[test]
    fn a_measured_temperature_gives_its_own_row() {
        let rows = [row(40.0, 300.0), row(0.0, 900.0), row(25.0, 400.0)];
        for measured in rows {
            assert_eq!(interpolate(&rows, measured.temperature), Some(measured));
        }
    }

    #[test]
    fn a_grease_that_halves_evenly_is_met_between_the_rows() {
        let tau = |celsius| {
            yield_stress_at(
                Pressure::from_pascals(500.0),
                Temperature::from_celsius(celsius),
                TemperatureDifference::from_kelvins(20.0),
            )
        };
        let rows = [row(-20.0, tau(-20.0).pascals()), row(40.0, tau(40.0).pascals())];
        let between = interpolate(&rows, Temperature::from_celsius(3.0)).expect("inside the range");
        assert!((between.yield_stress / tau(3.0) - 1.0).abs() < 1e-13);
    }

    #[test]
    fn outside_the_measured_range_nothing_is_said() {
        let rows = [row(0.0, 900.0), row(25.0, 400.0)];
        assert_eq!(interpolate(&rows, Temperature::from_celsius(25.001)), None);
        assert_eq!(interpolate(&rows, Temperature::from_celsius(-0.001)), None);
        assert_eq!(interpolate(&[], Temperature::from_celsius(10.0)), None);
    }

    #[test]
    fn a_yield_stress_that_vanishes_runs_straight() {
        let rows = [row(0.0, 100.0), row(20.0, 0.0)];
        let between = interpolate(&rows, Temperature::from_celsius(15.0)).expect("inside the range");
        assert!((between.yield_stress.pascals() - 25.0).abs() < 1e-9);
    }
}
