//! The corrections of a greasing interval: temperature, position and size by the trade, dirt, water and vibration by the
//! tables of the factor-product method, and what other methods would say beside them.

use oilway_text::message;
use oilway_units::{Length, Ratio, Time};

use super::working::{Kept, Working, constant};
use crate::demand::tables;
use crate::demand::*;
use crate::{Range, formula};

formula! {
    /// The product of the corrections of a greasing interval, as points of a job are worked out.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::points::interval_factor;
    /// use oilway_units::Ratio;
    ///
    /// let [hot, upright, small, dusty, damp, quiet] = [0.5, 0.5, 1.0, 0.7, 0.7, 1.0].map(Ratio::from_fraction);
    /// let factor = interval_factor(hot, upright, small, dusty, damp, quiet);
    /// assert_eq!(format!("{:.4}", factor.fraction()), "0.1225");
    /// ```
    INTERVAL_FACTOR = "points/interval-factor",
    title: "Product of the corrections of a greasing interval",
    equation: "f = fT · fp · fd · Fc · Fm · Fv",
    validity: "Temperature, position of the shaft and large bore by the trade's corrections, which give no number for dirt, water and vibration; those three come from the tables of the factor-product method, and only where the surroundings are said to be so. Temperature and position are taken from one method only. The whole of the other method may give half or double.",
    sources: [
        "trade-bearing", "temperature, position, bore", Seen;
        "maintenance-training", "dirt, water, vibration", Memory;
        "own-derivation", "the two joined", Own
    ],
    fn interval_factor(
        temperature_factor: Ratio, "fT", "temperature", Range::NotNegative;
        position: Ratio, "fp", "position of the shaft", Range::Between(0.0, 1.0);
        size: Ratio, "fd", "bore above 300 mm", Range::Between(0.0, 1.0);
        contamination: Ratio, "Fc", "dirt", Range::Between(0.0, 1.0);
        moisture: Ratio, "Fm", "water", Range::Between(0.0, 1.0);
        vibration: Ratio, "Fv", "vibration", Range::Between(0.0, 1.0);
    ) -> Ratio, "f", "multiplies the interval" {
        let trade = temperature_factor.fraction() * position.fraction() * size.fraction();
        let training = contamination.fraction() * moisture.fraction() * vibration.fraction();
        Ratio::from_fraction(trade * training)
    }
}

/// The corrections of the interval.
pub(super) struct Corrections {
    temperature: Kept<Ratio>,
    position: Kept<Ratio>,
    size: Kept<Ratio>,
    pub(super) dirt: Kept<Ratio>,
    pub(super) water: Kept<Ratio>,
    pub(super) vibration: Kept<Ratio>,
}

impl Corrections {
    pub(super) fn of(working: &mut Working<'_>, bore: Length) -> Self {
        let temperature = working.temperature();
        let temperature = working.keep(
            "interval.temperature",
            &TEMPERATURE_FACTOR,
            temperature_factor(temperature.value),
            &[temperature.into()],
        );
        let severity = working.around.severity;
        Corrections {
            temperature,
            position: table(position_row(working.word("shaft"))),
            size: table(
                (bore > Length::from_millimetres(300.0))
                    .then_some((tables::TRADE_CORRECTION, "bore above 300 mm")),
            ),
            dirt: table(dirt_row(severity.dirt)),
            water: table(water_row(severity.water)),
            vibration: table(vibration_row(severity.vibration)),
        }
    }
    fn product(&self) -> Ratio {
        interval_factor(
            self.temperature.value,
            self.position.value,
            self.size.value,
            self.dirt.value,
            self.water.value,
            self.vibration.value,
        )
    }
    /// What the trade's corrections alone give, without the factors for dirt, water and vibration.
    fn trade_alone(&self) -> Ratio {
        let one = Ratio::from_fraction(1.0);
        interval_factor(self.temperature.value, self.position.value, self.size.value, one, one, one)
    }
}

/// A table and the key of a row of it; none is a factor of one.
pub(super) type RowOf = Option<(&'static [tables::Row], &'static str)>;

pub(super) fn table(row: RowOf) -> Kept<Ratio> {
    // A key that no table has would be a slip in this file, against which a test stands; one is the factor of no row.
    constant(Ratio::from_fraction(row.and_then(|(table, key)| tables::value(table, key)).unwrap_or(1.0)))
}

