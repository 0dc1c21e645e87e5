//! A pump in a place too cold or too hot for it.

use oilway_model::{Finding, Season};
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    PumpTemperature = "pump-temperature",
    title: "The pump stands where it is too cold or too hot for it",
    finds: "A package in a place that gets colder or hotter than the pump's data allow.",
    why: "Seals go hard and leak, air motors ice up, motors burn.",
    source: "iso-4413", "every part inside its limits of pressure and temperature", SecondHand,
    example: "A pump for -10 °C in a yard at -25: another pump, or a heated cabinet.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let Some(pump) = &facts.views.pump else { return Vec::new() };
    let Some(place) = facts.design.conditions.places.get(facts.design.package.place) else {
        return Vec::new();
    };
    let (cold, hot) = (place.temperature(Season::Cold), place.temperature(Season::Hot));
    let what = if cold < pump.coldest {
        message!("check-pump-too-cold", there = cold, limit = pump.coldest)
    } else if hot > pump.hottest {
        message!("check-pump-too-hot", there = hot, limit = pump.hottest)
    } else {
        return Vec::new();
    };
    Draft::stop(rule, "package.pump", what, message!("check-pump-temperature-cure"))
        .number(message!("check-number-coldest"), cold)
        .number(message!("check-number-hottest"), hot)
        .cautions(&["S03"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};
    use oilway_units::{Entry, Temperature};

    #[test]
    fn both_ends_of_its_temperatures_are_kept() {
        let cold = |d: &mut oilway_model::Design, celsius: f64| {
            let place = d.package.place;
            d.conditions.places[place].coldest = Entry::known(Temperature::from_celsius(celsius));
        };
        accepts("pump-temperature", |d| cold(d, -10.0));
        refuses("pump-temperature", |d| cold(d, -11.0));
        refuses("pump-temperature", |d| {
            let place = d.package.place;
            d.conditions.places[place].hottest = Entry::known(Temperature::from_celsius(61.0));
        });
    }
}
