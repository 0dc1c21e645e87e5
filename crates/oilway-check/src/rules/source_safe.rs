//! A pump that cannot burst anything.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    SourceSafe = "source-safe",
    title: "The pump cannot push higher than the weakest part stands",
    finds: "A possible stall, without friction and at the highest air that can ever come, at or below the weakest rating.",
    why: "Then no blocked line can burst a part. It holds only while pump, air and parts stay as they are.",
    source: "own-derivation", "possible stall against the weakest rating", Own,
    example: "Sixteen to one at 8 bar gives at most 128 bar; every part stands 160.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let shield = &facts.shield;
    let Some(weakest) = shield.weakest().filter(|weakest| shield.possible <= weakest.rated) else {
        return Vec::new();
    };
    if facts.views.pump.is_none() {
        return Vec::new();
    }
    let what = message!(
        "check-source-safe",
        possible = shield.possible,
        weakest = weakest.what.as_str(),
        rated = weakest.rated
    );
    Draft::note(rule, "package.pump", what, message!("check-source-safe-cure"))
        .number(message!("check-number-possible"), shield.possible)
        .number(message!("check-number-weakest"), weakest.rated)
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::severity;
    use oilway_model::Severity;
    use oilway_units::{Entry, Pressure};

    #[test]
    fn air_that_can_never_come_makes_the_source_safe() {
        let at = |bar: f64| {
            severity("source-safe", |d| {
                d.conditions.air.as_mut().unwrap().possible = Entry::known(Pressure::from_bar(bar));
            })
        };
        // Twenty to one on parts that stand 160 bar and more.
        assert_eq!(at(7.0), Some(Severity::Note));
        assert_eq!(at(30.0), None);
    }
}
