//! The demonstration job against its reference numbers.
//!
//! The numbers were worked out apart from the program, with the job: laminar Herschel–Bulkley flow in closed form, start pressure
//! 4 τ0 L / D, no allowance for fittings, no rest factor. Standing: own, computed. Pressures are good to 5 %, grease flows to a factor of
//! two. Where nothing else is said the tolerance is half of the last figure given.

#![allow(clippy::unwrap_used, reason = "a test: what cannot be read must fail it")]

use std::collections::BTreeMap;

use oilway_catalogue::{Catalogue, house, lubricants};
use oilway_check::check;
use oilway_model::{Answer, Choice, Design, End, Job, LegWish, Season, Severity, Verdict};
use oilway_physics::{Ledger, pump};
use oilway_solve::{Hydraulics, bore_of, design, evaluate, parallel};
use oilway_store::{apply_lock, read_job, read_lock, write_lock};
use oilway_units::{Entry, Flow, Pressure, Ratio, Temperature, Time, Volume};

/// Tubes of the house range by bore: 8 × 1, 10 × 1 and 12 × 1 mm.
const BORE_6: &str = "10084";
const BORE_8: &str = "10085";
const BORE_10: &str = "10086";
const DISC_130: &str = "10019";
const DISC_150: &str = "10020";
const TWENTY_TO_ONE: &str = "10029";

fn dairy() -> Job {
    job("dairy")
}

fn job(name: &str) -> Job {
    let file = oilway_testkit::root().join("jobs").join(name).join("job.toml");
    let text = std::fs::read_to_string(&file).unwrap();
    let (job, mistakes) = read_job("job.toml", &text, house::catalogue(), lubricants::library());
    assert!(mistakes.is_empty(), "{mistakes:#?}");
    job.unwrap()
}

/// The job as the references count it: no fittings, no rest, the twenty-to-one pump, tails of bore 6, and this tube elsewhere.
fn as_counted(mains: &str) -> Job {
    let mut job = dairy();
    job.conditions.practice.fittings = Entry::known(Ratio::ZERO);
    job.conditions.practice.rest_factor = Entry::known(Ratio::from_fraction(1.0));
    job.package.pump = Choice::Given(TWENTY_TO_ONE.to_owned());
    let give = |leg: &mut LegWish, id: &str| {
        if !leg.flexible {
            leg.conduit = Choice::Given(id.to_owned());
        }
    };
    job.dividers.iter_mut().flat_map(|d| &mut d.route).for_each(|leg| give(leg, mains));
    job.points.iter_mut().flat_map(|p| &mut p.route).for_each(|leg| give(leg, BORE_6));
    job
}

fn designed(job: &Job) -> Design {
    design(job, house::catalogue()).unwrap()
}

fn evaluated(design: &Design) -> Answer {
    evaluate(design, &mut Ledger::off())
}

/// The node of the farthest point of the cold room.
fn farthest(design: &Design) -> usize {
    design.network.nodes.iter().position(|n| n.name == "cold belt 6").unwrap()
}

fn near(found: f64, expected: f64, share: f64) -> bool {
    (found / expected - 1.0).abs() <= share
}

fn cm3_min(flow: f64) -> Flow {
    Flow::from_cubic_centimetres_per_minute(flow)
}

#[test]
fn the_points_stand_where_the_customer_counts_them() {
    let job = dairy();
    let mut stations: BTreeMap<&str, usize> = BTreeMap::new();
    job.points.iter().for_each(|p| *stations.entry(job.dividers[p.divider].name.as_str()).or_default() += 1);
    assert_eq!(
        stations.into_iter().collect::<Vec<_>>(),
        [("cold room post", 6), ("stacker post", 10), ("table post", 8), ("washer post", 10)]
    );
}

#[test]
fn the_threads_add_up_to_the_points() {
    let job = dairy();
    let mut threads: BTreeMap<&str, usize> = BTreeMap::new();
    job.points
        .iter()
        .for_each(|p| *threads.entry(p.thread.as_deref().unwrap_or("unknown")).or_default() += 1);
    assert_eq!(
        threads.into_iter().collect::<Vec<_>>(),
        [("G 1/4", 2), ("G 1/8", 10), ("M6x1", 14), ("M8x1", 6), ("unknown", 2)]
    );
}

#[test]
fn what_the_manuals_say_becomes_the_reference_rates() {
    let design = designed(&dairy());
    let answer = evaluated(&design);
    let sum = |prefix: &str| -> f64 {
        let of = design.points.iter().zip(&answer.deliveries).filter(|(p, _)| p.name.starts_with(prefix));
        of.map(|(_, d)| d.formula.cubic_centimetres_per_hour()).sum()
    };
    assert!((sum("washer chain") / 6.0 - 0.140).abs() < 0.0005);
    assert!((sum("stacker guide") / 4.0 - 0.060).abs() < 0.0005);
    assert!((sum("table ring") - 0.225).abs() < 0.0005);
}

