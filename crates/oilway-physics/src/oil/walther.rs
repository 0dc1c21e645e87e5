//! Viscosity of an oil against temperature, from two measured points.

use oilway_units::{KinematicViscosity, Temperature};

use crate::{Range, formula};

/// Ends of the scale of the standard, mm²/s (from memory); beyond them there is no answer.
const THINNEST: f64 = 0.21;
const THICKEST: f64 = 2e7;

formula! {
    /// Kinematic viscosity of an oil at any temperature, from its viscosity at two temperatures.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::oil::walther_viscosity;
    /// use oilway_units::{KinematicViscosity, Temperature};
    ///
    /// let viscosity = |celsius| walther_viscosity(
    ///     Temperature::from_celsius(celsius),
    ///     Temperature::from_celsius(40.0), KinematicViscosity::from_square_millimetres_per_second(32.0),
    ///     Temperature::from_celsius(100.0), KinematicViscosity::from_square_millimetres_per_second(5.4),
    /// ).map(|v| format!("{:.2}", v.square_millimetres_per_second()));
    /// assert_eq!(viscosity(80.0).as_deref(), Some("8.53"));
    /// assert_eq!(viscosity(0.0).as_deref(), Some("336.00"));
    /// ```
    WALTHER_VISCOSITY = "oil/walther-viscosity",
    title: "Viscosity of an oil at any temperature",
    equation: "log log Z = A − B log T;  Z = ν + 0.7 + exp(−1.47 − 1.84 ν − 0.51 ν²),  ν in mm²/s, T in K;  A, B through the two points",
    validity: "Mineral and most synthetic oils between about the cloud point and 150 °C. Below the pour point plus 10 K the oil is thicker than the line says, or does not flow at all. No answer outside 0.21 to 2·10⁷ mm²/s, nor from two points of which the warmer is not the thinner.",
    sources: [
        "astm-d341", "equations of the annex; the ends of the scale from memory", SecondHand
    ],
    fn walther_viscosity(
        temperature: Temperature, "T", "temperature asked for", Range::Positive;
        cool: Temperature, "T1", "temperature of the first point", Range::Positive;
        cool_viscosity: KinematicViscosity, "ν1", "viscosity at the first point", Range::Positive;
        warm: Temperature, "T2", "temperature of the second point", Range::Positive;
        warm_viscosity: KinematicViscosity, "ν2", "viscosity at the second point", Range::Positive;
    ) -> Option<KinematicViscosity>, "ν", "kinematic viscosity" {
        let line = Walther::through((cool, cool_viscosity), (warm, warm_viscosity))?;
        line.viscosity(temperature)
    }
}

formula! {
    /// Temperature at which an oil has a wanted viscosity, from its viscosity at two temperatures.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::oil::walther_temperature;
    /// use oilway_units::{KinematicViscosity, Temperature};
    ///
    /// // How cold may this oil of 220 mm²/s get before it is thicker than 2000 mm²/s?
    /// let coldest = walther_temperature(
    ///     KinematicViscosity::from_square_millimetres_per_second(2000.0),
    ///     Temperature::from_celsius(40.0), KinematicViscosity::from_square_millimetres_per_second(220.0),
    ///     Temperature::from_celsius(100.0), KinematicViscosity::from_square_millimetres_per_second(19.4),
    /// );
    /// assert_eq!(coldest.map(|t| format!("{:.1}", t.celsius())).as_deref(), Some("9.6"));
    /// ```
    WALTHER_TEMPERATURE = "oil/walther-temperature",
    title: "Temperature at which an oil has a wanted viscosity",
    equation: "log T = (A − log log Z) / B;  Z, A, B as in oil/walther-viscosity",
    validity: "As oil/walther-viscosity, of which it is the inverse.",
    sources: [
        "astm-d341", "equations of the annex", SecondHand;
        "own-derivation", "solved for the temperature", Own
    ],
    fn walther_temperature(
        viscosity: KinematicViscosity, "ν", "viscosity asked for", Range::Positive;
        cool: Temperature, "T1", "temperature of the first point", Range::Positive;
        cool_viscosity: KinematicViscosity, "ν1", "viscosity at the first point", Range::Positive;
        warm: Temperature, "T2", "temperature of the second point", Range::Positive;
        warm_viscosity: KinematicViscosity, "ν2", "viscosity at the second point", Range::Positive;
    ) -> Option<Temperature>, "T", "temperature" {
        let line = Walther::through((cool, cool_viscosity), (warm, warm_viscosity))?;
        let along = (ln_ln_z(viscosity)? - line.height) / line.slope;
        Some(Temperature::from_kelvin(libm::exp(line.ln_kelvin + along)))
    }
}

/// The straight line of the standard, in natural logarithms: the base moves both axes, never the line.
struct Walther {
    ln_kelvin: f64,
    height: f64,
    slope: f64,
}

