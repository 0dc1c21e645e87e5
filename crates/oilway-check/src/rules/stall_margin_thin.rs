//! A pump that works close to its stall.

use oilway_model::Finding;
use oilway_text::message;
use oilway_units::Ratio;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    StallMarginThin = "stall-margin-thin",
    title: "The highest need comes close to the stall of the pump",
    finds: "A need, to start after rest or in motion, above the share of the stall that practice allows, and still below the stall.",
    why: "An air-driven pump crawls near its stall: 80 % of it takes about six times as long as an empty stroke, 90 % nine times; and a night a little colder ends it.",
    source: "common-practice", "share of the stall that the highest need may use", CommonPractice,
    example: "Start asks 112 bar of 118: 95 % used, 90 wanted. One step more bore on the main brings it to 80 %.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let Some((season, point, need)) = facts.highest(|path| path.rested.max(path.moving)) else {
        return Vec::new();
    };
    let Some(stall) = season.source.as_ref().map(|source| source.stall) else { return Vec::new() };
    let allowed = stall * facts.design.conditions.practice.stall_use.get().fraction();
    if need <= allowed * (1.0 + 1e-9) || need > stall {
        return Vec::new();
    }
    let used = Ratio::from_fraction(need / stall);
    let what = message!(
        "check-stall-margin-thin",
        need = need,
        stall = stall,
        used = used,
        point = facts.design.points[point].name.as_str(),
        season = super::season_word(season.season)
    );
    let draft = Draft::caution(rule, "package.pump", what, message!("check-stall-margin-thin-cure"));
    super::turned_by_air(
        draft,
        facts,
        need / facts.design.conditions.practice.stall_use.get().fraction(),
        stall,
    )
    .number(message!("check-number-needed"), need)
    .number(message!("check-number-stall"), stall)
    .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, need_over_stall, refuses, sound};
    use oilway_units::{Entry, Ratio};

    #[test]
    fn the_allowed_share_is_the_edge() {
        let used = need_over_stall(&sound());
        let allow = |d: &mut oilway_model::Design, share: f64| {
            d.conditions.practice.stall_use = Entry::known(Ratio::from_fraction(share));
        };
        accepts("stall-margin-thin", |d| allow(d, used * 1.001));
        refuses("stall-margin-thin", |d| allow(d, used * 0.999));
    }
}