fn position_row(shaft: Option<&str>) -> RowOf {
    match shaft {
        Some("vertical") => Some((tables::TRADE_CORRECTION, "vertical shaft")),
        // The trade has no number between; the training tables have, the same as the trade's for an upright shaft.
        Some("sloping") => Some((tables::SHAFT_POSITION, "45 degrees")),
        _ => None,
    }
}

/// Dust counts as light, the job's abrasive dust as light too: heavy abrasive dirt is not a place for a bearing.
fn dirt_row(grade: u8) -> RowOf {
    match grade {
        0 | 1 => None,
        2 => Some((tables::CONTAMINATION, "heavy, non-abrasive")),
        _ => Some((tables::CONTAMINATION, "light, abrasive")),
    }
}

/// Splash is water on the housing; so is spray, for which the table ends.
fn water_row(grade: u8) -> RowOf {
    match grade {
        0 => None,
        1 => Some((tables::MOISTURE, "80 to 90 % humidity")),
        _ => Some((tables::MOISTURE, "occasional water on the housing")),
    }
}

fn vibration_row(grade: u8) -> RowOf {
    match grade {
        0 => None,
        1 => Some((tables::VIBRATION, "5 to 10 mm/s")),
        _ => Some((tables::VIBRATION, "above 10 mm/s")),
    }
}

/// The interval in force, with what other methods would say as a remark.
pub(super) fn corrected(
    working: &mut Working<'_>,
    base: Kept<Time>,
    corrections: &Corrections,
) -> Kept<Time> {
    let c = corrections;
    let factor = working.keep(
        "interval.factor",
        &INTERVAL_FACTOR,
        corrections.product(),
        &[c.temperature, c.position, c.size, c.dirt, c.water, c.vibration].map(Into::into),
    );
    let interval = working.keep(
        "interval",
        &CORRECTED_INTERVAL,
        corrected_interval(base.value, factor.value),
        &[base.into(), factor.into()],
    );
    let alone = corrected_interval(base.value, corrections.trade_alone());
    let product = corrected_interval(base.value, factor_product(working, corrections));
    working.note(message!("physics-point-methods", used = interval.value, alone = alone, product = product));
    interval
}

/// The vibration factor that counts for what dirt and water ask for at rest. Where the longest interval caps the corrected one, the
/// rate is larger than the factors say and the share is smaller by as much, so that rougher surroundings never ask for less.
pub(super) fn vibration_at_rest(
    working: &mut Working<'_>,
    base: Kept<Time>,
    interval: Kept<Time>,
    corrections: &Corrections,
) -> Kept<Ratio> {
    let uncapped = base.value * corrections.product().fraction();
    if uncapped <= interval.value {
        return corrections.vibration;
    }
    let value = corrections.vibration.value * (interval.value / uncapped);
    let terms = [corrections.vibration.into(), base.into(), interval.into()];
    working.judge("vibration.capped", value, "physics-point-capped", &terms)
}

/// The whole of the factor-product method.
fn factor_product(working: &Working<'_>, corrections: &Corrections) -> Ratio {
    let position = match working.word("shaft") {
        Some("vertical") => Some((tables::SHAFT_POSITION, "vertical")),
        other => position_row(other),
    };
    service_factor(
        housing_temperature_factor(working.around.temperature),
        corrections.dirt.value,
        corrections.water.value,
        corrections.vibration.value,
        table(position).value,
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_that_is_asked_for_stands_in_its_table() {
        let shafts = [Some("vertical"), Some("sloping"), Some("horizontal"), None].map(position_row);
        let grades = (0..=4).flat_map(|grade| [dirt_row(grade), water_row(grade), vibration_row(grade)]);
        let size = [Some((tables::TRADE_CORRECTION, "bore above 300 mm"))];
        for (table, key) in grades.chain(shafts).chain(size).flatten() {
            assert!(tables::value(table, key).is_some(), "{key}");
        }
    }

    #[test]
    fn a_worse_grade_never_lengthens_the_interval() {
        for row in [dirt_row, water_row, vibration_row] {
            let factors: Vec<Ratio> = (0..=4).map(|grade| table(row(grade)).value).collect();
            assert!(factors.windows(2).all(|pair| pair[1] <= pair[0]));
            assert!(factors[4] < factors[0]);
        }
    }
}
