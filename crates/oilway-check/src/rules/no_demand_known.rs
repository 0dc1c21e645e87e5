//! A point for which nobody knows how much it needs.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    NoDemandKnown = "no-demand-known",
    title: "No rule gives a demand, and nobody states one",
    finds: "A point whose kind has no rule for its data, a speed beyond the interval formula for example, and for which the machine builder's amount is not given.",
    why: "What it gets is then the floor of practice, which is no answer to what it needs.",
    source: "neale-1995", "A20.5, reach of the greasing interval", Seen,
    example: "A ball bearing of 100 mm at 5000 turns a minute lies outside the interval formula: ask the machine builder for quantity and interval.",
    leaves_open: true,
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let judge = |(point, need): (usize, &crate::need::Need)| {
        let unknown = need.unknown.as_ref()?;
        let what = message!("check-no-demand-known", reason = unknown.reason.clone());
        let cure = message!("check-no-demand-known-cure", cure = unknown.cure.clone());
        Some(Draft::caution(rule, facts.point_name(point), what, cure).done())
    };
    facts.needs.iter().enumerate().filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};

    #[test]
    fn a_stated_amount_is_an_answer_and_a_rule_that_does_not_reach_is_none() {
        accepts("no-demand-known", |_| {});
        refuses("no-demand-known", |d| d.points[0].given = None);
    }
}
