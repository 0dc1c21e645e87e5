//! The lock file: what it pins, what it leaves alone, and what it says of choices that no longer fit.

mod common;

use common::{SMALL, sound, told, with};
use oilway_catalogue::house;
use oilway_model::{Choice, Reason};
use oilway_store::{apply_lock, read_lock, write_job, write_lock};
use oilway_text::Message;

fn first(kind: &str) -> String {
    house::catalogue().of_kind(kind).next().expect(kind).id.clone()
}

fn reason(at: &str, chosen: &str) -> Reason {
    Reason { at: at.into(), chosen: chosen.into(), kept: false, why: Message::new("span") }
}

/// One choice of each sort.
fn reasons() -> Vec<Reason> {
    vec![
        reason("package.pump", &first("pump")),
        reason("package.regulator", "5.1 bar"),
        reason("package.remote", "false"),
        reason("divider.post.part", &first("divider")),
        reason("divider.post.sections", &format!("{}: drive end", first("section"))),
        reason("line.post.1.conduit", &first("tube")),
        reason("line.drive end.1.conduit", &first("hose")),
        reason("pause", "30 min"),
    ]
}

#[test]
fn what_was_chosen_is_pinned_in_the_order_of_the_design() {
    let text = write_lock(&reasons());
    let (lock, mistakes) = read_lock("job.lock", &text);
    assert!(mistakes.is_empty(), "{}", told(&text, &mistakes));
    assert_eq!(lock.choices.len(), reasons().len());
    assert!(lock.choices.iter().zip(reasons()).all(|((pinned, _), reason)| pinned.at == reason.at));
    let mut job = sound(SMALL);
    assert_eq!(apply_lock(&mut job, &lock, &[], house::catalogue()), []);
    assert_eq!(job.package.pump, Choice::Pinned(first("pump")));
    assert_eq!(job.package.remote, Choice::Pinned(false));
    assert_eq!(job.pause.chosen().map(|t| t.minutes()), Some(30.0));
    assert_eq!(job.dividers[0].sections.chosen().unwrap()[0].serves, ["drive end"]);
    assert_eq!(job.points[0].route[0].conduit, Choice::Pinned(first("hose")));
    // The job file still says what the engineer said.
    assert_eq!(write_job(&job), write_job(&sound(SMALL)));
}

#[test]
fn what_the_job_gives_goes_before_the_lock() {
    let other = house::catalogue().of_kind("pump").nth(1).unwrap().id.clone();
    let mut job = sound(&with("[package]", &format!("[package]\npump = \"{other}\"")));
    let lock = read_lock("job.lock", &write_lock(&reasons())).0;
    assert_eq!(apply_lock(&mut job, &lock, &[], house::catalogue()), []);
    assert_eq!(job.package.pump, Choice::Given(other));
}

#[test]
fn reopening_leaves_a_choice_and_all_below_it_open() {
    let lock = read_lock("job.lock", &write_lock(&reasons())).0;
    let open_after = |reopen: &[&str]| {
        let mut job = sound(SMALL);
        let reopen: Vec<String> = reopen.iter().map(|s| (*s).to_owned()).collect();
        let mistakes = apply_lock(&mut job, &lock, &reopen, house::catalogue());
        let open = [
            job.package.pump.is_open(),
            job.package.regulator.is_open(),
            job.dividers[0].part.is_open(),
            job.pause.is_open(),
        ];
        (open, mistakes.len())
    };
    assert_eq!(open_after(&["package.pump"]), ([true, false, false, false], 0));
    assert_eq!(open_after(&["package"]), ([true, true, false, false], 0));
    assert_eq!(open_after(&["divider.post", "pause"]), ([false, false, true, true], 0));
    assert_eq!(open_after(&["all"]), ([true; 4], 0));
    // A name that only begins alike reopens nothing, and is told.
    assert_eq!(open_after(&["package.pum"]), ([false; 4], 1));
}

#[test]
fn choices_that_no_longer_fit_are_told_with_their_cure() {
    let wrong = [
        reason("package.pump", "gone"),
        reason("package.disc", &first("pump")),
        reason("package.colour", "red"),
        reason("package.regulator", "much"),
        reason("package.remote", "perhaps"),
        reason("divider.gone.part", &first("divider")),
        reason("divider.post.sections", &format!("{}: a, b, c", first("section"))),
        reason("divider.post.sections", &format!("{}: a, ", first("section"))),
        reason("line.post.7.conduit", &first("tube")),
        reason("line.gone.1.conduit", &first("tube")),
        reason("pause", "1..2 h"),
        reason("weather", "fine"),
    ];
    let text = write_lock(&wrong);
    let lock = read_lock("job.lock", &text).0;
    let mut job = sound(SMALL);
    let mistakes = apply_lock(&mut job, &lock, &[], house::catalogue());
    assert_eq!(mistakes.len(), wrong.len());
    insta::assert_snapshot!(told(&text, &mistakes));
}

#[test]
fn a_broken_lock_file_is_told_like_any_other() {
    let (lock, mistakes) = read_lock(
        "job.lock",
        "oilway = \"lock 1\"\n[[choice]]\nat = \"pause\"\nchosen = 5\n[[choice]]\natt = \"x\"\n",
    );
    assert!(lock.choices.is_empty());
    assert_eq!(
        mistakes.iter().map(|m| m.what.key).collect::<Vec<_>>(),
        ["reading-wants-text", "reading-missing-key", "reading-missing-key", "reading-unknown-key"]
    );
    assert_eq!(read_lock("job.lock", SMALL).1[0].what.key, "store-other-format");
}
