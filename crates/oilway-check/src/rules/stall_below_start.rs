//! A pump that cannot set the lubricant moving.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    StallBelowStart = "stall-below-start",
    title: "The pump stalls below what the start after rest asks",
    finds: "A path that, after a rest, asks more at the pump to start moving than the pump can give at its setting and the lowest air.",
    why: "On that morning nothing moves, and somebody opens the regulator.",
    source: "own-derivation", "yield stress after rest times 4 L / D along the path, with all that stands against it", Own,
    example: "Start asks 138 bar, the pump stalls at 118: a wider main, a softer grease, or heat tracing; not the regulator, which the disc would answer.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let Some((season, point, need)) = facts.highest(|path| path.rested) else { return Vec::new() };
    let Some(stall) = season.source.as_ref().map(|source| source.stall) else { return Vec::new() };
    if need <= stall {
        return Vec::new();
    }
    let what = message!(
        "check-stall-below-start",
        need = need,
        stall = stall,
        point = facts.design.points[point].name.as_str(),
        season = super::season_word(season.season)
    );
    let draft = Draft::stop(rule, "package.pump", what, message!("check-stall-below-start-cure"));
    super::turned_by_air(draft, facts, need, stall)
        .number(message!("check-number-start-rested"), need)
        .number(message!("check-number-stall"), stall)
        .cautions(&["S20", "S21", "S31"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};
    use oilway_units::{Entry, Ratio};

    #[test]
    fn a_grease_that_stiffens_tenfold_in_rest_does_not_start() {
        accepts("stall-below-start", |_| {});
        refuses("stall-below-start", |d| {
            d.conditions.practice.rest_factor = Entry::known(Ratio::from_fraction(10.0));
        });
    }
}
