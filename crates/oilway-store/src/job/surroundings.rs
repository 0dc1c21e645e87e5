//! What the surroundings do, in the words of a job, and how severe each word is.

use oilway_catalogue::reading::Table;
use oilway_model::Surroundings;
use oilway_physics::points::Severity;
use oilway_text::message;

use crate::asked::not_among;

const fn word(dirt: u8, water: u8, vibration: u8) -> Severity {
    Severity { dirt, water, vibration }
}

/// The words, mildest first. Their order in a job does not matter; the severest of each sort counts.
pub(crate) const WORDS: &[(&str, Severity)] = &[
    ("clean", word(0, 0, 0)),
    ("dry", word(0, 0, 0)),
    ("open product", word(0, 0, 0)),
    ("dust", word(1, 0, 0)),
    ("heavy dust", word(2, 0, 0)),
    ("abrasive dust", word(3, 0, 0)),
    ("mud", word(2, 2, 0)),
    ("damp", word(0, 1, 0)),
    ("rain", word(0, 2, 0)),
    ("splash", word(0, 2, 0)),
    ("spray", word(0, 3, 0)),
    ("hot spray", word(0, 3, 0)),
    ("washing", word(0, 3, 0)),
    ("vibration", word(0, 0, 1)),
    ("heavy vibration", word(0, 0, 2)),
    ("shock", word(0, 0, 2)),
];

/// The surroundings that a table tells under `surroundings`.
pub(super) fn surroundings(table: &Table<'_>) -> Surroundings {
    let Some(item) = table.item("surroundings") else { return Surroundings::default() };
    let items = if item.is_text() { vec![item] } else { item.list().unwrap_or_default() };
    let mut found = Surroundings::default();
    for item in items {
        let Some(text) = item.text() else { continue };
        let Some((word, severity)) = WORDS.iter().find(|(word, _)| *word == text.value.trim()) else {
            let words: Vec<&str> = WORDS.iter().map(|(word, _)| *word).collect();
            not_among(&item, text.value, message!("store-unknown-surroundings", word = text.value), &words);
            continue;
        };
        found.words.push((*word).to_owned());
        found.severity = severest(found.severity, *severity);
    }
    found
}

fn severest(a: Severity, b: Severity) -> Severity {
    Severity {
        dirt: a.dirt.max(b.dirt),
        water: a.water.max(b.water),
        vibration: a.vibration.max(b.vibration),
    }
}
