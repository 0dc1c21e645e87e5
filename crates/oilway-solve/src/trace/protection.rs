//! The disc: when it bursts, what it leaves room for, what it holds once it is open; and the coldest day.

use std::collections::BTreeMap;
use std::sync::Arc;

use oilway_catalogue::Part;
use oilway_catalogue::kinds::{DiscHolder, Pump};
use oilway_model::{Fluid, Leg, Season};
use oilway_physics::{How, Term, air, disc, pipe_flow};
use oilway_text::message;
use oilway_units::{Flow, Pressure, Ratio};

use super::lubricant::{state_name, temperature_name};
use super::paths::path_name;
use super::{Book, named, value};
use crate::hydraulics::{bore_of, leg_loss};
use crate::protection::{DiscHere, disc_temperatures};
use crate::relief::{NO_DISC, protected};

pub(super) fn trace(book: &mut Book<'_>) {
    working(book);
    weakest(book);
    let design = book.known.design;
    let here =
        design.package.disc.as_ref().and_then(|d| DiscHere::new(d, &design.conditions, design.package.place));
    if let Some(here) = &here {
        bursts(book, here);
    }
    window(book, here.as_ref());
    relief(book);
    if let Some(limit) = &book.known.answer.cold_limit {
        let terms =
            ["pump.stall", "peak.cold.start", "peak.cold.moving", "practice.rest_factor"].map(named).to_vec();
        book.solved("cold.limit", limit.temperature, message!("solve-how-cold-limit"), terms);
    }
}

/// The highest pressure at which it works: an air-driven pump at its stall, an electric one at its worst path.
fn working(book: &mut Book<'_>) {
    let design = book.known.design;
    let part = &design.package.pump;
    let Some(pump) = Pump::of(part) else { return };
    let found = book.known.answer.protection.working;
    if pump.drive.is_air() {
        let setting = if design.package.air_setting.is_some() {
            named("package.regulator")
        } else {
            value(Pressure::ZERO)
        };
        let terms = vec![
            book.part_or(part, "ratio", Ratio::ZERO),
            setting,
            book.part_or(part, "stall_efficiency", Ratio::from_fraction(1.0)),
        ];
        book.formula("disc.working", &air::STALL, found, terms);
        return;
    }
    let seasons = &book.known.answer.seasons;
    let paths = seasons.iter().flat_map(|s| (0..s.paths.len()).map(|p| path_name(book, p, s.season)));
    let terms =
        paths.flat_map(|p| ["start_rested", "at_pump"].map(|what| named(format!("{p}.{what}")))).collect();
    let peak = seasons
        .iter()
        .flat_map(|s| &s.paths)
        .map(|p| p.start_rested.max(p.at_pump))
        .fold(Pressure::ZERO, Pressure::max);
    book.line("peak.all", peak, How::Largest(terms));
    book.line("disc.working", found, How::Smallest(vec![named("peak.all"), named("pump.stall")]));
}

/// The lowest rating of all parts that stand under the pump's pressure.
fn weakest(book: &mut Book<'_>) {
    // Each part once, however often it is built in.
    let parts: BTreeMap<String, Arc<Part>> =
        protected(book.known.design).into_iter().map(|part| (part.id.clone(), part)).collect();
    let mut terms = Vec::new();
    for part in parts.values() {
        let Some(rating) = part.kind.rating(part) else { continue };
        let field =
            ["rated", "full_scale"].into_iter().find(|f| part.quantity::<Pressure>(f) == Some(rating));
        terms.push(field.and_then(|f| book.part(part, f)).unwrap_or(value(rating)));
    }
    book.line("protection.weakest", book.known.answer.protection.weakest.1, How::Smallest(terms));
}

