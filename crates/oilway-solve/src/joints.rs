//! Joints: which fitting, and which adapter where one is needed, joins two ends. Threads are compared by their writing alone;
//! a catalogue writes each thread in one way.

use std::collections::BTreeMap;
use std::sync::Arc;

use oilway_catalogue::kinds::{Hose, Section as SectionPart, Tube};
use oilway_catalogue::{Catalogue, Part, Role, Sex};
use oilway_model::{Design, Divider, End, Joint, JointEnd, OutletUse};

use crate::layout::price;

/// The fittings and adapters of a catalogue, with the pairs already looked up.
#[derive(Debug)]
pub(crate) struct Joiner {
    fittings: Vec<Arc<Part>>,
    adapters: Vec<Arc<Part>>,
    /// Fittings for compressed air only.
    nipples: Vec<Arc<Part>>,
    known: BTreeMap<(JointEnd, JointEnd), Vec<Arc<Part>>>,
}

impl Joiner {
    /// Fittings for lubricant lines, cheapest first.
    pub(crate) fn new(catalogue: &Catalogue) -> Self {
        let sorted = |kind: &str, air: bool| {
            let mut all: Vec<Arc<Part>> =
                catalogue.of_kind(kind).filter(|p| p.flag("air") == air).cloned().collect();
            all.sort_by_key(|p| (price(p), p.id.clone()));
            all
        };
        Joiner {
            fittings: sorted("fitting", false),
            adapters: sorted("adapter", false),
            nipples: sorted("fitting", true),
            known: BTreeMap::new(),
        }
    }

    /// What joins two ends of the air side: nothing where they mate as they are, else one nipple. None where there is none.
    pub(crate) fn join_air(&self, from: &JointEnd, to: &JointEnd) -> Option<Vec<Arc<Part>>> {
        if mates(from, to) {
            return Some(Vec::new());
        }
        let nipple = self.nipples.iter().find(|p| bridges(p, from, to).is_some())?;
        Some(vec![Arc::clone(nipple)])
    }

    /// The parts that join two ends, from the first on: nothing where they mate as they are, a fitting, an adapter, or an adapter
    /// and a fitting. None where the catalogue has no such chain.
    pub(crate) fn join(&mut self, from: &JointEnd, to: &JointEnd) -> Option<Vec<Arc<Part>>> {
        if mates(from, to) {
            return Some(Vec::new());
        }
        let key = (from.clone(), to.clone());
        if let Some(found) = self.known.get(&key) {
            return (!found.is_empty()).then(|| found.clone());
        }
        let found = self.search(from, to).unwrap_or_default();
        self.known.insert(key, found.clone());
        (!found.is_empty()).then_some(found)
    }

    fn search(&self, from: &JointEnd, to: &JointEnd) -> Option<Vec<Arc<Part>>> {
        let singles = self.fittings.iter().chain(&self.adapters);
        if let Some(part) = singles.clone().find(|p| bridges(p, from, to).is_some()) {
            return Some(vec![Arc::clone(part)]);
        }
        // An adapter sits on a thread; tubes and hoses have none.
        let mut chains: Vec<(i64, Vec<Arc<Part>>)> = Vec::new();
        for adapter in &self.adapters {
            for near_from in [true, false] {
                let (near, far) = if near_from { (from, to) } else { (to, from) };
                for end in far_ends(adapter, near) {
                    if let Some(fitting) = self.fittings.iter().find(|f| bridges(f, &end, far).is_some()) {
                        let mut chain = vec![Arc::clone(adapter), Arc::clone(fitting)];
                        if !near_from {
                            chain.reverse();
                        }
                        chains.push((price(adapter) + price(fitting), chain));
                    }
                }
            }
        }
        chains
            .into_iter()
            .min_by_key(|(cost, chain)| (*cost, chain[0].id.clone(), chain[1].id.clone()))
            .map(|(_, c)| c)
    }
}

/// Whether two ends go together as they are.
pub fn mates(a: &JointEnd, b: &JointEnd) -> bool {
    a.thread.is_some() && a.thread == b.thread && a.sex != b.sex
}

fn opposite(sex: Sex) -> Sex {
    match sex {
        Sex::Male => Sex::Female,
        Sex::Female => Sex::Male,
    }
}

/// Whether a part has one port for each of two ends: the numbers of the ports.
fn bridges(part: &Part, from: &JointEnd, to: &JointEnd) -> Option<(usize, usize)> {
    let fits = |end: &JointEnd, skip: Option<usize>| {
        part.ports.iter().enumerate().position(|(i, p)| {
            Some(i) != skip && Some(&p.thread) == end.thread.as_ref() && p.sex == opposite(end.sex)
        })
    };
    if part.ports.len() != 2 {
        return None;
    }
    let first = fits(from, None)?;
    let second = fits(to, Some(first))?;
    Some((first, second))
}

