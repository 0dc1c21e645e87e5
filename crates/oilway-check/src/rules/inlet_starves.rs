//! A pump that cannot fill its cylinder in time.

use oilway_model::{Finding, Season};
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    InletStarves = "inlet-starves",
    title: "The pump's cylinder does not fill in the time it has",
    finds: "An inlet through which, on the coldest day and with the reservoir nearly empty, one filling takes longer than the suction part of a cycle at the pump's highest rate. It is refused where the rate that it can fill does not make the event in the time allowed.",
    why: "The stroke is part void: less delivery, air drawn past the plunger, noise, and a pump that runs like mad and gives nothing.",
    source: "own-derivation", "feed pressure against the pipe law of passage and inlet line", Own,
    example: "Cold grease through 12 mm: 1.9 s to fill 3 cm³, 0.5 s given; good for 15 strokes a minute. A wider passage, a follower plate, or fewer strokes.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let (Some(pump), Some(inlet)) = (&facts.views.pump, facts.season(Season::Cold).inlet) else {
        return Vec::new();
    };
    let Some(fill) = inlet.fill.filter(|fill| *fill > inlet.available * (1.0 + 1e-9)) else {
        return Vec::new();
    };
    let what = message!("check-inlet-starves", fill = fill, available = inlet.available, rate = inlet.rate);
    let enough = facts.event_flow.is_some_and(|flow| pump.per_cycle * inlet.rate >= flow);
    let make = if enough { Draft::caution } else { Draft::stop };
    make(rule, "package.pump", what, message!("check-inlet-starves-cure"))
        .turns(message!("check-turns-rate-below", rate = inlet.rate))
        .number(message!("check-number-fill"), fill)
        .number(message!("check-number-available"), inlet.available)
        .number(message!("check-number-feed"), inlet.feed)
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{severity, with_inlet_bore};
    use oilway_model::Severity;
    use oilway_units::{Entry, Time};

    #[test]
    fn a_narrow_inlet_starves_and_a_wide_one_fills() {
        let at = |millimetres: f64, seconds: f64| {
            severity("inlet-starves", move |d| {
                with_inlet_bore(d, millimetres);
                d.conditions.limits.event_time = Entry::known(Time::from_seconds(seconds));
            })
        };
        assert_eq!(at(25.0, 300.0), None);
        assert_eq!(at(2.8, 300.0), Some(Severity::Caution));
        assert_eq!(at(2.8, 0.1), Some(Severity::Stop));
    }
}
