//! An outlet that is led round in a circle, or to something that is not there.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::outlets::Fate;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    OutletGoesNowhere = "outlet-goes-nowhere",
    title: "An outlet leads nowhere",
    finds: "An outlet that is joined or bridged round in a circle, bridged to a section that the divider does not have, or led to a line that does not begin at this divider.",
    why: "Its volume has no way out: the divider stands as if the outlet were plugged.",
    source: "own-derivation", "each outlet followed to its end", Own,
    example: "Left joined to right and right joined to left: one of the two must lead to a line.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for (number, meter) in facts.meters.iter().enumerate() {
        for outlet in &meter.outlets {
            let (section, side) = (outlet.section + 1, super::side_word(outlet.side));
            let what = match outlet.fate {
                Fate::Circle => message!("check-outlet-in-a-circle", section = section, side = side),
                Fate::Nowhere => message!("check-outlet-goes-nowhere", section = section, side = side),
                Fate::Feeds(_) | Fate::Plugged | Fate::Open => continue,
            };
            let cure = message!("check-outlet-goes-nowhere-cure");
            found.push(Draft::stop(rule, facts.divider_name(number), what, cure).done());
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};
    use oilway_model::{OutletUse, Side};

    #[test]
    fn circles_and_loose_ends_are_refused_and_bridges_that_arrive_accepted() {
        accepts("outlet-goes-nowhere", |d| {
            d.dividers[1].sections[0].right = OutletUse::Bridged(0, Side::Left);
        });
        refuses("outlet-goes-nowhere", |d| {
            d.dividers[1].sections[0].left = OutletUse::WithOpposite;
            d.dividers[1].sections[0].right = OutletUse::WithOpposite;
        });
        refuses("outlet-goes-nowhere", |d| {
            d.dividers[1].sections[0].left = OutletUse::Bridged(77, Side::Left)
        });
        refuses("outlet-goes-nowhere", |d| d.dividers[1].sections[0].left = OutletUse::To(0));
        refuses("outlet-goes-nowhere", |d| d.dividers[1].sections[0].left = OutletUse::To(777));
    }
}
