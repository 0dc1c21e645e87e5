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

#[cfg(test)]
mod tests {
    use oilway_model::OutletUse;
    use proptest::prelude::*;

    use super::*;
    use crate::testing::{catalogue, dairy, hall, point};
    use crate::{design, evaluate::point_nodes};

    #[test]
    fn nothing_is_lost_on_the_way_from_the_pump_to_the_points() {
        let design = design(&dairy(), catalogue()).unwrap();
        let shares = shares(&design);
        let delivered: Flow = point_nodes(&design).iter().map(|&n| shares.flow[n]).sum();
        assert!((delivered / (shares.first_cycle / shares.period) - 1.0).abs() < 1e-12);
        for divider in &design.dividers {
            let doses = doses(divider);
            let out: Volume = doses.fed.iter().map(|(_, v)| *v).sum();
            assert!((out / doses.cycle - 1.0).abs() < 1e-12, "{}", divider.name);
        }
    }

    #[test]
    fn a_joined_section_gives_both_volumes_and_a_bridge_the_sum() {
        let mut design = design(&hall(), catalogue()).unwrap();
        let divider = &mut design.dividers[0];
        let before = doses(divider);
        // The second outlet of the first section is joined to the first: its pin goes dry, the other gets both.
        divider.sections[0].right = OutletUse::WithOpposite;
        let joined = doses(divider);
        assert_eq!(joined.cycle, before.cycle);
        assert_eq!(joined.fed.len(), before.fed.len() - 1);
        assert!((joined.fed[0].1 / before.fed[0].1 - 2.0).abs() < 1e-12);
        // Led on to another section the same volume arrives there.
        divider.sections[0].left = OutletUse::Bridged(1, Side::Left);
        let bridged = doses(divider);
        assert_eq!(bridged.fed.len(), before.fed.len() - 2);
        assert!((bridged.fed[0].1 / before.fed[0].1 - 3.0).abs() < 1e-12);
    }

    #[test]
    fn open_outlets_and_circles_give_to_nobody_and_still_count() {
        let mut design = design(&hall(), catalogue()).unwrap();
        let divider = &mut design.dividers[0];
        let before = doses(divider);
        divider.sections[0].left = OutletUse::Open;
        divider.sections[0].right = OutletUse::Bridged(0, Side::Right);
        let after = doses(divider);
        assert_eq!(after.cycle, before.cycle);
        assert_eq!(after.fed.len(), before.fed.len() - 2);
        let shares = shares(&design);
        let delivered: Flow = point_nodes(&design).iter().map(|&n| shares.flow[n]).sum();
        assert!((delivered / (shares.first_cycle / shares.period) - 4.0 / 6.0).abs() < 1e-12);
    }

    /// Second route: the pistons turned one after the other, the secondaries by what arrives at them.
    fn turned(design: &Design, cycles: usize) -> Vec<f64> {
        let mut given = vec![0.0; design.network.nodes.len()];
        let mut state: Vec<(usize, f64)> = vec![(0, 0.0); design.dividers.len()];
        fn push(design: &Design, state: &mut [(usize, f64)], given: &mut [f64], node: usize, volume: f64) {
            given[node] += volume;
            let End::Divider(number) = design.network.nodes[node].end else { return };
            state[number].1 += volume;
            loop {
                let divider = &design.dividers[number];
                let stroke = state[number].0 % (2 * divider.sections.len());
                let section = stroke % divider.sections.len();
                let side = if stroke < divider.sections.len() { Side::Left } else { Side::Right };
                let volume = section_volume(&divider.sections[section]).cubic_millimetres();
                if state[number].1 + 1e-9 < volume {
                    return;
                }
                state[number].1 -= volume;
                state[number].0 += 1;
                if let Some(to) = target(divider, section, side) {
                    push(design, state, given, to, volume);
                }
            }
        }
        let root = design.network.nodes.iter().position(|n| n.parent == Some(0)).unwrap();
        let cycle = shares(design).first_cycle.cubic_millimetres();
        for _ in 0..cycles {
            push(design, &mut state, &mut given, root, cycle);
        }
        given
    }

    #[test]
    fn the_turning_pistons_of_the_whole_tree_give_the_same_shares() {
        let design = design(&dairy(), catalogue()).unwrap();
        let shares = shares(&design);
        let cycles = 4000;
        let given = turned(&design, cycles);
        for &node in &point_nodes(&design) {
            let by_shares = (shares.flow[node] * (shares.period * cycles as f64)).cubic_millimetres();
            assert!((given[node] / by_shares - 1.0).abs() < 0.01, "{}", design.network.nodes[node].name);
        }
    }

    proptest! {
        #[test]
        fn whatever_the_needs_the_flow_arrives(rates in proptest::collection::vec(0.02_f64..0.4, 6..10)) {
            let mut job = hall();
            let route = job.points[0].route.clone();
            job.points = rates
                .iter()
                .enumerate()
                .map(|(n, &rate)| point(&format!("pin {n}"), 0, 1, rate, route.clone()))
                .collect();
            let Ok(design) = design(&job, catalogue()) else { return Ok(()) };
            let shares = shares(&design);
            let delivered: Flow = point_nodes(&design).iter().map(|&n| shares.flow[n]).sum();
            prop_assert!((delivered / (shares.first_cycle / shares.period) - 1.0).abs() < 1e-12);
        }
    }
}
