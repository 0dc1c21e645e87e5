//! A joint that the lines need and the design does not have.

use std::collections::BTreeSet;

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::needed::needed;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    JointMissing = "joint-missing",
    title: "A joint of the lines is missing",
    finds: "The start of a line, a change from one tube or hose to another, or the arrival at a divider or point, for which the design has no joint.",
    why: "Its fittings are on no list: the fitter stands before two ends and a closed shop.",
    source: "own-derivation", "each line followed from the pump to its end", Own,
    example: "A tube that goes over into a hose at a moving table, with no joint between them: make the design anew, or add the joint.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let there: BTreeSet<&str> = facts.design.joints.iter().map(|joint| joint.at.as_str()).collect();
    let report = |at: String| {
        let what = message!("check-joint-missing");
        Draft::stop(rule, at, what, message!("check-joint-missing-cure")).cautions(&["S60"]).done()
    };
    let absent = needed(facts.design).into_iter().filter(|joint| !there.contains(joint.at.as_str()));
    absent.map(|joint| report(joint.at)).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};

    #[test]
    fn every_joint_that_is_taken_away_is_missed() {
        accepts("joint-missing", |_| {});
        for number in 0..crate::testing::sound().joints.len() {
            refuses("joint-missing", |d| {
                d.joints.remove(number);
            });
        }
    }

    #[test]
    fn a_hose_behind_a_tube_wants_a_joint_between() {
        refuses("joint-missing", |d| d.network.nodes[2].legs[1].conduit = 1);
    }
}