/// The ends that an adapter offers once it sits on an end.
fn far_ends(adapter: &Part, near: &JointEnd) -> Vec<JointEnd> {
    let at = adapter
        .ports
        .iter()
        .position(|p| Some(&p.thread) == near.thread.as_ref() && p.sex == opposite(near.sex));
    let Some(at) = at else { return Vec::new() };
    let others = adapter.ports.iter().enumerate().filter(|(i, _)| *i != at);
    others.map(|(_, p)| JointEnd { thread: Some(p.thread.clone()), sex: p.sex }).collect()
}

/// The end of a tube or hose: `tube 8`, `hose 4`.
pub fn conduit_end(part: &Part) -> JointEnd {
    let millimetres = |x: f64| {
        let rounded = libm::round(x * 100.0) / 100.0;
        format!("{rounded}")
    };
    let thread = Tube::of(part)
        .map(|t| format!("tube {}", millimetres(t.outside.millimetres())))
        .or_else(|| Hose::of(part).map(|h| format!("hose {}", millimetres(h.bore.millimetres()))));
    JointEnd { thread, sex: Sex::Male }
}

/// The female end of a port with this role, if the part has one.
pub fn port_end(part: &Part, role: Role) -> Option<JointEnd> {
    part.ports
        .iter()
        .find(|p| p.role == role)
        .map(|p| JointEnd { thread: Some(p.thread.clone()), sex: p.sex })
}

/// All joints of the lines of a design, from the pump outwards.
pub(crate) fn joints(design: &Design, joiner: &mut Joiner) -> Vec<Joint> {
    let mut all = Vec::new();
    for (number, node) in design.network.nodes.iter().enumerate() {
        let Some(parent) = node.parent else { continue };
        let mut before = leaving(design, parent, number);
        for (leg_number, leg) in node.legs.iter().enumerate() {
            let Some(part) = design.conduits.get(leg.conduit) else { continue };
            let end = conduit_end(part);
            let at = format!("line.{}.{}", node.name, leg_number + 1);
            // Two legs of the same tube are one tube that passes from one place to the next.
            if before.as_ref() != Some(&end) {
                push(&mut all, at, before.clone(), end.clone(), joiner);
            }
            before = Some(end);
        }
        let (at, to) = arriving(design, number);
        push(&mut all, at, before, to, joiner);
    }
    all
}

fn push(all: &mut Vec<Joint>, at: String, from: Option<JointEnd>, to: JointEnd, joiner: &mut Joiner) {
    let from = from.unwrap_or(JointEnd { thread: None, sex: Sex::Female });
    let known = from.thread.is_some() && to.thread.is_some();
    let parts = if known { joiner.join(&from, &to).unwrap_or_default() } else { Vec::new() };
    all.push(Joint { at, from, to, parts });
}

/// The end from which the line to a node leaves.
fn leaving(design: &Design, parent: usize, node: usize) -> Option<JointEnd> {
    match design.network.nodes[parent].end {
        End::Pump => port_end(&design.package.block, Role::Outlet),
        End::Divider(divider) => design.dividers.get(divider).and_then(|d| outlet_end(d, node)),
        End::Junction | End::Point(_) => None,
    }
}

fn outlet_end(divider: &Divider, node: usize) -> Option<JointEnd> {
    let section =
        divider.sections.iter().find(|s| s.left == OutletUse::To(node) || s.right == OutletUse::To(node))?;
    let thread = SectionPart::of(&section.part)?.outlet_thread;
    Some(JointEnd { thread: Some(thread), sex: Sex::Female })
}

