//! Nuts of ball and roller screws.

use oilway_text::message;
use oilway_units::{Count, Dimension, Flow, Frequency, Length, Ratio, Time, Volume};

use super::fields::{MM, SPEED, if_any, needed, span};
use super::linear_guide::{TRAVEL_BETWEEN, rough_travel};
use super::working::{Kept, Working, constant};
use super::{Answers, Around, Demand, NoDemand, PointField, PointKind};
use crate::demand::tables::{OIL_PER_INCH, SCREW_NUT};
use crate::demand::*;
use crate::{Ledger, Range, formula};

/// Longest running time between two lubrications of a screw: the upper end of practice, 100 to 500 h.
const LONGEST: Time = Time::from_hours(500.0);

formula! {
    /// The balls of a screw by its proportions.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::points::screw_ball;
    /// use oilway_units::Length;
    ///
    /// let ball = screw_ball(Length::from_millimetres(40.0), Length::from_millimetres(10.0));
    /// assert_eq!(format!("{:.1}", ball.millimetres()), "6.0");
    /// ```
    SCREW_BALL = "points/screw-ball",
    title: "Ball diameter of a screw by its proportions",
    equation: "b = min(0.6 · P, 0.2 · d)",
    validity: "An estimate of usual proportions, within about a third, where the drawing does not say; from no table.",
    sources: ["own-derivation", "usual proportions, judged", Own],
    fn screw_ball(
        diameter: Length, "d", "diameter of the screw", Range::Positive;
        lead: Length, "P", "lead of the screw", Range::Positive;
    ) -> Length, "b", "ball diameter" {
        (lead * 0.6).min(diameter * 0.2)
    }
}

/// The nut of a ball screw.
#[derive(Debug)]
pub(super) struct BallScrew;

pub(super) static BALL_SCREW: BallScrew = BallScrew;

const FIELDS: &[PointField] = &[
    needed(
        "diameter",
        Dimension::Length,
        span(MM, (3.0, 500.0), [16.0, 32.0, 63.0]),
        "Outside diameter of the screw: caliper, or the first number of its designation.",
    ),
    needed(
        "lead",
        Dimension::Length,
        span(MM, (0.5, 200.0), [5.0, 10.0, 25.0]),
        "Way of the nut in one turn: turn the screw once and measure.",
    ),
    needed(
        "nut_length",
        Dimension::Length,
        span(MM, (5.0, 1000.0), [35.0, 70.0, 150.0]),
        "Length of the nut between its wipers: drawing or rule.",
    ),
    PointField { meaning: "Turns of the screw in a time while it turns.", ..SPEED },
    TRAVEL_BETWEEN,
    if_any(
        "nut_bore",
        Dimension::Length,
        span(MM, (3.0, 600.0), [18.0, 35.0, 70.0]),
        "Bore of the nut, if the drawing tells it. Left out: by proportion.",
    ),
    if_any(
        "circuits",
        Dimension::Count,
        span(1.0, (1.0, 12.0), [1.0, 3.0, 5.0]),
        "Loaded circuits of balls in the nut; counts with oil only. Left out: one.",
    ),
];

impl PointKind for BallScrew {
    fn id(&self) -> &'static str {
        "ball screw"
    }
    fn title(&self) -> &'static str {
        "Nut of a ball or roller screw"
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
        let working = Working::new(answers, around, ledger, name);
        if around.grease { grease(working) } else { oil(working) }
    }
    fn speed(&self, answers: Answers<'_>) -> Option<Frequency> {
        answers.quantity("speed")
    }
}

