//! Any text as a job file: no panic, every mistake inside the text, and a sound job comes back from its own text.
#![no_main]

use libfuzzer_sys::fuzz_target;
use oilway_catalogue::{house, lubricants};
use oilway_store::{read_job, write_job};

fuzz_target!(|text: &str| {
    let (job, mistakes) = read_job("job.toml", text, house::catalogue(), lubricants::library());
    assert!(mistakes.iter().all(|m| m.at.start <= m.at.end && m.at.end <= text.len()));
    assert_eq!(job.is_some(), mistakes.is_empty());
    if let Some(job) = job {
        let written = write_job(&job);
        let again = read_job("job.toml", &written, house::catalogue(), lubricants::library()).0;
        assert_eq!(again.map(|job| write_job(&job)), Some(written));
    }
});
