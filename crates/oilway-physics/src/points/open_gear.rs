//! Open gears and racks, sprayed or dripped on from time to time.

use core::f64::consts::PI;

use oilway_text::message;
use oilway_units::{Count, Dimension, Frequency, Length, Ratio, Speed, Time};

use super::fields::{MM, PER_MINUTE, if_any, needed, span};
use super::working::{Kept, Working, constant};
use super::{Answers, Around, Demand, NoDemand, PointField, PointKind};
use crate::Ledger;
use crate::demand::*;

/// Pitch-line speed at which the standard's table for intermittent application ends.
const FASTEST: Speed = Speed::from_metres_per_second(7.5);

/// An open gear.
#[derive(Debug)]
pub(super) struct OpenGear;

pub(super) static OPEN_GEAR: OpenGear = OpenGear;

const FIELDS: &[PointField] = &[
    needed(
        "wheel",
        Dimension::Length,
        span(MM, (50.0, 20_000.0), [800.0, 2500.0, 6000.0]),
        "Diameter of the driven wheel: drawing, or the number of teeth times the module.",
    ),
    needed(
        "face",
        Dimension::Length,
        span(MM, (5.0, 2000.0), [100.0, 250.0, 600.0]),
        "Width of the face of the teeth: drawing or rule.",
    ),
    needed(
        "application_every",
        Dimension::Time,
        span(60.0, (0.1, 1440.0), [5.0, 15.0, 30.0]),
        "Running time from one spraying or dripping to the next; customary are 5 to 30 minutes.",
    ),
    if_any(
        "wheel_speed",
        Dimension::Frequency,
        span(PER_MINUTE, (0.001, 1000.0), [1.0, 10.0, 60.0]),
        "Turns of the driven wheel in a time: decides whether the table holds and how long a spraying must last.",
    ),
];

impl PointKind for OpenGear {
    fn id(&self) -> &'static str {
        "open gear"
    }
    fn title(&self) -> &'static str {
        "Open gear, sprayed or dripped on from time to time"
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
        let (wheel, face): (Kept<Length>, Kept<Length>) = (working.need("wheel")?, working.need("face")?);
        let every: Kept<Time> = working.need("application_every")?;
        spraying(&mut working, wheel.value)?;
        outside_the_table(&mut working, wheel.value, face.value);
        // The table counts minutes in which the gear runs, not minutes in which the nozzle sprays: it is a mean already.
        let rate = working.keep(
            "rate",
            &OPEN_GEAR_RATE,
            open_gear_rate(wheel.value, face.value),
            &[wheel.into(), face.into()],
        );
        let dose = dose_per_cycle(rate.value, every.value);
        let quantity = working.keep("quantity", &DOSE_PER_CYCLE, dose, &[rate.into(), every.into()]);
        let demand = working.demand(rate, constant(Ratio::ZERO), &OPEN_GEAR_RATE)?;
        Ok(Demand { quantity: Some(quantity.value), interval: Some(every.value), ..demand })
    }
    fn speed(&self, answers: Answers<'_>) -> Option<Frequency> {
        answers.quantity("wheel_speed")
    }
}

/// How long a spraying must last, if the speed is known; beyond the table's speed there is no demand.
fn spraying(working: &mut Working<'_>, wheel: Length) -> Result<(), NoDemand> {
    let Some(speed) = working.answer::<Frequency>("wheel_speed") else { return Ok(()) };
    let pitch_line = Speed::from_metres_per_second(PI * wheel.metres() * speed.value.per_second());
    if pitch_line >= FASTEST {
        return Err(NoDemand {
            reason: message!("physics-point-gear-too-fast", speed = pitch_line, limit = FASTEST),
            cure: message!("physics-point-gear-too-fast-cure"),
        });
    }
    let time = |turns: f64| spray_time(speed.value, Count::from_number(turns));
    working.note(message!("physics-point-spray-time", time = (time(1.0), time(2.0))));
    Ok(())
}

fn outside_the_table(working: &mut Working<'_>, wheel: Length, face: Length) {
    let outside = |value: Length, (low, high): (Length, Length)| value < low || value > high;
    if outside(wheel, OPEN_GEAR_DIAMETERS) || outside(face, OPEN_GEAR_FACES) {
        let (wheels, faces) = (OPEN_GEAR_DIAMETERS, OPEN_GEAR_FACES);
        working.note(message!("physics-point-gear-table", wheels = wheels, faces = faces));
    }
}
