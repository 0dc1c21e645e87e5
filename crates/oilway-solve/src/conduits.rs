//! The tubes and hoses that a design really uses, and the lines beside the network: inlet and discharge.

use std::sync::Arc;

use oilway_catalogue::{Part, Role};
use oilway_model::{Job, JointEnd, Leg, Mounting, Network};

use crate::equipment::{end_of, is_remote};
use crate::joints::{Joiner, conduit_end};
use crate::layout::{Conduit, Layout, no_length};
use crate::lines::Bores;

/// Collects the conduits that are used, each once.
#[derive(Default)]
pub(crate) struct Conduits {
    /// The parts, in the order of their first use.
    pub parts: Vec<Arc<Part>>,
}

impl Conduits {
    fn number(&mut self, part: &Arc<Part>) -> usize {
        if let Some(at) = self.parts.iter().position(|p| p.id == part.id) {
            return at;
        }
        self.parts.push(Arc::clone(part));
        self.parts.len() - 1
    }

    /// The tree of lines with the chosen bores.
    pub(crate) fn network(&mut self, layout: &Layout, bores: &Bores) -> Network {
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

    /// The inlet line takes the widest line that its ends take, unless the job gives another: suction forgives nothing.
    pub(crate) fn mounting(
        &mut self,
        job: &Job,
        layout: &Layout,
        block: &Part,
        reservoir: &Part,
        joiner: &mut Joiner,
    ) -> Mounting {
        if !is_remote(job) {
            return Mounting::OnReservoir;
        }
        let ends = [port_of(block, Role::Inlet), port_of(reservoir, Role::Outlet)];
        let legs = job.package.inlet.iter().filter_map(|wish| {
            let given =
                wish.conduit.chosen().and_then(|id| layout.conduits.iter().find(|c| c.part.id == *id));
            let conduit = given.or_else(|| widest(layout, wish.flexible, &ends, joiner))?;
            Some(Leg {
                place: wish.place,
                length: wish.length,
                rise: wish.rise,
                conduit: self.number(&conduit.part),
            })
        });
        Mounting::Remote(legs.collect())
    }

    /// The discharge line: wide, for with grease the line and not the hole decides what the relief holds.
    pub(crate) fn discharge(
        &mut self,
        job: &Job,
        layout: &Layout,
        holder: Option<&Part>,
        joiner: &mut Joiner,
    ) -> Vec<Leg> {
        let Some((length, holder)) = job.package.discharge.zip(holder) else { return Vec::new() };
        let Some(conduit) = widest(layout, false, &[port_of(holder, Role::Outlet)], joiner) else {
            return Vec::new();
        };
        vec![Leg { place: job.package.place, length, rise: no_length(), conduit: self.number(&conduit.part) }]
    }
}

fn port_of(part: &Part, role: Role) -> Option<JointEnd> {
    part.ports.iter().find(|p| p.role == role).map(end_of)
}

/// The widest line that goes into all these ports; the widest of all where none does.
fn widest<'a>(
    layout: &'a Layout,
    flexible: bool,
    ends: &[Option<JointEnd>],
    joiner: &mut Joiner,
) -> Option<&'a Conduit> {
    let mut goes_in = |conduit: &Conduit| {
        let tube = conduit_end(&conduit.part);
        ends.iter().flatten().all(|end| joiner.join(end, &tube).is_some())
    };
    let mut all = layout.conduits.iter().rev().filter(|c| c.flexible == flexible);
    let first = all.clone().next();
    all.find(|c| goes_in(c)).or(first)
}
