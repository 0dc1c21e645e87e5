//! The one-page answer: what must be read first, the verdict, the numbers that carry it, what to look after.

use oilway_catalogue::kinds::BurstDisc;
use oilway_model::{Answer, ColdLimit, Design, Finding, Season, SeasonResult, Severity, Verdict};
use oilway_text::{Arg, Message, message};
use oilway_units::Pressure;

use crate::cautions::caution;
use crate::entries::{Entry, entries};
use crate::names::FEW;
use crate::sheet::{Block, Column, Sheet, Table};
use crate::words;

/// The one-page answer.
pub fn answer(design: &Design, answer: &Answer, findings: &[Finding]) -> Sheet {
    let mut blocks = stops(design, findings);
    blocks.push(Block::Say(words::verdict(answer.verdict)));
    blocks.extend(margin(answer).map(Block::Say));
    blocks.push(Block::Say(principle(design)));
    blocks.push(Block::Heading(message!("documents-head-numbers")));
    blocks.push(Block::Table(numbers(design, answer)));
    blocks.extend(answer.cold_limit.iter().flat_map(|limit| remedies(design, limit)));
    blocks.push(Block::Heading(message!("documents-head-look-after")));
    blocks.push(Block::List(look_after(design, answer, findings)));
    blocks.extend(turns(design, answer, findings));
    blocks.extend(closing());
    Sheet { title: message!("documents-title-answer", job = design.name.as_str()), blocks }
}

/// What must not be built or started like this, before anything else.
pub(super) fn stops(design: &Design, findings: &[Finding]) -> Vec<Block> {
    let stops = entries(findings).into_iter().filter(|entry| entry.severity() == Severity::Stop);
    stops.map(|entry| Block::Stop(said(design, &entry))).collect()
}

/// An entry with all its names.
pub(super) fn said(design: &Design, entry: &Entry<'_>) -> Message {
    message!("documents-finding", at = entry.things(design, usize::MAX), what = entry.what())
}

/// What would turn the findings that carry the verdict.
fn turns(design: &Design, answer: &Answer, findings: &[Finding]) -> Vec<Block> {
    let Some(carries) = findings.iter().map(|finding| finding.severity).min() else { return Vec::new() };
    let carrying: Vec<Entry<'_>> =
        entries(findings).into_iter().filter(|entry| entry.severity() == carries).collect();
    let turn = |entry: &Entry<'_>| {
        let turns = entry.turns()?;
        Some(message!("documents-finding", at = entry.things(design, FEW), what = turns))
    };
    let list: Vec<Message> = carrying.iter().filter_map(turn).collect();
    if carries == Severity::Note || list.is_empty() {
        return Vec::new();
    }
    let mut blocks = vec![Block::Heading(message!("documents-head-turns")), Block::List(list)];
    // A fact that nobody knows leaves the verdict open, whatever else is cured.
    if answer.verdict != Verdict::CannotTellYet && carrying.len() > 1 {
        blocks.push(Block::Say(message!("documents-turns-all", number = carrying.len())));
    }
    blocks
}

/// The texts with which every paper ends that somebody works by.
pub(super) fn closing() -> Vec<Block> {
    let mut blocks = vec![Block::Say(message!("documents-closing"))];
    blocks.extend(caution("S01").map(Block::Caution));
    blocks
}

fn principle(design: &Design) -> Message {
    let switches = design.dividers.iter().filter(|divider| divider.cycle_switch).count();
    message!(
        "documents-principle",
        points = design.points.len(),
        dividers = design.dividers.len(),
        switches = switches,
        lubricant = design.conditions.lubricant.name.as_str(),
    )
}

/// The higher of what the worst paths of a season ask: at the start after rest, and in motion.
pub(super) fn peak(season: &SeasonResult) -> Pressure {
    let all = season.paths.iter().map(|path| path.moving.max(path.start_rested));
    all.fold(Pressure::ZERO, Pressure::max)
}

/// The season that leaves the pump least.
fn tightest(answer: &Answer) -> Option<&SeasonResult> {
    let room = |season: &SeasonResult| season.pump.stall - peak(season);
    answer.seasons.iter().min_by(|a, b| room(a).total_cmp(&room(b)))
}

