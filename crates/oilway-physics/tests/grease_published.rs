//! Published values of greases that need more than one formula or a table, and the fit against an independent one.

use oilway_physics::grease::fit::{self, NoFit};
use oilway_physics::grease::{classes, yield_stress_at};
use oilway_physics::pipe_flow::start_pressure;
use oilway_testkit::published;
use oilway_text::{Reader, say};
use oilway_units::{Pressure, Ratio, ShearRate};

#[test]
fn the_pressure_that_starts_a_cold_line_comes_out_of_the_chain() {
    let rows = published("grease/cold-start");
    assert_eq!(rows.len(), 3);
    for check in rows {
        let tau = yield_stress_at(
            check.given("yield_stress_25"),
            check.given("temperature"),
            check.given("halving"),
        );
        check.holds("result", start_pressure(check.given("bore"), check.given("length"), tau));
    }
}

#[test]
fn every_class_is_as_the_table_prints_it() {
    let rows = published("grease/consistency-grades");
    assert_eq!(rows.len(), 2 * classes::CLASSES.len());
    for check in rows {
        let class = classes::named(check.given_word("grade").trim_start_matches("NLGI "));
        let class = class.expect("a class of the table");
        assert_eq!(classes::PENETRATION_SOURCE.standing.word(), check.status.word(), "{check}");
        if check.expects("lowest_penetration") {
            check.holds("lowest_penetration", class.stiffest);
        } else {
            check.holds("highest_penetration", class.softest);
        }
    }
}

/// A curve with scatter, and what SciPy's `least_squares` (1.17.1, on the same relative misses, τ0 ≥ 0, four starts) finds
/// in it: τ0, K, n, the largest miss and the root mean square. Standing: own, computed outside the program.
struct Independent {
    rows: &'static [(f64, f64)],
    found: [f64; 5],
}

const CURVES: [Independent; 3] = [
    Independent {
        rows: &[
            (0.1, 231.0),
            (0.3, 228.0),
            (1.0, 247.0),
            (3.0, 262.0),
            (10.0, 301.0),
            (30.0, 371.0),
            (100.0, 540.0),
            (300.0, 842.0),
            (1000.0, 1620.0),
        ],
        found: [226.921885, 16.1939159, 0.642609973, 0.02803640768, 0.014239414505],
    },
    Independent {
        rows: &[
            (0.1, 705.0),
            (0.3, 690.0),
            (1.0, 760.0),
            (3.0, 820.0),
            (10.0, 930.0),
            (30.0, 1120.0),
            (100.0, 1610.0),
            (300.0, 2290.0),
            (1000.0, 4100.0),
        ],
        found: [682.967905, 64.4904544, 0.571713054, 0.03676657398, 0.020951423048],
    },
    // No yield stress at all: the fit lies on the edge τ0 = 0.
    Independent {
        rows: &[(1.0, 2.1), (5.0, 8.2), (20.0, 27.0), (80.0, 85.0), (400.0, 320.0), (2000.0, 1250.0)],
        found: [0.0, 2.12961441, 0.839091607, 0.025861824412, 0.014170439926],
    },
];

#[test]
fn the_fit_of_scattered_rows_is_that_of_an_independent_library() {
    for curve in &CURVES {
        let rows: Vec<(ShearRate, Pressure)> = curve
            .rows
            .iter()
            .map(|&(r, t)| (ShearRate::from_per_second(r), Pressure::from_pascals(t)))
            .collect();
        let fit = fit::herschel_bulkley(&rows).expect("a rising curve");
        let ours = [
            fit.yield_stress.pascals(),
            fit.consistency.pascal_seconds_to_the_n(),
            fit.index.fraction(),
            fit.largest_error.fraction(),
            fit.root_mean_square.fraction(),
        ];
        for (ours, theirs) in ours.into_iter().zip(curve.found) {
            // Nine digits are given; the valley is flat, so both stop within some 1e-6 of its bottom.
            assert!((ours - theirs).abs() <= 1e-5 * theirs.abs().max(1e-9), "{fit:?} {:?}", curve.found);
        }
    }
}

#[test]
fn every_reason_for_no_fit_has_a_sentence_with_its_numbers() {
    let reasons = [
        (NoFit::TooFewRates { got: 2 }, "2"),
        (NoFit::NotPositive { row: 7 }, "7"),
        (NoFit::NotRising, "stress"),
        (NoFit::IndexAtEnd { index: Ratio::from_fraction(1.5) }, "1.5"),
    ];
    for (reason, number) in reasons {
        let said = say(&reason.message(), &Reader::default());
        assert!(said.contains(number) && !said.contains('['), "{said}");
    }
}
