//! The order of the work, from a job to a design.
//!
//! Needs ask for the content of the tails, tails for the bores, bores for the flow and so for the metering, and the
//! metering for the needs: a short round that is walked until the bores no longer change.

use std::sync::Arc;

use oilway_catalogue::{Catalogue, Part};
use oilway_model::{
    Control, Design, Divider, Feed as FedBy, Job, Leg, Mounting, Network, OutletUse, Package, Reason, Section,
    Side,
};
use oilway_physics::{Ledger, pipe_flow};
use oilway_text::{Message, message};
use oilway_units::{Entry, Length, Pressure, Volume};

use crate::control::{control, time_out};
use crate::equipment::{block, controller, gauge, holder, valve};
use crate::evaluate::evaluate;
use crate::joints::{Joiner, joints};
use crate::layout::{Layout, layout, leg_kept};
use crate::lines::{Bores, Losses};
use crate::metering::Feed;
use crate::need::needs;
use crate::package::{Power, power, reservoir};
use crate::tree::{FedConsumer, Metered, Served, TreeMetering, meter, sections_kept};
use crate::{Obstacle, ports};

/// Rounds after which the last bores are kept: the needs only grow with the tails, and bores come from a short list.
const ROUNDS: usize = 5;
/// Tube cut off at each leg: saw, bend and end. Common practice, no source.
const CUTTING: Length = Length::from_millimetres(100.0);
/// Spare discs in the bag (`relief` section 10, common practice).
const SPARE_DISCS: u32 = 2;

/// Designs a job: every open choice is made, every given one kept.
///
/// # Errors
/// All obstacles that leave no design at all: no divider or section that serves, no part of a kind that is needed. A design that
/// works badly is still returned; the checker says so.
pub fn design(job: &Job, catalogue: &Catalogue) -> Result<Design, Vec<Obstacle>> {
    refuse_what_is_no_tree(job)?;
    let layout = layout(job, catalogue)?;
    let block = block(job, catalogue).ok_or_else(|| vec![missing("package.block", "port block")])?;
    let mut bores: Option<Bores> = None;
    let mut found = None;
    for _ in 0..ROUNDS {
        let tails = tails(&layout, bores.as_ref());
        let needs = needs(&job.conditions, &job.points, &tails, &mut Ledger::off());
        let metering = meter(job, catalogue, &needs)?;
        let control = control(job, metering.period);
        let root = root_of(job, &metering);
        let flow = root * f64::from(control.cycles) / job.conditions.limits.event_time.get();
        let losses = Losses::new(job, &layout, &metering, flow).ok_or_else(|| vec![no_viscosity_line()])?;
        let power = power(job, catalogue, &layout, &metering, &losses, &block)
            .ok_or_else(|| vec![missing("package.pump", "pump")])?;
        let settled = bores.as_ref().is_some_and(|b| b.chosen == power.bores.chosen);
        bores = Some(power.bores.clone());
        found = Some((metering, control, power));
        if settled {
            break;
        }
    }
    let (metering, control, power) = found.ok_or_else(|| vec![missing("package.pump", "pump")])?;
    assemble(job, catalogue, &layout, &metering, control, &power, block)
}

fn missing(at: &str, kind: &str) -> Obstacle {
    Obstacle { at: at.to_owned(), what: message!("solve-none-in-catalogue", kind = kind), cure: message!("solve-add-part") }
}

fn no_viscosity_line() -> Obstacle {
    Obstacle { at: "lubricant".to_owned(), what: message!("solve-no-viscosity-line"), cure: message!("solve-cure-viscosity-line") }
}

fn refuse_what_is_no_tree(job: &Job) -> Result<(), Vec<Obstacle>> {
    let mut obstacles = Vec::new();
    let roots = job.dividers.iter().filter(|d| d.fed_by == FedBy::Pump).count();
    if roots != 1 {
        obstacles.push(Obstacle {
            at: "divider".to_owned(),
            what: message!("solve-one-first-divider", found = roots),
            cure: message!("solve-cure-one-first-divider"),
        });
    }
    let late = job.dividers.iter().enumerate().filter(|(number, d)| matches!(d.fed_by, FedBy::Divider(above) if above >= *number));
    for (_, divider) in late {
        obstacles.push(Obstacle {
            at: format!("divider.{}", divider.name),
            what: message!("solve-divider-order"),
            cure: message!("solve-cure-divider-order"),
        });
    }
    if job.points.is_empty() {
        obstacles.push(Obstacle { at: "point".to_owned(), what: message!("solve-no-points"), cure: message!("solve-cure-no-points") });
    }
    if obstacles.is_empty() { Ok(()) } else { Err(obstacles) }
}

