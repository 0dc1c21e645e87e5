//! A kind of point for tests: it tells what a test puts in.

use oilway_model::{AnyEntry, Design, PointEntry};
use oilway_physics::points::{Answers, Around, Demand, NoDemand, PointField, PointKind, Wanted};
use oilway_physics::{Ledger, Range, demand};
use oilway_text::Message;
use oilway_units::{AnyQuantity, Dimension, Flow, Frequency, Length, Ratio};

/// A point that tells what a test puts in: a speed with its bearing, a viscosity ratio.
#[derive(Debug)]
pub(super) struct Told;

pub(super) static TOLD: Told = Told;

const fn field(name: &'static str, dimension: Dimension) -> PointField {
    let wanted = Wanted::Quantity { dimension, range: Range::Positive, unknown: [1.0, 1.0, 1.0] };
    PointField { name, wanted, needed: false, meaning: "what a test puts in" }
}

pub(super) const FIELDS: &[PointField] = &[
    field("bore", Dimension::Length),
    field("outside", Dimension::Length),
    field("speed", Dimension::Frequency),
    field("ratio", Dimension::Ratio),
];

impl PointKind for Told {
    fn id(&self) -> &'static str {
        "told"
    }
    fn title(&self) -> &'static str {
        "a point for tests"
    }
    fn fields(&self) -> &'static [PointField] {
        FIELDS
    }
    fn demand(&self, answers: Answers<'_>, _: &Around, _: &mut Ledger, _: &str) -> Result<Demand, NoDemand> {
        let ratio = answers.quantity::<Ratio>("ratio");
        let nothing = || NoDemand {
            reason: Message::new("check-point-not-served"),
            cure: Message::new("check-point-not-served-cure"),
        };
        let ratio = ratio.ok_or_else(nothing)?;
        Ok(Demand {
            rate: Flow::from_cubic_centimetres_per_hour(0.1),
            quantity: None,
            interval: None,
            first_fill: None,
            rule: &demand::MEAN_RATE,
            viscosity_ratio: Some(ratio.fraction()),
            notes: Vec::new(),
        })
    }
    fn speed(&self, answers: Answers<'_>) -> Option<Frequency> {
        answers.quantity("speed")
    }
}

/// Lets the first point turn in a bearing of 40 mm bore.
pub(crate) fn with_speed(design: &mut Design, speed: Frequency) {
    let entry = |quantity: AnyQuantity| PointEntry::Quantity(AnyEntry::known(quantity));
    design.points[0].entries = vec![
        entry(Length::from_millimetres(40.0).into()),
        entry(Length::from_millimetres(80.0).into()),
        entry(speed.into()),
        PointEntry::Nothing,
    ];
}

pub(super) fn with_kappa(design: &mut Design, kappa: f64) {
    let ratio = AnyQuantity::from(Ratio::from_fraction(kappa));
    design.points[0].entries[3] = PointEntry::Quantity(AnyEntry::known(ratio));
}
