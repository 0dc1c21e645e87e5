//! A setting that the regulator cannot make, or air that it or the motor does not stand.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    RegulatorOutOfRange = "regulator-out-of-range",
    title: "Regulator or air motor do not suit the air",
    finds: "A setting outside the range of the regulator, a setting above what the air motor stands, a possible supply above what the regulator stands, or an air-driven pump without a regulator or a setting.",
    why: "The setting on the sheet cannot be made, or the air side is the part that bursts.",
    source: "iso-4414", "5.2.1, every part inside its rated limits", Seen,
    example: "Set to 9.5 bar on a regulator to 8: choose another pump ratio, not another regulator.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let Some(pump) = facts.views.pump.as_ref().filter(|pump| pump.drive.is_air()) else { return Vec::new() };
    let mut found = Vec::new();
    let mut report = |what| {
        let draft =
            Draft::stop(rule, "package.regulator", what, message!("check-regulator-out-of-range-cure"));
        found.push(draft.cautions(&["S42"]).done());
    };
    let (Some(regulator), Some(set)) = (&facts.views.regulator, facts.design.package.air_setting) else {
        report(message!("check-regulator-missing"));
        return found;
    };
    if set < regulator.lowest * (1.0 - 1e-9) || set > regulator.highest * (1.0 + 1e-9) {
        let range = (regulator.lowest, regulator.highest);
        report(message!("check-regulator-out-of-range", set = set, range = range));
    }
    if let Some(most) = pump.air_rated.filter(|most| set > *most) {
        report(message!("check-air-motor-underrated", set = set, most = most));
    }
    let possible = crate::source::possible_air(facts.design);
    if possible > regulator.supply_max {
        report(message!("check-regulator-underrated", possible = possible, most = regulator.supply_max));
    }
    found
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};
    use oilway_units::{Entry, Pressure};

    #[test]
    fn setting_and_supply_stay_inside_regulator_and_motor() {
        accepts("regulator-out-of-range", |_| {});
        refuses("regulator-out-of-range", |d| d.package.air_setting = Some(Pressure::from_bar(0.1)));
        refuses("regulator-out-of-range", |d| d.package.air_setting = Some(Pressure::from_bar(12.0)));
        refuses("regulator-out-of-range", |d| d.package.regulator = None);
        refuses("regulator-out-of-range", |d| {
            d.conditions.air.as_mut().unwrap().possible = Entry::known(Pressure::from_bar(40.0));
        });
    }
}
