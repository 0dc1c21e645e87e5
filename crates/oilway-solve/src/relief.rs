//! The overpressure window of a finished design, and what its relief path holds.

use std::collections::BTreeSet;
use std::sync::Arc;

use oilway_catalogue::Part;
use oilway_catalogue::kinds::{DiscHolder, Drive, Pump};
use oilway_model::{Design, Filling, Protection, Season, SeasonResult};
use oilway_physics::{disc, pipe_flow};
use oilway_units::{Flow, Pressure, Ratio};

use crate::hydraulics::{Hydraulics, bore_of, leg_loss};
use crate::protection::DiscHere;
use crate::source;

/// Highest working pressure at the disc: an air-driven pump stands against a shut line at its stall pressure, an electric one
/// goes no higher than the worst path asks.
pub(crate) fn working(design: &Design, seasons: &[SeasonResult]) -> Pressure {
    let Some(pump) = Pump::of(&design.package.pump) else { return Pressure::ZERO };
    if pump.drive.is_air() {
        return source::stall(&pump, design.package.air_setting.unwrap_or(Pressure::ZERO));
    }
    let limit = source::stall(&pump, Pressure::ZERO);
    let peaks = seasons.iter().flat_map(|s| &s.paths).map(|p| p.start_rested.max(p.at_pump));
    peaks.fold(Pressure::ZERO, Pressure::max).min(limit)
}

/// Every part that the disc must protect, each once, from the lines to the package.
pub(crate) fn protected(design: &Design) -> Vec<Arc<Part>> {
    let mut all: Vec<Arc<Part>> = Vec::new();
    let mut seen: BTreeSet<&str> = BTreeSet::new();
    let package = &design.package;
    let legs = design.network.nodes.iter().flat_map(|n| &n.legs);
    let mut in_use = vec![false; design.conduits.len()];
    legs.for_each(|leg| in_use.iter_mut().skip(leg.conduit).take(1).for_each(|used| *used = true));
    let lines = design.conduits.iter().zip(&in_use).filter(|(_, used)| **used).map(|(part, _)| part);
    let bodies = design.dividers.iter().map(|d| &d.body);
    let joints = design.joints.iter().flat_map(|j| &j.parts);
    let held =
        package.devices.iter().filter(|d| d.sees_pressure()).flat_map(|d| &d.holds).filter_map(|f| match f {
            Filling::Part(part) => Some(part),
            Filling::OpenByIntent(_) | Filling::Nothing => None,
        });
    for part in lines.chain(bodies).chain(joints).chain([&package.pump, &package.block]).chain(held) {
        if seen.insert(&part.id) {
            all.push(Arc::clone(part));
        }
    }
    all
}

/// The weakest of them and its rating; of equals the one that comes first on the way from the lines to the package.
fn weakest(design: &Design) -> (String, Pressure) {
    let rated = protected(design).into_iter().filter_map(|part| Some((part.kind.rating(&part)?, part)));
    let weakest = rated.min_by(|a, b| a.0.total_cmp(&b.0));
    weakest
        .map_or((String::new(), Pressure::from_bar(1e4)), |(rating, part)| (part.description.clone(), rating))
}

/// The window.
pub(crate) fn protection(
    design: &Design,
    hydraulics: &Hydraulics<'_>,
    seasons: &[SeasonResult],
) -> Protection {
    let working = working(design, seasons);
    let weakest = weakest(design);
    let here =
        design.package.disc.as_ref().and_then(|d| DiscHere::new(d, &design.conditions, design.package.place));
    let (window_low, window_high) = window(here.as_ref(), working, weakest.1);
    let flow = seasons.iter().map(|s| s.pump.flow_limit).fold(Flow::ZERO, Flow::max);
    let setting = here.as_ref().and_then(|d| highest_setting(design, d));
    Protection {
        working,
        lowest_burst: here.as_ref().map(|d| d.lowest),
        highest_burst: here.as_ref().map(|d| d.highest),
        steady_maximum: here.as_ref().map(|d| d.steady),
        window_low,
        window_high,
        weakest,
        relieving: relieving(design, hydraulics, flow),
        stays: stays(design, hydraulics),
        highest_setting: setting,
    }
}

