//! The pump package: its parts and what they do in each season.

use oilway_catalogue::Part;
use oilway_model::{Answer, Design, Finding, Mounting, SeasonResult};
use oilway_text::{Arg, Message, message};

use crate::parts_list::Items;
use crate::sheet::{Block, Column, Sheet, Table};
use crate::words;

/// The package.
pub fn package(design: &Design, answer: &Answer, _: &[Finding]) -> Sheet {
    let blocks = vec![
        Block::Table(parts(design)),
        Block::Heading(message!("documents-head-pump")),
        Block::Table(pump(answer)),
        Block::Heading(message!("documents-head-supply")),
        Block::Table(supply(design, answer)),
    ];
    Sheet { title: message!("documents-title-package", job = design.name.as_str()), blocks }
}

fn parts(design: &Design) -> Table {
    let mut table = Table::new([
        Column::words(message!("documents-column-what")),
        Column::words(message!("documents-column-part")),
        Column::numbers(message!("documents-column-rating")),
    ]);
    let items = Items::of(design);
    let package = &design.package;
    let whole = [Some(&package.pump), Some(&package.block), Some(&package.reservoir)];
    let optional = [
        &package.regulator,
        &package.valve,
        &package.disc,
        &package.holder,
        &package.gauge,
        &package.controller,
    ];
    for part in whole.into_iter().chain(optional.into_iter().map(Option::as_ref)).flatten() {
        let part: &Part = part;
        let rating = words::or_none(part.kind.rating(part));
        table.rows.push(vec![part.kind.id().into(), words::item(part, &items).into(), rating]);
    }
    table
}

fn pump(answer: &Answer) -> Table {
    let head = [Column::words(message!("documents-column-number"))];
    let seasons = answer.seasons.iter().map(|season| Column::numbers(words::season(season.season)));
    let mut table = Table::new(head.into_iter().chain(seasons));
    let mut row = |what: Message, of: fn(&SeasonResult) -> Arg| {
        table.rows.push([Arg::from(what)].into_iter().chain(answer.seasons.iter().map(of)).collect());
    };
    row(message!("documents-number-stall"), |season| season.pump.stall.into());
    row(message!("documents-number-stall-possible"), |season| season.pump.stall_possible.into());
    row(message!("documents-number-flow"), |season| season.pump.flow_limit.into());
    row(message!("documents-number-rate"), |season| season.pump.rate.into());
    row(message!("documents-number-free-air"), |season| season.pump.free_air.into());
    row(message!("documents-number-fill-time"), |season| words::or_none(season.pump.fill_time));
    row(message!("documents-number-fill-time-available"), |season| season.pump.fill_time_available.into());
    row(message!("documents-number-event"), |season| words::or_none(season.event_time));
    table
}

fn supply(design: &Design, answer: &Answer) -> Table {
    let mut table = Table::new([
        Column::words(message!("documents-column-number")),
        Column::words(message!("documents-column-value")),
    ]);
    let mut row = |what: Message, value: Arg| table.rows.push(vec![what.into(), value]);
    let mounting = match design.package.mounting {
        Mounting::OnReservoir => message!("documents-mounting-on-reservoir"),
        Mounting::Remote(_) => message!("documents-mounting-remote"),
    };
    row(message!("documents-number-mounting"), mounting.into());
    row(message!("documents-number-place"), words::place(design, design.package.place));
    row(message!("documents-number-air-setting"), words::or_none(design.package.air_setting));
    row(message!("documents-number-air-highest"), words::or_none(answer.protection.highest_setting));
    row(message!("documents-number-feed"), answer.supply.feed.into());
    row(message!("documents-number-use"), answer.supply.use_rate.into());
    row(message!("documents-number-air-per-hour"), answer.supply.air_per_hour.into());
    row(message!("documents-number-refill"), answer.supply.refill.into());
    row(message!("documents-number-reserve"), answer.supply.reserve.into());
    row(message!("documents-number-relieving"), words::or_none(answer.protection.relieving));
    row(message!("documents-number-stays"), words::or_none(stays(answer)));
    table
}

/// What stays after a burst: what the lubricant could hold, but never more than stood there when the disc went.
fn stays(answer: &Answer) -> Option<oilway_units::Pressure> {
    let stood = answer.protection.highest_burst;
    answer.protection.stays.map(|holds| stood.map_or(holds, |burst| holds.min(burst)))
}
