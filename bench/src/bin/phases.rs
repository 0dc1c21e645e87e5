//! Times the phases of whole jobs one after the other, in one process, and prints the peak of its memory: `phases [POINTS] [TIMES]`.

use std::hint::black_box;
use std::time::Instant;

use oilway_bench::{catalogue, design, read, text};
use oilway_physics::Ledger;

fn main() {
    let mut given = std::env::args().skip(1).map(|word| word.parse::<usize>());
    let points = given.next().and_then(Result::ok).unwrap_or(1_000);
    let times = given.next().and_then(Result::ok).unwrap_or(3);
    let text = text(points);
    let job = read(&text);
    let made = design(&job);
    println!("{points} points, {} dividers, median of {times}", job.dividers.len());
    println!("{:>12.1} ms  read", median(times, || drop(black_box(read(&text)))));
    println!(
        "{:>12.1} ms  design",
        median(times, || drop(black_box(oilway_solve::design(&job, catalogue()))))
    );
    let evaluate = || drop(black_box(oilway_solve::evaluate(&made, &mut Ledger::off())));
    println!("{:>12.1} ms  evaluate", median(times, evaluate));
    println!("{:>12.1} ms  check", median(times, || drop(black_box(oilway_check::check(&made)))));
    match peak() {
        Some(kilobytes) => println!("{:>12.1} MiB peak of the process", kilobytes / 1024.0),
        None => println!("peak of memory: not told by this system"),
    }
}

/// The median of several runs in milliseconds.
fn median(times: usize, mut run: impl FnMut()) -> f64 {
    let mut taken: Vec<f64> = (0..times.max(1))
        .map(|_| {
            let start = Instant::now();
            run();
            start.elapsed().as_secs_f64() * 1e3
        })
        .collect();
    taken.sort_by(f64::total_cmp);
    taken[taken.len() / 2]
}

/// The largest resident set of this process in KiB, where the system keeps it in a file.
fn peak() -> Option<f64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find(|line| line.starts_with("VmHWM:"))?;
    line.split_whitespace().nth(1)?.parse().ok()
}
