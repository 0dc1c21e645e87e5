//! A port that must lead somewhere and does not.

use std::sync::Arc;

use oilway_catalogue::kinds::{Drive, Plug};
use oilway_catalogue::{Internal, Part, Port, Role};
use oilway_model::{Design, Device, Filling, Finding, Mounting};
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    PortLeadsNowhere = "port-leads-nowhere",
    title: "A port that must lead somewhere is plugged or empty",
    finds: "A plug, or nothing, in the inlet of the block, in all its outlets, between pump, block and reservoir, or on the way of the air through regulator and valve to the motor; a pump away from its reservoir without an inlet line. A gauge that sits in no gauge port, and a filling port that is plugged, are cautions.",
    why: "Nothing moves through a plug: the pump runs dry, stands still, or pushes against a wall.",
    source: "own-derivation", "lubricant and air followed from port to port", Own,
    example: "A block with plugs in both line ports: take one out and screw in the fitting of the main.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let design = facts.design;
    let mut shut = shut_lubricant(design);
    if facts.views.pump.as_ref().is_some_and(|pump| pump.drive != Drive::Electric) {
        shut.extend(shut_air(design));
    }
    let stop = |(host, port): (&Arc<Part>, &Port)| {
        let what = message!("check-port-leads-nowhere", mark = port.mark.as_str());
        Draft::stop(rule, name(host, port), what, message!("check-port-leads-nowhere-cure")).done()
    };
    let mut found: Vec<Finding> = shut.into_iter().map(stop).collect();
    if matches!(&design.package.mounting, Mounting::Remote(legs) if legs.is_empty()) {
        let what = message!("check-inlet-line-missing");
        found
            .push(Draft::stop(rule, "package.inlet", what, message!("check-inlet-line-missing-cure")).done());
    }
    found.extend(cautions(rule, design));
    found
}

fn name(host: &Part, port: &Port) -> String {
    format!("port.{}.{}", host.id, port.mark)
}

/// What the design has in a port; none if it does not name the port.
fn device<'a>(design: &'a Design, host: &Part, port: &Port) -> Option<&'a Device> {
    design.package.devices.iter().find(|d| d.of.id == host.id && d.mark == port.mark)
}

fn is_plugged(device: &Device) -> bool {
    device.holds.iter().any(|f| matches!(f, Filling::Part(part) if Plug::of(part).is_some()))
}

/// Whether something goes on from a port: a part that is no plug.
fn leads(design: &Design, host: &Part, port: &Port) -> bool {
    device(design, host, port)
        .is_some_and(|d| !is_plugged(d) && d.holds.iter().any(|f| matches!(f, Filling::Part(_))))
}

type Place<'a> = (&'a Arc<Part>, &'a Port);

/// The ports of the lubricant's way that lead nowhere. Of several outlets of the block one is enough.
fn shut_lubricant(design: &Design) -> Vec<Place<'_>> {
    let package = &design.package;
    let (block, pump, reservoir) = (&package.block, &package.pump, &package.reservoir);
    let on_way = |internal| matches!(internal, Internal::Pressure | Internal::Suction);
    let of_block = block.ports.iter().filter(|p| matches!(p.role, Role::Inlet | Role::Joint));
    let of_pump = pump
        .ports
        .iter()
        .filter(|p| matches!(p.role, Role::Inlet | Role::Outlet | Role::Joint) && on_way(p.internal));
    let of_reservoir = reservoir.ports.iter().filter(|p| p.role == Role::Outlet);
    let all = of_block.map(|p| (block, p)).chain(of_pump.map(|p| (pump, p)));
    let all = all.chain(of_reservoir.map(|p| (reservoir, p)));
    let mut shut: Vec<Place<'_>> = all.filter(|(host, port)| !leads(design, host, port)).collect();
    let outlets: Vec<&Port> =
        block.ports.iter().filter(|p| p.role == Role::Outlet && p.internal == Internal::Pressure).collect();
    if let Some(first) = outlets.first()
        && !outlets.iter().any(|port| leads(design, block, port))
    {
        shut.push((block, first));
    }
    shut
}

/// Marks of pilot ports, ISO 11727: a signal comes in there and no air for the motor.
const PILOTS: [&str; 3] = ["10", "12", "14"];

/// The ports of the air's way that lead nowhere. Of the outlets of the valve as many are needed as the motor has inlets; the supply
/// of the plant is no part of the design, so that an inlet of regulator or valve may be left open on purpose.
fn shut_air(design: &Design) -> Vec<Place<'_>> {
    let package = &design.package;
    let pump = &package.pump;
    let of = |part: &'_ Part, role: Role| {
        let wanted = move |p: &&Port| p.role == role && !PILOTS.contains(&p.mark.as_str());
        part.ports.iter().filter(wanted).map(|p| p.mark.clone()).collect::<Vec<_>>()
    };
    let motor = of(pump, Role::AirIn);
    let mut shut = Vec::new();
    let before = [package.regulator.as_ref(), package.valve.as_ref()];
    for host in before.into_iter().flatten() {
        let inlets = host.ports.iter().filter(|p| of(host, Role::AirIn).contains(&p.mark));
        shut.extend(inlets.filter(|p| !takes_supply(design, host, p)).map(|p| (host, p)));
        let outlets: Vec<&Port> = host.ports.iter().filter(|p| p.role == Role::AirOut).collect();
        let is_valve = package.valve.as_ref().is_some_and(|valve| valve.id == host.id);
        let needed = if is_valve { motor.len().min(outlets.len()) } else { outlets.len().min(1) };
        let (open, closed): (Vec<&Port>, Vec<&Port>) =
            outlets.into_iter().partition(|port| leads(design, host, port));
        shut.extend(closed.into_iter().take(needed.saturating_sub(open.len())).map(|p| (host, p)));
    }
    let at_motor = pump.ports.iter().filter(|p| motor.contains(&p.mark));
    shut.extend(at_motor.filter(|p| !leads(design, pump, p)).map(|p| (pump, p)));
    shut
}

