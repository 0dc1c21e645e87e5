//! A part of the lines that is weaker than what can stand in it.

use oilway_catalogue::kinds::Gauge;
use oilway_model::{Finding, Season};
use oilway_physics::strength::plastic_temperature_factor;
use oilway_text::message;
use oilway_units::Pressure;

use crate::draft::Draft;
use crate::rule::rule;
use crate::shield::{Held, legs};
use crate::{Facts, Rule};

rule! {
    LineUnderrated = "line-underrated",
    title: "A part is rated below the pressure that can stand in it",
    finds: "A tube, hose, divider or fitting under the pump's pressure whose rating, plastics at their hottest place, lies below the highest burst of the disc, or below the possible stall where no disc protects it.",
    why: "A blocked point brings the whole line up to that pressure. The weakest part lets go first, and grease under 100 bar goes through a glove.",
    source: "iso-4413", "every part inside its limits and protected against excess pressure", SecondHand,
    example: "A hose rated 100 bar behind a disc that may hold up to 141: another hose, or a lower disc with a lower air setting.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let highest = facts.shield.highest();
    let judge = |held: &Held| {
        let rated = rating(facts, held)?;
        if rated >= highest * (1.0 - 1e-9) {
            return None;
        }
        let what = message!(
            "check-line-underrated",
            part = held.what.as_str(),
            times = held.times,
            rated = rated,
            highest = highest
        );
        let draft = Draft::stop(rule, held.at.clone(), what, message!("check-line-underrated-cure"))
            .turns(message!("check-turns-highest-below", highest = rated))
            .number(message!("check-number-rating"), rated)
            .number(message!("check-number-highest"), highest)
            .cautions(&["S03", "S31"]);
        Some(draft.done())
    };
    facts.shield.held.iter().filter_map(judge).collect()
}

/// The rating of a part of the lines where it is hottest. Gauge and pump have rules of their own.
fn rating(facts: &Facts<'_>, held: &Held) -> Option<Pressure> {
    let design = facts.design;
    if held.at == "package.pump" || is_gauge(facts, held) {
        return None;
    }
    let Some(conduit) = design.conduits.iter().position(|part| part.id == held.id) else {
        return Some(held.rated);
    };
    if !facts.views.conduits[conduit].plastic {
        return Some(held.rated);
    }
    let places = legs(design).filter(|(_, leg)| leg.conduit == conduit).map(|(_, leg)| leg.place);
    let hottest =
        places.filter_map(|place| Some(design.conditions.places.get(place)?.temperature(Season::Hot)));
    let factor = hottest.map(|hot| plastic_temperature_factor(hot).fraction()).fold(1.0, f64::min);
    Some(held.rated * factor)
}

fn is_gauge(facts: &Facts<'_>, held: &Held) -> bool {
    let gauge = facts.design.package.gauge.as_ref();
    gauge.is_some_and(|gauge| gauge.id == held.id && Gauge::of(gauge).is_some())
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, altered, refuses};
    use oilway_catalogue::Value;
    use oilway_units::Pressure;

    #[test]
    fn each_part_must_stand_the_highest_burst() {
        let rate = |part: &std::sync::Arc<oilway_catalogue::Part>, bar: f64| {
            altered(part, "rated", Value::Quantity(Pressure::from_bar(bar).into()))
        };
        accepts("line-underrated", |_| {});
        refuses("line-underrated", |d| d.conduits[0] = rate(&d.conduits[0], 90.0));
        refuses("line-underrated", |d| d.dividers[0].body = rate(&d.dividers[0].body, 90.0));
    }

    #[test]
    fn without_a_disc_the_stall_of_a_failed_regulator_counts() {
        // 20 to 1 at 8 bar: 160 bar possible; the hose is rated for just that, a disc of 130 keeps off more than that.
        let weak = |d: &mut oilway_model::Design| {
            d.conduits[0] =
                altered(&d.conduits[0], "rated", Value::Quantity(Pressure::from_bar(150.0).into()));
        };
        accepts("line-underrated", weak);
        refuses("line-underrated", |d| {
            weak(d);
            d.package.disc = None;
        });
    }
}
