//! What the tests of reading share: a small sound job, and mistakes as lines of text.

#![allow(dead_code, reason = "each test file uses a part of it")]

use oilway_catalogue::{house, lubricants};
use oilway_model::Job;
use oilway_store::{SheetMistake, read_job};
use oilway_text::{Mistake, Reader, say};

/// A small job without a mistake.
pub(crate) const SMALL: &str = r#"oilway = "job 1"
name = "Conveyor drive"

[[place]]
name = "hall"
coldest = "5 °C"
normal = "20 °C"
hottest = "35 °C"

[air]
lowest = "5.5 bar"
highest = "6.5 bar"
possible = "8 bar"

[lubricant]
name = "grease"
kind = "grease"
class = "1"

[[divider]]
name = "post"
place = "hall"
fed_by = "pump"
route = [{ length = "8 m" }]

[[point]]
name = "drive end"
kind = "rolling bearing"
bearing = "6310"
speed = "960 per min"
place = "hall"
on = "post"
route = [{ length = "2 m" }]

[package]
place = "hall"
"#;

/// Reads a job with the house range and the library.
pub(crate) fn read(text: &str) -> (Option<Job>, Vec<Mistake>) {
    read_job("job.toml", text, house::catalogue(), lubricants::library())
}

/// A job that must be sound.
pub(crate) fn sound(text: &str) -> Job {
    let (job, mistakes) = read(text);
    assert!(mistakes.is_empty(), "{}", told(text, &mistakes));
    job.expect("no mistakes")
}

/// The keys of the mistakes.
pub(crate) fn keys(text: &str) -> Vec<&'static str> {
    read(text).1.iter().map(|mistake| mistake.what.key).collect()
}

/// Mistakes as `file:line:column: what cure`, and the patch where there is one.
pub(crate) fn told(text: &str, mistakes: &[Mistake]) -> String {
    let reader = Reader::default();
    let line = |mistake: &Mistake| {
        let (line, column) = mistake.line_column(text);
        let patch =
            mistake.fix.as_ref().map_or(String::new(), |(_, with)| format!("\n    patch: {}", with.trim()));
        let (what, cure) = (say(&mistake.what, &reader), say(&mistake.cure, &reader));
        format!("{}:{line}:{column}: {what} {cure}{patch}\n", mistake.file)
    };
    mistakes.iter().map(line).collect()
}

/// Mistakes of a sheet as `file sheet!cell: what cure`.
pub(crate) fn told_in_sheets(mistakes: &[SheetMistake]) -> String {
    let reader = Reader::default();
    let line = |m: &SheetMistake| {
        format!(
            "{} {}!{}{}: {} {}\n",
            m.file,
            m.sheet,
            m.column,
            m.row,
            say(&m.what, &reader),
            say(&m.cure, &reader)
        )
    };
    mistakes.iter().map(line).collect()
}

/// The small job with one stretch of its text replaced.
pub(crate) fn with(old: &str, new: &str) -> String {
    assert!(SMALL.contains(old), "{old}");
    SMALL.replacen(old, new, 1)
}
