//! The formula, the one shape in which engineering knowledge enters the house.
//!
//! [`formula!`](crate::formula) declares a typed function *and* its [`Formula`] record from the same words, so that the
//! calculation desk, the "why" chain, the handbook page and the documentation cannot disagree with the code.

use oilway_units::{AnyQuantity, Dimension};

/// How far a source can be trusted; printed wherever the source is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Standing {
    /// The text was read.
    Seen,
    /// Read in a reproduction or quotation.
    SecondHand,
    /// Written from memory, the text was not seen.
    Memory,
    /// Practice of the trade, no source.
    CommonPractice,
    /// Derived or computed for this project.
    Own,
}

impl Standing {
    /// The word that stands in files and on sheets.
    pub const fn word(self) -> &'static str {
        match self {
            Standing::Seen => "seen",
            Standing::SecondHand => "second-hand",
            Standing::Memory => "memory",
            Standing::CommonPractice => "common-practice",
            Standing::Own => "own",
        }
    }
}

/// Where a formula or a number comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Source {
    /// A key of `data/sources.toml`.
    pub key: &'static str,
    /// Page, clause, table or equation.
    pub place: &'static str,
    /// How far it can be trusted.
    pub standing: Standing,
}

/// The values that an input may take, in SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Range {
    /// Any finite number.
    Any,
    /// Zero or more.
    NotNegative,
    /// More than zero.
    Positive,
    /// From the first to the second, both included, in SI.
    Between(f64, f64),
}

impl Range {
    /// Whether a value in SI lies inside.
    pub fn holds(self, si: f64) -> bool {
        si.is_finite()
            && match self {
                Range::Any => true,
                Range::NotNegative => si >= 0.0,
                Range::Positive => si > 0.0,
                Range::Between(low, high) => (low..=high).contains(&si),
            }
    }
}

/// One letter of an equation.
#[derive(Clone, Copy, Debug)]
pub struct Symbol {
    /// The name of the parameter in code, files and on the command line.
    pub name: &'static str,
    /// The letter in the equation.
    pub letter: &'static str,
    /// What it measures.
    pub dimension: Dimension,
    /// What it means, in English; translations overlay it by formula id and name.
    pub meaning: &'static str,
    /// The values that it may take.
    pub range: Range,
}

/// A formula as data: what the calculation desk lists, the "why" chain prints and the handbook shows.
#[derive(Debug)]
pub struct Formula {
    /// The lasting name, `family/formula`.
    pub id: &'static str,
    /// One line in English that says what it gives.
    pub title: &'static str,
    /// The equation as text.
    pub equation: &'static str,
    /// The inputs, in order.
    pub inputs: &'static [Symbol],
    /// The result.
    pub output: Symbol,
    /// Where it holds and where it does not.
    pub validity: &'static str,
    /// Where it comes from.
    pub sources: &'static [Source],
    /// The function on SI values; `None` where the inputs are legal and yet no answer exists.
    pub evaluate_si: fn(&[f64]) -> Option<f64>,
}

/// Why a formula gave no number.
#[derive(Clone, Debug, PartialEq)]
pub enum NoAnswer {
    /// Too few or too many inputs.
    WrongNumberOfInputs {
        /// How many the formula takes.
        wanted: usize,
        /// How many came.
        got: usize,
    },
    /// An input of another dimension.
    WrongDimension {
        /// The input.
        input: &'static str,
        /// What it must measure.
        wanted: Dimension,
        /// What came.
        got: Dimension,
    },
    /// An input outside the values that it may take.
    OutOfRange {
        /// The input.
        input: &'static str,
        /// What came.
        got: AnyQuantity,
        /// What is allowed.
        allowed: Range,
    },
    /// Legal inputs to which the formula has no answer: its validity says why.
    OutsideValidity,
}

impl Formula {
    /// Evaluates the formula on quantities of the right dimensions.
    ///
    /// # Errors
    /// [`NoAnswer`] names the first input that does not fit, or says that the formula does not reach so far.
    pub fn evaluate(&self, inputs: &[AnyQuantity]) -> Result<AnyQuantity, NoAnswer> {
        if inputs.len() != self.inputs.len() {
            return Err(NoAnswer::WrongNumberOfInputs { wanted: self.inputs.len(), got: inputs.len() });
        }
        let mut si = [0.0; 16];
        for (slot, (symbol, given)) in si.iter_mut().zip(self.inputs.iter().zip(inputs)) {
            if given.dimension != symbol.dimension {
                return Err(NoAnswer::WrongDimension {
                    input: symbol.name,
                    wanted: symbol.dimension,
                    got: given.dimension,
                });
            }
            if !symbol.range.holds(given.si) {
                return Err(NoAnswer::OutOfRange { input: symbol.name, got: *given, allowed: symbol.range });
            }
            *slot = given.si;
        }
        let value = (self.evaluate_si)(&si[..inputs.len()])
            .filter(|v| v.is_finite())
            .ok_or(NoAnswer::OutsideValidity)?;
        Ok(AnyQuantity { dimension: self.output.dimension, si: value })
    }
}

/// Declares a formula once: the typed function, its documentation and its [`Formula`] record.
///
/// The doc comment above holds the summary and an example that runs; the macro adds equation, symbols, validity and source.
/// At most 16 inputs.
#[macro_export]
macro_rules! formula {
    (
        $(#[$doc:meta])*
        $record:ident = $id:literal,
        title: $title:literal,
        equation: $equation:literal,
        validity: $validity:literal,
        sources: [$( $key:literal, $place:literal, $standing:ident );+ $(;)?],
        fn $function:ident( $( $input:ident : $kind:ty, $letter:literal, $meaning:literal, $range:expr );+ $(;)? )
            -> $gives:ty, $out_letter:literal, $out_meaning:literal
        $body:block
    ) => {
        $(#[$doc])*
        ///
        /// # Equation
        /// ```text
        #[doc = $equation]
        /// ```
        ///
        /// # Symbols
        $( #[doc = concat!("* `", stringify!($input), "` ", $letter, " (", stringify!($kind), "): ", $meaning)] )+
        #[doc = concat!("* result ", $out_letter, ": ", $out_meaning)]
        ///
        /// # Validity
        #[doc = $validity]
        ///
        /// # Source
        $( #[doc = concat!("* `", $key, "`, ", $place, " (", stringify!($standing), ")")] )+
        #[allow(clippy::too_many_arguments)]
        pub fn $function($( $input: $kind ),+) -> $gives $body

        #[doc = concat!("The record of [`", stringify!($function), "`]: ", $title)]
        pub static $record: $crate::Formula = $crate::Formula {
            id: $id,
            title: $title,
            equation: $equation,
            inputs: &[$( $crate::Symbol {
                name: stringify!($input),
                letter: $letter,
                dimension: <$kind as oilway_units::Quantity>::DIMENSION,
                meaning: $meaning,
                range: $range,
            } ),+],
            output: $crate::Symbol {
                name: "result",
                letter: $out_letter,
                dimension: <<$gives as oilway_units::Outcome>::Gives as oilway_units::Quantity>::DIMENSION,
                meaning: $out_meaning,
                range: $crate::Range::Any,
            },
            validity: $validity,
            sources: &[$( $crate::Source { key: $key, place: $place, standing: $crate::Standing::$standing } ),+],
            evaluate_si: |si| {
                let mut si = si.iter().copied();
                $( let $input = <$kind as oilway_units::Quantity>::from_si(si.next()?); )+
                oilway_units::Outcome::outcome($function($( $input ),+))
            },
        };
    };
}