#[test]
fn the_total_demand_lies_in_the_reference_band() {
    let answer = evaluated(&designed(&dairy()));
    let total: f64 = answer.deliveries.iter().map(|d| d.required.cubic_centimetres_per_hour()).sum();
    assert!((1.2..=5.0).contains(&total), "{total}");
}

#[test]
fn the_cold_branch_starts_and_moves_at_the_reference_pressures() {
    for (mains, start, moving) in [(BORE_6, 48.0, 79.0), (BORE_8, 39.0, 59.0), (BORE_10, 33.0, 48.0)] {
        let design = designed(&as_counted(mains));
        let path = Hydraulics::new(&design).path(Season::Cold, farthest(&design), cm3_min(2.0)).unwrap();
        assert!(near(path.yielding.bar(), start, 0.05), "{mains}: {} bar", path.yielding.bar());
        // The references hold the lines alone, without dividers and back pressure.
        let lines = path.moving - path.fixed;
        assert!(near(lines.bar(), moving, 0.05), "{mains}: {} bar", lines.bar());
    }
}

#[test]
fn two_discs_open_the_reference_windows() {
    for (disc, bounds, setting) in
        [(DISC_130, [138.1, 122.3, 97.8], 5.1), (DISC_150, [159.4, 141.1, 112.9], 5.9)]
    {
        let mut job = as_counted(BORE_8);
        job.package.disc = Choice::Given(disc.to_owned());
        let protection = evaluated(&designed(&job)).protection;
        let found = [protection.highest_burst, protection.lowest_burst, protection.steady_maximum];
        for (found, expected) in found.into_iter().zip(bounds) {
            assert!((found.unwrap().bar() - expected).abs() <= 0.051, "{disc}: {found:?} {expected}");
        }
        assert!((protection.highest_setting.unwrap().bar() - setting).abs() < 1e-9);
        // The hose of 160 bar is the weakest part; nothing else may be weaker than it.
        assert_eq!(protection.weakest.1, Pressure::from_bar(160.0));
        assert!(protection.weakest.0.starts_with("Hose"), "{}", protection.weakest.0);
        assert!(protection.window_low <= Pressure::from_bar(if disc == DISC_130 { 130.0 } else { 150.0 }));
    }
}

/// The air setting of 5.1 bar, at which the pump stalls just below the steady maximum of the 130 bar disc.
fn at_5_1_bar(mains: &str) -> Design {
    let mut job = as_counted(mains);
    job.package.disc = Choice::Given(DISC_130.to_owned());
    job.package.regulator = Choice::Given(Pressure::from_bar(5.1));
    designed(&job)
}

#[test]
fn about_76_bar_are_left_for_the_lines() {
    let design = at_5_1_bar(BORE_8);
    let cold = evaluated(&design).seasons.into_iter().find(|s| s.season == Season::Cold).unwrap();
    let path = Hydraulics::new(&design).path(Season::Cold, farthest(&design), Flow::ZERO).unwrap();
    let left = cold.pump.stall - path.fixed;
    assert!((left.bar() - 76.0).abs() < 0.5, "{left:?}");
}

#[test]
fn so_much_grease_reaches_the_cold_room() {
    for (mains, expected) in [(BORE_6, 1.5), (BORE_8, 12.0)] {
        let design = at_5_1_bar(mains);
        let cold = evaluated(&design).seasons.into_iter().find(|s| s.season == Season::Cold).unwrap();
        let point = design.points.iter().position(|p| p.name == "cold belt 6").unwrap();
        let found = cold.paths[point].flow.cubic_centimetres_per_minute();
        assert!(found / expected < 2.0 && expected / found < 2.0, "{mains}: {found}");
    }
}

#[test]
fn a_parallel_line_is_refused_with_the_reference_numbers_and_with_what_would_turn_it() {
    for (mains, residual) in [(BORE_8, 29.0), (BORE_10, 23.0)] {
        let design = designed(&as_counted(mains));
        let verdict = parallel(&design, house::catalogue()).unwrap();
        assert!(!verdict.works);
        assert!(near(verdict.residual.bar(), residual, 0.05), "{mains}: {:?}", verdict.residual);
        assert_eq!(verdict.resets_below, Pressure::from_bar(16.0));
        assert!(verdict.point.starts_with("cold belt"));
        // Wider by so much, or warmer than that, and it would recharge: 4 τ0 L / D once more.
        assert!(near(verdict.residual.bar() / verdict.wider, 16.0, 1e-9));
        assert!(verdict.works_from.unwrap() > Temperature::from_celsius(20.0));
    }
}

