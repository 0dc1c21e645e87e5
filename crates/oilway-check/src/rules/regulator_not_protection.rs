//! A regulator that is taken for protection.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    RegulatorNotProtection = "regulator-not-protection",
    title: "A regulator setting is no protection",
    finds: "A package without a disc in its port whose pump stays below the weakest rating at its setting, but would pass it at the highest air that can come.",
    why: "A regulator drifts, fails open, or is turned up on a cold morning by somebody who means well.",
    source: "asme-viii-ug127", "note to UG-125(g), regulators are not positive protection", Seen,
    example: "Stall 114 bar at 6 bar, hose 160; at 10 bar the pump reaches 200. Fit a disc, or limit the air by something that cannot be set.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let shield = &facts.shield;
    let Some(weakest) = shield.weakest() else { return Vec::new() };
    if shield.in_place || shield.working > weakest.rated || shield.possible <= weakest.rated {
        return Vec::new();
    }
    let what = message!(
        "check-regulator-not-protection",
        working = shield.working,
        possible = shield.possible,
        rated = weakest.rated
    );
    Draft::caution(rule, "package.regulator", what, message!("check-regulator-not-protection-cure"))
        .number(message!("check-number-working"), shield.working)
        .number(message!("check-number-possible"), shield.possible)
        .number(message!("check-number-weakest"), weakest.rated)
        .cautions(&["S04"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};
    use oilway_units::{Entry, Pressure};

    #[test]
    fn without_a_disc_the_highest_air_counts() {
        let high_air = |d: &mut oilway_model::Design| {
            d.conditions.air.as_mut().unwrap().possible = Entry::known(Pressure::from_bar(20.0));
        };
        accepts("regulator-not-protection", high_air);
        refuses("regulator-not-protection", |d| {
            high_air(d);
            d.package.disc = None;
        });
    }
}
