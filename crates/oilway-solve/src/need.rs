//! What each point needs: the machine builder's amount or the kind's rule, raised to a floor where that is very small.
//!
//! A floor is never silent: the reason travels with the number, and the upper edge of the delivery band does not count
//! where it decided.

use oilway_model::{Conditions, Point};
use oilway_physics::points::{Answers, Around, Severity};
use oilway_physics::{How, Ledger, Line, Term, demand};
use oilway_text::{Message, message};
use oilway_units::{Flow, Ratio, Volume};

/// The need of one point.
#[derive(Clone, Debug)]
pub(crate) struct Need {
    /// By rule or by the machine builder.
    pub formula: Flow,
    /// What the design serves.
    pub required: Flow,
    /// Why it was raised, if it was.
    pub raised_by: Option<Message>,
    /// Lowest accepted delivery, of required.
    pub band_low: Ratio,
    /// Highest accepted delivery, of required; none at a floor.
    pub band_high: Option<Ratio>,
    /// The formula id of the rule, or `given`.
    pub rule: &'static str,
    /// Viscosity ratio κ where it applies.
    pub viscosity_ratio: Option<f64>,
    /// Remarks.
    pub notes: Vec<Message>,
}

/// The needs of all points, in their order. `tails` holds the content of each point's own line.
pub(crate) fn needs(
    conditions: &Conditions,
    points: &[Point],
    tails: &[Volume],
    ledger: &mut Ledger,
) -> Vec<Need> {
    points.iter().zip(tails).map(|(point, tail)| need(conditions, point, *tail, ledger)).collect()
}

fn need(conditions: &Conditions, point: &Point, tail: Volume, ledger: &mut Ledger) -> Need {
    let name = format!("point.{}", point.name);
    let mut need = match &point.given {
        Some(given) => given_need(conditions, given, &name, ledger),
        None => ruled_need(conditions, point, &name, ledger),
    };
    raise_to_floor(&mut need, conditions, tail, &name, ledger);
    need
}

fn blank(conditions: &Conditions, formula: Flow, rule: &'static str) -> Need {
    Need {
        formula,
        required: formula,
        raised_by: None,
        band_low: conditions.practice.band_low.get(),
        band_high: Some(conditions.practice.band_high.get()),
        rule,
        viscosity_ratio: None,
        notes: Vec::new(),
    }
}

fn given_need(conditions: &Conditions, given: &oilway_model::Given, name: &str, ledger: &mut Ledger) -> Need {
    let rate = demand::mean_rate(given.quantity.get(), given.interval.get());
    ledger.formula(
        || format!("{name}.demand"),
        &demand::MEAN_RATE,
        rate,
        || vec![Term::Name(format!("{name}.given.quantity")), Term::Name(format!("{name}.given.interval"))],
    );
    ledger.record(|| {
        entered(
            format!("{name}.given.quantity"),
            given.quantity.get().into(),
            given.quantity.origin(),
            &given.place,
        )
    });
    ledger.record(|| {
        entered(
            format!("{name}.given.interval"),
            given.interval.get().into(),
            given.interval.origin(),
            &given.place,
        )
    });
    blank(conditions, rate, "given")
}

/// A line of the ledger for something that stands in the job.
pub(crate) fn entered(
    name: String,
    value: oilway_units::AnyQuantity,
    origin: oilway_units::Origin,
    place: &str,
) -> Line {
    Line { name, value, how: How::Entered(origin, place.to_owned()) }
}

/// What surrounds a point, from its place, its own surroundings and the lubricant at the hottest day.
pub(crate) fn around(conditions: &Conditions, point: &Point) -> Around {
    let place = conditions.places.get(point.place);
    let temperature = place.map_or(oilway_units::Temperature::from_celsius(20.0), |p| p.hottest.get());
    let place_severity = place.map_or(Severity::default(), |p| p.surroundings.severity);
    let own = point.surroundings.severity;
    Around {
        temperature,
        grease: conditions.lubricant.is_grease(),
        density: conditions.lubricant.density(temperature),
        base_viscosity: conditions.lubricant.oil().kinematic(temperature),
        severity: Severity {
            dirt: own.dirt.max(place_severity.dirt),
            water: own.water.max(place_severity.water),
            vibration: own.vibration.max(place_severity.vibration),
        },
        duty: point.duty.get().fraction(),
    }
}

fn ruled_need(conditions: &Conditions, point: &Point, name: &str, ledger: &mut Ledger) -> Need {
    let answers = point.answers();
    let answers = Answers { fields: point.kind.fields(), answers: &answers };
    match point.kind.demand(answers, &around(conditions, point), ledger, name) {
        Ok(demand) => Need {
            viscosity_ratio: demand.viscosity_ratio,
            notes: demand.notes,
            ..blank(conditions, demand.rate, demand.rule.id)
        },
        // Where no rule reaches, the point still gets the floor, and the remark says that it is no answer.
        Err(no) => {
            let reason = message!("solve-no-demand", reason = no.reason, cure = no.cure);
            ledger.record(|| Line {
                name: format!("{name}.demand"),
                value: Flow::ZERO.into(),
                how: How::Chosen(reason.clone(), Vec::new()),
            });
            Need { notes: vec![reason], ..blank(conditions, Flow::ZERO, "none") }
        }
    }
}

