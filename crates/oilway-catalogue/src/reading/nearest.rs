//! The right word that was probably meant.

/// The word most like the one written, if one is like enough: no slip in a word of one or two letters, one up to five,
/// two up to eight, then three; capitals, spaces, hyphens and underscores do not count. Of words equally near the first.
///
/// ```
/// use oilway_catalogue::reading::nearest;
///
/// assert_eq!(nearest("ratde", ["rated", "ratio"]), Some("rated"));
/// assert_eq!(nearest("pump", ["hose", "tube"]), None);
/// ```
pub fn nearest<'w>(written: &str, words: impl IntoIterator<Item = &'w str>) -> Option<&'w str> {
    let written = plain(written);
    if written.len() > LONGEST {
        return None;
    }
    let allowed = match written.len() {
        0 => return None,
        // One slip in two letters leaves nothing of the word: B is not near C, nor A1 near B1.
        1..=2 => 0,
        3..=5 => 1,
        6..=8 => 2,
        _ => 3,
    };
    let distances = words
        .into_iter()
        .filter(|word| word.len() <= LONGEST)
        .map(|word| (slips(&written, &plain(word)), word));
    distances.filter(|(slips, _)| *slips <= allowed).min_by_key(|(slips, _)| *slips).map(|(_, word)| word)
}

/// Nobody mistypes a word of this length; it keeps the work bounded.
const LONGEST: usize = 64;

fn plain(word: &str) -> Vec<char> {
    word.chars().filter(|c| !matches!(c, ' ' | '-' | '_')).flat_map(char::to_lowercase).collect()
}

/// Letters to change, add, drop or swap with their neighbour (optimal string alignment).
fn slips(a: &[char], b: &[char]) -> usize {
    let mut before: Vec<usize> = Vec::new();
    let mut last: Vec<usize> = (0..=b.len()).collect();
    for (i, x) in a.iter().enumerate() {
        let mut now = vec![i + 1];
        for (j, y) in b.iter().enumerate() {
            let changed = last[j] + usize::from(x != y);
            let mut least = changed.min(last[j + 1] + 1).min(now[j] + 1);
            if i > 0 && j > 0 && *x == b[j - 1] && a[i - 1] == *y {
                least = least.min(before[j - 1] + 1);
            }
            now.push(least);
        }
        before = core::mem::replace(&mut last, now);
    }
    last[b.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn distance(a: &str, b: &str) -> usize {
        slips(&plain(a), &plain(b))
    }

    #[test]
    fn slips_are_counted_as_the_textbook_counts_them() {
        // Source: textbook examples of edit distance (memory); the swap is Damerau's.
        assert_eq!(distance("kitten", "sitting"), 3);
        assert_eq!(distance("flaw", "lawn"), 2);
        assert_eq!(distance("raetd", "rated"), 1);
        assert_eq!(distance("", "abc"), 3);
    }

    #[test]
    fn a_swapped_pair_names_the_right_word_and_a_strange_word_names_none() {
        assert_eq!(nearest("toelrance", ["nominal", "tolerance"]), Some("tolerance"));
        assert_eq!(nearest("Cycles-Max", ["cycles_max"]), Some("cycles_max"));
        assert_eq!(nearest("colour", ["bore", "rated"]), None);
        assert_eq!(nearest("", ["bore"]), None);
    }

    #[test]
    fn a_word_of_one_or_two_letters_is_near_itself_only() {
        assert_eq!(nearest("C", ["A", "B"]), None);
        assert_eq!(nearest("C1", ["C2", "C"]), None);
        assert_eq!(nearest("c-1", ["C 2", "C1"]), Some("C1"));
    }
}
