//! A place colder than the lubricant's supplier allows.

use oilway_model::{Finding, Season};
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    LubricantBelowItsLimit = "lubricant-below-its-limit",
    title: "A place is colder than the lubricant allows",
    finds: "A place in use whose coldest day lies below the coldest use that the lubricant's supplier states.",
    why: "The pressures are still worked out, but nobody answers for what the lubricant does there.",
    source: "common-practice", "the supplier's data sheet decides", CommonPractice,
    example: "A grease for -20 °C in a yard at -25 °C: a winter grade, or heat on the line.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let conditions = &facts.design.conditions;
    let Some(limit) = conditions.lubricant.coldest else { return Vec::new() };
    let judge = |place: usize| {
        let place = &conditions.places[place];
        let coldest = place.temperature(Season::Cold);
        let what = message!("check-lubricant-below-its-limit", coldest = coldest, limit = limit);
        let draft = Draft::caution(
            rule,
            format!("place.{}", place.name),
            what,
            message!("check-lubricant-below-its-limit-cure"),
        );
        (coldest < limit).then(|| {
            draft
                .number(message!("check-number-coldest"), coldest)
                .number(message!("check-number-limit"), limit)
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
    fn the_coldest_place_may_reach_the_limit_and_not_pass_it() {
        let limit = |d: &mut oilway_model::Design, above: f64| {
            let coldest =
                d.conditions.places.iter().map(|p| p.temperature(Season::Cold).celsius()).fold(1e3, f64::min);
            d.conditions.lubricant.coldest = Some(Temperature::from_celsius(coldest + above));
        };
        accepts("lubricant-below-its-limit", |d| limit(d, 0.0));
        refuses("lubricant-below-its-limit", |d| limit(d, 1.0));
    }
}