fn margin(answer: &Answer) -> Option<Message> {
    let season = tightest(answer)?;
    let (need, stall) = (peak(season), season.pump.stall);
    let day = words::season(season.season);
    Some(if need <= stall {
        message!("documents-margin", day = day, need = need, stall = stall, room = stall - need)
    } else {
        message!("documents-margin-lacking", day = day, need = need, stall = stall, lacking = need - stall)
    })
}

fn numbers(design: &Design, answer: &Answer) -> Table {
    let mut table = Table::new([
        Column::words(message!("documents-column-number")),
        Column::words(message!("documents-column-value")),
    ]);
    let mut row = |what: Message, value: Arg| table.rows.push(vec![what.into(), value]);
    if let Some(cold) = answer.seasons.iter().find(|season| season.season == Season::Cold) {
        row(message!("documents-number-peak"), peak(cold).into());
        row(message!("documents-number-stall"), cold.pump.stall.into());
        row(message!("documents-number-event"), words::or_none(cold.event_time));
    }
    if let Some(limit) = &answer.cold_limit {
        let place = words::place(design, limit.place);
        row(
            message!("documents-number-coldest"),
            message!("documents-at-temperature", temperature = limit.temperature, place = place).into(),
        );
    }
    row(message!("documents-number-disc"), disc(design));
    row(message!("documents-number-window"), window(answer));
    let (weakest, rating) = (answer.protection.weakest.0.trim_end_matches('.'), answer.protection.weakest.1);
    row(
        message!("documents-number-weakest"),
        message!("documents-rated", what = weakest, rating = rating).into(),
    );
    row(message!("documents-number-use"), answer.supply.use_rate.into());
    row(message!("documents-number-refill"), answer.supply.refill.into());
    row(message!("documents-number-reserve"), answer.supply.reserve.into());
    table
}

fn disc(design: &Design) -> Arg {
    let disc = design.package.disc.as_deref().and_then(BurstDisc::of);
    match disc {
        Some(disc) => message!("documents-disc", marked = disc.nominal, tolerance = disc.tolerance).into(),
        None => message!("documents-no-disc").into(),
    }
}

fn window(answer: &Answer) -> Arg {
    let protection = &answer.protection;
    let (low, high) = (protection.window_low, protection.window_high);
    if low <= high {
        message!("documents-window-open", low = low, high = high).into()
    } else {
        message!("documents-window-shut", low = low, high = high).into()
    }
}

/// The limit that lubricant, pump or a line states for itself, where it comes before any pressure does.
fn stated(limit: &ColdLimit) -> Option<Message> {
    let ends = limit.remedies.iter().map(|r| r.temperature).chain([Some(limit.temperature)]);
    let (whose, coldest) = limit.stated.as_ref()?;
    let first = ends.into_iter().any(|end| end.is_none_or(|end| end < *coldest));
    first.then(|| {
        message!("documents-cold-stated", whose = whose.trim_end_matches('.'), temperature = *coldest)
    })
}

fn remedies(design: &Design, limit: &ColdLimit) -> Vec<Block> {
    if limit.remedies.is_empty() {
        return Vec::new();
    }
    let place = words::place(design, limit.place);
    let remedy = |remedy: &oilway_model::Remedy| match remedy.temperature {
        Some(limit) => message!("documents-remedy", what = remedy.what.clone(), temperature = limit),
        None => message!("documents-remedy-beyond", what = remedy.what.clone()),
    };
    vec![
        Block::Heading(message!("documents-head-cold")),
        Block::Say(message!(
            "documents-cold",
            temperature = limit.temperature,
            place = place,
            reserve = limit.reserve
        )),
        Block::List(limit.remedies.iter().map(remedy).chain(stated(limit)).collect()),
    ]
}

fn look_after(design: &Design, answer: &Answer, findings: &[Finding]) -> Vec<Message> {
    let mut list = vec![message!(
        "documents-look-refill",
        refill = answer.supply.refill,
        reserve = answer.supply.reserve
    )];
    if let (Some(setting), Some(highest)) = (design.package.air_setting, answer.protection.highest_setting) {
        list.push(message!("documents-look-air", setting = setting, highest = highest));
    }
    if design.package.disc.is_some() {
        list.push(message!("documents-look-disc", spares = design.package.spare_discs));
    }
    let cautions = entries(findings).into_iter().filter(|entry| entry.severity() != Severity::Note);
    list.extend(cautions.map(|entry| {
        let at = entry.things(design, FEW);
        message!("documents-look-finding", at = at, cure = entry.cure(), what = entry.what())
    }));
    list
}
