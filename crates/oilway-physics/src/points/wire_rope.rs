//! Wire ropes that are dressed at a sheave.

use oilway_text::message;
use oilway_units::{Dimension, Length, Ratio, Time, Volume, VolumePerLength};

use super::fields::{HOUR, MM, needed, span};
use super::working::{Kept, Working, constant};
use super::{Answers, Around, Demand, NoDemand, PointField, PointKind};
use crate::demand::{ROPE_FILM, rope_film};
use crate::{Ledger, Range, formula};

/// Film that a solvent dressing leaves: the handbook's 0.1 mm.
const DRESSING: Length = Length::from_millimetres(0.1);
/// Outline of the strands over the circle: common practice.
const STRANDS: Ratio = Ratio::from_fraction(1.2);

formula! {
    /// The dressing of a length of rope.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::points::rope_dressing;
    /// use oilway_units::{Length, VolumePerLength};
    ///
    /// let film = VolumePerLength::from_cubic_centimetres_per_metre(7.5);
    /// assert_eq!(format!("{:.0}", rope_dressing(film, Length::from_metres(40.0)).cubic_centimetres()), "300");
    /// ```
    ROPE_DRESSING = "points/rope-dressing",
    title: "Dressing of a length of rope",
    equation: "V = V' · L",
    validity: "The length that passes the place of dressing; what drips off comes on top.",
    sources: ["own-derivation", "geometry", Own],
    fn rope_dressing(
        film: VolumePerLength, "V'", "dressing for each length", Range::NotNegative;
        length: Length, "L", "length of rope that is dressed", Range::NotNegative;
    ) -> Volume, "V", "dressing" {
        film * length
    }
}

/// A wire rope.
#[derive(Debug)]
pub(super) struct WireRope;

pub(super) static WIRE_ROPE: WireRope = WireRope;

const FIELDS: &[PointField] = &[
    needed(
        "diameter",
        Dimension::Length,
        span(MM, (1.0, 200.0), [10.0, 20.0, 40.0]),
        "Diameter of the rope over the strands: caliper across two opposite strands.",
    ),
    needed(
        "length",
        Dimension::Length,
        span(1.0, (0.1, 20_000.0), [10.0, 50.0, 300.0]),
        "Length of rope that passes the place of dressing.",
    ),
    needed(
        "every",
        Dimension::Time,
        span(HOUR, (1.0, 50_000.0), [100.0, 500.0, 2000.0]),
        "Running time from one dressing to the next. Inspection decides: renew as soon as the last coat has deteriorated.",
    ),
];

impl PointKind for WireRope {
    fn id(&self) -> &'static str {
        "wire rope"
    }
    fn title(&self) -> &'static str {
        "Wire rope, dressed at a sheave"
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
        let (diameter, length): (Kept<Length>, Kept<Length>) =
            (working.need("diameter")?, working.need("length")?);
        let every: Kept<Time> = working.need("every")?;
        let (film, strands) = (constant(DRESSING), constant(STRANDS));
        let coat = working.keep(
            "film",
            &ROPE_FILM,
            rope_film(diameter.value, film.value, strands.value),
            &[diameter.into(), film.into(), strands.into()],
        );
        let dressing = rope_dressing(coat.value, length.value);
        let quantity = working.keep("quantity", &ROPE_DRESSING, dressing, &[coat.into(), length.into()]);
        let rate = working.rate(quantity, every);
        working.note(message!("physics-point-rope"));
        // Rust does not wait until the rope moves: the whole rate counts while it stands.
        let demand = working.demand(rate, constant(Ratio::from_fraction(1.0)), &ROPE_FILM)?;
        Ok(Demand { quantity: Some(quantity.value), interval: Some(every.value), ..demand })
    }
}
