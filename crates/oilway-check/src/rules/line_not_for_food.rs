//! A hose that is not made for use beside food.

use oilway_catalogue::kinds::Hose;
use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::shield::{legs, named};
use crate::{Facts, Rule};

rule! {
    LineNotForFood = "line-not-for-food",
    title: "A hose is not made for use beside food, and the job asks for it",
    finds: "A hose whose data do not say that it may be used beside food, in a job that allows only lubricant for incidental food contact.",
    why: "A hose sheds its cover and is washed with what food plants wash with; not every hose bears that.",
    source: "common-practice", "hoses in food plants; the hose's own data decide", CommonPractice,
    example: "An ordinary rubber hose at a filler: take the hose that its maker gives for use beside food, or lead steel tube up to the moving end.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let design = facts.design;
    if !design.conditions.limits.food {
        return Vec::new();
    }
    // Each hose once, at the first leg of it.
    let judge = |(number, part): (usize, &std::sync::Arc<oilway_catalogue::Part>)| {
        Hose::of(part).filter(|hose| !hose.food)?;
        let (at, _) = legs(design).find(|(_, leg)| leg.conduit == number)?;
        let what = message!("check-line-not-for-food", part = named(part));
        let draft = Draft::caution(rule, at, what, message!("check-line-not-for-food-cure"));
        Some(draft.cautions(&["S13"]).done())
    };
    design.conduits.iter().enumerate().filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, altered, refuses};
    use oilway_catalogue::Value;
    use oilway_model::Design;

    fn food(design: &mut Design, hose: bool) {
        design.conditions.limits.food = true;
        design.conduits[1] = altered(&design.conduits[1], "food", Value::Flag(hose));
    }

    #[test]
    fn a_plain_hose_is_named_only_where_food_is_near() {
        accepts("line-not-for-food", |d| food(d, true));
        refuses("line-not-for-food", |d| food(d, false));
        accepts("line-not-for-food", |d| {
            food(d, false);
            d.conditions.limits.food = false;
        });
    }
}
