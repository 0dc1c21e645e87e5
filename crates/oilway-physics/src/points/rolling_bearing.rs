//! Rolling bearings: on their own, as inserts in housings, and as track rollers.

use oilway_text::message;
use oilway_units::{Count, Dimension, Flow, Frequency, Length, Mass, Ratio, Time, Volume};

use super::bearing_corrections::{Corrections, corrected, table, vibration_at_rest};
use super::fields::{MM, MOTION, SPEED, SWING, SWING_RATE, if_any, needed, span, word};
use super::surroundings::{BEARING_STANDING_SHARE, bearing_standing_share};
use super::working::{Kept, Working, constant};
use super::{Answers, Around, Demand, NoDemand, PointField, PointKind};
use crate::demand::tables;
use crate::demand::*;
use crate::{Ledger, Range, formula};

/// A kind of point that is a rolling bearing, with what is taken where its fields do not ask.
#[derive(Debug)]
pub(super) struct RollingBearing {
    id: &'static str,
    title: &'static str,
    fields: &'static [PointField],
    family: &'static str,
    ring: &'static str,
}

/// A rolling bearing in a housing of the machine.
pub(super) static ROLLING_BEARING: RollingBearing = RollingBearing {
    id: "rolling bearing",
    title: "Ball or roller bearing in a housing",
    fields: &[
        word(
            "family",
            &["ball", "cylindrical roller", "needle roller", "spherical roller", "tapered roller"],
            "What rolls in it: from the designation, the drawing, or by looking. Thrust bearings count as tapered roller.",
        ),
        BORE,
        OUTSIDE,
        WIDTH,
        MOTION,
        SPEED,
        SWING,
        SWING_RATE,
        SHAFT,
        word(
            "ring",
            &["inner turns", "outer turns"],
            "Which ring moves. Outer also where an unbalanced weight turns with the shaft.",
        ),
        word(
            "feed",
            &["side", "through the outer ring"],
            "Where the grease enters. Through the outer ring only if it has a groove and holes in its middle.",
        ),
        ROWS,
        MASS,
    ],
    family: "ball",
    ring: "inner turns",
};

/// An insert bearing in a pillow block or flange.
pub(super) static INSERT_BEARING: RollingBearing = RollingBearing {
    id: "insert bearing",
    title: "Insert ball bearing in a pillow block or flange",
    fields: &[
        BORE,
        OUTSIDE,
        needed(
            "width",
            Dimension::Length,
            span(MM, (3.0, 500.0), [14.0, 18.0, 27.0]),
            "Width of the outer ring, or of the bearing of series 62 with the same bore; not the long inner ring.",
        ),
        MOTION,
        SPEED,
        SWING,
        SWING_RATE,
        SHAFT,
        ROWS,
        MASS,
    ],
    family: "ball",
    ring: "inner turns",
};

/// A cam or track roller.
pub(super) static TRACK_ROLLER: RollingBearing = RollingBearing {
    id: "track roller",
    title: "Track or cam roller: a bearing whose thick outer ring runs on a rail",
    fields: &[
        word(
            "family",
            &["needle roller", "cylindrical roller", "ball"],
            "What rolls in it: from the designation or the drawing.",
        ),
        BORE,
        OUTSIDE,
        WIDTH,
        MOTION,
        SPEED,
        SWING,
        SWING_RATE,
        SHAFT,
        ROWS,
        MASS,
    ],
    family: "needle roller",
    ring: "outer turns",
};

const BORE: PointField = needed(
    "bore",
    Dimension::Length,
    span(MM, (1.0, 2000.0), [20.0, 50.0, 120.0]),
    "Bore of the inner ring, which is the diameter of its seat: designation, drawing or caliper.",
);
const OUTSIDE: PointField = needed(
    "outside",
    Dimension::Length,
    span(MM, (3.0, 3000.0), [47.0, 90.0, 215.0]),
    "Outside diameter of the outer ring: designation, drawing or caliper.",
);
const WIDTH: PointField = needed(
    "width",
    Dimension::Length,
    span(MM, (1.0, 1000.0), [14.0, 23.0, 47.0]),
    "Width of the bearing; the height of a thrust bearing, the whole width of a tapered roller bearing.",
);
const SHAFT: PointField = word(
    "shaft",
    &["horizontal", "sloping", "vertical"],
    "How the shaft lies. Sloping: about 45 degrees. Grease runs out of an upright bearing sooner.",
);
const ROWS: PointField = if_any(
    "rows",
    Dimension::Count,
    span(1.0, (1.0, 8.0), [1.0, 1.0, 2.0]),
    "Rows of balls or rollers; counts with oil only. Left out: two for a spherical roller bearing, else one.",
);
const MASS: PointField = if_any(
    "mass",
    Dimension::Mass,
    span(1.0, (0.001, 5000.0), [0.1, 0.5, 5.0]),
    "Mass of the bearing, for the first fill only: from its table, or on scales.",
);

