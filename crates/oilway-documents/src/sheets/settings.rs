//! The settings: what is set, and what gauge and switches show on a good day and on a bad one.

use oilway_model::{Answer, Design, Finding, PathPressures, SeasonResult};
use oilway_text::{Arg, Message, message};
use oilway_units::Pressure;

use crate::sheet::{Block, Column, Sheet, Table};
use crate::words;

/// The settings.
pub fn settings(design: &Design, answer: &Answer, _: &[Finding]) -> Sheet {
    let mut blocks = vec![
        Block::Table(set(design, answer)),
        Block::Heading(message!("documents-head-gauge")),
        Block::Table(gauge(answer)),
        Block::Heading(message!("documents-head-signals")),
        Block::List(signals(design, answer)),
    ];
    blocks.extend(crate::cautions::caution("S08").map(Block::Caution));
    Sheet { title: message!("documents-title-settings", job = design.name.as_str()), blocks }
}

fn set(design: &Design, answer: &Answer) -> Table {
    let mut table = Table::new([
        Column::words(message!("documents-column-setting")),
        Column::numbers(message!("documents-column-value")),
        Column::words(message!("documents-column-meaning")),
    ]);
    let mut row =
        |what: Message, value: Arg, why: Message| table.rows.push(vec![what.into(), value, why.into()]);
    let control = &design.control;
    row(message!("documents-set-pause"), control.pause.into(), message!("documents-set-pause-why"));
    row(message!("documents-set-cycles"), control.cycles.into(), message!("documents-set-cycles-why"));
    row(message!("documents-set-time-out"), control.time_out.into(), message!("documents-set-time-out-why"));
    if let Some(setting) = design.package.air_setting {
        let why = match answer.protection.highest_setting {
            Some(highest) => message!("documents-set-air-why", highest = highest),
            None => message!("documents-set-air-why-open"),
        };
        row(message!("documents-set-air"), setting.into(), why);
    }
    table
}

/// What the gauge at the pump reads, season beside season.
fn gauge(answer: &Answer) -> Table {
    let head = [Column::words(message!("documents-column-moment"))];
    let seasons = answer.seasons.iter().map(|season| Column::numbers(words::season(season.season)));
    let mut table = Table::new(head.into_iter().chain(seasons));
    let mut row = |what: Message, of: &dyn Fn(&SeasonResult) -> Arg| {
        table.rows.push([Arg::from(what)].into_iter().chain(answer.seasons.iter().map(of)).collect());
    };
    row(message!("documents-gauge-first"), &|season| readable(season, |path| path.start_rested));
    row(message!("documents-gauge-moving"), &|season| span(season, |path| path.at_pump));
    row(message!("documents-gauge-after"), &|season| readable(season, |path| path.residual));
    row(message!("documents-gauge-blocked"), &|season| season.pump.stall.into());
    row(message!("documents-gauge-event"), &|season| words::or_none(season.event_time));
    table
}

/// The highest that the gauge at the pump shows while nothing is blocked.
pub(super) fn highest_reading(season: &SeasonResult) -> Pressure {
    let readings = season.paths.iter().map(|path| path.at_pump.max(path.start_rested).min(season.pump.stall));
    readings.fold(Pressure::ZERO, Pressure::max)
}

/// What a gauge can show of it: never more than the pump gives, whatever the lubricant could hold.
fn readable(season: &SeasonResult, of: impl Fn(&PathPressures) -> Pressure) -> Arg {
    span(season, |path| of(path).min(season.pump.stall))
}

/// From the easiest path to the worst.
fn span(season: &SeasonResult, of: impl Fn(&PathPressures) -> Pressure) -> Arg {
    let low = season.paths.iter().map(&of).reduce(Pressure::min);
    let high = season.paths.iter().map(&of).reduce(Pressure::max);
    match (low, high) {
        (Some(low), Some(high)) => (low, high).into(),
        _ => words::none(),
    }
}

fn signals(design: &Design, answer: &Answer) -> Vec<Message> {
    let control = &design.control;
    let watched: Vec<&str> =
        design.dividers.iter().filter(|d| d.cycle_switch).map(|d| d.name.as_str()).collect();
    let mut list = Vec::new();
    if watched.is_empty() {
        list.push(message!("documents-signal-no-switch"));
    } else {
        list.push(message!("documents-signal-cycle", dividers = watched, cycles = control.cycles));
        list.push(message!("documents-signal-blocked", time_out = control.time_out));
    }
    list.push(message!("documents-signal-level", reserve = answer.supply.reserve));
    let highest = answer.seasons.iter().map(highest_reading).fold(Pressure::ZERO, Pressure::max);
    list.push(message!("documents-signal-pressure", highest = highest));
    list
}
