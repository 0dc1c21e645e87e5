//! The binary: hands the command line to the library and its exit code to the system.

use std::process::ExitCode;

fn main() -> ExitCode {
    ExitCode::from(oilway::run(std::env::args_os()))
}
