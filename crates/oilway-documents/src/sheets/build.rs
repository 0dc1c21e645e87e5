//! The build order: the steps in the order of hands, each with its cautions before it.

use oilway_catalogue::Part;
use oilway_catalogue::kinds::{BurstDisc, CheckValve, Pump};
use oilway_model::{Answer, Design, Device, Divider, Filling, Finding, Mounting};
use oilway_text::{Arg, Message, message};

use super::answer::{closing, stops};
use super::parts::open_places;
use super::ports::{Register, holds, hosts, joint_parts, outlets, planned};
use crate::cautions::{Caution, Step, triggered};
use crate::parts_list::seals;
use crate::seals::seal;
use crate::sheet::{Block, Column, Sheet, Table};
use crate::words;

/// The build sheet.
pub fn build(design: &Design, answer: &Answer, findings: &[Finding]) -> Sheet {
    let mut order = Order::new(design);
    order.blocks = stops(design, findings);
    order.blocks.extend(open_places(design));
    order.bench();
    order.disc();
    order.package_ports();
    order.air();
    order.dividers();
    order.lines();
    order.electric();
    order.fill();
    order.start(answer);
    order.record();
    Sheet { title: message!("documents-title-build", job = design.name.as_str()), blocks: order.finished() }
}

/// The sheet while it is written.
struct Order<'a> {
    design: &'a Design,
    register: Register<'a>,
    blocks: Vec<Block>,
    steps: usize,
    /// Cautions that the design brings up and that no step has placed yet.
    waiting: Vec<&'static Caution>,
}

impl<'a> Order<'a> {
    fn new(design: &'a Design) -> Self {
        // S01 closes the sheet. What stands at the making of papers is obeyed here: the emergency text, S31, stands at the
        // first step that moves lubricant.
        let work = [Step::Always, Step::Assembly, Step::Commissioning, Step::Handling];
        let stands =
            |caution: &&Caution| caution.id != "S01" && work.iter().any(|step| caution.stands_at(*step));
        let waiting = triggered(design).into_iter().filter(stands).collect();
        Order { design, register: Register::of(design), blocks: Vec::new(), steps: 0, waiting }
    }

    fn heading(&mut self, message: Message) {
        self.blocks.push(Block::Heading(message));
    }

    /// A step with the cautions that stand before it; one that stood before an earlier step is not said again.
    fn step(&mut self, cautions: &[&str], what: Message) {
        self.cautions(cautions);
        self.steps += 1;
        self.blocks.push(Block::Step { number: self.steps, what });
    }

    fn cautions(&mut self, ids: &[&str]) {
        let (now, later): (Vec<_>, Vec<_>) = core::mem::take(&mut self.waiting)
            .into_iter()
            .partition(|caution| ids.contains(&caution.id.as_str()));
        self.waiting = later;
        self.blocks.extend(now.into_iter().map(Block::Caution));
    }

    /// The bench: everything at hand, and what must come out of the parts as they arrive.
    fn bench(&mut self) {
        self.heading(message!("documents-head-bench"));
        self.step(&["S97"], message!("documents-step-lay-out"));
        for host in hosts(self.design) {
            let out: Vec<Message> = host
                .ports
                .iter()
                .filter(|port| !port.shipped_with.is_empty())
                .map(|port| {
                    message!("documents-out-of", what = port.shipped_with.as_str(), port = port.mark.as_str())
                })
                .collect();
            if !out.is_empty() {
                self.step(
                    &[],
                    message!(
                        "documents-step-take-out",
                        part = words::item(host, &self.register.items),
                        what = out
                    ),
                );
            }
        }
        self.supplied_disc();
    }

    /// The disc that came in the package as bought.
    fn supplied_disc(&mut self) {
        let package = &self.design.package;
        let Some(supplied) = Pump::of(&package.pump).and_then(|pump| pump.supplied_disc) else { return };
        let fits = package.disc.as_ref().is_some_and(|disc| disc.id == supplied);
        let what = if fits {
            message!("documents-step-supplied-disc-right", id = supplied)
        } else {
            message!("documents-step-supplied-disc-out", id = supplied)
        };
        self.step(&["S51"], what);
    }

