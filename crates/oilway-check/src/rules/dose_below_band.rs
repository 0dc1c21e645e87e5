//! A point that gets less than it needs.

use oilway_model::Finding;
use oilway_text::message;
use oilway_units::Flow;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    DoseBelowBand = "dose-below-band",
    title: "A point gets less than its band allows",
    finds: "A point whose mean delivery lies below the lower edge of its band, 90 % of what is required where nothing else is agreed.",
    why: "Too little is the worse fault: the bearing wears while every light on the panel is green.",
    source: "common-practice", "delivery band of 90 to 150 % of the need", CommonPractice,
    example: "A bearing needs 0.14 cm³/h and gets 0.10: a pause of two thirds, or the next larger section, cures it.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let judge = |(point, feed): (usize, &crate::feeding::Feed)| {
        let need = &facts.needs[point];
        let least: Flow = need.required * need.low.fraction();
        if feed.rate >= least * (1.0 - 1e-9) {
            return None;
        }
        let what =
            message!("check-dose-below-band", delivered = feed.rate, required = need.required, least = least);
        let pause = facts.design.control.pause * (feed.rate / least);
        let draft = Draft::stop(rule, facts.point_name(point), what, message!("check-dose-below-band-cure"))
            .turns(message!("check-turns-pause-below", pause = pause))
            .number(message!("check-number-delivered"), feed.rate)
            .number(message!("check-number-required"), need.required);
        Some(draft.done())
    };
    facts.feeds().filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};

    #[test]
    fn a_pause_twice_as_long_starves_and_the_designed_one_does_not() {
        accepts("dose-below-band", |_| {});
        refuses("dose-below-band", |d| d.control.pause = d.control.pause * 2.0);
    }
}
