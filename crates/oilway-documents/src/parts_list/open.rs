//! What the parts list cannot hold: places in the design for which no part is known.

use oilway_catalogue::Thread;
use oilway_model::{Design, Filling, Joint, JointEnd, OutletUse};
use oilway_text::{Message, message};

use crate::words::{port_position, position};

/// Every place that still needs a part or a decision.
pub fn open_positions(design: &Design) -> Vec<Message> {
    let mut open = undecided_ports(design);
    open.extend(strangers(design));
    open.extend(design.joints.iter().filter_map(open_joint));
    open.extend(open_outlets(design));
    let missing = |node: &oilway_model::Node| {
        let unknown = node.legs.iter().any(|leg| design.conduits.get(leg.conduit).is_none());
        unknown.then(|| message!("documents-open-conduit", line = node.name.as_str()))
    };
    open.extend(design.network.nodes.iter().filter_map(missing));
    open.extend(
        design
            .dividers
            .iter()
            .filter(|d| d.cycle_switch && !d.body.flag("cycle_switch"))
            .map(|d| message!("documents-open-cycle-switch", name = d.name.as_str())),
    );
    open
}

fn undecided_ports(design: &Design) -> Vec<Message> {
    let undecided = |device: &&oilway_model::Device| {
        device.holds.is_empty() || device.holds.iter().any(|filling| matches!(filling, Filling::Nothing))
    };
    let devices = design.package.devices.iter().filter(undecided);
    devices.map(|device| message!("documents-open-port", port = port_position(device))).collect()
}

/// Parts of the package that face each other with threads that do not go together, each pair once.
fn strangers(design: &Design) -> Vec<Message> {
    let mut pairs: Vec<[&str; 2]> = Vec::new();
    let mut open = Vec::new();
    for device in &design.package.devices {
        let Some(Filling::Part(part)) = device.holds.first() else { continue };
        let Some(port) = device.of.ports.iter().find(|port| port.mark == device.mark) else { continue };
        let neighbour = design.package.devices.iter().any(|other| other.of.id == part.id);
        if told_from_the_other_side(design, device, part) {
            continue;
        }
        if !neighbour || part.ports.iter().any(|own| own.thread == port.thread && own.sex != port.sex) {
            continue;
        }
        let mut pair = [device.of.id.as_str(), part.id.as_str()];
        pair.sort_unstable();
        if !pairs.contains(&pair) {
            pairs.push(pair);
            open.push(message!(
                "documents-open-strangers",
                port = port_position(device),
                part = part.kind.id()
            ));
        }
    }
    open
}

/// Whether the neighbour's own port tells what lies between it and this device: a nipple is told once.
fn told_from_the_other_side(
    design: &Design,
    device: &oilway_model::Device,
    neighbour: &oilway_catalogue::Part,
) -> bool {
    let ends_here = |holds: &[Filling]| {
        holds.len() > 1 && matches!(holds.last(), Some(Filling::Part(last)) if last.id == device.of.id)
    };
    design.package.devices.iter().any(|other| other.of.id == neighbour.id && ends_here(&other.holds))
}

fn open_joint(joint: &Joint) -> Option<Message> {
    if !joint.parts.is_empty() || mate(&joint.from, &joint.to) {
        return None;
    }
    let at = position(joint);
    Some(match (&joint.from.thread, &joint.to.thread) {
        (Some(from), Some(to)) => message!("documents-open-joint", at = at, from = from, to = to),
        (Some(known), None) | (None, Some(known)) => {
            message!("documents-open-thread", at = at, known = known)
        }
        (None, None) => message!("documents-open-threads", at = at),
    })
}

/// Whether two ends go together without anything between. Threads are compared as they are written.
pub(crate) fn mate(from: &JointEnd, to: &JointEnd) -> bool {
    let written = |end: &JointEnd| {
        let text = end.thread.as_ref()?;
        Some(Thread::read(text).map_or_else(|_| text.clone(), |thread| thread.to_string()))
    };
    written(from).is_some() && written(from) == written(to) && from.sex != to.sex
}

fn open_outlets(design: &Design) -> Vec<Message> {
    let mut open = Vec::new();
    for divider in &design.dividers {
        for (number, section) in divider.sections.iter().enumerate() {
            for (side, outlet) in [("L", &section.left), ("R", &section.right)] {
                if *outlet == OutletUse::Open {
                    open.push(message!(
                        "documents-open-outlet",
                        outlet = format!("{}{side}", number + 1),
                        name = divider.name.as_str(),
                    ));
                }
            }
        }
    }
    open
}
