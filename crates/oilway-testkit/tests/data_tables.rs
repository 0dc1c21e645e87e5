//! The typed-in tables under `data/`: their guards, and what must hold between the columns of one row.

use oilway_testkit::{Row, data_table};

const TUBES: [&str; 9] = [
    "astm-a179",
    "astm-a269",
    "astm-a269-metric",
    "astm-b280",
    "din-73378",
    "en-10305-4",
    "en-12449",
    "sae-j524",
    "sae-j844",
];

/// The words of standing that a data row may carry.
const STANDINGS: [&str; 5] = ["seen", "second-hand", "memory", "common-practice", "own"];

fn each_tube(judge: impl Fn(Row<'_>)) {
    for name in TUBES {
        let table = data_table(&format!("tubes/{name}.csv"));
        table.rows().for_each(&judge);
    }
}

#[test]
fn every_bearing_is_larger_outside_than_inside_and_its_mean_lies_between() {
    let table = data_table("bearings/boundary.csv");
    assert_eq!(table.len(), 140);
    for row in table.rows() {
        let (bore, outside, mean) = (row.number("d_mm"), row.number("D_mm"), row.number("dm_mm"));
        assert!(bore < outside, "{row}");
        assert!((mean - (bore + outside) / 2.0).abs() < 0.051, "{row}: mean {mean}");
        assert!([1.0, 5.0, 10.0].contains(&row.number("relub_k")), "{row}");
        assert!(STANDINGS.contains(&row.text("standing")), "{row}");
    }
}

#[test]
fn a_series_of_bearings_grows_with_its_bore() {
    let table = data_table("bearings/boundary.csv");
    let mut last: Option<(String, f64, f64)> = None;
    for row in table.rows() {
        let key = format!("{} {}", row.text("kind"), row.text("dim_series"));
        let (bore, outside) = (row.number("d_mm"), row.number("D_mm"));
        if let Some((series, smaller, its_outside)) = &last
            && *series == key
            && bore > *smaller
        {
            assert!(outside > *its_outside, "{row}: outside {outside} after {its_outside}");
        }
        last = Some((key, bore, outside));
    }
}

#[test]
fn the_bore_of_a_tube_is_its_outside_less_two_walls() {
    each_tube(|row| {
        let bore = row.number("od_mm") - 2.0 * row.number("wall_mm");
        assert!((bore - row.number("id_mm")).abs() < 0.0021, "{row}: {bore}");
    });
}

#[test]
fn a_tube_holds_what_its_bore_says() {
    each_tube(|row| {
        let section = std::f64::consts::FRAC_PI_4 * row.number("id_mm").powi(2);
        assert!((section - row.number("bore_mm2")).abs() < 2e-3 * section, "{row}: {section}");
        assert!((section - row.number("volume_ml_per_m")).abs() < 2e-3 * section, "{row}: {section}");
    });
}

#[test]
fn a_tube_works_below_its_burst_pressure_and_says_on_what_basis() {
    each_tube(|row| {
        assert!(!row.text("basis_work").is_empty(), "{row}");
        assert!(STANDINGS.contains(&row.text("standing")), "{row}");
        if let Some(burst) = row.maybe("p_burst_bar") {
            assert!(row.number("p_work_bar") * 2.0 < burst, "{row}");
        }
    });
}

#[test]
fn every_caution_says_when_and_why_and_where_from() {
    let table = data_table("cautions.csv");
    assert_eq!(table.len(), 56);
    for row in table.rows() {
        for column in ["id", "step", "trigger", "hazard", "caution", "standard_or_rule"] {
            assert!(!row.text(column).trim().is_empty(), "{row}: {column} is empty");
        }
        assert!(STANDINGS.contains(&row.text("standing")), "{row}");
    }
}

#[test]
fn the_pitch_of_a_thread_agrees_with_its_threads_an_inch() {
    let table = data_table("threads/threads.csv");
    assert_eq!(table.len(), 155);
    for row in table.rows() {
        if let (Some(count), Some(pitch)) = (row.maybe("tpi"), row.maybe("pitch_mm")) {
            assert!((pitch - 25.4 / count).abs() < 6e-5, "{row}: {pitch} against {}", 25.4 / count);
        }
    }
}
