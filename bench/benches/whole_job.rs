//! Design, evaluation and check of jobs in which everything is known, and each of the three alone.

use std::hint::black_box;
use std::time::Duration;

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use oilway_bench::{SIZES, catalogue, design, solvable, whole};
use oilway_physics::Ledger;

fn jobs(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("whole job");
    group.sample_size(10).warm_up_time(Duration::from_secs(1)).measurement_time(Duration::from_secs(10));
    for points in SIZES {
        let job = solvable(points);
        let made = design(&job);
        let id = |what| BenchmarkId::new(what, points);
        group.bench_function(id("all"), |b| b.iter(|| whole(black_box(&job))));
        group.bench_function(id("design"), |b| b.iter(|| oilway_solve::design(black_box(&job), catalogue())));
        group.bench_function(id("evaluate"), |b| {
            b.iter(|| oilway_solve::evaluate(black_box(&made), &mut Ledger::off()))
        });
        group.bench_function(id("check"), |b| b.iter(|| oilway_check::check(black_box(&made))));
    }
    group.finish();
}

criterion_group!(benches, jobs);
criterion_main!(benches);
