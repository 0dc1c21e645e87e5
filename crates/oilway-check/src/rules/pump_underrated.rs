//! A pump that can push higher than it stands itself.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    PumpUnderrated = "pump-underrated",
    title: "The pump can push higher than it stands",
    finds: "A working stall, or the highest pressure that disc or stall allow, above the rated pressure of the pump's own lubricant side.",
    why: "Its packing blows out or its cylinder cracks, next to the hands that set it.",
    source: "iso-4413", "every part inside its limits", SecondHand,
    example: "An electric pump rated 250 bar whose motor gives way at 315: a disc that bursts below 250 at its strongest.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let Some(pump) = &facts.views.pump else { return Vec::new() };
    let highest = facts.shield.highest().max(facts.shield.working);
    if highest <= pump.rated * (1.0 + 1e-9) {
        return Vec::new();
    }
    let what = message!("check-pump-underrated", highest = highest, rated = pump.rated);
    Draft::stop(rule, "package.pump", what, message!("check-pump-underrated-cure"))
        .turns(message!("check-turns-highest-below", highest = pump.rated))
        .number(message!("check-number-highest"), highest)
        .number(message!("check-number-rating"), pump.rated)
        .cautions(&["S03"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, altered, refuses};
    use oilway_catalogue::Value;
    use oilway_units::Pressure;

    #[test]
    fn the_pump_must_stand_the_highest_burst() {
        let rate = |d: &mut oilway_model::Design, bar: f64| {
            let rated = Value::Quantity(Pressure::from_bar(bar).into());
            d.package.pump = altered(&d.package.pump, "rated", rated);
        };
        accepts("pump-underrated", |d| rate(d, 200.0));
        refuses("pump-underrated", |d| rate(d, 120.0));
    }
}
