//! A place hotter than the lubricant's supplier allows.

use oilway_model::{Finding, Season};
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    LubricantAboveItsLimit = "lubricant-above-its-limit",
    title: "A place is hotter than the lubricant allows",
    finds: "A place in use whose hottest day lies above the hottest use that the lubricant's supplier states.",
    why: "Grease runs out or bakes to a crust that no fresh grease pushes away; oil burns to lacquer.",
    source: "common-practice", "the supplier's data sheet decides", CommonPractice,
    example: "A grease for 120 °C at a dryer of 150 °C: another grease, or the point out of the heat.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let conditions = &facts.design.conditions;
    let Some(limit) = conditions.lubricant.hottest else { return Vec::new() };
    let judge = |place: usize| {
        let place = &conditions.places[place];
        let hottest = place.temperature(Season::Hot);
        let what = message!("check-lubricant-above-its-limit", hottest = hottest, limit = limit);
        let draft = Draft::stop(
            rule,
            format!("place.{}", place.name),
            what,
            message!("check-lubricant-above-its-limit-cure"),
        );
        (hottest > limit).then(|| {
            draft
                .number(message!("check-number-hottest"), hottest)
                .number(message!("check-number-limit"), limit)
                .cautions(&["S11"])
                .done()
        })
    };
    facts.places_in_use().into_iter().filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};
    use oilway_model::Season;
    use oilway_units::Temperature;

    #[test]
    fn the_hottest_place_may_reach_the_limit_and_not_pass_it() {
        let limit = |d: &mut oilway_model::Design, above: f64| {
            let hottest =
                d.conditions.places.iter().map(|p| p.temperature(Season::Hot).celsius()).fold(-1e3, f64::max);
            d.conditions.lubricant.hottest = Some(Temperature::from_celsius(hottest + above));
        };
        accepts("lubricant-above-its-limit", |d| limit(d, 0.0));
        refuses("lubricant-above-its-limit", |d| limit(d, -1.0));
    }
}
