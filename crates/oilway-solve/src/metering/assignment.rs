//! One class of periods solved exactly: a dynamic programme over the points.
//!
//! A state after the first points is the parity of each size and the outlets taken beyond one for each point. Of all
//! ways to a state only the best is kept, first by cost, then by weight. That loses nothing: whatever follows adds the
//! same cost to both, and the same weight by sum or by maximum, so the better beginning stays at least as good.

use std::collections::HashMap;
use std::hash::{BuildHasherDefault, Hasher};

use super::ground::{Ground, SpareOutlets};
use super::menu::Pick;
use super::periods::joined;

/// How the weights of the points make up the weight of the whole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Blend {
    /// The largest counts.
    Worst,
    /// They add up.
    Sum,
}

/// An answer already known: nothing of this cost with this weight or more is of use.
#[derive(Clone, Copy, Debug)]
pub(super) struct Rival {
    pub(super) twice_cost: u64,
    pub(super) weight: u64,
}

/// What one class is asked for.
#[derive(Clone, Copy)]
pub(super) struct Task<'a> {
    pub(super) ground: &'a Ground,
    pub(super) menus: &'a [Vec<Pick>],
    pub(super) spare: SpareOutlets,
    pub(super) blend: Blend,
    /// Twice the cost above which no answer is wanted in this run.
    pub(super) ceiling: u64,
    pub(super) rival: Option<Rival>,
    /// States that may still be made.
    pub(super) effort: u64,
}

/// What came out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Outcome {
    /// The best under the ceiling: offers in the order of the groups and their members.
    Found { twice_cost: u64, weight: u64, offers: Vec<u32> },
    /// Nothing under the ceiling; `next` is a lower bound for what lies above, if anything of use can.
    Nothing { next: Option<u64> },
    /// The effort was spent first.
    Spent,
}

#[derive(Clone, Copy, Debug)]
struct State {
    parity: u64,
    extra: u64,
    twice_cost: u64,
    weight: u64,
    parent: u32,
    pick: u32,
}

/// What the points still to come can add.
#[derive(Clone, Copy, Debug)]
struct Rest {
    /// Twice the cheapest cost for an even and an odd number of outlets.
    cheapest: [u64; 2],
    parity: u64,
    fewest_extra: u64,
    most_extra: u64,
}

/// Room for the programme, kept between runs.
#[derive(Default)]
pub(super) struct Assignment {
    layers: Vec<Vec<State>>,
    places: HashMap<(u64, u64), u32, BuildHasherDefault<Mixed>>,
    rests: Vec<Rest>,
    /// The group of each point in turn.
    turns: Vec<usize>,
    next: Option<u64>,
    /// States made so far, over all runs.
    pub(super) states: u64,
}

impl Assignment {
    /// Solves one class.
    pub(super) fn solve(&mut self, task: &Task<'_>) -> Outcome {
        self.prepare(task);
        let limit = self.states.saturating_add(task.effort);
        for turn in 0..self.turns.len() {
            self.grow(task, turn);
            if self.states > limit {
                return Outcome::Spent;
            }
            if self.layers[turn + 1].is_empty() {
                return Outcome::Nothing { next: self.next };
            }
        }
        self.best(task)
    }

    fn prepare(&mut self, task: &Task<'_>) {
        self.turns.clear();
        for (place, group) in task.ground.groups.iter().enumerate() {
            self.turns.extend(group.members.iter().map(|_| place));
        }
        let nothing = Rest { cheapest: [0, u64::MAX], parity: 0, fewest_extra: 0, most_extra: 0 };
        self.rests.clear();
        self.rests.resize(self.turns.len() + 1, nothing);
        for turn in (0..self.turns.len()).rev() {
            self.rests[turn] = before(self.rests[turn + 1], &task.menus[self.turns[turn]]);
        }
        self.layers.resize_with(self.layers.len().max(self.turns.len() + 1), Vec::new);
        self.layers[0].clear();
        self.layers[0].push(State { parity: 0, extra: 0, twice_cost: 0, weight: 0, parent: 0, pick: 0 });
        self.next = None;
    }

    /// Makes the states after one more point.
    fn grow(&mut self, task: &Task<'_>, turn: usize) {
        let (done, ahead) = self.layers.split_at_mut(turn + 1);
        let (from, into) = (&done[turn], &mut ahead[0]);
        into.clear();
        self.places.clear();
        let (rest, menu) = (self.rests[turn + 1], &task.menus[self.turns[turn]]);
        for (parent, state) in (0u32..).zip(from) {
            for (place, pick) in (0u32..).zip(menu) {
                let state = state.with(pick, parent, place, task);
                match state.judged(&rest, task) {
                    Verdict::Useless => {}
                    Verdict::TooDear(cost) => self.next = Some(self.next.map_or(cost, |next| next.min(cost))),
                    Verdict::Worth => keep_better(&mut self.places, into, state),
                }
            }
        }
        self.states += (from.len() * menu.len()) as u64;
    }

