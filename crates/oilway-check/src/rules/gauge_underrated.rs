//! A gauge that bursts before the disc.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    GaugeUnderrated = "gauge-underrated",
    title: "The gauge does not stand the pressure that can come",
    finds: "A gauge whose full scale lies below the highest burst of the disc, or below the possible stall where no disc protects.",
    why: "Its tube opens into the face of whoever reads it.",
    source: "en-837-2", "a gauge stands its full scale", Memory,
    example: "A gauge to 100 bar behind a disc that may hold up to 141: take one to 160 or 250.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let Some(gauge) = &facts.views.gauge else { return Vec::new() };
    let highest = facts.shield.highest();
    if gauge.full_scale >= highest * (1.0 - 1e-9) {
        return Vec::new();
    }
    let what = message!("check-gauge-underrated", full = gauge.full_scale, highest = highest);
    Draft::stop(rule, "package.gauge", what, message!("check-gauge-underrated-cure"))
        .number(message!("check-number-full-scale"), gauge.full_scale)
        .number(message!("check-number-highest"), highest)
        .cautions(&["S03"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses, swap};

    #[test]
    fn the_highest_burst_must_stay_on_the_scale() {
        accepts("gauge-underrated", |_| {});
        refuses("gauge-underrated", |d| swap(d.package.gauge.as_mut().unwrap(), "10073"));
    }
}
