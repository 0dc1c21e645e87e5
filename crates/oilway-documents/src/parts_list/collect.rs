//! Walks a design and gathers its parts.

use std::collections::BTreeMap;
use std::sync::Arc;

use oilway_catalogue::{Part, Role};
use oilway_model::{Design, Device, Filling, Joint, Leg, Mounting};
use oilway_text::{Message, message};
use oilway_units::Length;

use super::{Amount, PartsLine};
use crate::words::{port_position, position};

/// A part while it is gathered.
struct Gathered {
    part: Arc<Part>,
    pieces: u64,
    length: Option<Length>,
    at: Vec<Message>,
}

/// Parts in the order in which they were first met.
#[derive(Default)]
pub(super) struct Collection {
    gathered: Vec<Gathered>,
    known: BTreeMap<(String, bool), usize>,
}

impl Collection {
    /// Everything that a design holds.
    pub(super) fn of(design: &Design) -> Self {
        let mut all = Collection::default();
        all.package(design);
        all.ports(design);
        all.dividers(design);
        all.conduits(design);
        for joint in &design.joints {
            joint.parts.iter().for_each(|part| all.piece(part, position(joint)));
        }
        all
    }

    /// The lines of the list.
    pub(super) fn lines(self) -> Vec<PartsLine> {
        let line = |(number, gathered): (usize, Gathered)| PartsLine {
            item: u32::try_from(number + 1).unwrap_or(u32::MAX),
            amount: match gathered.length {
                Some(needed) => Amount::Metres { needed, bought: whole_metres(needed) },
                None => Amount::Pieces(gathered.pieces),
            },
            part: gathered.part,
            at: gathered.at,
        };
        self.gathered.into_iter().enumerate().map(line).collect()
    }

    fn entry(&mut self, part: &Arc<Part>, by_metre: bool) -> &mut Gathered {
        let next = self.gathered.len();
        let number = *self.known.entry((part.id.clone(), by_metre)).or_insert(next);
        if number == next {
            let length = by_metre.then_some(Length::ZERO);
            self.gathered.push(Gathered { part: Arc::clone(part), pieces: 0, length, at: Vec::new() });
        }
        &mut self.gathered[number]
    }

    fn piece(&mut self, part: &Arc<Part>, at: Message) {
        let entry = self.entry(part, false);
        entry.pieces += 1;
        entry.at.push(at);
    }

    fn package(&mut self, design: &Design) {
        let package = &design.package;
        self.piece(&package.pump, message!("documents-at-package"));
        self.piece(&package.block, message!("documents-at-package"));
        self.piece(&package.reservoir, message!("documents-at-package"));
        let air = package.regulator.iter().chain(&package.valve);
        air.for_each(|part| self.piece(part, message!("documents-at-air-line")));
        let holders = package.holder.as_ref().map_or(0, |holder| ports_that_hold(design, holder).max(1));
        for _ in 0..holders {
            package.holder.iter().for_each(|part| self.piece(part, message!("documents-at-relief-port")));
        }
        if let Some(disc) = &package.disc {
            (0..holders.max(1)).for_each(|_| self.piece(disc, message!("documents-at-holder")));
            (0..package.spare_discs).for_each(|_| self.piece(disc, message!("documents-at-spares-bag")));
        }
        if let Some(gauge) = &package.gauge {
            let gauges = ports_that_hold(design, gauge).max(1);
            (0..gauges).for_each(|_| self.piece(gauge, message!("documents-at-gauge-port")));
        }
        package.controller.iter().for_each(|part| self.piece(part, message!("documents-at-package")));
    }

    /// What the ports hold beside the main parts of the package, which are counted already.
    fn ports(&mut self, design: &Design) {
        let mut of_joints = parts_at_the_pump(design);
        for device in &design.package.devices {
            for part in held(device).filter(|part| !is_main(design, part)) {
                let jointed = of_joints.iter().position(|id| is_outlet(design, device) && *id == part.id);
                match jointed {
                    Some(at) => {
                        of_joints.swap_remove(at);
                    }
                    None => self.piece(part, port_position(device)),
                }
            }
        }
    }

    fn dividers(&mut self, design: &Design) {
        for divider in &design.dividers {
            let at = || message!("documents-at-divider", name = divider.name.as_str());
            self.piece(&divider.body, at());
            divider.sections.iter().for_each(|section| self.piece(&section.part, at()));
        }
    }

    fn conduits(&mut self, design: &Design) {
        for node in &design.network.nodes {
            let at = || message!("documents-at-line", name = node.name.as_str());
            node.legs.iter().for_each(|leg| self.stretch(design, leg, at()));
        }
        if let Mounting::Remote(legs) = &design.package.mounting {
            legs.iter().for_each(|leg| self.stretch(design, leg, message!("documents-at-inlet-line")));
        }
        let discharge = &design.package.discharge;
        discharge.iter().for_each(|leg| self.stretch(design, leg, message!("documents-at-discharge-line")));
    }

    fn stretch(&mut self, design: &Design, leg: &Leg, at: Message) {
        let Some(part) = design.conduits.get(leg.conduit) else { return };
        let entry = self.entry(part, true);
        let more = leg.length.get() + design.cutting_allowance.get();
        entry.length = Some(entry.length.unwrap_or_default() + more);
        entry.at.push(at);
    }
}

/// Whole metres that cover a length; a length that is no number covers nothing, and a sum of lengths is no number only where
/// the job held none.
fn whole_metres(length: Length) -> u64 {
    // A sum like 0.1 + 0.2 must not buy a metre for its last bit.
    let metres = libm::ceil(length.metres() - 1e-9);
    if metres > 0.0 { metres as u64 } else { 0 }
}

/// The parts in a port, from the port outwards.
pub(super) fn held(device: &Device) -> impl Iterator<Item = &Arc<Part>> {
    device.holds.iter().filter_map(|filling| match filling {
        Filling::Part(part) => Some(part),
        Filling::OpenByIntent(_) | Filling::Nothing => None,
    })
}

fn ports_that_hold(design: &Design, part: &Part) -> usize {
    design.package.devices.iter().filter(|device| held(device).any(|held| held.id == part.id)).count()
}

/// Whether a part is one of the package that ports name as their neighbour.
fn is_main(design: &Design, part: &Part) -> bool {
    let package = &design.package;
    let whole = [&package.pump, &package.block, &package.reservoir];
    let others = [
        &package.valve,
        &package.regulator,
        &package.holder,
        &package.gauge,
        &package.disc,
        &package.controller,
    ];
    whole.into_iter().chain(others.into_iter().flatten()).any(|main| main.id == part.id)
}

fn is_outlet(design: &Design, device: &Device) -> bool {
    let port = device.of.ports.iter().find(|port| port.mark == device.mark);
    device.of.id == design.package.block.id && port.is_some_and(|port| port.role == Role::Outlet)
}

/// Where the lines that leave the pump begin, as joints name it.
pub(super) fn marks_at_the_pump(design: &Design) -> Vec<String> {
    let leaving = design.network.nodes.iter().filter(|node| node.parent == Some(0));
    leaving.map(|node| format!("line.{}.1", node.name)).collect()
}

/// The ids of the parts in the joints with which lines leave the pump.
fn parts_at_the_pump(design: &Design) -> Vec<String> {
    let marks = marks_at_the_pump(design);
    let joints = design.joints.iter().filter(|joint| marks.contains(&joint.at));
    joints.flat_map(|joint: &Joint| joint.parts.iter().map(|part| part.id.clone())).collect()
}
