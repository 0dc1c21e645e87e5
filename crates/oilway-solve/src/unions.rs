//! Which tubes and hoses can be joined to one another: two stretches of one line must find a fitting between them.

use crate::joints::{Joiner, conduit_end};
use crate::layout::Layout;

/// For each pair of the layout's conduits whether they can be joined.
#[derive(Clone, Debug, Default)]
pub(crate) struct Unions {
    joined: Vec<Vec<bool>>,
}

impl Unions {
    /// Asks the catalogue for every pair.
    pub(crate) fn new(layout: &Layout, joiner: &mut Joiner) -> Self {
        let ends: Vec<_> = layout.conduits.iter().map(|conduit| conduit_end(&conduit.part)).collect();
        // Two stretches of the same tube are one tube.
        let mut joins = |a: usize, b: usize| ends[a] == ends[b] || joiner.join(&ends[a], &ends[b]).is_some();
        let joined = (0..ends.len()).map(|a| (0..ends.len()).map(|b| joins(a, b)).collect()).collect();
        Unions { joined }
    }

    fn joins(&self, a: usize, b: usize) -> bool {
        self.joined.get(a).and_then(|row| row.get(b)).copied().unwrap_or(true)
    }

    /// Whether a leg with this candidate joins its neighbours with theirs.
    pub(crate) fn fits(&self, candidates: &[Vec<usize>], picks: &[usize], leg: usize, pick: usize) -> bool {
        let conduit = |leg: usize, pick: usize| candidates[leg][pick];
        let before = leg.checked_sub(1).is_none_or(|b| self.joins(conduit(b, picks[b]), conduit(leg, pick)));
        let after =
            leg + 1 >= picks.len() || self.joins(conduit(leg, pick), conduit(leg + 1, picks[leg + 1]));
        before && after
    }

    /// Widens the legs of a line until all can be joined, as far as there are wider candidates: the narrower of two goes first.
    pub(crate) fn widen(
        &self,
        layout: &Layout,
        node: usize,
        picks: &mut [usize],
        allowed: impl Fn(usize, usize) -> bool,
    ) {
        let candidates = &layout.candidates[node];
        let wider = |leg: usize, pick: usize| (pick + 1..candidates[leg].len()).find(|&p| allowed(leg, p));
        let bore = |leg: usize, pick: usize| layout.conduits[candidates[leg][pick]].bore;
        // Picks only ever grow, so this ends.
        while let Some((leg, pick)) = (1..picks.len()).find_map(|right| {
            let left = right - 1;
            if self.joins(candidates[left][picks[left]], candidates[right][picks[right]]) {
                return None;
            }
            let left_first = bore(left, picks[left]) <= bore(right, picks[right]);
            let turn = if left_first { [left, right] } else { [right, left] };
            turn.into_iter().find_map(|leg| wider(leg, picks[leg]).map(|pick| (leg, pick)))
        }) {
            picks[leg] = pick;
        }
    }
}
