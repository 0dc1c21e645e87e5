//! Lubricants: a library of generic ones, and the reading of `[[lubricant]]` tables, in library and job files alike.
//!
//! Every row names its source. A generic grease is known by its class only, so its flow is a range, and whatever is
//! worked out from it must be shown as a range too.

use std::sync::LazyLock;

use oilway_text::{Mistake, message};
use oilway_units::{
    Consistency, Density, KinematicViscosity, Pressure, Quantity, Ratio, Temperature, TemperatureDifference,
};

use crate::reading::{Item, Reading, Table, nearest};

/// A lubricant as a file describes it.
#[derive(Clone, Debug, PartialEq)]
pub struct LubricantData {
    /// What people call it.
    pub name: String,
    /// A sentence about it.
    pub description: String,
    /// What it is.
    pub substance: SubstanceData,
    /// Whether it may touch food by accident.
    pub food: bool,
    /// Coldest use.
    pub coldest: Option<Temperature>,
    /// Hottest use.
    pub hottest: Option<Temperature>,
    /// Where the data come from.
    pub source: String,
}

/// Oil or grease.
#[derive(Clone, Debug, PartialEq)]
pub enum SubstanceData {
    /// An oil.
    Oil(OilData),
    /// A grease.
    Grease(GreaseData),
}

/// An oil, or the base oil of a grease.
#[derive(Clone, Debug, PartialEq)]
pub struct OilData {
    /// Density at 15 °C.
    pub density_15: Density,
    /// Kinematic viscosity at 40 °C.
    pub at_40: KinematicViscosity,
    /// Kinematic viscosity at 100 °C.
    pub at_100: KinematicViscosity,
    /// Pour point, if known.
    pub pour_point: Option<Temperature>,
}

/// A grease.
#[derive(Clone, Debug, PartialEq)]
pub struct GreaseData {
    /// NLGI class: `000` to `6`.
    pub nlgi: &'static str,
    /// Thickener in plain words.
    pub thickener: String,
    /// Density of the grease.
    pub density: Density,
    /// Its base oil.
    pub base_oil: OilData,
    /// How it flows.
    pub flow: GreaseFlow,
}

/// How the flow of a grease is known.
#[derive(Clone, Debug, PartialEq)]
pub enum GreaseFlow {
    /// Rows of measured or fitted constants, the coldest first.
    Rows(Vec<FlowRow>),
    /// Ranges by class, at 25 °C.
    Span(FlowSpan),
}

/// The constants of τ = τy + K γ̇ⁿ at one temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FlowRow {
    /// Temperature.
    pub temperature: Temperature,
    /// Yield stress τy.
    pub yield_stress: Pressure,
    /// Consistency K.
    pub consistency: Consistency,
    /// Index n.
    pub index: Ratio,
}

/// A range and what is typical in it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread<T> {
    /// The lower end.
    pub low: T,
    /// What is typical.
    pub typical: T,
    /// The upper end.
    pub high: T,
}

/// The ranges of a class of grease at 25 °C.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FlowSpan {
    /// Yield stress.
    pub yield_stress: Spread<Pressure>,
    /// Consistency.
    pub consistency: Spread<Consistency>,
    /// Index.
    pub index: Spread<Ratio>,
    /// Temperature step that halves the yield stress.
    pub halving: Spread<TemperatureDifference>,
}

/// The classes of consistency (DIN 51818, ASTM D217), softest first.
pub const NLGI: &[&str] = &["000", "00", "0", "1", "2", "3", "4", "5", "6"];

/// The files of the library: name and text.
pub const FILES: &[(&str, &str)] = &[
    ("lubricants/oils.toml", include_str!("../../../data/lubricants/oils.toml")),
    ("lubricants/greases.toml", include_str!("../../../data/lubricants/greases.toml")),
];

/// The library, in the order of its files.
pub fn library() -> &'static [LubricantData] {
    static LIBRARY: LazyLock<Vec<LubricantData>> = LazyLock::new(|| lubricants_from(FILES).0);
    &LIBRARY
}

