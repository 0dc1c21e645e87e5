//! A pump or reservoir for the other lubricant.

use oilway_catalogue::kinds::Medium;
use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    PumpLubricant = "pump-lubricant",
    title: "Pump or reservoir are not made for this lubricant",
    finds: "A pump or a reservoir whose data do not name grease where grease is pumped, or oil where oil is.",
    why: "An oil pump does not draw grease; an oil reservoir lets grease stand around its inlet.",
    source: "common-practice", "the part's own data decide", CommonPractice,
    example: "A grease package refilled with oil: the follower plate leaks and the shovel of the pump has nothing to press.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let medium = if facts.design.conditions.lubricant.is_grease() { Medium::Grease } else { Medium::Oil };
    let pump = facts.views.pump.as_ref().is_some_and(|pump| !pump.lubricants.contains(&medium));
    let vessel = facts.views.reservoir.as_ref().is_some_and(|vessel| !vessel.lubricants.contains(&medium));
    let report = |at: &str| {
        let what = message!("check-pump-lubricant", part = at, medium = medium.word());
        Draft::stop(rule, format!("package.{at}"), what, message!("check-pump-lubricant-cure")).done()
    };
    let named = [(pump, "pump"), (vessel, "reservoir")];
    named.into_iter().filter(|(wrong, _)| *wrong).map(|(_, at)| report(at)).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, oil_with_pour_point, refuses, swap};

    #[test]
    fn an_oil_pump_does_not_draw_grease_nor_a_grease_reservoir_hold_oil() {
        accepts("pump-lubricant", |_| {});
        refuses("pump-lubricant", |d| swap(&mut d.package.pump, "10037"));
        refuses("pump-lubricant", |d| oil_with_pour_point(d, -40.0));
        accepts("pump-lubricant", |d| {
            oil_with_pour_point(d, -40.0);
            swap(&mut d.package.reservoir, "10049");
        });
    }
}