/// How strong the disc is at the coldest and the hottest that it can have.
fn bursts(book: &mut Book<'_>, here: &DiscHere) {
    let design = book.known.design;
    let place = design.conditions.places.get(design.package.place).map_or("", |p| p.name.as_str());
    let (coldest, hottest) = disc_temperatures(&design.conditions, design.package.place);
    let terms = vec![named(temperature_name(place, Season::Hot)), named("practice.disc_warmer")];
    book.sum("disc.hottest", hottest, terms);
    let data = &here.data;
    for (name, temperature, term) in [
        ("disc.factor.at_coldest", coldest, named(temperature_name(place, Season::Cold))),
        ("disc.factor.at_hottest", hottest, named("disc.hottest")),
    ] {
        let factor = disc::linear_temperature_factor(temperature, data.marked_at, data.below, data.above);
        let of_part = ["marked_at", "below", "above"].map(|f| book.part_or(&here.part, f, Ratio::ZERO));
        let terms = std::iter::once(term).chain(of_part).collect();
        book.formula(name, &disc::LINEAR_TEMPERATURE, factor, terms);
    }
    let both = || ["disc.factor.at_coldest", "disc.factor.at_hottest"].map(named).to_vec();
    book.line("disc.factor.cold", here.cold_factor, How::Largest(both()));
    book.line("disc.factor.hot", here.hot_factor, How::Smallest(both()));
    let mut of = |fields: [&'static str; 3], last: &str| -> Vec<Term> {
        let of_part = fields.map(|f| book.part_or(&here.part, f, Ratio::ZERO));
        of_part.into_iter().chain([named(last)]).collect()
    };
    let lowest = of(["nominal", "range_minus", "tolerance"], "disc.factor.hot");
    let highest = of(["nominal", "range_plus", "tolerance"], "disc.factor.cold");
    book.formula("disc.lowest", &disc::LOWEST_BURST, here.lowest, lowest);
    book.formula("disc.highest", &disc::HIGHEST_BURST, here.highest, highest);
    let terms = vec![named("disc.lowest"), book.part_or(&here.part, "ratio", Ratio::ZERO)];
    book.formula("disc.steady", &disc::STEADY_MAXIMUM, here.steady, terms);
    let working = book.known.answer.protection.working;
    let ratio = disc::operating_ratio(working, Pressure::ZERO, here.lowest);
    let terms = vec![named("disc.working"), value(Pressure::ZERO), named("disc.lowest")];
    book.formula("disc.operating_ratio", &disc::OPERATING_RATIO, ratio, terms);
    if let Some(setting) = book.known.answer.protection.highest_setting {
        let part = &design.package.pump;
        let pump = ["ratio", "stall_efficiency"].map(|f| book.part_or(part, f, Ratio::from_fraction(1.0)));
        let step = design.package.regulator.as_ref().and_then(|r| book.part(r, "step"));
        let terms = std::iter::once(named("disc.steady")).chain(pump).chain(step).collect();
        book.solved("disc.highest_setting", setting, message!("solve-how-highest-setting"), terms);
    }
}

fn window(book: &mut Book<'_>, here: Option<&DiscHere>) {
    let protection = &book.known.answer.protection;
    let share = Ratio::from_fraction;
    let mut of = |field: &'static str, otherwise: f64| match here {
        Some(here) => book.part_or(&here.part, field, share(otherwise)),
        None => value(share(otherwise)),
    };
    let (tolerance, ratio) = (of("tolerance", NO_DISC.0), of("ratio", NO_DISC.1));
    let (minus, plus) = (of("range_minus", 0.0), of("range_plus", 0.0));
    let factor = |name: &str| if here.is_some() { named(name) } else { value(share(1.0)) };
    let terms = vec![
        named("disc.working"),
        value(Pressure::ZERO),
        ratio,
        tolerance.clone(),
        factor("disc.factor.hot"),
        minus,
    ];
    book.formula("disc.window.low", &disc::WINDOW_LOW, protection.window_low, terms);
    let terms =
        vec![named("protection.weakest"), value(Pressure::ZERO), tolerance, factor("disc.factor.cold"), plus];
    book.formula("disc.window.high", &disc::WINDOW_HIGH, protection.window_high, terms);
}

/// What the open disc holds while the pump runs free, and what stays when it has stopped.
fn relief(book: &mut Book<'_>) {
    let design = book.known.design;
    let Some(part) = design.package.holder.as_ref() else { return };
    let Some(holder) = DiscHolder::of(part) else { return };
    let Some(fluid) = book.known.hydraulics.fluid(Season::Cold, design.package.place).copied() else {
        return;
    };
    hole(book, part, &holder, &fluid);
    let (mut held, mut left) = (vec![named("disc.relieving.hole")], vec![named("disc.stays.hole")]);
    for (number, leg) in design.package.discharge.iter().enumerate() {
        if let Some((loss, stays)) = discharge(book, number, leg) {
            held.push(loss);
            left.push(stays);
        }
    }
    held.extend(book.part(part, "opens_at"));
    left.push(main_yield(book));
    let protection = &book.known.answer.protection;
    if let Some(relieving) = protection.relieving {
        book.sum("disc.relieving", relieving, held);
    }
    if let Some(stays) = protection.stays {
        book.sum("disc.stays", stays, left);
    }
}

