//! A main that cannot be let down.

use oilway_catalogue::Role;
use oilway_catalogue::kinds::Plug;
use oilway_model::{Filling, Finding};
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::shield::{port_name, role};
use crate::{Facts, Rule};

rule! {
    VentPlugged = "vent-plugged",
    title: "The port for letting the main down is plugged",
    finds: "A plug in a port that is meant for venting the lubricant side.",
    why: "Before any work the pressure must come down at a chosen place; without a valve somebody cracks a fitting.",
    source: "iso-14118", "means to dissipate stored energy", SecondHand,
    example: "A block with a vent port and a plug in it: fit a lockable shut-off valve there, led to a catch vessel.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let plugged = |device: &&oilway_model::Device| {
        let plug = |f: &Filling| matches!(f, Filling::Part(part) if Plug::of(part).is_some());
        role(device) == Some(Role::Vent) && device.holds.iter().any(plug)
    };
    let report = |device: &oilway_model::Device| {
        let what = message!("check-vent-plugged", mark = device.mark.as_str());
        let draft = Draft::caution(rule, port_name(device), what, message!("check-vent-plugged-cure"));
        draft.cautions(&["S06", "S20"]).done()
    };
    facts.design.package.devices.iter().filter(plugged).map(report).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, device, plugs, refuses, vented_block};

    #[test]
    fn a_vent_wants_a_valve_and_not_a_plug() {
        accepts("vent-plugged", vented_block);
        refuses("vent-plugged", |d| {
            vented_block(d);
            device(d, "vent").holds = plugs();
        });
    }
}
