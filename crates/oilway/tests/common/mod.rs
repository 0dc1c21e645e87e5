//! What the tests of the command line share: running it in a folder of its own, and a validator for the part of JSON Schema
//! that the schemas use.

#![allow(dead_code, reason = "each test file uses a part")]

pub(crate) mod schema;

use std::path::{Path, PathBuf};

use assert_cmd::Command;

/// The folder of the whole project.
pub(crate) fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").canonicalize().expect("the project has a folder")
}

/// How a run ended and what it said.
pub(crate) struct Ran {
    /// The exit code.
    pub(crate) code: i32,
    /// The answer.
    pub(crate) out: String,
    /// What stands beside it.
    pub(crate) err: String,
}

/// Runs a command line in the project's folder.
pub(crate) fn oilway(args: &[&str]) -> Ran {
    oilway_in(&root(), args)
}

/// Runs a command line in a folder, with nothing in the surroundings that would change the answer.
pub(crate) fn oilway_in(folder: &Path, args: &[&str]) -> Ran {
    let mut command = Command::cargo_bin("oilway").expect("the binary is built");
    for name in ["OILWAY_UNITS", "OILWAY_CATALOGUE", "NO_COLOR"] {
        command.env_remove(name);
    }
    let output = command.current_dir(folder).args(args).output().expect("the binary starts");
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).expect("output is UTF-8");
    Ran {
        code: output.status.code().expect("no signal ends it"),
        out: text(output.stdout),
        err: text(output.stderr),
    }
}

/// A command line cut into words as a shell does, for words with or without single quotes.
pub(crate) fn words(line: &str) -> Vec<String> {
    let (mut words, mut word, mut quoted, mut any) = (Vec::new(), String::new(), false, false);
    for sign in line.chars() {
        match sign {
            '\'' => (quoted, any) = (!quoted, true),
            ' ' if !quoted => {
                if any {
                    words.push(std::mem::take(&mut word));
                }
                any = false;
            }
            sign => {
                word.push(sign);
                any = true;
            }
        }
    }
    if any {
        words.push(word);
    }
    words
}

/// A folder with the worked jobs and the questions of metering, for runs that write.
pub(crate) fn workplace() -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("there is room for a folder");
    for file in [
        "jobs/dairy/job.toml",
        "jobs/gaps/job.toml",
        "jobs/oil-spindle/job.toml",
        "jobs/quarry/job.toml",
        "reference/metering/one_divider.json",
    ] {
        let to = folder.path().join(file);
        std::fs::create_dir_all(to.parent().expect("a file is in a folder")).expect("there is room");
        std::fs::copy(root().join(file), to).expect("the file is there");
    }
    folder
}