/// The tolerance, ratio and factors where no disc is chosen yet: 5 %, 0.70, no range, no temperature.
pub(crate) const NO_DISC: (f64, f64) = (0.05, 0.70);

fn window(here: Option<&DiscHere>, working: Pressure, rating: Pressure) -> (Pressure, Pressure) {
    let one = Ratio::from_fraction(1.0);
    let (tolerance, ratio, hot, cold, plus, minus) = here.map_or(
        (
            Ratio::from_fraction(NO_DISC.0),
            Ratio::from_fraction(NO_DISC.1),
            one,
            one,
            Ratio::ZERO,
            Ratio::ZERO,
        ),
        |d| {
            (
                d.data.tolerance,
                d.data.ratio,
                d.hot_factor,
                d.cold_factor,
                d.data.range_plus,
                d.data.range_minus,
            )
        },
    );
    let low = disc::window_low(working, Pressure::ZERO, ratio, tolerance, hot, minus);
    let high = disc::window_high(rating, Pressure::ZERO, tolerance, cold, plus);
    (low, high)
}

/// The highest air setting at which the pump stalls at the disc's steady maximum.
fn highest_setting(design: &Design, disc: &DiscHere) -> Option<Pressure> {
    let pump = Pump::of(&design.package.pump)?;
    if pump.drive == Drive::Electric {
        return None;
    }
    let per_bar = source::stall(&pump, Pressure::from_bar(1.0)).bar();
    let exact = disc.steady.bar() / per_bar.max(1e-9);
    let step = design.package.regulator.as_ref().and_then(|part| part.quantity::<Pressure>("step"));
    Some(Pressure::from_bar(step.map_or(exact, |s| libm::floor(exact / s.bar() + 1e-9) * s.bar())))
}

/// The pressure that the pump holds while the disc is open and the pump runs free: hole, discharge line, indicator.
fn relieving(design: &Design, hydraulics: &Hydraulics<'_>, flow: Flow) -> Option<Pressure> {
    let holder = DiscHolder::of(design.package.holder.as_ref()?)?;
    let fluid = hydraulics.fluid(Season::Cold, design.package.place)?;
    let hole = if fluid.is_newtonian() {
        disc::hole_drop(holder.hole, holder.land, flow, fluid.density, fluid.viscosity())
    } else {
        fluid.drop(holder.hole, holder.land + pipe_flow::end_length(holder.hole), flow)
    };
    let line: Pressure = design
        .package
        .discharge
        .iter()
        .filter_map(|leg| {
            let bore = bore_of(design.conduits.get(leg.conduit)?)?;
            Some(leg_loss(
                hydraulics.fluid(Season::Cold, leg.place)?,
                bore,
                leg.length.get(),
                flow,
                Pressure::ZERO,
            ))
        })
        .sum();
    Some(hole + line + holder.opens_at.unwrap_or_default())
}

/// The pressure that stays at the far end of the main after the disc has burst and the pump has stopped: the yield of the
/// lubricant holds it in hole, discharge line and main alike.
fn stays(design: &Design, hydraulics: &Hydraulics<'_>) -> Option<Pressure> {
    let holder = DiscHolder::of(design.package.holder.as_ref()?)?;
    let fluid = hydraulics.fluid(Season::Cold, design.package.place)?;
    let hole = pipe_flow::start_pressure(
        holder.hole,
        holder.land + pipe_flow::end_length(holder.hole),
        fluid.yield_stress,
    );
    let line: Pressure = design
        .package
        .discharge
        .iter()
        .filter_map(|leg| {
            let bore = bore_of(design.conduits.get(leg.conduit)?)?;
            Some(pipe_flow::start_pressure(
                bore,
                leg.length.get(),
                hydraulics.fluid(Season::Cold, leg.place)?.yield_stress,
            ))
        })
        .sum();
    let mains = design.dividers.iter().filter_map(|d| hydraulics.path(Season::Cold, d.node, Flow::ZERO));
    let main = mains.map(|p| p.yielding).fold(Pressure::ZERO, Pressure::max);
    Some(hole + line + main)
}
