//! The worked jobs: they are read without a mistake, hold what their story tells, and come back from their canonical text as they were.

use oilway_catalogue::{house, lubricants};
use oilway_model::{FlowCurve, Job, Substance};
use oilway_store::{read_job, write_job};
use oilway_text::{Reader, say};
use oilway_units::{Length, Origin};

const JOBS: [(&str, &str, usize); 4] = [
    ("dairy", include_str!("../../../jobs/dairy/job.toml"), 34),
    ("oil-spindle", include_str!("../../../jobs/oil-spindle/job.toml"), 8),
    ("quarry", include_str!("../../../jobs/quarry/job.toml"), 120),
    ("gaps", include_str!("../../../jobs/gaps/job.toml"), 6),
];

fn job(name: &str, text: &str) -> Job {
    let (job, mistakes) = read_job(name, text, house::catalogue(), lubricants::library());
    let told: Vec<String> = mistakes
        .iter()
        .map(|m| {
            format!(
                "{:?}: {} {}",
                m.line_column(text),
                say(&m.what, &Reader::default()),
                say(&m.cure, &Reader::default())
            )
        })
        .collect();
    assert!(told.is_empty(), "{name}: {told:#?}");
    job.expect("no mistakes")
}

fn dairy() -> Job {
    job(JOBS[0].0, JOBS[0].1)
}

#[test]
fn the_worked_jobs_are_read_without_a_mistake_and_hold_all_their_points() {
    for (name, text, points) in JOBS {
        assert_eq!(job(name, text).points.len(), points, "{name}");
    }
}

#[test]
fn a_job_comes_back_from_its_canonical_text_as_it_was() {
    for (name, text, _) in JOBS {
        let first = job(name, text);
        let written = write_job(&first);
        let second = job(name, &written);
        assert_eq!(write_job(&second), written, "{name}");
        // The text of a value shows every figure; what the text cannot show is compared here.
        assert_eq!(format!("{:?}", origins_gone(&first)), format!("{:?}", origins_gone(&second)), "{name}");
    }
}

/// What a lubricant of the library assumes is said outright in the canonical text; all else must agree to the last bit.
fn origins_gone(job: &Job) -> Job {
    let mut job = job.clone();
    job.conditions.lubricant.description = String::new();
    if let Substance::Grease(grease) = &mut job.conditions.lubricant.substance
        && let FlowCurve::Span(span) = &mut grease.curve
    {
        span.yield_stress = span.yield_stress.with_origin(Origin::Said);
        span.consistency = span.consistency.with_origin(Origin::Said);
        span.index = span.index.with_origin(Origin::Said);
        span.halving = span.halving.with_origin(Origin::Said);
    }
    job
}

#[test]
fn the_dairy_has_its_stations_and_threads() {
    let job = dairy();
    let on = |name: &str| job.points.iter().filter(|p| job.dividers[p.divider].name == name).count();
    assert_eq!(["washer post", "cold room post", "stacker post", "table post"].map(on), [10, 6, 10, 8]);
    let thread = |thread: Option<&str>| job.points.iter().filter(|p| p.thread.as_deref() == thread).count();
    let threads = [Some("M6x1"), Some("M8x1"), Some("G 1/8"), Some("G 1/4"), None];
    assert_eq!(threads.map(thread), [14, 6, 10, 2, 2]);
}

#[test]
fn the_manual_values_of_the_dairy_become_volumes() {
    let job = dairy();
    let rate = |name: &str| {
        let given = job.points.iter().find(|p| p.name == name).and_then(|p| p.given.as_ref()).unwrap();
        (given.quantity.get() / given.interval.get()).cubic_centimetres_per_hour()
    };
    // Reference numbers of the demonstration job (own, worked by hand): 5 g in 40 h and 40 g in 200 h over 4 ports, 0.89 g/cm³.
    assert!((rate("washer chain 6") - 0.140).abs() < 0.0005);
    assert!((rate("stacker guide 1") - 0.060).abs() < 0.0005);
    assert!((4.0 * rate("table ring 1") - 0.225).abs() < 0.0005);
}

#[test]
fn the_lines_of_the_dairy_run_where_the_story_says() {
    let job = dairy();
    let divider = |name: &str| job.dividers.iter().find(|d| d.name == name).unwrap();
    let length =
        |route: &[oilway_model::LegWish]| route.iter().map(|leg| leg.length.get()).sum::<Length>().metres();
    assert_eq!(length(&divider("junction post").route), 11.0);
    assert_eq!(length(&divider("cold room post").route), 16.0);
    let pin = job.points.iter().find(|p| p.name == "gripper pin 4").unwrap();
    assert_eq!(pin.route.iter().map(|leg| leg.flexible).collect::<Vec<_>>(), [false, true]);
    assert!(job.points.iter().all(|p| p.place == job.dividers[p.divider].place));
}

#[test]
fn what_the_telephone_call_left_out_is_assumed_by_name() {
    let job = job(JOBS[3].0, JOBS[3].1);
    let coldest = job.conditions.places[0].coldest;
    assert_eq!(coldest.origin(), Origin::Assumed("assume-coldest-outdoors"));
    // The usual day is 5 to 15 °C: the coldest cannot be warmer.
    assert!(coldest.high() <= job.conditions.places[0].normal.low());
    assert_eq!(
        job.conditions.air.as_ref().unwrap().possible.origin(),
        Origin::Assumed("assume-air-possible")
    );
    let gear = job.points.iter().find(|p| p.name == "gear").unwrap();
    // 1/2 oz = 14.17 g (exact pound) at 900 kg/m³, the density assumed for grease.
    assert!((gear.given.as_ref().unwrap().quantity.get().cubic_centimetres() - 15.75).abs() < 0.01);
}
