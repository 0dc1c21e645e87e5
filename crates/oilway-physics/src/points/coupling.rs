//! Gear couplings.

use oilway_text::message;
use oilway_units::{Count, Dimension, Length, Ratio, Time};

use super::fields::{HOUR, MM, needed, span};
use super::working::{Kept, Working, constant, wrong_lubricant};
use super::{Answers, Around, Demand, NoDemand, PointField, PointKind};
use crate::Ledger;
use crate::demand::tables::COUPLING_INTERVAL;
use crate::demand::{COUPLING_FILL, coupling_fill};

/// A gear coupling.
#[derive(Debug)]
pub(super) struct Coupling;

pub(super) static COUPLING: Coupling = Coupling;

const EVERY: (f64, f64) = (COUPLING_INTERVAL.value.0.seconds(), COUPLING_INTERVAL.value.1.seconds());

const FIELDS: &[PointField] = &[
    needed(
        "housing_bore",
        Dimension::Length,
        span(MM, (20.0, 3000.0), [80.0, 150.0, 400.0]),
        "Bore of the sleeve over the teeth: drawing.",
    ),
    needed(
        "depth",
        Dimension::Length,
        span(MM, (0.5, 100.0), [4.0, 6.0, 10.0]),
        "From that bore inward to just below the roots of the teeth, on the radius: drawing.",
    ),
    needed(
        "width",
        Dimension::Length,
        span(MM, (2.0, 1000.0), [20.0, 40.0, 100.0]),
        "Length of the teeth and of the spaces beside them, of one mesh: drawing.",
    ),
    needed(
        "meshes",
        Dimension::Count,
        span(1.0, (1.0, 4.0), [1.0, 2.0, 2.0]),
        "Rings of teeth: two for a whole coupling, one for each half of a floating shaft.",
    ),
    needed(
        "every",
        Dimension::Time,
        span(1.0, (10.0 * HOUR, 50_000.0 * HOUR), [EVERY.0, 0.5 * (EVERY.0 + EVERY.1), EVERY.1]),
        "Running time from one change of the grease to the next; customary are 4000 to 8000 h, or 6 to 12 months.",
    ),
];

impl PointKind for Coupling {
    fn id(&self) -> &'static str {
        "coupling"
    }
    fn title(&self) -> &'static str {
        "Gear coupling"
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
        if !around.grease {
            return Err(wrong_lubricant("physics-point-coupling-oil", "physics-point-coupling-oil-cure"));
        }
        let mut working = Working::new(answers, around, ledger, name);
        let (bore, depth): (Kept<Length>, Kept<Length>) =
            (working.need("housing_bore")?, working.need("depth")?);
        let (width, meshes): (Kept<Length>, Kept<Count>) = (working.need("width")?, working.need("meshes")?);
        let every: Kept<Time> = working.need("every")?;
        let root = bore.value - depth.value * 2.0;
        if root < Length::ZERO {
            return Err(NoDemand {
                reason: message!("physics-point-coupling-depth", depth = depth.value, bore = bore.value),
                cure: message!("physics-point-coupling-depth-cure"),
            });
        }
        let root = working.judge("root", root, "physics-point-coupling-root", &[bore.into(), depth.into()]);
        let fill = coupling_fill(bore.value, root.value, width.value).unwrap_or_default();
        let fill =
            working.keep("quantity.mesh", &COUPLING_FILL, fill, &[bore.into(), root.into(), width.into()]);
        let all = fill.value * meshes.value.number();
        let quantity = working.judge("quantity", all, "physics-point-meshes", &[fill.into(), meshes.into()]);
        let rate = working.rate(quantity, every);
        working.note(message!("physics-point-coupling"));
        let demand = working.demand(rate, constant(Ratio::ZERO), &COUPLING_FILL)?;
        let filled = Some(quantity.value);
        Ok(Demand { quantity: filled, interval: Some(every.value), first_fill: filled, ..demand })
    }
}
