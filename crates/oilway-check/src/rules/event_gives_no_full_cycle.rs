//! An event too short for a cycle.

use oilway_model::Finding;
use oilway_text::message;
use oilway_units::Count;

use crate::draft::Draft;
use crate::feeding::{divider_at, way};
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    EventGivesNoFullCycle = "event-gives-no-full-cycle",
    title: "An event does not turn every divider once",
    finds: "An event of no cycles at all, which is refused; and a secondary divider that turns less than once in an event, which is a note.",
    why: "Without a cycle nobody is lubricated. A secondary that turns a third of a cycle serves each of its points at every third event only.",
    source: "own-derivation", "volume that a secondary gets in an event over its own cycle", Own,
    example: "A secondary of 2.5 cm³ a cycle gets 0.8 cm³ at each event: its points wait up to four events. Two cycles and twice the pause give the same rates, evenly.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let cycles = facts.design.control.cycles;
    if cycles == 0 {
        let what = message!("check-event-without-cycle");
        return Draft::stop(rule, "control.cycles", what, message!("check-event-without-cycle-cure")).alone();
    }
    let judge = |number: usize| {
        let turns = f64::from(cycles) * turns_of_first(facts, number)?;
        if turns >= 1.0 - 1e-9 {
            return None;
        }
        let what = message!(
            "check-event-gives-no-full-cycle",
            turns = Count::from_number(turns),
            events = libm::ceil(1.0 / turns)
        );
        let draft = Draft::note(
            rule,
            facts.divider_name(number),
            what,
            message!("check-event-gives-no-full-cycle-cure"),
        );
        Some(draft.number(message!("check-number-cycles"), Count::from_number(turns)).done())
    };
    (0..facts.design.dividers.len()).filter_map(judge).collect()
}

/// Cycles of a divider for each cycle of the first one.
fn turns_of_first(facts: &Facts<'_>, number: usize) -> Option<f64> {
    let way = way(facts.design, facts.design.dividers[number].node)?;
    let mut turns = 1.0;
    let mut above: Option<usize> = None;
    for &node in way.iter().rev() {
        let Some(here) = divider_at(facts.design, node) else { continue };
        if let Some(before) = above {
            let group = way.iter().find_map(|&n| facts.meters[before].dose(n))?;
            turns *= group / facts.meters[here].cycle?;
        }
        above = Some(here);
    }
    Some(turns)
}

#[cfg(test)]
mod tests {
    use crate::testing::severity;
    use oilway_model::Severity;

    #[test]
    fn no_cycle_is_refused_and_many_cycles_turn_every_divider() {
        let at = |cycles| severity("event-gives-no-full-cycle", |d| d.control.cycles = cycles);
        assert_eq!(at(0), Some(Severity::Stop));
        assert_eq!(at(1), Some(Severity::Note));
        assert_eq!(at(1000), None);
    }
}
