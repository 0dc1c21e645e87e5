//! A line that parts without anything that meters.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::feeding::Service;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    LineSplitsUnmetered = "line-splits-unmetered",
    title: "A line splits without a divider",
    finds: "A junction behind an outlet, or behind the pump, from which more than one line goes on to points.",
    why: "Lubricant takes the easier way. One bearing gets all, the other nothing, and nothing shows it.",
    source: "neale-1995", "C14.5, avoid splitting unmetered grease lines", Seen,
    example: "A tee to two bearings behind one outlet: give each its own outlet, or set a divider at the tee.",
    leaves_open: true,
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let mut nodes: Vec<usize> = facts
        .services
        .iter()
        .filter_map(|service| match service {
            Service::Unmetered(node) => Some(*node),
            _ => None,
        })
        .collect();
    nodes.sort_unstable();
    nodes.dedup();
    let report = |node: usize| {
        let name = &facts.design.network.nodes[node].name;
        let what = message!("check-line-splits-unmetered", junction = name.as_str());
        Draft::stop(rule, format!("line.{name}"), what, message!("check-line-splits-unmetered-cure")).done()
    };
    nodes.into_iter().map(report).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, node_of_point, refuses};
    use oilway_model::End;

    #[test]
    fn two_points_behind_one_outlet_are_refused() {
        accepts("line-splits-unmetered", |_| {});
        refuses("line-splits-unmetered", |d| {
            let (one, other) = (node_of_point(d, 0), node_of_point(d, 1));
            let mut point = d.network.nodes[one].clone();
            d.network.nodes[one].end = End::Junction;
            d.network.nodes[other].parent = Some(one);
            point.parent = Some(one);
            d.network.nodes.push(point);
        });
    }
}
