//! A bearing that turns too fast for grease.

use oilway_model::Finding;
use oilway_physics::demand::speed_index;
use oilway_physics::demand::tables::GREASE_SPEED_INDEX;
use oilway_physics::points::Answers;
use oilway_text::message;
use oilway_units::{Count, Length};

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    BearingSpeedForGrease = "bearing-speed-for-grease",
    title: "A bearing turns too fast for grease",
    finds: "A rolling bearing on grease whose speed index, bore times speed in mm and turns a minute, is above 300 000; for bores above 65 mm the mean diameter takes the place of the bore. Above 350 000 it is refused.",
    why: "Grease is thrown out, and what stays is churned and gets hot.",
    source: "neale-1995", "C8.1, general guide table", Seen,
    example: "Bore 60 mm at 6000 turns a minute: index 360 000. Use oil, or a grease whose maker answers for the speed.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    if !facts.design.conditions.lubricant.is_grease() {
        return Vec::new();
    }
    let (good, most) = GREASE_SPEED_INDEX.value;
    let judge = |point: usize| {
        let index = index_of(facts, point)?;
        if index <= good {
            return None;
        }
        let what = message!("check-bearing-speed-for-grease", index = index, good = good, most = most);
        let cure = message!("check-bearing-speed-for-grease-cure");
        let make = if index > most { Draft::stop } else { Draft::caution };
        Some(
            make(rule, facts.point_name(point), what, cure)
                .number(message!("check-number-speed-index"), index)
                .done(),
        )
    };
    (0..facts.design.points.len()).filter_map(judge).collect()
}

fn index_of(facts: &Facts<'_>, point: usize) -> Option<Count> {
    let point = &facts.design.points[point];
    let answers = point.answers();
    let answers = Answers { fields: point.kind.fields(), answers: &answers };
    let speed = point.kind.speed(answers)?;
    let (bore, outside) = (answers.quantity::<Length>("bore")?, answers.quantity::<Length>("outside")?);
    Some(speed_index(bore, outside, speed))
}

#[cfg(test)]
mod tests {
    use crate::testing::{severity, with_speed};
    use oilway_model::Severity;
    use oilway_units::Frequency;

    #[test]
    fn the_index_is_judged_at_both_edges() {
        let at = |per_minute: f64| {
            severity("bearing-speed-for-grease", |d| with_speed(d, Frequency::from_per_minute(per_minute)))
        };
        // Bore 40 mm: 300 000 and 350 000 are met at 7500 and 8750 turns a minute.
        assert_eq!(at(7490.0), None);
        assert_eq!(at(7510.0), Some(Severity::Caution));
        assert_eq!(at(8740.0), Some(Severity::Caution));
        assert_eq!(at(8760.0), Some(Severity::Stop));
    }
}
