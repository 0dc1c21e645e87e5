//! The port plan: for every port of the package, what goes in.
//!
//! A port says by its role what it wants. The plan looks for the part that serves the role and whose thread mates with the port, with
//! an adapter between where none mates directly. What arrives in the port from the factory and must come out first is data of
//! the port itself.

use std::sync::Arc;

use oilway_catalogue::kinds::{CheckValve, LevelSwitch};
use oilway_catalogue::{Catalogue, Internal, Part, Port, Role};
use oilway_model::{Design, Device, Filling, Mounting, Package};
use oilway_text::message;
use oilway_units::Pressure;

use crate::equipment::{end_of, mount_of};
use crate::joints::{Joiner, conduit_end, mates};
use crate::layout::price;
use crate::reservoir::medium;

/// Opening pressure of check valves that sit between the pump and the line.
pub(crate) fn outlet_check(package: &Package) -> Pressure {
    let outlets = package.devices.iter().filter(|d| {
        d.of.ports
            .iter()
            .any(|p| p.mark == d.mark && p.role == Role::Outlet && p.internal == Internal::Pressure)
    });
    let parts = outlets.flat_map(|d| &d.holds).filter_map(|f| match f {
        Filling::Part(part) => CheckValve::of(part),
        _ => None,
    });
    parts.map(|c| c.cracking).sum()
}

/// Fills every port of the package.
pub(crate) fn plan(design: &Design, catalogue: &Catalogue, joiner: &mut Joiner) -> Vec<Device> {
    let planner = Planner { design, catalogue };
    let package = &design.package;
    let mut hosts: Vec<&Arc<Part>> = vec![&package.block, &package.pump, &package.reservoir];
    hosts.extend(package.valve.iter().chain(package.regulator.iter()).chain(package.holder.iter()));
    let mut devices = Vec::new();
    for host in hosts {
        let mut line_given = false;
        for port in &host.ports {
            let holds = planner.fill(host, port, &mut line_given, joiner);
            let flows_out = holds
                .iter()
                .any(|f| matches!(f, Filling::Part(p) if CheckValve::of(p).is_some()))
                .then_some(true);
            devices.push(Device {
                of: Arc::clone(host),
                mark: port.mark.clone(),
                holds,
                behind_shut_off: false,
                flows_out,
            });
        }
    }
    devices
}

/// Marks of pilot ports, ISO 11727.
const PILOTS: [&str; 3] = ["10", "12", "14"];

struct Planner<'a> {
    design: &'a Design,
    catalogue: &'a Catalogue,
}