impl Walther {
    fn through(
        one: (Temperature, KinematicViscosity),
        two: (Temperature, KinematicViscosity),
    ) -> Option<Self> {
        let (x1, x2) = (libm::log(one.0.kelvin()), libm::log(two.0.kelvin()));
        let (y1, y2) = (ln_ln_z(one.1)?, ln_ln_z(two.1)?);
        let slope = (y2 - y1) / (x2 - x1);
        // Not a number too: two points at one temperature draw no line.
        (slope < 0.0 && slope.is_finite()).then_some(Walther { ln_kelvin: x1, height: y1, slope })
    }

    fn viscosity(&self, temperature: Temperature) -> Option<KinematicViscosity> {
        let along = libm::log(temperature.kelvin()) - self.ln_kelvin;
        let z = libm::exp(libm::exp(self.height + self.slope * along));
        let w = z - 0.7;
        let nu = w - libm::exp(-0.7487 - 3.295 * w + 0.6119 * w * w - 0.3193 * w * w * w);
        (THINNEST..=THICKEST)
            .contains(&nu)
            .then(|| KinematicViscosity::from_square_millimetres_per_second(nu))
    }
}

fn ln_ln_z(viscosity: KinematicViscosity) -> Option<f64> {
    let nu = viscosity.square_millimetres_per_second();
    let z = nu + 0.7 + libm::exp(-1.47 - 1.84 * nu - 0.51 * nu * nu);
    (THINNEST..=THICKEST).contains(&nu).then(|| libm::log(libm::log(z)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(celsius: f64) -> Temperature {
        Temperature::from_celsius(celsius)
    }
    fn mm2_s(value: f64) -> KinematicViscosity {
        KinematicViscosity::from_square_millimetres_per_second(value)
    }
    fn oil(celsius: f64) -> f64 {
        let viscosity = walther_viscosity(at(celsius), at(40.0), mm2_s(220.0), at(100.0), mm2_s(19.4));
        viscosity.expect("inside the scale").square_millimetres_per_second()
    }

    #[test]
    fn the_two_points_lie_on_the_line() {
        assert!((oil(40.0) / 220.0 - 1.0).abs() < 1e-10);
        assert!((oil(100.0) / 19.4 - 1.0).abs() < 1e-10);
    }

    #[test]
    fn either_order_of_the_points_gives_the_same_line() {
        let turned = walther_viscosity(at(0.0), at(100.0), mm2_s(19.4), at(40.0), mm2_s(220.0));
        let turned = turned.expect("inside the scale").square_millimetres_per_second();
        assert!((oil(0.0) / turned - 1.0).abs() < 1e-10);
    }

    #[test]
    fn two_points_that_draw_no_falling_line_give_no_answer() {
        assert_eq!(walther_viscosity(at(0.0), at(40.0), mm2_s(20.0), at(40.0), mm2_s(10.0)), None);
        assert_eq!(walther_viscosity(at(0.0), at(40.0), mm2_s(20.0), at(100.0), mm2_s(20.0)), None);
        assert_eq!(walther_viscosity(at(0.0), at(40.0), mm2_s(20.0), at(100.0), mm2_s(30.0)), None);
    }

    #[test]
    fn the_scale_of_the_standard_ends() {
        assert_eq!(walther_viscosity(at(-90.0), at(40.0), mm2_s(220.0), at(100.0), mm2_s(19.4)), None);
        assert_eq!(walther_viscosity(at(20.0), at(40.0), mm2_s(0.2), at(100.0), mm2_s(0.1)), None);
        assert!(walther_viscosity(at(-40.0), at(40.0), mm2_s(220.0), at(100.0), mm2_s(19.4)).is_some());
    }

    #[test]
    fn the_temperature_undoes_the_viscosity() {
        for celsius in [-20.0, 0.0, 40.0, 75.0] {
            let back =
                walther_temperature(mm2_s(oil(celsius)), at(40.0), mm2_s(220.0), at(100.0), mm2_s(19.4));
            assert!((back.expect("inside the scale").celsius() - celsius).abs() < 1e-9);
        }
    }

    #[test]
    fn agrees_with_the_standards_own_logarithms() {
        // Second route, base 10 and A, B as printed for this oil: 9.530815125 and 3.746578424 (own-computed).
        let (a, b) = (9.530_815_125, 3.746_578_424);
        let z = 10f64.powf(10f64.powf(a - b * 353.15_f64.log10()));
        let ours = walther_viscosity(at(80.0), at(40.0), mm2_s(32.0), at(100.0), mm2_s(5.4));
        let ours = ours.expect("inside the scale").square_millimetres_per_second();
        assert!((ours / (z - 0.7) - 1.0).abs() < 1e-7);
    }
}
