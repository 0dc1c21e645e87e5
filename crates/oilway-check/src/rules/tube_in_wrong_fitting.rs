//! A tube in a fitting for another tube.

use oilway_model::Finding;
use oilway_text::{Arg, message};

use super::joint_mismatch::{between_lines, breaks_of_lines};
use crate::chain::said;
use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    TubeInWrongFitting = "tube-in-wrong-fitting",
    title: "A tube or hose is put into a fitting for another size",
    finds: "A tube or hose end that meets an end for another tube or hose.",
    why: "5/16 inch, 7.94 mm, goes into a fitting for 8 mm and blows out of it at pressure.",
    source: "own-derivation", "ends of tubes and fittings by size", Own,
    example: "Tube 8 in a fitting for tube 6: take the fitting of the tube's own size.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let report = |(at, gap): (String, crate::chain::Break)| {
        let met: Vec<Arg> = gap.met.iter().map(|end| Arg::from(said(end))).collect();
        let what =
            message!("check-tube-in-wrong-fitting", offered = said(&gap.offered), met = Arg::List(met));
        Draft::stop(rule, at, what, message!("check-tube-in-wrong-fitting-cure"))
            .cautions(&["S60", "S62"])
            .done()
    };
    breaks_of_lines(facts).into_iter().filter(|(_, gap)| between_lines(gap)).map(report).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};

    #[test]
    fn a_tube_goes_into_a_fitting_of_its_own_size() {
        accepts("tube-in-wrong-fitting", |_| {});
        refuses("tube-in-wrong-fitting", |d| {
            let starts_with_tube = |joint: &&mut oilway_model::Joint| {
                joint.from.thread.as_deref().is_some_and(|t| t.starts_with("tube")) && !joint.parts.is_empty()
            };
            let joint = d.joints.iter_mut().find(starts_with_tube).unwrap();
            joint.from.thread = Some("tube 7.94".to_owned());
        });
    }
}
