//! Threads that do not go together.

use std::collections::BTreeMap;

use oilway_catalogue::Part;
use oilway_model::{Device, Filling, Finding, Joint, JointEnd};
use oilway_text::{Arg, message};

use crate::chain::{Break, broken, is_line, said};
use crate::draft::Draft;
use crate::needed::needed;
use crate::rule::rule;
use crate::shield::port_name;
use crate::{Facts, Rule};

rule! {
    JointMismatch = "joint-mismatch",
    title: "Two ends do not go together",
    finds: "A chain of fittings, along a line or in a port of the package, in which two neighbouring ends differ in thread or are of the same sex; a joint that is written for other ends than those that it joins.",
    why: "Pairs that start to screw are the worst: 1/2 inch pipe threads of two families share their pitch, assemble, and let go under pressure.",
    source: "own-derivation", "each chain followed end by end", Own,
    example: "A gauge with 1/4-18 NPT in a port G 1/4: an adapter, or the gauge with the parallel stem.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let report = |at: String, gap: Break| {
        let met: Vec<Arg> = gap.met.iter().map(|end| Arg::from(said(end))).collect();
        let what = message!("check-joint-mismatch", offered = said(&gap.offered), met = Arg::List(met));
        Draft::stop(rule, at, what, message!("check-joint-mismatch-cure")).cautions(&["S60"]).done()
    };
    let of_lines = breaks_of_lines(facts).into_iter().filter(|(_, gap)| !between_lines(gap));
    let of_ports = facts
        .design
        .package
        .devices
        .iter()
        .filter_map(|device| Some((port_name(device), break_of_port(facts, device)?)));
    let mut found: Vec<Finding> = of_lines.chain(of_ports).map(|(at, gap)| report(at, gap)).collect();
    found.extend(strangers(rule, facts));
    found
}

/// Where the joints of the lines do not go together, although parts are given.
pub(super) fn breaks_of_lines(facts: &Facts<'_>) -> Vec<(String, Break)> {
    let known = |joint: &&oilway_model::Joint| {
        joint.from.thread.is_some() && joint.to.thread.is_some() && !joint.parts.is_empty()
    };
    let gap = |joint: &oilway_model::Joint| {
        let parts: Vec<&Part> = joint.parts.iter().map(|part| &**part).collect();
        Some((joint.at.clone(), broken(&joint.from, &parts, Some(&joint.to))?))
    };
    facts.design.joints.iter().filter(known).filter_map(gap).collect()
}

/// Whether a tube or hose end met another one that does not take it; a rule of its own tells that.
pub(super) fn between_lines(gap: &Break) -> bool {
    is_line(&gap.offered) && gap.met.iter().any(is_line)
}

/// Joints that are written for other ends than those that meet there. Where nobody knows an end, any will do.
fn strangers(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let mut by_place: BTreeMap<&str, Vec<&Joint>> = BTreeMap::new();
    for joint in &facts.design.joints {
        by_place.entry(joint.at.as_str()).or_default().push(joint);
    }
    let mut found = Vec::new();
    for needed in needed(facts.design) {
        let Some(joints) = by_place.get(needed.at.as_str()) else { continue };
        let from = |joint: &Joint| needed.from.is_empty() || needed.from.contains(&joint.from);
        let to = |joint: &Joint| needed.to.as_ref().is_none_or(|to| *to == joint.to);
        let Some(joint) = joints.first().filter(|_| !joints.iter().any(|joint| from(joint) && to(joint)))
        else {
            continue;
        };
        let (written, there) = match (&needed.to, needed.from.first()) {
            (_, Some(there)) if !from(joint) => (&joint.from, there),
            (Some(there), _) => (&joint.to, there),
            _ => continue,
        };
        let what = message!("check-joint-joins-other", written = said(written), there = said(there));
        let draft = Draft::stop(rule, needed.at, what, message!("check-joint-joins-other-cure"));
        found.push(draft.cautions(&["S60"]).done());
    }
    found
}

/// The chain in a port. The large parts of the package are bolted and piped to each other in ways that no thread tells.
fn break_of_port(facts: &Facts<'_>, device: &Device) -> Option<Break> {
    let port = device.of.ports.iter().find(|port| port.mark == device.mark)?;
    let parts: Option<Vec<&Part>> = device
        .holds
        .iter()
        .map(|filling| match filling {
            Filling::Part(part) => Some(&**part),
            Filling::OpenByIntent(_) | Filling::Nothing => None,
        })
        .collect();
    let parts = parts.filter(|parts| !parts.is_empty())?;
    let piped = parts.first().is_some_and(|part| super::is_body(facts.design, part));
    if piped {
        return None;
    }
    let end = JointEnd { thread: Some(port.thread.clone()), sex: port.sex };
    broken(&end, &parts, None)
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, device, part, refuses};
    use oilway_model::Filling;

    #[test]
    fn a_taper_gauge_in_a_parallel_port_is_refused() {
        accepts("joint-mismatch", |_| {});
        refuses("joint-mismatch", |d| device(d, "gauge").holds = vec![Filling::Part(part("10080"))]);
    }

    #[test]
    fn a_joint_is_written_for_the_ends_that_meet_there() {
        // Each of these leaves the joints whole in themselves.
        refuses("joint-mismatch", |d| d.points[0].thread = Some("R 1/8".to_owned()));
        accepts("joint-mismatch", |d| d.points[0].thread = None);
        refuses("joint-mismatch", |d| d.network.nodes[3].legs[0].conduit = 1);
        refuses("joint-mismatch", |d| d.joints[0].from.thread = None);
        refuses("joint-mismatch", |d| {
            let thread = oilway_catalogue::Value::Text("M8x1".to_owned());
            let section = &mut d.dividers[1].sections[0].part;
            *section = crate::testing::altered(section, "outlet_thread", thread);
        });
    }

    #[test]
    fn a_line_must_end_in_the_thread_of_its_point() {
        refuses("joint-mismatch", |d| {
            let joint = d.joints.iter_mut().find(|joint| joint.at.starts_with("point.")).unwrap();
            joint.to.thread = Some("R 1/2".to_owned());
        });
    }
}