/// The lubricant of the library with this name.
pub fn lubricant(name: &str) -> Option<&'static LubricantData> {
    library().iter().find(|lubricant| lubricant.name == name.trim())
}

/// The name in the library most like one that nobody knows.
pub fn nearest_name(name: &str) -> Option<&'static str> {
    nearest(name, library().iter().map(|lubricant| lubricant.name.as_str()))
}

/// The lubricants of some files, each given by name and text, and every mistake in them.
pub fn lubricants_from(files: &[(&str, &str)]) -> (Vec<LubricantData>, Vec<Mistake>) {
    let (mut lubricants, mut mistakes): (Vec<LubricantData>, Vec<Mistake>) = Default::default();
    for (name, text) in files {
        let reading = Reading::new(*name, text);
        for table in reading.root().tables("lubricant") {
            let Some(lubricant) = read_lubricant(&table) else { continue };
            if lubricants.iter().any(|other| other.name == lubricant.name) {
                let what = message!("catalogue-doubled-lubricant", name = lubricant.name.as_str());
                reading.note(table.at(), what, message!("catalogue-doubled-lubricant-cure"), None);
            } else {
                lubricants.push(lubricant);
            }
        }
        mistakes.extend(reading.finish());
    }
    (lubricants, mistakes)
}

/// A lubricant from its table; none if something in it is missing or wrong, which is then noted.
pub fn read_lubricant(table: &Table<'_>) -> Option<LubricantData> {
    let text = |key| table.needed_text(key).map(|placed| placed.value.trim().to_owned());
    let (name, description, source) = (text("name"), text("description"), text("source"));
    let food = maybe(table, "food", |item| item.flag().map(|placed| placed.value));
    let coldest = maybe(table, "coldest", value);
    let hottest = maybe(table, "hottest", value);
    let oil = maybe(table, "oil", |item| read_oil(&item.table()?));
    let grease = maybe(table, "grease", |item| read_grease(&item.table()?));
    let substance = match (oil?, grease?) {
        (Some(oil), None) => SubstanceData::Oil(oil),
        (None, Some(grease)) => SubstanceData::Grease(grease),
        _ => {
            let (what, cure) =
                (message!("catalogue-oil-or-grease"), message!("catalogue-oil-or-grease-cure"));
            table.reading().note(table.at(), what, cure, None);
            return None;
        }
    };
    Some(LubricantData {
        name: name?,
        description: description?,
        substance,
        food: food?.unwrap_or(false),
        coldest: coldest?,
        hottest: hottest?,
        source: source?,
    })
}

/// What a key holds, which need not be there: none if it is there and wrong.
fn maybe<'r, T>(
    table: &Table<'r>,
    key: &str,
    read: impl FnOnce(&Item<'r>) -> Option<T>,
) -> Option<Option<T>> {
    match table.item(key) {
        Some(item) => Some(Some(read(&item)?)),
        None => Some(None),
    }
}

fn value<T: Quantity>(item: &Item<'_>) -> Option<T> {
    item.exact().map(|placed| placed.value)
}

fn positive<T: Quantity>(table: &Table<'_>, key: &str) -> Option<T> {
    let item = table.needed(key)?;
    above_nothing(&item, item.exact()?.value)
}

fn above_nothing<T: Quantity>(item: &Item<'_>, value: T) -> Option<T> {
    if value.si() > 0.0 {
        return Some(value);
    }
    let any = oilway_units::AnyQuantity::from(value);
    item.wrong(
        message!("catalogue-out-of-range", key = item.key(), value = any),
        message!("catalogue-range-positive"),
    );
    None
}

