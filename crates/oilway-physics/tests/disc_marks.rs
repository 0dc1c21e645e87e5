//! The marks that books print for a lot of discs, before the tolerance of the single disc.

use oilway_physics::disc::{burst_tolerance, highest_burst, lowest_burst};
use oilway_testkit::published;
use oilway_units::{Pressure, Ratio};

#[test]
fn a_lot_bursts_its_tolerance_beyond_its_marks() {
    let share = Ratio::from_percent(5.0);
    let unmoved = Ratio::from_fraction(1.0);
    for check in published("disc/marks") {
        let specified: Pressure = check.given("specified");
        if check.expects("highest_marked") {
            let burst = highest_burst(specified, check.given("range_plus"), share, unmoved);
            // M + t(M) = burst, and t is 5 % of M above 40 psi.
            let mark = burst / 1.05;
            assert!((burst - mark - burst_tolerance(mark)).abs() < Pressure::from_pascals(0.01), "{check}");
            check.holds("highest_marked", mark);
        } else {
            let burst = lowest_burst(specified, check.given("range_minus"), share, unmoved);
            let mark = burst / 0.95;
            assert!((mark - burst - burst_tolerance(mark)).abs() < Pressure::from_pascals(0.01), "{check}");
            check.holds("lowest_marked", mark);
        }
    }
}
