//! The menus of one stretch of periods: for each group the offers worth considering, with cost and error.

use super::fraction::Fraction;
use super::ground::Ground;
use super::periods::open_offers;

/// An offer on a menu.
#[derive(Clone, Copy, Debug)]
pub(super) struct Pick {
    /// Its place in the list of offers.
    pub(super) offer: u32,
    pub(super) twice_cost: u64,
    pub(super) extra: u64,
    pub(super) parity: u64,
    /// What is weighed after the cost: the rank of the error, or the error in millionths.
    pub(super) weight: u64,
}

/// The menus of all groups, and the errors behind the ranks.
#[derive(Default)]
pub(super) struct Menus {
    pub(super) groups: Vec<Vec<Pick>>,
    /// Errors in rising order without repeats; the rank of an error is its place.
    pub(super) errors: Vec<Fraction>,
    unsorted: Vec<(Fraction, u32, u32)>,
}

impl Menus {
    /// Menus for the steps from `first` to `last` of one class, weighed by the rank of the least error in them.
    pub(super) fn ranked(&mut self, ground: &Ground, first: u64, last: u64, fewest_matter: bool) {
        self.unsorted.clear();
        self.groups.resize_with(ground.groups.len(), Vec::new);
        for (place, (menu, group)) in (0u32..).zip(self.groups.iter_mut().zip(&ground.groups)) {
            menu.clear();
            for &offer in &group.offers[open_offers(group, first, last)] {
                let volume = ground.offers[offer as usize].volume;
                let error = ground.least_error(volume, group.demand, first, last);
                self.unsorted.push((error, place, menu.len() as u32));
                menu.push(pick(ground, offer, 0));
            }
        }
        self.rank();
        for menu in &mut self.groups {
            keep_undominated(menu, fewest_matter);
        }
    }

    fn rank(&mut self) {
        self.unsorted.sort_unstable();
        self.errors.clear();
        for &(error, group, place) in &self.unsorted {
            if self.errors.last() != Some(&error) {
                self.errors.push(error);
            }
            self.groups[group as usize][place as usize].weight = self.errors.len() as u64 - 1;
        }
    }

    /// Menus for one step, without offers whose error is above the worst, weighed by the error in millionths.
    pub(super) fn summed(&mut self, ground: &Ground, step: u64, worst: Fraction, fewest_matter: bool) {
        self.groups.resize_with(ground.groups.len(), Vec::new);
        for (menu, group) in self.groups.iter_mut().zip(&ground.groups) {
            menu.clear();
            for &offer in &group.offers[open_offers(group, step, step)] {
                let volume = ground.offers[offer as usize].volume;
                let error = ground.share(volume, group.demand, step).above_one();
                if error <= worst {
                    menu.push(pick(ground, offer, error.millionths_over_one()));
                }
            }
            keep_undominated(menu, fewest_matter);
        }
    }
}

fn pick(ground: &Ground, place: u32, weight: u64) -> Pick {
    let offer = &ground.offers[place as usize];
    let (twice_cost, extra) = (offer.twice_cost, u64::from(offer.extra));
    Pick { offer: place, twice_cost, extra, parity: offer.parity, weight }
}

/// Strikes every pick for which another of the same parity costs less, or as much at no more weight, and takes no more
/// outlets: whatever follows, the other comes before it. Where a fewest number of pistons has to be reached, more
/// outlets may be better, and only picks with equal outlets are compared.
fn keep_undominated(menu: &mut Vec<Pick>, fewest_matter: bool) {
    // In order of preference within a parity, so that only those already kept can beat a pick.
    menu.sort_unstable_by_key(|p| (p.parity, p.twice_cost, p.weight, p.extra, p.offer));
    let mut kept = 0;
    for i in 0..menu.len() {
        let pick = menu[i];
        let beats = |other: &Pick| {
            let outlets = if fewest_matter { other.extra == pick.extra } else { other.extra <= pick.extra };
            other.parity == pick.parity && outlets
        };
        if !menu[..kept].iter().rev().take_while(|other| other.parity == pick.parity).any(beats) {
            menu[kept] = pick;
            kept += 1;
        }
    }
    menu.truncate(kept);
    menu.sort_unstable_by_key(|p| (p.twice_cost, p.weight, p.offer));
}
