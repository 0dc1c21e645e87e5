//! Puts the choices of a lock file into a job: what is open there becomes pinned.

use oilway_catalogue::Catalogue;
use oilway_model::{Choice, DividerWish, Job, LegWish, PackageWish, SectionWish};
use oilway_text::{Message, Mistake, message};
use oilway_units::{Pressure, Quantity, Said, Time, read};

use super::Lock;
use crate::asked::Asked;
use crate::job::{PAUSE, PRINCIPLES, SETTING};

/// What is wrong with a choice, and its cure.
type Wrong = (Message, Message);

/// Turns every open choice of the job that the lock holds into a pinned one, but for those that are to be chosen anew: `reopen`
/// names places, and all that lie below: `package` reopens `package.disc` too, `all` everything. What the job gives itself stays
/// as given.
pub fn apply_lock(job: &mut Job, lock: &Lock, reopen: &[String], catalogue: &Catalogue) -> Vec<Mistake> {
    let mut mistakes = Vec::new();
    let mut wrong = |at: &core::ops::Range<usize>, (what, cure): Wrong| {
        mistakes.push(Mistake { file: lock.file.clone(), at: at.clone(), what, cure, fix: None });
    };
    for name in reopen {
        if name != ALL && !lock.choices.iter().any(|(pinned, _)| lies_in(&pinned.at, name)) {
            let what = message!("store-nothing-to-reopen", at = name);
            wrong(&(0..0), (what, message!("store-nothing-to-reopen-cure")));
        }
    }
    for (pinned, at) in &lock.choices {
        if reopen.iter().any(|name| name == ALL || lies_in(&pinned.at, name)) {
            continue;
        }
        if let Err(why) = pin(job, &pinned.at, &pinned.chosen, catalogue) {
            wrong(at, why);
        }
    }
    mistakes
}

/// The word that reopens everything.
const ALL: &str = "all";

/// Whether a place is another or lies below it.
fn lies_in(at: &str, above: &str) -> bool {
    at.strip_prefix(above).is_some_and(|rest| rest.is_empty() || rest.starts_with('.'))
}

/// Pins one choice.
fn pin(job: &mut Job, at: &str, chosen: &str, catalogue: &Catalogue) -> Result<(), Wrong> {
    if let Some(key) = at.strip_prefix("package.") {
        return pin_package(&mut job.package, key, chosen, catalogue);
    }
    if let Some(rest) = at.strip_prefix("divider.") {
        return pin_divider(&mut job.dividers, rest, chosen, catalogue);
    }
    if let Some(rest) = at.strip_prefix("line.") {
        return pin_line(job, rest, chosen, catalogue);
    }
    match at {
        "pause" => put(&mut job.pause, || quantity::<Time>(chosen, PAUSE)),
        "principle" => {
            let found = PRINCIPLES.iter().find(|(word, _)| *word == chosen);
            put(&mut job.principle, || {
                found.map(|(_, principle)| *principle).ok_or_else(|| bad_choice(chosen))
            })
        }
        _ => Err(no_such_place(at)),
    }
}

/// An open choice becomes pinned; any other stays.
fn put<T>(choice: &mut Choice<T>, chosen: impl FnOnce() -> Result<T, Wrong>) -> Result<(), Wrong> {
    if choice.is_open() {
        *choice = Choice::Pinned(chosen()?);
    }
    Ok(())
}

fn no_such_place(at: &str) -> Wrong {
    (message!("store-lock-place", at = at), message!("store-lock-place-cure"))
}

fn bad_choice(chosen: &str) -> Wrong {
    (message!("store-lock-choice", chosen = chosen), message!("store-lock-choice-cure"))
}

/// The id of a part that is still in the catalogue and of one of these kinds.
fn part(id: &str, kinds: &[&str], catalogue: &Catalogue) -> Result<String, Wrong> {
    match catalogue.part(id) {
        Some(part) if kinds.contains(&part.kind.id()) => Ok(id.to_owned()),
        _ => Err((
            message!("store-lock-part", id = id, kinds = kinds.to_vec()),
            message!("store-lock-part-cure"),
        )),
    }
}

fn quantity<T: Quantity>(text: &str, asked: Asked) -> Result<T, Wrong> {
    match read::<T>(text) {
        Ok(Said::Value(value)) if asked.range.holds(value.si()) => Ok(value),
        Ok(_) => Err(bad_choice(text)),
        Err(error) => {
            let what = message!("store-lock-quantity", reason = Message::from(&error));
            Err((what, message!("store-lock-choice-cure")))
        }
    }
}

