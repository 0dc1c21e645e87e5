//! Overpressure: what can stand in the lines, what holds it off, and what each part stands.

use std::collections::BTreeMap;

use oilway_catalogue::kinds::{Drive, ShutOffValve};
use oilway_catalogue::{Part, Role};
use oilway_model::{Design, Device, Filling, Fluid, Leg, Season};
use oilway_physics::{disc, pipe_flow};
use oilway_units::{Flow, Length, Pressure, Ratio, Temperature};

use crate::source::{possible_air, possible_stall, stall};
use crate::views::Views;
use crate::walk::{Walk, friction};

/// A part that stands under the pump's pressure.
#[derive(Clone, Debug)]
pub(crate) struct Held {
    /// Where the first of its kind sits.
    pub(crate) at: String,
    /// The part's id.
    pub(crate) id: String,
    /// What it is.
    pub(crate) what: String,
    /// Its rating.
    pub(crate) rated: Pressure,
    /// How many times it occurs.
    pub(crate) times: usize,
}

/// A disc at its place.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Disc {
    pub(crate) lowest: Pressure,
    pub(crate) highest: Pressure,
    pub(crate) steady: Pressure,
    /// Burst at the coldest over burst at the mark.
    pub(crate) cold: Ratio,
    /// Burst at the hottest over burst at the mark.
    pub(crate) hot: Ratio,
}

/// The overpressure side of a design.
#[derive(Clone, Debug)]
pub(crate) struct Shield {
    /// Highest working pressure at the disc.
    pub(crate) working: Pressure,
    /// What a failed regulator and the highest air make of the pump.
    pub(crate) possible: Pressure,
    /// Parts under the pump's pressure, by part; those without a rating are left out.
    pub(crate) held: Vec<Held>,
    /// Burst band and steady maximum of the disc, if the design has one.
    pub(crate) disc: Option<Disc>,
    /// Whether disc and holder sit in a relief port with nothing between.
    pub(crate) in_place: bool,
    /// Lowest nominal that would live.
    pub(crate) window_low: Pressure,
    /// Highest nominal that would protect.
    pub(crate) window_high: Pressure,
    /// Pressure held while relieving.
    pub(crate) relieving: Option<Pressure>,
    /// Pressure that stays after the burst.
    pub(crate) stays: Option<Pressure>,
}

impl Shield {
    /// The weakest part.
    pub(crate) fn weakest(&self) -> Option<&Held> {
        self.held.iter().min_by(|a, b| a.rated.total_cmp(&b.rated).then_with(|| a.what.cmp(&b.what)))
    }
    /// The highest pressure that a part can come to see.
    pub(crate) fn highest(&self) -> Pressure {
        match &self.disc {
            Some(disc) if self.in_place => disc.highest,
            _ => self.possible,
        }
    }
}

/// Highest working pressure of the pump: an air-driven one stands at its stall whenever a line is shut, an electric one goes as
/// high as its paths ask, at most to its limit.
pub(crate) fn working(design: &Design, views: &Views, peak: Pressure) -> Pressure {
    match &views.pump {
        None => Pressure::ZERO,
        Some(pump) if pump.drive == Drive::Electric => peak.min(stall(pump, Pressure::ZERO)),
        Some(pump) => stall(pump, design.package.air_setting.unwrap_or(Pressure::ZERO)),
    }
}

