//! The names of like things, said short: `washer chain 1 to 6` for a run of numbers, and a count for what is left over.

use oilway_text::{Arg, Message, message};

/// Entries said by name where a page must stay short; a run of numbers is one.
pub(crate) const FEW: usize = 6;

/// All names, runs of three numbers and more as one entry. In the order in which they were first met.
pub(crate) fn all(names: &[&str]) -> Message {
    some(names, usize::MAX)
}

/// The first entries, so many at most, and how many names are left over.
pub(crate) fn some(names: &[&str], most: usize) -> Message {
    match first(names, most) {
        (said, 0) => said,
        (said, left_over) => message!("documents-names-more", names = said, more = left_over),
    }
}

/// The first entries, so many at most, and the number of names that they leave over.
pub(crate) fn first(names: &[&str], most: usize) -> (Message, usize) {
    let entries = entries(names);
    let left_over = entries.iter().skip(most).map(|entry| entry.names).sum();
    let said: Vec<Arg> = entries.into_iter().take(most).map(|entry| entry.said.into()).collect();
    (Message::new("documents-names").with("names", Arg::List(said)), left_over)
}

/// A name, or a run of them.
struct Entry {
    said: Message,
    names: usize,
}

fn entries(names: &[&str]) -> Vec<Entry> {
    // The numbers behind each stem; a name without one stands alone.
    let mut stems: Vec<(&str, Vec<u32>)> = Vec::new();
    for name in names {
        let (stem, number) = numbered(name).map_or((*name, None), |(stem, number)| (stem, Some(number)));
        let known = stems
            .iter_mut()
            .find(|(known, numbers)| *known == stem && numbers.is_empty() == number.is_none());
        match known {
            Some((_, numbers)) => numbers.extend(number),
            None => stems.push((stem, number.into_iter().collect())),
        }
    }
    stems.into_iter().flat_map(|(stem, numbers)| stem_entries(stem, numbers)).collect()
}

fn stem_entries(stem: &str, mut numbers: Vec<u32>) -> Vec<Entry> {
    let one = |name: String| Entry { said: message!("documents-at-place", name = name), names: 1 };
    if numbers.is_empty() {
        return vec![one(stem.to_owned())];
    }
    numbers.sort_unstable();
    numbers.dedup();
    let runs = numbers.chunk_by(|a, b| a.checked_add(1) == Some(*b));
    let said = |run: &[u32]| match run {
        [first, .., last] if run.len() > 2 => {
            // Words repeat their last number only, signs stand whole: `chain 1 to 6`, `P1 to P6`.
            let repeated = if stem.ends_with(' ') { "" } else { stem };
            let (first, last) = (format!("{stem}{first}"), format!("{repeated}{last}"));
            vec![Entry {
                said: message!("documents-names-run", first = first, last = last),
                names: run.len(),
            }]
        }
        few => few.iter().map(|number| one(format!("{stem}{number}"))).collect(),
    };
    runs.flat_map(said).collect()
}

/// A name that ends in a number, as its stem and the number. A number with leading zeros is part of the name.
fn numbered(name: &str) -> Option<(&str, u32)> {
    let stem = name.trim_end_matches(|c: char| c.is_ascii_digit());
    let digits = &name[stem.len()..];
    if stem.is_empty() || (digits.starts_with('0') && digits.len() > 1) {
        return None;
    }
    Some((stem, digits.parse().ok()?))
}

#[cfg(test)]
mod tests {
    use super::*;
    use oilway_text::{Reader, say};

    fn said(names: &[&str], most: usize) -> String {
        say(&some(names, most), &Reader::default())
    }

    #[test]
    fn three_numbers_in_a_row_become_a_run_and_two_do_not() {
        assert_eq!(said(&["chain 3", "chain 1", "chain 2", "pin"], 9), "chain 1 to 3 and pin");
        assert_eq!(said(&["chain 1", "chain 2"], 9), "chain 1 and chain 2");
        assert_eq!(said(&["P1", "P2", "P3", "P5"], 9), "P1 to P3 and P5");
    }

    #[test]
    fn what_is_not_plainly_a_number_stays_part_of_the_name() {
        assert_eq!(said(&["point 01", "point 02", "point 03"], 9), "point 01, point 02 and point 03");
        assert_eq!(said(&["1", "2", "3"], 9), "1, 2 and 3");
        assert_eq!(said(&["x 99999999999", "x"], 9), "x 99999999999 and x");
    }

    #[test]
    fn the_rest_is_counted_by_names_not_by_entries() {
        assert_eq!(said(&["a", "b 1", "b 2", "b 3", "c"], 1), "a; 4 more");
        assert_eq!(said(&["a", "b"], 1), "a; one more");
    }
}
