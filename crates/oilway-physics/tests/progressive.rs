//! Progressive dividers: volumes balance for every divider, and for one behind another.

use oilway_physics::progressive::{
    cycle_rate, cycle_volume, delivered_rate, nested_delivered_rate, outlet_share, secondary_cycle_rate,
};
use oilway_units::{Flow, Ratio, Volume};
use proptest::prelude::*;

fn mm3(value: f64) -> Volume {
    Volume::from_cubic_millimetres(value)
}

#[test]
fn the_worked_pair_of_dividers_comes_out() {
    // Own figures of the metering notes: 15.480 and 12.201 cycles a minute, 768.7 mm³/min or 7.687 % of the flow, 3.941
    // secondary cycles in five primary ones.
    let inflow = Flow::from_cubic_centimetres_per_minute(10.0);
    let (first, second) = (cycle_volume(mm3(160.0 + 100.0 + 63.0)), cycle_volume(mm3(40.0 + 63.0 + 100.0)));
    let primary = cycle_rate(inflow, first);
    let secondary = secondary_cycle_rate(mm3(320.0), primary, second);
    let outlet = nested_delivered_rate(inflow, mm3(320.0), first, mm3(63.0), second);
    assert!((primary.per_minute() - 15.480).abs() < 5e-4);
    assert!((secondary.per_minute() - 12.201).abs() < 5e-4);
    assert!((outlet.cubic_millimetres_per_minute() - 768.7).abs() < 0.05);
    assert!((outlet / inflow - 0.07687).abs() < 5e-6);
    assert!((5.0 * (secondary / primary) - 3.941).abs() < 5e-4);
}

proptest! {
    #[test]
    fn what_goes_in_comes_out(
        sections in prop::collection::vec(5.0_f64..1000.0, 3..20), inflow in 0.1_f64..5000.0,
    ) {
        let cycle = cycle_volume(mm3(sections.iter().sum()));
        let q = Flow::from_cubic_centimetres_per_minute(inflow);
        let out: Flow = sections.iter().map(|v| delivered_rate(q, mm3(*v), cycle) * 2.0).sum();
        prop_assert!((out / q - 1.0).abs() < 1e-12);
        let shares: Ratio = sections.iter().map(|v| outlet_share(mm3(2.0 * v), cycle)).sum();
        prop_assert!((shares.fraction() - 1.0).abs() < 1e-12);
        prop_assert!((cycle_rate(q, cycle).per_second() * cycle.cubic_metres() / q.cubic_metres_per_second() - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_secondary_passes_on_what_its_group_gets(
        first in prop::collection::vec(5.0_f64..1000.0, 3..12), second in prop::collection::vec(5.0_f64..1000.0, 3..12),
    ) {
        let q = Flow::from_cubic_centimetres_per_minute(10.0);
        let (v1, v2) = (cycle_volume(mm3(first.iter().sum())), cycle_volume(mm3(second.iter().sum())));
        let group = mm3(2.0 * first[0]);
        let out: Flow = second.iter().map(|w| nested_delivered_rate(q, group, v1, mm3(*w), v2) * 2.0).sum();
        prop_assert!((out / delivered_rate(q, group, v1) - 1.0).abs() < 1e-12);
        // Cycles of the secondary times its volume is the same flow.
        let turned = v2 * secondary_cycle_rate(group, cycle_rate(q, v1), v2);
        prop_assert!((turned / out - 1.0).abs() < 1e-12);
    }
}
