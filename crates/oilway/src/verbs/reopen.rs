//! `oilway reopen`: pinned choices that the tool may make anew.

use oilway_model::{Pinned, Reason};
use oilway_store::write_lock;
use oilway_text::{Message, message};

use crate::bench;
use crate::desk::{Desk, Reply};
use crate::exit::Exit;
use crate::files;
use crate::json::saved::SavedAnswer;
use crate::request::Request;
use crate::trouble::Trouble;
use crate::verbs::{Input, Takes, Verb};

pub(crate) static VERB: Verb = Verb {
    name: "reopen",
    title: "oilway-verb-reopen",
    about: "oilway-verb-reopen-about",
    inputs: &[
        Input { name: "job", takes: Takes::Word, value: "JOB", help: "oilway-input-job" },
        Input { name: "places", takes: Takes::Words, value: "PLACE", help: "oilway-input-places" },
    ],
    examples: &[],
    run,
    schema: Some(crate::json::schema::<SavedAnswer>),
};

fn run(desk: &Desk, request: &Request) -> Result<Reply, Trouble> {
    let job = bench::job_file(request.word("job").unwrap_or_default());
    let Some((path, lock)) = bench::locked(&job)? else {
        return Err(Trouble::asked(
            message!("oilway-nothing-pinned", job = job),
            message!("oilway-nothing-pinned-cure"),
        ));
    };
    let places = request.words("places");
    let names = || lock.choices.iter().map(|(pinned, _)| pinned.at.as_str());
    let strangers: Vec<(Message, Message)> = places
        .iter()
        .filter(|place| *place != "all" && !names().any(|at| lies_in(at, place)))
        .map(|place| {
            let cure = match oilway_catalogue::reading::nearest(place, names()) {
                Some(near) => message!("oilway-perhaps", word = near),
                None => message!("oilway-not-pinned-cure"),
            };
            (message!("oilway-not-pinned", at = place), cure)
        })
        .collect();
    if !strangers.is_empty() {
        return Err(Trouble::Told(Exit::Mistakes, strangers));
    }
    let file = path.display().to_string();
    if places.is_empty() {
        let list = names().collect::<Vec<_>>().join("\n");
        return Ok(SavedAnswer::listed(desk, "oilway.reopen.1", &file, &list));
    }
    let (gone, kept): (Vec<_>, Vec<_>) = lock
        .choices
        .iter()
        .map(|(pinned, _)| pinned)
        .partition(|pinned| places.iter().any(|place| place == "all" || lies_in(&pinned.at, place)));
    let reasons: Vec<Reason> = kept.into_iter().map(reason).collect();
    files::save(&path, write_lock(&reasons).as_bytes())?;
    let says = message!("oilway-reopened", file = file.as_str(), gone = gone.len(), kept = reasons.len());
    Ok(SavedAnswer::reply(desk, "oilway.reopen.1", &file, says))
}

/// Whether a place is this one or lies in it.
fn lies_in(at: &str, place: &str) -> bool {
    at == place || at.strip_prefix(place).is_some_and(|rest| rest.starts_with('.'))
}

fn reason(pinned: &Pinned) -> Reason {
    Reason {
        at: pinned.at.clone(),
        chosen: pinned.chosen.clone(),
        kept: true,
        why: Message::new("solve-kept"),
    }
}

#[cfg(test)]
mod tests {
    use super::lies_in;

    #[test]
    fn a_place_holds_itself_and_what_lies_below_but_no_namesake() {
        assert!(lies_in("package.disc", "package.disc") && lies_in("package.disc", "package"));
        assert!(!lies_in("package.disc", "pack") && !lies_in("package", "package.disc"));
    }
}
