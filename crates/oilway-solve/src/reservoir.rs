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
