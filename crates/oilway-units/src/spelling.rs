//! What somebody meant who wrote a unit that is not one: the spelling that is most alike.

use crate::unit::fold;
use crate::{Dimension, Unit};

/// The right spelling most like this text, if any is near: at most one slip in three letters.
pub(crate) fn nearest(dimension: Dimension, text: &str) -> Option<&'static str> {
    let wrong: Vec<char> = fold(text).to_lowercase().chars().collect();
    if wrong.len() > 40 {
        return None;
    }
    let spellings = Unit::of(dimension)
        .iter()
        .flat_map(|unit| core::iter::once(unit.symbol()).chain(unit.spellings().iter().copied()))
        .filter(|spelling| !spelling.is_empty());
    let slips = |spelling: &'static str| {
        let right: Vec<char> = fold(spelling).to_lowercase().chars().collect();
        (distance(&wrong, &right), spelling)
    };
    // The first of the best wins: the table lists symbols before their other spellings.
    let (slips, spelling) = spellings.map(slips).min_by_key(|(slips, _)| *slips)?;
    (slips * 3 <= wrong.len().max(3)).then_some(spelling)
}

/// The unit of absolute pressure that goes with this one of gauge pressure.
pub(crate) fn counterpart(gauge: &str) -> &'static str {
    let plain = Unit::named(Dimension::Pressure, gauge).map_or("", Unit::symbol);
    let fits =
        |unit: &&Unit| unit.symbol().strip_prefix(plain).is_some_and(|end| matches!(end, " abs" | "a"));
    Unit::of(Dimension::AbsolutePressure)
        .iter()
        .find(fits)
        .unwrap_or(Unit::main(Dimension::AbsolutePressure))
        .symbol()
}

/// The least number of letters to add, drop or change (Levenshtein), letters swapped with their neighbour counted
/// as one slip.
fn distance(a: &[char], b: &[char]) -> usize {
    let mut before: Vec<usize> = Vec::new();
    let mut row: Vec<usize> = (0..=b.len()).collect();
    for (i, &x) in a.iter().enumerate() {
        let mut next = vec![i + 1];
        for (j, &y) in b.iter().enumerate() {
            let changed = row[j] + usize::from(x != y);
            let mut least = changed.min(row[j + 1] + 1).min(next[j] + 1);
            if i > 0 && j > 0 && x == b[j - 1] && a[i - 1] == y {
                least = least.min(before[j - 1] + 1);
            }
            next.push(least);
        }
        before = core::mem::replace(&mut row, next);
    }
    row.last().copied().unwrap_or(a.len())
}
