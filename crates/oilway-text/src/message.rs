//! [`Message`]: what is to be said, as a key and typed arguments, until somebody reads it. Only then does the reader's
//! choice of units and language turn it into a sentence.

use oilway_units::{AnyQuantity, every_quantity};

/// Something to say: the key of a sentence and what belongs into it.
#[derive(Clone, Debug, PartialEq)]
pub struct Message {
    /// The key of the sentence in the catalogues, for example `check-line-start`.
    pub key: &'static str,
    /// The arguments by the names that the sentence uses.
    pub args: Vec<(&'static str, Arg)>,
}

/// What a sentence can hold.
#[derive(Clone, Debug, PartialEq)]
pub enum Arg {
    /// A quantity, shown in the reader's units.
    Quantity(AnyQuantity),
    /// A range of a quantity from its lower to its upper end.
    Span(AnyQuantity, AnyQuantity),
    /// Words that are shown as they are: a name, a tag, a line of a file.
    Text(String),
    /// A number of things; a sentence may choose singular and plural by it.
    Count(i64),
    /// A bare number.
    Number(f64),
    /// Another message inside this one.
    Message(Message),
    /// Several things in a row: `a, b and c`.
    List(Vec<Arg>),
}

impl Message {
    /// A message without arguments.
    pub const fn new(key: &'static str) -> Self {
        Message { key, args: Vec::new() }
    }

    /// The message with one more argument.
    #[must_use]
    pub fn with(mut self, name: &'static str, arg: impl Into<Arg>) -> Self {
        self.args.push((name, arg.into()));
        self
    }
}

/// A [`Message`] from its key and its arguments.
///
/// ```
/// use oilway_text::{Arg, message};
/// use oilway_units::Length;
///
/// let bore = Length::from_millimetres(8.0);
/// let said = message!("list-pair", first = bore, second = "P4");
/// assert_eq!(said.args[1], ("second", Arg::Text("P4".to_owned())));
/// ```
#[macro_export]
macro_rules! message {
    ($key:literal $(, $name:ident = $value:expr)* $(,)?) => {
        $crate::Message { key: $key, args: vec![$((stringify!($name), $crate::Arg::from($value))),*] }
    };
}

macro_rules! quantities_are_arguments {
    ($($name:ident)+) => { $(
        impl From<oilway_units::$name> for Arg {
            fn from(quantity: oilway_units::$name) -> Self {
                Arg::Quantity(quantity.into())
            }
        }
        impl From<(oilway_units::$name, oilway_units::$name)> for Arg {
            fn from((low, high): (oilway_units::$name, oilway_units::$name)) -> Self {
                Arg::Span(low.into(), high.into())
            }
        }
    )+ };
}
every_quantity!(quantities_are_arguments);

macro_rules! counts_are_arguments {
    ($($integer:ty)+) => { $(
        impl From<$integer> for Arg {
            fn from(count: $integer) -> Self {
                // A number of things above 9·10¹⁸ is beyond any machine: the largest number stands for it.
                Arg::Count(i64::try_from(count).unwrap_or(i64::MAX))
            }
        }
    )+ };
}
counts_are_arguments!(u8 u16 u32 u64 usize i32 i64);

impl From<AnyQuantity> for Arg {
    fn from(quantity: AnyQuantity) -> Self {
        Arg::Quantity(quantity)
    }
}
impl From<&str> for Arg {
    fn from(text: &str) -> Self {
        Arg::Text(text.to_owned())
    }
}
impl From<String> for Arg {
    fn from(text: String) -> Self {
        Arg::Text(text)
    }
}
impl From<&String> for Arg {
    fn from(text: &String) -> Self {
        Arg::Text(text.clone())
    }
}
impl From<f64> for Arg {
    fn from(number: f64) -> Self {
        Arg::Number(number)
    }
}
impl From<Message> for Arg {
    fn from(message: Message) -> Self {
        Arg::Message(message)
    }
}
impl<T: Into<Arg>> From<Vec<T>> for Arg {
    fn from(items: Vec<T>) -> Self {
        Arg::List(items.into_iter().map(Into::into).collect())
    }
}
