//! The boxes by name: what was written into each, and the values that make sense there.

use std::collections::BTreeMap;

use oilway_catalogue::reading::nearest;
use oilway_physics::Range;
use oilway_store::Assumption;
use oilway_text::{Arg, Message, message};
use oilway_units::{AnyQuantity, Entry, Origin, Quantity, Said, read_any};

/// What is wrong, and its cure.
pub(super) type Problem = (Message, Message);

/// The names of the boxes: first the six, then what only a question asks for.
const NAMES: [&str; 16] = [
    "temperature",
    "lubricant",
    "length",
    "bore",
    "tube",
    "pressure",
    "ratio",
    "air",
    "kind",
    "yield",
    "yield_at",
    "halving",
    "rest",
    "efficiency",
    "end",
    "reset",
];

/// What was written, and what is wrong with it so far.
pub(super) struct Boxes<'a> {
    given: BTreeMap<&'static str, &'a str>,
    pub(super) problems: Vec<Problem>,
}

impl<'a> Boxes<'a> {
    /// Reads `name=value` texts.
    pub(super) fn new(texts: &'a [String]) -> Self {
        let mut boxes = Boxes { given: BTreeMap::new(), problems: Vec::new() };
        for text in texts {
            let Some((name, value)) = text.split_once('=') else {
                boxes.wrong(message!("oilway-no-pair", text = text), message!("oilway-no-pair-cure"));
                continue;
            };
            let name = name.trim();
            let Some(known) = NAMES.into_iter().find(|known| *known == name) else {
                let cure = match nearest(name, NAMES) {
                    Some(near) => message!("oilway-perhaps", word = near),
                    None => message!("oilway-no-input-cure", names = NAMES.map(Arg::from).to_vec()),
                };
                boxes.wrong(message!("oilway-no-input", formula = "cold-start", name = name), cure);
                continue;
            };
            if boxes.given.insert(known, value.trim()).is_some() {
                boxes.wrong(message!("oilway-twice", name = known), message!("oilway-twice-cure"));
            }
        }
        boxes
    }

    pub(super) fn wrong(&mut self, what: Message, cure: Message) {
        self.problems.push((what, cure));
    }

    /// What stands in a box; none where it is empty or nobody knows.
    pub(super) fn text(&self, name: &str) -> Option<&'a str> {
        self.given.get(name).copied().filter(|text| !matches!(*text, "" | "?" | "unknown"))
    }

    /// The two boxes say the same thing twice.
    pub(super) fn either(&mut self, one: &'static str, other: &'static str) {
        if self.text(one).is_some() && self.text(other).is_some() {
            self.wrong(
                message!("oilway-cold-either", one = one, other = other),
                message!("oilway-cold-either-cure"),
            );
        }
    }

    /// The quantity in a box; none where it is empty, unknown or wrong.
    pub(super) fn said<T: Quantity>(&mut self, name: &'static str, low: T, high: T) -> Option<Entry<T>> {
        let text = self.text(name)?;
        self.read(name, text, low, high)
    }

    /// The quantity in a box, or what is taken where nobody knows.
    pub(super) fn entry<T: Quantity>(
        &mut self,
        name: &'static str,
        (low, high): (T, T),
        assumed: &Assumption,
    ) -> Entry<T> {
        self.said(name, low, high).unwrap_or_else(|| assumed.entry())
    }

    /// A quantity in the words of a box, within what makes sense.
    pub(super) fn read<T: Quantity>(
        &mut self,
        name: &'static str,
        text: &str,
        low: T,
        high: T,
    ) -> Option<Entry<T>> {
        let of = |quantity: AnyQuantity| T::from_si(quantity.si);
        let said = match read_any(T::DIMENSION, text) {
            Ok(said) => said.map(of),
            Err(error) => {
                let what = message!("oilway-in-input", name = name, what = Message::from(&error));
                self.wrong(what, allowed(low, high));
                return None;
            }
        };
        let ends = match said {
            Said::Value(value) => [value, value],
            Said::Range(from, to) => [from, to],
            Said::Unknown => return None,
        };
        let range = Range::Between(low.si(), high.si());
        if let Some(end) = ends.into_iter().find(|end| !range.holds(end.si())) {
            let value = AnyQuantity::new(T::DIMENSION, end.si());
            self.wrong(message!("oilway-outside", name = name, value = value), allowed(low, high));
            return None;
        }
        said.entry().map(|entry| entry.with_origin(Origin::Said))
    }
}

fn allowed<T: Quantity>(low: T, high: T) -> Message {
    let of = |value: T| Arg::from(AnyQuantity::new(T::DIMENSION, value.si()));
    message!("oilway-cold-allowed", low = of(low), high = of(high))
}