impl Planner<'_> {
    fn fill(
        &self,
        host: &Arc<Part>,
        port: &Port,
        line_given: &mut bool,
        joiner: &mut Joiner,
    ) -> Vec<Filling> {
        let package = &self.design.package;
        let on_block = Arc::ptr_eq(host, &package.block) || host.id == package.block.id;
        match port.role {
            Role::Outlet if on_block && !*line_given => {
                *line_given = true;
                self.line(port, joiner)
            }
            Role::Outlet | Role::Inlet | Role::Joint | Role::AirIn | Role::AirOut => {
                self.neighbour(host, port, joiner)
            }
            Role::Relief => package
                .holder
                .as_ref()
                .map_or_else(|| self.plug(port), |h| self.with_adapter(port, h, joiner)),
            Role::Gauge => {
                package.gauge.as_ref().map_or_else(|| self.plug(port), |g| self.with_adapter(port, g, joiner))
            }
            Role::Vent => self.of_kind(port, "shut-off valve").unwrap_or_else(|| self.plug(port)),
            Role::Breather => self.of_kind(port, "breather").unwrap_or_else(|| vec![Filling::Nothing]),
            Role::Fill => self.of_kind(port, "filling coupling").unwrap_or_else(|| self.plug(port)),
            Role::Exhaust => self
                .of_kind(port, "silencer")
                .unwrap_or_else(|| vec![Filling::OpenByIntent(message!("solve-port-exhaust"))]),
            Role::Level => self.level_switch(port).unwrap_or_else(|| self.plug(port)),
            Role::Sensor | Role::Return | Role::Drain => self.plug(port),
        }
    }

    /// The line to the first divider.
    fn line(&self, port: &Port, joiner: &mut Joiner) -> Vec<Filling> {
        let first =
            self.design.network.nodes.iter().find(|n| n.parent == Some(0)).and_then(|n| n.legs.first());
        let conduit = first.and_then(|leg| self.design.conduits.get(leg.conduit));
        let Some(conduit) = conduit else { return vec![Filling::Nothing] };
        match joiner.join(&end_of(port), &conduit_end(conduit)) {
            Some(parts) => parts.into_iter().map(Filling::Part).collect(),
            None => vec![Filling::Nothing],
        }
    }

    /// The part of the package that sits at this port; a plug, or nothing where even that is missing, if there is none.
    fn neighbour(&self, host: &Arc<Part>, port: &Port, joiner: &mut Joiner) -> Vec<Filling> {
        let package = &self.design.package;
        if Arc::ptr_eq(host, &package.block) || host.id == package.block.id {
            let inner = match (port.role, port.internal) {
                (Role::Inlet, _) => match package.mounting {
                    Mounting::OnReservoir => return self.reservoir(port, joiner),
                    Mounting::Remote(_) => return self.inlet_line(port, true, joiner),
                },
                (Role::Joint, Internal::Pressure) => Some(&package.pump),
                _ => None,
            };
            return inner.map_or_else(|| self.plug(port), |part| vec![Filling::Part(Arc::clone(part))]);
        }
        if host.id == package.holder.as_ref().map_or("", |h| &h.id) {
            return match port.role {
                Role::Inlet => vec![Filling::Part(Arc::clone(&package.block))],
                _ => self.discharge(port, joiner),
            };
        }
        match port.internal {
            Internal::Air => self.air_neighbour(host, port, joiner),
            Internal::Suction if matches!(package.mounting, Mounting::Remote(_)) => {
                self.inlet_line(port, false, joiner)
            }
            _ => vec![Filling::Part(Arc::clone(&package.block))],
        }
    }

    /// On the air side the chain is supply, regulator, valve, pump; what the package lacks is left out of it.
    fn air_neighbour(&self, host: &Arc<Part>, port: &Port, joiner: &Joiner) -> Vec<Filling> {
        let package = &self.design.package;
        let chain: Vec<&Arc<Part>> =
            [package.regulator.as_ref(), package.valve.as_ref(), Some(&package.pump)]
                .into_iter()
                .flatten()
                .collect();
        let Some(at) = chain.iter().position(|part| part.id == host.id) else {
            return vec![Filling::Nothing];
        };
        if let Some(decided) = self.valve_port(host, port) {
            return decided;
        }
        let next = if port.role == Role::AirIn { at.checked_sub(1) } else { Some(at + 1) };
        match next.map(|n| chain.get(n)) {
            None => vec![Filling::OpenByIntent(message!("solve-port-air-supply"))],
            Some(None) => vec![Filling::Nothing],
            Some(Some(part)) => {
                let nipple = if port.role == Role::AirIn { nipple(port, part, joiner) } else { Vec::new() };
                nipple.into_iter().chain([Arc::clone(part)]).map(Filling::Part).collect()
            }
        }
    }

    /// What is particular about an air valve's ports: a pilot waits for a signal from outside, and of two outlets a pump with a
    /// single air port takes the one that is fed while the valve is switched, 4 in ISO 11727; the other is shut.
    fn valve_port(&self, host: &Arc<Part>, port: &Port) -> Option<Vec<Filling>> {
        let valve = self.design.package.valve.as_ref().filter(|v| v.id == host.id)?;
        if PILOTS.contains(&port.mark.as_str()) {
            return Some(vec![Filling::OpenByIntent(message!("solve-port-pilot"))]);
        }
        let outlets = valve.ports.iter().filter(|p| p.role == Role::AirOut).count();
        let inlets = self.design.package.pump.ports.iter().filter(|p| p.role == Role::AirIn).count();
        (port.role == Role::AirOut && outlets > inlets && port.mark != "4").then(|| self.plug(port))
    }

    /// The reservoir under the block, on an adapter where their threads differ.
    fn reservoir(&self, port: &Port, joiner: &mut Joiner) -> Vec<Filling> {
        let vessel = &self.design.package.reservoir;
        let outlet = vessel.ports.iter().find(|p| p.role == Role::Outlet);
        match outlet.and_then(|outlet| joiner.join(&end_of(port), &end_of(outlet))) {
            Some(parts) => parts.into_iter().chain([Arc::clone(vessel)]).map(Filling::Part).collect(),
            None => vec![Filling::Nothing],
        }
    }

    /// The end of the inlet line at the block, or its other end at the reservoir.
    fn inlet_line(&self, port: &Port, at_block: bool, joiner: &mut Joiner) -> Vec<Filling> {
        let Mounting::Remote(legs) = &self.design.package.mounting else { return vec![Filling::Nothing] };
        // The line runs from the reservoir to the block.
        let leg = if at_block { legs.last() } else { legs.first() };
        let conduit = leg.and_then(|leg| self.design.conduits.get(leg.conduit));
        let joined = conduit.and_then(|c| joiner.join(&end_of(port), &conduit_end(c)));
        joined.map_or_else(|| vec![Filling::Nothing], |parts| parts.into_iter().map(Filling::Part).collect())
    }

    fn discharge(&self, port: &Port, joiner: &mut Joiner) -> Vec<Filling> {
        let leg = self.design.package.discharge.first();
        let conduit = leg.and_then(|leg| self.design.conduits.get(leg.conduit));
        match conduit.and_then(|c| joiner.join(&end_of(port), &conduit_end(c))) {
            Some(parts) => parts.into_iter().map(Filling::Part).collect(),
            None => vec![Filling::OpenByIntent(message!("solve-port-discharge"))],
        }
    }

    /// A device on a port, with an adapter between where their threads differ.
    fn with_adapter(&self, port: &Port, device: &Arc<Part>, joiner: &mut Joiner) -> Vec<Filling> {
        match mount_of(device).and_then(|mount| joiner.join(&end_of(port), &mount)) {
            Some(parts) => parts.into_iter().chain([Arc::clone(device)]).map(Filling::Part).collect(),
            None => vec![Filling::Nothing],
        }
    }

    /// The level switch for what is in the reservoir.
    fn level_switch(&self, port: &Port) -> Option<Vec<Filling>> {
        let medium = medium(&self.design.conditions);
        self.cheapest(port, "level switch", |part| {
            LevelSwitch::of(part).is_some_and(|s| s.lubricants.contains(&medium))
        })
    }

    /// The cheapest part of a kind that goes straight into the port.
    fn of_kind(&self, port: &Port, kind: &str) -> Option<Vec<Filling>> {
        self.cheapest(port, kind, |_| true)
    }

    fn cheapest(&self, port: &Port, kind: &str, suits: impl Fn(&Part) -> bool) -> Option<Vec<Filling>> {
        let fits = |p: &&Arc<Part>| p.ports.iter().any(|own| mates(&end_of(port), &end_of(own)));
        let strong = |p: &&Arc<Part>| {
            port.internal != Internal::Pressure || rated(p) >= rated(&self.design.package.block)
        };
        let all = self.catalogue.of_kind(kind).filter(fits).filter(strong).filter(|p| suits(p));
        all.min_by_key(|p| (price(p), p.id.clone())).map(|part| vec![Filling::Part(Arc::clone(part))])
    }

    fn plug(&self, port: &Port) -> Vec<Filling> {
        self.of_kind(port, "plug").unwrap_or_else(|| vec![Filling::Nothing])
    }
}

