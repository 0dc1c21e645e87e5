//! An oil disc on grease, or the other way.

use oilway_catalogue::kinds::DiscUse;
use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    DiscForOtherLubricant = "disc-for-other-lubricant",
    title: "The disc is meant for the other lubricant",
    finds: "A disc for oil in a grease package, or a disc for grease in an oil package.",
    why: "An oil disc on grease bursts at the first start, and somebody puts a plug in its place. A grease disc on oil never opens, and the plastic tails go first.",
    source: "own-derivation", "both directions of a conversion worked through", Own,
    example: "A package converted from oil to grease with its disc of 63 bar left in: take it out, scrap it, fit and label the new one.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let Some(disc) = &facts.views.disc else { return Vec::new() };
    let what = match (disc.lubricant, facts.design.conditions.lubricant.is_grease()) {
        (DiscUse::Oil, true) => message!("check-oil-disc-on-grease"),
        (DiscUse::Grease, false) => message!("check-grease-disc-on-oil"),
        _ => return Vec::new(),
    };
    Draft::stop(rule, "package.disc", what, message!("check-disc-for-other-lubricant-cure"))
        .number(message!("check-number-nominal"), disc.nominal)
        .cautions(&["S50", "S51"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, oil_with_pour_point, refuses, swap};

    #[test]
    fn both_directions_of_a_conversion_are_caught() {
        accepts("disc-for-other-lubricant", |_| {});
        refuses("disc-for-other-lubricant", |d| swap(d.package.disc.as_mut().unwrap(), "10016"));
        refuses("disc-for-other-lubricant", |d| {
            oil_with_pour_point(d, -40.0);
            swap(d.package.disc.as_mut().unwrap(), "10023");
        });
        accepts("disc-for-other-lubricant", |d| oil_with_pour_point(d, -40.0));
    }
}
