//! A pump that cannot keep the lubricant moving.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    StallBelowMoving = "stall-below-moving",
    title: "The pump stalls below what the flow of an event asks",
    finds: "A path that asks more at the pump than it can give, at the flow with which an event ends in the time allowed.",
    why: "The pump creeps or stands, the time runs out, and the alarm comes every cold morning.",
    source: "own-derivation", "losses walked from the point to the pump, laminar pipe laws", Own,
    example: "100 cm³/min through 40 m of 6 mm bore ask 160 bar, the pump stalls at 118: a wider main or a longer event.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let Some((season, point, need)) = facts.highest(|path| path.moving) else { return Vec::new() };
    let Some(stall) = season.source.as_ref().map(|source| source.stall) else { return Vec::new() };
    if need <= stall {
        return Vec::new();
    }
    let what = message!(
        "check-stall-below-moving",
        need = need,
        stall = stall,
        point = facts.design.points[point].name.as_str(),
        season = super::season_word(season.season)
    );
    let draft = Draft::stop(rule, "package.pump", what, message!("check-stall-below-moving-cure"));
    super::turned_by_air(draft, facts, need, stall)
        .number(message!("check-number-moving"), need)
        .number(message!("check-number-stall"), stall)
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};
    use oilway_units::{Entry, Pressure};

    #[test]
    fn a_point_that_holds_two_hundred_bar_against_its_line_is_not_reached() {
        accepts("stall-below-moving", |_| {});
        refuses("stall-below-moving", |d| {
            d.points[0].back_pressure = Some(Entry::known(Pressure::from_bar(200.0)));
        });
    }
}
