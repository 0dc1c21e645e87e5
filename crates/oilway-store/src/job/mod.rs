//! The job file, format `job 1`: read into a job with every mistake in one run, and written back in one canonical form.
//!
//! `docs/job-file.md` tells every key.

mod conditions;
mod divider;
mod lubricant;
mod names;
mod package;
mod parts;
mod point;
mod point_fields;
mod route;
mod surroundings;
mod write;

use oilway_catalogue::Catalogue;
use oilway_catalogue::lubricants::LubricantData;
use oilway_catalogue::reading::{Reading, Table};
use oilway_model::{Conditions, DividerWish, Job};
use oilway_text::{Mistake, message};
use oilway_units::UnitSystem;

use crate::asked::{finish, quoted};
pub use lubricant::{lubricant_of_class, lubricant_of_library};
use names::Places;
pub(crate) use package::{PAUSE, PRINCIPLES, SETTING};
pub(crate) use parts::OPEN;
pub(crate) use surroundings::WORDS as SURROUNDINGS;
pub(crate) use write::amount;
pub use write::write_job;

/// The format that is written, and the newest that is read.
pub(crate) const FORMAT: &str = "job 1";

/// Reads a job file. A job comes out only of a file without mistakes; otherwise all of them, in the order of the text.
///
/// ```
/// use oilway_catalogue::{house, lubricants};
/// use oilway_store::read_job;
///
/// let text = "oilway = \"job 1\"\n";
/// let (job, mistakes) = read_job("job.toml", text, house::catalogue(), lubricants::library());
/// assert!(job.is_none() && !mistakes.is_empty());
/// ```
pub fn read_job(
    file: &str,
    text: &str,
    catalogue: &Catalogue,
    library: &[LubricantData],
) -> (Option<Job>, Vec<Mistake>) {
    let reading = Reading::new(file, text);
    if !is_this_format(&reading, FORMAT, "job") {
        return (None, reading.give_up());
    }
    let job = job(&reading, catalogue, library);
    let mistakes = finish(reading);
    (job.filter(|_| mistakes.is_empty()), mistakes)
}

/// Whether the file says that it is of this format; otherwise nothing else of it can be judged.
pub(crate) fn is_this_format(reading: &Reading, format: &'static str, family: &'static str) -> bool {
    let root = reading.root();
    let Some(item) = root.item("oilway") else {
        if !reading.is_broken() {
            let line = format!("oilway = {}\n", quoted(format));
            let cure = message!("store-no-format-cure", line = line.trim());
            reading.note(0..0, message!("store-no-format", wanted = format), cure, Some((0..0, line)));
        }
        return false;
    };
    let Some(text) = item.text() else { return false };
    if text.value == format {
        return true;
    }
    let newer = text.value.strip_prefix(family).is_some_and(|n| n.trim().parse::<u32>().is_ok_and(|n| n > 1));
    if newer {
        item.wrong(message!("store-newer-format", found = text.value), message!("store-newer-format-cure"));
    } else {
        item.wrong(
            message!("store-other-format", found = text.value, wanted = format),
            message!("store-other-format-cure"),
        );
    }
    false
}

fn job(reading: &Reading, catalogue: &Catalogue, library: &[LubricantData]) -> Option<Job> {
    let root = reading.root();
    root.has("oilway");
    let name = root.needed_text("name").map(|placed| placed.value.trim().to_owned());
    let note = root.text("note").map(|placed| placed.value.to_owned()).unwrap_or_default();
    let units = units(&root);
    let principle = package::principle(&root);
    let pause = package::pause(&root);
    let (conditions, places) = conditions(&root, library);
    let rows = divider::dividers(&root, &places, catalogue);
    let wishes: Vec<DividerWish> = rows.iter().map(|row| row.wish.clone()).collect();
    let known = point::Known {
        places: &places,
        dividers: &wishes,
        catalogue,
        density: lubricant::density_for_mass(conditions.as_ref().map(|c| &c.lubricant)),
    };
    let points = point::points(&root, &known);
    let dividers = divider::sections(rows, &points, catalogue);
    let package = package::package(&root, &places, catalogue);
    Some(Job {
        name: name?,
        note,
        units,
        conditions: conditions?,
        points,
        dividers,
        package,
        principle,
        pause,
    })
}

fn units(root: &Table<'_>) -> Option<UnitSystem> {
    match root.word("units", &["metric", "us"])?.value {
        "us" => Some(UnitSystem::Us),
        _ => Some(UnitSystem::Metric),
    }
}

fn conditions(root: &Table<'_>, library: &[LubricantData]) -> (Option<Conditions>, Places) {
    let site = conditions::site(root.table("site").as_ref());
    let places = conditions::places(root);
    let names = Places(places.iter().map(|place| place.name.clone()).collect());
    let air = root.table("air").map(|table| conditions::air(&table));
    let electric = root.table("electric").and_then(|table| conditions::electric(&table));
    let duty = conditions::duty(root.table("duty").as_ref());
    let limits = conditions::limits(root.table("limits").as_ref());
    let practice = conditions::practice(root.table("practice").as_ref());
    let lubricant = root
        .needed("lubricant")
        .and_then(|item| item.table())
        .and_then(|t| lubricant::lubricant(&t, library));
    let conditions = lubricant.map(|lubricant| Conditions {
        site,
        places,
        air,
        electric,
        duty,
        limits,
        practice,
        lubricant,
    });
    (conditions, names)
}
