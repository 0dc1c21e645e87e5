//! A quantity for programs: the number in SI, the SI unit, and the words that a person would read.

use oilway_text::{Message, Reader, say};
use oilway_units::{AnyQuantity, Unit};
use schemars::JsonSchema;
use serde::Serialize;

/// A quantity.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct QuantityData {
    /// The number in the unit beside it; null where it is beyond all numbers.
    pub si: Option<f64>,
    /// The SI unit: pascals for a pressure, cubic metres for a volume, kelvins for a temperature. Empty for plain numbers.
    pub unit: &'static str,
    /// The quantity as a person reads it.
    pub text: String,
}

impl QuantityData {
    /// The quantity for this reader.
    pub(crate) fn new(quantity: impl Into<AnyQuantity>, reader: &Reader) -> Self {
        let quantity = quantity.into();
        let text = say(&Message::new("oilway-value").with("value", quantity), reader);
        QuantityData { si: Some(quantity.si).filter(|si| si.is_finite()), unit: si_unit(quantity), text }
    }
}

/// The unit whose numbers are those of SI.
fn si_unit(quantity: AnyQuantity) -> &'static str {
    let is_si = |unit: &&Unit| unit.to_si(1.0) == 1.0 && unit.to_si(0.0) == 0.0;
    Unit::of(quantity.dimension).iter().find(is_si).map_or_else(|| quantity.dimension.name(), Unit::symbol)
}

#[cfg(test)]
mod tests {
    use super::*;
    use oilway_units::{Dimension, Pressure, Temperature};

    #[test]
    fn a_pressure_is_in_pascals_and_a_temperature_in_kelvins() {
        let reader = Reader::default();
        let data = QuantityData::new(Pressure::from_bar(59.3), &reader);
        assert_eq!((data.si, data.unit, data.text.as_str()), (Some(5.93e6), "Pa", "59.3 bar"));
        assert_eq!(QuantityData::new(Temperature::from_celsius(0.0), &reader).si, Some(273.15));
    }

    #[test]
    fn every_dimension_has_a_unit_of_si() {
        let known: Vec<_> = Dimension::ALL.iter().map(|d| (d, si_unit(AnyQuantity::new(*d, 1.0)))).collect();
        let lacking: Vec<_> = known.iter().filter(|(d, unit)| *unit == d.name()).collect();
        assert!(lacking.is_empty(), "{lacking:?}");
    }
}