/// Raises a very small need to the practice floor or to what keeps the own tail fresh, whichever is more.
fn raise_to_floor(need: &mut Need, conditions: &Conditions, tail: Volume, name: &str, ledger: &mut Ledger) {
    let floor = conditions.practice.floor.get();
    let running_age = conditions.limits.age.get() * conditions.running_share();
    let fresh = demand::freshness_rate(tail, running_age);
    ledger.formula(
        || format!("{name}.freshness"),
        &demand::FRESHNESS_RATE,
        fresh,
        || vec![Term::Name(format!("{name}.tail")), Term::Name("limits.age.running".to_owned())],
    );
    ledger.record(|| Line {
        name: format!("{name}.tail"),
        value: tail.into(),
        how: How::Sum(vec![Term::Name(format!("line.{}.content", name.trim_start_matches("point.")))]),
    });
    ledger.record(|| {
        entered(format!("{name}.floor"), floor.into(), conditions.practice.floor.origin(), "practice.floor")
    });
    if floor.max(fresh) > need.formula {
        need.required = floor.max(fresh);
        need.band_high = None;
        need.raised_by = Some(if fresh > floor {
            message!("solve-raised-fresh", tail = tail, age = conditions.limits.age.get())
        } else {
            message!("solve-raised-floor", floor = floor)
        });
    }
    ledger.record(|| Line {
        name: format!("{name}.required"),
        value: need.required.into(),
        how: How::Largest(
            ["demand", "floor", "freshness"].map(|n| Term::Name(format!("{name}.{n}"))).to_vec(),
        ),
    });
}

#[cfg(test)]
mod tests {
    use oilway_units::{Entry, Time};
    use proptest::prelude::*;

    use super::*;
    use crate::testing::{hall, known};

    fn need_of(rate: f64, tail: f64) -> Need {
        let mut job = hall();
        job.points.truncate(1);
        job.points[0].given.as_mut().unwrap().quantity = known(Volume::from_cubic_centimetres(rate));
        needs(&job.conditions, &job.points, &[Volume::from_cubic_centimetres(tail)], &mut Ledger::off())
            .remove(0)
    }

    #[test]
    fn an_ample_need_is_left_alone_with_both_edges_of_its_band() {
        let need = need_of(0.14, 50.0);
        assert_eq!(need.required, need.formula);
        assert!(need.raised_by.is_none());
        assert_eq!(need.band_high, Some(Ratio::from_fraction(1.5)));
        assert_eq!(need.rule, "given");
    }

    #[test]
    fn a_very_small_need_is_raised_to_the_practice_floor_and_loses_its_upper_edge() {
        let need = need_of(0.001, 5.0);
        assert!((need.required.cubic_centimetres_per_hour() - 0.01).abs() < 1e-12);
        assert_eq!(need.raised_by.unwrap().key, "solve-raised-floor");
        assert!(need.band_high.is_none());
    }

    #[test]
    fn a_long_tail_is_kept_fresh() {
        // 78.5 cm³ in 52 weeks of 100 running hours.
        let need = need_of(0.008, 78.54);
        assert!((need.required.cubic_centimetres_per_hour() - 0.0151).abs() < 0.00005);
        assert_eq!(need.raised_by.unwrap().key, "solve-raised-fresh");
    }

    #[test]
    fn a_point_without_rule_and_amount_gets_the_floor_and_a_remark() {
        let mut job = hall();
        job.points.truncate(1);
        job.points[0].given = None;
        let need = needs(&job.conditions, &job.points, &[Volume::ZERO], &mut Ledger::off()).remove(0);
        assert_eq!((need.rule, need.formula), ("none", Flow::ZERO));
        assert!((need.required.cubic_centimetres_per_hour() - 0.01).abs() < 1e-12);
        assert_eq!(need.notes[0].key, "solve-no-demand");
    }

    #[test]
    fn the_rougher_of_point_and_place_counts() {
        let mut job = hall();
        job.conditions.places[1].surroundings.severity.dirt = 1;
        job.conditions.places[1].surroundings.severity.water = 3;
        job.points[0].surroundings.severity.dirt = 2;
        let around = around(&job.conditions, &job.points[0]);
        assert_eq!((around.severity.dirt, around.severity.water, around.severity.vibration), (2, 3, 0));
    }

    proptest! {
        #[test]
        fn what_is_served_is_the_largest_of_rule_floor_and_freshness(rate in 0.0_f64..0.1, tail in 0.0_f64..200.0) {
            let need = need_of(rate, tail);
            // By hand: cm³ over 52 weeks of five days of twenty hours.
            let largest = rate.max(0.01).max(tail / (52.0 * 100.0));
            prop_assert!((need.required.cubic_centimetres_per_hour() / largest - 1.0).abs() < 1e-9);
            prop_assert_eq!(need.raised_by.is_some(), need.required > need.formula);
        }

        #[test]
        fn a_shorter_limit_of_age_never_asks_for_less(weeks in 1.0_f64..200.0, tail in 0.0_f64..200.0) {
            let mut job = hall();
            job.points.truncate(1);
            let mut served = |weeks: f64| {
                job.conditions.limits.age = Entry::known(Time::from_weeks(weeks));
                let tail = [Volume::from_cubic_centimetres(tail)];
                needs(&job.conditions, &job.points, &tail, &mut Ledger::off()).remove(0).required
            };
            prop_assert!(served(weeks) >= served(weeks * 2.0));
        }
    }
}
