//! An air valve that slows the pump down.

use oilway_model::{Finding, Season};
use oilway_text::message;
use oilway_units::Ratio;

use crate::draft::Draft;
use crate::rule::rule;
use crate::source::Source;
use crate::{Facts, Rule};

/// A pump that keeps this share of its flow is not throttled.
const KEPT: f64 = 0.8;
/// The load at which it is judged, as a share of the stall.
const LOAD: f64 = 0.5;

rule! {
    ValveThrottles = "valve-throttles",
    title: "The air valve throttles the pump",
    finds: "An air valve behind which the pump, at half its stall pressure, gives less than 80 % of what its own passages would let it.",
    why: "The pump seems too small, and somebody opens the regulator.",
    source: "iso-6358", "conductances in series, flow of a loaded stroke", SecondHand,
    example: "A motor of 6.3 dm³/(s bar) behind a valve of 2.5: the stroke takes two and a half times as long. Take a valve of at least the motor's conductance.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let (Some(pump), Some(valve)) = (&facts.views.pump, &facts.views.valve) else { return Vec::new() };
    let cold = facts.season(Season::Cold);
    let Some(source) = &cold.source else { return Vec::new() };
    let free = Source::behind(facts.design, pump, None, cold.inlet.as_ref());
    let load = source.stall * LOAD;
    let (with, without) = (source.flow(load), free.flow(load));
    if with >= without * KEPT {
        return Vec::new();
    }
    let kept = Ratio::from_fraction(with / without);
    let what = message!(
        "check-valve-throttles",
        kept = kept,
        valve = valve.conductance,
        motor = pump.air_conductance.unwrap_or(valve.conductance)
    );
    Draft::caution(rule, "package.valve", what, message!("check-valve-throttles-cure"))
        .number(message!("check-number-conductance"), valve.conductance)
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, altered, refuses};
    use oilway_catalogue::Value;
    use oilway_units::Conductance;

    #[test]
    fn a_valve_of_a_tenth_of_the_motor_throttles_it() {
        accepts("valve-throttles", |_| {});
        refuses("valve-throttles", |d| {
            let valve = d.package.valve.as_mut().unwrap();
            let small = Conductance::from_litres_per_second_bar(0.05);
            *valve = altered(valve, "conductance", Value::Quantity(small.into()));
        });
    }
}
