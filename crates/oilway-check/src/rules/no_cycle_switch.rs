//! A system whose cycles nobody counts.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    NoCycleSwitch = "no-cycle-switch",
    title: "No switch watches the first divider",
    finds: "A first divider without a cycle switch. Where the customer wants a blocked line to be noticed it is refused; elsewhere the event is ended by time and not by count.",
    why: "One blocked point stops the whole divider and with it the first one. Its switch is the one place where that shows.",
    source: "neale-1995", "C15.4, one failed outlet alarms", Seen,
    example: "Three dividers, none with a switch: a switch on the first sees a block anywhere; a switch on each secondary also sees a broken line between the two.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let Some(first) = facts.first else { return Vec::new() };
    if facts.design.dividers[first].cycle_switch {
        return Vec::new();
    }
    let (at, cure) = (facts.divider_name(first), message!("check-no-cycle-switch-cure"));
    if facts.design.conditions.limits.blockage_noticed {
        Draft::stop(rule, at, message!("check-blockage-unnoticed"), cure).alone()
    } else {
        Draft::caution(rule, at, message!("check-no-cycle-switch"), cure).alone()
    }
}

#[cfg(test)]
mod tests {
    use crate::testing::severity;
    use oilway_model::Severity;

    #[test]
    fn a_switch_on_the_first_divider_is_enough() {
        let at = |wanted, switch| {
            severity("no-cycle-switch", |d| {
                d.conditions.limits.blockage_noticed = wanted;
                d.dividers[0].cycle_switch = switch;
                d.dividers[1].cycle_switch = false;
            })
        };
        assert_eq!(at(true, true), None);
        assert_eq!(at(true, false), Some(Severity::Stop));
        assert_eq!(at(false, false), Some(Severity::Caution));
    }
}
