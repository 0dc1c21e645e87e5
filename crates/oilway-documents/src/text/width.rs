//! How wide a text stands on a screen or in a fixed-width print, and how a hostile one is made harmless.

use oilway_text::{Arg, Message, Reader, message, say};
use unicode_segmentation::UnicodeSegmentation;
use unicode_width::{UnicodeWidthChar, UnicodeWidthStr};

/// Takes the place of a character that would move, hide or reverse what stands around it.
const VISIBLE_MARK: char = '\u{FFFD}';
/// Keeps a number and its unit on one line; written as a plain space in the end.
pub(super) const TIED: char = '\u{A0}';

/// The columns that a text takes.
pub(super) fn columns(text: &str) -> usize {
    UnicodeWidthStr::width(text)
}

/// The sentence for this reader, harmless whatever names it holds; numbers are tied to their units.
pub(super) fn said(message: &Message, reader: &Reader) -> String {
    // What names hold is harmless by now: a line break that is left belongs to the sentence.
    clean(&say(&harmless(message, reader), reader).replace('\n', " "))
}

/// The same for an argument that stands alone in a cell.
pub(super) fn said_alone(arg: &Arg, reader: &Reader) -> String {
    said(&message!("documents-alone", value = arg.clone()), reader)
}

fn harmless(message: &Message, reader: &Reader) -> Message {
    let args = message.args.iter().map(|(name, arg)| (*name, harmless_arg(arg, reader))).collect();
    Message { key: message.key, args }
}

fn harmless_arg(arg: &Arg, reader: &Reader) -> Arg {
    match arg {
        Arg::Text(text) => Arg::Text(clean(text)),
        Arg::Message(message) => Arg::Message(harmless(message, reader)),
        Arg::List(items) => Arg::List(items.iter().map(|item| harmless_arg(item, reader)).collect()),
        Arg::Quantity(quantity) => {
            let show = if reader.both { oilway_units::show_both } else { oilway_units::show };
            Arg::Text(tied(&show(*quantity, reader.units)))
        }
        Arg::Span(..) | Arg::Count(_) | Arg::Number(_) => arg.clone(),
    }
}

/// Spaces become tied, but not the one before a bracket: there a line may end.
fn tied(text: &str) -> String {
    text.replace(' ', "\u{A0}").replace("\u{A0}(", " (")
}

/// Every control and formatting character replaced by a mark that shows: those of the C0 set by their picture.
///
/// The joiner stays, for it holds families of pictures together and changes nothing else.
pub(super) fn clean(text: &str) -> String {
    text.chars().map(clean_char).collect()
}

fn clean_char(c: char) -> char {
    match c {
        '\0'..='\u{1F}' => char::from_u32(0x2400 + c as u32).unwrap_or(VISIBLE_MARK),
        '\u{7F}' => '\u{2421}',
        '\u{80}'..='\u{9F}' => VISIBLE_MARK,
        // Soft hyphen, marks of direction and their isolates, invisible operators, the byte order mark, tags, line and
        // paragraph separators, interlinear marks: all of them invisible.
        '\u{AD}'
        | '\u{61C}'
        | '\u{180E}'
        | '\u{200B}'
        | '\u{200C}'
        | '\u{200E}'
        | '\u{200F}'
        | '\u{2028}'..='\u{202E}'
        | '\u{2060}'..='\u{206F}'
        | '\u{FEFF}'
        | '\u{FFF9}'..='\u{FFFC}'
        | '\u{E0000}'..='\u{E007F}' => VISIBLE_MARK,
        c => c,
    }
}

/// Pieces of a text that are no wider than this, in order; nothing is lost. A single character that is wider still is shown by
/// the visible mark.
pub(super) fn pieces(text: &str, width: usize) -> Vec<String> {
    let mut lines = vec![String::new()];
    let mut used = 0;
    for piece in text.graphemes(true).flat_map(|cluster| narrow(cluster, width)) {
        let wide = columns(&piece);
        if used + wide > width {
            lines.push(String::new());
            used = 0;
        }
        if let Some(line) = lines.last_mut() {
            line.push_str(&piece);
        }
        used += wide;
    }
    lines
}

/// A cluster of characters as it is, or in its characters where it is too wide to be kept together.
fn narrow(cluster: &str, width: usize) -> Vec<String> {
    if columns(cluster) <= width {
        return vec![cluster.to_owned()];
    }
    let fits = |c: char| if UnicodeWidthChar::width(c).unwrap_or(1) <= width { c } else { VISIBLE_MARK };
    cluster.chars().map(|c| fits(c).to_string()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn control_characters_show_and_direction_marks_cannot_turn_a_line() {
        assert_eq!(clean("a\u{1b}[31mb\u{7f}\n\t"), "a\u{241B}[31mb\u{2421}\u{240A}\u{2409}");
        assert_eq!(clean("x\u{202E}y\u{200B}z\u{FEFF}"), "x\u{FFFD}y\u{FFFD}z\u{FFFD}");
        assert_eq!(clean("Ärmel µ 6 × 1 שמן 油 👩‍🔧"), "Ärmel µ 6 × 1 שמן 油 👩‍🔧");
    }

    #[test]
    fn a_long_word_is_cut_and_nothing_of_it_is_lost() {
        let cut = pieces("油油油油油ab", 4);
        assert_eq!(cut, ["油油", "油油", "油ab"]);
    }

    #[test]
    fn a_number_stays_with_its_unit() {
        assert_eq!(tied("59.3 bar (860 psi)"), "59.3\u{A0}bar (860\u{A0}psi)");
    }
}
