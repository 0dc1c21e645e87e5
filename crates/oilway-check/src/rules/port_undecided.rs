//! A port about which nobody has decided.

use oilway_catalogue::Internal;
use oilway_model::{Device, Filling, Finding};
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::shield::port_name;
use crate::{Facts, Rule};

rule! {
    PortUndecided = "port-undecided",
    title: "Nobody has decided what goes into a port",
    finds: "A port of the package, away from the pump's pressure, for which the design holds nothing.",
    why: "The fitter decides at the bench, and the next one decides otherwise. Dirt goes in meanwhile.",
    source: "common-practice", "one statement for each port", CommonPractice,
    example: "The return port of a reservoir without an entry: plug it, or say that it stays open and why.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let report = |at: String, mark: &str| {
        let what = message!("check-port-undecided", mark = mark);
        Draft::caution(rule, at, what, message!("check-port-undecided-cure")).done()
    };
    let devices = &facts.design.package.devices;
    let open = |device: &&Device| {
        !device.sees_pressure() && !device.holds.iter().any(|f| !matches!(f, Filling::Nothing))
    };
    let mut found: Vec<Finding> =
        devices.iter().filter(open).map(|d| report(port_name(d), &d.mark)).collect();
    for host in super::hosts(facts.design) {
        let forgotten = host.ports.iter().filter(|port| port.internal != Internal::Pressure);
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

    #[test]
    fn every_port_has_its_statement() {
        accepts("port-undecided", |_| {});
        refuses("port-undecided", |d| device(d, "fill").holds = vec![Filling::Nothing]);
        refuses("port-undecided", |d| d.package.devices.retain(|device| device.mark != "fill"));
    }
}
