//! A reservoir that cannot breathe.

use oilway_catalogue::Role;
use oilway_catalogue::kinds::Plug;
use oilway_model::{Filling, Finding};
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::shield::{port_name, role};
use crate::{Facts, Rule};

rule! {
    BreatherPlugged = "breather-plugged",
    title: "The breather of the reservoir is plugged",
    finds: "A plug in the breather port of the reservoir.",
    why: "The pump draws a vacuum and starves; and when the reservoir is filled, a fill pump that makes hundreds of bar lifts the lid: 1 bar on 300 mm is 7 kN.",
    source: "own-derivation", "atmosphere feeds the pump; force on a lid", Own,
    example: "The transport plug left in the breather port: take it out and screw in the breather.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let package = &facts.design.package;
    let plugged = |device: &&oilway_model::Device| {
        let plug = |f: &Filling| matches!(f, Filling::Part(part) if Plug::of(part).is_some());
        device.of.id == package.reservoir.id
            && role(device) == Some(Role::Breather)
            && device.holds.iter().any(plug)
    };
    let report = |device: &oilway_model::Device| {
        let what = message!("check-breather-plugged");
        Draft::stop(rule, port_name(device), what, message!("check-breather-plugged-cure"))
            .cautions(&["S95"])
            .done()
    };
    package.devices.iter().filter(plugged).map(report).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, device, plugs, refuses};

    #[test]
    fn a_reservoir_must_breathe() {
        accepts("breather-plugged", |_| {});
        refuses("breather-plugged", |d| device(d, "breather").holds = plugs());
    }
}
