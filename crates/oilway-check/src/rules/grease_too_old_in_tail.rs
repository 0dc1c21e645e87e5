//! Lubricant that grows old in the line of its own point.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    GreaseTooOldInTail = "grease-too-old-in-tail",
    title: "The lubricant grows old in the point's own line",
    finds: "A point whose own line holds its lubricant longer, on the calendar, than the customer accepts.",
    why: "Old grease bleeds its oil and hardens; what arrives is soap.",
    source: "own-derivation", "content of the line over its mean flow", Own,
    example: "6 m of 4 mm bore hold 75 cm³; at 0.01 cm³/h and 100 h a week that is 75 weeks. A narrower line or a floor on the rate cures it.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let limit = facts.design.conditions.limits.age.get();
    let judge = |point: usize| {
        let (tail, _) = facts.ages(point)?;
        if tail <= limit * (1.0 + 1e-9) {
            return None;
        }
        let feed = facts.feed(point)?;
        let what = message!("check-grease-too-old-in-tail", age = tail, limit = limit);
        let draft =
            Draft::caution(rule, facts.point_name(point), what, message!("check-grease-too-old-cure"))
                .turns(message!("check-turns-rate-above", rate = feed.rate * (tail / limit)))
                .number(message!("check-number-age-in-tail"), tail)
                .number(message!("check-number-limit"), limit);
        Some(draft.done())
    };
    (0..facts.design.points.len()).filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};
    use oilway_units::{Entry, Length};

    #[test]
    fn a_tail_of_a_hundred_metres_keeps_its_grease_too_long() {
        accepts("grease-too-old-in-tail", |_| {});
        refuses("grease-too-old-in-tail", |d| {
            let tail = d.network.nodes.last_mut().unwrap();
            tail.legs[0].length = Entry::known(Length::from_metres(2000.0));
        });
    }
}
