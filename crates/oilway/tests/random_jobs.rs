//! Laws that must hold for any job, tried on random ones.
//!
//! A fixed sample runs with every test; `cargo xtask study random-jobs --count N --from SEED` runs the same laws over a larger one. The
//! laws are the project's own (mass balance, monotony, repeatability); none of them rests on a number that the program printed.

#![allow(clippy::unwrap_used, reason = "a test: what cannot be read must fail it")]

use std::sync::OnceLock;

use oilway_catalogue::{house, lubricants};
use oilway_check::{check, compare};
use oilway_model::{Answer, Design, End, Job, PointEntry, Season, Severity};
use oilway_physics::{Ledger, pipe_flow};
use oilway_solve::{Hydraulics, design, design_flow, evaluate, shares};
use oilway_store::{read_job, write_job};
use oilway_testkit::jobs;
use oilway_units::{Dimension, Flow, Pressure};

/// Jobs of the sample that runs with every test.
const SAMPLE: u64 = 30;
/// Sizes of the jobs, in turn.
const SIZES: [usize; 6] = [4, 9, 20, 34, 75, 150];
/// Share of random jobs that must be solvable; else the laws would be tried on leftovers.
const LEAST_SOLVABLE: f64 = 0.6;

struct Sample {
    drawn: usize,
    solved: Vec<Solved>,
}

struct Solved {
    name: String,
    text: String,
    design: Design,
    answer: Answer,
}

fn from_environment(name: &str, otherwise: u64) -> u64 {
    std::env::var(name).map_or(otherwise, |text| text.parse().unwrap())
}

fn read(name: &str, text: &str) -> Job {
    let (job, mistakes) = read_job("job.toml", text, house::catalogue(), lubricants::library());
    job.unwrap_or_else(|| panic!("{name}: {mistakes:#?}"))
}

/// Every solvable job of the sample; a job is unsolvable where the designer itself reports an obstacle.
fn sample() -> &'static Sample {
    static DRAWN: OnceLock<Sample> = OnceLock::new();
    DRAWN.get_or_init(|| {
        let first = from_environment("OILWAY_RANDOM_SEED", 1);
        let seeds = first..first + from_environment("OILWAY_RANDOM_JOBS", SAMPLE);
        let drawn = seeds.clone().count();
        let solved = seeds.filter_map(|seed| {
            let points = SIZES[(seed % SIZES.len() as u64) as usize];
            let (name, text) = (format!("seed {seed} with {points} points"), jobs::random(seed, points));
            let design = design(&read(&name, &text), house::catalogue()).ok()?;
            let answer = evaluate(&design, &mut Ledger::off());
            Some(Solved { name, text, design, answer })
        });
        Sample { drawn, solved: solved.collect() }
    })
}

#[test]
fn most_random_jobs_are_solvable() {
    let Sample { drawn, solved } = sample();
    println!("{} of {drawn} random jobs are solvable", solved.len());
    assert!(solved.len() as f64 > LEAST_SOLVABLE * *drawn as f64, "{} of {drawn}", solved.len());
}

#[test]
fn the_checker_stops_no_design_of_a_solvable_job_and_agrees_with_its_numbers() {
    let mut stopped = Vec::new();
    for Solved { name, design, answer, .. } in &sample().solved {
        let found = check(design).findings.into_iter().chain(compare(design, answer));
        let stops = found.filter(|finding| finding.severity == Severity::Stop);
        stopped.extend(stops.map(|stop| format!("{name}: {} at {}: {:?}", stop.rule, stop.at, stop.what)));
    }
    assert!(stopped.is_empty(), "{} stops\n{}", stopped.len(), stopped.join("\n"));
}

#[test]
fn what_the_points_get_is_what_the_pump_gives() {
    for Solved { name, answer, .. } in &sample().solved {
        let delivered: Flow = answer.deliveries.iter().map(|delivery| delivery.delivered).sum();
        let apart = (delivered / answer.supply.use_rate - 1.0).abs();
        assert!(apart <= 1e-12, "{name}: {apart:e} apart");
    }
}

#[test]
fn every_divider_gives_on_what_it_gets() {
    for Solved { name, design, .. } in &sample().solved {
        let shares = shares(design);
        for divider in &design.dividers {
            let children =
                design.network.nodes.iter().enumerate().filter(|(_, n)| n.parent == Some(divider.node));
            let out: Flow = children.map(|(number, _)| shares.flow[number]).sum();
            let apart = (out / shares.flow[divider.node] - 1.0).abs();
            assert!(apart <= 1e-12, "{name}, {}: {apart:e} apart", divider.name);
        }
    }
}