    fn disc(&mut self) {
        let package = &self.design.package;
        let (Some(disc), Some(holder)) = (&package.disc, &package.holder) else {
            return self.step(&["S50"], message!("documents-step-no-disc"));
        };
        let Some(data) = BurstDisc::of(disc) else { return };
        let what = message!(
            "documents-step-disc",
            disc = words::item(disc, &self.register.items),
            holder = words::item(holder, &self.register.items),
            marked = data.nominal,
            tolerance = data.tolerance,
            temperature = data.marked_at,
        );
        self.step(&["S50", "S51"], what);
    }

    fn package_ports(&mut self) {
        self.heading(message!("documents-head-package-ports"));
        let package = &self.design.package;
        let mount = match &package.mounting {
            Mounting::OnReservoir => message!("documents-step-mount-on-reservoir"),
            Mounting::Remote(_) => message!("documents-step-mount-remote"),
        };
        self.step(&[], mount);
        for host in hosts(self.design) {
            if host.kind.id() == "air valve" || host.kind.id() == "air regulator" {
                continue;
            }
            self.fill_ports(host, &["S60", "S61", "S62"]);
        }
        let checked: Vec<&Device> = package.devices.iter().filter(|device| one_way(device)).collect();
        for device in checked {
            let port = words::port_position(device);
            let what = match device.flows_out {
                Some(false) => message!("documents-step-check-valve-in", port = port),
                _ => message!("documents-step-check-valve-out", port = port),
            };
            self.step(&[], what);
        }
    }

    fn fill_ports(&mut self, host: &Part, cautions: &[&str]) {
        let mut table = Table::new([
            Column::words(message!("documents-column-port")),
            Column::words(message!("documents-column-goes-in")),
            Column::words(message!("documents-column-seal")),
            Column::words(message!("documents-column-done")),
        ]);
        for (port, device) in planned(self.design, host) {
            let what = device.map_or_else(
                || message!("documents-undecided").into(),
                |device| holds(device, &self.register.items),
            );
            let sealed =
                device.is_some_and(|device| device.holds.iter().any(|f| matches!(f, Filling::Part(_))));
            let seal = words::or_none(seal(&port.thread).filter(|_| sealed));
            table.rows.push(vec![port.mark.as_str().into(), what, seal, tick()]);
        }
        self.step(cautions, message!("documents-step-ports", part = words::item(host, &self.register.items)));
        self.blocks.push(Block::Table(table));
    }

    fn air(&mut self) {
        let package = &self.design.package;
        let air: Vec<&Part> = package.regulator.iter().chain(&package.valve).map(|part| &**part).collect();
        if air.is_empty() {
            return;
        }
        self.heading(message!("documents-head-air"));
        for part in air {
            self.fill_ports(part, &["S41", "S40"]);
        }
        self.step(&["S42"], message!("documents-step-regulator-zero"));
    }

    fn dividers(&mut self) {
        self.heading(message!("documents-head-dividers"));
        for divider in &self.design.dividers {
            self.divider(divider);
        }
    }

    fn divider(&mut self, divider: &Divider) {
        let name = divider.name.as_str();
        self.step(&["S61"], message!("documents-step-stack", name = name, sections = divider.sections.len()));
        self.blocks.push(Block::Table(outlets(self.design, divider, &self.register)));
        if divider.cycle_switch {
            self.step(&[], message!("documents-step-cycle-switch", name = name));
        }
    }

    fn lines(&mut self) {
        self.heading(message!("documents-head-lines"));
        let mut table = Table::new([
            Column::words(message!("documents-column-line")),
            Column::words(message!("documents-column-tube")),
            Column::numbers(message!("documents-column-length")),
            Column::words(message!("documents-column-done")),
        ]);
        for node in &self.design.network.nodes {
            for leg in &node.legs {
                let part = self.design.conduits.get(leg.conduit);
                let part = words::or_none(part.map(|part| words::item(part, &self.register.items)));
                let line = message!("documents-line-to", name = node.name.as_str());
                table.rows.push(vec![line.into(), part, leg.length.get().into(), tick()]);
            }
        }
        self.step(&["S63", "S64"], message!("documents-step-lines"));
        self.blocks.push(Block::Table(table));
        self.step(&["S60", "S62"], message!("documents-step-joints"));
        self.blocks.push(Block::Table(self.joints()));
    }

