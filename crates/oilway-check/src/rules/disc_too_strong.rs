//! A disc that outlasts what it should protect.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    DiscTooStrong = "disc-too-strong",
    title: "The disc can be stronger than the weakest part",
    finds: "A highest burst, the strongest of the lot on the coldest day, above the rating of the weakest part.",
    why: "The hose bursts first. Cold makes a disc stronger, and packages stand outdoors.",
    source: "own-derivation", "strict policy: even the strongest disc bursts at or below the weakest rating", Own,
    example: "A disc of 150 bar may hold up to 160 in the cold; a hose of 160 is just enough, one of 150 is not.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let shield = &facts.shield;
    let (Some(disc), Some(weakest)) = (&shield.disc, shield.weakest()) else { return Vec::new() };
    if disc.highest <= weakest.rated * (1.0 + 1e-9) {
        return Vec::new();
    }
    let what = message!(
        "check-disc-too-strong",
        highest = disc.highest,
        weakest = weakest.what.as_str(),
        rated = weakest.rated
    );
    Draft::stop(rule, "package.disc", what, message!("check-disc-too-strong-cure"))
        .turns(message!("check-turns-nominal-below", nominal = shield.window_high))
        .number(message!("check-number-highest-burst"), disc.highest)
        .number(message!("check-number-weakest"), weakest.rated)
        .cautions(&["S04", "S50"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses, swap};
    use oilway_units::{Entry, Temperature};

    #[test]
    fn a_stronger_disc_and_a_deeper_frost_are_refused() {
        accepts("disc-too-strong", |_| {});
        refuses("disc-too-strong", |d| swap(d.package.disc.as_mut().unwrap(), "10025"));
        refuses("disc-too-strong", |d| {
            let place = d.package.place;
            d.conditions.places[place].coldest = Entry::known(Temperature::from_celsius(-200.0));
        });
    }
}
