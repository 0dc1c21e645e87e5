//! Too little left when the low level is told, or nobody told.

use oilway_catalogue::kinds::LevelSwitch;
use oilway_model::{Filling, Finding};
use oilway_text::message;
use oilway_units::Time;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

/// A weekend with the night before and after it.
const WEEKEND: Time = Time::from_hours(64.0);

rule! {
    ReserveTooShort = "reserve-too-short",
    title: "The low level comes too late, or is not told",
    finds: "Less than a weekend, 64 h on the calendar, between the low-level signal and empty; or a reservoir without a low-level switch.",
    why: "The pump runs dry, draws air into all lines, and the first thing that anybody sees is a bearing.",
    source: "common-practice", "reserve until somebody comes", CommonPractice,
    example: "0.25 L at 20 cm³/h running round the clock: 12 h. A larger reserve, or somebody on Sundays.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let at = "package.reservoir";
    let Some(vessel) = &facts.views.reservoir else { return Vec::new() };
    let fillings = facts.design.package.devices.iter().flat_map(|device| &device.holds);
    let mut switches = fillings.filter_map(|filling| match filling {
        Filling::Part(part) => LevelSwitch::of(part),
        Filling::OpenByIntent(_) | Filling::Nothing => None,
    });
    if !vessel.low_switch && !switches.any(|switch| switch.low) {
        let what = message!("check-level-not-told");
        return Draft::caution(rule, at, what, message!("check-level-not-told-cure")).alone();
    }
    let Some(reserve) = facts.reserve().filter(|reserve| *reserve < WEEKEND) else { return Vec::new() };
    let what = message!("check-reserve-too-short", reserve = reserve, wanted = WEEKEND);
    Draft::caution(rule, at, what, message!("check-reserve-too-short-cure"))
        .number(message!("check-number-reserve"), reserve)
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses, swap};

    #[test]
    fn a_weekend_must_be_bridged_and_somebody_told() {
        accepts("reserve-too-short", |_| {});
        refuses("reserve-too-short", |d| d.control.pause = d.control.pause * 0.01);
        refuses("reserve-too-short", |d| swap(&mut d.package.reservoir, "10043"));
    }
}