/// The nipple between an air inlet and the outlet of the part before it; it is told once, at the inlet.
fn nipple(inlet: &Port, before: &Part, joiner: &Joiner) -> Vec<Arc<Part>> {
    let outlets = before.ports.iter().filter(|p| p.role == Role::AirOut);
    let mut found = outlets.filter_map(|outlet| joiner.join_air(&end_of(inlet), &end_of(outlet)));
    found.next().unwrap_or_default()
}

fn rated(part: &Part) -> Pressure {
    part.kind.rating(part).unwrap_or(Pressure::ZERO)
}

#[cfg(test)]
mod tests {
    use oilway_model::Job;
    use oilway_units::Length;

    use super::*;
    use crate::design;
    use crate::testing::{catalogue, dairy, hall, known, leg, spindle, without_air};

    fn remote() -> Job {
        let mut job = spindle();
        job.package.inlet = vec![leg(0, 0.5)];
        job.package.discharge = Some(known(Length::from_metres(1.0)));
        job
    }

    fn jobs() -> Vec<Job> {
        vec![hall(), dairy(), spindle(), without_air(), remote()]
    }

    #[test]
    fn every_port_of_every_device_is_decided() {
        for job in jobs() {
            let design = design(&job, catalogue()).unwrap();
            for device in &design.package.devices {
                let undecided =
                    device.holds.is_empty() || device.holds.iter().any(|f| matches!(f, Filling::Nothing));
                assert!(!undecided, "{}: {} {}", job.name, device.of.description, device.mark);
            }
        }
    }