#[test]
fn main_and_cold_branch_hold_the_reference_volumes() {
    for (mains, litres) in [(BORE_6, 0.76), (BORE_8, 1.36)] {
        let design = designed(&as_counted(mains));
        let branches = ["junction post", "cold room post"];
        let legs = design.network.nodes.iter().filter(|n| branches.contains(&n.name.as_str()));
        let content: Volume = legs
            .flat_map(|n| &n.legs)
            .map(|leg| {
                let bore = bore_of(&design.conduits[leg.conduit]).unwrap();
                oilway_physics::pipe_flow::line_content(bore, leg.length.get())
            })
            .sum();
        assert!((content.litres() - litres).abs() <= 0.005, "{mains}: {}", content.litres());
    }
}

#[test]
fn the_gripper_pins_are_raised_so_that_their_grease_stays_fresh() {
    let design = designed(&as_counted(BORE_8));
    let answer = evaluated(&design);
    let pin = design.points.iter().position(|p| p.name == "gripper pin 1").unwrap();
    let delivery = &answer.deliveries[pin];
    assert!((delivery.tail.cubic_centimetres() - 78.5).abs() < 0.05);
    assert!((delivery.required.cubic_centimetres_per_hour() - 0.0151).abs() < 0.00005);
    assert!(
        delivery.raised_by.is_some() && delivery.band_high.is_none(),
        "the tool says which floor it took"
    );
    // At 0.010 cm³/h the grease would be 78 weeks old, with 100 running hours in a week.
    let running = pump::age_at_point(delivery.tail, Flow::from_cubic_centimetres_per_hour(0.010));
    let weeks = running / Time::from_hours(100.0);
    assert!((weeks - 78.5).abs() < 0.1, "{weeks}");
}

#[test]
fn a_slow_bearing_gets_the_least_of_an_automatic_system() {
    let design = designed(&as_counted(BORE_8));
    let answer = evaluated(&design);
    for (point, delivery) in design.points.iter().zip(&answer.deliveries) {
        assert!(delivery.required >= Flow::from_cubic_centimetres_per_hour(0.01), "{}", point.name);
        assert!(
            delivery.delivered >= delivery.required * delivery.band_low.fraction() * (1.0 - 1e-9),
            "{}",
            point.name
        );
    }
}

#[test]
fn left_to_itself_the_designer_takes_the_130_disc_and_at_most_5_1_bar_and_nothing_stops_it() {
    let design = designed(&dairy());
    assert_eq!(design.package.disc.as_ref().unwrap().id, DISC_130);
    assert!(design.package.air_setting.unwrap() <= Pressure::from_bar(5.1 + 1e-9));
    let report = check(&design);
    assert!(report.findings.iter().all(|f| f.severity != Severity::Stop), "{:#?}", report.findings);
    assert_eq!(report.verdict, Verdict::WorksWithCare);
}

#[test]
fn the_150_disc_is_accepted_with_the_remark_that_0_6_bar_is_no_margin() {
    let mut job = dairy();
    job.package.disc = Choice::Given(DISC_150.to_owned());
    let design = designed(&job);
    let protection = evaluated(&design).protection;
    let room = protection.weakest.1 - protection.highest_burst.unwrap();
    assert!((room.bar() - 0.6).abs() < 0.05, "{room:?}");
    let report = check(&design);
    assert!(report.findings.iter().all(|f| f.severity != Severity::Stop), "{:#?}", report.findings);
    assert!(report.findings.iter().any(|f| f.rule == "disc-margin-thin"));
}

/// The house range with a hose that stands no more than 100 bar.
fn with_weak_hose() -> Catalogue {
    let hose = r#"
kind = "hose"
source = "test"

[[part]]
id = "H100"
description = "Hose that stands 100 bar."
price = "9.00 EUR"
bore = "4 mm"
outside = "8.5 mm"
rated = "100 bar"
bend_radius = "40 mm"
coldest = "-20 °C"
hottest = "80 °C"
food = true
"#;
    let (catalogue, mistakes) = house::with_files(&[("hose.toml", hose)]);
    assert!(mistakes.is_empty(), "{mistakes:#?}");
    catalogue
}

fn weak_hoses(mut job: Job) -> Job {
    let flexible = job.points.iter_mut().flat_map(|p| &mut p.route).filter(|leg| leg.flexible);
    flexible.for_each(|leg| leg.conduit = Choice::Given("H100".to_owned()));
    job
}

