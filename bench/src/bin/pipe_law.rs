//! Times the pipe law of grease on the lines of the independent table and compares each drop with SciPy's:
//! prints seconds for one drop, seconds for one flow, and the largest difference.

use std::hint::black_box;
use std::time::Instant;

use oilway_bench::{Line, lines};

/// Runs over the whole table; a run takes well under a millisecond.
const RUNS: usize = 2_000;

fn main() {
    let lines = lines();
    let seconds = |of: &dyn Fn(&Line)| {
        let mut each: Vec<f64> = (0..RUNS)
            .map(|_| {
                let start = Instant::now();
                lines.iter().for_each(of);
                start.elapsed().as_secs_f64() / lines.len() as f64
            })
            .collect();
        each.sort_by(f64::total_cmp);
        each[RUNS / 2]
    };
    let drop = seconds(&|line| {
        black_box(black_box(line).own_drop());
    });
    let flow = seconds(&|line| {
        black_box(black_box(line).own_flow());
    });
    let apart = lines.iter().map(|l| (l.own_drop() / l.drop - 1.0).abs()).fold(0.0, f64::max);
    println!("oilway flow of a Herschel-Bulkley fluid: {flow:.3e} s each, {} cases", lines.len());
    println!("oilway drop of a Herschel-Bulkley fluid: {drop:.3e} s each, {} cases", lines.len());
    println!("largest difference of a drop from SciPy: {apart:.1e}");
}
