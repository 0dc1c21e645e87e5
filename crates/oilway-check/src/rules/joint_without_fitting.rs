//! A joint for which there is no fitting.

use oilway_model::{Finding, Joint};
use oilway_text::message;

use crate::chain::{mates, said};
use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    JointWithoutFitting = "joint-without-fitting",
    title: "A joint has no fitting",
    finds: "Two ends of a line that do not go together as they are, with no part between them.",
    why: "The fitter finds it on site, and takes what nearly fits.",
    source: "own-derivation", "ends of each joint by thread and sex", Own,
    example: "Tube 8 to a bearing with R 1/8: add a fitting to the catalogue, or an adapter.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let judge = |joint: &Joint| {
        let known = joint.from.thread.is_some() && joint.to.thread.is_some();
        if !known || !joint.parts.is_empty() || mates(&joint.from, &joint.to) {
            return None;
        }
        let (from, to) = (said(&joint.from), said(&joint.to));
        let what = message!("check-joint-without-fitting", from = from.as_str(), to = to.as_str());
        let cure = message!("check-joint-without-fitting-cure", from = from, to = to);
        Some(Draft::stop(rule, joint.at.clone(), what, cure).cautions(&["S60"]).done())
    };
    facts.design.joints.iter().filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};

    #[test]
    fn two_ends_that_do_not_mate_need_a_part() {
        accepts("joint-without-fitting", |_| {});
        refuses("joint-without-fitting", |d| {
            let joint = d.joints.iter_mut().find(|joint| !joint.parts.is_empty()).unwrap();
            joint.parts.clear();
        });
    }
}
