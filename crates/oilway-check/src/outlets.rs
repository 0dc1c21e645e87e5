//! Where each outlet of each divider ends, followed by hand: through joined and bridged outlets to a line, a plug, the open, or
//! round in a circle.

use oilway_model::{Design, Divider, OutletUse, Side};
use oilway_physics::progressive;
use oilway_units::Volume;

use crate::views::Views;

/// What becomes of the volume of an outlet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Fate {
    /// It reaches the line to this node.
    Feeds(usize),
    /// It stands before a plug.
    Plugged,
    /// It spills.
    Open,
    /// It is led round and round.
    Circle,
    /// It is led to a section or a line that this divider does not have.
    Nowhere,
}

/// One outlet.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Outlet {
    pub(crate) section: usize,
    pub(crate) side: Side,
    pub(crate) fate: Fate,
}

/// What a divider gives in a full cycle.
#[derive(Clone, Debug)]
pub(crate) struct Meter {
    /// Every outlet, section by section, left before right.
    pub(crate) outlets: Vec<Outlet>,
    /// Volume of the full cycle; none where a section has no volume or there is none.
    pub(crate) cycle: Option<Volume>,
    /// Volume to each node that it feeds, in the order of the nodes.
    doses: Vec<(usize, Volume)>,
}

impl Meter {
    /// The volume that a node gets in a full cycle; none if no outlet leads there.
    pub(crate) fn dose(&self, node: usize) -> Option<Volume> {
        let at = self.doses.binary_search_by_key(&node, |(node, _)| *node).ok()?;
        Some(self.doses[at].1)
    }
    /// The nodes that get something.
    pub(crate) fn fed(&self) -> impl Iterator<Item = usize> + '_ {
        self.doses.iter().map(|(node, _)| *node)
    }
}

/// The meters of all dividers.
pub(crate) fn meters(design: &Design, views: &Views) -> Vec<Meter> {
    (0..design.dividers.len()).map(|number| meter(design, views, number)).collect()
}

fn meter(design: &Design, views: &Views, number: usize) -> Meter {
    let divider = &design.dividers[number];
    let outlets: Vec<Outlet> = (0..divider.sections.len())
        .flat_map(|section| [Side::Left, Side::Right].map(|side| (section, side)))
        .map(|(section, side)| Outlet { section, side, fate: fate(design, divider, section, side) })
        .collect();
    let volume = |section: usize| views.sections[number][section].as_ref().map(|s| s.volume);
    let sum: Option<Volume> = (0..divider.sections.len()).map(volume).sum::<Option<Volume>>();
    let cycle = sum.map(progressive::cycle_volume).filter(|cycle| *cycle > Volume::ZERO);
    let mut doses: Vec<(usize, Volume)> = Vec::new();
    for outlet in &outlets {
        let (Fate::Feeds(node), Some(volume)) = (outlet.fate, volume(outlet.section)) else { continue };
        match doses.iter_mut().find(|(fed, _)| *fed == node) {
            Some((_, dose)) => *dose += volume,
            None => doses.push((node, volume)),
        }
    }
    doses.sort_by_key(|(node, _)| *node);
    Meter { outlets, cycle, doses }
}

/// Follows one outlet to its end.
fn fate(design: &Design, divider: &Divider, section: usize, side: Side) -> Fate {
    let mut seen = Vec::new();
    let mut here = (section, side);
    loop {
        if seen.contains(&here) {
            return Fate::Circle;
        }
        seen.push(here);
        let Some(section) = divider.sections.get(here.0) else { return Fate::Nowhere };
        let outlet = if here.1 == Side::Left { &section.left } else { &section.right };
        match outlet {
            OutletUse::To(node) => return line(design, divider, *node),
            OutletUse::WithOpposite => here.1 = if here.1 == Side::Left { Side::Right } else { Side::Left },
            OutletUse::Bridged(section, side) => here = (*section, *side),
            OutletUse::Plugged => return Fate::Plugged,
            OutletUse::Open => return Fate::Open,
        }
    }
}

/// A line belongs to the outlet only if it begins at this divider.
fn line(design: &Design, divider: &Divider, node: usize) -> Fate {
    let begins_here = design.network.nodes.get(node).is_some_and(|n| n.parent == Some(divider.node));
    if begins_here { Fate::Feeds(node) } else { Fate::Nowhere }
}