#[test]
fn pressure_falls_along_every_path_and_rises_with_the_flow() {
    for Solved { name, design, .. } in &sample().solved {
        let hydraulics = Hydraulics::new(design);
        let flow = design_flow(design, &shares(design));
        for season in Season::ALL {
            for (number, node) in design.network.nodes.iter().enumerate() {
                let Some(parent) = node.parent else { continue };
                let (there, here) = (
                    hydraulics.path(season, parent, flow).unwrap(),
                    hydraulics.path(season, number, flow).unwrap(),
                );
                let density = |place| hydraulics.fluid(season, place).unwrap().density;
                let heads =
                    node.legs.iter().map(|leg| pipe_flow::static_head(density(leg.place), leg.rise.get()));
                let climb: Pressure = heads.sum();
                let lost = here.moving - there.moving - climb;
                // A sum of some megapascals holds a few nanopascals less than its parts.
                assert!(lost.pascals() > -1e-6, "{name}, {season:?}, {}: {lost:?}", node.name);
                let length = node.legs.iter().any(|leg| leg.length.get().metres() > 0.0);
                assert!(!length || lost > Pressure::ZERO, "{name}, {season:?}, {}: {lost:?}", node.name);
                assert!(here.yielding >= there.yielding, "{name}, {season:?}, {}", node.name);
                let faster = hydraulics.path(season, number, flow * 1.1).unwrap();
                assert!(!length || faster.moving > here.moving, "{name}, {season:?}, {}", node.name);
            }
        }
    }
}

#[test]
fn every_point_hangs_on_the_tree_and_the_worst_path_is_the_worst() {
    for Solved { name, design, answer, .. } in &sample().solved {
        let hung = design.network.nodes.iter().filter(|node| matches!(node.end, End::Point(_))).count();
        assert_eq!(hung, design.points.len(), "{name}");
        for season in &answer.seasons {
            let worst = season.paths[season.worst_moving].moving;
            assert!(season.paths.iter().all(|path| path.moving <= worst), "{name}");
        }
    }
}

#[test]
fn colder_asks_more_pressure() {
    for Solved { name, answer, .. } in &sample().solved {
        let worst = |season: Season| {
            let of = answer.seasons.iter().find(|of| of.season == season).unwrap();
            of.paths.iter().map(|path| path.moving).fold(Pressure::ZERO, Pressure::max)
        };
        assert!(worst(Season::Cold) >= worst(Season::Normal), "{name}");
        assert!(worst(Season::Normal) >= worst(Season::Hot), "{name}");
    }
}

#[test]
fn a_job_that_is_written_and_read_again_is_the_same_job() {
    for Solved { name, text, .. } in &sample().solved {
        let job = read(name, text);
        let written = write_job(&job);
        let again = read(name, &written);
        assert_eq!(written, write_job(&again), "{name}");
        let (before, after) = (without_origins(&job), without_origins(&again));
        for (one, other) in before.iter().zip(&after) {
            assert!(same(one, other), "{name}: {one}\nbecame {other}");
        }
        assert_eq!(before.len(), after.len(), "{name}");
    }
}

/// A job in all its numbers, one record a piece. Where a number comes from is left out: a lubricant of the library is written with its
/// own numbers, and what the library assumes of it is then what the job says.
fn without_origins(job: &Job) -> Vec<String> {
    let text = format!("{job:?}");
    text.split('}').map(|record| record.split(", origin: ").next().unwrap_or_default().to_owned()).collect()
}

/// Two records whose numbers agree to the last digit but one: a quantity is written in the unit of its reader.
fn same(one: &str, other: &str) -> bool {
    let words = |text: &str| text.split(['(', ')', ',', ' ']).map(str::to_owned).collect::<Vec<_>>();
    let near = |a: &str, b: &str| match (a.parse::<f64>(), b.parse::<f64>()) {
        (Ok(a), Ok(b)) => (a - b).abs() <= 4e-16 * a.abs(),
        _ => a == b,
    };
    let (one, other) = (words(one), words(other));
    one.len() == other.len() && one.iter().zip(&other).all(|(a, b)| near(a, b))
}

#[test]
fn bigger_pieces_need_more() {
    for Solved { name, design, answer, .. } in &sample().solved {
        let mut bigger = design.clone();
        for entry in bigger.points.iter_mut().flat_map(|point| &mut point.entries) {
            if let PointEntry::Quantity(size) = entry
                && matches!(size.dimension, Dimension::Length)
            {
                size.now *= 1.2;
            }
        }
        let grown = evaluate(&bigger, &mut Ledger::off());
        for ((point, before), after) in design.points.iter().zip(&answer.deliveries).zip(&grown.deliveries) {
            let more = if point.given.is_some() {
                after.formula == before.formula
            } else {
                after.formula > before.formula
            };
            assert!(more, "{name}, {}: {:?}, then {:?}", point.name, before.formula, after.formula);
        }
    }
}

#[test]
fn the_same_job_gives_the_same_bytes() {
    for Solved { name, text, design: first, answer, .. } in &sample().solved {
        let again = design(&read(name, text), house::catalogue()).unwrap();
        assert_eq!(format!("{first:?}"), format!("{again:?}"), "{name}");
        assert_eq!(format!("{answer:?}"), format!("{:?}", evaluate(&again, &mut Ledger::off())), "{name}");
    }
}
