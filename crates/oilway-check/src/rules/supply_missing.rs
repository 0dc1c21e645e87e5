//! A drive without what drives it.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    SupplyMissing = "supply-missing",
    title: "What drives the pump is not there",
    finds: "An air-driven pump in a job without compressed air, or an electric one in a job without electricity.",
    why: "The package arrives and cannot be started.",
    source: "own-derivation", "drive against the supplies of the job", Own,
    example: "An air-driven pump for a quarry without a compressor: an electric pump, or a compressor with a dryer.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let conditions = &facts.design.conditions;
    let Some(pump) = &facts.views.pump else { return Vec::new() };
    let what = match pump.drive.is_air() {
        true if conditions.air.is_none() => message!("check-air-missing"),
        false if conditions.electric.is_none() => message!("check-electricity-missing"),
        _ => return Vec::new(),
    };
    Draft::stop(rule, "package.pump", what, message!("check-supply-missing-cure")).alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses, swap};

    #[test]
    fn air_for_the_air_pump_and_current_for_the_electric_one() {
        accepts("supply-missing", |_| {});
        refuses("supply-missing", |d| d.conditions.air = None);
        refuses("supply-missing", |d| {
            swap(&mut d.package.pump, "10036");
            d.conditions.electric = None;
        });
    }
}
