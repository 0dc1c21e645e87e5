//! The reservoir: large enough for the time that the customer wants between two fillings, and no larger.

use std::sync::Arc;

use oilway_catalogue::kinds::{Medium, Reservoir};
use oilway_catalogue::{Catalogue, Part, Role};
use oilway_model::{Conditions, Job};
use oilway_physics::grease;
use oilway_text::{Message, message};
use oilway_units::{Flow, Length, Time};

use crate::equipment::{end_of, is_remote};
use crate::joints::Joiner;
use crate::layout::price;
use crate::package::cold_fluid;

/// Machinery is filled once a month at the most often (Neale, The Tribology Handbook, C15.4; seen).
const USUAL_REFILL: Time = Time::from_weeks(4.345);

/// Height of a free-standing wall of grease above which a funnel must be expected (own, borrowed from soil mechanics): NLGI 2 at room
/// temperature stands 0.29 m, NLGI 1 less than 0.1 m.
const FUNNEL: Length = Length::from_metres(0.15);

/// A reservoir and why it was taken.
#[derive(Clone, Debug)]
pub(crate) struct Vessel {
    /// The part.
    pub part: Arc<Part>,
    /// Whether it lasts less than the customer wants, or lacks the plate that the grease needs.
    pub short: bool,
    /// Why.
    pub why: Message,
}

/// How the catalogue calls what flows.
pub(crate) fn medium(conditions: &Conditions) -> Medium {
    if conditions.lubricant.is_grease() { Medium::Grease } else { Medium::Oil }
}

/// The smallest reservoir on the block that lasts as long as the customer wants, or the largest. The given one, if one is given.
pub(crate) fn reservoir(
    job: &Job,
    catalogue: &Catalogue,
    use_rate: Flow,
    block: &Part,
    joiner: &mut Joiner,
) -> Option<Vessel> {
    let conditions = &job.conditions;
    let wanted = conditions.limits.refill_at_least.unwrap_or(USUAL_REFILL);
    let needed = use_rate * (wanted * conditions.running_share());
    let mut all: Vec<(Arc<Part>, Reservoir)> = catalogue
        .of_kind("reservoir")
        .filter(|part| job.package.reservoir.chosen().is_none_or(|id| *id == part.id))
        .filter_map(|part| Reservoir::of(part).map(|data| (Arc::clone(part), data)))
        .filter(|(_, data)| !job.package.reservoir.is_open() || data.lubricants.contains(&medium(conditions)))
        .collect();
    let on_block: Vec<_> =
        all.iter().filter(|(part, _)| goes_on(job, part, block, joiner)).cloned().collect();
    if !on_block.is_empty() {
        all = on_block;
    }
    let order = |part: &Part, data: &Reservoir| {
        (data.gross.cubic_millimetres().round() as i64, price(part), part.id.clone())
    };
    all.sort_by_key(|(part, data)| order(part, data));
    let plate = needs_plate(job);
    let held = |data: &Reservoir| data.follower || !plate;
    let good = |data: &Reservoir| data.gross * data.usable.fraction() >= needed && held(data);
    let pick =
        all.iter().find(|(_, d)| good(d)).or_else(|| all.iter().rfind(|(_, d)| held(d))).or(all.last());
    pick.map(|(part, data)| Vessel {
        part: Arc::clone(part),
        short: !good(data),
        why: message!(
            "solve-why-reservoir",
            usable = data.gross * data.usable.fraction(),
            needed = needed,
            wanted = wanted
        ),
    })
}

/// Whether a reservoir can be set under a block; away from it a line joins the two, whatever their threads.
fn goes_on(job: &Job, reservoir: &Part, block: &Part, joiner: &mut Joiner) -> bool {
    let outlet = reservoir.ports.iter().find(|p| p.role == Role::Outlet).map(end_of);
    let inlet = block.ports.iter().find(|p| p.role == Role::Inlet).map(end_of);
    is_remote(job) || outlet.zip(inlet).is_some_and(|(outlet, inlet)| joiner.join(&inlet, &outlet).is_some())
}

/// Grease that stands as a high wall lets the pump draw a funnel down to its inlet; then a plate must press it down.
fn needs_plate(job: &Job) -> bool {
    job.conditions.lubricant.is_grease()
        && cold_fluid(job, job.package.place)
            .is_some_and(|fluid| grease::standing_height(fluid.yield_stress, fluid.density) > FUNNEL)
}

#[cfg(test)]
mod tests {
    use oilway_model::Choice;
    use oilway_units::Volume;

    use super::*;
    use crate::testing::{catalogue, hall, spindle};

    fn of(job: &Job, cubic_centimetres_per_hour: f64, block: &str) -> Vessel {
        let block = catalogue().part(block).unwrap();
        let rate = Flow::from_cubic_centimetres_per_hour(cubic_centimetres_per_hour);
        reservoir(job, catalogue(), rate, block, &mut Joiner::new(catalogue())).unwrap()
    }

    fn litres(vessel: &Vessel) -> f64 {
        vessel.part.quantity::<Volume>("gross").unwrap().litres()
    }

    #[test]
    fn the_smallest_that_lasts_is_taken() {
        // Eight weeks of 100 hours: 2.1 cm³/h are 1.68 L, just within 85 % of 2 L; 2.2 cm³/h are not.
        assert_eq!(litres(&of(&hall(), 2.1, "10052")), 2.0);
        assert_eq!(litres(&of(&hall(), 2.2, "10052")), 4.0);
    }

    #[test]
    fn where_none_lasts_the_largest_on_the_block_is_taken_and_said_to_be_short() {
        let vessel = of(&hall(), 1e5, "10052");
        assert!(vessel.short);
        assert!(litres(&vessel) >= 15.0);
        assert!(!of(&hall(), 2.1, "10052").short);
    }

    #[test]
    fn a_reservoir_goes_onto_its_block() {
        for (block, rate) in [("10052", 2.0), ("10052", 15.0), ("10055", 2.0), ("10055", 60.0)] {
            let part = catalogue().part(block).unwrap();
            let vessel = of(&hall(), rate, block);
            assert!(goes_on(&hall(), &vessel.part, part, &mut Joiner::new(catalogue())), "{block} {rate}");
        }
    }

    #[test]
    fn oil_gets_an_oil_reservoir_and_stiff_grease_a_plate() {
        assert!(Reservoir::of(&of(&spindle(), 2.0, "10052").part).unwrap().lubricants.contains(&Medium::Oil));
        let mut job = hall();
        job.conditions.lubricant = crate::testing::span_grease();
        assert!(needs_plate(&job));
        assert!(Reservoir::of(&of(&job, 2.0, "10052").part).unwrap().follower);
        assert!(!needs_plate(&spindle()));
    }

    #[test]
    fn a_given_reservoir_is_kept_even_if_it_is_too_small() {
        let mut job = hall();
        job.package.reservoir = Choice::Given("10039".to_owned());
        let vessel = of(&job, 50.0, "10052");
        assert_eq!((vessel.part.id.as_str(), vessel.short), ("10039", true));
    }
}
