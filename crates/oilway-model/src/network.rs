//! The tree of lines: nodes in depth-first order, each with the way that leads to it.

use oilway_units::{Entry, Length};

/// A stretch of line of one bore in one place.
#[derive(Clone, Copy, Debug)]
pub struct Leg {
    /// The place it runs through, by index.
    pub place: usize,
    /// Its length.
    pub length: Entry<Length>,
    /// How much it rises towards the point; negative where it falls.
    pub rise: Entry<Length>,
    /// The tube or hose, by index in [`crate::Design::conduits`].
    pub conduit: usize,
}

/// What stands at a node.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// The pump's outlet: the root.
    Pump,
    /// A junction or a post that only joins lines.
    Junction,
    /// A divider, by index in [`crate::Design::dividers`].
    Divider(usize),
    /// A point, by index in [`crate::Design::points`].
    Point(usize),
}

/// A node and the line that leads to it.
#[derive(Clone, Debug)]
pub struct Node {
    /// Its name.
    pub name: String,
    /// The node upstream; none at the root. Always smaller than the node's own index.
    pub parent: Option<usize>,
    /// The line from the parent, from the pump side to the far side.
    pub legs: Vec<Leg>,
    /// What stands here.
    pub end: End,
}

/// The whole tree; node 0 is the pump.
#[derive(Clone, Debug, Default)]
pub struct Network {
    /// Its nodes, parents before children.
    pub nodes: Vec<Node>,
}

impl Network {
    /// The nodes from this one up to the pump.
    pub fn upstream(&self, node: usize) -> impl Iterator<Item = usize> + '_ {
        core::iter::successors(Some(node), move |&n| self.nodes.get(n).and_then(|node| node.parent))
    }
}
