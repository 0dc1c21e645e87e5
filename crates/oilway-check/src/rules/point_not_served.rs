//! A point that nobody lubricates.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::feeding::Service;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    PointNotServed = "point-not-served",
    title: "A point gets nothing",
    finds: "A point to which no outlet leads, or whose line never reaches the pump, or that hangs on the pump without a divider.",
    why: "It runs dry, and the cycle switch counts on.",
    source: "own-derivation", "the way of each point followed to the pump", Own,
    example: "A line is drawn to the point, but the outlet was given to its neighbour: lead one outlet to each line.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let judge = |(point, service): (usize, &Service)| {
        let what = match service {
            Service::Unfed(Some(divider)) => {
                message!(
                    "check-point-without-outlet",
                    divider = facts.design.dividers[*divider].name.as_str()
                )
            }
            Service::Unfed(None) => message!("check-point-not-served"),
            Service::Fed(_) | Service::Unmetered(_) | Service::Unknown => return None,
        };
        Some(Draft::stop(rule, facts.point_name(point), what, message!("check-point-not-served-cure")).done())
    };
    facts.services.iter().enumerate().filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, node_of_point, refuses};
    use oilway_model::OutletUse;

    #[test]
    fn a_point_without_outlet_or_without_pump_is_refused() {
        accepts("point-not-served", |_| {});
        refuses("point-not-served", |d| {
            let taken = d.dividers[1].sections[0].right.clone();
            d.dividers[1].sections[0].left = taken;
        });
        refuses("point-not-served", |d| {
            let node = node_of_point(d, 0);
            d.network.nodes[node].parent = Some(0);
            d.dividers[1].sections[0].left = OutletUse::Open;
        });
        refuses("point-not-served", |d| {
            let last = node_of_point(d, d.points.len() - 1);
            d.network.nodes.truncate(last);
        });
    }
}
