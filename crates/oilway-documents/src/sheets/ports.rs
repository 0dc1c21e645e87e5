//! The port plan: for every port what comes out first, what goes in, and how it is made tight.

use std::collections::BTreeMap;

use oilway_catalogue::kinds::{Adapter, Section as SectionPart};
use oilway_catalogue::{Part, Port, Role};
use oilway_model::{Answer, Design, Device, Divider, Filling, Finding, Joint, OutletUse, Section, Side};
use oilway_text::{Arg, Message, message};

use crate::parts_list::Items;
use crate::seals::seal;
use crate::sheet::{Block, Column, Sheet, Table};
use crate::words;

/// The port plan.
pub fn ports(design: &Design, _: &Answer, _: &[Finding]) -> Sheet {
    let register = Register::of(design);
    let items = &register.items;
    let mut blocks = vec![Block::Say(message!("documents-ports-words"))];
    for host in hosts(design) {
        blocks.push(Block::Heading(words::item(host, items)));
        blocks.push(Block::Table(ports_of(design, host, items)));
    }
    for divider in &design.dividers {
        let head = message!(
            "documents-head-divider",
            name = divider.name.as_str(),
            part = words::item(&divider.body, items)
        );
        blocks.push(Block::Heading(head));
        blocks.push(Block::Table(inlet(divider, &register)));
        blocks.push(Block::Table(outlets(design, divider, &register)));
    }
    blocks.push(Block::Say(message!("documents-seal-words")));
    Sheet { title: message!("documents-title-ports", job = design.name.as_str()), blocks }
}

/// The parts of the package that have ports, in the order of the design, also those for which no port was planned.
pub(super) fn hosts(design: &Design) -> Vec<&Part> {
    let package = &design.package;
    let planned = package.devices.iter().map(|device| &*device.of);
    let whole = [&package.block, &package.pump, &package.reservoir].map(|part| &**part);
    let optional = [&package.valve, &package.regulator, &package.holder];
    let all = planned.chain(whole).chain(optional.into_iter().flatten().map(|part| &**part));
    let mut hosts: Vec<&Part> = Vec::new();
    for part in all {
        if !part.ports.is_empty() && !hosts.iter().any(|known| known.id == part.id) {
            hosts.push(part);
        }
    }
    hosts
}

/// The devices of a part, by port; none where nobody planned the port.
pub(super) fn planned<'a>(
    design: &'a Design,
    host: &'a Part,
) -> impl Iterator<Item = (&'a Port, Option<&'a Device>)> {
    let device = |mark: &str| design.package.devices.iter().find(|d| d.of.id == host.id && d.mark == mark);
    host.ports.iter().map(move |port| (port, device(&port.mark)))
}

fn ports_of(design: &Design, host: &Part, items: &Items) -> Table {
    let mut table = Table::new([
        Column::words(message!("documents-column-port")),
        Column::words(message!("documents-column-face")),
        Column::words(message!("documents-column-thread")),
        Column::words(message!("documents-column-out-first")),
        Column::words(message!("documents-column-goes-in")),
        Column::words(message!("documents-column-seal")),
    ]);
    for (port, device) in planned(design, host) {
        let holds =
            device.map_or_else(|| message!("documents-undecided").into(), |device| holds(device, items));
        let sealed = device
            .is_some_and(|device| device.holds.iter().any(|filling| matches!(filling, Filling::Part(_))));
        table.rows.push(vec![
            port.mark.as_str().into(),
            port.face.as_str().into(),
            thread(&port.thread, port.sex.word()).into(),
            out_first(port),
            holds,
            words::or_none(seal(&port.thread).filter(|_| sealed)),
        ]);
    }
    table
}

fn thread(thread: &str, sex: &'static str) -> Message {
    message!("documents-thread", thread = thread, sex = sex)
}

fn out_first(port: &Port) -> Arg {
    if port.shipped_with.is_empty() { words::none() } else { port.shipped_with.as_str().into() }
}

/// What goes into a port, from the port outwards.
pub(super) fn holds(device: &Device, items: &Items) -> Arg {
    if device.holds.is_empty() {
        return message!("documents-undecided").into();
    }
    let mut all: Vec<Message> = device.holds.iter().map(|filling| filling_words(filling, items)).collect();
    match device.flows_out {
        Some(true) => all.push(message!("documents-flows-out")),
        Some(false) => all.push(message!("documents-flows-in")),
        None => {}
    }
    if device.behind_shut_off {
        all.push(message!("documents-behind-shut-off"));
    }
    then(all)
}

/// One after the other.
pub(super) fn then(all: Vec<Message>) -> Arg {
    let mut all = all.into_iter();
    let Some(first) = all.next() else { return words::none() };
    all.fold(first, |before, next| message!("documents-then", first = before, next = next)).into()
}

