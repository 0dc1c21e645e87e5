//! A regulator set higher than the air that comes.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    RegulatorAboveSupply = "regulator-above-supply",
    title: "The regulator is set above the lowest supply",
    finds: "An air setting above the lowest pressure at which the plant's air arrives while the pump must work.",
    why: "On the weak days the pump stalls lower than the label says. The pressures here are worked out with the air that comes.",
    source: "own-derivation", "a regulator gives no more than it gets", Own,
    example: "Set to 6 bar, supply 5.5 to 6.5: count on 5.5 and set that, or feed the package from a better place.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let driven = facts.views.pump.as_ref().is_some_and(|pump| pump.drive.is_air());
    let (Some(air), Some(set)) = (&facts.design.conditions.air, facts.design.package.air_setting) else {
        return Vec::new();
    };
    let lowest = air.lowest.get();
    if !driven || set <= lowest * (1.0 + 1e-9) {
        return Vec::new();
    }
    let what = message!("check-regulator-above-supply", set = set, lowest = lowest);
    Draft::caution(rule, "package.regulator", what, message!("check-regulator-above-supply-cure"))
        .number(message!("check-number-setting"), set)
        .number(message!("check-number-supply"), lowest)
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};

    #[test]
    fn the_lowest_supply_is_the_edge() {
        accepts("regulator-above-supply", |d| {
            d.package.air_setting = d.conditions.air.as_ref().map(|air| air.lowest.get());
        });
        refuses("regulator-above-supply", |d| {
            d.package.air_setting = d.conditions.air.as_ref().map(|air| air.lowest.get() * 1.1);
        });
    }
}
