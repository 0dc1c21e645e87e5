//! A disc with next to no room on one side.

use oilway_model::Finding;
use oilway_text::message;
use oilway_units::Pressure;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

/// Less room than this share is none.
const ROOM: f64 = 1.02;

rule! {
    DiscMarginThin = "disc-margin-thin",
    title: "The disc has next to no margin on one side",
    finds: "Less than 2 % between the working pressure and the steady maximum of the disc, or between its highest burst and the weakest part.",
    why: "A regulator reads to a tenth of a bar, a gauge to two per cent, and forty to one makes four bar of one tenth: 0.6 bar is no margin.",
    source: "common-practice", "accuracy of shop gauges and regulators", CommonPractice,
    example: "Steady maximum 97.8 bar, stall 96.9: lock the regulator, write the setting on the label, or go one step down.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let shield = &facts.shield;
    let (Some(disc), Some(weakest)) = (&shield.disc, shield.weakest()) else { return Vec::new() };
    let thin = |held: Pressure, against: Pressure| held * (1.0 + 1e-9) >= against && held < against * ROOM;
    let mut found = Vec::new();
    if thin(disc.steady, shield.working) {
        let room = disc.steady - shield.working;
        let what =
            message!("check-disc-margin-below", room = room, working = shield.working, steady = disc.steady);
        let draft = Draft::caution(rule, "package.disc", what, message!("check-disc-margin-below-cure"));
        found.push(
            super::turned_down(draft, facts, disc.steady / ROOM, shield.working)
                .number(message!("check-number-room"), room)
                .done(),
        );
    }
    if thin(weakest.rated, disc.highest) {
        let room = weakest.rated - disc.highest;
        let what = message!(
            "check-disc-margin-above",
            room = room,
            highest = disc.highest,
            weakest = weakest.what.as_str(),
            rated = weakest.rated
        );
        let draft = Draft::caution(rule, "package.disc", what, message!("check-disc-margin-above-cure"));
        found.push(draft.number(message!("check-number-room"), room).done());
    }
    found
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, altered, highest_burst, refuses, severity, sound};
    use oilway_catalogue::Value;
    use oilway_text::Arg;
    use oilway_units::Pressure;

    #[test]
    fn the_setting_that_is_said_to_turn_it_turns_it_and_the_next_step_does_not() {
        let at = |tenths: u32| {
            move |d: &mut oilway_model::Design| {
                d.package.air_setting = Some(Pressure::from_bar(f64::from(tenths) * 0.1));
            }
        };
        let thin = |tenths| severity("disc-margin-thin", at(tenths)).is_some();
        let tried: Vec<u32> = (30..90).filter(|tenths| thin(*tenths)).collect();
        assert!(!tried.is_empty());
        for tenths in tried {
            let mut design = sound();
            at(tenths)(&mut design);
            let turns =
                crate::check(&design).of_rule("disc-margin-thin").find_map(|f| f.turns.clone()).unwrap();
            let Some((_, Arg::Quantity(air))) = turns.args.first() else { panic!("{turns:?}") };
            let said = (air.si / 1e4).round() as u32;
            assert!(said < tenths, "{said} does not lie below {tenths}");
            accepts("disc-margin-thin", at(said));
            accepts("disc-wears-out", at(said));
            refuses("disc-margin-thin", at(said + 1));
        }
    }

    #[test]
    fn what_a_lower_setting_leaves_for_the_worst_path_is_said_with_it() {
        let keys = |rest: f64| -> std::collections::BTreeSet<&'static str> {
            let mut design = sound();
            design.conditions.practice.rest_factor =
                oilway_units::Entry::known(oilway_units::Ratio::from_fraction(rest));
            let settings = (30..90).map(|tenths| Pressure::from_bar(f64::from(tenths) * 0.1));
            let turns = settings.filter_map(|setting| {
                design.package.air_setting = Some(setting);
                crate::check(&design).of_rule("disc-margin-thin").find_map(|f| f.turns.clone())
            });
            turns.map(|turns| turns.key).collect()
        };
        assert_eq!(keys(1.0).into_iter().collect::<Vec<_>>(), ["check-turns-air-below-enough"]);
        assert_eq!(keys(30.0).into_iter().collect::<Vec<_>>(), ["check-turns-air-below-lacking"]);
    }

    #[test]
    fn a_weakest_part_just_above_the_highest_burst_is_no_margin() {
        let highest = highest_burst(&sound());
        let rate = |d: &mut oilway_model::Design, share: f64| {
            let body = &mut d.dividers[0].body;
            *body = altered(body, "rated", Value::Quantity((highest * share).into()));
        };
        accepts("disc-margin-thin", |d| rate(d, 1.03));
        refuses("disc-margin-thin", |d| rate(d, 1.01));
    }
}
