//! A job as the text of a job file, in one canonical form: reading the text gives the same job, and writing that job gives the
//! same text.
//!
//! What the tool assumed is left out or says `"unknown"`, and what an earlier run pinned says `"open"`: the file holds what
//! the engineer said; the lock file beside it holds what was chosen.

mod conditions;
mod lubricant;
mod network;
mod point;
mod value;

use oilway_model::{Choice, Job, PackageWish, Place, Principle};
use oilway_units::UnitSystem;

use super::{FORMAT, OPEN, PRINCIPLES};
use value::Sheet;
pub(crate) use value::amount;

/// The canonical text of a job.
pub fn write_job(job: &Job) -> String {
    let mut sheet = Sheet::new(job.units.unwrap_or_default());
    sheet.text("oilway", FORMAT);
    sheet.text("name", &job.name);
    if let Some(units) = job.units {
        sheet.text("units", units.name());
    }
    if !job.note.is_empty() {
        sheet.text("note", &job.note);
    }
    sheet.text("principle", principle(&job.principle));
    sheet.text("pause", &given(&job.pause, |time| amount(*time, sheet.units)));
    conditions::write(&mut sheet, &job.conditions);
    lubricant::write(&mut sheet, &job.conditions.lubricant);
    network::dividers(&mut sheet, job);
    point::write(&mut sheet, job);
    package(&mut sheet, &job.package, &job.conditions.places);
    sheet.finish()
}

fn principle(choice: &Choice<Principle>) -> &'static str {
    let Choice::Given(principle) = choice else { return OPEN };
    PRINCIPLES.iter().find(|(_, p)| p == principle).map_or(OPEN, |(word, _)| word)
}

/// A given choice as text; what is open or pinned is open in the job file.
fn given<T>(choice: &Choice<T>, text: impl FnOnce(&T) -> String) -> String {
    match choice {
        Choice::Given(chosen) => text(chosen),
        Choice::Open | Choice::Pinned(_) => OPEN.to_owned(),
    }
}

fn package(sheet: &mut Sheet, package: &PackageWish, places: &[Place]) {
    sheet.header("[package]");
    sheet.text("place", places.get(package.place).map_or("", |place| &place.name));
    match package.remote {
        Choice::Given(remote) => sheet.bare("remote", &remote.to_string()),
        Choice::Open | Choice::Pinned(_) => sheet.text("remote", OPEN),
    }
    network::route(sheet, "inlet", &package.inlet, package.place, places);
    let units: UnitSystem = sheet.units;
    for (key, choice) in [
        ("pump", &package.pump),
        ("reservoir", &package.reservoir),
        ("block", &package.block),
        ("valve", &package.valve),
    ] {
        sheet.text(key, &given(choice, String::clone));
    }
    sheet.text("regulator", &given(&package.regulator, |setting| amount(*setting, units)));
    for (key, choice) in [
        ("disc", &package.disc),
        ("holder", &package.holder),
        ("gauge", &package.gauge),
        ("controller", &package.controller),
    ] {
        sheet.text(key, &given(choice, String::clone));
    }
    if let Some(discharge) = &package.discharge {
        sheet.known("discharge", discharge);
    }
}