/// Content of each point's own line; with the narrowest candidates before any bore is chosen.
fn tails(layout: &Layout, bores: Option<&Bores>) -> Vec<Volume> {
    layout
        .point_nodes
        .iter()
        .map(|&node| {
            let legs = layout.network.nodes[node].legs.iter().enumerate();
            legs.map(|(number, leg)| {
                let pick = bores.map_or(0, |b| b.chosen[node][number]);
                pipe_flow::line_content(layout.conduits[layout.candidates[node][number][pick]].bore, leg.length.get())
            })
            .sum()
        })
        .collect()
}

fn root_of(job: &Job, metering: &TreeMetering) -> Volume {
    let root = job.dividers.iter().position(|d| d.fed_by == FedBy::Pump);
    root.map_or(Volume::ZERO, |r| metering.dividers[r].cycle)
}

fn assemble(
    job: &Job, catalogue: &Catalogue, layout: &Layout, metering: &TreeMetering, control: Control, power: &Power,
    block: Arc<Part>,
) -> Result<Design, Vec<Obstacle>> {
    let use_rate = root_of(job, metering) / metering.period;
    let (vessel, why_vessel) = reservoir(job, catalogue, use_rate).ok_or_else(|| vec![missing("package.reservoir", "reservoir")])?;
    let mut lines = Lines::default();
    let network = lines.network(layout, &power.bores);
    let dividers = dividers(job, layout, metering);
    let stall = oilway_catalogue::kinds::Pump::of(&power.pump)
        .map_or(Pressure::ZERO, |p| crate::source::stall(&p, power.setting.unwrap_or(Pressure::ZERO)));
    let highest = power.disc.as_ref().map_or(stall, |d| d.highest);
    let disc = power.disc.as_ref().map(|d| Arc::clone(&d.part));
    let package = Package {
        place: job.package.place,
        pump: Arc::clone(&power.pump),
        reservoir: vessel,
        block,
        mounting: lines.mounting(job, layout),
        valve: valve(job, catalogue, &power.pump),
        regulator: power.regulator.clone(),
        air_setting: power.setting,
        holder: holder(job, catalogue, disc.as_deref()),
        disc,
        discharge: lines.discharge(job, layout),
        gauge: gauge(job, catalogue, stall, highest),
        controller: controller(job, catalogue),
        devices: Vec::new(),
        spare_discs: SPARE_DISCS,
    };
    let mut design = Design {
        name: job.name.clone(),
        units: job.units,
        conditions: job.conditions.clone(),
        points: job.points.clone(),
        network,
        conduits: lines.parts,
        dividers,
        package,
        control,
        joints: Vec::new(),
        reasons: Vec::new(),
        cutting_allowance: Entry::known(CUTTING),
    };
    let mut joiner = Joiner::new(catalogue);
    design.package.devices = ports::plan(&design, catalogue, &mut joiner);
    design.joints = joints(&design, &mut joiner);
    design.control.time_out = time_out(&design, &evaluate(&design, &mut Ledger::off()).seasons);
    design.reasons = reasons(job, &design, metering, power, why_vessel);
    Ok(design)
}

/// Collects the conduits that are really used.
#[derive(Default)]
struct Lines {
    parts: Vec<Arc<Part>>,
}

impl Lines {
    fn number(&mut self, part: &Arc<Part>) -> usize {
        if let Some(at) = self.parts.iter().position(|p| p.id == part.id) {
            return at;
        }
        self.parts.push(Arc::clone(part));
        self.parts.len() - 1
    }

    fn network(&mut self, layout: &Layout, bores: &Bores) -> Network {
        let mut network = layout.network.clone();
        for (number, node) in network.nodes.iter_mut().enumerate() {
            for (leg_number, leg) in node.legs.iter_mut().enumerate() {
                let pick = bores.chosen[number][leg_number];
                let conduit = layout.candidates[number][leg_number][pick];
                leg.conduit = self.number(&layout.conduits[conduit].part);
            }
        }
        network
    }

    /// The inlet line takes the widest line there is unless the job gives another: suction forgives nothing.
    fn mounting(&mut self, job: &Job, layout: &Layout) -> Mounting {
        if !job.package.remote.chosen().copied().unwrap_or(!job.package.inlet.is_empty()) {
            return Mounting::OnReservoir;
        }
        let legs = job.package.inlet.iter().filter_map(|wish| {
            let given = wish.conduit.chosen().and_then(|id| layout.conduits.iter().find(|c| c.part.id == *id));
            let widest = || layout.conduits.iter().rev().find(|c| c.flexible == wish.flexible);
            let conduit = given.or_else(widest)?;
            Some(Leg { place: wish.place, length: wish.length, rise: wish.rise, conduit: self.number(&conduit.part) })
        });
        Mounting::Remote(legs.collect())
    }

