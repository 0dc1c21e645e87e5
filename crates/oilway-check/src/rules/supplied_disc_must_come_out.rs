//! The disc that comes in the box.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::shield::named;
use crate::{Facts, Rule};

rule! {
    SuppliedDiscMustComeOut = "supplied-disc-must-come-out",
    title: "The package arrives with another disc than the design asks for",
    finds: "A pump that is delivered with a disc of another part than the one in the design.",
    why: "Left in, it bursts at the first start or protects nothing, and the sheet says otherwise.",
    source: "own-derivation", "part as bought against part as designed", Own,
    example: "The package comes with a disc of 150 bar, the design has 130: take it out, keep it apart, fit the new one, record it.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let Some(supplied) = facts.views.pump.as_ref().and_then(|pump| pump.supplied_disc.as_ref()) else {
        return Vec::new();
    };
    let Some(chosen) = facts.design.package.disc.as_ref().filter(|disc| disc.id != *supplied) else {
        return Vec::new();
    };
    let what =
        message!("check-supplied-disc-must-come-out", supplied = supplied.as_str(), chosen = named(chosen));
    Draft::note(rule, "package.disc", what, message!("check-supplied-disc-must-come-out-cure"))
        .cautions(&["S51", "S50"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{severity, swap};
    use oilway_model::Severity;

    #[test]
    fn the_same_disc_may_stay_and_another_comes_out() {
        // Pump 10029 comes with disc 10020.
        let with = |disc: &'static str| {
            severity("supplied-disc-must-come-out", move |d| swap(d.package.disc.as_mut().unwrap(), disc))
        };
        assert_eq!(with("10020"), None);
        assert_eq!(with("10019"), Some(Severity::Note));
    }
}