fn filling_words(filling: &Filling, items: &Items) -> Message {
    match filling {
        Filling::Part(part) if Adapter::of(part).is_some() => {
            message!("documents-adapter", part = words::item(part, items))
        }
        Filling::Part(part) => words::item(part, items),
        Filling::OpenByIntent(why) => why.clone(),
        Filling::Nothing => message!("documents-undecided"),
    }
}

/// The parts of a joint, from the pump outwards.
pub(super) fn joint_parts(joint: Option<&Joint>, items: &Items) -> Arg {
    match joint {
        None => message!("documents-undecided").into(),
        Some(joint) if joint.parts.is_empty() && crate::parts_list::mate(&joint.from, &joint.to) => {
            message!("documents-joint-direct").into()
        }
        Some(joint) if joint.parts.is_empty() => message!("documents-undecided").into(),
        Some(joint) => {
            then(joint.parts.iter().map(|part| filling_words(&Filling::Part(part.clone()), items)).collect())
        }
    }
}

/// What a sheet looks up again and again: item numbers by part, joints by place.
#[derive(Debug)]
pub(super) struct Register<'a> {
    /// Item numbers.
    pub(super) items: Items,
    joints: BTreeMap<&'a str, &'a Joint>,
}

impl<'a> Register<'a> {
    /// The register of a design.
    pub(super) fn of(design: &'a Design) -> Self {
        // Where two joints claim one place the first one stands, as everywhere else.
        let joints = design.joints.iter().rev().map(|joint| (joint.at.as_str(), joint)).collect();
        Register { items: Items::of(design), joints }
    }

    /// The parts that sit at a place.
    fn parts_at(&self, at: &str) -> Arg {
        joint_parts(self.joints.get(at).copied(), &self.items)
    }
}

fn inlet(divider: &Divider, register: &Register<'_>) -> Table {
    let mut table = Table::new([
        Column::words(message!("documents-column-port")),
        Column::words(message!("documents-column-thread")),
        Column::words(message!("documents-column-out-first")),
        Column::words(message!("documents-column-goes-in")),
        Column::words(message!("documents-column-seal")),
    ]);
    for port in divider.body.ports.iter().filter(|port| port.role == Role::Inlet) {
        table.rows.push(vec![
            port.mark.as_str().into(),
            thread(&port.thread, port.sex.word()).into(),
            out_first(port),
            register.parts_at(&format!("divider.{}", divider.name)),
            words::or_none(seal(&port.thread)),
        ]);
    }
    table
}

pub(super) fn outlets(design: &Design, divider: &Divider, register: &Register<'_>) -> Table {
    let mut table = Table::new([
        Column::words(message!("documents-column-section")),
        Column::words(message!("documents-column-outlet")),
        Column::words(message!("documents-column-serves")),
        Column::words(message!("documents-column-thread")),
        Column::words(message!("documents-column-goes-in")),
        Column::words(message!("documents-column-seal")),
    ]);
    for (number, section) in divider.sections.iter().enumerate() {
        for (side, letter) in [(Side::Left, "L"), (Side::Right, "R")] {
            let use_ = outlet_of(section, side);
            let head = if side == Side::Left {
                words::item(&section.part, &register.items).into()
            } else {
                Arg::from("")
            };
            let mut row = vec![head, format!("{}{letter}", number + 1).into()];
            row.extend(outlet_row(design, section, use_, register));
            table.rows.push(row);
        }
    }
    table
}

fn outlet_of(section: &Section, side: Side) -> &OutletUse {
    match side {
        Side::Left => &section.left,
        Side::Right => &section.right,
    }
}

fn outlet_row(design: &Design, section: &Section, outlet: &OutletUse, register: &Register<'_>) -> Vec<Arg> {
    let thread = SectionPart::of(&section.part).map(|part| part.outlet_thread);
    let nothing = |what: Message| vec![what.into(), words::none(), words::none(), words::none()];
    match outlet {
        OutletUse::To(node) => {
            let name = design.network.nodes.get(*node).map_or("", |node| &node.name);
            vec![
                name.into(),
                words::or_none(thread.clone()),
                register.parts_at(&format!("line.{name}.1")),
                words::or_none(thread.as_deref().and_then(seal)),
            ]
        }
        OutletUse::WithOpposite => nothing(message!("documents-outlet-joined")),
        OutletUse::Bridged(section, side) => {
            let letter = if *side == Side::Left { "L" } else { "R" };
            nothing(message!("documents-outlet-bridged", outlet = format!("{}{letter}", section + 1)))
        }
        OutletUse::Plugged => nothing(message!("documents-outlet-plugged")),
        OutletUse::Open => nothing(message!("documents-outlet-open")),
    }
}