/// The shield of a design whose paths ask at most `peak` and whose pump gives at most `flow`.
pub(crate) fn shield(
    design: &Design,
    views: &Views,
    walk: &Walk<'_>,
    mains: Pressure,
    peak: Pressure,
    flow: Flow,
) -> Shield {
    let held = held(design);
    let weakest = held.iter().map(|h| h.rated).fold(UNRATED, Pressure::min);
    let working = working(design, views, peak);
    let disc = disc_here(design, views);
    let (window_low, window_high) = window(views, disc.as_ref(), working, weakest);
    Shield {
        working,
        possible: views
            .pump
            .as_ref()
            .map_or(Pressure::ZERO, |pump| possible_stall(pump, possible_air(design))),
        disc,
        in_place: in_place(design),
        window_low,
        window_high,
        relieving: relief_path(design, views, walk, |fluid, bore, length, hole| {
            if hole && fluid.is_newtonian() {
                disc::hole_drop(bore, length, flow, fluid.density, fluid.viscosity())
            } else if hole {
                fluid.drop(bore, length + pipe_flow::end_length(bore), flow)
            } else {
                friction(fluid, bore, length, flow, Pressure::ZERO)
            }
        })
        .map(|loss| loss + views.holder.as_ref().and_then(|h| h.opens_at).unwrap_or_default()),
        stays: relief_path(design, views, walk, |fluid, bore, length, hole| {
            let end = if hole { pipe_flow::end_length(bore) } else { Length::ZERO };
            pipe_flow::start_pressure(bore, length + end, fluid.yield_stress)
        })
        .map(|held| held + mains),
        held,
    }
}

/// What stands for "no rating found": nothing in the trade comes near it.
const UNRATED: Pressure = Pressure::from_bar(1e4);

/// Window figures where no disc is chosen: tolerance of the rule, operating ratio of a plain metal disc (`api-520-1`, memory).
const PLAIN: (Ratio, Ratio) = (Ratio::from_percent(5.0), Ratio::from_fraction(0.70));

fn window(views: &Views, here: Option<&Disc>, working: Pressure, weakest: Pressure) -> (Pressure, Pressure) {
    let one = Ratio::from_fraction(1.0);
    let (ratio, tolerance, hot, cold, plus, minus) = match (&views.disc, here) {
        (Some(d), Some(here)) => (d.ratio, d.tolerance, here.hot, here.cold, d.range_plus, d.range_minus),
        _ => (PLAIN.1, PLAIN.0, one, one, Ratio::ZERO, Ratio::ZERO),
    };
    (
        disc::window_low(working, Pressure::ZERO, ratio, tolerance, hot, minus),
        disc::window_high(weakest, Pressure::ZERO, tolerance, cold, plus),
    )
}

/// The temperatures that the disc can have: those of its place, and warmer by what the package adds.
pub(crate) fn disc_temperatures(design: &Design) -> Option<(Temperature, Temperature)> {
    let place = design.conditions.places.get(design.package.place)?;
    let warmer = design.conditions.practice.disc_warmer.get();
    Some((place.temperature(Season::Cold), place.temperature(Season::Hot).plus(warmer)))
}

fn disc_here(design: &Design, views: &Views) -> Option<Disc> {
    let data = views.disc.as_ref()?;
    let (coldest, hottest) = disc_temperatures(design)?;
    let factor = |at| disc::linear_temperature_factor(at, data.marked_at, data.below, data.above);
    let (one, other) = (factor(coldest), factor(hottest));
    let (cold, hot) = if one >= other { (one, other) } else { (other, one) };
    let lowest = disc::lowest_burst(data.nominal, data.range_minus, data.tolerance, hot);
    let highest = disc::highest_burst(data.nominal, data.range_plus, data.tolerance, cold);
    Some(Disc { lowest, highest, steady: disc::steady_maximum(lowest, data.ratio), cold, hot })
}

/// The pressure along hole and discharge line on the coldest day, by a law of lubricant, bore and length.
fn relief_path(
    design: &Design,
    views: &Views,
    walk: &Walk<'_>,
    law: impl Fn(&Fluid, Length, Length, bool) -> Pressure,
) -> Option<Pressure> {
    let holder = views.holder.as_ref()?;
    let fluid = walk.fluid(Season::Cold, design.package.place)?;
    let mut sum = law(fluid, holder.hole, holder.land, true);
    for leg in &design.package.discharge {
        sum += law(walk.fluid(Season::Cold, leg.place)?, walk.bore(leg)?, leg.length.get(), false);
    }
    Some(sum)
}

