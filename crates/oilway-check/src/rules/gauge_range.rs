//! A gauge that works too near the end of its scale, or none at all.

use oilway_model::Finding;
use oilway_physics::strength::gauge_full_scale;
use oilway_physics::strength::tables::GAUGE_PULSATING;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    GaugeRange = "gauge-range",
    title: "The gauge is too small for the working pressure, or missing",
    finds: "A gauge of whose scale the highest working pressure, which pulsates with every stroke, uses more than two thirds; or a package without a gauge.",
    why: "It tires, sticks and shows what it showed last week. Without one nobody can prove that the pressure is gone.",
    source: "en-837-2", "two thirds of full scale at pulsating pressure", Memory,
    example: "Stall 118 bar on a gauge to 160: 74 % used. Take one to 250 bar.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let Some(gauge) = &facts.views.gauge else {
        let what = message!("check-gauge-missing");
        return Draft::caution(rule, "package.gauge", what, message!("check-gauge-missing-cure"))
            .cautions(&["S06"])
            .alone();
    };
    let working = facts.shield.working;
    let needed = gauge_full_scale(working, GAUGE_PULSATING.value);
    if gauge.full_scale >= needed * (1.0 - 1e-9) {
        return Vec::new();
    }
    let what = message!("check-gauge-range", full = gauge.full_scale, working = working, needed = needed);
    Draft::caution(rule, "package.gauge", what, message!("check-gauge-range-cure"))
        .number(message!("check-number-full-scale"), gauge.full_scale)
        .number(message!("check-number-needed"), needed)
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses, swap};

    #[test]
    fn two_thirds_of_the_scale_are_the_edge() {
        accepts("gauge-range", |_| {});
        refuses("gauge-range", |d| swap(d.package.gauge.as_mut().unwrap(), "10073"));
        refuses("gauge-range", |d| d.package.gauge = None);
    }
}