fn pin_package(
    package: &mut PackageWish,
    key: &str,
    chosen: &str,
    catalogue: &Catalogue,
) -> Result<(), Wrong> {
    if let Some(rest) = key.strip_prefix("inlet.") {
        return pin_leg(&mut package.inlet, &format!("package.{key}"), rest, chosen, catalogue);
    }
    let (choice, kind) = match key {
        "pump" => (&mut package.pump, "pump"),
        "reservoir" => (&mut package.reservoir, "reservoir"),
        "block" => (&mut package.block, "port block"),
        "valve" => (&mut package.valve, "air valve"),
        "disc" => (&mut package.disc, "burst disc"),
        "holder" => (&mut package.holder, "disc holder"),
        "gauge" => (&mut package.gauge, "gauge"),
        "controller" => (&mut package.controller, "controller"),
        "regulator" => return put(&mut package.regulator, || quantity::<Pressure>(chosen, SETTING)),
        "remote" => return put(&mut package.remote, || yes_or_no(chosen)),
        _ => return Err(no_such_place(&format!("package.{key}"))),
    };
    put(choice, || part(chosen, &[kind], catalogue))
}

fn yes_or_no(text: &str) -> Result<bool, Wrong> {
    match text {
        "true" | "yes" => Ok(true),
        "false" | "no" => Ok(false),
        _ => Err(bad_choice(text)),
    }
}

/// `washer.part` or `washer.sections`; the name itself may hold points.
fn pin_divider(
    dividers: &mut [DividerWish],
    rest: &str,
    chosen: &str,
    catalogue: &Catalogue,
) -> Result<(), Wrong> {
    let lost = || no_such_place(&format!("divider.{rest}"));
    let (name, key) = rest.rsplit_once('.').ok_or_else(lost)?;
    let divider = dividers.iter_mut().find(|divider| divider.name == name).ok_or_else(lost)?;
    match key {
        "part" => put(&mut divider.part, || part(chosen, &["divider"], catalogue)),
        "sections" => put(&mut divider.sections, || sections(chosen, catalogue)),
        _ => Err(lost()),
    }
}

/// `10031: a, b | 10032: c`: each section and what it serves, one name where its outlets are joined.
fn sections(text: &str, catalogue: &Catalogue) -> Result<Vec<SectionWish>, Wrong> {
    let section = |row: &str| {
        let (id, served) = row.split_once(':').ok_or_else(|| bad_choice(text))?;
        let serves: Vec<String> = served.split(',').map(|name| name.trim().to_owned()).collect();
        // An outlet that serves nothing spills; such a section is chosen anew rather than kept.
        if !(1..=2).contains(&serves.len()) || serves.iter().any(String::is_empty) {
            return Err(bad_choice(text));
        }
        Ok(SectionWish { part: part(id.trim(), &["section"], catalogue)?, serves })
    };
    text.split('|').map(section).collect()
}

/// `washer.1.conduit`: the stretch of the line to a divider or a point, counted from one.
fn pin_line(job: &mut Job, rest: &str, chosen: &str, catalogue: &Catalogue) -> Result<(), Wrong> {
    let at = format!("line.{rest}");
    let lost = || no_such_place(&at);
    let before_key = rest.strip_suffix(".conduit").ok_or_else(lost)?;
    let (name, _) = before_key.rsplit_once('.').ok_or_else(lost)?;
    let leg = rest.strip_prefix(name).map_or("", |leg| leg.trim_start_matches('.'));
    let of_divider =
        job.dividers.iter_mut().find(|divider| divider.name == name).map(|divider| &mut divider.route);
    let route = match of_divider {
        Some(route) => route,
        None => &mut job.points.iter_mut().find(|point| point.name == name).ok_or_else(lost)?.route,
    };
    pin_leg(route, &at, leg, chosen, catalogue)
}

/// `1.conduit` of a route.
fn pin_leg(
    route: &mut [LegWish],
    at: &str,
    leg: &str,
    chosen: &str,
    catalogue: &Catalogue,
) -> Result<(), Wrong> {
    let number = leg.strip_suffix(".conduit").and_then(|number| number.parse::<usize>().ok());
    let leg =
        number.and_then(|number| route.get_mut(number.checked_sub(1)?)).ok_or_else(|| no_such_place(at))?;
    put(&mut leg.conduit, || part(chosen, &["tube", "hose"], catalogue))
}
