//! The pressure ladder for programs.

use oilway_documents::{BandSort, Block, Ladder, Sheet};
use oilway_text::{Reader, say};
use schemars::JsonSchema;
use serde::Serialize;

use super::quantity::QuantityData;

/// The answer of `ladder`.
#[derive(Debug, Serialize, JsonSchema)]
pub struct LadderAnswer {
    /// `oilway.ladder.1`
    pub version: &'static str,
    /// The upper end of the scale.
    pub top: Option<QuantityData>,
    /// The columns of the picture.
    pub columns: Vec<ColumnData>,
    /// Single pressures.
    pub marks: Vec<MarkData>,
}

/// A column of the picture.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ColumnData {
    /// What stands above it.
    pub title: String,
    /// Its bands.
    pub bands: Vec<BandData>,
}

/// A band of pressures.
#[derive(Debug, Serialize, JsonSchema)]
pub struct BandData {
    /// working, burst or window.
    pub sort: &'static str,
    /// Its lower end.
    pub low: QuantityData,
    /// Its upper end.
    pub high: QuantityData,
}

/// A single pressure.
#[derive(Debug, Serialize, JsonSchema)]
pub struct MarkData {
    /// What it is.
    pub what: String,
    /// The pressure.
    pub at: QuantityData,
    /// The column to which it belongs, counted from zero; none if it holds across all.
    pub column: Option<usize>,
}

impl LadderAnswer {
    pub(crate) fn new(sheet: &Sheet, reader: &Reader) -> Self {
        let found = sheet.blocks.iter().find_map(|block| match block {
            Block::Ladder(ladder) => Some(ladder),
            _ => None,
        });
        let (columns, marks) = found.map_or_else(Default::default, |ladder| drawn(ladder, reader));
        LadderAnswer {
            version: "oilway.ladder.1",
            top: found.map(|ladder| QuantityData::new(ladder.top, reader)),
            columns,
            marks,
        }
    }
}

fn drawn(ladder: &Ladder, reader: &Reader) -> (Vec<ColumnData>, Vec<MarkData>) {
    let band = |band: &oilway_documents::Band| BandData {
        sort: match band.sort {
            BandSort::Working => "working",
            BandSort::Burst => "burst",
            BandSort::Window => "window",
        },
        low: QuantityData::new(band.low, reader),
        high: QuantityData::new(band.high, reader),
    };
    let column = |column: &oilway_documents::LadderColumn| ColumnData {
        title: say(&column.title, reader),
        bands: column.bands.iter().map(band).collect(),
    };
    let mark = |mark: &oilway_documents::LadderMark| MarkData {
        what: say(&mark.what, reader),
        at: QuantityData::new(mark.at, reader),
        column: mark.column,
    };
    (ladder.columns.iter().map(column).collect(), ladder.marks.iter().map(mark).collect())
}
