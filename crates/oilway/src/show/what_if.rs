//! Before and after, side by side.

use oilway_model::{Answer, Finding, Season, Severity};
use oilway_text::{Message, message};
use oilway_units::{AnyQuantity, Pressure};

use crate::json::check::verdict_word;
use crate::page::{Page, Set};
use crate::verbs::what_if::Compared;

/// A number by its name, before and after.
pub(crate) struct Pair {
    /// Its lasting name, and what it is called.
    pub(crate) name: (&'static str, Message),
    /// Before.
    pub(crate) before: Option<AnyQuantity>,
    /// After.
    pub(crate) after: Option<AnyQuantity>,
}

/// A choice that came out differently.
pub(crate) struct Changed {
    /// Where in the job.
    pub(crate) at: String,
    /// Before; empty if there was none.
    pub(crate) before: String,
    /// After; empty if there is none.
    pub(crate) after: String,
}

/// The whole comparison.
pub(crate) fn compared(page: &mut Page, compared: &Compared) {
    let (before, after) = (&compared.before, &compared.after);
    for stop in after.findings.iter().filter(|finding| finding.severity == Severity::Stop) {
        page.loud(&message!("oilway-stop", at = stop.at.as_str(), what = stop.what.clone()));
    }
    page.loud(&verdict(compared));
    page.gap();
    let mut rows = vec![
        ["oilway-span-number", "oilway-before", "oilway-after"]
            .map(|key| page.words(&Message::new(key)))
            .to_vec(),
    ];
    for pair in numbers(compared) {
        let said =
            |value: Option<AnyQuantity>| value.map_or_else(|| "–".to_owned(), |value| page.quantity(value));
        let row = vec![page.words(&pair.name.1), said(pair.before), said(pair.after)];
        rows.push(row);
    }
    page.table(&[Set::Left, Set::Right, Set::Right], &rows);
    let changes = choices(compared);
    if !changes.is_empty() {
        page.heading(&message!("oilway-changed-choices"));
        for change in &changes {
            page.item("- ", &changed(change));
        }
    }
    findings(page, &message!("oilway-new-findings"), &after.findings, &before.findings);
    findings(page, &message!("oilway-gone-findings"), &before.findings, &after.findings);
    page.gap();
    page.say(&message!("oilway-local-codes"));
}

fn verdict(compared: &Compared) -> Message {
    let (before, after) = (compared.before.answer.verdict, compared.after.answer.verdict);
    if before == after {
        message!("oilway-same-verdict", verdict = verdict_word(after))
    } else {
        message!("oilway-other-verdict", before = verdict_word(before), after = verdict_word(after))
    }
}

fn changed(change: &Changed) -> Message {
    let at = change.at.as_str();
    match (change.before.as_str(), change.after.as_str()) {
        ("", after) => message!("oilway-choice-new", at = at, after = after),
        (before, "") => message!("oilway-choice-gone", at = at, before = before),
        (before, after) => message!("oilway-choice-changed", at = at, before = before, after = after),
    }
}

/// Findings of the first list that the second does not have, notes left out.
fn findings(page: &mut Page, heading: &Message, these: &[Finding], those: &[Finding]) {
    let same = |a: &Finding, b: &Finding| a.rule == b.rule && a.at == b.at;
    let new: Vec<&Finding> = these
        .iter()
        .filter(|finding| finding.severity != Severity::Note)
        .filter(|finding| !those.iter().any(|other| same(finding, other)))
        .collect();
    if new.is_empty() {
        return;
    }
    page.heading(heading);
    for finding in new {
        page.item(
            "- ",
            &message!(
                "oilway-finding",
                rule = finding.rule,
                at = finding.at.as_str(),
                what = finding.what.clone()
            ),
        );
    }
}

/// The key numbers of both.
pub(crate) fn numbers(compared: &Compared) -> Vec<Pair> {
    type Of = fn(&Answer) -> Option<AnyQuantity>;
    let all: [(&'static str, Message, Of); 10] = [
        ("peak.cold", message!("oilway-name-peak"), |a| peak(a).map(AnyQuantity::from)),
        ("stall", message!("oilway-name-stall"), |a| cold(a).map(|s| s.pump.stall.into())),
        ("event.cold", message!("oilway-name-event"), |a| cold(a)?.event_time.map(AnyQuantity::from)),
        ("cold.limit", message!("oilway-name-cold-limit"), |a| {
            Some(a.cold_limit.as_ref()?.temperature.into())
        }),
        ("window.low", message!("oilway-name-window-low"), |a| Some(a.protection.window_low.into())),
        ("window.high", message!("oilway-name-window-high"), |a| Some(a.protection.window_high.into())),
        ("demand.total", message!("oilway-name-demand"), |a| {
            Some(a.deliveries.iter().map(|d| d.required).sum::<oilway_units::Flow>().into())
        }),
        ("use", message!("oilway-name-use"), |a| Some(a.supply.use_rate.into())),
        ("refill", message!("oilway-name-refill"), |a| Some(a.supply.refill.into())),
        ("reserve", message!("oilway-name-reserve"), |a| Some(a.supply.reserve.into())),
    ];
    let (before, after) = (&compared.before.answer, &compared.after.answer);
    all.into_iter()
        .map(|(key, name, of)| Pair { name: (key, name), before: of(before), after: of(after) })
        .collect()
}

fn cold(answer: &Answer) -> Option<&oilway_model::SeasonResult> {
    answer.seasons.iter().find(|season| season.season == Season::Cold)
}

fn peak(answer: &Answer) -> Option<Pressure> {
    let paths = &cold(answer)?.paths;
    paths.iter().map(|path| path.moving.max(path.start_rested)).max_by(Pressure::total_cmp)
}

/// The choices that came out differently.
pub(crate) fn choices(compared: &Compared) -> Vec<Changed> {
    let (before, after) = (&compared.before.design.reasons, &compared.after.design.reasons);
    let chosen = |list: &[oilway_model::Reason], at: &str| {
        list.iter().find(|reason| reason.at == at).map_or_else(String::new, |reason| reason.chosen.clone())
    };
    let places = before.iter().chain(after.iter().filter(|reason| !before.iter().any(|b| b.at == reason.at)));
    places
        .map(|reason| Changed {
            at: reason.at.clone(),
            before: chosen(before, &reason.at),
            after: chosen(after, &reason.at),
        })
        .filter(|change| change.before != change.after)
        .collect()
}
