//! Slideways and gibs.

use oilway_units::{Area, Count, Dimension, Length};

use super::fields::{MM, if_any, needed, span};
use super::surroundings::film_demand;
use super::working::{Kept, Working, constant};
use super::{Answers, Around, Demand, NoDemand, PointField, PointKind};
use crate::Ledger;
use crate::demand::tables::{FILM, FILM_PERIOD_GREASE, FILM_PERIOD_OIL};
use crate::demand::{FILM_RENEWAL_SURFACE, film_renewal_surface};

/// Flat ways, vees and gibs.
#[derive(Debug)]
pub(super) struct Slideway;

pub(super) static SLIDEWAY: Slideway = Slideway;

const FIELDS: &[PointField] = &[
    needed(
        "width",
        Dimension::Length,
        span(MM, (1.0, 2000.0), [20.0, 50.0, 120.0]),
        "Width of one face, across the motion.",
    ),
    needed(
        "length",
        Dimension::Length,
        span(MM, (1.0, 30_000.0), [150.0, 400.0, 1200.0]),
        "Length of one face that is in contact: that of the shorter part.",
    ),
    needed(
        "faces",
        Dimension::Count,
        span(1.0, (1.0, 40.0), [1.0, 2.0, 6.0]),
        "Faces that this point serves: count every flat, flank of a vee and gib.",
    ),
    if_any(
        "area",
        Dimension::Area,
        span(1e-6, (1.0, 1e8), [3e3, 2e4, 1.5e5]),
        "Area of one face, if it is not a rectangle; it goes before width and length.",
    ),
];

impl PointKind for Slideway {
    fn id(&self) -> &'static str {
        "slideway"
    }
    fn title(&self) -> &'static str {
        "Slideway, vee or gib"
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
        let area = surface(&mut working)?;
        let film = constant(FILM.value);
        let period = constant(if around.grease { FILM_PERIOD_GREASE.value } else { FILM_PERIOD_OIL.value });
        let rate = working.keep(
            "rate",
            &FILM_RENEWAL_SURFACE,
            film_renewal_surface(area.value, film.value, period.value),
            &[area.into(), film.into(), period.into()],
        );
        film_demand(working, rate, &FILM_RENEWAL_SURFACE)
    }
}

/// All faces together.
fn surface(working: &mut Working<'_>) -> Result<Kept<Area>, NoDemand> {
    let faces: Kept<Count> = working.need("faces")?;
    if let Some(face) = working.answer::<Area>("area") {
        let all = face.value * faces.value.number();
        return Ok(working.judge("surface", all, "physics-point-faces", &[face.into(), faces.into()]));
    }
    let (width, length): (Kept<Length>, Kept<Length>) = (working.need("width")?, working.need("length")?);
    let all = width.value * length.value * faces.value.number();
    let terms = [width.into(), length.into(), faces.into()];
    Ok(working.judge("surface", all, "physics-point-faces", &terms))
}
