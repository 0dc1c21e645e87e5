//! A port under pressure with nothing in it.

use oilway_catalogue::Internal;
use oilway_model::{Device, Filling, Finding};
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::shield::port_name;
use crate::{Facts, Rule};

rule! {
    PressurePortOpen = "pressure-port-open",
    title: "A port under pressure is open",
    finds: "A port joined to the pressure side of the pump in which nothing is planned, or which is left open on purpose.",
    why: "At the first stroke a jet of lubricant comes out of it, at head height as a rule.",
    source: "iso-4413", "loss of pressure no hazard; every port closed", SecondHand,
    example: "The second line port of a block with its transport plug taken out: screw in a plug rated for the block.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let report = |at: String, mark: &str| {
        let what = message!("check-pressure-port-open", mark = mark);
        Draft::stop(rule, at, what, message!("check-pressure-port-open-cure"))
            .cautions(&["S30", "S31"])
            .done()
    };
    let devices = &facts.design.package.devices;
    let open = |device: &&Device| {
        device.sees_pressure() && !device.holds.iter().any(|f| matches!(f, Filling::Part(_)))
    };
    let mut found: Vec<Finding> =
        devices.iter().filter(open).map(|d| report(port_name(d), &d.mark)).collect();
    for host in super::hosts(facts.design) {
        let forgotten = host.ports.iter().filter(|port| port.internal == Internal::Pressure);
        let forgotten =
            forgotten.filter(|port| !devices.iter().any(|d| d.of.id == host.id && d.mark == port.mark));
        found.extend(forgotten.map(|port| report(format!("port.{}.{}", host.id, port.mark), &port.mark)));
    }
    found
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, device, refuses};
    use oilway_model::Filling;
    use oilway_text::Message;

    #[test]
    fn every_port_under_pressure_holds_something() {
        accepts("pressure-port-open", |_| {});
        refuses("pressure-port-open", |d| device(d, "second line").holds = vec![Filling::Nothing]);
        refuses("pressure-port-open", |d| device(d, "second line").holds.clear());
        refuses("pressure-port-open", |d| {
            device(d, "gauge").holds = vec![Filling::OpenByIntent(Message::new("check-pressure-port-open"))];
        });
        refuses("pressure-port-open", |d| d.package.devices.retain(|device| device.mark != "sensor"));
    }
}
