//! Carriages of linear rolling guides.

use oilway_text::message;
use oilway_units::{Dimension, Flow, Length, Mass, Ratio};

use super::fields::{MM, PER_MINUTE, if_any, needed, span};
use super::working::{Kept, Working, constant};
use super::{Answers, Around, Demand, NoDemand, PointField, PointKind};
use crate::demand::tables::TRAVEL;
use crate::demand::{TRAVEL_INTERVAL, travel_interval};
use crate::{Ledger, Range, formula};

/// Rail width of the carriage whose quantities are known: "a small ball guide" is judged to be of size 20.
const KNOWN_SIZE: Length = Length::from_millimetres(20.0);
/// Middle of the 0.5 to 1.2 g of that carriage.
const KNOWN_GREASE: Mass = Mass::from_grams(0.85);
/// Oil of that carriage.
const KNOWN_OIL: Flow = Flow::from_cubic_centimetres_per_hour(0.02);

formula! {
    /// Grease of one relubrication of a carriage.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::points::carriage_grease;
    /// use oilway_units::Length;
    ///
    /// assert_eq!(format!("{:.2}", carriage_grease(Length::from_millimetres(40.0)).grams()), "3.40");
    /// ```
    CARRIAGE_GREASE = "points/carriage-grease",
    title: "Grease of one relubrication of a guide carriage",
    equation: "G = 0.85 g · (b / 20 mm)²",
    validity: "An order of magnitude. One mounting instruction gives 0.5 to 1.2 g for a small ball carriage, here taken as size 20; scaled as loaded race length times ball diameter, both in proportion to the size. The guide's own data go before. At least until fresh grease shows.",
    sources: [
        "trade-linear-guide", "0.5 to 1.2 g for one small carriage", Seen;
        "common-practice", "scaling by race length, rows and ball diameter", CommonPractice;
        "own-derivation", "the size of that carriage, and the square", Own
    ],
    fn carriage_grease(
        size: Length, "b", "width of the rail", Range::Positive;
    ) -> Mass, "G", "grease of one relubrication" {
        let scale = size / KNOWN_SIZE;
        KNOWN_GREASE * (scale * scale)
    }
}

formula! {
    /// Oil of a carriage.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::points::carriage_oil;
    /// use oilway_units::Length;
    ///
    /// let oil = carriage_oil(Length::from_millimetres(40.0));
    /// assert_eq!(format!("{:.2}", oil.cubic_centimetres_per_hour()), "0.08");
    /// ```
    CARRIAGE_OIL = "points/carriage-oil",
    title: "Oil of a guide carriage",
    equation: "q = 0.02 cm³/h · (b / 20 mm)²",
    validity: "An order of magnitude, from one mounting instruction for a small ball carriage, here taken as size 20; scaled as loaded race length times ball diameter. The guide's own data go before.",
    sources: [
        "trade-linear-guide", "about 0.02 cm³/h for one small carriage", Seen;
        "own-derivation", "the size of that carriage, and the square", Own
    ],
    fn carriage_oil(
        size: Length, "b", "width of the rail", Range::Positive;
    ) -> Flow, "q", "mean oil rate" {
        let scale = size / KNOWN_SIZE;
        KNOWN_OIL * (scale * scale)
    }
}

/// One carriage.
#[derive(Debug)]
pub(super) struct LinearGuide;

pub(super) static LINEAR_GUIDE: LinearGuide = LinearGuide;

/// Travel between two lubrications, the same for guides and screws.
pub(super) const TRAVEL_BETWEEN: PointField = needed(
    "travel_between",
    Dimension::Length,
    span(1.0, (1e3, 1e7), [TRAVEL.value.0.metres(), TRAVEL.value.1.metres(), TRAVEL.value.2.metres()]),
    "Travel between two lubrications, from the builder's instruction. Customary is 100 km; 50 km in wet, dirty or heavily loaded places, up to 500 km where it is clean and lightly loaded.",
);

