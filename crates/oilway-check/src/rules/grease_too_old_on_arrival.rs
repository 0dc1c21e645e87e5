//! Lubricant that is old when it arrives.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    GreaseTooOldOnArrival = "grease-too-old-on-arrival",
    title: "The lubricant is old when it arrives",
    finds: "A point whose lubricant has spent longer in reservoir and lines, on the calendar, than the customer accepts, although its own line alone would not be too slow.",
    why: "Old grease bleeds its oil and hardens, wherever it waited.",
    source: "own-derivation", "contents over mean flows from the reservoir to the point", Own,
    example: "A reservoir that lasts 60 weeks makes every drop older than 52: the next smaller one is the better one.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let limit = facts.design.conditions.limits.age.get();
    let judge = |point: usize| {
        let (tail, whole) = facts.ages(point)?;
        if whole <= limit || tail > limit {
            return None;
        }
        let what = message!("check-grease-too-old-on-arrival", age = whole, limit = limit);
        let draft = Draft::caution(
            rule,
            facts.point_name(point),
            what,
            message!("check-grease-too-old-on-arrival-cure"),
        )
        .number(message!("check-number-age"), whole)
        .number(message!("check-number-limit"), limit);
        Some(draft.done())
    };
    (0..facts.design.points.len()).filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses, swap};

    #[test]
    fn a_reservoir_for_a_year_and_more_makes_old_grease() {
        accepts("grease-too-old-on-arrival", |_| {});
        refuses("grease-too-old-on-arrival", |d| swap(&mut d.package.reservoir, "10047"));
    }
}
