//! An outlet of a divider with nothing in it.

use oilway_model::{Finding, OutletUse, Side};
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    OutletOpen = "outlet-open",
    title: "An outlet of a divider is open",
    finds: "An outlet of a working section into which nothing is screwed.",
    why: "Its whole share is pumped onto the floor at every cycle, and the divider runs on as if all were well.",
    source: "own-derivation", "every outlet gives its volume at every cycle", Own,
    example: "One outlet of 0.1 cm³ at a cycle a quarter of an hour spills 10 cm³ a day: lead it back to the reservoir, join it with its opposite, or give it to a point.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for (number, divider) in facts.design.dividers.iter().enumerate() {
        for (section, parts) in divider.sections.iter().enumerate() {
            for (side, outlet) in [(Side::Left, &parts.left), (Side::Right, &parts.right)] {
                if *outlet != OutletUse::Open {
                    continue;
                }
                let what =
                    message!("check-outlet-open", section = section + 1, side = super::side_word(side));
                let mut draft =
                    Draft::stop(rule, facts.divider_name(number), what, message!("check-outlet-open-cure"));
                if let Some(part) = &facts.views.sections[number][section] {
                    draft = draft.number(message!("check-number-dose"), part.volume);
                }
                found.push(draft.cautions(&["S92"]).done());
            }
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};
    use oilway_model::OutletUse;

    #[test]
    fn an_open_outlet_is_refused_and_a_led_one_accepted() {
        accepts("outlet-open", |_| {});
        refuses("outlet-open", |d| d.dividers[0].sections[0].left = OutletUse::Open);
    }
}