#[test]
fn with_hoses_for_100_bar_the_130_disc_no_longer_protects() {
    let mut job = weak_hoses(dairy());
    job.package.disc = Choice::Given(DISC_130.to_owned());
    let design = design(&job, &with_weak_hose()).unwrap();
    let protection = evaluated(&design).protection;
    assert_eq!(protection.weakest.1, Pressure::from_bar(100.0));
    assert!(protection.window_high < Pressure::from_bar(130.0));
    let report = check(&design);
    assert_eq!(report.verdict, Verdict::WillNotWork);
    assert!(report.findings.iter().any(|f| f.severity == Severity::Stop && f.rule.starts_with("disc")));
}

#[test]
fn with_hoses_for_100_bar_the_designer_finds_what_would_fit() {
    let design = design(&weak_hoses(dairy()), &with_weak_hose()).unwrap();
    let protection = evaluated(&design).protection;
    assert!(protection.highest_burst.unwrap() <= Pressure::from_bar(100.0));
    assert!(protection.working <= protection.steady_maximum.unwrap());
    let stops: Vec<_> =
        check(&design).findings.into_iter().filter(|f| f.severity == Severity::Stop).collect();
    assert!(stops.is_empty(), "{stops:#?}");
}

/// The same design on a day when the cold room is at this temperature.
fn colder(design: &Design, celsius: f64) -> Design {
    let mut design = design.clone();
    for place in design.conditions.places.iter_mut().filter(|p| p.name == "cold room") {
        let there = Entry::known(Temperature::from_celsius(celsius));
        (place.coldest, place.normal, place.hottest) = (there, there, there);
    }
    design
}

#[test]
fn a_colder_room_turns_the_verdict_where_the_start_meets_the_stall() {
    let design = designed(&dairy());
    let need = |celsius: f64| {
        let answer = evaluated(&colder(&design, celsius));
        let cold = answer.seasons.iter().find(|s| s.season == Season::Cold).unwrap();
        let start = cold.paths[cold.worst_start].start_rested.max(cold.paths[cold.worst_moving].moving);
        (start, cold.pump.stall, design.points[cold.worst_start].name.clone())
    };
    let stops = |celsius: f64| check(&colder(&design, celsius)).verdict == Verdict::WillNotWork;
    // Every degree less asks for more; the verdict turns just where the need passes the stall.
    let mut last = Pressure::ZERO;
    for celsius in [4.0, 0.0, -4.0, -8.0, -12.0, -16.0, -20.0] {
        let (need, stall, _) = need(celsius);
        assert!(need >= last, "{celsius}");
        assert_eq!(stops(celsius), need > stall, "{celsius} °C: {need:?} against {stall:?}");
        last = need;
    }
    assert!(!stops(4.0) && stops(-20.0));
    assert!(need(-20.0).2.starts_with("cold belt"), "the cold room's path is then the worst");
}

#[test]
fn what_was_chosen_and_pinned_is_chosen_again() {
    for name in ["dairy", "oil-spindle", "quarry", "gaps"] {
        let job = job(name);
        let first = designed(&job);
        let (lock, mistakes) = read_lock("job.lock", &write_lock(&first.reasons));
        assert!(mistakes.is_empty(), "{name}: {mistakes:#?}");
        let mut pinned = job.clone();
        let mistakes = apply_lock(&mut pinned, &lock, &[], house::catalogue());
        assert!(mistakes.is_empty(), "{name}: {mistakes:#?}");
        let second = designed(&pinned);
        let anew: Vec<&str> = second.reasons.iter().filter(|r| !r.kept).map(|r| r.at.as_str()).collect();
        assert!(anew.is_empty(), "{name}: chosen anew: {anew:?}");
        let chosen =
            |d: &Design| d.reasons.iter().map(|r| (r.at.clone(), r.chosen.clone())).collect::<Vec<_>>();
        assert_eq!(chosen(&first), chosen(&second));
        let bytes = |d: &Design| format!("{:?} {:?} {:?}", d.control, d.network, evaluated(d));
        assert_eq!(bytes(&first), bytes(&second), "{name}");
    }
}

#[test]
fn the_whole_flow_of_the_pump_arrives_at_the_points() {
    let design = designed(&dairy());
    let answer = evaluated(&design);
    let delivered: Flow = answer.deliveries.iter().map(|d| d.delivered).sum();
    assert!(near(delivered / answer.supply.use_rate, 1.0, 1e-12));
    let at_points = design.network.nodes.iter().filter(|n| matches!(n.end, End::Point(_))).count();
    assert_eq!(at_points, 34);
}
