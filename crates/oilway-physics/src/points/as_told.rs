//! Points of which only the machine builder knows what they need.

use oilway_text::message;
use oilway_units::{Dimension, Time, Volume};

use super::fields::{HOUR, needed, span};
use super::working::{Kept, Working};
use super::{Answers, Around, Demand, NoDemand, PointField, PointKind};
use crate::Ledger;
use crate::demand::{MEAN_RATE, mean_rate};

/// A point without a rule.
#[derive(Debug)]
pub(super) struct AsTold;

pub(super) static AS_TOLD: AsTold = AsTold;

const FIELDS: &[PointField] = &[
    needed(
        "quantity",
        Dimension::Volume,
        span(1e-6, (1e-4, 1e5), [0.1, 1.0, 10.0]),
        "What one replenishment takes, from the machine's manual; better stated under given, with the page.",
    ),
    needed(
        "every",
        Dimension::Time,
        span(HOUR, (0.1, 50_000.0), [8.0, 40.0, 200.0]),
        "Running time of the machine from one replenishment to the next, from the same page.",
    ),
];

impl PointKind for AsTold {
    fn id(&self) -> &'static str {
        "as told"
    }
    fn title(&self) -> &'static str {
        "Any other point: the machine builder says what it needs"
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
        let (quantity, every): (Kept<Volume>, Kept<Time>) =
            (working.need("quantity")?, working.need("every")?);
        // The builder's interval counts the machine's hours: whether the point moves all the time is in it already.
        let rate = working.keep(
            "demand",
            &MEAN_RATE,
            mean_rate(quantity.value, every.value),
            &[quantity.into(), every.into()],
        );
        working.note(message!("physics-point-as-told"));
        let demand = working.demand_as_is(rate, &MEAN_RATE)?;
        Ok(Demand { quantity: Some(quantity.value), interval: Some(every.value), ..demand })
    }
}
