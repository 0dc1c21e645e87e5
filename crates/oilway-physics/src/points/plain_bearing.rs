//! Bushes, pins and splines: sliding bearings whose film is renewed.

use oilway_text::message;
use oilway_units::{Dimension, Flow, Frequency, Length, Ratio, Time, Volume};

use super::fields::{MM, MOTION, SPEED_IF_ANY, SWING, SWING_RATE, if_any, needed, span};
use super::surroundings::film_demand;
use super::working::{Kept, Working, constant};
use super::{Answers, Around, Demand, NoDemand, PointField, PointKind};
use crate::Ledger;
use crate::demand::tables::{FILM, FILM_PERIOD_GREASE, FILM_PERIOD_OIL, STARVED_FILM};
use crate::demand::*;

/// A pin gets its film of grease renewed once in a shift: practice gives pins a shot a shift at least, and what moves
/// seldom does not press its grease out in four hours. Oil runs out whether the pin moves or not.
const SHIFT: Time = Time::from_hours(8.0);

/// A kind of point that slides on a round surface.
#[derive(Debug)]
pub(super) struct PlainBearing {
    id: &'static str,
    title: &'static str,
    fields: &'static [PointField],
    /// The field with the diameter.
    diameter: &'static str,
    /// Time in which grease renews the film.
    grease_period: Time,
    /// A remark that always goes beside the number.
    remark: Option<&'static str>,
}

/// A bush or other plain bearing.
pub(super) static PLAIN_BEARING: PlainBearing = PlainBearing {
    id: "plain bearing",
    title: "Bush or other plain bearing",
    fields: &[BORE, LENGTH, MOTION, SPEED_IF_ANY, SWING, SWING_RATE, CLEARANCE],
    diameter: "bore",
    grease_period: FILM_PERIOD_GREASE.value,
    remark: None,
};

/// A pin that moves slowly or seldom.
pub(super) static PIN: PlainBearing = PlainBearing {
    id: "pin",
    title: "Pin or pivot that moves slowly or seldom",
    fields: &[
        BORE,
        LENGTH,
        PointField {
            meaning: "How it moves. The rate does not follow from it.",
            wanted: super::Wanted::Word(&["swings", "turns"]),
            ..MOTION
        },
        SPEED_IF_ANY,
        SWING,
        SWING_RATE,
        CLEARANCE,
    ],
    diameter: "bore",
    grease_period: SHIFT,
    remark: Some("physics-point-pin"),
};

/// A splined shaft in its hub.
pub(super) static SPLINE: PlainBearing = PlainBearing {
    id: "spline",
    title: "Splined shaft that slides in its hub",
    fields: &[
        needed(
            "pitch_diameter",
            Dimension::Length,
            span(MM, (3.0, 1000.0), [25.0, 50.0, 120.0]),
            "Diameter in the middle of the teeth: half of tip and root diameter together.",
        ),
        LENGTH,
        CLEARANCE,
    ],
    diameter: "pitch_diameter",
    grease_period: FILM_PERIOD_GREASE.value,
    remark: Some("physics-point-spline"),
};

const BORE: PointField = needed(
    "bore",
    Dimension::Length,
    span(MM, (1.0, 2000.0), [20.0, 40.0, 100.0]),
    "Bore of the bush, which is nearly the diameter of the pin or shaft: drawing or caliper.",
);
const LENGTH: PointField = needed(
    "length",
    Dimension::Length,
    span(MM, (1.0, 3000.0), [20.0, 40.0, 120.0]),
    "Length over which it slides: drawing or rule.",
);
const CLEARANCE: PointField = if_any(
    "clearance",
    Dimension::Length,
    span(MM, (0.001, 10.0), [0.05, 0.1, 0.3]),
    "Clearance on the diameter, for the first charge: drawing or feeler gauge. Left out: the customary one.",
);

impl PointKind for PlainBearing {
    fn id(&self) -> &'static str {
        self.id
    }
    fn title(&self) -> &'static str {
        self.title
    }
    fn fields(&self) -> &'static [PointField] {
        self.fields
    }
    fn demand(
        &self,
        answers: Answers<'_>,
        around: &Around,
        ledger: &mut Ledger,
        name: &str,
    ) -> Result<Demand, NoDemand> {
        let mut working = Working::new(answers, around, ledger, name);
        let (bore, length) = (working.need(self.diameter)?, working.need("length")?);
        let film = constant(FILM.value);
        let period = constant(if around.grease { self.grease_period } else { FILM_PERIOD_OIL.value });
        let rate = working.keep(
            "rate",
            &FILM_RENEWAL_BEARING,
            film_renewal_bearing(bore.value, length.value, film.value, period.value),
            &[bore.into(), length.into(), film.into(), period.into()],
        );
        let clearance = radial_clearance(&mut working, bore);
        let first_fill = gap(&mut working, bore, length, clearance);
        if let Some(remark) = self.remark {
            working.note(oilway_text::Message::new(remark));
        }
        full_film(&mut working, bore, length, clearance);
        let demand = film_demand(working, rate, &FILM_RENEWAL_BEARING)?;
        Ok(Demand { first_fill: Some(first_fill), ..demand })
    }
    fn speed(&self, answers: Answers<'_>) -> Option<Frequency> {
        (answers.word("motion") == Some("turns")).then(|| answers.quantity("speed")).flatten()
    }
}

fn radial_clearance(working: &mut Working<'_>, bore: Kept<Length>) -> Kept<Length> {
    let whole = match working.answer("clearance") {
        Some(clearance) => clearance,
        None => {
            let usual = default_clearance(bore.value);
            working.keep("clearance", &DEFAULT_CLEARANCE, usual, &[bore.into()])
        }
    };
    working.judge("clearance.radial", whole.value * 0.5, "physics-point-radial", &[whole.into()])
}

fn gap(
    working: &mut Working<'_>,
    bore: Kept<Length>,
    length: Kept<Length>,
    clearance: Kept<Length>,
) -> Volume {
    let volume = gap_volume(bore.value, length.value, clearance.value);
    working.keep("first_fill", &GAP_VOLUME, volume, &[bore.into(), length.into(), clearance.into()]).value
}

/// What a full film of oil would lose at its ends, beside the number: more than that is of no use.
fn full_film(working: &mut Working<'_>, bore: Kept<Length>, length: Kept<Length>, clearance: Kept<Length>) {
    let turns = !working.around.grease && working.word("motion") == Some("turns");
    let Some(speed) = working.answer::<Frequency>("speed").filter(|_| turns) else { return };
    let side = |eccentricity: f64| -> Option<Flow> {
        let eccentricity = Ratio::from_fraction(eccentricity);
        bearing_side_flow(bore.value * 0.5, clearance.value, speed.value, length.value, eccentricity)
    };
    if let (Some(light), Some(heavy)) = (side(0.2), side(0.8)) {
        let (least, most) = STARVED_FILM.value;
        working.note(message!("physics-point-full-film", flow = (light, heavy), share = (least, most)));
    }
}
