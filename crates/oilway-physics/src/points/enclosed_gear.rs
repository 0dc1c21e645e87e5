//! Enclosed gears whose oil is circulated.

use oilway_text::message;
use oilway_units::{Dimension, Ratio, SpecificHeat};

use super::fields::{needed, span};
use super::working::{Working, constant, wrong_lubricant};
use super::{Answers, Around, Demand, NoDemand, PointField, PointKind};
use crate::Ledger;
use crate::demand::{MESH_FLOW, mesh_flow};

/// Middle of the 1900 to 2000 J/(kg·K) of mineral oil, from memory.
const OIL_HEAT: SpecificHeat = SpecificHeat::from_joules_per_kilogram_kelvin(1950.0);

/// An enclosed gear.
#[derive(Debug)]
pub(super) struct EnclosedGear;

pub(super) static ENCLOSED_GEAR: EnclosedGear = EnclosedGear;

const FIELDS: &[PointField] = &[
    needed(
        "power",
        Dimension::Power,
        span(1e3, (0.001, 100_000.0), [1.0, 15.0, 150.0]),
        "Power that the gear transmits: nameplate of the motor, times its load.",
    ),
    needed(
        "meshes",
        Dimension::Count,
        span(1.0, (1.0, 20.0), [1.0, 2.0, 4.0]),
        "Meshes that transmit it one after the other: one less than the number of shafts.",
    ),
    needed(
        "loss",
        Dimension::Ratio,
        span(1.0, (0.0001, 0.5), [0.005, 0.0075, 0.01]),
        "Share of the power lost in each mesh: 0.5 to 1 per cent for spur and helical teeth, much more for worms.",
    ),
    needed(
        "rise",
        Dimension::TemperatureDifference,
        span(1.0, (1.0, 80.0), [17.0, 22.0, 28.0]),
        "Temperature rise allowed to the oil between inlet and outlet; customary are 17 to 28 K.",
    ),
];

impl PointKind for EnclosedGear {
    fn id(&self) -> &'static str {
        "enclosed gear"
    }
    fn title(&self) -> &'static str {
        "Enclosed gear with circulated oil"
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
        if around.grease {
            return Err(wrong_lubricant("physics-point-gear-grease", "physics-point-gear-grease-cure"));
        }
        let mut working = Working::new(answers, around, ledger, name);
        let (power, meshes, loss, rise) =
            (working.need("power")?, working.need("meshes")?, working.need("loss")?, working.need("rise")?);
        let (density, heat) = (working.density(), constant(OIL_HEAT));
        let flow = mesh_flow(power.value, meshes.value, loss.value, density.value, heat.value, rise.value);
        let terms = [power.into(), meshes.into(), loss.into(), density.into(), heat.into(), rise.into()];
        let rate = working.keep("rate", &MESH_FLOW, flow, &terms);
        working.note(message!("physics-point-gear-circulates"));
        working.demand(rate, constant(Ratio::ZERO), &MESH_FLOW)
    }
}
