//! How temperature moves the burst pressure: cold makes a disc stronger, which is the unsafe direction.
//!
//! [`curves`] holds screening factors by metal, almost all of them from memory: a disc maker's certificate wins. Where only
//! one pair of marks is known, [`linear_temperature_factor`] draws the straight line.

use std::sync::LazyLock;

use oilway_units::{PerTemperature, Ratio, Temperature};

use crate::{Range, Standing, formula};

formula! {
    /// Burst pressure at a disc temperature over that at the marking temperature, by a straight line on either side.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::disc::linear_temperature_factor;
    /// use oilway_units::{PerTemperature, Temperature};
    ///
    /// // 0.1 % for each kelvin in the cold, 0.22 % in the heat.
    /// let factor = |celsius| {
    ///     linear_temperature_factor(
    ///         Temperature::from_celsius(celsius), Temperature::from_celsius(20.0),
    ///         PerTemperature::from_percent_per_kelvin(0.1), PerTemperature::from_percent_per_kelvin(0.22),
    ///     )
    ///     .fraction()
    /// };
    /// assert_eq!(format!("{:.3} {:.3}", factor(-28.0), factor(100.0)), "1.048 0.824");
    /// ```
    LINEAR_TEMPERATURE = "disc/linear-temperature",
    title: "Temperature factor of the burst pressure by a straight line",
    equation: "f = 1 − k (T − T0);  k = k_below if T < T0, else k_above;  not below 0",
    validity: "T is that of the disc itself, which sits in a dead end and follows its surroundings. The slopes come from a certificate or from two marks; a positive slope makes the disc weaker as it warms. Good between the marks only.",
    sources: [
        "leckner", "part 4, burst pressure falls as the disc warms", Seen;
        "own-derivation", "straight line between two marks", Own
    ],
    fn linear_temperature_factor(
        temperature: Temperature, "T", "temperature of the disc", Range::Positive;
        reference: Temperature, "T0", "temperature at which the disc is marked", Range::Positive;
        per_kelvin_below: PerTemperature, "k_below", "fall of the burst pressure for each kelvin, below the marking temperature", Range::Any;
        per_kelvin_above: PerTemperature, "k_above", "fall of the burst pressure for each kelvin, above the marking temperature", Range::Any;
    ) -> Ratio, "f", "burst pressure at T over burst pressure at T0" {
        let warmer = temperature.above(reference).kelvins();
        let slope = if warmer < 0.0 { per_kelvin_below } else { per_kelvin_above };
        Ratio::from_fraction((1.0 - slope.per_kelvin() * warmer).max(0.0))
    }
}

/// The screening curve of one disc metal.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// The lasting name of the metal: `aluminium`, `nickel`, …
    pub metal: &'static str,
    /// Temperature and factor against about 20 °C, rising in temperature.
    pub knots: Vec<(Temperature, Ratio)>,
    /// What the factors were made from.
    pub basis: &'static str,
    /// How far they can be trusted.
    pub standing: Standing,
}

impl Curve {
    /// Factor against about 20 °C, by straight lines between the knots; nothing outside them.
    ///
    /// ```
    /// use oilway_physics::disc::temperature::curve;
    /// use oilway_units::Temperature;
    ///
    /// let aluminium = curve("aluminium").unwrap();
    /// assert_eq!(aluminium.factor(Temperature::from_celsius(100.0)).unwrap().fraction(), 0.778);
    /// assert!(aluminium.factor(Temperature::from_celsius(300.0)).is_none());
    /// ```
    pub fn factor(&self, temperature: Temperature) -> Option<Ratio> {
        let last = self.knots.last()?;
        if temperature == last.0 {
            return Some(last.1);
        }
        let pair = self.knots.windows(2).find(|w| w[0].0 <= temperature && temperature < w[1].0)?;
        let ((t0, f0), (t1, f1)) = (pair[0], pair[1]);
        let along = temperature.above(t0) / t1.above(t0);
        Some(f0 + (f1 - f0) * along)
    }

    /// The lowest and the highest factor while the disc goes through all temperatures from `coldest` to `hottest`, against
    /// its factor at the temperature at which it is `marked`. Not every metal falls steadily, so the ends alone would not do.
    pub fn span(
        &self,
        coldest: Temperature,
        hottest: Temperature,
        marked: Temperature,
    ) -> Option<(Ratio, Ratio)> {
        let base = self.factor(marked)?.fraction();
        let ends = [self.factor(coldest)?, self.factor(hottest)?];
        let between = self.knots.iter().filter(|(t, _)| coldest <= *t && *t <= hottest).map(|(_, f)| *f);
        let (low, high) = ends
            .into_iter()
            .chain(between)
            .fold((ends[0], ends[0]), |(low, high), f| (low.min(f), high.max(f)));
        Some((Ratio::from_fraction(low.fraction() / base), Ratio::from_fraction(high.fraction() / base)))
    }
}

