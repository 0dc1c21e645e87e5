//! A small design put together by hand from the house range, with an answer, findings and assumptions, for the tests of the sheets.
//! Its numbers are invented: they test what a sheet shows, not what a system does.

mod answer;
mod lines;
mod package;
mod surroundings;

use std::sync::Arc;

use oilway_catalogue::{Part, house};
use oilway_model::*;
use oilway_text::message;
use oilway_units::*;

pub(crate) use answer::{small_answer, small_assumptions, small_findings};
use lines::{dividers, joints, network};
use package::package;
use surroundings::{conditions, point};

pub(crate) fn known<T: Quantity>(value: T) -> Entry<T> {
    Entry::known(value)
}

/// The first part of the house range of this kind whose description holds these words.
pub(crate) fn house_part(kind: &str, words: &str) -> Arc<Part> {
    house::catalogue().of_kind(kind).find(|part| part.description.contains(words)).unwrap().clone()
}

/// Some fitting of the house range.
pub(crate) fn fitting(number: usize) -> Arc<Part> {
    house::catalogue().of_kind("fitting").nth(number).unwrap().clone()
}

/// Two dividers, five points, a cold room.
pub(crate) fn small_design() -> Design {
    Design {
        name: "conveyor T".to_owned(),
        units: None,
        conditions: conditions(),
        points: vec![
            point("shaft 1", 0, "G 1/8", 0),
            point("shaft 2", 0, "G 1/8", 0),
            point("slide", 0, "M6x1", 0),
            point("belt 1", 1, "G 1/8", 1),
            point("belt 2", 1, "G 1/8", 1),
        ],
        network: network(),
        conduits: vec![
            house_part("tube", "Stainless steel tube, 8 × 1"),
            house_part("tube", "Stainless steel tube, 6 × 1"),
            house_part("hose", "Hose for moving points, bore 4"),
        ],
        dividers: dividers(),
        package: package(),
        control: Control { pause: Time::from_minutes(45.0), cycles: 2, time_out: Time::from_minutes(12.0) },
        joints: joints(),
        reasons: vec![Reason {
            at: "package.gauge".to_owned(),
            chosen: "10074".to_owned(),
            kept: true,
            why: message!("solve-kept"),
        }],
        cutting_allowance: known(Length::from_millimetres(100.0)),
    }
}
