//! A reservoir that is empty too soon.

use oilway_model::Finding;
use oilway_text::message;
use oilway_units::Time;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

/// What a handbook asks for machinery where the customer says nothing.
const MONTH: Time = Time::from_days(30.0);

rule! {
    RefillTooShort = "refill-too-short",
    title: "The reservoir is empty too soon",
    finds: "A filling that lasts, on the calendar, less than the customer accepts; where he says nothing, less than the month that a handbook asks for machinery, which is a note.",
    why: "Filling is when dirt and air come in, and when it is forgotten.",
    source: "neale-1995", "C15, checklist: a month for machinery", Seen,
    example: "Five weeks where eight are wanted: the next larger reservoir.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let Some(lasts) = facts.refill() else { return Vec::new() };
    let wanted = facts.design.conditions.limits.refill_at_least;
    let least = wanted.unwrap_or(MONTH);
    if lasts >= least * (1.0 - 1e-9) {
        return Vec::new();
    }
    let what = message!("check-refill-too-short", lasts = lasts, wanted = least);
    let make = if wanted.is_some() { Draft::caution } else { Draft::note };
    make(rule, "package.reservoir", what, message!("check-refill-too-short-cure"))
        .number(message!("check-number-refill"), lasts)
        .number(message!("check-number-limit"), least)
        .cautions(&["S95"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::severity;
    use oilway_model::Severity;
    use oilway_units::Time;

    #[test]
    fn the_customers_wish_is_a_caution_and_the_month_a_note() {
        let at = |wish: Option<f64>, pause: f64| {
            severity("refill-too-short", |d| {
                d.conditions.limits.refill_at_least = wish.map(Time::from_weeks);
                d.control.pause = d.control.pause * pause;
            })
        };
        assert_eq!(at(Some(1.0), 1.0), None);
        assert_eq!(at(Some(500.0), 1.0), Some(Severity::Caution));
        assert_eq!(at(None, 0.01), Some(Severity::Note));
        assert_eq!(at(None, 1.0), None);
    }
}
