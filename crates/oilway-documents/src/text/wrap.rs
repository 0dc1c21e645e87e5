//! Text broken into lines at its spaces, and padded to a width.

use super::width::{TIED, columns, pieces};
use crate::sheet::Align;

/// The lines of a text, none wider than `width`; at least one.
pub(super) fn wrap(text: &str, width: usize) -> Vec<String> {
    let width = width.max(1);
    let mut lines: Vec<String> = Vec::new();
    let mut used = 0;
    for word in text.split(' ').filter(|word| !word.is_empty()) {
        let wide = columns(word);
        if !lines.is_empty() && used + 1 + wide <= width {
            if let Some(line) = lines.last_mut() {
                line.push(' ');
                line.push_str(word);
            }
            used += 1 + wide;
            continue;
        }
        lines.extend(broken(word, wide, width));
        used = lines.last().map_or(0, |line| columns(line));
    }
    if lines.is_empty() {
        lines.push(String::new());
    }
    lines
}

/// A word that is too wide breaks first where a number was tied to its unit, then behind a stroke, hyphen or stop, and only
/// then anywhere.
fn broken(word: &str, wide: usize, width: usize) -> Vec<String> {
    if wide <= width {
        return vec![word.to_owned()];
    }
    if word.contains(TIED) {
        return wrap(&word.replace(TIED, " "), width);
    }
    let mut lines: Vec<String> = vec![String::new()];
    for part in word.split_inclusive(['/', '-', '.', '_']) {
        let last = lines.last().map_or("", String::as_str);
        let joined = format!("{last}{part}");
        if columns(&joined) <= width {
            lines.pop();
            lines.push(joined);
        } else {
            lines.extend(pieces(part, width));
        }
    }
    lines.retain(|line| !line.is_empty());
    lines
}

/// The lines with one lead before the first and another before all that follow.
pub(super) fn hanging(first: &str, rest: &str, text: &str, width: usize) -> Vec<String> {
    let room = width.saturating_sub(columns(first).max(columns(rest)));
    let lead = |number: usize| if number == 0 { first } else { rest };
    wrap(text, room).into_iter().enumerate().map(|(number, line)| format!("{}{line}", lead(number))).collect()
}

/// The text filled up with spaces to this width.
pub(super) fn padded(text: &str, width: usize, align: Align) -> String {
    let gap = " ".repeat(width.saturating_sub(columns(text)));
    match align {
        Align::Left => format!("{text}{gap}"),
        Align::Right => format!("{gap}{text}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_break_at_spaces_and_long_words_anywhere() {
        assert_eq!(wrap("open the air slowly", 9), ["open the", "air", "slowly"]);
        assert_eq!(wrap("unscrewing", 4), ["unsc", "rewi", "ng"]);
        assert_eq!(wrap("demand/film-bearing", 14), ["demand/film-", "bearing"]);
        assert_eq!(wrap("", 4), [""]);
    }

    #[test]
    fn a_number_leaves_its_unit_only_where_both_cannot_stand() {
        assert_eq!(wrap("needs 59.3\u{A0}bar", 12), ["needs", "59.3\u{A0}bar"]);
        assert_eq!(wrap("59.3\u{A0}bar", 5), ["59.3", "bar"]);
    }
}