fn read_oil(table: &Table<'_>) -> Option<OilData> {
    let density_15 = positive(table, "density_15");
    let at_40: Option<KinematicViscosity> = positive(table, "at_40");
    let at_100: Option<KinematicViscosity> = positive(table, "at_100");
    let pour_point = maybe(table, "pour_point", value);
    let (at_40, at_100) = (at_40?, at_100?);
    if at_100 >= at_40 {
        let what = message!(
            "catalogue-ends-crossed",
            low = "at_100",
            low_value = at_100,
            high = "at_40",
            high_value = at_40
        );
        table.reading().note(
            table.at(),
            what,
            message!("catalogue-contradiction-cure", field = "at_100"),
            None,
        );
        return None;
    }
    Some(OilData { density_15: density_15?, at_40, at_100, pour_point: pour_point? })
}

fn read_grease(table: &Table<'_>) -> Option<GreaseData> {
    let nlgi = table.needed("nlgi").and_then(|item| item.word(NLGI));
    let thickener = table.needed_text("thickener").map(|placed| placed.value.trim().to_owned());
    let density = positive(table, "density");
    let base_oil = table.needed("base_oil").and_then(|item| read_oil(&item.table()?));
    let rows = maybe(table, "rows", read_rows);
    let span = maybe(table, "at_25", |item| read_span(&item.table()?));
    let flow = match (rows?, span?) {
        (Some(rows), None) => GreaseFlow::Rows(rows),
        (None, Some(span)) => GreaseFlow::Span(span),
        _ => {
            table.reading().note(
                table.at(),
                message!("catalogue-rows-or-span"),
                message!("catalogue-rows-or-span-cure"),
                None,
            );
            return None;
        }
    };
    Some(GreaseData {
        nlgi: nlgi?.value,
        thickener: thickener?,
        density: density?,
        base_oil: base_oil?,
        flow,
    })
}

fn read_rows(item: &Item<'_>) -> Option<Vec<FlowRow>> {
    let read: Vec<Option<FlowRow>> = item.list()?.iter().map(|row| read_row(&row.table()?)).collect();
    let mut rows: Vec<FlowRow> = read.into_iter().collect::<Option<_>>()?;
    rows.sort_by(|a, b| a.temperature.total_cmp(&b.temperature));
    let twice = rows.windows(2).any(|pair| pair[0].temperature == pair[1].temperature);
    if rows.is_empty() || twice {
        item.wrong(message!("catalogue-rows-doubled"), message!("catalogue-rows-doubled-cure"));
        return None;
    }
    Some(rows)
}

fn read_row(row: &Table<'_>) -> Option<FlowRow> {
    let temperature = row.needed("temperature").and_then(|item| item.exact());
    let yield_stress = row
        .needed("yield_stress")
        .and_then(|item| item.exact::<Pressure>().map(|placed| (item, placed.value)));
    let consistency = positive(row, "consistency");
    let index = positive(row, "index");
    let (item, yield_stress) = yield_stress?;
    if yield_stress < Pressure::ZERO {
        item.wrong(
            message!("catalogue-out-of-range", key = item.key(), value = yield_stress),
            message!("catalogue-range-not-negative"),
        );
        return None;
    }
    Some(FlowRow { temperature: temperature?.value, yield_stress, consistency: consistency?, index: index? })
}

fn read_span(table: &Table<'_>) -> Option<FlowSpan> {
    let yield_stress = spread(table, "yield_stress");
    let consistency = spread(table, "consistency");
    let index = spread(table, "index");
    let halving = spread(table, "halving");
    Some(FlowSpan {
        yield_stress: yield_stress?,
        consistency: consistency?,
        index: index?,
        halving: halving?,
    })
}

/// Three quantities: lowest, typical, highest.
fn spread<T: Quantity>(table: &Table<'_>, key: &str) -> Option<Spread<T>> {
    let item = table.needed(key)?;
    let read: Vec<Option<T>> =
        item.list()?.iter().map(|one| one.exact().map(|placed| placed.value)).collect();
    let values: Vec<T> = read.into_iter().collect::<Option<_>>()?;
    match *values.as_slice() {
        [low, typical, high] if low <= typical && typical <= high && low.si() >= 0.0 => {
            Some(Spread { low, typical, high })
        }
        _ => {
            item.wrong(message!("catalogue-spread", key = key), message!("catalogue-spread-cure"));
            None
        }
    }
}