/// The role of a device's port.
pub(crate) fn role(device: &Device) -> Option<Role> {
    device.of.ports.iter().find(|port| port.mark == device.mark).map(|port| port.role)
}

/// The relief ports of the package.
pub(crate) fn relief_ports(design: &Design) -> impl Iterator<Item = &Device> {
    design.package.devices.iter().filter(|device| role(device) == Some(Role::Relief))
}

/// Whether something that shuts stands between the pump and this port.
pub(crate) fn is_shut_off(device: &Device) -> bool {
    let shuts =
        |filling: &Filling| matches!(filling, Filling::Part(part) if ShutOffValve::of(part).is_some());
    device.behind_shut_off || device.holds.iter().any(shuts)
}

/// Whether a port holds this part.
pub(crate) fn holds(device: &Device, wanted: &Part) -> bool {
    device.holds.iter().any(|filling| matches!(filling, Filling::Part(part) if part.id == wanted.id))
}

fn in_place(design: &Design) -> bool {
    let package = &design.package;
    let (Some(_), Some(holder)) = (&package.disc, &package.holder) else { return false };
    relief_ports(design).any(|device| holds(device, holder) && !is_shut_off(device))
}

/// Every part under the pump's pressure, each kind of part once.
fn held(design: &Design) -> Vec<Held> {
    let mut all: Vec<Held> = Vec::new();
    // Most parts of a large design are few articles many times over: each is looked at once.
    let mut seen: BTreeMap<*const Part, Option<usize>> = BTreeMap::new();
    let mut add = |at: &dyn Fn() -> String, part: &Part| {
        let known = seen.entry(part).or_insert_with(|| {
            let rated = part.kind.rating(part)?;
            let before = all.iter().position(|held| held.id == part.id && held.rated == rated);
            Some(before.unwrap_or_else(|| {
                let (id, what) = (part.id.clone(), named(part).to_owned());
                all.push(Held { at: at(), id, what, rated, times: 0 });
                all.len() - 1
            }))
        });
        if let Some(held) = known.and_then(|number| all.get_mut(number)) {
            held.times += 1;
        }
    };
    for node in &design.network.nodes {
        for (number, leg) in node.legs.iter().enumerate() {
            if let Some(part) = design.conduits.get(leg.conduit) {
                add(&|| leg_name(&node.name, number), part);
            }
        }
    }
    for divider in &design.dividers {
        add(&|| format!("divider.{}", divider.name), &divider.body);
    }
    for joint in &design.joints {
        for part in &joint.parts {
            add(&|| joint.at.clone(), part);
        }
    }
    add(&|| "package.pump".to_owned(), &design.package.pump);
    add(&|| "package.block".to_owned(), &design.package.block);
    for device in design.package.devices.iter().filter(|device| device.sees_pressure()) {
        for filling in &device.holds {
            if let Filling::Part(part) = filling {
                add(&|| port_name(device), part);
            }
        }
    }
    all
}

/// A part's description inside a sentence.
pub(crate) fn named(part: &Part) -> &str {
    part.description.trim_end_matches('.')
}

/// The name of a leg: `line.washer.2`.
pub(crate) fn leg_name(node: &str, number: usize) -> String {
    format!("line.{node}.{}", number + 1)
}

/// The name of a port: `port.10052.gauge`.
pub(crate) fn port_name(device: &Device) -> String {
    format!("port.{}.{}", device.of.id, device.mark)
}

/// The legs of the whole tree with their names.
pub(crate) fn legs(design: &Design) -> impl Iterator<Item = (String, &Leg)> {
    design.network.nodes.iter().flat_map(|node| {
        node.legs.iter().enumerate().map(|(number, leg)| (leg_name(&node.name, number), leg))
    })
}
