//! Events that run into each other.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    PauseShorterThanEvent = "pause-shorter-than-event",
    title: "The next event is due before the last one ends",
    finds: "A pause between events that is shorter than the event on the day on which it is slowest.",
    why: "The pump never rests, and the points get less than the arithmetic says.",
    source: "own-derivation", "slowest event against the pause", Own,
    example: "A pause of 3 minutes and an event of 4: one divider cycle at each event, or a larger pump.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let pause = facts.design.control.pause;
    let Some(event) = facts.longest_event().filter(|event| *event >= pause) else { return Vec::new() };
    let what = message!("check-pause-shorter-than-event", event = event, pause = pause);
    Draft::stop(rule, "control.pause", what, message!("check-pause-shorter-than-event-cure"))
        .turns(message!("check-turns-pause-above", pause = event))
        .number(message!("check-number-event"), event)
        .number(message!("check-number-pause"), pause)
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, longest_event, refuses, sound};

    #[test]
    fn the_slowest_event_must_fit_between_two_starts() {
        let event = longest_event(&sound());
        accepts("pause-shorter-than-event", |d| d.control.pause = event * 1.01);
        refuses("pause-shorter-than-event", |d| d.control.pause = event * 0.99);
    }
}
