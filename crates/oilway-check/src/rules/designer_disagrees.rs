//! The designer's numbers differ from the checker's.

use oilway_model::Finding;

use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    DesignerDisagrees = "designer-disagrees",
    title: "Designer and checker find different numbers",
    finds: "A number of the designer that differs from the checker's own by more than a thousandth, or by five where the designer searches for a flow.",
    why: "Both work from the same formulas and share nothing else. One of them is wrong, and until somebody knows which, neither is to be believed.",
    source: "own-derivation", "two independent ways to the same number", Own,
    example: "The designer says 96.1 bar to start, the checker 104.7: do not build; report the job.",
}

/// A design alone has no second opinion in it; [`crate::compare`] does the work.
fn run(_: &dyn Rule, _: &Facts<'_>) -> Vec<Finding> {
    Vec::new()
}
