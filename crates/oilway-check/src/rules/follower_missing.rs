//! Stiff grease in a reservoir without a follower plate.

use oilway_model::{Finding, Season};
use oilway_physics::grease::standing_height;
use oilway_text::message;
use oilway_units::Length;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

/// A wall that stands higher than this lets the pump draw a funnel: between NLGI 1 and NLGI 2 at room temperature.
const FUNNEL: Length = Length::from_millimetres(150.0);

rule! {
    FollowerMissing = "follower-missing",
    title: "Stiff grease without a follower plate",
    finds: "A reservoir without a follower plate for a grease that, on the coldest day, stands as a wall of more than 150 mm, or as high as the reservoir.",
    why: "The pump draws a chimney down to its inlet and sucks air with the reservoir nearly full. One study saw stiff grease slip down as a plug instead: a test decides.",
    source: "own-derivation", "height of a free-standing wall, 4 τ0 / (ρ g); the limit is judged", Own,
    example: "NLGI 2 at room temperature stands 0.29 m: a follower plate, or a stirrer.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let Some(vessel) = facts.views.reservoir.as_ref().filter(|vessel| !vessel.follower) else {
        return Vec::new();
    };
    let Some(fluid) = facts.walk.fluid(Season::Cold, facts.design.package.place) else { return Vec::new() };
    let stands = standing_height(fluid.yield_stress, fluid.density);
    let limit = vessel.height.map_or(FUNNEL, |height| FUNNEL.min(height));
    if stands <= limit {
        return Vec::new();
    }
    let what = message!("check-follower-missing", stands = stands, limit = limit);
    Draft::caution(rule, "package.reservoir", what, message!("check-follower-missing-cure"))
        .number(message!("check-number-stands"), stands)
        .cautions(&["S97"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, altered, refuses, yield_of};
    use oilway_catalogue::Value;

    #[test]
    fn soft_grease_needs_no_plate_and_stiff_grease_does() {
        let bare = |d: &mut oilway_model::Design| {
            d.package.reservoir = altered(&d.package.reservoir, "follower", Value::Flag(false));
        };
        accepts("follower-missing", |d| yield_of(d, 900.0));
        accepts("follower-missing", |d| {
            bare(d);
            yield_of(d, 100.0);
        });
        refuses("follower-missing", |d| {
            bare(d);
            yield_of(d, 900.0);
        });
    }
}
