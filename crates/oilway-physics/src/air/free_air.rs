//! Free air: what one filling of the motor takes from the compressor.

use oilway_units::{AbsolutePressure, Temperature, Volume};

use super::{REFERENCE_PRESSURE, REFERENCE_TEMPERATURE};
use crate::{Range, formula};

formula! {
    /// Free air that one filling of a motor chamber takes.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::air::free_air;
    /// use oilway_units::{AbsolutePressure, Temperature, Volume};
    ///
    /// // 63 × 50 mm single-acting, 20 cm³ of clearance, 6 bar on the gauge.
    /// let air = free_air(
    ///     Volume::from_cubic_centimetres(155.86), Volume::from_cubic_centimetres(20.0), AbsolutePressure::from_bar(7.013),
    ///     AbsolutePressure::from_bar(1.013), Temperature::from_celsius(20.0),
    /// );
    /// assert_eq!(format!("{:.3}", air.litres()), "1.213");
    /// ```
    FREE_AIR = "air/free-air",
    title: "Free air for one filling of a motor chamber",
    equation: "V = ((V_s + V_c) p − V_c p_r) / p0 · T0 / T;  p0 = 1 bar,  T0 = 293.15 K",
    validity: "Mass-exact for a chamber that settles at the supply pressure and was vented to the residual pressure. Add both chambers of a double-acting drive. It sizes the compressor; valve and tube are sized by the peak of one stroke, often 5 to 10 times the mean. The books' short rule over-counts the clearance and takes another base, 1.3 % apart.",
    sources: [
        "iso-8778", "reference atmosphere, 20 °C and 100 kPa", SecondHand;
        "own-derivation", "mass of air in the chamber after and before", Own
    ],
    fn free_air(
        swept: Volume, "V_s", "volume swept by the air piston", Range::NotNegative;
        clearance: Volume, "V_c", "clearance and tube, which keep the residual pressure", Range::NotNegative;
        supply: AbsolutePressure, "p", "pressure reached in the chamber, absolute", Range::Positive;
        residual: AbsolutePressure, "p_r", "pressure left after venting, absolute", Range::NotNegative;
        temperature: Temperature, "T", "temperature of the air in the chamber", Range::Positive;
    ) -> Volume, "V", "free air at 20 °C and 1 bar" {
        let (vs, vc) = (swept.cubic_metres(), clearance.cubic_metres());
        let filled = (vs + vc) * supply.pascals() - vc * residual.pascals();
        Volume::from_cubic_metres(filled / REFERENCE_PRESSURE * (REFERENCE_TEMPERATURE / temperature.kelvin()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn litres(swept: f64, clearance: f64, supply: f64, residual: f64, kelvin: f64) -> f64 {
        free_air(
            Volume::from_litres(swept),
            Volume::from_litres(clearance),
            AbsolutePressure::from_bar(supply),
            AbsolutePressure::from_bar(residual),
            Temperature::from_kelvin(kelvin),
        )
        .litres()
    }

    #[test]
    fn at_the_reference_state_free_air_is_the_swept_volume() {
        assert!((litres(0.6, 0.2, 1.0, 1.0, 293.15) - 0.6).abs() < 1e-15);
    }

    #[test]
    fn a_chamber_that_was_not_vented_takes_only_what_it_sweeps() {
        assert!((litres(0.6, 0.2, 7.0, 7.0, 293.15) - 4.2).abs() < 1e-14);
    }

    #[test]
    fn the_masses_by_the_gas_law_agree() {
        // Second route: count the gas in moles, then spread it at the reference state.
        let gas = 8.314_462_618;
        let moles = |p: f64, v: f64, t: f64| p * v / (gas * t);
        let added = moles(6.5e5, 0.7e-3, 310.0) - moles(1.2e5, 0.1e-3, 310.0);
        let spread = added * gas * 293.15 / 1e5 * 1e3;
        assert!((litres(0.6, 0.1, 6.5, 1.2, 310.0) / spread - 1.0).abs() < 1e-14);
    }
}
