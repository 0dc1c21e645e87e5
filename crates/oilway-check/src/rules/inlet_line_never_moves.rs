//! An inlet through which nothing moves, however long one waits.

use oilway_model::{Finding, Mounting, Season};
use oilway_physics::pipe_flow::yield_limit_length;
use oilway_text::message;
use oilway_units::Length;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    InletLineNeverMoves = "inlet-line-never-moves",
    title: "Nothing moves through the inlet, whatever the time",
    finds: "An inlet whose yield limit on the coldest day, passage and inlet line and height together, lies above the pressure that feeds.",
    why: "The atmosphere is all that pushes, 0.8 bar of it. The pump strokes and draws void.",
    source: "own-derivation", "yield limit length of a line", Own,
    example: "NLGI 2 grease of 650 Pa in 25 mm bore: nothing moves beyond 0.8 m. The pump on the reservoir, or a transfer pump in front.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let Some(inlet) = facts.season(Season::Cold).inlet.filter(|inlet| inlet.fill.is_none()) else {
        return Vec::new();
    };
    let what = message!("check-inlet-line-never-moves", holds = inlet.holds, feed = inlet.feed);
    let mut draft = Draft::stop(rule, "package.inlet", what, message!("check-inlet-line-never-moves-cure"))
        .number(message!("check-number-holds"), inlet.holds)
        .number(message!("check-number-feed"), inlet.feed);
    if let Some(reach) = reach(facts, inlet.feed) {
        draft = draft.turns(message!("check-turns-length-below", length = reach));
    }
    draft.alone()
}

/// How long an inlet line of its own bore may be.
fn reach(facts: &Facts<'_>, feed: oilway_units::Pressure) -> Option<Length> {
    let Mounting::Remote(legs) = &facts.design.package.mounting else { return None };
    let leg = legs.first()?;
    let fluid = facts.walk.fluid(Season::Cold, leg.place)?;
    let reach = yield_limit_length(facts.walk.bore(leg)?, feed, fluid.yield_stress);
    reach.is_finite().then_some(reach)
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses, remote};

    #[test]
    fn a_long_inlet_line_of_grease_never_moves() {
        accepts("inlet-line-never-moves", |_| {});
        accepts("inlet-line-never-moves", |d| remote(d, 0.05));
        refuses("inlet-line-never-moves", |d| remote(d, 20.0));
    }
}
