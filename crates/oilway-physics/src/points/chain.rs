//! Roller chains that get a shot of oil for each joint.

use oilway_text::message;
use oilway_units::{Count, Dimension, Flow, Frequency, Ratio, Speed, Time, Volume};

use super::fields::{HOUR, if_any, needed, span};
use super::working::{Kept, Working, constant, wrong_lubricant};
use super::{Answers, Around, Demand, NoDemand, PointField, PointKind};
use crate::Ledger;
use crate::demand::tables::{CHAIN_INTERVAL, CHAIN_SHOT, DROP, chain_method};
use crate::demand::{CHAIN_SHOTS, chain_drops, chain_shots};

/// A roller chain.
#[derive(Debug)]
pub(super) struct Chain;

pub(super) static CHAIN: Chain = Chain;

const SHOT: (f64, f64) = (CHAIN_SHOT.value.0.cubic_metres(), CHAIN_SHOT.value.1.cubic_metres());
const EVERY: (f64, f64) = (CHAIN_INTERVAL.value.0.seconds(), CHAIN_INTERVAL.value.1.seconds());

const FIELDS: &[PointField] = &[
    needed(
        "links",
        Dimension::Count,
        span(1.0, (2.0, 100_000.0), [60.0, 120.0, 400.0]),
        "Joints of the chain, all strands together: count them, or length over pitch times strands.",
    ),
    needed(
        "shot",
        Dimension::Volume,
        span(1.0, (1e-10, 1e-6), [SHOT.0, 0.5 * (SHOT.0 + SHOT.1), SHOT.1]),
        "Oil for each joint at each application; customary are 0.01 to 0.05 cm³, more for a long pitch.",
    ),
    needed(
        "every",
        Dimension::Time,
        span(1.0, (0.1 * HOUR, 2000.0 * HOUR), [EVERY.0, 0.5 * (EVERY.0 + EVERY.1), EVERY.1]),
        "Running time from one application to the next; customary are 8 to 40 h, the less the dirtier and wetter.",
    ),
    if_any(
        "chain_speed",
        Dimension::Speed,
        span(1.0, (0.0001, 60.0), [0.1, 0.5, 3.0]),
        "Speed of the chain, for the remark on drip and spray: pitch times teeth times turns of a wheel.",
    ),
];

impl PointKind for Chain {
    fn id(&self) -> &'static str {
        "chain"
    }
    fn title(&self) -> &'static str {
        "Roller chain"
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
            return Err(wrong_lubricant("physics-point-chain-grease", "physics-point-chain-grease-cure"));
        }
        let mut working = Working::new(answers, around, ledger, name);
        let (links, shot): (Kept<Count>, Kept<Volume>) = (working.need("links")?, working.need("shot")?);
        let every: Kept<Time> = working.need("every")?;
        let quantity = working.keep(
            "quantity",
            &CHAIN_SHOTS,
            chain_shots(links.value, shot.value),
            &[links.into(), shot.into()],
        );
        let rate = working.rate(quantity, every);
        drip(&mut working);
        let demand = working.demand(rate, constant(Ratio::ZERO), &CHAIN_SHOTS)?;
        Ok(Demand { quantity: Some(quantity.value), interval: Some(every.value), ..demand })
    }
}

/// What drip or spray would take at this speed, for comparison.
fn drip(working: &mut Working<'_>) {
    let Some(speed) = working.answer::<Speed>("chain_speed") else { return };
    let drops = |minute: f64| -> Flow { chain_drops(Frequency::from_per_minute(minute), DROP.value.1) };
    working.note(match chain_method(speed.value).drops_per_minute {
        Some((least, Some(most))) => {
            message!("physics-point-chain-drip", speed = speed.value, flow = (drops(least), drops(most)))
        }
        Some((least, None)) => {
            message!("physics-point-chain-fast-drip", speed = speed.value, flow = drops(least))
        }
        None => message!("physics-point-chain-spray", speed = speed.value),
    });
}
