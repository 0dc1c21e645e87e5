//! A point that gets more than it needs.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    DoseAboveBand = "dose-above-band",
    title: "A point gets more than its band allows",
    finds: "A point whose mean delivery lies above the upper edge of its band. A point that was raised to a floor has no upper edge: there the smallest dose decides.",
    why: "A bearing that is overfilled runs hot, and what it does not keep lies on the machine.",
    source: "common-practice", "delivery band of 90 to 150 % of the need", CommonPractice,
    example: "A fast bearing needs 0.05 cm³/h and gets 0.10: give it the smaller outlet, or a divider of its own.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let judge = |(point, feed): (usize, &crate::feeding::Feed)| {
        let need = &facts.needs[point];
        let most = need.required * need.high?.fraction();
        if feed.rate <= most * (1.0 + 1e-9) {
            return None;
        }
        let what =
            message!("check-dose-above-band", delivered = feed.rate, required = need.required, most = most);
        let pause = facts.design.control.pause * (feed.rate / most);
        let draft =
            Draft::caution(rule, facts.point_name(point), what, message!("check-dose-above-band-cure"))
                .turns(message!("check-turns-pause-above", pause = pause))
                .number(message!("check-number-delivered"), feed.rate)
                .number(message!("check-number-required"), need.required);
        Some(draft.done())
    };
    facts.feeds().filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};
    use oilway_units::{Entry, Flow};

    #[test]
    fn a_pause_of_half_the_time_overfeeds_and_the_designed_one_does_not() {
        accepts("dose-above-band", |_| {});
        refuses("dose-above-band", |d| d.control.pause = d.control.pause * 0.5);
    }

    #[test]
    fn a_point_at_its_floor_has_no_upper_edge() {
        accepts("dose-above-band", |d| {
            d.conditions.practice.floor = Entry::known(Flow::from_cubic_centimetres_per_hour(0.5));
            d.control.pause = d.control.pause * 0.1;
        });
    }
}