fn grease(mut working: Working<'_>) -> Result<Demand, NoDemand> {
    let (travel, lead, speed) =
        (working.need("travel_between")?, working.need("lead")?, working.need("speed")?);
    let quantity = nut_fill(&mut working, lead)?;
    let by_travel = working.keep(
        "interval.travel",
        &SCREW_INTERVAL,
        screw_interval(travel.value, lead.value, speed.value),
        &[travel.into(), lead.into(), speed.into()],
    );
    let interval = working.smaller("interval", by_travel, constant(LONGEST));
    let rate = working.rate(quantity, interval);
    working.note(message!("physics-point-screw"));
    rough_travel(&mut working);
    let demand = working.demand(rate, constant(Ratio::ZERO), &SCREW_INTERVAL)?;
    Ok(Demand {
        quantity: Some(quantity.value),
        interval: Some(interval.value),
        first_fill: Some(quantity.value),
        ..demand
    })
}

/// The middle of the customary share of the nut's free space.
fn nut_fill(working: &mut Working<'_>, lead: Kept<Length>) -> Result<Kept<Volume>, NoDemand> {
    let (diameter, length): (Kept<Length>, Kept<Length>) =
        (working.need("diameter")?, working.need("nut_length")?);
    let ball = screw_ball(diameter.value, lead.value);
    let ball = working.keep("ball", &SCREW_BALL, ball, &[diameter.into(), lead.into()]);
    let beside = [diameter.into(), ball.into()];
    let root = working.judge("root", diameter.value - ball.value * 0.8, "physics-point-screw-root", &beside);
    let bore = match working.answer("nut_bore") {
        Some(bore) => bore,
        None => {
            let bore = diameter.value + ball.value * 0.5;
            working.judge("nut_bore", bore, "physics-point-nut-bore", &beside)
        }
    };
    let (least, most, balls) = SCREW_NUT.value;
    let share = constant(Ratio::from_fraction(0.5 * (least.fraction() + most.fraction())));
    let balls = constant(balls);
    let fill =
        screw_nut_fill(bore.value, root.value, length.value, share.value, balls.value).ok_or_else(|| {
            NoDemand {
                reason: message!("physics-point-nut-too-narrow", bore = bore.value, root = root.value),
                cure: message!("physics-point-nut-too-narrow-cure"),
            }
        })?;
    let terms = [bore.into(), root.into(), length.into(), share.into(), balls.into()];
    Ok(working.keep("quantity", &SCREW_NUT_FILL, fill, &terms))
}

/// Each loaded circuit as one row of a bearing with the screw's diameter as bore.
fn oil(mut working: Working<'_>) -> Result<Demand, NoDemand> {
    let diameter: Kept<Length> = working.need("diameter")?;
    let circuits = working.answer("circuits");
    let circuits = match circuits {
        Some(circuits) => circuits,
        None => working.judge("circuits", Count::from_number(1.0), "physics-point-one-circuit", &[]),
    };
    let (low, customary, high) = OIL_PER_INCH.value;
    let oil = |rate: Flow| oil_minimum(diameter.value, circuits.value, rate);
    let customary = constant(customary);
    let rate = working.keep(
        "rate",
        &OIL_MINIMUM,
        oil(customary.value),
        &[diameter.into(), circuits.into(), customary.into()],
    );
    working.note(message!("physics-point-screw-oil", band = (oil(low), oil(high))));
    working.demand(rate, constant(Ratio::ZERO), &OIL_MINIMUM)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_proportions_meet_a_usual_screw() {
        // Sizes of the worked fill in the formula's example: nut bore 43, root 35 for a screw of 40 x 10.
        let (d, lead) = (Length::from_millimetres(40.0), Length::from_millimetres(10.0));
        let ball = screw_ball(d, lead);
        assert!(((d + ball * 0.5).millimetres() - 43.0).abs() < 1e-9);
        assert!(((d - ball * 0.8).millimetres() - 35.2).abs() < 1e-9);
    }

    #[test]
    fn a_long_lead_does_not_ask_for_balls_as_large_as_the_screw() {
        let (d, lead) = (Length::from_millimetres(25.0), Length::from_millimetres(25.0));
        assert_eq!(screw_ball(d, lead), d * 0.2);
    }
}