/// The screening curves of all metals, in the order of the table.
pub fn curves() -> &'static [Curve] {
    static CURVES: LazyLock<Vec<Curve>> = LazyLock::new(|| read(TABLE));
    &CURVES
}

/// The screening curve of this metal.
pub fn curve(metal: &str) -> Option<&'static Curve> {
    curves().iter().find(|curve| curve.metal == metal)
}

/// Built in, and guarded by the tests below: a row that did not read would be missed there.
const TABLE: &str = include_str!("../../../../data/relief/temperature_factors.csv");

fn read(table: &'static str) -> Vec<Curve> {
    let mut curves: Vec<Curve> = Vec::new();
    for row in table.lines().filter(|line| !line.starts_with('#')).skip(1) {
        let cells: Vec<&'static str> = row.split(',').collect();
        let [metal, celsius, factor, basis, standing, ..] = cells[..] else { continue };
        let (Ok(celsius), Ok(factor), Some(standing)) =
            (celsius.parse(), factor.parse(), super::types::standing(standing))
        else {
            continue;
        };
        let knot = (Temperature::from_celsius(celsius), Ratio::from_fraction(factor));
        match curves.last_mut().filter(|curve| curve.metal == metal) {
            Some(curve) => curve.knots.push(knot),
            None => curves.push(Curve { metal, knots: vec![knot], basis, standing }),
        }
    }
    curves
}

#[cfg(test)]
mod tests {
    use super::*;

    fn celsius(value: f64) -> Temperature {
        Temperature::from_celsius(value)
    }

    #[test]
    fn the_table_is_whole() {
        let rows: usize = curves().iter().map(|c| c.knots.len()).sum();
        let sum: f64 = curves().iter().flat_map(|c| &c.knots).map(|(_, f)| f.fraction()).sum();
        assert_eq!((curves().len(), rows), (5, 26));
        assert!((sum - 24.295).abs() < 1e-9, "{sum}");
        for curve in curves() {
            assert!(curve.knots.windows(2).all(|w| w[0].0 < w[1].0), "{}", curve.metal);
            assert_eq!(curve.standing, Standing::Memory, "{}", curve.metal);
        }
    }

    #[test]
    fn the_knots_are_met_and_the_line_between_them_is_straight() {
        let nickel = curve("nickel").unwrap();
        assert_eq!(nickel.factor(celsius(260.0)).unwrap().fraction(), 1.0);
        assert!((nickel.factor(celsius(-10.0)).unwrap().fraction() - 1.02).abs() < 1e-12);
        assert!(nickel.factor(celsius(-41.0)).is_none());
        assert!(nickel.factor(celsius(260.1)).is_none());
    }

    #[test]
    fn a_span_sees_the_knots_inside_it() {
        // Between 20 and 260 °C nickel dips to 0.99 although both ends are at 1.
        let (low, high) =
            curve("nickel").unwrap().span(celsius(20.0), celsius(260.0), celsius(20.0)).unwrap();
        assert_eq!((low.fraction(), high.fraction()), (0.99, 1.0));
    }

    #[test]
    fn at_the_marking_temperature_the_factor_is_one_and_the_two_slopes_keep_to_their_sides() {
        let at = |t: f64| {
            linear_temperature_factor(
                celsius(t),
                celsius(20.0),
                PerTemperature::from_per_kelvin(0.001),
                PerTemperature::from_per_kelvin(0.002),
            )
            .fraction()
        };
        assert_eq!(at(20.0), 1.0);
        assert!((at(10.0) - 1.01).abs() < 1e-12);
        assert!((at(30.0) - 0.98).abs() < 1e-12);
        assert_eq!(at(600.0), 0.0);
    }

    #[test]
    fn a_line_through_two_marks_meets_both() {
        // 197 psi at 250 °F and 215 psi at 72 °F: the published pair behind the calibration.
        let (cold, hot) = (Temperature::from_fahrenheit(72.0), Temperature::from_fahrenheit(250.0));
        let slope = PerTemperature::from_per_kelvin((1.0 - 197.0 / 215.0) / hot.above(cold).kelvins());
        let factor = linear_temperature_factor(hot, cold, slope, slope).fraction();
        assert!((factor * 215.0 - 197.0).abs() < 1e-9);
    }
}
