//! An indicator that the flow of oil does not lift.

use oilway_catalogue::kinds::Discharge;
use oilway_model::{Finding, Season};
use oilway_physics::disc::hole_drop;
use oilway_text::message;
use oilway_units::Pressure;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    IndicatorCannotMove = "indicator-cannot-move",
    title: "The flow of oil does not move the indicator",
    finds: "An oil package whose indicator or switch behind the disc asks more pressure than the pump's flow raises in hole and discharge line on the hottest day.",
    why: "The disc bursts, the oil runs away past the indicator, and nobody is told until the reservoir is empty.",
    source: "own-derivation", "pressure that the flow raises against what the indicator asks", Own,
    example: "Oil of 0.2 Pa s through 3 m of 6 mm tube at 100 cm³/min raises 0.3 bar; a switch at 2 bar never trips. Watch the main, or set a float in the catch pot.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let design = facts.design;
    let Some(holder) = &facts.views.holder else { return Vec::new() };
    let tells = matches!(holder.discharge, Discharge::Indicator | Discharge::Switch);
    let Some(asks) = holder.opens_at.filter(|_| tells && !design.conditions.lubricant.is_grease()) else {
        return Vec::new();
    };
    let Some(raised) = raised(facts).filter(|raised| *raised < asks) else { return Vec::new() };
    let what = message!("check-indicator-cannot-move", raised = raised, asks = asks);
    Draft::caution(rule, "package.holder", what, message!("check-indicator-cannot-move-cure"))
        .number(message!("check-number-raised"), raised)
        .number(message!("check-number-limit"), asks)
        .alone()
}

/// What the free flow of the pump raises behind the disc when the oil is thinnest.
fn raised(facts: &Facts<'_>) -> Option<Pressure> {
    let (design, holder) = (facts.design, facts.views.holder.as_ref()?);
    let hot = facts.season(Season::Hot);
    let flow = hot.source.as_ref()?.free_flow();
    let fluid = facts.walk.fluid(Season::Hot, design.package.place)?;
    let mut sum = hole_drop(holder.hole, holder.land, flow, fluid.density, fluid.viscosity());
    for leg in &design.package.discharge {
        sum += facts.walk.fluid(Season::Hot, leg.place)?.drop(facts.walk.bore(leg)?, leg.length.get(), flow);
    }
    Some(sum)
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, oil_with_pour_point, refuses, swap};

    #[test]
    fn thin_oil_passes_the_pin_and_grease_lifts_it() {
        refuses("indicator-cannot-move", |d| {
            oil_with_pour_point(d, -40.0);
            swap(d.package.holder.as_mut().unwrap(), "10007");
        });
        accepts("indicator-cannot-move", |d| swap(d.package.holder.as_mut().unwrap(), "10007"));
        accepts("indicator-cannot-move", |d| {
            oil_with_pour_point(d, -40.0);
            swap(d.package.holder.as_mut().unwrap(), "10005");
        });
    }
}
