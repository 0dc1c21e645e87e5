//! What belongs into the spares bag, and the seals that no catalogue line names.

use std::collections::BTreeMap;
use std::sync::Arc;

use oilway_catalogue::Part;
use oilway_catalogue::kinds::LubricantFilter;
use oilway_model::{Design, Device};
use oilway_text::{Message, message};

use super::collect::{held, marks_at_the_pump};
use super::{Amount, parts_list};
use crate::seals::{seal, takes_a_ring};

/// A spare part and why it is kept.
#[derive(Clone, Debug)]
pub struct Spare {
    /// The part.
    pub part: Arc<Part>,
    /// How many.
    pub quantity: u64,
    /// Why.
    pub why: Message,
}

/// The seals of one thread.
#[derive(Clone, Debug, PartialEq)]
pub struct Seal {
    /// The thread.
    pub thread: String,
    /// How it is made tight.
    pub seal: Message,
    /// How many such joints the system has.
    pub joints: u64,
    /// Whether a ring is bought for it.
    pub ring: bool,
}

/// The spares of a design: its discs, counted in the parts list already, and the elements of its filters, which are not.
pub fn spares(design: &Design) -> Vec<Spare> {
    let mut spares = Vec::new();
    if let Some(disc) = &design.package.disc {
        spares.push(Spare {
            part: Arc::clone(disc),
            quantity: u64::from(design.package.spare_discs),
            why: message!("documents-spare-disc"),
        });
    }
    for line in parts_list(design).into_iter().filter(|line| LubricantFilter::of(&line.part).is_some()) {
        let Amount::Pieces(quantity) = line.amount else { continue };
        spares.push(Spare { part: line.part, quantity, why: message!("documents-spare-filter") });
    }
    spares
}

/// The threaded joints of a design by thread, in the order of their writing.
pub fn seals(design: &Design) -> Vec<Seal> {
    let mut counts: BTreeMap<&str, u64> = BTreeMap::new();
    for device in &design.package.devices {
        let chain: Vec<&Arc<Part>> = held(device).collect();
        inner(&chain, &mut counts);
        let port = device.of.ports.iter().find(|port| port.mark == device.mark);
        if let Some(port) =
            port.filter(|_| !chain.is_empty() && !is_named_from_the_other_side(design, device))
        {
            *counts.entry(&port.thread).or_default() += 1;
        }
    }
    let leaving = marks_at_the_pump(design);
    for joint in &design.joints {
        // The joint at the pump's outlet is counted with its port, and so is what lies inside it.
        let counted = leaving.contains(&joint.at) && !design.package.devices.is_empty();
        let from = joint.from.thread.as_deref().filter(|_| !counted);
        for thread in from.into_iter().chain(joint.to.thread.as_deref()) {
            *counts.entry(thread).or_default() += 1;
        }
        if !counted {
            inner(&joint.parts.iter().collect::<Vec<_>>(), &mut counts);
        }
    }
    let known = counts.into_iter().filter_map(|(thread, joints)| {
        Some(Seal { thread: thread.to_owned(), seal: seal(thread)?, joints, ring: takes_a_ring(thread) })
    });
    known.filter(|seal| !seal.thread.starts_with("tube") && !seal.thread.starts_with("hose")).collect()
}

/// The joints inside a chain of adapter and fitting.
fn inner<'a>(chain: &[&'a Arc<Part>], counts: &mut BTreeMap<&'a str, u64>) {
    for pair in chain.windows(2) {
        let [before, after] = pair else { continue };
        let shared =
            before.ports.iter().find(|a| after.ports.iter().any(|b| a.thread == b.thread && a.sex != b.sex));
        if let Some(port) = shared {
            *counts.entry(&port.thread).or_default() += 1;
        }
    }
}

/// Two parts of the package that sit on each other name the joint twice, each from its port; the male side is left out.
fn is_named_from_the_other_side(design: &Design, device: &Device) -> bool {
    let port = device.of.ports.iter().find(|port| port.mark == device.mark);
    let male = port.is_some_and(|port| port.sex == oilway_catalogue::Sex::Male);
    let first = held(device).next();
    let other = first.is_some_and(|part| design.package.devices.iter().any(|d| d.of.id == part.id));
    male && other
}
