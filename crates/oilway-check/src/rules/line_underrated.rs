//! A part of the lines that is weaker than what can stand in it.

use oilway_catalogue::kinds::Gauge;
use oilway_model::{Finding, Leg, Mounting, Season};
use oilway_physics::strength::plastic_temperature_factor;
use oilway_text::message;
use oilway_units::Pressure;

use crate::draft::Draft;
use crate::rule::rule;
use crate::shield::{Held, legs, named};
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
    let mut found: Vec<Finding> = facts.shield.held.iter().filter_map(judge).collect();
    found.extend(behind_disc_and_pump(rule, facts));
    found
}

/// The legs that the pump's pressure does not reach: a discharge line holds what the relief path holds, an inlet line about one bar.
fn behind_disc_and_pump(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let package = &facts.design.package;
    let inlet: &[Leg] = match &package.mounting {
        Mounting::Remote(legs) => legs,
        Mounting::OnReservoir => &[],
    };
    let relieving = facts.shield.relieving.unwrap_or(Pressure::ZERO);
    let lines =
        [("discharge", package.discharge.as_slice(), relieving), ("inlet", inlet, Pressure::from_bar(1.0))];
    let mut found = Vec::new();
    for (line, legs, stands) in lines {
        for (number, leg) in legs.iter().enumerate() {
            let Some(rated) = facts.views.conduits.get(leg.conduit).and_then(|conduit| conduit.rated) else {
                continue;
            };
            if rated >= stands * (1.0 - 1e-9) {
                continue;
            }
            let part = facts.design.conduits.get(leg.conduit).map_or("", |part| named(part));
            let what =
                message!("check-line-underrated", part = part, times = 1, rated = rated, highest = stands);
            let at = format!("package.{line}.{}", number + 1);
            let draft = Draft::stop(rule, at, what, message!("check-package-line-underrated-cure"));
            found.push(draft.cautions(&["S03", "S31"]).done());
        }
    }
    found
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
    fn a_discharge_line_must_stand_what_the_relief_path_holds_and_an_inlet_line_one_bar() {
        let weak = |d: &mut oilway_model::Design, bar: f64| {
            let rated = Value::Quantity(Pressure::from_bar(bar).into());
            d.conduits.push(altered(&d.conduits[0], "rated", rated));
            oilway_model::Leg { conduit: 2, ..d.network.nodes[1].legs[0] }
        };
        let discharge =
            |bar: f64| move |d: &mut oilway_model::Design| d.package.discharge = vec![weak(d, bar)];
        let inlet = |bar: f64| {
            move |d: &mut oilway_model::Design| {
                d.package.mounting = oilway_model::Mounting::Remote(vec![weak(d, bar)]);
            }
        };
        accepts("line-underrated", discharge(350.0));
        refuses("line-underrated", discharge(0.5));
        // Far below the pump's pressure, and enough for an inlet.
        accepts("line-underrated", inlet(2.0));
        refuses("line-underrated", inlet(0.5));
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
