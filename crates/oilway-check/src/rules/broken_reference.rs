//! A design that names what it does not have.

use oilway_model::{Design, End, Finding, Mounting};
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::shield::leg_name;
use crate::{Facts, Rule};

rule! {
    BrokenReference = "broken-reference",
    title: "The design names something that it does not have",
    finds: "A line in a place, or of a tube, that the design does not list; a node that names a divider or a point that is not there; a line that begins beyond its own end; a part of another kind than its place in the design asks for.",
    why: "Nothing can be worked out along such a line, and a drawing made from it shows something else than the parts list.",
    source: "own-derivation", "the tree of lines must be whole", Own,
    example: "A line of conduit 7 in a design with five conduits: make the design anew from the job, or mend the file by hand.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let mut places = broken_nodes(facts.design);
    places.extend(broken_parts(facts));
    let report = |at: String| {
        Draft::stop(rule, at, message!("check-broken-reference"), message!("check-broken-reference-cure"))
            .done()
    };
    places.into_iter().map(report).collect()
}

fn broken_nodes(design: &Design) -> Vec<String> {
    let leg_is_whole = |leg: &oilway_model::Leg| {
        leg.conduit < design.conduits.len() && leg.place < design.conditions.places.len()
    };
    let mut broken = Vec::new();
    for (number, node) in design.network.nodes.iter().enumerate() {
        let there = match node.end {
            End::Divider(d) => design.dividers.get(d).is_some_and(|divider| divider.node == number),
            End::Point(p) => p < design.points.len(),
            End::Pump | End::Junction => true,
        };
        let rooted = node.parent.map_or(node.end == End::Pump, |parent| parent < number);
        if !there || !rooted {
            broken.push(format!("line.{}", node.name));
        }
        let legs = node.legs.iter().enumerate().filter(|(_, leg)| !leg_is_whole(leg));
        broken.extend(legs.map(|(leg, _)| leg_name(&node.name, leg)));
    }
    let package = &design.package;
    if package.place >= design.conditions.places.len() {
        broken.push("package.place".to_owned());
    }
    if let Mounting::Remote(legs) = &package.mounting
        && !legs.iter().all(leg_is_whole)
    {
        broken.push("package.inlet".to_owned());
    }
    if !package.discharge.iter().all(leg_is_whole) {
        broken.push("package.discharge".to_owned());
    }
    broken
}

fn broken_parts(facts: &Facts<'_>) -> Vec<String> {
    let (package, views) = (&facts.design.package, &facts.views);
    let wrong = |given: bool, seen: bool, at: &str| (given && !seen).then(|| at.to_owned());
    let mut broken: Vec<String> = [
        wrong(true, views.pump.is_some(), "package.pump"),
        wrong(true, views.reservoir.is_some(), "package.reservoir"),
        wrong(true, package.block.kind.id() == "port block", "package.block"),
        wrong(package.valve.is_some(), views.valve.is_some(), "package.valve"),
        wrong(package.regulator.is_some(), views.regulator.is_some(), "package.regulator"),
        wrong(package.disc.is_some(), views.disc.is_some(), "package.disc"),
        wrong(package.holder.is_some(), views.holder.is_some(), "package.holder"),
        wrong(package.gauge.is_some(), views.gauge.is_some(), "package.gauge"),
        wrong(package.controller.is_some(), views.controller.is_some(), "package.controller"),
    ]
    .into_iter()
    .flatten()
    .collect();
    let bodies = views.bodies.iter().enumerate().filter(|(_, body)| body.is_none());
    broken.extend(bodies.map(|(divider, _)| facts.divider_name(divider)));
    let conduits =
        views.conduits.iter().zip(&facts.design.conduits).filter(|(conduit, _)| conduit.bore.is_none());
    broken.extend(conduits.map(|(_, part)| format!("conduit.{}", part.id)));
    broken
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses, swap};
    use oilway_model::End;

    #[test]
    fn each_name_must_lead_somewhere() {
        accepts("broken-reference", |_| {});
        refuses("broken-reference", |d| d.network.nodes[1].legs[0].conduit = 99);
        refuses("broken-reference", |d| d.network.nodes[1].legs[0].place = 99);
        refuses("broken-reference", |d| d.network.nodes[1].end = End::Divider(9));
        refuses("broken-reference", |d| d.network.nodes[1].parent = Some(5));
        refuses("broken-reference", |d| d.network.nodes[1].parent = None);
        refuses("broken-reference", |d| d.package.place = 99);
        refuses("broken-reference", |d| swap(&mut d.package.pump, "10074"));
        refuses("broken-reference", |d| swap(&mut d.conduits[0], "10074"));
        refuses("broken-reference", |d| swap(&mut d.dividers[0].body, "10074"));
    }
}