    #[test]
    fn every_port_of_block_pump_reservoir_valve_regulator_and_holder_stands_in_the_plan_once() {
        for job in jobs() {
            let design = design(&job, catalogue()).unwrap();
            let package = &design.package;
            let hosts = [&package.block, &package.pump, &package.reservoir].into_iter();
            let hosts = hosts.chain(&package.valve).chain(&package.regulator).chain(&package.holder);
            for port in hosts.flat_map(|h| h.ports.iter().map(move |p| (h, p))) {
                let found = package.devices.iter().filter(|d| d.of.id == port.0.id && d.mark == port.1.mark);
                assert_eq!(found.count(), 1, "{}: {} {}", job.name, port.0.description, port.1.mark);
            }
        }
    }

    /// Walks what sits in a port from the port outwards: each part must mate with the one before it.
    fn ends_mate(device: &Device) -> bool {
        let port = device.of.ports.iter().find(|p| p.mark == device.mark).unwrap();
        let mut open = vec![end_of(port)];
        for filling in &device.holds {
            let Filling::Part(part) = filling else { return true };
            let own: Vec<_> = part.ports.iter().map(end_of).collect();
            let Some(used) = own.iter().position(|end| open.iter().any(|o| mates(o, end))) else {
                return false;
            };
            open = own.into_iter().enumerate().filter(|(i, _)| *i != used).map(|(_, end)| end).collect();
        }
        true
    }

    #[test]
    fn what_sits_in_a_port_goes_into_it_part_by_part() {
        for job in jobs() {
            let design = design(&job, catalogue()).unwrap();
            for device in &design.package.devices {
                // Between valve and pump the nipple is told at the inlet; the outlet names its neighbour only.
                let port = device.of.ports.iter().find(|p| p.mark == device.mark).unwrap();
                if port.role == Role::AirOut {
                    continue;
                }
                assert!(ends_mate(device), "{}: {} {}", job.name, device.of.description, device.mark);
            }
        }
    }

    #[test]
    fn what_must_breathe_is_never_plugged_and_pressure_is_never_left_open() {
        for job in jobs() {
            let design = design(&job, catalogue()).unwrap();
            for device in &design.package.devices {
                let port = device.of.ports.iter().find(|p| p.mark == device.mark).unwrap();
                let kinds: Vec<&str> = device
                    .holds
                    .iter()
                    .map(|f| if let Filling::Part(p) = f { p.kind.id() } else { "open" })
                    .collect();
                match port.role {
                    Role::Breather => assert_eq!(kinds, ["breather"]),
                    Role::Exhaust => assert!(kinds == ["silencer"] || kinds == ["open"]),
                    _ if port.internal == Internal::Pressure => {
                        assert!(!kinds.contains(&"open"), "{}", device.mark)
                    }
                    _ => {}
                }
            }
        }
    }

    #[test]
    fn grease_gets_the_switch_for_grease_and_oil_the_one_for_oil() {
        for job in jobs() {
            let design = design(&job, catalogue()).unwrap();
            let switches = design.package.devices.iter().flat_map(|d| &d.holds).filter_map(|f| match f {
                Filling::Part(part) => LevelSwitch::of(part),
                _ => None,
            });
            for switch in switches {
                assert!(switch.lubricants.contains(&medium(&job.conditions)), "{}", job.name);
            }
        }
    }

    #[test]
    fn nothing_stands_between_the_pump_and_its_disc() {
        for job in jobs() {
            let design = design(&job, catalogue()).unwrap();
            let relief = |d: &&Device| d.of.ports.iter().any(|p| p.mark == d.mark && p.role == Role::Relief);
            let device = design.package.devices.iter().find(relief).unwrap();
            assert!(!device.behind_shut_off);
            let holder = design.package.holder.as_ref().unwrap();
            let last = device.holds.last().unwrap();
            assert!(matches!(last, Filling::Part(p) if p.id == holder.id), "{}", job.name);
            let between =
                device.holds.iter().filter(|f| matches!(f, Filling::Part(p) if p.kind.id() == "adapter"));
            assert_eq!(between.count(), device.holds.len() - 1);
        }
    }

    #[test]
    fn without_a_check_valve_the_outlet_costs_nothing() {
        let mut design = design(&hall(), catalogue()).unwrap();
        assert_eq!(outlet_check(&design.package), Pressure::ZERO);
        let check = catalogue().of_kind("check valve").next().unwrap();
        let cracking = CheckValve::of(check).unwrap().cracking;
        let line = design.package.devices.iter_mut().find(|d| d.mark == "to line").unwrap();
        line.holds.push(Filling::Part(Arc::clone(check)));
        assert_eq!(outlet_check(&design.package), cracking);
    }
}