fn arriving(design: &Design, node: usize) -> (String, JointEnd) {
    let unknown = JointEnd { thread: None, sex: Sex::Female };
    match design.network.nodes[node].end {
        End::Divider(divider) => {
            let Some(d) = design.dividers.get(divider) else { return (String::new(), unknown) };
            (format!("divider.{}", d.name), port_end(&d.body, Role::Inlet).unwrap_or(unknown))
        }
        End::Point(point) => {
            let Some(p) = design.points.get(point) else { return (String::new(), unknown) };
            (format!("point.{}", p.name), JointEnd { thread: p.thread.clone(), sex: Sex::Female })
        }
        End::Pump | End::Junction => (design.network.nodes[node].name.clone(), unknown),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design;
    use crate::testing::{catalogue, dairy, hall, hose, spindle};

    fn end(thread: &str, sex: Sex) -> JointEnd {
        JointEnd { thread: Some(thread.to_owned()), sex }
    }

    /// Walks a chain of parts from one end to the other: every joint on the way must mate.
    fn chain_holds(from: &JointEnd, parts: &[Arc<Part>], to: &JointEnd) -> bool {
        let mut open = from.clone();
        for part in parts {
            let ends: Vec<JointEnd> =
                part.ports.iter().map(|p| JointEnd { thread: Some(p.thread.clone()), sex: p.sex }).collect();
            let Some(used) = ends.iter().position(|e| mates(&open, e)) else { return false };
            let Some((_, next)) = ends.iter().enumerate().find(|(i, _)| *i != used) else { return false };
            open = next.clone();
        }
        mates(&open, to)
    }

    #[test]
    fn threads_mate_when_they_are_alike_and_of_opposite_sex() {
        let (a, b) = (end("G 1/4", Sex::Male), end("G 1/4", Sex::Female));
        assert!(mates(&a, &b) && mates(&b, &a));
        assert!(!mates(&a, &a));
        // A straight and a taper thread of one size look alike and leak.
        assert!(!mates(&a, &end("1/4-18 NPT", Sex::Female)));
        let unknown = JointEnd { thread: None, sex: Sex::Female };
        assert!(!mates(&a, &unknown) && !mates(&unknown, &unknown));
    }

    #[test]
    fn every_chain_that_is_found_really_joins_its_ends() {
        let threads = ["M6x1", "M8x1", "M10x1", "G 1/8", "G 1/4", "G 3/8", "1/8-27 NPT", "1/4-18 NPT"];
        let tubes = ["tube 4", "tube 6", "tube 8", "tube 10", "tube 12", "hose 4"];
        let mut joiner = Joiner::new(catalogue());
        let mut found = 0;
        for thread in threads {
            for tube in tubes {
                let (from, to) = (end(thread, Sex::Female), end(tube, Sex::Male));
                for (from, to) in [(&from, &to), (&to, &from)] {
                    if let Some(parts) = joiner.join(from, to) {
                        assert!(chain_holds(from, &parts, to), "{thread} {tube}: {parts:?}");
                        assert!(parts.iter().all(|p| !p.flag("air")), "an air fitting holds no grease");
                        found += 1;
                    }
                }
            }
        }
        assert!(found > 60, "{found}");
    }

    #[test]
    fn what_cannot_be_joined_is_said_and_not_guessed() {
        let mut joiner = Joiner::new(catalogue());
        let nowhere = end("W 21.8", Sex::Female);
        assert!(joiner.join(&nowhere, &end("tube 6", Sex::Male)).is_none());
        // Asked again the answer is the same.
        assert!(joiner.join(&nowhere, &end("tube 6", Sex::Male)).is_none());
        assert_eq!(
            joiner.join(&end("G 1/4", Sex::Male), &end("G 1/4", Sex::Female)).map(|p| p.len()),
            Some(0)
        );
    }

    #[test]
    fn a_straight_way_takes_the_cheapest_single_fitting() {
        let mut joiner = Joiner::new(catalogue());
        let (from, to) = (end("M10x1", Sex::Female), end("tube 6", Sex::Male));
        let parts = joiner.join(&from, &to).unwrap();
        assert_eq!(parts.len(), 1);
        let fits = |p: &&Arc<Part>| bridges(p, &from, &to).is_some() && !p.flag("air");
        let cheapest = catalogue().of_kind("fitting").filter(fits).map(|p| price(p)).min().unwrap();
        assert_eq!(price(&parts[0]), cheapest);
    }

    #[test]
    fn every_line_of_a_design_is_joined_from_the_block_to_its_points() {
        for job in [hall(), dairy(), spindle()] {
            let design = design(&job, catalogue()).unwrap();
            for joint in &design.joints {
                assert!(chain_holds(&joint.from, &joint.parts, &joint.to), "{}: {joint:?}", job.name);
            }
            // One joint for every change of conduit, and both ends of every line.
            let changes: usize = design
                .network
                .nodes
                .iter()
                .skip(1)
                .map(|n| {
                    let kinds =
                        n.legs.iter().map(|l| conduit_end(&design.conduits[l.conduit])).collect::<Vec<_>>();
                    2 + kinds.windows(2).filter(|w| w[0] != w[1]).count()
                })
                .sum();
            assert_eq!(design.joints.len(), changes, "{}", job.name);
        }
    }

    #[test]
    fn an_unknown_thread_leaves_the_joint_open_instead_of_guessing() {
        let mut job = hall();
        job.points[0].thread = None;
        job.points[1].route.push(hose(1, 1.0));
        let design = design(&job, catalogue()).unwrap();
        let at = |name: &str| design.joints.iter().find(|j| j.at == name).unwrap();
        let open = at("point.pin 1");
        assert!(open.parts.is_empty() && open.to.thread.is_none());
        // Tube and hose of one line are joined between.
        assert!(!at("line.pin 2.2").parts.is_empty());
    }
}