    fn joints(&self) -> Table {
        let mut table = Table::new([
            Column::words(message!("documents-column-joint")),
            Column::words(message!("documents-column-goes-in")),
            Column::words(message!("documents-column-seal")),
            Column::words(message!("documents-column-done")),
        ]);
        for joint in &self.design.joints {
            let ends = [&joint.from, &joint.to].map(|end| end.thread.as_deref());
            let seals: Vec<Message> = ends.into_iter().flatten().filter_map(seal).collect();
            let parts = joint_parts(Some(joint), &self.register.items);
            table.rows.push(vec![words::position(joint).into(), parts, super::ports::then(seals), tick()]);
        }
        table
    }

    fn electric(&mut self) {
        self.heading(message!("documents-head-electric"));
        let what = match &self.design.package.controller {
            Some(part) => {
                message!("documents-step-controller", part = words::item(part, &self.register.items))
            }
            None => message!("documents-step-machine-controller"),
        };
        self.step(&["S73"], what);
        let control = &self.design.control;
        let what = message!(
            "documents-step-settings",
            pause = control.pause,
            cycles = control.cycles,
            time_out = control.time_out,
        );
        self.step(&[], what);
    }

    fn fill(&mut self) {
        self.heading(message!("documents-head-fill"));
        let lubricant = self.design.conditions.lubricant.name.as_str();
        let fill = message!("documents-step-fill", lubricant = lubricant);
        self.step(&["S90", "S91", "S92", "S94", "S95", "S96", "S98"], fill);
        self.step(&["S30", "S31", "S71"], message!("documents-step-bleed"));
    }

    fn start(&mut self, answer: &Answer) {
        self.heading(message!("documents-head-start"));
        if let Some(setting) = self.design.package.air_setting {
            self.step(&["S42"], message!("documents-step-air-on", setting = setting));
        }
        for season in &answer.seasons {
            let peak = super::settings::highest_reading(season);
            let what = message!(
                "documents-expect",
                day = words::season(season.season),
                peak = peak,
                stall = season.pump.stall
            );
            self.blocks.push(Block::Say(what));
        }
        self.step(&["S70", "S20"], message!("documents-step-test"));
        self.step(
            &["S27", "S72", "S74"],
            message!("documents-step-prove", points = self.design.points.len()),
        );
    }

    fn record(&mut self) {
        self.heading(message!("documents-head-record"));
        if self.design.package.disc.is_some() {
            let spares = self.design.package.spare_discs;
            self.step(
                &[],
                message!("documents-step-spares", discs = spares, rings = ring_threads(self.design)),
            );
        }
        self.step(&[], message!("documents-step-record"));
    }

    /// What no step has placed stands before the first one: nothing is left out.
    fn finished(self) -> Vec<Block> {
        let general = self.waiting.into_iter().map(Block::Caution);
        let first = self.blocks.iter().take_while(|block| matches!(block, Block::Stop(_))).count();
        let mut blocks = self.blocks;
        blocks.splice(first..first, general);
        blocks.extend(closing());
        blocks
    }
}

fn one_way(device: &Device) -> bool {
    device.flows_out.is_some()
        || device
            .holds
            .iter()
            .any(|filling| matches!(filling, Filling::Part(part) if CheckValve::of(part).is_some()))
}

/// The threads whose joints are closed by a ring.
fn ring_threads(design: &Design) -> Arg {
    let threads: Vec<String> =
        seals(design).into_iter().filter(|seal| seal.ring).map(|seal| seal.thread).collect();
    if threads.is_empty() { words::none() } else { threads.into() }
}

/// A box to tick.
fn tick() -> Arg {
    message!("documents-tick").into()
}
