//! The study of the unknowns, apart from the design: it runs the evaluation some hundred times.

use std::hint::black_box;
use std::time::Duration;

use criterion::{Criterion, criterion_group, criterion_main};
use oilway_bench::{SIZES, design, solvable};

fn spread(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("spread");
    group.sample_size(10).warm_up_time(Duration::from_secs(1)).measurement_time(Duration::from_secs(10));
    for points in [SIZES[0], 300] {
        let made = design(&solvable(points));
        group.bench_function(points.to_string(), |b| b.iter(|| oilway_solve::study(black_box(&made))));
    }
    group.finish();
}

criterion_group!(benches, spread);
criterion_main!(benches);
