//! A pump whose idle side cannot breathe.

use oilway_catalogue::Role;
use oilway_catalogue::kinds::Plug;
use oilway_model::{Filling, Finding};
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::shield::{port_name, role};
use crate::{Facts, Rule};

rule! {
    IdleSidePlugged = "idle-side-plugged",
    title: "The idle side of the air motor is plugged",
    finds: "A plug, or nothing decided, in the breather port of a pump whose chamber behind the piston must stay open to the air.",
    why: "The air behind the piston is pressed together into a spring: the pump stalls short, and each stroke gives less.",
    source: "own-derivation", "trapped air behind the piston, isothermal", Own,
    example: "63 mm piston, 50 mm stroke, 20 cm³ behind it: 3.5 bar absolute at 40 mm, 8.9 at the end. A sintered breather, kept clean.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let package = &facts.design.package;
    if !facts.views.pump.as_ref().is_some_and(|pump| pump.idle_side_breathes) {
        return Vec::new();
    }
    let plugged = |device: &&oilway_model::Device| {
        let shut = |f: &Filling| match f {
            Filling::Part(part) => Plug::of(part).is_some(),
            Filling::Nothing => false,
            Filling::OpenByIntent(_) => false,
        };
        device.of.id == package.pump.id
            && role(device) == Some(Role::Breather)
            && device.holds.iter().any(shut)
    };
    let report = |device: &oilway_model::Device| {
        let what = message!("check-idle-side-plugged", mark = device.mark.as_str());
        Draft::stop(rule, port_name(device), what, message!("check-idle-side-plugged-cure")).done()
    };
    package.devices.iter().filter(plugged).map(report).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, device, plugs, refuses, spring_return};

    #[test]
    fn the_chamber_behind_the_piston_must_breathe() {
        accepts("idle-side-plugged", spring_return);
        refuses("idle-side-plugged", |d| {
            spring_return(d);
            device(d, "idle side").holds = plugs();
        });
    }
}
