//! Any text as a catalogue file: no panic, every mistake inside the text.
#![no_main]

use libfuzzer_sys::fuzz_target;
use oilway_catalogue::catalogue_from;

fuzz_target!(|text: &str| {
    let (_, mistakes) = catalogue_from(&[("parts.toml", text)]);
    assert!(mistakes.iter().all(|m| m.at.start <= m.at.end && m.at.end <= text.len()));
});
