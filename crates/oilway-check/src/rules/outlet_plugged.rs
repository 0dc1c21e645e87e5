//! A plug in an outlet of a divider.

use oilway_model::{Finding, OutletUse, Side};
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    OutletPlugged = "outlet-plugged",
    title: "An outlet of a divider is plugged",
    finds: "A plug in an outlet of a working section that is not joined to its opposite outlet.",
    why: "The piston behind the plug cannot finish its stroke, the next one never gets its turn, and the whole divider stands within its first cycle; the pump goes up to its stall, or the disc bursts.",
    source: "neale-1995", "C15.4, a piston that does not finish its travel stops the set", Seen,
    example: "Seven points on eight outlets, the eighth plugged: join it with its opposite, lead it to a point that can use more, or take a smaller section set.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for (number, divider) in facts.design.dividers.iter().enumerate() {
        for (section, parts) in divider.sections.iter().enumerate() {
            for (side, outlet) in [(Side::Left, &parts.left), (Side::Right, &parts.right)] {
                if *outlet != OutletUse::Plugged {
                    continue;
                }
                let what =
                    message!("check-outlet-plugged", section = section + 1, side = super::side_word(side));
                let draft = Draft::stop(
                    rule,
                    facts.divider_name(number),
                    what,
                    message!("check-outlet-plugged-cure"),
                );
                found.push(draft.cautions(&["S20"]).done());
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
    fn a_plug_is_refused_and_a_joined_outlet_accepted() {
        accepts("outlet-plugged", |d| {
            assert!(d.dividers.iter().flat_map(|d| &d.sections).any(|s| s.right == OutletUse::WithOpposite));
        });
        refuses("outlet-plugged", |d| d.dividers[1].sections[0].left = OutletUse::Plugged);
        refuses("outlet-plugged", |d| d.dividers[1].sections[0].right = OutletUse::Plugged);
    }
}
