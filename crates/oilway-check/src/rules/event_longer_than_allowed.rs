//! An event that takes longer than the customer accepts.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    EventLongerThanAllowed = "event-longer-than-allowed",
    title: "A lubrication event takes longer than allowed",
    finds: "An event that, on the day on which it is slowest, lasts longer than the customer accepts: each outlet in turn at the flow that its own path allows.",
    why: "The next process step waits for it, or the controller gives up.",
    source: "own-derivation", "volume of each outlet over the flow of its path", Own,
    example: "Cold, the event takes 9 minutes of 5: fewer cycles at shorter pauses, a wider main, or a larger pump.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let allowed = facts.design.conditions.limits.event_time.get();
    let Some(event) = facts.longest_event().filter(|event| *event > allowed) else { return Vec::new() };
    let what = message!("check-event-longer-than-allowed", event = event, allowed = allowed);
    Draft::caution(rule, "control", what, message!("check-event-longer-than-allowed-cure"))
        .number(message!("check-number-event"), event)
        .number(message!("check-number-limit"), allowed)
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, longest_event, refuses, sound};
    use oilway_units::Entry;

    #[test]
    fn a_limit_far_below_the_event_is_passed() {
        let event = longest_event(&sound());
        accepts("event-longer-than-allowed", |d| d.conditions.limits.event_time = Entry::known(event * 1.01));
        refuses("event-longer-than-allowed", |d| d.conditions.limits.event_time = Entry::known(event * 0.99));
    }
}
