//! A package without spare discs.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

/// Discs that should lie in the bag of each package.
const IN_THE_BAG: u32 = 2;

rule! {
    SpareDiscs = "spare-discs",
    title: "There are too few spare discs",
    finds: "Fewer than two spare discs with a package that has one.",
    why: "On the day it bursts somebody fits what lies about: the wrong disc, two discs, or a coin.",
    source: "common-practice", "two discs and two gaskets of the same lot on site", CommonPractice,
    example: "No spares: put two of the same lot into the package's own bag, with their gaskets.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let package = &facts.design.package;
    if package.disc.is_none() || package.spare_discs >= IN_THE_BAG {
        return Vec::new();
    }
    let what = message!("check-spare-discs", spares = package.spare_discs, wanted = IN_THE_BAG);
    Draft::note(rule, "package.disc", what, message!("check-spare-discs-cure"))
        .cautions(&["S50", "S52"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::severity;
    use oilway_model::Severity;

    #[test]
    fn two_spares_are_enough() {
        let at = |spares| severity("spare-discs", |d| d.package.spare_discs = spares);
        assert_eq!(at(2), None);
        assert_eq!(at(1), Some(Severity::Note));
    }
}
