//! What each point asks for, worked out again from the survey.

use oilway_model::{Conditions, Point};
use oilway_physics::points::{Answers, Around, NoDemand, Severity};
use oilway_physics::{Ledger, demand};
use oilway_units::{Flow, Ratio, Temperature, Volume};

/// The need of a point.
#[derive(Clone, Debug)]
pub(crate) struct Need {
    /// By the rule of its kind or by the machine builder.
    pub(crate) formula: Flow,
    /// With the floor.
    pub(crate) required: Flow,
    /// Viscosity ratio κ where it applies, also where the amount is given.
    pub(crate) kappa: Option<f64>,
    /// Why no rule gives a demand, where none does and nobody states one.
    pub(crate) unknown: Option<NoDemand>,
    /// Least accepted delivery, of required.
    pub(crate) low: Ratio,
    /// Most accepted delivery, of required; none at a floor.
    pub(crate) high: Option<Ratio>,
}

/// The need of a point whose own line holds this much.
pub(crate) fn need(conditions: &Conditions, point: &Point, tail: Volume) -> Need {
    let answers = point.answers();
    let answers = Answers { fields: point.kind.fields(), answers: &answers };
    let ruled = point.kind.demand(answers, &around(conditions, point), &mut Ledger::off(), "");
    let kappa = ruled.as_ref().ok().and_then(|demand| demand.viscosity_ratio);
    let (formula, unknown) = match (&point.given, ruled) {
        (Some(given), _) => (demand::mean_rate(given.quantity.get(), given.interval.get()), None),
        (None, Ok(demand)) => (demand.rate, None),
        (None, Err(none)) => (Flow::ZERO, Some(none)),
    };
    let floor = conditions.practice.floor.get();
    let age = conditions.limits.age.get() * conditions.running_share();
    let fresh = demand::freshness_rate(tail, age);
    let raised = formula < floor || formula < fresh;
    Need {
        formula,
        required: formula.max(floor).max(fresh),
        kappa,
        unknown,
        low: conditions.practice.band_low.get(),
        high: (!raised).then(|| conditions.practice.band_high.get()),
    }
}

/// What surrounds a point on its hottest day.
fn around(conditions: &Conditions, point: &Point) -> Around {
    let place = conditions.places.get(point.place);
    let temperature = place.map_or(Temperature::from_celsius(20.0), |p| p.hottest.get());
    let there = place.map_or(Severity::default(), |p| p.surroundings.severity);
    let here = point.surroundings.severity;
    Around {
        temperature,
        grease: conditions.lubricant.is_grease(),
        density: conditions.lubricant.density(temperature),
        base_viscosity: conditions.lubricant.oil().kinematic(temperature),
        severity: Severity {
            dirt: here.dirt.max(there.dirt),
            water: here.water.max(there.water),
            vibration: here.vibration.max(there.vibration),
        },
        duty: point.duty.get().fraction(),
    }
}
