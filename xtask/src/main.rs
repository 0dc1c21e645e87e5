//! What a maintainer would otherwise do by hand: `cargo xtask docs`, `cargo xtask tidy`.

mod compare;
mod docs;
mod markdown;
mod study;
mod tidy;

use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// The result of a task: what to say, or what is wrong.
pub(crate) type Outcome = Result<String, String>;

/// Does a task with the words behind its name.
type Task = fn(&[String]) -> Outcome;

/// The tasks by name: what each does, and the function.
const TASKS: &[(&str, &str, Task)] = &[
    ("docs", "write docs/generated and docs/schema anew", docs::run),
    ("tidy", "hold the house to its plan: imports, code map, words, the README's commands", tidy::run),
    (
        "study",
        "try the laws of the tests on many more random jobs: random-jobs [--count N] [--from SEED]",
        study::run,
    ),
    ("compare", "measure side by side with another program: pipe-law", compare::run),
];

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let task = args.first().and_then(|name| TASKS.iter().find(|(task, ..)| task == name));
    let outcome = match task {
        Some((_, _, run)) => run(&args[1..]),
        None => Err(TASKS.iter().map(|(name, does, _)| format!("cargo xtask {name:<10} {does}\n")).collect()),
    };
    let (text, code) = match outcome {
        Ok(text) => (text, ExitCode::SUCCESS),
        Err(text) => (text, ExitCode::FAILURE),
    };
    #[allow(clippy::print_stderr, reason = "a task for the terminal")]
    {
        eprintln!("{}", text.trim_end());
    }
    code
}

/// The folder of the whole project.
pub(crate) fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().map_or_else(PathBuf::new, Path::to_path_buf)
}
