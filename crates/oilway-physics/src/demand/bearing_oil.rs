//! Oil for rolling bearings: what passes through, what is the least, what carries the heat away.

use oilway_units::{Count, Density, Flow, Length, Power, SpecificHeat, TemperatureDifference};

use crate::{Range, formula};

formula! {
    /// A guide to the oil that is circulated through a rolling bearing under pressure.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::oil_circulation;
    /// use oilway_units::Length;
    ///
    /// let flow = oil_circulation(Length::from_millimetres(180.0), Length::from_millimetres(46.0));
    /// assert_eq!(format!("{:.2}", flow.cubic_centimetres_per_minute()), "49.68");
    /// ```
    OIL_CIRCULATION = "demand/oil-circulation",
    title: "Oil circulated through a rolling bearing",
    equation: "Q = 0.6 cm³/min for each cm² of D · B",
    validity: "A guide for oil that is circulated under pressure and comes back. In the end the heat decides: see demand/heat-flow. Far more than a total-loss feed needs.",
    sources: ["neale-1995", "C8.5", Seen],
    fn oil_circulation(
        outside: Length, "D", "outside diameter of the bearing", Range::Positive;
        width: Length, "B", "width of the bearing", Range::Positive;
    ) -> Flow, "Q", "oil flow" {
        Flow::from_cubic_centimetres_per_minute(0.6 * outside.centimetres() * width.centimetres())
    }
}

formula! {
    /// The least oil that keeps a rolling bearing alive: so much for each inch of bore and each row.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::oil_minimum;
    /// use oilway_units::{Count, Flow, Length};
    ///
    /// let oil = oil_minimum(
    ///     Length::from_millimetres(50.8), Count::from_number(2.0), Flow::from_cubic_centimetres_per_hour(0.2),
    /// );
    /// assert_eq!(format!("{:.2}", oil.cubic_centimetres_per_hour()), "0.80");
    /// ```
    OIL_MINIMUM = "demand/oil-minimum",
    title: "Least oil of a rolling bearing by bore and rows",
    equation: "q = a · i · d / 25.4 mm",
    validity: "Mist and other minimum-quantity feeds. a is 0.1 to 0.3 cm³/h, up to 0.6 for preloaded units; the bearing-inch rule of spindle makers, 0.01 US fl oz/h, is 0.2957 cm³/h. For a ball screw each loaded circuit may be taken as one row with the screw's diameter as bore: an analogy, no source.",
    sources: [
        "neale-1995", "C8.5", Seen;
        "ps-2002", "bearing-inch rule with a worked example", Seen
    ],
    fn oil_minimum(
        bore: Length, "d", "bore of the bearing", Range::Positive;
        rows: Count, "i", "rows of rolling elements", Range::NotNegative;
        rate_per_inch: Flow, "a", "oil for each inch of bore and each row", Range::NotNegative;
    ) -> Flow, "q", "mean oil rate" {
        rate_per_inch * (rows.number() * bore.inches())
    }
}

formula! {
    /// The oil flow that carries a loss of power away.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::oil_for_heat;
    /// use oilway_units::{Density, Power, SpecificHeat, TemperatureDifference};
    ///
    /// let flow = oil_for_heat(
    ///     Power::from_kilowatts(1.0), Density::from_kilograms_per_cubic_metre(880.0),
    ///     SpecificHeat::from_joules_per_kilogram_kelvin(1950.0), TemperatureDifference::from_kelvins(20.0),
    /// );
    /// assert_eq!(format!("{:.3}", flow.litres_per_minute()), "1.748");
    /// ```
    OIL_FOR_HEAT = "demand/heat-flow",
    title: "Oil flow that carries heat away",
    equation: "Q = P / (ρ · c · ΔT)",
    validity: "All of the loss goes into the oil: what housing and shaft give off is left out, so the flow is on the safe side. Mineral oil has c of about 1900 to 2000 J/(kg·K).",
    sources: [
        "own-derivation", "heat balance", Own;
        "common-practice", "specific heat of mineral oil", Memory
    ],
    fn oil_for_heat(
        loss: Power, "P", "power lost in the bearing or mesh", Range::NotNegative;
        density: Density, "ρ", "density of the oil", Range::Positive;
        specific_heat: SpecificHeat, "c", "specific heat of the oil", Range::Positive;
        rise: TemperatureDifference, "ΔT", "temperature rise allowed to the oil", Range::Positive;
    ) -> Flow, "Q", "oil flow" {
        let heat_per_volume =
            density.kilograms_per_cubic_metre() * specific_heat.joules_per_kilogram_kelvin() * rise.kelvins();
        Flow::from_cubic_metres_per_second(loss.watts() / heat_per_volume)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_upper_end_of_the_range_and_the_bearing_inch_rule_are_the_same_number() {
        // Two sources: 0.3 cm³/h (neale-1995) against 0.01 US fl oz/h (ps-2002).
        let (bore, one) = (Length::from_inches(1.0), Count::from_number(1.0));
        let metric = oil_minimum(bore, one, Flow::from_cubic_centimetres_per_hour(0.3));
        let inch = oil_minimum(bore, one, Flow::from_cubic_inches_per_hour(0.01 * 231.0 / 128.0));
        assert!(
            (inch / metric - 1.0).abs() < 0.015,
            "{} {}",
            inch.cubic_centimetres_per_hour(),
            metric.cubic_centimetres_per_hour()
        );
    }

    #[test]
    fn the_oil_takes_up_exactly_the_loss() {
        let (rho, c, rise) = (870.0, 1930.0, 15.0);
        let flow = oil_for_heat(
            Power::from_watts(750.0),
            Density::from_kilograms_per_cubic_metre(rho),
            SpecificHeat::from_joules_per_kilogram_kelvin(c),
            TemperatureDifference::from_kelvins(rise),
        );
        assert!((flow.cubic_metres_per_second() * rho * c * rise - 750.0).abs() < 1e-9);
    }

    #[test]
    fn ten_square_centimetres_get_six_cubic_centimetres_a_minute() {
        let flow = oil_circulation(Length::from_centimetres(5.0), Length::from_centimetres(2.0));
        assert!((flow.cubic_centimetres_per_minute() - 6.0).abs() < 1e-12);
    }
}