    /// The best state of the last layer, traced back to its picks.
    fn best(&self, task: &Task<'_>) -> Outcome {
        let turns = self.turns.len();
        let last = (0u32..).zip(&self.layers[turns]);
        let Some((place, best)) = last.min_by_key(|(_, state)| (state.twice_cost, state.weight)) else {
            return Outcome::Nothing { next: self.next };
        };
        let mut offers = vec![0; turns];
        let mut place = place;
        for turn in (0..turns).rev() {
            let state = &self.layers[turn + 1][place as usize];
            offers[turn] = task.menus[self.turns[turn]][state.pick as usize].offer;
            place = state.parent;
        }
        Outcome::Found { twice_cost: best.twice_cost, weight: best.weight, offers }
    }
}

/// What the rest can add when one more point, with this menu, stands before it.
fn before(rest: Rest, menu: &[Pick]) -> Rest {
    let mut one = [u64::MAX; 2];
    for pick in menu {
        let odd = usize::from(pick.extra.is_multiple_of(2));
        one[odd] = one[odd].min(pick.twice_cost);
    }
    Rest {
        cheapest: joined(rest.cheapest, one),
        parity: menu.iter().fold(rest.parity, |parity, pick| parity | pick.parity),
        fewest_extra: rest.fewest_extra + menu.iter().map(|pick| pick.extra).min().unwrap_or(0),
        most_extra: rest.most_extra + menu.iter().map(|pick| pick.extra).max().unwrap_or(0),
    }
}

enum Verdict {
    Useless,
    /// Sound, but at least this dear.
    TooDear(u64),
    Worth,
}

impl State {
    fn with(&self, pick: &Pick, parent: u32, place: u32, task: &Task<'_>) -> Self {
        let extra = self.extra + pick.extra;
        Self {
            parity: self.parity ^ pick.parity,
            // Without an upper bound only the way to the lower bound matters.
            extra: if task.spare.most.is_none() { extra.min(task.spare.fewest) } else { extra },
            twice_cost: self.twice_cost + pick.twice_cost,
            weight: match task.blend {
                Blend::Worst => self.weight.max(pick.weight),
                Blend::Sum => self.weight + pick.weight,
            },
            parent,
            pick: place,
        }
    }

    fn judged(&self, rest: &Rest, task: &Task<'_>) -> Verdict {
        let ahead = rest.cheapest[(self.parity.count_ones() % 2) as usize];
        let over = task.spare.most.is_some_and(|most| self.extra + rest.fewest_extra > most);
        let under = self.extra + rest.most_extra < task.spare.fewest;
        // A size that no later point can take is closed: an odd outlet of it stays odd.
        if self.parity & !rest.parity != 0 || ahead == u64::MAX || over || under {
            return Verdict::Useless;
        }
        let cost = self.twice_cost + ahead;
        if let Some(rival) = task.rival
            && (cost > rival.twice_cost || (cost == rival.twice_cost && self.weight >= rival.weight))
        {
            return Verdict::Useless;
        }
        if cost > task.ceiling { Verdict::TooDear(cost) } else { Verdict::Worth }
    }
}

/// Keeps the state unless the same parity and outlets were reached before at least as well.
fn keep_better(
    places: &mut HashMap<(u64, u64), u32, BuildHasherDefault<Mixed>>,
    layer: &mut Vec<State>,
    state: State,
) {
    let place = *places.entry((state.parity, state.extra)).or_insert(layer.len() as u32);
    match layer.get_mut(place as usize) {
        None => layer.push(state),
        Some(kept) if (state.twice_cost, state.weight) < (kept.twice_cost, kept.weight) => *kept = state,
        Some(_) => {}
    }
}

/// A quick mix of two whole numbers. The table is only asked, never walked through, so no answer hangs on it.
#[derive(Default)]
struct Mixed(u64);

impl Hasher for Mixed {
    fn finish(&self) -> u64 {
        self.0 ^ (self.0 >> 29)
    }

    fn write(&mut self, bytes: &[u8]) {
        for &byte in bytes {
            self.write_u64(u64::from(byte));
        }
    }

    fn write_u64(&mut self, number: u64) {
        // An odd constant near 2^64 divided by the golden ratio spreads neighbouring numbers.
        self.0 = (self.0.rotate_left(23) ^ number).wrapping_mul(0x9E37_79B9_7F4A_7C15);
    }
}
