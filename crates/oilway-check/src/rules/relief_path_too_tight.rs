//! A relief path that holds the pressure it should let go.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

/// A single device may hold this much over the rating while it relieves.
const WHILE_RELIEVING: f64 = 1.10;

rule! {
    ReliefPathTooTight = "relief-path-too-tight",
    title: "The relief path cannot pass the pump's flow",
    finds: "A pressure held by hole, discharge line and indicator on the coldest day, at the full flow of the pump, above 110 % of the weakest rating.",
    why: "The disc is open and the pressure stays. With cold grease a discharge tube that is only a drain is the weakest link of the protection.",
    source: "ludwig", "page 410, pressure while relieving not above 110 %", Seen,
    example: "Cold grease, 100 cm³/min, 3 m of 4 mm discharge tube: 293 bar, where 6 mm hold 129 and 8 mm 75.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let shield = &facts.shield;
    let (Some(held), Some(weakest)) = (shield.relieving, shield.weakest()) else { return Vec::new() };
    let most = weakest.rated * WHILE_RELIEVING;
    if facts.design.package.disc.is_none() || held <= most {
        return Vec::new();
    }
    let what =
        message!("check-relief-path-too-tight", held = held, most = most, weakest = weakest.what.as_str());
    Draft::stop(rule, "package.discharge", what, message!("check-relief-path-too-tight-cure"))
        .number(message!("check-number-relieving"), held)
        .number(message!("check-number-limit"), most)
        .cautions(&["S05"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, piped, refuses};

    #[test]
    fn a_long_thin_discharge_line_holds_the_pressure() {
        accepts("relief-path-too-tight", |d| piped(d, 2.0));
        refuses("relief-path-too-tight", |d| piped(d, 200.0));
    }
}
