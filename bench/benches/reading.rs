//! Reading a job file, and writing it back.

use std::hint::black_box;
use std::time::Duration;

use criterion::{BenchmarkId, Criterion, Throughput, criterion_group, criterion_main};
use oilway_bench::{SIZES, read, text};
use oilway_store::write_job;

fn reading(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("job file");
    group.sample_size(10).warm_up_time(Duration::from_secs(1)).measurement_time(Duration::from_secs(5));
    for points in SIZES {
        let text = text(points);
        group.throughput(Throughput::Bytes(text.len() as u64));
        group.bench_function(BenchmarkId::new("read", points), |b| b.iter(|| read(black_box(&text))));
        let job = read(&text);
        group.bench_function(BenchmarkId::new("write", points), |b| b.iter(|| write_job(black_box(&job))));
    }
    group.finish();
}

criterion_group!(benches, reading);
criterion_main!(benches);
