//! A thread that nobody knows yet.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    ThreadUnknown = "thread-unknown",
    title: "The thread of a joint is not known",
    finds: "A joint of which one end has no thread yet, as a rule that of a point in the survey.",
    why: "The last fitting cannot be ordered, and forty machines may have three threads.",
    source: "common-practice", "measure before ordering", CommonPractice,
    example: "A grease nipple of unknown thread: measure the diameter and the pitch over ten turns, or take one along.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let unknown = |joint: &&oilway_model::Joint| joint.from.thread.is_none() || joint.to.thread.is_none();
    let report = |joint: &oilway_model::Joint| {
        let what = message!("check-thread-unknown");
        let draft = Draft::note(rule, joint.at.clone(), what, message!("check-thread-unknown-cure"));
        draft.cautions(&["S60"]).done()
    };
    facts.design.joints.iter().filter(unknown).map(report).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::severity;
    use oilway_model::Severity;

    #[test]
    fn an_unknown_thread_is_asked_for() {
        assert_eq!(severity("thread-unknown", |_| {}), None);
        assert_eq!(severity("thread-unknown", |d| d.joints[0].to.thread = None), Some(Severity::Note));
    }
}
