//! A check valve the wrong way round.

use oilway_catalogue::Role;
use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::shield::{port_name, role};
use crate::{Facts, Rule};

rule! {
    OneWayPartReversed = "one-way-part-reversed",
    title: "A one-way part points the wrong way",
    finds: "A check valve that lets nothing out of a port from which lubricant or air must go, or nothing into a port through which it must come.",
    why: "The pump stands against it at its stall from the first stroke.",
    source: "own-derivation", "direction of the port against that of the part", Own,
    example: "The check valve of the main with its arrow towards the pump: turn it round before the first start.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let judge = |device: &oilway_model::Device| {
        let wanted = match role(device)? {
            Role::Outlet | Role::Relief | Role::Vent | Role::Exhaust | Role::AirOut | Role::Drain => true,
            Role::Inlet | Role::Fill | Role::Return | Role::AirIn => false,
            Role::Gauge | Role::Sensor | Role::Breather | Role::Level | Role::Joint => return None,
        };
        if device.flows_out? == wanted {
            return None;
        }
        let what = message!("check-one-way-part-reversed", mark = device.mark.as_str());
        Some(Draft::stop(rule, port_name(device), what, message!("check-one-way-part-reversed-cure")).done())
    };
    facts.design.package.devices.iter().filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, device, refuses};

    #[test]
    fn out_of_the_outlet_and_into_the_filling_port() {
        accepts("one-way-part-reversed", |d| {
            device(d, "to line").flows_out = Some(true);
            device(d, "fill").flows_out = Some(false);
        });
        refuses("one-way-part-reversed", |d| device(d, "to line").flows_out = Some(false));
        refuses("one-way-part-reversed", |d| device(d, "fill").flows_out = Some(true));
    }
}