/// A base interval below one shift is taken as beyond the rule: its bracket is about to close, and the last hours of it
/// say nothing. Own judgement.
const SHORTEST_INTERVAL: Time = Time::from_hours(8.0);
/// Total swing below which the lubricant is not carried along the race: common practice.
const SMALL_SWING: f64 = 90.0;

formula! {
    /// The mean diameter of a rolling bearing.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::points::mean_diameter;
    /// use oilway_units::Length;
    ///
    /// let mean = mean_diameter(Length::from_millimetres(50.0), Length::from_millimetres(90.0));
    /// assert_eq!(format!("{:.1}", mean.millimetres()), "70.0");
    /// ```
    MEAN_DIAMETER = "points/mean-diameter",
    title: "Mean diameter of a rolling bearing",
    equation: "dm = (d + D) / 2",
    validity: "May stand for the pitch diameter of the rolling elements.",
    sources: ["iso-281-2007", "dm in place of the pitch diameter", SecondHand],
    fn mean_diameter(
        bore: Length, "d", "bore of the bearing", Range::Positive;
        outside: Length, "D", "outside diameter of the bearing", Range::Positive;
    ) -> Length, "dm", "mean diameter" {
        Length::from_metres(0.5 * (bore.metres() + outside.metres()))
    }
}

impl PointKind for RollingBearing {
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
        let size = Size::of(&mut working)?;
        let turning = turning(&mut working)?;
        let ratio = viscosity_step(&mut working, &size, turning);
        let mut demand =
            if around.grease { self.grease(working, &size, turning)? } else { self.oil(working, &size)? };
        demand.viscosity_ratio = ratio.map(Ratio::fraction);
        Ok(demand)
    }
    fn speed(&self, answers: Answers<'_>) -> Option<Frequency> {
        match answers.word("motion") {
            Some("swings") => Some(oscillation_speed(
                answers.quantity("swing_rate")?,
                answers.quantity::<oilway_units::Angle>("swing")? * 0.5,
            )),
            _ => answers.quantity("speed"),
        }
    }
}

/// The three dimensions of a bearing.
struct Size {
    bore: Kept<Length>,
    outside: Kept<Length>,
    width: Kept<Length>,
}

impl Size {
    fn of(working: &mut Working<'_>) -> Result<Self, NoDemand> {
        let size = Size {
            bore: working.need("bore")?,
            outside: working.need("outside")?,
            width: working.need("width")?,
        };
        if size.bore.value >= size.outside.value {
            let (bore, outside) = (size.bore.value, size.outside.value);
            working.note(message!("physics-point-bore-outside", bore = bore, outside = outside));
        }
        Ok(size)
    }
}

/// The speed of the moving ring, or the turning speed that makes the same way as the swing.
fn turning(working: &mut Working<'_>) -> Result<Kept<Frequency>, NoDemand> {
    if working.word("motion") != Some("swings") {
        return working.need("speed");
    }
    let (swing, rate) = (working.need::<oilway_units::Angle>("swing")?, working.need("swing_rate")?);
    if swing.value.degrees() < SMALL_SWING {
        working.note(message!("physics-point-small-swing", swing = swing.value));
    }
    let half = working.judge("half_angle", swing.value * 0.5, "physics-point-half-angle", &[swing.into()]);
    Ok(working.keep(
        "turning",
        &OSCILLATION_SPEED,
        oscillation_speed(rate.value, half.value),
        &[rate.into(), half.into()],
    ))
}

/// Whether oil or base oil is thick enough, where its viscosity is known.
fn viscosity_step(working: &mut Working<'_>, size: &Size, turning: Kept<Frequency>) -> Option<Ratio> {
    let viscosity = working.base_viscosity()?;
    let mean = working.keep(
        "mean_diameter",
        &MEAN_DIAMETER,
        mean_diameter(size.bore.value, size.outside.value),
        &[size.bore.into(), size.outside.into()],
    );
    let wanted = working.keep(
        "viscosity.wanted",
        &REFERENCE_VISCOSITY,
        reference_viscosity(turning.value, mean.value),
        &[turning.into(), mean.into()],
    );
    let ratio = viscosity_ratio(viscosity.value, wanted.value);
    Some(working.keep("viscosity_ratio", &VISCOSITY_RATIO, ratio, &[viscosity.into(), wanted.into()]).value)
}

impl RollingBearing {
    fn grease(
        &self,
        mut working: Working<'_>,
        size: &Size,
        turning: Kept<Frequency>,
    ) -> Result<Demand, NoDemand> {
        let quantity = replenishment(&mut working, size);
        let speed = self.counting_speed(&mut working, size, turning);
        let base = self.base_interval(&mut working, size, speed)?;
        let corrections = Corrections::of(&mut working, size.bore.value);
        let interval = corrected(&mut working, base, &corrections);
        let rate = working.rate(quantity, interval);
        let first_fill = first_fill(&mut working, size);
        let vibration = vibration_at_rest(&mut working, base, interval, &corrections);
        let parts = [corrections.dirt, corrections.water, vibration];
        let standing = working.keep(
            "standing",
            &BEARING_STANDING_SHARE,
            bearing_standing_share(parts[0].value, parts[1].value, parts[2].value),
            &parts.map(Into::into),
        );
        let demand = working.demand(rate, standing, &GREASE_INTERVAL)?;
        Ok(Demand { quantity: Some(quantity.value), interval: Some(interval.value), first_fill, ..demand })
    }

