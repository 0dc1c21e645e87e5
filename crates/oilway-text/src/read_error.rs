//! Sentences for what is wrong with a quantity that could not be read.

use oilway_units::{AbsolutePressure, Dimension, ReadError, ReadErrorKind, Unit, every_quantity};

use crate::{Arg, Message, message};

macro_rules! names_of_dimensions {
    ($($name:ident)+) => {
        /// What a dimension is called: `a length`, `a gauge pressure`.
        pub const fn name_of(dimension: Dimension) -> Message {
            match dimension { $(Dimension::$name => Message::new(concat!("dimension-", stringify!($name)))),+ }
        }
    };
}
every_quantity!(names_of_dimensions);

impl From<&ReadError> for Message {
    fn from(error: &ReadError) -> Message {
        let wanted = name_of(error.dimension);
        sentence(&error.kind, error.dimension).with("text", error.text.as_str()).with("wanted", wanted)
    }
}

impl From<ReadError> for Message {
    fn from(error: ReadError) -> Message {
        Message::from(&error)
    }
}

/// The sentence of each kind of fault, still without the text and what was wanted.
fn sentence(kind: &ReadErrorKind, dimension: Dimension) -> Message {
    use ReadErrorKind::*;
    let atmosphere = AbsolutePressure::STANDARD_ATMOSPHERE.above(AbsolutePressure::VACUUM);
    match kind {
        Empty => message!("read-empty", example = example(dimension)),
        TooLong { length, most } => message!("read-too-long", length = *length, most = *most),
        NoNumber => message!("read-no-number", example = example(dimension)),
        DoubtfulComma { decimal, thousands } => {
            message!("read-doubtful-comma", decimal = decimal, thousands = thousands)
        }
        MissingUnit { examples } => message!("read-missing-unit", examples = choice(examples)),
        UnknownUnit { unit, nearest: Some(nearest), .. } => {
            message!("read-misspelt-unit", unit = unit, nearest = *nearest)
        }
        UnknownUnit { unit, nearest: None, units } => {
            message!("read-unknown-unit", unit = unit, units = choice(units))
        }
        WrongDimension { unit, measures, units } => {
            message!(
                "read-wrong-dimension",
                unit = unit,
                measures = name_of(*measures),
                units = choice(units)
            )
        }
        AbsoluteForGauge { .. } => message!("read-absolute-for-gauge", atmosphere = atmosphere),
        GaugeForAbsolute { instead, .. } => {
            message!("read-gauge-for-absolute", instead = *instead, atmosphere = atmosphere)
        }
        Backwards { first, second } => message!("read-backwards", first = *first, second = *second),
        BelowNothing { least } => message!("read-below-nothing", least = *least),
        NotFinite => message!("read-not-finite"),
        BadTolerance => message!("read-bad-tolerance", example = range_example(dimension)),
    }
}

/// `a, b or c`.
fn choice(items: &[impl AsRef<str>]) -> Arg {
    let mut rest = items.iter().rev().map(|item| Arg::from(item.as_ref()));
    let Some(last) = rest.next() else { return Arg::from("") };
    let Some(before) = rest.next() else { return last };
    let pair = Arg::from(message!("choice-pair", first = before, second = last));
    rest.fold(pair, |rest, first| message!("choice-more", first = first, rest = rest).into())
}

/// A quantity as one may write it.
fn example(dimension: Dimension) -> String {
    format!("12 {}", Unit::main(dimension).symbol()).trim_end().to_owned()
}

/// A range as one may write it.
fn range_example(dimension: Dimension) -> String {
    let unit = if dimension == Dimension::Ratio { "%" } else { Unit::main(dimension).symbol() };
    format!("9..15 {unit}").trim_end().to_owned()
}
