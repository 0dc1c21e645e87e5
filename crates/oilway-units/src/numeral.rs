//! Numbers as people write them: `12`, `0,7`, `1 000`, `3/4`, `1-1/2`, `½`, `2.5e-8`, `minus ten`, `three quarters`.
//! [`numeral`] takes one off the front of a text and hands back the rest.

/// Why there is no number at the front of a text.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Fault {
    /// None stands there.
    None,
    /// A comma that may be a decimal comma or stand between thousands; both readings, and what follows.
    DoubtfulComma { decimal: String, thousands: String, rest: String },
}

/// The number at the front and the text behind it.
pub(crate) fn numeral(text: &str) -> Result<(f64, &str), Fault> {
    let text = text.trim_start();
    if let Some(rest) = text.strip_prefix(['-', '−']).or_else(|| word(text, "minus")) {
        return unsigned(rest.trim_start()).map(|(number, rest)| (-number, rest));
    }
    let rest = text.strip_prefix('+').or_else(|| word(text, "plus")).unwrap_or(text);
    unsigned(rest.trim_start())
}

/// A number without a sign at the front, and the text behind it.
pub(crate) fn unsigned(text: &str) -> Result<(f64, &str), Fault> {
    if let Some((part, rest)) = vulgar(text) {
        return Ok((part, rest));
    }
    if let Some(found) = in_words(text) {
        return Ok(found);
    }
    let (number, whole, rest) = in_figures(text)?;
    Ok(with_fraction(number, whole, rest))
}

/// A number in figures may go on as a fraction `3/4`, or with one `1 1/2`, `1-1/2`, `1½`.
fn with_fraction(number: f64, whole: bool, rest: &str) -> (f64, &str) {
    if !whole {
        return (number, rest);
    }
    if let Some((denominator, rest)) = rest.strip_prefix('/').and_then(digits) {
        return (number / denominator, rest);
    }
    if let Some((part, rest)) = vulgar(rest.trim_start()) {
        return (number + part, rest);
    }
    // `1-1/2` is one and a half: as a range it would run backwards.
    let behind = if number >= 1.0 { rest.strip_prefix('-') } else { None };
    let behind = behind.or_else(|| rest.starts_with(' ').then(|| rest.trim_start()));
    match behind.and_then(fraction) {
        Some((part, rest)) if part < 1.0 => (number + part, rest),
        _ => (number, rest),
    }
}

/// `1/2`: figures, a stroke, figures.
fn fraction(text: &str) -> Option<(f64, &str)> {
    let (above, rest) = digits(text)?;
    let (below, rest) = rest.strip_prefix('/').and_then(digits)?;
    Some((above / below, rest))
}

/// Figures only.
fn digits(text: &str) -> Option<(f64, &str)> {
    let (figures, rest) = run(text);
    Some((figures.parse().ok()?, rest))
}

/// The figures at the front, possibly none, and the rest.
fn run(text: &str) -> (&str, &str) {
    let end = text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len());
    text.split_at(end)
}

/// A number in figures, whether it is whole, and the text behind it.
fn in_figures(text: &str) -> Result<(f64, bool, &str), Fault> {
    let (groups, rest) = groups(text);
    let mut mantissa = String::with_capacity(text.len().min(24));
    let fraction = match groups.as_slice() {
        [] => return Err(Fault::None),
        [(_, whole)] => {
            mantissa.push_str(whole);
            None
        }
        [first, .., last] => {
            let decimal = decimal_group(&groups, rest)?;
            let wholes = if decimal { groups.len() - 1 } else { groups.len() };
            let parted = groups[..wholes].iter().skip(1);
            let in_threes =
                (wholes < 2 || (1..=3).contains(&first.1.len())) && parted.clone().all(|g| g.1.len() == 3);
            if !in_threes
                || parted.clone().any(|g| g.0 != groups[1].0)
                || (decimal && wholes > 1 && last.0 == groups[1].0)
            {
                return Err(Fault::None);
            }
            groups[..wholes].iter().for_each(|g| mantissa.push_str(g.1));
            decimal.then_some(last.1)
        }
    };
    if let Some(fraction) = fraction {
        mantissa.push('.');
        mantissa.push_str(fraction);
    }
    if mantissa.trim_matches('.').is_empty() {
        return Err(Fault::None);
    }
    let (exponent, rest) = exponent(rest);
    let whole = fraction.is_none() && exponent.is_empty();
    mantissa.push_str(exponent);
    let number = mantissa.parse().map_err(|_| Fault::None)?;
    Ok((number, whole, rest))
}

/// Runs of figures with the sign before each: a point, a comma or a space (the first has none).
fn groups(text: &str) -> (Vec<(char, &str)>, &str) {
    let (first, mut rest) = run(text);
    let mut groups = vec![('\0', first)];
    while let Some(sign) = rest.chars().next() {
        let behind = &rest[sign.len_utf8()..];
        let (figures, after) = run(behind);
        let goes_on = match sign {
            '.' => !figures.is_empty() || !first.is_empty(),
            ',' => !figures.is_empty() && !first.is_empty(),
            // A space parts thousands only before exactly three figures that do not begin a fraction.
            ' ' | '\u{a0}' | '\u{202f}' | '\u{2009}' => figures.len() == 3 && !after.starts_with('/'),
            _ => false,
        };
        if !goes_on {
            break;
        }
        groups.push((if sign == '.' || sign == ',' { sign } else { ' ' }, figures));
        rest = after;
    }
    if groups.len() == 1 && first.is_empty() {
        groups.clear();
    }
    (groups, rest)
}

