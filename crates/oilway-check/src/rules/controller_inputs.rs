//! Signals that nobody reads.

use oilway_catalogue::kinds::{Discharge, LevelSwitch, PressureSwitch};
use oilway_model::{Filling, Finding};
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    ControllerInputs = "controller-inputs",
    title: "There are more signals than inputs to read them",
    finds: "More cycle switches, level switches, pressure switches and disc switches than the controller, or the machine's own where none comes with the package, has inputs for; or nobody at all who counts.",
    why: "A switch that is wired to nothing gives no alarm, and nobody misses it before it is needed.",
    source: "own-derivation", "signals of the design against the inputs", Own,
    example: "A cycle switch, a level switch and a disc switch on a controller of two inputs: take the one of four.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let needed = signals(facts);
    let electric = facts.design.conditions.electric.as_ref();
    let inputs = match (&facts.views.controller, electric) {
        (Some(controller), _) => Some(controller.inputs.number()),
        (None, Some(electric)) => electric.inputs.map(f64::from),
        (None, None) => Some(0.0),
    };
    let Some(inputs) = inputs else {
        let what = message!("check-controller-inputs-unknown", needed = needed);
        return Draft::note(rule, "package.controller", what, message!("check-controller-inputs-cure"))
            .alone();
    };
    if needed as f64 <= inputs {
        return Vec::new();
    }
    let what = message!("check-controller-inputs", needed = needed, inputs = inputs as i64);
    Draft::caution(rule, "package.controller", what, message!("check-controller-inputs-cure")).alone()
}

/// Signals that somebody must read.
fn signals(facts: &Facts<'_>) -> usize {
    let design = facts.design;
    let parts = design.package.devices.iter().flat_map(|device| &device.holds);
    let switches = parts.filter(|filling| match filling {
        Filling::Part(part) => LevelSwitch::of(part).is_some() || PressureSwitch::of(part).is_some(),
        Filling::OpenByIntent(_) | Filling::Nothing => false,
    });
    let cycles = design.dividers.iter().filter(|divider| divider.cycle_switch).count();
    let level = facts.views.reservoir.as_ref().is_some_and(|vessel| vessel.low_switch);
    let disc = facts.views.holder.as_ref().is_some_and(|holder| holder.discharge == Discharge::Switch);
    cycles + switches.count() + usize::from(level) + usize::from(disc)
}

#[cfg(test)]
mod tests {
    use crate::testing::severity;
    use oilway_model::Severity;

    #[test]
    fn each_signal_has_its_input() {
        // A cycle switch and a level switch.
        let at = |inputs: Option<u32>| {
            severity("controller-inputs", |d| {
                d.package.controller = None;
                d.dividers[0].cycle_switch = true;
                d.dividers[1].cycle_switch = false;
                d.conditions.electric.as_mut().unwrap().inputs = inputs;
            })
        };
        assert_eq!(at(Some(2)), None);
        assert_eq!(at(Some(1)), Some(Severity::Caution));
        assert_eq!(at(None), Some(Severity::Note));
    }
}
