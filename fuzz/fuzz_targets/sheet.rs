//! Any bytes as a survey or a catalogue in a spreadsheet, workbook or text: no panic.
#![no_main]

use libfuzzer_sys::fuzz_target;
use oilway_catalogue::{house, lubricants};
use oilway_store::{read_catalogue_sheets, read_survey};

fuzz_target!(|bytes: &[u8]| {
    read_survey("survey", bytes, house::catalogue(), lubricants::library());
    read_catalogue_sheets("parts", bytes, house::catalogue());
});
