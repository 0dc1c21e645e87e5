//! What each point gets: its way from the pump, node by node, and the flow that is left of the pump's at every step.

use oilway_model::{Design, End};
use oilway_physics::progressive;
use oilway_units::{Flow, Time, Volume};

use crate::outlets::Meter;

/// Whether and how a point is served.
#[derive(Clone, Debug)]
pub(crate) enum Service {
    /// It gets this.
    Fed(Feed),
    /// No outlet leads to it: the divider that has none for it, if one is on the way.
    Unfed(Option<usize>),
    /// Its line parts at this node without anything that meters.
    Unmetered(usize),
    /// A volume on the way is not known.
    Unknown,
}

/// What a point gets.
#[derive(Clone, Debug)]
pub(crate) struct Feed {
    /// Volume at each cycle of its own divider.
    pub(crate) dose: Volume,
    /// Mean flow while the machine runs.
    pub(crate) rate: Flow,
    /// Mean flow through each node of its way, from the point to the pump.
    pub(crate) along: Vec<Flow>,
}

/// The way from a node to the pump, both included; none if it never gets there.
pub(crate) fn way(design: &Design, node: usize) -> Option<Vec<usize>> {
    let mut way = vec![node];
    let mut here = design.network.nodes.get(node)?;
    let mut at = node;
    while let Some(parent) = here.parent {
        // A parent stands before its children; anything else would go round in a circle.
        if parent >= at {
            return None;
        }
        way.push(parent);
        at = parent;
        here = design.network.nodes.get(parent)?;
    }
    (here.end == End::Pump).then_some(way)
}

/// The node of each point; none if it has none.
pub(crate) fn nodes_of_points(design: &Design) -> Vec<Option<usize>> {
    let mut nodes = vec![None; design.points.len()];
    for (number, node) in design.network.nodes.iter().enumerate() {
        if let End::Point(point) = node.end
            && let Some(slot) = nodes.get_mut(point)
        {
            *slot = Some(number);
        }
    }
    nodes
}

/// Running time for one cycle of the first divider; none where an event has no cycle.
pub(crate) fn period(design: &Design) -> Option<Time> {
    let cycles = design.control.cycles;
    (cycles > 0).then(|| design.control.pause / f64::from(cycles)).filter(|p| *p > Time::ZERO)
}

/// How many lines begin at each node.
pub(crate) fn branches(design: &Design) -> Vec<usize> {
    let mut branches = vec![0; design.network.nodes.len()];
    for parent in design.network.nodes.iter().filter_map(|node| node.parent) {
        if let Some(number) = branches.get_mut(parent) {
            *number += 1;
        }
    }
    branches
}

/// Follows the flow down a way, from the pump to the point.
pub(crate) fn service(design: &Design, meters: &[Meter], branches: &[usize], way: &[usize]) -> Service {
    let first = way.iter().rev().find_map(|&n| divider_at(design, n));
    let Some(first) = first else { return Service::Unfed(None) };
    let inflow = meters[first].cycle.zip(period(design)).map(|(cycle, period)| cycle / period);
    let Some(mut flow) = inflow else { return Service::Unknown };
    let mut dose = Volume::ZERO;
    let mut along = vec![Flow::ZERO; way.len()];
    for (step, pair) in way.windows(2).enumerate().rev() {
        let (to, from) = (pair[0], pair[1]);
        match design.network.nodes[from].end {
            End::Divider(divider) => {
                let Some(meter) = meters.get(divider) else { return Service::Unknown };
                let Some(volume) = meter.dose(to) else { return Service::Unfed(Some(divider)) };
                let Some(cycle) = meter.cycle else { return Service::Unknown };
                dose = volume;
                flow = progressive::delivered_rate(flow, volume, cycle);
            }
            _ if branches[from] > 1 => return Service::Unmetered(from),
            _ => {}
        }
        along[step] = flow;
    }
    if let Some(at_pump) = along.len().checked_sub(2).map(|before| along[before])
        && let Some(last) = along.last_mut()
    {
        *last = at_pump;
    }
    Service::Fed(Feed { dose, rate: flow, along })
}

/// The divider at a node, if it is one of the design.
pub(crate) fn divider_at(design: &Design, node: usize) -> Option<usize> {
    match design.network.nodes.get(node)?.end {
        End::Divider(divider) if divider < design.dividers.len() => Some(divider),
        _ => None,
    }
}
