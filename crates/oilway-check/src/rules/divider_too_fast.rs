//! A divider that is driven faster than it meters.

use oilway_model::{Finding, Season};
use oilway_physics::progressive::{cycle_rate, secondary_cycle_rate};
use oilway_text::message;
use oilway_units::Frequency;

use crate::draft::Draft;
use crate::feeding::way;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    DividerTooFast = "divider-too-fast",
    title: "A divider cycles faster than it may",
    finds: "A divider whose mean cycle rate during an event on the hottest day, when lubricant runs easiest, is above what its data allow.",
    why: "Pistons that are thrown from end to end wear, and the switch misses counts.",
    source: "own-derivation", "cycles from the flow of an event and the volumes of the cycle", Own,
    example: "A pump of 240 cm³/min on a first divider of 1 cm³ a cycle: 240 a minute against 100. A smaller pump, a lower air setting, or larger sections all round.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let judge = |number: usize| {
        let most = facts.views.bodies[number].as_ref()?.cycles_max;
        let rate = rate(facts, number)?;
        if rate <= most {
            return None;
        }
        let what = message!("check-divider-too-fast", rate = rate, most = most);
        let draft =
            Draft::caution(rule, facts.divider_name(number), what, message!("check-divider-too-fast-cure"))
                .number(message!("check-number-rate"), rate)
                .number(message!("check-number-limit"), most);
        Some(draft.done())
    };
    (0..facts.design.dividers.len()).filter_map(judge).collect()
}

/// Mean rate of a divider during an event on the hottest day.
fn rate(facts: &Facts<'_>, number: usize) -> Option<Frequency> {
    let first = facts.first?;
    let cycle = facts.meters[first].cycle?;
    let event = facts.season(Season::Hot).event?;
    let mut rate = cycle_rate(cycle * f64::from(facts.design.control.cycles) / event, cycle);
    let way = way(facts.design, facts.design.dividers[number].node)?;
    let mut above = None;
    for &node in way.iter().rev() {
        let Some(here) = crate::feeding::divider_at(facts.design, node) else { continue };
        if let Some(before) = above {
            let meter: &crate::outlets::Meter = &facts.meters[before];
            let group = way.iter().find_map(|&n| meter.dose(n))?;
            rate = secondary_cycle_rate(group, rate, facts.meters[here].cycle?);
        }
        above = Some(here);
    }
    Some(rate)
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, altered, refuses};
    use oilway_catalogue::Value;
    use oilway_units::Frequency;

    #[test]
    fn a_divider_that_may_turn_slower_than_it_is_driven_is_named() {
        let allow = |d: &mut oilway_model::Design, per_minute: f64| {
            let value = Value::Quantity(Frequency::from_per_minute(per_minute).into());
            for divider in &mut d.dividers {
                divider.body = altered(&divider.body, "cycles_max", value.clone());
            }
        };
        accepts("divider-too-fast", |d| allow(d, 10_000.0));
        refuses("divider-too-fast", |d| allow(d, 0.5));
    }
}
