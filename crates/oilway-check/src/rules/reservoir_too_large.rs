//! A reservoir in which the lubricant grows old.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    ReservoirTooLarge = "reservoir-too-large",
    title: "The lubricant grows old in the reservoir",
    finds: "A filling that lasts, on the calendar, longer than the customer accepts as the age of the lubricant.",
    why: "The last tenth of it is soap and resin before it leaves the reservoir.",
    source: "own-derivation", "usable content over the use", Own,
    example: "15 L at 2 cm³/h and 100 h a week last 64 weeks: the 8 L reservoir is the better one.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let limit = facts.design.conditions.limits.age.get();
    let Some(lasts) = facts.refill().filter(|lasts| *lasts > limit) else { return Vec::new() };
    let what = message!("check-reservoir-too-large", lasts = lasts, limit = limit);
    Draft::caution(rule, "package.reservoir", what, message!("check-reservoir-too-large-cure"))
        .number(message!("check-number-refill"), lasts)
        .number(message!("check-number-limit"), limit)
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses, swap};

    #[test]
    fn a_hundred_litres_for_six_points_are_too_many() {
        accepts("reservoir-too-large", |_| {});
        refuses("reservoir-too-large", |d| swap(&mut d.package.reservoir, "10047"));
    }
}
