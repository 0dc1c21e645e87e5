//! A base oil that is too thin for its bearing.

use oilway_model::Finding;
use oilway_physics::demand::tables::{KAPPA_BOUNDARY, KAPPA_OUTSIDE, KAPPA_WANTED};
use oilway_text::message;
use oilway_units::{Count, Ratio};

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    BaseOilTooThin = "base-oil-too-thin",
    title: "The oil, or the base oil, is too thin for the bearing",
    finds: "A viscosity ratio below 1 at the hottest place: below 0.4 the metal surfaces touch, below 0.1 the standard does not reach. Between 0.4 and 1 it is a note.",
    why: "Without a film the bearing lives on the additives alone, and wears.",
    source: "iso-281-2007", "judgement of the viscosity ratio, with the trade's words", Memory,
    example: "A shaft at 14 turns a minute and 60 °C on a base oil of 150 mm²/s has a ratio of about 0.1: a base oil of 460, or additives against wear and a shorter interval.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let judge = |(point, need): (usize, &crate::need::Need)| {
        let kappa = Ratio::from_fraction(need.kappa?);
        if kappa >= KAPPA_WANTED.value {
            return None;
        }
        let at = facts.point_name(point);
        let cure = message!("check-base-oil-too-thin-cure");
        let draft = if kappa >= KAPPA_BOUNDARY.value {
            Draft::note(
                rule,
                at,
                message!("check-base-oil-thin", kappa = Count::from_number(kappa.fraction())),
                cure,
            )
        } else if kappa >= KAPPA_OUTSIDE.value {
            Draft::caution(
                rule,
                at,
                message!("check-base-oil-boundary", kappa = Count::from_number(kappa.fraction())),
                cure,
            )
        } else {
            Draft::caution(
                rule,
                at,
                message!("check-base-oil-outside", kappa = Count::from_number(kappa.fraction())),
                cure,
            )
        };
        Some(draft.number(message!("check-number-kappa"), Count::from_number(kappa.fraction())).done())
    };
    facts.needs.iter().enumerate().filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{severity_at_kappa, stays_silent_at_kappa};
    use oilway_model::Severity;

    #[test]
    fn the_ratio_is_judged_at_each_edge() {
        let at = |kappa| severity_at_kappa("base-oil-too-thin", kappa);
        assert_eq!(at(0.05), Severity::Caution);
        assert_eq!(at(0.39), Severity::Caution);
        assert_eq!(at(0.41), Severity::Note);
        assert_eq!(at(0.99), Severity::Note);
        assert!(stays_silent_at_kappa("base-oil-too-thin", 1.0));
    }
}
