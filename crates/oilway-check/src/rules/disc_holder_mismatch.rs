//! A disc in a holder with another hole.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::shield::named;
use crate::{Facts, Rule};

rule! {
    DiscHolderMismatch = "disc-holder-mismatch",
    title: "The disc does not belong into this holder",
    finds: "A disc without a holder, or in a holder that is not among those named in its data.",
    why: "Burst pressure goes with foil over hole: in another hole the same disc bursts at another pressure, and no mark says at which.",
    source: "watzlavick", "burst tests of foil over holes of two diameters", Seen,
    example: "A disc of 130 bar for a hole of 3.15 mm in one of 5 mm would burst at about 82 bar.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let Some(disc) = &facts.views.disc else { return Vec::new() };
    let what = match &facts.design.package.holder {
        None => message!("check-disc-without-holder"),
        Some(holder) if !disc.holder.contains(&holder.id) => {
            message!("check-disc-holder-mismatch", holder = named(holder))
        }
        Some(_) => return Vec::new(),
    };
    Draft::stop(rule, "package.holder", what, message!("check-disc-holder-mismatch-cure"))
        .cautions(&["S50"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses, swap};

    #[test]
    fn a_disc_goes_into_its_own_holders_only() {
        accepts("disc-holder-mismatch", |_| {});
        refuses("disc-holder-mismatch", |d| swap(d.package.holder.as_mut().unwrap(), "10010"));
        refuses("disc-holder-mismatch", |d| d.package.holder = None);
    }
}