    /// The discharge line: wide, for with grease the line and not the hole decides what the relief holds.
    fn discharge(&mut self, job: &Job, layout: &Layout) -> Vec<Leg> {
        let Some(length) = job.package.discharge else { return Vec::new() };
        let Some(conduit) = layout.conduits.iter().rev().find(|c| !c.flexible) else { return Vec::new() };
        vec![Leg { place: job.package.place, length, rise: crate::layout::no_length(), conduit: self.number(&conduit.part) }]
    }
}

fn dividers(job: &Job, layout: &Layout, metering: &TreeMetering) -> Vec<Divider> {
    metering
        .dividers
        .iter()
        .enumerate()
        .map(|(number, metered)| {
            let node_of = |served: Served| match served {
                Served::Point(p) => layout.point_nodes[p],
                Served::Divider(d) => layout.divider_nodes[d],
            };
            Divider {
                name: job.dividers[number].name.clone(),
                node: layout.divider_nodes[number],
                place: job.dividers[number].place,
                body: Arc::clone(&metered.body),
                sections: match &metered.given {
                    Some(given) => given_sections(job, metered, given, &node_of),
                    None => sections(metered, &node_of),
                },
                cycle_switch: metered.body.flag("cycle_switch"),
            }
        })
        .collect()
}

/// Sections as the job gives them, in its order.
fn given_sections(
    job: &Job, metered: &Metered, given: &[oilway_model::SectionWish], node_of: &dyn Fn(Served) -> usize,
) -> Vec<Section> {
    let node = |name: &str| {
        let point = job.points.iter().position(|p| p.name == name).map(Served::Point);
        let divider = || job.dividers.iter().position(|d| d.name == name).map(Served::Divider);
        point.or_else(divider).map(node_of)
    };
    let mut first: Vec<(String, (usize, Side))> = Vec::new();
    let mut sections = Vec::with_capacity(given.len());
    for (here, wish) in given.iter().enumerate() {
        let Some(part) = metered.sizes.iter().find(|p| p.id == wish.part) else { continue };
        let mut outlet = |name: Option<&String>, side: Side| {
            let Some((name, node)) = name.and_then(|n| Some((n, node(n)?))) else { return OutletUse::Open };
            if let Some((_, (section, its_side))) = first.iter().find(|(known, _)| known == name) {
                return OutletUse::Bridged(*section, *its_side);
            }
            first.push((name.clone(), (here, side)));
            OutletUse::To(node)
        };
        let left = outlet(wish.serves.first(), Side::Left);
        let right = if wish.serves.len() == 1 { OutletUse::WithOpposite } else { outlet(wish.serves.get(1), Side::Right) };
        sections.push(Section { part: Arc::clone(part), left, right });
    }
    sections
}

/// Sections in building order: joined ones first, then pairs of single outlets, each by falling size.
fn sections(metered: &Metered, node_of: &dyn Fn(Served) -> usize) -> Vec<Section> {
    let mut sections: Vec<Section> = Vec::new();
    // The outlet to which further outlets of the same consumer are led.
    let mut first_outlet: Vec<Option<(usize, Side)>> = vec![None; metered.fed.len()];
    for size in (0..metered.sizes.len()).rev() {
        let joined = metered.fed.iter().filter(|f| f.feed == Feed::Joined(size));
        for consumer in joined {
            sections.push(Section {
                part: Arc::clone(&metered.sizes[size]),
                left: OutletUse::To(node_of(consumer.served)),
                right: OutletUse::WithOpposite,
            });
        }
        let singles: Vec<usize> = metered.fed.iter().enumerate().flat_map(|(number, f)| singles_of(number, f, size)).collect();
        for pair in singles.chunks(2) {
            let here = sections.len();
            let mut outlet = |consumer: usize, side: Side| match first_outlet[consumer] {
                Some((section, its_side)) => OutletUse::Bridged(section, its_side),
                None => {
                    first_outlet[consumer] = Some((here, side));
                    OutletUse::To(node_of(metered.fed[consumer].served))
                }
            };
            let left = outlet(pair[0], Side::Left);
            let right = pair.get(1).map_or(OutletUse::Open, |&c| outlet(c, Side::Right));
            sections.push(Section { part: Arc::clone(&metered.sizes[size]), left, right });
        }
    }
    sections
}

/// The single outlets of a size that a consumer takes, once for each.
fn singles_of(number: usize, fed: &FedConsumer, size: usize) -> Vec<usize> {
    match &fed.feed {
        Feed::One(s) if *s == size => vec![number],
        Feed::Teed(sizes) => sizes.iter().filter(|s| **s == size).map(|_| number).collect(),
        Feed::One(_) | Feed::Joined(_) => Vec::new(),
    }
}

