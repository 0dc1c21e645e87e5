//! Any text as a quantity of any dimension: no panic, and what is read is finite.
#![no_main]

use libfuzzer_sys::fuzz_target;
use oilway_units::{Dimension, Said, read_any};

fuzz_target!(|text: &str| {
    for dimension in Dimension::ALL {
        match read_any(*dimension, text) {
            Ok(Said::Value(value)) => assert!(value.si.is_finite()),
            Ok(Said::Range(low, high)) => assert!(low.si < high.si),
            Ok(Said::Unknown) | Err(_) => {}
        }
    }
});