fn takes_supply(design: &Design, host: &Part, port: &Port) -> bool {
    let open = |d: &Device| d.holds.iter().any(|f| matches!(f, Filling::OpenByIntent(_))) && !is_plugged(d);
    leads(design, host, port) || device(design, host, port).is_some_and(open)
}

fn cautions(rule: &dyn Rule, design: &Design) -> Vec<Finding> {
    let package = &design.package;
    let plugged = |host: &Part, port: &Port| device(design, host, port).is_some_and(is_plugged);
    let of = |role: Role| {
        super::hosts(design)
            .flat_map(move |h| h.ports.iter().filter(move |p| p.role == role).map(move |p| (h, p)))
    };
    let fill = of(Role::Fill).filter(|(host, port)| plugged(host, port)).map(|(host, port)| {
        let what = message!("check-fill-port-plugged", mark = port.mark.as_str());
        Draft::caution(rule, name(host, port), what, message!("check-fill-port-plugged-cure")).done()
    });
    let mut found: Vec<Finding> = fill.collect();
    let seen = of(Role::Gauge).any(|(host, port)| leads(design, host, port));
    let first = of(Role::Gauge).find(|(host, port)| plugged(host, port));
    if let Some((host, port)) = first.filter(|_| package.gauge.is_some() && !seen) {
        let what = message!("check-gauge-port-plugged", mark = port.mark.as_str());
        found.push(
            Draft::caution(rule, name(host, port), what, message!("check-gauge-port-plugged-cure")).done(),
        );
    }
    found
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, device, plugs, refuses, severity, spring_return, swap};
    use oilway_model::{Filling, Mounting, Severity};

    const RULE: &str = "port-leads-nowhere";

    #[test]
    fn one_outlet_of_the_block_is_enough_and_none_is_too_few() {
        accepts(RULE, |_| {});
        refuses(RULE, |d| device(d, "to line").holds = plugs());
        refuses(RULE, |d| device(d, "to line").holds = vec![Filling::Nothing]);
        accepts(RULE, |d| {
            let line = device(d, "to line").holds.clone();
            device(d, "second line").holds = line;
            device(d, "to line").holds = plugs();
        });
    }

    #[test]
    fn a_plug_or_nothing_on_the_way_to_the_pump_is_refused() {
        for mark in ["from reservoir", "pump", "to block"] {
            assert_eq!(severity(RULE, |d| device(d, mark).holds = plugs()), Some(Severity::Stop), "{mark}");
            let empty = severity(RULE, |d| d.package.devices.retain(|device| device.mark != mark));
            assert_eq!(empty, Some(Severity::Stop), "{mark}");
        }
    }

    #[test]
    fn every_air_port_between_supply_and_motor_must_lead_on() {
        use oilway_catalogue::Role;
        for role in [Role::AirIn, Role::AirOut] {
            let design = crate::testing::sound();
            let is = |d: &oilway_model::Device| d.of.ports.iter().any(|p| p.mark == d.mark && p.role == role);
            let places = design.package.devices.iter().enumerate().filter(|(_, d)| is(d));
            let places: Vec<usize> = places.map(|(number, _)| number).collect();
            assert!(places.len() >= 2);
            for place in places {
                let stop = severity(RULE, |d| d.package.devices[place].holds = plugs());
                assert_eq!(stop, Some(Severity::Stop));
            }
        }
        accepts(RULE, spring_return);
    }

    #[test]
    fn of_two_outlets_a_motor_with_one_inlet_needs_one() {
        let five_ports = |d: &mut oilway_model::Design| {
            swap(d.package.valve.as_mut().unwrap(), "10290");
            crate::testing::plan(d);
        };
        let valve = |d: &mut oilway_model::Design, mark: &str| {
            let found = d.package.devices.iter_mut().find(|x| x.of.id == "10290" && x.mark == mark);
            found.unwrap().holds = plugs();
        };
        accepts(RULE, |d| {
            five_ports(d);
            valve(d, "2");
        });
        refuses(RULE, |d| {
            five_ports(d);
            valve(d, "2");
            valve(d, "4");
        });
    }

    #[test]
    fn a_gauge_without_its_port_and_a_plugged_filling_port_want_care() {
        assert_eq!(severity(RULE, |d| device(d, "fill").holds = plugs()), Some(Severity::Caution));
        assert_eq!(severity(RULE, |d| device(d, "gauge").holds = plugs()), Some(Severity::Caution));
        let without = severity(RULE, |d| {
            d.package.gauge = None;
            device(d, "gauge").holds = plugs();
        });
        assert_eq!(without, None);
    }

    #[test]
    fn a_pump_away_from_its_reservoir_wants_an_inlet_line() {
        accepts(RULE, |d| crate::testing::remote(d, 1.0));
        refuses(RULE, |d| d.package.mounting = Mounting::Remote(Vec::new()));
    }
}
