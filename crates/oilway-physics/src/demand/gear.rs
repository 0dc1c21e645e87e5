//! Open gears by the standard's table, and the oil for the mesh of enclosed ones.

use oilway_units::{
    Count, Density, Flow, Frequency, Length, Power, Ratio, SpecificHeat, TemperatureDifference, Time,
};

use super::oil_for_heat;
use crate::{Range, formula};

/// Smallest and largest wheel of the standard's table: 8 and 44 ft.
pub const OPEN_GEAR_DIAMETERS: (Length, Length) = (Length::from_feet(8.0), Length::from_feet(44.0));
/// Narrowest and widest face of the standard's table: 6 and 40 in.
pub const OPEN_GEAR_FACES: (Length, Length) = (Length::from_inches(6.0), Length::from_inches(40.0));

formula! {
    /// The lubricant that an open gear wants while it runs, by intermittent spray, drip or brush.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::open_gear_rate;
    /// use oilway_units::Length;
    ///
    /// // The table's corner of 44 ft and 40 in.
    /// let rate = open_gear_rate(Length::from_feet(44.0), Length::from_inches(40.0));
    /// assert_eq!(format!("{:.2}", rate.cubic_centimetres_per_minute()), "2.99");
    /// ```
    OPEN_GEAR_RATE = "demand/open-gear",
    title: "Lubricant for an open gear by intermittent application",
    equation: "Q = 0.34 + 0.05·(D − 8 ft) + 0.025·(b − 6 in)   (ml/min, D in ft, b in in; smaller gears as 8 ft and 6 in)",
    validity: "Pitch-line speed below 7.5 m/s; wheels of 8 to 44 ft (2.4 to 13.4 m) and faces of 6 to 40 in (152 to 1016 mm), where the plane gives every printed cell. Smaller gears get what the table gives the smallest, larger ones the plane carried on: both are outside the standard. Continuous dip or circulation needs much more.",
    sources: [
        "agma-9005-e02", "Table D-3; one row of the copy seen prints 11.1 m for 36 ft", Seen;
        "own-derivation", "the plane through the table", Own
    ],
    fn open_gear_rate(
        diameter: Length, "D", "diameter of the driven wheel", Range::Positive;
        face_width: Length, "b", "face width", Range::Positive;
    ) -> Flow, "Q", "mean rate while the gear runs" {
        let feet = diameter.feet().max(OPEN_GEAR_DIAMETERS.0.feet());
        let inches = face_width.inches().max(OPEN_GEAR_FACES.0.inches());
        Flow::from_cubic_centimetres_per_minute(0.34 + 0.05 * (feet - 8.0) + 0.025 * (inches - 6.0))
    }
}

formula! {
    /// How long one spraying of an open gear must last to reach all teeth.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::spray_time;
    /// use oilway_units::{Count, Frequency};
    ///
    /// let time = spray_time(Frequency::from_per_minute(16.0), Count::from_number(2.0));
    /// assert_eq!(format!("{:.2}", time.seconds()), "7.50");
    /// ```
    SPRAY_TIME = "demand/spray-time",
    title: "Duration of one spraying of an open gear",
    equation: "t = i / n",
    validity: "n of the wheel that is sprayed, the driven one; at least one revolution, better two. Infinite for a wheel that stands.",
    sources: ["agma-9005-e02", "Table D-3 note 1", Seen],
    fn spray_time(
        speed: Frequency, "n", "speed of the sprayed wheel", Range::Positive;
        revolutions: Count, "i", "revolutions during one spraying", Range::Positive;
    ) -> Time, "t", "duration of one spraying" {
        Time::from_seconds(revolutions.number() / speed.per_second())
    }
}

formula! {
    /// The oil that carries the loss of the meshes of an enclosed gear away.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::mesh_flow;
    /// use oilway_units::{Count, Density, Power, Ratio, SpecificHeat, TemperatureDifference};
    ///
    /// let flow = mesh_flow(
    ///     Power::from_kilowatts(100.0), Count::from_number(1.0), Ratio::from_fraction(0.01),
    ///     Density::from_kilograms_per_cubic_metre(880.0), SpecificHeat::from_joules_per_kilogram_kelvin(1950.0),
    ///     TemperatureDifference::from_kelvins(20.0),
    /// );
    /// assert_eq!(format!("{:.3}", flow.litres_per_minute()), "1.748");
    /// ```
    MESH_FLOW = "demand/mesh-flow",
    title: "Oil for the meshes of an enclosed gear",
    equation: "Q = x · P · z / (ρ · c · ΔT)",
    validity: "x is 0.005 to 0.01 for each spur or helical mesh; oil in at 38 to 54 °C, rise 17 to 28 K, sump up to 95 °C. Splash alone serves up to 13 m/s at the pitch line, 18 m/s with an oil pan.",
    sources: [
        "booser-vol2", "chapter on gears", Seen;
        "own-derivation", "heat balance", Own
    ],
    fn mesh_flow(
        power: Power, "P", "power transmitted", Range::NotNegative;
        meshes: Count, "z", "meshes that transmit it one after the other", Range::NotNegative;
        loss: Ratio, "x", "share of the power lost in each mesh", Range::Between(0.0, 1.0);
        density: Density, "ρ", "density of the oil", Range::Positive;
        specific_heat: SpecificHeat, "c", "specific heat of the oil", Range::Positive;
        rise: TemperatureDifference, "ΔT", "temperature rise allowed to the oil", Range::Positive;
    ) -> Flow, "Q", "oil flow" {
        oil_for_heat(power * (loss.fraction() * meshes.number()), density, specific_heat, rise)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rate(feet: f64, inches: f64) -> f64 {
        open_gear_rate(Length::from_feet(feet), Length::from_inches(inches)).cubic_centimetres_per_minute()
    }

    #[test]
    fn the_plane_meets_the_printed_corners() {
        // agma-9005-e02, Table D-3, seen: printed to 0.01 ml/min.
        for (feet, inches, printed) in
            [(8.0, 6.0, 0.34), (8.0, 40.0, 1.19), (44.0, 6.0, 2.14), (44.0, 40.0, 2.99)]
        {
            assert!((rate(feet, inches) - printed).abs() < 1e-9, "{feet} ft {inches} in");
        }
    }

    #[test]
    fn a_gear_below_the_table_gets_what_the_smallest_gets() {
        assert_eq!(rate(1.0, 1.0), rate(8.0, 6.0));
        assert!(rate(8.1, 6.0) > rate(8.0, 6.0));
        assert!(rate(8.0, 6.1) > rate(8.0, 6.0));
    }

    #[test]
    fn a_gear_without_loss_needs_no_oil_for_heat() {
        let flow = |loss: f64| {
            mesh_flow(
                Power::from_kilowatts(10.0),
                Count::from_number(2.0),
                Ratio::from_fraction(loss),
                Density::from_kilograms_per_cubic_metre(880.0),
                SpecificHeat::from_joules_per_kilogram_kelvin(1950.0),
                TemperatureDifference::from_kelvins(20.0),
            )
        };
        assert_eq!(flow(0.0), Flow::ZERO);
        assert!((flow(0.01) / flow(0.005) - 2.0).abs() < 1e-14);
    }

    #[test]
    fn two_revolutions_take_twice_as_long_as_one() {
        let time = |i: f64| spray_time(Frequency::from_per_minute(16.0), Count::from_number(i)).seconds();
        assert!((time(1.0) - 3.75).abs() < 1e-12 && (time(2.0) - 7.5).abs() < 1e-12);
    }
}
