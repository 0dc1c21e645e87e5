//! The exact search for the sections of one divider, on the instances whose objective others have proven.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use oilway_bench::questions;

fn metering(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("metering");
    group.sample_size(20);
    for (id, question) in questions() {
        group.bench_function(id, |b| b.iter(|| black_box(&question).solve()));
    }
    group.finish();
}

criterion_group!(benches, metering);
criterion_main!(benches);
