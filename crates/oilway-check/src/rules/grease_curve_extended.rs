//! A grease used far outside the temperatures at which its flow was measured.

use oilway_model::{Finding, FlowCurve, Season, Substance};
use oilway_text::message;
use oilway_units::{Temperature, TemperatureDifference};

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

/// Measured rows are trusted this far beyond their ends.
const REACH: TemperatureDifference = TemperatureDifference::from_kelvins(10.0);

rule! {
    GreaseCurveExtended = "grease-curve-extended",
    title: "The flow curve of the grease is stretched beyond its measurements",
    finds: "A place in use more than 10 K colder than the coldest, or hotter than the hottest, temperature at which the flow of the grease was measured.",
    why: "Below the last measured temperature a grease may stiffen faster than the curve: the start-up pressure is then a guess.",
    source: "own-derivation", "reach of an exponential through two rows; judged", Own,
    example: "Measured at 20 and 60 °C, used at -5 °C: ask for a measurement at -5 °C, or take the answer as cannot tell.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let conditions = &facts.design.conditions;
    let Substance::Grease(grease) = &conditions.lubricant.substance else { return Vec::new() };
    let FlowCurve::Rows(rows) = &grease.curve else { return Vec::new() };
    let (Some(first), Some(last)) = (rows.first(), rows.last()) else { return Vec::new() };
    let judge = |place: usize| {
        let place = &conditions.places[place];
        let (cold, hot) = (place.temperature(Season::Cold), place.temperature(Season::Hot));
        let used: Temperature = if cold < first.temperature.plus(-REACH) {
            cold
        } else if hot > last.temperature.plus(REACH) {
            hot
        } else {
            return None;
        };
        let what = message!(
            "check-grease-curve-extended",
            used = used,
            measured = (first.temperature, last.temperature)
        );
        let at = format!("place.{}", place.name);
        let draft = Draft::caution(rule, at, what, message!("check-grease-curve-extended-cure"));
        Some(draft.number(message!("check-number-temperature"), used).done())
    };
    facts.places_in_use().into_iter().filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};
    use oilway_units::{Entry, Temperature};

    #[test]
    fn ten_kelvins_beyond_the_rows_are_trusted_and_eleven_are_not() {
        // The rows of the grease begin at 4 °C.
        let cold = |d: &mut oilway_model::Design, celsius: f64| {
            let place = d.points[0].place;
            d.conditions.places[place].coldest = Entry::known(Temperature::from_celsius(celsius));
        };
        accepts("grease-curve-extended", |d| cold(d, -6.0));
        refuses("grease-curve-extended", |d| cold(d, -7.0));
    }
}
