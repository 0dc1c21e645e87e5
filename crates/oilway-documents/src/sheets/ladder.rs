//! The pressure ladder: working band, stall, burst band, window and ratings on one scale.

use std::collections::BTreeMap;

use oilway_catalogue::Part;
use oilway_catalogue::kinds::BurstDisc;
use oilway_model::{Answer, Design, Filling, Finding, SeasonResult};
use oilway_text::{Message, message};
use oilway_units::Pressure;

use super::answer::peak;
use crate::cautions::caution;
use crate::parts_list::Items;
use crate::sheet::{Band, BandSort, Block, Ladder, LadderColumn, LadderMark, Sheet};
use crate::words;

/// The pressure ladder with the sentence that it draws.
pub fn ladder(design: &Design, answer: &Answer, _: &[Finding]) -> Sheet {
    let protection = &answer.protection;
    let window = if protection.window_low <= protection.window_high {
        message!("documents-ladder-window-open", low = protection.window_low, high = protection.window_high)
    } else {
        message!("documents-ladder-window-shut", low = protection.window_low, high = protection.window_high)
    };
    let mut blocks = vec![Block::Say(window), Block::Ladder(picture(design, answer))];
    blocks.extend(["S03", "S04"].into_iter().filter_map(caution).map(Block::Caution));
    Sheet { title: message!("documents-title-ladder", job = design.name.as_str()), blocks }
}

fn picture(design: &Design, answer: &Answer) -> Ladder {
    let seasons = seasons(&answer.seasons);
    let title = |season: &SeasonResult| match seasons.len() {
        1 if answer.seasons.len() > 1 => message!("documents-ladder-every-day"),
        _ => words::season(season.season),
    };
    let mut columns: Vec<LadderColumn> =
        seasons.iter().map(|season| season_column(season, title(season))).collect();
    let disc_column = columns.len();
    columns.push(disc(answer));
    let ratings = ratings(design, &Items::of(design));
    let lowest_rating = ratings.first().map_or(Pressure::ZERO, |(rating, _)| *rating);
    let mut marks: Vec<LadderMark> = Vec::new();
    for (number, season) in seasons.iter().enumerate() {
        let what = message!("documents-mark-stall");
        marks.push(LadderMark { at: season.pump.stall, column: Some(number), what });
    }
    marks.extend(disc_marks(design, answer, disc_column));
    let possible = answer.seasons.iter().map(|s| s.pump.stall_possible).fold(Pressure::ZERO, Pressure::max);
    marks.push(LadderMark { at: possible, column: None, what: message!("documents-mark-stall-possible") });
    // The scale shows all that the disc question turns on; ratings far above it would flatten the picture.
    let bands = columns.iter().flat_map(|column| &column.bands).map(|band| band.high);
    let shown = bands.chain(marks.iter().map(|mark| mark.at)).fold(lowest_rating, Pressure::max);
    marks.extend(ratings.into_iter().map(|(at, what)| LadderMark { at, column: None, what }));
    Ladder { top: shown * HEADROOM, columns, marks }
}

/// Room above the highest thing shown.
const HEADROOM: f64 = 1.05;

/// The seasons that have a column: all of them, or one where cold and heat change nothing.
fn seasons(all: &[SeasonResult]) -> &[SeasonResult] {
    let shown = |season: &SeasonResult| (asked(season), season.pump.stall);
    match all {
        [first, others @ ..] if others.iter().all(|other| shown(other) == shown(first)) => {
            core::slice::from_ref(first)
        }
        _ => all,
    }
}

/// What the paths ask, from the easiest to the worst.
fn asked(season: &SeasonResult) -> (Pressure, Pressure) {
    let lowest = season.paths.iter().map(|path| path.moving).reduce(Pressure::min);
    (lowest.unwrap_or(Pressure::ZERO), peak(season))
}

fn season_column(season: &SeasonResult, title: Message) -> LadderColumn {
    let (low, high) = asked(season);
    LadderColumn { title, bands: vec![Band { sort: BandSort::Working, low, high }] }
}

fn disc(answer: &Answer) -> LadderColumn {
    let protection = &answer.protection;
    let mut bands = Vec::new();
    if let (Some(low), Some(high)) = (protection.lowest_burst, protection.highest_burst) {
        bands.push(Band { sort: BandSort::Burst, low, high });
    }
    if protection.window_low <= protection.window_high {
        bands.push(Band { sort: BandSort::Window, low: protection.window_low, high: protection.window_high });
    }
    LadderColumn { title: message!("documents-ladder-disc"), bands }
}

fn disc_marks(design: &Design, answer: &Answer, column: usize) -> Vec<LadderMark> {
    let protection = &answer.protection;
    let marked = design.package.disc.as_deref().and_then(BurstDisc::of).map(|disc| disc.nominal);
    let marks = [
        (marked, message!("documents-mark-marked")),
        (protection.steady_maximum, message!("documents-mark-steady")),
        (protection.relieving, message!("documents-mark-relieving")),
    ];
    let mark =
        |(at, what): (Option<Pressure>, Message)| Some(LadderMark { at: at?, column: Some(column), what });
    let mut marks: Vec<LadderMark> = marks.into_iter().filter_map(mark).collect();
    marks.push(LadderMark {
        at: protection.working,
        column: Some(column),
        what: message!("documents-mark-working"),
    });
    marks
}

/// The ratings of all parts that see the pump's pressure, the lowest first, equal ones together.
fn ratings(design: &Design, items: &Items) -> Vec<(Pressure, Message)> {
    let mut by_rating: BTreeMap<u64, (Pressure, Vec<&Part>)> = BTreeMap::new();
    for part in under_pressure(design) {
        let Some(rating) = part.kind.rating(part).filter(|rating| *rating >= Pressure::ZERO) else {
            continue;
        };
        // The bits of positive numbers stand in the order of the numbers.
        let (_, parts) = by_rating.entry(rating.pascals().to_bits()).or_insert((rating, Vec::new()));
        if !parts.iter().any(|known| known.id == part.id) {
            parts.push(part);
        }
    }
    let said = |(rating, parts): (Pressure, Vec<&Part>)| (rating, rated(&parts, items));
    by_rating.into_values().map(said).collect()
}

/// One or two parts by their descriptions, more by their numbers in the parts list.
fn rated(parts: &[&Part], items: &Items) -> Message {
    if parts.len() <= 2 {
        let described: Vec<Message> = parts.iter().map(|part| words::item(part, items)).collect();
        return message!("documents-mark-rating", parts = described);
    }
    let mut numbers: Vec<u32> = parts.iter().filter_map(|part| items.item(part)).collect();
    numbers.sort_unstable();
    message!("documents-mark-rating-items", items = numbers)
}

/// Every part that the pump's pressure reaches.
fn under_pressure(design: &Design) -> Vec<&Part> {
    let package = &design.package;
    let mut parts: Vec<&Part> = vec![&package.pump, &package.block];
    let legs = design.network.nodes.iter().flat_map(|node| &node.legs);
    parts.extend(legs.filter_map(|leg| design.conduits.get(leg.conduit)).map(|part| &**part));
    parts.extend(design.dividers.iter().map(|divider| &*divider.body));
    parts.extend(design.joints.iter().flat_map(|joint| &joint.parts).map(|part| &**part));
    for device in package.devices.iter().filter(|device| device.sees_pressure()) {
        parts.extend(device.holds.iter().filter_map(|filling| match filling {
            Filling::Part(part) => Some(&**part),
            _ => None,
        }));
    }
    parts
}
