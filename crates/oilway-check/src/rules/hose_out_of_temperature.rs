//! A line in a place too cold or too hot for it.

use oilway_model::{Finding, Season};
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::shield::{legs, named};
use crate::{Facts, Rule};

rule! {
    HoseOutOfTemperature = "hose-out-of-temperature",
    title: "A hose or tube is used outside its temperatures",
    finds: "A leg in a place that gets colder or hotter than its hose or tube may be used in.",
    why: "Cold hose cracks when it moves, hot hose loses its strength at the fitting first.",
    source: "iso-3949", "temperature ranges of hoses; the hose's own data decide", SecondHand,
    example: "A hose for -20 to 80 °C at a furnace of 110 °C: steel tube up to the moving end, and a hose made for the heat there.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let design = facts.design;
    let judge = |(at, leg): (String, &oilway_model::Leg)| {
        let conduit = facts.views.conduits.get(leg.conduit)?;
        let place = design.conditions.places.get(leg.place)?;
        let (cold, hot) = (place.temperature(Season::Cold), place.temperature(Season::Hot));
        let part = named(&design.conduits[leg.conduit]);
        let what = match (conduit.coldest, conduit.hottest) {
            (Some(limit), _) if cold < limit => {
                message!("check-hose-too-cold", part = part, there = cold, limit = limit)
            }
            (_, Some(limit)) if hot > limit => {
                message!("check-hose-too-hot", part = part, there = hot, limit = limit)
            }
            _ => return None,
        };
        Some(
            Draft::stop(rule, at, what, message!("check-hose-out-of-temperature-cure"))
                .cautions(&["S63"])
                .done(),
        )
    };
    legs(design).filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};
    use oilway_units::{Entry, Temperature};

    #[test]
    fn a_hose_is_refused_in_the_frost_and_at_the_furnace() {
        accepts("hose-out-of-temperature", |_| {});
        refuses("hose-out-of-temperature", |d| {
            for place in &mut d.conditions.places {
                place.coldest = Entry::known(Temperature::from_celsius(-70.0));
            }
        });
        refuses("hose-out-of-temperature", |d| {
            for place in &mut d.conditions.places {
                place.hottest = Entry::known(Temperature::from_celsius(190.0));
            }
        });
    }
}
