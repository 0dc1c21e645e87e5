//! The pipe law of grease over the lines of the independent table: the closed form, and its inverse.

use std::hint::black_box;

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use oilway_bench::lines;
use oilway_units::{Flow, Pressure};

fn pipe_law(criterion: &mut Criterion) {
    let lines = lines();
    let mut group = criterion.benchmark_group("pipe law");
    group.throughput(Throughput::Elements(lines.len() as u64));
    group.bench_function("flow", |b| b.iter(|| lines.iter().map(|l| black_box(l).own_flow()).sum::<Flow>()));
    group.bench_function("drop", |b| {
        b.iter(|| lines.iter().map(|l| black_box(l).own_drop()).sum::<Pressure>())
    });
    group.finish();
}

criterion_group!(benches, pipe_law);
criterion_main!(benches);