fn reasons(job: &Job, design: &Design, metering: &TreeMetering, power: &Power, why_vessel: Message) -> Vec<Reason> {
    let mut all = Vec::new();
    let mut add = |at: String, chosen: String, kept: bool, why: Message| {
        let why = if kept { message!("solve-kept") } else { why };
        all.push(Reason { at, chosen, kept, why });
    };
    let wish = &job.package;
    let package = &design.package;
    let id = |part: Option<&Arc<Part>>| part.map_or(String::new(), |p| p.id.clone());
    add("package.pump".into(), package.pump.id.clone(), !wish.pump.is_open(), power.why.clone());
    add("package.reservoir".into(), package.reservoir.id.clone(), !wish.reservoir.is_open(), why_vessel);
    add("package.block".into(), package.block.id.clone(), !wish.block.is_open(), message!("solve-why-block"));
    let optional = [
        ("package.valve", package.valve.as_ref(), wish.valve.is_open(), message!("solve-why-valve")),
        ("package.disc", package.disc.as_ref(), wish.disc.is_open(), power.why.clone()),
        ("package.holder", package.holder.as_ref(), wish.holder.is_open(), message!("solve-why-holder")),
        ("package.gauge", package.gauge.as_ref(), wish.gauge.is_open(), message!("solve-why-gauge")),
        ("package.controller", package.controller.as_ref(), wish.controller.is_open(), message!("solve-why-controller")),
    ];
    for (at, part, open, why) in optional {
        if part.is_some() {
            add(at.into(), id(part), !open, why);
        }
    }
    if let Some(setting) = package.air_setting {
        let chosen = format!("{} bar", libm::round(setting.bar() * 1e6) / 1e6);
        add("package.regulator".into(), chosen, !wish.regulator.is_open(), power.why.clone());
    }
    for ((divider, wish), metered) in design.dividers.iter().zip(&job.dividers).zip(&metering.dividers) {
        let at = format!("divider.{}", divider.name);
        add(format!("{at}.part"), divider.body.id.clone(), !wish.part.is_open(), message!("solve-why-divider"));
        let why = match (metered.widened > 1.0, metered.teed) {
            (true, _) => message!("solve-why-sections-widened", factor = metered.widened),
            (false, true) => message!("solve-why-sections-teed"),
            (false, false) => message!("solve-why-sections"),
        };
        add(format!("{at}.sections"), sections_text(design, divider), sections_kept(&wish.sections), why);
    }
    for (number, node) in design.network.nodes.iter().enumerate() {
        for (leg_number, leg) in node.legs.iter().enumerate() {
            let kept = leg_wish(job, design, number, leg_number).is_some_and(leg_kept);
            let part = design.conduits[leg.conduit].id.clone();
            add(format!("line.{}.{}.conduit", node.name, leg_number + 1), part, kept, message!("solve-why-line"));
        }
    }
    let pause = format!("{} min", libm::round(design.control.pause.minutes() * 1e6) / 1e6);
    add("pause".into(), pause, !job.pause.is_open(), message!("solve-why-pause"));
    all
}

fn leg_wish<'a>(job: &'a Job, design: &Design, node: usize, leg: usize) -> Option<&'a oilway_model::LegWish> {
    match design.network.nodes[node].end {
        oilway_model::End::Divider(d) => job.dividers.get(d)?.route.get(leg),
        oilway_model::End::Point(p) => job.points.get(p)?.route.get(leg),
        _ => None,
    }
}

/// The sections as the lock file holds them: `10011: washer | 10010: table, stacker`.
fn sections_text(design: &Design, divider: &Divider) -> String {
    let name = |outlet: &OutletUse| outlet_name(design, divider, outlet);
    let of_section = |section: &Section| {
        let served: Vec<String> = match (&section.left, &section.right) {
            (left, OutletUse::WithOpposite) => vec![name(left)],
            (OutletUse::WithOpposite, right) => vec![name(right)],
            (left, right) => vec![name(left), name(right)],
        };
        format!("{}: {}", section.part.id, served.join(", "))
    };
    divider.sections.iter().map(of_section).collect::<Vec<_>>().join(" | ")
}

fn outlet_name(design: &Design, divider: &Divider, outlet: &OutletUse) -> String {
    match outlet {
        OutletUse::To(node) => design.network.nodes[*node].name.clone(),
        OutletUse::Bridged(section, side) => {
            let there = divider.sections.get(*section);
            let outlet = there.map(|s| if *side == Side::Left { &s.left } else { &s.right });
            match outlet {
                Some(OutletUse::To(node)) => design.network.nodes[*node].name.clone(),
                _ => String::new(),
            }
        }
        OutletUse::WithOpposite | OutletUse::Plugged | OutletUse::Open => String::new(),
    }
}