    fn family(&self, working: &Working<'_>) -> &'static str {
        working.word("family").unwrap_or(self.family)
    }

    /// The speed that counts in the interval rule.
    fn counting_speed(
        &self,
        working: &mut Working<'_>,
        size: &Size,
        turning: Kept<Frequency>,
    ) -> Kept<Frequency> {
        if working.word("ring").unwrap_or(self.ring) != "outer turns" {
            return turning;
        }
        working.keep(
            "speed.counting",
            &OUTER_RING_SPEED,
            outer_ring_speed(turning.value, size.bore.value, size.outside.value),
            &[turning.into(), size.bore.into(), size.outside.into()],
        )
    }

    fn base_interval(
        &self,
        working: &mut Working<'_>,
        size: &Size,
        speed: Kept<Frequency>,
    ) -> Result<Kept<Time>, NoDemand> {
        let factor = table(Some((tables::BEARING_FACTOR, table_family(self.family(working)))));
        let interval = grease_interval(size.bore.value, speed.value, factor.value)
            .filter(|interval| *interval >= SHORTEST_INTERVAL)
            .ok_or_else(|| NoDemand {
                reason: message!("physics-point-too-fast", speed = speed.value, bore = size.bore.value),
                cure: message!("physics-point-too-fast-cure"),
            })?;
        let terms = [size.bore.into(), speed.into(), factor.into()];
        Ok(working.keep("interval.base", &GREASE_INTERVAL, interval, &terms))
    }

    /// The least that keeps it alive: the middle of the band, the ends beside it.
    fn oil(&self, mut working: Working<'_>, size: &Size) -> Result<Demand, NoDemand> {
        let rows = self.rows(&mut working);
        let (low, customary, high) = tables::OIL_PER_INCH.value;
        let oil = |rate: Flow| oil_minimum(size.bore.value, rows.value, rate);
        let customary = constant(customary);
        let rate = working.keep(
            "rate",
            &OIL_MINIMUM,
            oil(customary.value),
            &[size.bore.into(), rows.into(), customary.into()],
        );
        working.note(message!("physics-point-oil-band", band = (oil(low), oil(high))));
        working.demand(rate, constant(Ratio::ZERO), &OIL_MINIMUM)
    }

    fn rows(&self, working: &mut Working<'_>) -> Kept<Count> {
        if let Some(rows) = working.answer("rows") {
            return rows;
        }
        let usual = if self.family(working) == "spherical roller" { 2.0 } else { 1.0 };
        working.judge("rows", Count::from_number(usual), "physics-point-usual-rows", &[])
    }
}

/// The key of the family in the table of bearing factors.
fn table_family(family: &'static str) -> &'static str {
    if family == "ball" { "radial ball" } else { family }
}

/// Grease of one replenishment.
fn replenishment(working: &mut Working<'_>, size: &Size) -> Kept<Volume> {
    let (outside, width) = (size.outside, size.width);
    let terms = [outside.into(), width.into()];
    let mass = if working.word("feed") == Some("through the outer ring") {
        let mass = grease_quantity_through_ring(outside.value, width.value);
        working.keep("quantity.mass", &GREASE_QUANTITY_THROUGH_RING, mass, &terms)
    } else {
        let mass = grease_quantity_side(outside.value, width.value);
        working.keep("quantity.mass", &GREASE_QUANTITY_SIDE, mass, &terms)
    };
    working.volume("quantity", mass)
}

/// The middle of the customary share of the free space, where the mass is known.
fn first_fill(working: &mut Working<'_>, size: &Size) -> Option<Volume> {
    let mass: Kept<Mass> = working.answer("mass")?;
    let space = bearing_free_space(size.bore.value, size.outside.value, size.width.value, mass.value)?;
    let terms = [size.bore.into(), size.outside.into(), size.width.into(), mass.into()];
    let space = working.keep("free_space", &BEARING_FREE_SPACE, space, &terms);
    let (least, most) = tables::FIRST_FILL.value;
    let share = 0.5 * (least.fraction() + most.fraction());
    Some(working.judge("first_fill", space.value * share, "physics-point-first-fill", &[space.into()]).value)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_family_that_may_be_entered_has_a_factor() {
        for family in ["ball", "cylindrical roller", "needle roller", "spherical roller", "tapered roller"] {
            assert!(tables::value(tables::BEARING_FACTOR, table_family(family)).is_some(), "{family}");
        }
    }
}
