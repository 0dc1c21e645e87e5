//! Slewing rings: large bearings with several ports around.

use core::f64::consts::PI;

use oilway_text::message;
use oilway_units::{Count, Dimension, Flow, Frequency, Length, Time};

use super::fields::{MM, SPEED_IF_ANY, needed, span};
use super::surroundings::film_demand;
use super::working::{Working, constant};
use super::{Answers, Around, Demand, NoDemand, PointField, PointKind};
use crate::demand::tables::FILM;
use crate::{Ledger, Range, formula};

/// Time in which the film of a raceway is renewed with grease. Rolling does not scrape the film off as sliding does:
/// once in a week of single shifts instead of every four hours. Own judgement.
const GREASE_PERIOD: Time = Time::from_hours(40.0);
/// The same with oil: a quarter of it, as on plain bearings.
const OIL_PERIOD: Time = Time::from_hours(10.0);

formula! {
    /// The rate of one port of a slewing ring that renews the film of its raceway.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::points::raceway_film;
    /// use oilway_units::{Count, Length, Time};
    ///
    /// let mm = Length::from_millimetres;
    /// let rate = raceway_film(mm(1200.0), mm(25.0), mm(0.025), Time::from_hours(40.0), Count::from_number(4.0));
    /// assert_eq!(format!("{:.4}", rate.cubic_centimetres_per_hour()), "0.0463");
    /// ```
    RACEWAY_FILM = "points/raceway-film",
    title: "Rate of one port of a slewing ring",
    equation: "q = π · Dr · π · db · h / (τ · i)",
    validity: "This project's own rule where no published one was found: the film of the whole groove around the balls is renewed once in τ, judged as 40 h with grease. An order of magnitude; the builder's figure for the ring goes before.",
    sources: [
        "own-derivation", "film renewal carried over to the raceway; the period is judged", Own;
        "common-practice", "thickness of the film", CommonPractice
    ],
    fn raceway_film(
        raceway: Length, "Dr", "diameter of the raceway", Range::Positive;
        ball: Length, "db", "diameter of the balls or rollers", Range::Positive;
        film: Length, "h", "thickness of the film to renew", Range::NotNegative;
        period: Time, "τ", "time in which it is renewed", Range::Positive;
        ports: Count, "i", "ports that share the ring", Range::Positive;
    ) -> Flow, "q", "mean rate of one port" {
        let surface = PI * raceway.metres() * PI * ball.metres();
        Flow::from_cubic_metres_per_second(surface * film.metres() / (period.seconds() * ports.number()))
    }
}

/// One port of a slewing ring.
#[derive(Debug)]
pub(super) struct SlewingRing;

pub(super) static SLEWING_RING: SlewingRing = SlewingRing;

const FIELDS: &[PointField] = &[
    needed(
        "raceway",
        Dimension::Length,
        span(MM, (50.0, 20_000.0), [400.0, 1000.0, 2500.0]),
        "Diameter of the circle on which the balls or rollers run: drawing, or between inner and outer edge.",
    ),
    needed(
        "ball",
        Dimension::Length,
        span(MM, (3.0, 200.0), [15.0, 25.0, 45.0]),
        "Diameter of the balls or rollers: drawing, or through the filling plug.",
    ),
    needed(
        "ports",
        Dimension::Count,
        span(1.0, (1.0, 48.0), [2.0, 4.0, 8.0]),
        "Grease ports of the whole ring that feed the raceway; this point is one of them.",
    ),
    SPEED_IF_ANY,
];

impl PointKind for SlewingRing {
    fn id(&self) -> &'static str {
        "slewing ring"
    }
    fn title(&self) -> &'static str {
        "One port of a slewing ring's raceway"
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
        let (raceway, ball, ports) =
            (working.need("raceway")?, working.need("ball")?, working.need("ports")?);
        let film = constant(FILM.value);
        let period = constant(if around.grease { GREASE_PERIOD } else { OIL_PERIOD });
        let rate = working.keep(
            "rate",
            &RACEWAY_FILM,
            raceway_film(raceway.value, ball.value, film.value, period.value, ports.value),
            &[raceway.into(), ball.into(), film.into(), period.into(), ports.into()],
        );
        working.note(message!("physics-point-slewing-ring"));
        film_demand(working, rate, &RACEWAY_FILM)
    }
    fn speed(&self, answers: Answers<'_>) -> Option<Frequency> {
        answers.quantity("speed")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demand::film_renewal_bearing;

    #[test]
    fn the_groove_is_a_bush_bent_round() {
        // Second route: a torus has the surface of the straight bush of the ball's bore and of the circle's length.
        let (ring, ball) = (Length::from_millimetres(900.0), Length::from_millimetres(30.0));
        let film = Length::from_millimetres(0.025);
        let one = raceway_film(ring, ball, film, GREASE_PERIOD, Count::from_number(1.0));
        let bush = film_renewal_bearing(ball, ring * PI, film, GREASE_PERIOD);
        assert!((one / bush - 1.0).abs() < 1e-12);
    }

    #[test]
    fn all_ports_together_give_the_ring_its_film() {
        let (ring, ball) = (Length::from_millimetres(900.0), Length::from_millimetres(30.0));
        let port = |i: f64| raceway_film(ring, ball, ball * 0.001, OIL_PERIOD, Count::from_number(i));
        assert!((port(6.0) * 6.0 / port(1.0) - 1.0).abs() < 1e-12);
    }
}
