//! The command line of oilway: verbs, help, pages of text, JSON.
//!
//! One table, [`verbs::VERBS`], holds every verb with its inputs, examples and JSON schema; help, completions and manual are made from it.
//! A verb reads through the store, asks the crates that know the trade, and prints. No engineering rule lives here.

mod bench;
mod command;
mod desk;
mod exit;
mod files;
pub mod json;
mod page;
mod progress;
mod request;
mod show;
mod trouble;
pub mod verbs;

use std::ffi::OsString;
use std::io::{self, Write};

use desk::Desk;
pub use exit::Exit;

/// Runs one command line, prints what it says, and gives its exit code.
pub fn run(args: impl IntoIterator<Item = OsString>) -> u8 {
    let matches = match command::command().try_get_matches_from(args) {
        Ok(matches) => matches,
        Err(stop) => {
            // Help and version come this way as well; clap knows the stream of each. A closed terminal needs no words.
            let _ = stop.print();
            return if stop.use_stderr() { Exit::Usage.code() } else { Exit::Works.code() };
        }
    };
    let desk = Desk::new(&matches);
    let Some((verb, request)) = request::read(&matches) else {
        return Exit::Usage.code();
    };
    let (exit, out, err) = match (verb.run)(&desk, &request) {
        Ok(reply) => (reply.exit, reply.out, reply.remarks),
        Err(trouble) => trouble.told(&desk),
    };
    match put(&out, &err) {
        Ok(()) => exit.code(),
        Err(error) if error.kind() == io::ErrorKind::BrokenPipe => exit.code(),
        Err(_) => Exit::Files.code(),
    }
}

/// The schema of each verb's JSON, and of problems, by name and as text.
pub fn schemas() -> Vec<(&'static str, String)> {
    verbs::schemas().into_iter().map(|(name, schema)| (name, json::print(&schema))).collect()
}

fn put(out: &str, err: &str) -> io::Result<()> {
    io::stderr().lock().write_all(err.as_bytes())?;
    let mut stdout = io::stdout().lock();
    stdout.write_all(out.as_bytes())?;
    stdout.flush()
}
