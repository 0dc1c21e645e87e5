//! A base oil that is thicker than its bearing can use.

use oilway_model::Finding;
use oilway_physics::demand::tables::KAPPA_ENOUGH;
use oilway_text::message;
use oilway_units::{Count, Ratio};

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    BaseOilTooThick = "base-oil-too-thick",
    title: "The oil, or the base oil, is thicker than the bearing can use",
    finds: "A viscosity ratio above 4, where more brings nothing.",
    why: "It costs warmth in the bearing and pressure in every line, and buys no life.",
    source: "iso-281-2007", "judgement of the viscosity ratio, with the trade's words", Memory,
    example: "A spindle at 6000 turns a minute on a base oil of 460 mm²/s has a ratio of 12: a base oil of 100 serves, and starts in the cold.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let judge = |(point, need): (usize, &crate::need::Need)| {
        let kappa = Ratio::from_fraction(need.kappa?);
        let thick = kappa > KAPPA_ENOUGH.value;
        let what = message!("check-base-oil-too-thick", kappa = Count::from_number(kappa.fraction()));
        let draft =
            Draft::note(rule, facts.point_name(point), what, message!("check-base-oil-too-thick-cure"));
        thick.then(|| {
            draft.number(message!("check-number-kappa"), Count::from_number(kappa.fraction())).done()
        })
    };
    facts.needs.iter().enumerate().filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{severity_at_kappa, stays_silent_at_kappa};
    use oilway_model::Severity;

    #[test]
    fn four_is_enough_and_more_is_noted() {
        assert!(stays_silent_at_kappa("base-oil-too-thick", 4.0));
        assert_eq!(severity_at_kappa("base-oil-too-thick", 4.1), Severity::Note);
    }
}
