//! A lubricant whose flow cannot be worked out at a temperature of the job.

use oilway_model::{Finding, Season};
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    ViscosityUnknown = "viscosity-unknown",
    title: "The lubricant has no viscosity line at a temperature of the job",
    finds: "A place in use at whose temperature the lubricant's two viscosities, or its flow curve, give no answer.",
    why: "No pressure along a line in that place can be stated, and so no verdict.",
    source: "astm-d341", "reach of the viscosity line", Memory,
    example: "Viscosities that rise from 40 to 100 °C were mixed up: put the larger one at 40 °C.",
    leaves_open: true,
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let judge = |place: usize| {
        let unknown = Season::ALL.into_iter().find(|&season| facts.walk.fluid(season, place).is_none())?;
        let place = &facts.design.conditions.places[place];
        let what = message!("check-viscosity-unknown", temperature = place.temperature(unknown));
        let draft = Draft::caution(
            rule,
            format!("place.{}", place.name),
            what,
            message!("check-viscosity-unknown-cure"),
        );
        Some(draft.done())
    };
    facts.places_in_use().into_iter().filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, oil_with_pour_point, refuses};
    use oilway_model::Substance;
    use oilway_units::{Entry, KinematicViscosity};

    #[test]
    fn an_oil_that_thickens_as_it_warms_has_no_line() {
        accepts("viscosity-unknown", |d| oil_with_pour_point(d, -40.0));
        refuses("viscosity-unknown", |d| {
            oil_with_pour_point(d, -40.0);
            if let Substance::Oil(oil) = &mut d.conditions.lubricant.substance {
                oil.at_100 = Entry::known(KinematicViscosity::from_square_millimetres_per_second(500.0));
            }
        });
    }
}
