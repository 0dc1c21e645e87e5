//! A tube of unknown strength.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::shield::{legs, named};
use crate::{Facts, Rule};

rule! {
    TubeWithoutRating = "tube-without-rating",
    title: "A tube has no rated pressure",
    finds: "A tube in use whose catalogue gives no rated pressure.",
    why: "It may be the weakest part of all: the disc is then chosen to protect the others.",
    source: "iso-4413", "every part inside its limits", SecondHand,
    example: "Copper tube 6 x 1 without more: ask for temper and tolerance, or work the rating out and write its basis beside it.",
    leaves_open: true,
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let judge = |(number, conduit): (usize, &crate::views::Conduit)| {
        let (at, _) = legs(facts.design).find(|(_, leg)| leg.conduit == number)?;
        let unrated = conduit.bore.is_some() && conduit.rated.is_none();
        let what = message!("check-tube-without-rating", part = named(&facts.design.conduits[number]));
        let draft =
            Draft::caution(rule, at, what, message!("check-tube-without-rating-cure")).cautions(&["S03"]);
        unrated.then(|| draft.done())
    };
    facts.views.conduits.iter().enumerate().filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, emptied, refuses};

    #[test]
    fn a_tube_in_use_must_say_what_it_stands() {
        accepts("tube-without-rating", |_| {});
        refuses("tube-without-rating", |d| d.conduits[0] = emptied(&d.conduits[0], "rated"));
    }

    #[test]
    fn a_tube_that_no_line_uses_is_nobodys_concern() {
        accepts("tube-without-rating", |d| {
            let spare = emptied(&d.conduits[0], "rated");
            d.conduits.push(spare);
        });
    }
}
