//! Who gets what: the doses of every divider and the mean flows that follow, from the finished design alone.

use oilway_catalogue::kinds::Section as SectionPart;
use oilway_model::{Control, Design, Divider, End, OutletUse, Section, Side};
use oilway_units::{Flow, Time, Volume};

/// What one divider gives in a full cycle.
#[derive(Clone, Debug)]
pub struct Doses {
    /// Volume of the full cycle, lost outlets included.
    pub cycle: Volume,
    /// The node that each group of outlets feeds, and its volume, in the order of the nodes.
    pub fed: Vec<(usize, Volume)>,
}

/// Volume that each outlet of a section gives.
pub(crate) fn section_volume(section: &Section) -> Volume {
    SectionPart::of(&section.part).map_or(Volume::ZERO, |s| s.volume)
}

/// Follows an outlet to the node that it feeds; none if its volume is lost or goes round in a circle.
pub(crate) fn target(divider: &Divider, mut section: usize, mut side: Side) -> Option<usize> {
    // An outlet can be passed on at most once by each outlet of the divider.
    for _ in 0..=2 * divider.sections.len() {
        let here = divider.sections.get(section)?;
        let outlet = match side {
            Side::Left => &here.left,
            Side::Right => &here.right,
        };
        match outlet {
            OutletUse::To(node) => return Some(*node),
            OutletUse::WithOpposite => side = opposite(side),
            OutletUse::Bridged(other, their_side) => (section, side) = (*other, *their_side),
            OutletUse::Plugged | OutletUse::Open => return None,
        }
    }
    None
}

fn opposite(side: Side) -> Side {
    match side {
        Side::Left => Side::Right,
        Side::Right => Side::Left,
    }
}

/// The doses of a divider.
pub fn doses(divider: &Divider) -> Doses {
    let mut fed: Vec<(usize, Volume)> = Vec::new();
    let mut cycle = Volume::ZERO;
    for (number, section) in divider.sections.iter().enumerate() {
        let volume = section_volume(section);
        for side in [Side::Left, Side::Right] {
            cycle += volume;
            if let Some(node) = target(divider, number, side) {
                fed.push((node, volume));
            }
        }
    }
    fed.sort_by_key(|(node, _)| *node);
    fed.dedup_by(|next, kept| {
        let same = next.0 == kept.0;
        if same {
            kept.1 += next.1;
        }
        same
    });
    Doses { cycle, fed }
}

/// The mean flow that each node receives while the machine runs, and the dose behind it.
#[derive(Clone, Debug)]
pub struct Shares {
    /// Mean flow to each node.
    pub flow: Vec<Flow>,
    /// Volume that each node gets at one cycle of the divider above it.
    pub dose: Vec<Volume>,
    /// Volume of a full cycle of the first divider.
    pub first_cycle: Volume,
    /// Running time for one cycle of the first divider.
    pub period: Time,
}

/// Running time for one cycle of the first divider.
pub(crate) fn period(control: &Control) -> Time {
    control.pause / f64::from(control.cycles.max(1))
}

/// The shares of a design.
pub fn shares(design: &Design) -> Shares {
    let nodes = &design.network.nodes;
    let mut flow = vec![Flow::ZERO; nodes.len()];
    let mut dose = vec![Volume::ZERO; nodes.len()];
    let all: Vec<Doses> = design.dividers.iter().map(doses).collect();
    let period = period(&design.control);
    let mut first_cycle = Volume::ZERO;
    for (number, node) in nodes.iter().enumerate() {
        let End::Divider(divider) = node.end else { continue };
        let doses = &all[divider];
        if doses.cycle <= Volume::ZERO {
            continue;
        }
        if node.parent.is_none_or(|p| nodes[p].end == End::Pump) {
            first_cycle = doses.cycle;
            flow[number] = doses.cycle / period;
        }
        for &(fed, volume) in &doses.fed {
            dose[fed] = volume;
            flow[fed] = flow[number] * (volume / doses.cycle);
        }
    }
    Shares { flow, dose, first_cycle, period }
}
