//! Lines: what runs where, what it holds, and what the worst paths ask in each season.

use oilway_catalogue::Part;
use oilway_catalogue::kinds::{Hose, Tube};
use oilway_model::{Answer, Design, Finding, Leg, Mounting, PathPressures, SeasonResult};
use oilway_physics::pipe_flow;
use oilway_text::{Arg, Message, message};
use oilway_units::{Length, Pressure, Volume};

use crate::parts_list::Items;
use crate::sheet::{Block, Column, Sheet, Table};
use crate::words;

/// Every line and the pressures of the worst paths.
pub fn lines(design: &Design, answer: &Answer, _: &[Finding]) -> Sheet {
    let blocks = vec![
        Block::Table(all_lines(design)),
        Block::Heading(message!("documents-head-worst")),
        Block::Table(worst_paths(design, answer)),
        Block::Say(message!("documents-worst-words")),
        Block::Heading(message!("documents-head-paths")),
        Block::Table(paths(design, answer)),
    ];
    Sheet { title: message!("documents-title-lines", job = design.name.as_str()), blocks }
}

/// The bore of a tube or hose.
fn bore(part: &Part) -> Option<Length> {
    Tube::of(part).map(|tube| tube.bore()).or_else(|| Hose::of(part).map(|hose| hose.bore))
}

fn all_lines(design: &Design) -> Table {
    let mut table = Table::new([
        Column::words(message!("documents-column-line")),
        Column::words(message!("documents-column-station")),
        Column::words(message!("documents-column-tube")),
        Column::numbers(message!("documents-column-bore")),
        Column::numbers(message!("documents-column-length")),
        Column::numbers(message!("documents-column-rise")),
        Column::numbers(message!("documents-column-content")),
    ]);
    let items = Items::of(design);
    let mut content = Volume::ZERO;
    let mut length = Length::ZERO;
    let mut add = |name: Message, leg: &Leg| {
        let part = design.conduits.get(leg.conduit);
        let wide = part.and_then(|part| bore(part));
        let holds = wide.map(|bore| pipe_flow::line_content(bore, leg.length.get()));
        content += holds.unwrap_or_default();
        length += leg.length.get();
        table.rows.push(vec![
            name.into(),
            words::place(design, leg.place),
            words::or_none(part.map(|part| words::item(part, &items))),
            words::or_none(wide),
            leg.length.get().into(),
            leg.rise.get().into(),
            words::or_none(holds),
        ]);
    };
    for node in &design.network.nodes {
        node.legs.iter().for_each(|leg| add(message!("documents-line-to", name = node.name.as_str()), leg));
    }
    if let Mounting::Remote(legs) = &design.package.mounting {
        legs.iter().for_each(|leg| add(message!("documents-line-inlet"), leg));
    }
    design.package.discharge.iter().for_each(|leg| add(message!("documents-line-discharge"), leg));
    let empty = || Arg::from("");
    table.foot = vec![vec![
        message!("documents-total").into(),
        empty(),
        empty(),
        empty(),
        length.into(),
        empty(),
        content.into(),
    ]];
    table
}

fn point_name(design: &Design, point: usize) -> Arg {
    design.points.get(point).map_or_else(words::none, |point| point.name.as_str().into())
}

/// The path that asks most at the start and the one that asks most in motion.
fn worst_paths(design: &Design, answer: &Answer) -> Table {
    let mut table = Table::new([
        Column::words(message!("documents-column-season")),
        Column::words(message!("documents-column-asks")),
        Column::words(message!("documents-column-point")),
        Column::numbers(message!("documents-column-pressure")),
        Column::numbers(message!("documents-column-stall")),
        Column::numbers(message!("documents-column-room")),
    ]);
    for season in &answer.seasons {
        let mut row =
            |what: Message, point: usize, of: fn(&PathPressures) -> Pressure, against_stall: bool| {
                let Some(path) = season.paths.get(point) else { return };
                let stall = season.pump.stall;
                let (stall, room) = if against_stall {
                    (stall.into(), (stall - of(path)).into())
                } else {
                    (words::none(), words::none())
                };
                let season = words::season(season.season);
                table.rows.push(vec![
                    season.into(),
                    what.into(),
                    point_name(design, point),
                    of(path).into(),
                    stall,
                    room,
                ]);
            };
        row(message!("documents-asks-start"), season.worst_start, |path| path.start, true);
        row(message!("documents-asks-start-rested"), season.worst_start, |path| path.start_rested, true);
        row(message!("documents-asks-moving"), season.worst_moving, |path| path.moving, true);
        row(message!("documents-asks-residual"), most_residual(season), |path| path.residual, false);
    }
    table
}

fn most_residual(season: &SeasonResult) -> usize {
    let paths = season.paths.iter().enumerate().rev();
    paths.max_by(|a, b| a.1.residual.total_cmp(&b.1.residual)).map_or(0, |(number, _)| number)
}

/// Every path, moving, season beside season.
fn paths(design: &Design, answer: &Answer) -> Table {
    let head = [Column::words(message!("documents-column-point"))];
    let seasons = answer.seasons.iter().map(|season| Column::numbers(words::season(season.season)));
    let mut table = Table::new(head.into_iter().chain(seasons));
    for (number, point) in design.points.iter().enumerate() {
        let of_season =
            |season: &SeasonResult| words::or_none(season.paths.get(number).map(|path| path.moving));
        let cells = answer.seasons.iter().map(of_season);
        table.rows.push([Arg::from(point.name.as_str())].into_iter().chain(cells).collect());
    }
    table
}
