//! The list of kinds.

use std::collections::BTreeSet;

use oilway_physics::points::{KINDS, Wanted, kind};

#[test]
fn every_kind_has_its_own_name_and_every_field_says_what_it_means() {
    let mut ids = BTreeSet::new();
    for kind in KINDS {
        assert!(ids.insert(kind.id()), "{}", kind.id());
        assert!(!kind.title().is_empty());
        let mut names = BTreeSet::new();
        for field in kind.fields() {
            assert!(names.insert(field.name), "{}: {} stands twice", kind.id(), field.name);
            assert!(
                field.meaning.len() > 20 && field.meaning.ends_with('.'),
                "{}: {}",
                kind.id(),
                field.name
            );
        }
    }
    assert_eq!(ids.len(), 16);
    assert!(kind("rolling bearing").is_some() && kind("bearing of some sort").is_none());
}

#[test]
fn every_span_lies_in_its_range_and_runs_upwards() {
    for kind in KINDS {
        for field in kind.fields() {
            match field.wanted {
                Wanted::Word(words) => assert!(!words.is_empty()),
                Wanted::Quantity { range, unknown: [low, typical, high], .. } => {
                    assert!(low <= typical && typical <= high && low < high, "{}: {}", kind.id(), field.name);
                    assert!(
                        [low, typical, high].iter().all(|si| range.holds(*si)),
                        "{}: {}",
                        kind.id(),
                        field.name
                    );
                }
            }
        }
    }
}
