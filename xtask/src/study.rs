//! Studies: laws that the tests try on a small sample, tried on a large one.
//!
//! `cargo xtask study random-jobs [--count N] [--from SEED]`

use std::process::Command;

use crate::Outcome;

/// Jobs of a study where nobody says how many.
const COUNT: u64 = 500;

/// Runs a study by name.
///
/// # Errors
/// An unknown name or option, and a law that does not hold.
pub(crate) fn run(arguments: &[String]) -> Outcome {
    match arguments.split_first() {
        Some((name, options)) if name == "random-jobs" => random_jobs(options),
        _ => Err("write: cargo xtask study random-jobs [--count N] [--from SEED]".to_owned()),
    }
}

fn random_jobs(options: &[String]) -> Outcome {
    let (mut count, mut from) = (COUNT, 1);
    for pair in options.chunks(2) {
        match pair {
            [key, value] if key == "--count" => count = number(value)?,
            [key, value] if key == "--from" => from = number(value)?,
            _ => {
                return Err(format!(
                    "{} is no option of this study; write --count N or --from SEED",
                    pair[0]
                ));
            }
        }
    }
    let done = Command::new(env!("CARGO"))
        .args(["test", "--package", "oilway", "--test", "random_jobs", "--", "--nocapture"])
        .env("OILWAY_RANDOM_JOBS", count.to_string())
        .env("OILWAY_RANDOM_SEED", from.to_string())
        .status()
        .map_err(|error| format!("cargo cannot be started: {error}"))?;
    let last = from.saturating_add(count).saturating_sub(1);
    if done.success() {
        Ok(format!("all laws hold for the random jobs with seeds {from} to {last}"))
    } else {
        Err("a law does not hold for the jobs named above".to_owned())
    }
}

fn number(text: &str) -> Result<u64, String> {
    text.parse().map_err(|_| format!("{text} is no whole number"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_unknown_study_option_or_number_is_refused_with_what_may_be_written() {
        let run =
            |words: &[&str]| run(&words.iter().map(|w| (*w).to_owned()).collect::<Vec<_>>()).unwrap_err();
        assert!(run(&[]).contains("random-jobs"));
        assert!(run(&["moon"]).contains("random-jobs"));
        assert!(run(&["random-jobs", "--many"]).contains("--count N"));
        assert!(run(&["random-jobs", "--count", "ten"]).contains("ten"));
    }
}