/// Whether the last of several groups stands behind a decimal sign. One lone comma before three figures may be
/// either, and is not guessed at.
fn decimal_group(groups: &[(char, &str)], rest: &str) -> Result<bool, Fault> {
    let (Some(first), Some(last)) = (groups.first(), groups.last()) else { return Ok(false) };
    let alike = groups.iter().filter(|group| group.0 == last.0).count();
    if last.0 == ' ' || alike > 1 {
        return Ok(false);
    }
    let doubtful = last.0 == ','
        && groups.len() == 2
        && last.1.len() == 3
        && (1..=3).contains(&first.1.len())
        && first.1.trim_start_matches('0').len() == first.1.len();
    if doubtful {
        return Err(Fault::DoubtfulComma {
            decimal: format!("{}.{}", first.1, last.1),
            thousands: format!("{}{}", first.1, last.1),
            rest: rest.trim().to_owned(),
        });
    }
    Ok(true)
}

/// `e-8` and the text behind it.
fn exponent(text: &str) -> (&str, &str) {
    let Some(behind) = text.strip_prefix(['e', 'E']) else { return ("", text) };
    let unsigned = behind.strip_prefix(['-', '+']).unwrap_or(behind);
    let (figures, rest) = run(unsigned);
    if figures.is_empty() { ("", text) } else { (&text[..text.len() - rest.len()], rest) }
}

/// A fraction that is one sign.
fn vulgar(text: &str) -> Option<(f64, &str)> {
    let sign = text.chars().next()?;
    let (above, below) = match sign {
        '½' => (1.0, 2.0),
        '⅓' => (1.0, 3.0),
        '⅔' => (2.0, 3.0),
        '¼' => (1.0, 4.0),
        '¾' => (3.0, 4.0),
        '⅛' => (1.0, 8.0),
        '⅜' => (3.0, 8.0),
        '⅝' => (5.0, 8.0),
        '⅞' => (7.0, 8.0),
        _ => return None,
    };
    Some((above / below, &text[sign.len_utf8()..]))
}

const SMALL: [&str; 20] = [
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
    "twenty",
];
const TENS: [&str; 8] = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];
const PARTS: [(&str, f64); 10] = [
    ("half", 2.0),
    ("halves", 2.0),
    ("third", 3.0),
    ("thirds", 3.0),
    ("quarter", 4.0),
    ("quarters", 4.0),
    ("eighth", 8.0),
    ("eighths", 8.0),
    ("sixteenth", 16.0),
    ("sixteenths", 16.0),
];

/// A number in words: one to ninety-nine, a half, three quarters, two and a half.
fn in_words(text: &str) -> Option<(f64, &str)> {
    if word(text, "zero").is_some() {
        return word(text, "zero").map(|rest| (0.0, rest));
    }
    if let Some((below, rest)) = part(text) {
        return Some((1.0 / below, of_a(rest)));
    }
    let (number, rest) = tens(text).or_else(|| small(text))?;
    if let Some((below, rest)) = part(joined(rest)) {
        return Some((number / below, of_a(rest)));
    }
    let and_a = ["and a", "and one"].iter().find_map(|words| word(rest.trim_start(), words));
    match and_a.and_then(|rest| part(rest.trim_start())) {
        Some((below, rest)) => Some((number + 1.0 / below, rest)),
        None => Some((number, rest)),
    }
}

/// One to twenty.
fn small(text: &str) -> Option<(f64, &str)> {
    let found = |(number, name): (u32, &&str)| word(text, name).map(|rest| (f64::from(number), rest));
    (1..).zip(SMALL.iter()).find_map(found)
}

/// Twenty to ninety-nine.
fn tens(text: &str) -> Option<(f64, &str)> {
    let found = |(number, name): (u32, &&str)| word(text, name).map(|rest| (f64::from(number * 10), rest));
    let (number, rest) = (2..).zip(TENS.iter()).find_map(found)?;
    match small(joined(rest)) {
        Some((unit, rest)) if unit < 10.0 => Some((number + unit, rest)),
        _ => Some((number, rest)),
    }
}

/// The denominator that this word names.
fn part(text: &str) -> Option<(f64, &str)> {
    PARTS.iter().find_map(|(name, below)| word(text, name).map(|rest| (*below, rest)))
}

/// What follows a space or a hyphen between words.
fn joined(text: &str) -> &str {
    text.strip_prefix('-').unwrap_or(text).trim_start()
}

/// `half an inch`, `quarter of a litre`: the little words say nothing.
fn of_a(text: &str) -> &str {
    ["of an", "of a", "an", "a"].iter().find_map(|words| word(text.trim_start(), words)).unwrap_or(text)
}

/// The text behind this word, if it stands at the front, whole.
pub(crate) fn word<'a>(text: &'a str, word: &str) -> Option<&'a str> {
    let front = text.get(..word.len())?;
    let rest = &text[word.len()..];
    (front.eq_ignore_ascii_case(word) && !rest.starts_with(char::is_alphanumeric)).then_some(rest)
}
