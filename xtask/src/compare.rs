//! Comparisons side by side with other programs, on the machine at hand.
//!
//! `cargo xtask compare pipe-law`

use std::process::Command;

use crate::{Outcome, root};

/// Cases for SciPy: twenty flows for each drop, so that every line of the table comes up once as a drop.
const CASES: &str = "2800";
/// How many times faster than the integration the closed form with its inverse is meant to be.
const WANTED: f64 = 100.0;

/// Runs a comparison by name.
///
/// # Errors
/// An unknown name, a program that cannot be run, a ratio below the wanted one.
pub(crate) fn run(arguments: &[String]) -> Outcome {
    match arguments {
        [name] if name == "pipe-law" => pipe_law(),
        _ => Err("write: cargo xtask compare pipe-law".to_owned()),
    }
}

/// The pipe law of grease on the same 140 lines: SciPy integrates the flow curve and looks for the root of the integral.
fn pipe_law() -> Outcome {
    let root = root();
    let script = root.join("reference/independent/scipy_pipe.py");
    let other = output(Command::new("python3").arg(script).arg(CASES))?;
    let bench = root.join("bench/Cargo.toml");
    let own = output(
        Command::new(env!("CARGO"))
            .args(["run", "--quiet", "--release", "--bin", "pipe_law", "--manifest-path"])
            .arg(bench),
    )?;
    let ratios = ["flow", "drop"].map(|what| Ok((what, seconds(&other, what)? / seconds(&own, what)?)));
    let ratios: Vec<(&str, f64)> = ratios.into_iter().collect::<Result<_, String>>()?;
    let told = ratios.iter().map(|(what, ratio)| format!("{what}: {ratio:.0} times as fast as SciPy\n"));
    let text = told.fold(other + &own, |text, line| text + &line);
    if ratios.iter().all(|(_, ratio)| *ratio >= WANTED) {
        Ok(text)
    } else {
        Err(format!("{text}meant to be {WANTED} times as fast at least"))
    }
}

fn output(command: &mut Command) -> Result<String, String> {
    let name = command.get_program().to_string_lossy().into_owned();
    let done = command.output().map_err(|error| format!("{name} cannot be started: {error}"))?;
    if done.status.success() {
        Ok(String::from_utf8_lossy(&done.stdout).into_owned())
    } else {
        Err(format!("{name} failed:\n{}", String::from_utf8_lossy(&done.stderr)))
    }
}

/// The seconds on the line that tells of a flow or a drop: `… drop of a Herschel-Bulkley fluid: 1.2e-7 s each, …`.
fn seconds(text: &str, what: &str) -> Result<f64, String> {
    let line = text.lines().find(|line| line.contains(&format!(" {what} of a Herschel-Bulkley fluid: ")));
    let number = line.and_then(|line| line.split(": ").nth(1)?.split(" s each").next()?.parse().ok());
    number.ok_or_else(|| format!("no time of a {what} in:\n{text}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_time_is_read_from_its_own_line_and_its_absence_is_told() {
        let text = "scipy flow of a Herschel-Bulkley fluid: 3.100e-05 s each, 2800 cases\n\
                    scipy drop of a Herschel-Bulkley fluid: 2.000e-03 s each, 140 cases\n";
        assert_eq!(seconds(text, "flow"), Ok(3.1e-5));
        assert_eq!(seconds(text, "drop"), Ok(2e-3));
        assert!(seconds("nothing", "drop").is_err());
        assert!(run(&["moon".to_owned()]).is_err());
    }
}
