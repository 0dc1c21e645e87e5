//! Which joints the lines of a design need: at the start of each line, at every change of tube or hose, and where it arrives.

use oilway_catalogue::kinds::{Hose, Plug, Section, Tube};
use oilway_catalogue::{Internal, Part, Role, Sex};
use oilway_model::{Design, Divider, End, Filling, JointEnd, OutletUse};

use crate::chain::ends;
use crate::shield::leg_name;

/// A joint that must be there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Needed {
    /// Where: `line.washer.1`, `point.hinge`.
    pub(crate) at: String,
    /// The ends of which one is on the pump side; empty where nobody knows it.
    pub(crate) from: Vec<JointEnd>,
    /// The end on the far side; none where nobody knows it.
    pub(crate) to: Option<JointEnd>,
}

/// Every joint that the lines need, from the pump outwards.
pub(crate) fn needed(design: &Design) -> Vec<Needed> {
    let mut all = Vec::new();
    for (number, node) in design.network.nodes.iter().enumerate() {
        let Some(parent) = node.parent else { continue };
        let mut before = leaving(design, parent, number);
        for (leg_number, leg) in node.legs.iter().enumerate() {
            // What is no tube or hose is told by a rule of its own.
            let Some(end) = design.conduits.get(leg.conduit).and_then(|part| line_end(part)) else {
                before = Vec::new();
                continue;
            };
            // The same tube passes from one place to the next in one piece.
            if before != [end.clone()] {
                let at = leg_name(&node.name, leg_number);
                all.push(Needed { at, from: before, to: Some(end.clone()) });
            }
            before = vec![end];
        }
        if let Some((at, to)) = arriving(design, node.end) {
            all.push(Needed { at, from: before, to });
        }
    }
    all
}

/// The end of a tube or hose: a tube by its outside, a hose by its bore, in millimetres to the hundredth.
fn line_end(part: &Part) -> Option<JointEnd> {
    let written =
        |word: &str, millimetres: f64| format!("{word} {}", libm::round(millimetres * 100.0) / 100.0);
    let tube = Tube::of(part).map(|tube| written("tube", tube.outside.millimetres()));
    let thread = tube.or_else(|| Hose::of(part).map(|hose| written("hose", hose.bore.millimetres())))?;
    Some(JointEnd { thread: Some(thread), sex: Sex::Male })
}

fn leaving(design: &Design, parent: usize, node: usize) -> Vec<JointEnd> {
    match design.network.nodes.get(parent).map(|node| node.end) {
        Some(End::Pump) => outlets_of_block(design),
        Some(End::Divider(divider)) => {
            design.dividers.get(divider).and_then(|d| outlet(d, node)).into_iter().collect()
        }
        _ => Vec::new(),
    }
}

/// The outlets of the block that a line can leave from: those without a plug.
fn outlets_of_block(design: &Design) -> Vec<JointEnd> {
    let block = &design.package.block;
    let plugged = |mark: &str| {
        let plug = |f: &Filling| matches!(f, Filling::Part(part) if Plug::of(part).is_some());
        let here = design.package.devices.iter().filter(|d| d.of.id == block.id && d.mark == mark);
        here.flat_map(|d| &d.holds).any(plug)
    };
    let outlets = block.ports.iter().zip(ends(block));
    outlets
        .filter(|(p, _)| p.role == Role::Outlet && p.internal == Internal::Pressure && !plugged(&p.mark))
        .map(|(_, end)| end)
        .collect()
}

fn outlet(divider: &Divider, node: usize) -> Option<JointEnd> {
    let leads = |outlet: &OutletUse| *outlet == OutletUse::To(node);
    let section = divider.sections.iter().find(|s| leads(&s.left) || leads(&s.right))?;
    let thread = Section::of(&section.part)?.outlet_thread;
    Some(JointEnd { thread: Some(thread), sex: Sex::Female })
}

fn arriving(design: &Design, end: End) -> Option<(String, Option<JointEnd>)> {
    match end {
        End::Divider(divider) => {
            let divider = design.dividers.get(divider)?;
            let ports = divider.body.ports.iter().zip(ends(&divider.body));
            let inlet = ports.filter(|(port, _)| port.role == Role::Inlet).map(|(_, end)| end).next();
            Some((format!("divider.{}", divider.name), inlet))
        }
        End::Point(point) => {
            let point = design.points.get(point)?;
            let thread = point.thread.clone();
            let end = thread.map(|thread| JointEnd { thread: Some(thread), sex: Sex::Female });
            Some((format!("point.{}", point.name), end))
        }
        End::Pump | End::Junction => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::sound;

    #[test]
    fn a_line_needs_a_joint_at_both_ends_and_at_every_change_of_tube() {
        let mut design = sound();
        let names = |design: &Design| needed(design).into_iter().map(|n| n.at).collect::<Vec<_>>();
        // Nine lines, one of them of two legs of the same tube.
        assert_eq!(names(&design).len(), 18);
        design.network.nodes[2].legs[1].conduit = 1;
        assert_eq!(names(&design).len(), 19);
        assert!(names(&design).contains(&"line.second.2".to_owned()));
    }
}
