//! A lubricant that must not touch food.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    LubricantNotFoodGrade = "lubricant-not-food-grade",
    title: "The lubricant is not food grade and the place asks for it",
    finds: "A job that allows only lubricant for incidental food contact, with a lubricant that does not say so.",
    why: "One drop on open product is a recall.",
    source: "common-practice", "food plants; ISO 21469 is named from memory", CommonPractice,
    example: "An ordinary lithium grease over open crates: change to a food-grade grease, and look at disc, seals and flow again.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let conditions = &facts.design.conditions;
    if !conditions.limits.food || conditions.lubricant.food {
        return Vec::new();
    }
    let what = message!("check-lubricant-not-food-grade", lubricant = conditions.lubricant.name.as_str());
    Draft::stop(rule, "lubricant", what, message!("check-lubricant-not-food-grade-cure"))
        .cautions(&["S13", "S91"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};

    #[test]
    fn a_plain_grease_is_refused_only_where_food_grade_is_asked_for() {
        accepts("lubricant-not-food-grade", |d| d.conditions.limits.food = false);
        accepts("lubricant-not-food-grade", |d| {
            d.conditions.limits.food = true;
            d.conditions.lubricant.food = true;
        });
        refuses("lubricant-not-food-grade", |d| {
            d.conditions.limits.food = true;
            d.conditions.lubricant.food = false;
        });
    }
}
