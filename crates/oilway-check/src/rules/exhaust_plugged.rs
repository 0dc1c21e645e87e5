//! Exhaust air that cannot leave.

use oilway_catalogue::Role;
use oilway_catalogue::kinds::Plug;
use oilway_model::{Filling, Finding};
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::shield::{port_name, role};
use crate::{Facts, Rule};

rule! {
    ExhaustPlugged = "exhaust-plugged",
    title: "An exhaust of the air side is plugged",
    finds: "A plug in an exhaust port of the pump or its valve.",
    why: "The spent air stays behind the piston: the pump makes one stroke, or none.",
    source: "iso-11727", "3 exhausts 2, 5 exhausts 4", SecondHand,
    example: "Port 3 plugged on a three-port valve: take the plug out, screw a silencer in.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let plugged = |device: &&oilway_model::Device| {
        let plug = |f: &Filling| matches!(f, Filling::Part(part) if Plug::of(part).is_some());
        role(device) == Some(Role::Exhaust) && device.holds.iter().any(plug)
    };
    let report = |device: &oilway_model::Device| {
        let what = message!("check-exhaust-plugged", mark = device.mark.as_str());
        Draft::stop(rule, port_name(device), what, message!("check-exhaust-plugged-cure"))
            .cautions(&["S12"])
            .done()
    };
    facts.design.package.devices.iter().filter(plugged).map(report).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, device, plugs, refuses};

    #[test]
    fn spent_air_must_leave() {
        accepts("exhaust-plugged", |_| {});
        refuses("exhaust-plugged", |d| device(d, "exhaust").holds = plugs());
        refuses("exhaust-plugged", |d| device(d, "3").holds = plugs());
    }
}
