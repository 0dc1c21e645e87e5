//! Entries: values with their range and the value in force.

use oilway_units::*;
use proptest::prelude::*;

fn bar(value: f64) -> Pressure {
    Pressure::from_bar(value)
}

#[test]
fn a_known_entry_has_no_spread_and_cannot_be_moved() {
    let mut entry = Entry::known(bar(5.0));
    assert!(!entry.is_open());
    entry.settle(bar(9.0));
    assert_eq!(entry.get(), bar(5.0));
    assert_eq!(entry.origin(), Origin::Said);
}

#[test]
fn a_range_is_open_and_its_middle_is_in_force() {
    let entry = Entry::range(bar(8.0), bar(6.0));
    assert!(entry.is_open());
    assert_eq!(
        (entry.low(), entry.typical(), entry.high(), entry.get()),
        (bar(6.0), bar(7.0), bar(8.0), bar(7.0))
    );
}

#[test]
fn an_assumption_keeps_its_key_and_its_typical_value() {
    let entry = Entry::assumed(bar(4.0), bar(5.0), bar(7.0), "assume-air");
    assert_eq!(entry.origin(), Origin::Assumed("assume-air"));
    assert_eq!(entry.get(), bar(5.0));
    assert_eq!(entry.with_origin(Origin::Measured).origin(), Origin::Measured);
}

#[test]
fn a_typical_value_outside_its_range_is_moved_inside() {
    assert_eq!(Entry::assumed(bar(4.0), bar(9.0), bar(7.0), "x").typical(), bar(7.0));
    assert_eq!(Entry::assumed(bar(4.0), bar(f64::NAN), bar(7.0), "x").typical(), bar(4.0));
}

#[test]
fn a_study_walks_entries_of_all_dimensions() {
    let mut pressure = Entry::range(bar(5.0), bar(7.0));
    let mut cold = Entry::range(Temperature::from_celsius(-10.0), Temperature::from_celsius(40.0));
    let open: [&mut dyn OpenEntry; 2] = [&mut pressure, &mut cold];
    for entry in open {
        assert!(entry.is_open());
        let high = entry.high_si();
        entry.put_si(high);
        assert_eq!(entry.now().si, high);
        assert!(entry.low_si() < entry.typical_si() && entry.typical_si() < entry.now_si());
    }
    assert_eq!(pressure.get(), bar(7.0));
    assert_eq!(cold.get(), Temperature::from_celsius(40.0));
    assert_eq!(OpenEntry::dimension(&cold), Dimension::Temperature);
}

#[test]
fn what_was_said_becomes_an_entry() {
    assert_eq!(read::<Pressure>("5 bar").unwrap().entry(), Some(Entry::known(bar(5.0))));
    assert_eq!(read::<Pressure>("5..7 bar").unwrap().entry(), Some(Entry::range(bar(5.0), bar(7.0))));
    assert_eq!(read::<Pressure>("?").unwrap().entry(), None);
}

proptest! {
    #[test]
    fn the_value_in_force_never_leaves_the_range(a in any::<f64>(), b in any::<f64>(), put in any::<f64>()) {
        let mut entry = Entry::range(bar(a), bar(b));
        entry.put_si(put);
        if !a.is_nan() && !b.is_nan() {
            prop_assert!(entry.low() <= entry.get() && entry.get() <= entry.high());
            prop_assert!(entry.low() <= entry.typical() && entry.typical() <= entry.high());
        }
    }

    #[test]
    fn a_rising_and_a_falling_change_keep_the_order(a in -1e6..1e6, b in -1e6..1e6, put in -1e6..1e6, k in -3.0..3.0) {
        let mut entry = Entry::range(bar(a), bar(b));
        entry.settle(bar(put));
        let changed = entry.map(|value| value * k);
        prop_assert!(changed.low() <= changed.typical() && changed.typical() <= changed.high());
        prop_assert_eq!(changed.get(), entry.get() * k);
        prop_assert_eq!(changed.origin(), entry.origin());
    }
}