/// The most that the pump gives without load, over the seasons.
fn free_flow(book: &Book<'_>) -> Flow {
    book.known.answer.seasons.iter().map(|s| s.pump.flow_limit).fold(Flow::ZERO, Flow::max)
}

/// The hole behind the disc.
fn hole(book: &mut Book<'_>, part: &Part, holder: &DiscHolder, fluid: &Fluid) {
    let state = state_name(book, book.known.design.package.place, Season::Cold);
    let (bore, land) = (book.part_or(part, "hole", holder.hole), book.part_or(part, "land", holder.land));
    let ends = pipe_flow::end_length(holder.hole);
    book.formula("disc.hole.ends", &pipe_flow::END_LENGTH, ends, vec![bore.clone()]);
    let passage = holder.land + ends;
    book.sum("disc.hole.length", passage, vec![land.clone(), named("disc.hole.ends")]);
    let flow = free_flow(book);
    if fluid.is_newtonian() {
        let drop = disc::hole_drop(holder.hole, holder.land, flow, fluid.density, fluid.viscosity());
        let of_oil = ["density", "viscosity"].map(|what| named(format!("{state}.{what}")));
        let terms = [vec![bore.clone(), land, named("pump.flow_limit")], of_oil.to_vec()].concat();
        book.formula("disc.relieving.hole", &disc::HOLE_DROP, drop, terms);
    } else {
        let drop = fluid.drop(holder.hole, passage, flow);
        let curve = ["yield", "consistency", "index"].map(|what| named(format!("{state}.{what}")));
        let line = vec![bore.clone(), named("disc.hole.length"), named("pump.flow_limit")];
        let terms = [line, curve.to_vec()].concat();
        book.formula("disc.relieving.hole", &pipe_flow::HERSCHEL_BULKLEY_DROP, drop, terms);
    }
    let stays = pipe_flow::start_pressure(holder.hole, passage, fluid.yield_stress);
    let terms = vec![bore, named("disc.hole.length"), yield_term(fluid, &state)];
    book.formula("disc.stays.hole", &pipe_flow::START_PRESSURE, stays, terms);
}

fn yield_term(fluid: &Fluid, state: &str) -> Term {
    if fluid.is_newtonian() { value(Pressure::ZERO) } else { named(format!("{state}.yield")) }
}

/// One stretch of the discharge line: what it loses and what stays in it.
fn discharge(book: &mut Book<'_>, number: usize, leg: &Leg) -> Option<(Term, Term)> {
    let design = book.known.design;
    let fluid = *book.known.hydraulics.fluid(Season::Cold, leg.place)?;
    let conduit = design.conduits.get(leg.conduit)?;
    let (bore, length) = (bore_of(conduit)?, leg.length.get());
    let state = state_name(book, leg.place, Season::Cold);
    let line = [named(format!("part.{}.bore", conduit.id)), value(length)];
    let states = if fluid.is_newtonian() {
        vec!["viscosity", "density"]
    } else {
        vec!["yield", "consistency", "index"]
    };
    let states = states.into_iter().map(|what| named(format!("{state}.{what}")));
    let terms = line.iter().cloned().chain([named("pump.flow_limit")]).chain(states).collect();
    let relieving = format!("disc.relieving.line.{}", number + 1);
    let loss = leg_loss(&fluid, bore, length, free_flow(book), Pressure::ZERO);
    book.solved(relieving.clone(), loss, message!("solve-how-discharge"), terms);
    let stays = format!("disc.stays.line.{}", number + 1);
    let left = pipe_flow::start_pressure(bore, length, fluid.yield_stress);
    let terms = [line.to_vec(), vec![yield_term(&fluid, &state)]].concat();
    book.formula(stays.clone(), &pipe_flow::START_PRESSURE, left, terms);
    Some((named(relieving), named(stays)))
}

/// What the yield of the lubricant holds in the main, to the divider that lies farthest.
fn main_yield(book: &mut Book<'_>) -> Term {
    let design = book.known.design;
    let hydraulics = book.known.hydraulics;
    let mains = design.dividers.iter().filter_map(|d| hydraulics.path(Season::Cold, d.node, Flow::ZERO));
    let main = mains.map(|p| p.yielding).fold(Pressure::ZERO, Pressure::max);
    let terms = (0..design.points.len())
        .map(|p| named(format!("{}.residual", path_name(book, p, Season::Cold))))
        .collect();
    book.solved("disc.stays.main", main, message!("solve-how-main-yield"), terms);
    named("disc.stays.main")
}