const FIELDS: &[PointField] = &[
    needed(
        "size",
        Dimension::Length,
        span(MM, (3.0, 200.0), [15.0, 30.0, 55.0]),
        "Width of the rail, which is the size in the guide's designation: caliper or nameplate.",
    ),
    needed(
        "travel_per_cycle",
        Dimension::Length,
        span(1.0, (0.001, 200.0), [0.2, 1.0, 4.0]),
        "Whole way of one cycle, there and back: twice the stroke.",
    ),
    needed(
        "cycles",
        Dimension::Frequency,
        span(PER_MINUTE, (0.001, 600.0), [1.0, 10.0, 40.0]),
        "Cycles in a time while it moves: count them against a clock, or speed over way.",
    ),
    TRAVEL_BETWEEN,
    if_any(
        "carriage",
        Dimension::Length,
        span(MM, (10.0, 1000.0), [40.0, 100.0, 200.0]),
        "Length of the carriage, for the remark on short strokes.",
    ),
];

impl PointKind for LinearGuide {
    fn id(&self) -> &'static str {
        "linear guide"
    }
    fn title(&self) -> &'static str {
        "Carriage of a linear rolling guide"
    }
    fn fields(&self) -> &'static [PointField] {
        FIELDS
    }
    fn demand(
        &self,
        answers: Answers<'_>,
        around: &Around,
        ledger: &mut Ledger,
        name: &str,
    ) -> Result<Demand, NoDemand> {
        let mut working = Working::new(answers, around, ledger, name);
        let size: Kept<Length> = working.need("size")?;
        short_stroke(&mut working);
        working.note(message!("physics-point-carriage"));
        if !around.grease {
            let oil = carriage_oil(size.value);
            let rate = working.keep("rate", &CARRIAGE_OIL, oil, &[size.into()]);
            return working.demand(rate, constant(Ratio::ZERO), &CARRIAGE_OIL);
        }
        let mass =
            working.keep("quantity.mass", &CARRIAGE_GREASE, carriage_grease(size.value), &[size.into()]);
        let quantity = working.volume("quantity", mass);
        let (travel, way, cycles) =
            (working.need("travel_between")?, working.need("travel_per_cycle")?, working.need("cycles")?);
        let interval = working.keep(
            "interval",
            &TRAVEL_INTERVAL,
            travel_interval(travel.value, way.value, cycles.value),
            &[travel.into(), way.into(), cycles.into()],
        );
        let rate = working.rate(quantity, interval);
        rough_travel(&mut working);
        let demand = working.demand(rate, constant(Ratio::ZERO), &TRAVEL_INTERVAL)?;
        Ok(Demand { quantity: Some(quantity.value), interval: Some(interval.value), ..demand })
    }
}

/// A stroke below twice the carriage does not spread the lubricant.
fn short_stroke(working: &mut Working<'_>) {
    let way: Option<Kept<Length>> = working.answer("travel_per_cycle");
    if let (Some(way), Some(carriage)) = (way, working.answer::<Length>("carriage")) {
        let stroke = way.value * 0.5;
        if stroke < carriage.value * 2.0 {
            let wanted = carriage.value * 2.0;
            working.note(message!("physics-point-short-stroke", stroke = stroke, wanted = wanted));
        }
    }
}

/// Surroundings count through the travel between two lubrications, which is asked for: a remark says so.
pub(super) fn rough_travel(working: &mut Working<'_>) {
    let severity = working.around.severity;
    if severity.dirt.max(severity.water) >= 2 {
        working.note(message!("physics-point-rough-travel", travel = TRAVEL.value.0));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demand::tables::SMALL_CARRIAGE;

    #[test]
    fn the_known_carriage_gets_the_middle_of_its_band() {
        let (least, most) = SMALL_CARRIAGE.value;
        assert!((carriage_grease(KNOWN_SIZE) / ((least + most) * 0.5) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn twice_the_size_has_four_times_the_surface() {
        let (one, two) = (KNOWN_SIZE, KNOWN_SIZE * 2.0);
        assert!((carriage_grease(two) / carriage_grease(one) - 4.0).abs() < 1e-12);
        assert!((carriage_oil(two) / carriage_oil(one) - 4.0).abs() < 1e-12);
    }
}
