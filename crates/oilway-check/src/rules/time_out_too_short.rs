//! An alarm that comes before the event can end.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    TimeOutTooShort = "time-out-too-short",
    title: "The alarm comes before the event can end",
    finds: "A time-out shorter than the event on the day on which it is slowest.",
    why: "A sound system raises the alarm every cold morning, until somebody stops listening to it.",
    source: "own-derivation", "slowest event against the time-out", Own,
    example: "The event takes 4 minutes in the cold and the time-out is set to 3: set it to twice the slowest event.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let set = facts.design.control.time_out;
    let Some(event) = facts.longest_event().filter(|event| *event > set) else { return Vec::new() };
    let what = message!("check-time-out-too-short", event = event, set = set);
    Draft::stop(rule, "control.time_out", what, message!("check-time-out-too-short-cure"))
        .turns(message!("check-turns-time-out-above", event = event))
        .number(message!("check-number-event"), event)
        .number(message!("check-number-limit"), set)
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, longest_event, refuses, sound};

    #[test]
    fn the_slowest_event_is_the_edge() {
        let event = longest_event(&sound());
        accepts("time-out-too-short", |d| d.control.time_out = event * 1.01);
        refuses("time-out-too-short", |d| d.control.time_out = event * 0.99);
    }
}
