//! How a kind is declared: once, in words that give the table of its fields, the typed view and the reading of it.

/// Declares an enum together with the words that stand for it in files.
macro_rules! words {
    ($(#[$doc:meta])* $name:ident { $( $(#[$about:meta])* $variant:ident = $word:literal ),+ $(,)? }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name { $( $(#[$about])* $variant ),+ }

        impl $name {
            /// The words in files, in the order of declaration.
            pub const WORDS: &'static [&'static str] = &[$($word),+];
            /// The word in files.
            pub const fn word(self) -> &'static str {
                match self { $( $name::$variant => $word ),+ }
            }
            /// What the word stands for.
            pub fn of(word: &str) -> Option<Self> {
                match word { $( $word => Some($name::$variant), )+ _ => None }
            }
        }
    };
}

/// Declares a kind: the typed view of its parts with one line for each field, and the record behind
/// [`Kind`](crate::Kind).
///
/// A field is `needed` (a part without it is refused, the view holds the plain type) or `maybe` (the view holds an
/// option). Lists are empty and flags are off where nothing is said.
macro_rules! kind {
    (
        $(#[$doc:meta])*
        $view:ident, $record:ident = $id:literal, $title:literal;
        $( @rating $rating:expr; )?
        $( @contradictions $contradictions:expr; )?
        $( $field:ident : $need:ident $sort:ident ( $($arg:tt)* ), $meaning:literal; )*
    ) => {
        $(#[$doc])*
        #[derive(Clone, Debug, PartialEq)]
        pub struct $view { $( #[doc = $meaning] pub $field: field_type!($need $sort ($($arg)*)), )* }

        impl $view {
            /// The view of a part, if it is of this kind and whole.
            #[allow(unused_variables, reason = "a kind without fields reads none")]
            pub fn of(part: &$crate::Part) -> Option<Self> {
                if part.kind.id() != $id {
                    return None;
                }
                Some($view { $( $field: field_read!(part, stringify!($field), $need $sort ($($arg)*)), )* })
            }
        }

        #[derive(Debug)]
        pub(crate) struct $record;

        impl $crate::Kind for $record {
            fn id(&self) -> &'static str {
                $id
            }
            fn title(&self) -> &'static str {
                $title
            }
            fn fields(&self) -> &'static [$crate::Field] {
                const FIELDS: &[$crate::Field] = &[ $( $crate::Field {
                    name: stringify!($field),
                    what: field_what!($sort ($($arg)*)),
                    needed: field_needed!($need $sort),
                    meaning: $meaning,
                }, )* ];
                FIELDS
            }
            fn is_complete(&self, part: &$crate::Part) -> bool {
                $view::of(part).is_some()
            }
            $( fn rating(&self, part: &$crate::Part) -> Option<oilway_units::Pressure> {
                let rating: fn(&$view) -> Option<oilway_units::Pressure> = $rating;
                rating(&$view::of(part)?)
            } )?
            $( fn contradictions(&self, part: &$crate::Part) -> Vec<$crate::Contradiction> {
                let contradictions: fn(&$view, &$crate::Part) -> Vec<$crate::Contradiction> = $contradictions;
                $view::of(part).map_or_else(Vec::new, |view| contradictions(&view, part))
            } )?
        }
    };
}

macro_rules! field_type {
    (needed Quantity ($kind:ident, $($range:tt)+)) => { oilway_units::$kind };
    (maybe Quantity ($kind:ident, $($range:tt)+)) => { Option<oilway_units::$kind> };
    (needed Word ($words:ident)) => { $words };
    (maybe Word ($words:ident)) => { Option<$words> };
    ($need:ident Words ($words:ident)) => { Vec<$words> };
    (needed Text ()) => { String };
    (maybe Text ()) => { Option<String> };
    (needed Part ($kind:literal)) => { String };
    (maybe Part ($kind:literal)) => { Option<String> };
    ($need:ident Parts ($kind:literal)) => { Vec<String> };
    (maybe Flag ()) => { bool };
}

macro_rules! field_what {
    (Quantity ($kind:ident, $($range:tt)+)) => {
        $crate::What::Quantity(
            <oilway_units::$kind as oilway_units::Quantity>::DIMENSION,
            oilway_physics::Range::$($range)+,
        )
    };
    (Word ($words:ident)) => { $crate::What::Word($words::WORDS) };
    (Words ($words:ident)) => { $crate::What::Words($words::WORDS) };
    (Text ()) => { $crate::What::Text };
    (Part ($kind:literal)) => { $crate::What::Part($kind) };
    (Parts ($kind:literal)) => { $crate::What::Parts($kind) };
    (Flag ()) => { $crate::What::Flag };
}

macro_rules! field_needed {
    (needed $sort:ident) => {
        true
    };
    (maybe $sort:ident) => {
        false
    };
}

macro_rules! field_read {
    ($part:ident, $name:expr, needed Quantity ($kind:ident, $($range:tt)+)) => {
        $part.quantity::<oilway_units::$kind>($name)?
    };
    ($part:ident, $name:expr, maybe Quantity ($kind:ident, $($range:tt)+)) => {
        $part.quantity::<oilway_units::$kind>($name)
    };
    ($part:ident, $name:expr, needed Word ($words:ident)) => {
        $words::of($part.word($name)?)?
    };
    ($part:ident, $name:expr, maybe Word ($words:ident)) => {
        $part.word($name).and_then($words::of)
    };
    ($part:ident, $name:expr, $need:ident Words ($words:ident)) => {
        $part.texts($name).iter().filter_map(|word| $words::of(word)).collect()
    };
    ($part:ident, $name:expr, $need:ident Parts ($kind:literal)) => {
        $part.texts($name).to_vec()
    };
    ($part:ident, $name:expr, needed $sort:ident ($($kind:literal)?)) => {
        $part.text($name)?.to_owned()
    };
    ($part:ident, $name:expr, maybe Flag ()) => {
        $part.flag($name)
    };
    ($part:ident, $name:expr, maybe $sort:ident ($($kind:literal)?)) => {
        $part.text($name).map(str::to_owned)
    };
}

pub(crate) use words;
