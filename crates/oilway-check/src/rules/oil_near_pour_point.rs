//! An oil near its pour point.

use oilway_model::{Finding, Season};
use oilway_text::message;
use oilway_units::TemperatureDifference;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

/// Above the pour point by less than this an oil thickens faster than its viscosity line says.
const REACH: TemperatureDifference = TemperatureDifference::from_kelvins(10.0);

rule! {
    OilNearPourPoint = "oil-near-pour-point",
    title: "The oil is near its pour point",
    finds: "A place in use whose coldest day lies less than 10 K above the pour point of the oil.",
    why: "There wax begins to set and the viscosity line, drawn from 40 and 100 °C, promises too little pressure.",
    source: "astm-d341", "reach of the viscosity line towards the pour point", Memory,
    example: "A mineral oil with a pour point of -12 °C at -5 °C: take a synthetic oil, or ask its maker for a measured viscosity at -5 °C.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let conditions = &facts.design.conditions;
    if conditions.lubricant.is_grease() {
        return Vec::new();
    }
    let Some(pour) = conditions.lubricant.oil().pour_point else { return Vec::new() };
    let judge = |place: usize| {
        let place = &conditions.places[place];
        let coldest = place.temperature(Season::Cold);
        if coldest >= pour.plus(REACH) {
            return None;
        }
        let at = format!("place.{}", place.name);
        let cure = message!("check-oil-near-pour-point-cure");
        let draft = if coldest < pour {
            Draft::stop(
                rule,
                at,
                message!("check-oil-below-pour-point", coldest = coldest, pour = pour),
                cure,
            )
        } else {
            Draft::caution(
                rule,
                at,
                message!("check-oil-near-pour-point", coldest = coldest, pour = pour),
                cure,
            )
        };
        Some(draft.number(message!("check-number-coldest"), coldest).done())
    };
    facts.places_in_use().into_iter().filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{oil_with_pour_point, severity};
    use oilway_model::Severity;

    #[test]
    fn ten_kelvins_above_is_far_enough_and_below_nothing_flows() {
        // The coldest place of the design lies at 4 °C.
        let at = |pour| severity("oil-near-pour-point", |d| oil_with_pour_point(d, pour));
        assert_eq!(at(-6.0), None);
        assert_eq!(at(-5.0), Some(Severity::Caution));
        assert_eq!(at(5.0), Some(Severity::Stop));
        assert_eq!(severity("oil-near-pour-point", |_| {}), None);
    }
}
