//! The lubricant of a job: from the library, or told with its viscosities, its class, its measured states or flow curves.

use oilway_catalogue::lubricants::{
    FlowRow, GreaseData, GreaseFlow, LubricantData, OilData, Spread, SubstanceData,
};
use oilway_catalogue::reading::{Item, Table};
use oilway_model::{FlowCurve, Grease, GreaseRow, GreaseSpan, Lubricant, Oil, Substance};
use oilway_physics::grease::{classes, fit};
use oilway_physics::oil::{GRADES, grade as grade_of_number, viscosity_at_100};
use oilway_text::{Message, Reader, message, say};
use oilway_units::{
    Consistency, Count, Density, Dimension, Entry, KinematicViscosity, Pressure, Ratio, ShearRate,
    Temperature,
};

use super::conditions::PLACE_TEMPERATURE;
use crate::asked::{Asked, entry, must_rise, not_among, one, said_entry, written};
use crate::assumptions as assume;

const VISCOSITY: Asked = Asked::between(Dimension::KinematicViscosity, 0.5e-6, 0.1, "mm²/s");
const OIL_DENSITY: Asked = Asked::between(Dimension::Density, 500.0, 2000.0, "kg/m³");
const GREASE_DENSITY: Asked = Asked::between(Dimension::Density, 500.0, 2500.0, "kg/m³");
const COEFFICIENT: Asked = Asked::between(Dimension::PerPressure, 0.0, 100e-9, "1/GPa");
const YIELD_STRESS: Asked = Asked::between(Dimension::Pressure, 0.0, 1e5, "Pa");
const CONSISTENCY: Asked = Asked::between(Dimension::Consistency, 1e-6, 1e6, "Pa·sⁿ");
const INDEX: Asked = Asked::between(Dimension::Ratio, 0.05, 1.5, "");
const HALVING: Asked = Asked::between(Dimension::TemperatureDifference, 2.0, 200.0, "K");
const SHEAR_RATE: Asked = Asked::between(Dimension::ShearRate, 1e-6, 1e7, "s⁻¹");
const STRESS: Asked = Asked::between(Dimension::Pressure, 1e-3, 1e7, "Pa");

/// The lubricant of a job: one of the library, or one that the job tells itself.
pub(super) fn lubricant(table: &Table<'_>, library: &[LubricantData]) -> Option<Lubricant> {
    let Some(item) = table.item("library") else { return told(table) };
    let wanted = item.text()?.value.trim();
    let Some(found) = library.iter().find(|lubricant| lubricant.name == wanted) else {
        let names: Vec<&str> = library.iter().map(|lubricant| lubricant.name.as_str()).collect();
        not_among(&item, wanted, message!("store-unknown-lubricant", name = wanted), &names);
        table.items();
        return None;
    };
    let name = table.text("name").map(|placed| placed.value.trim().to_owned());
    let lubricant = lubricant_of_library(found);
    Some(Lubricant { name: name.unwrap_or(lubricant.name), ..lubricant })
}

/// A lubricant that the job tells itself.
fn told(table: &Table<'_>) -> Option<Lubricant> {
    let text = |key| table.text(key).map(|placed| placed.value.trim().to_owned()).unwrap_or_default();
    let name = table.needed_text("name").map(|placed| placed.value.trim().to_owned());
    let description = text("description");
    let limit = |key| table.item(key).and_then(|item| one::<Temperature>(&item, PLACE_TEMPERATURE));
    let (coldest, hottest) = (limit("coldest"), limit("hottest"));
    must_rise(table, ("coldest", coldest.map(Entry::known)), ("hottest", hottest.map(Entry::known)));
    let food = table.flag("food").is_some_and(|placed| placed.value);
    let kind = table.needed("kind").and_then(|item| item.word(&["grease", "oil"]));
    let mut notes = Vec::new();
    let substance = match kind.map(|placed| placed.value) {
        Some("oil") => Substance::Oil(oil(table, &assume::OIL_AT_40)),
        Some(_) => Substance::Grease(grease(table, &mut notes)?),
        None => {
            // Of what is neither oil nor grease no key can be judged.
            table.items();
            return None;
        }
    };
    let description = notes.iter().fold(description, with_note);
    Some(Lubricant { name: name?, description, substance, food, coldest, hottest })
}

/// A note behind what the job says of the lubricant.
fn with_note(text: String, note: &Message) -> String {
    format!("{text} {}", say(note, &Reader::default())).trim().to_owned()
}

/// An oil from the keys of a table.
fn oil(table: &Table<'_>, unknown: &assume::Assumption) -> Oil {
    let at_40 = viscosity_40(table, unknown);
    let at_100 = said_entry(table, "at_100", VISCOSITY);
    must_rise(table, ("at_100", at_100), ("at_40", Some(at_40)));
    Oil {
        at_40,
        at_100: at_100.unwrap_or_else(|| needed_at_100(table, at_40)),
        density_15: entry(table, "density", OIL_DENSITY, &assume::OIL_DENSITY),
        pressure_coefficient: entry(
            table,
            "pressure_coefficient",
            COEFFICIENT,
            &assume::PRESSURE_COEFFICIENT,
        ),
        pour_point: table.item("pour_point").and_then(|item| one(&item, PLACE_TEMPERATURE)),
    }
}

fn viscosity_40(table: &Table<'_>, unknown: &assume::Assumption) -> Entry<KinematicViscosity> {
    let said = said_entry(table, "at_40", VISCOSITY);
    let Some(item) = table.item("grade") else { return said.unwrap_or_else(|| unknown.entry()) };
    if table.has("at_40") {
        item.wrong(message!("store-viscosity-twice"), message!("store-viscosity-twice-cure"));
    }
    said.or_else(|| grade(&item)).unwrap_or_else(|| unknown.entry())
}

/// `ISO VG 150`, `VG 150` or `150`: the band of the grade.
fn grade(item: &Item<'_>) -> Option<Entry<KinematicViscosity>> {
    let text = written(item)?;
    let number = text.trim().trim_start_matches("ISO").trim_start().trim_start_matches("VG").trim();
    let found = number.parse::<u16>().ok().and_then(grade_of_number);
    let Some(grade) = found else {
        let known: Vec<String> = GRADES.iter().map(|g| format!("ISO VG {}", g.number)).collect();
        let known: Vec<&str> = known.iter().map(String::as_str).collect();
        item.wrong(
            message!("store-unknown-grade", grade = text.as_str()),
            message!("store-grades", grades = known),
        );
        return None;
    };
    Some(
        Entry::assumed(grade.lowest, grade.middle, grade.highest, "").with_origin(oilway_units::Origin::Said),
    )
}

/// From the viscosity index that oils of this sort usually have; none for an oil too thin for the index.
pub(super) fn assumed_at_100(at_40: Entry<KinematicViscosity>) -> Option<Entry<KinematicViscosity>> {
    let index = &assume::VISCOSITY_INDEX;
    let at = |vi: f64| viscosity_at_100(at_40.typical(), Count::from_number(vi));
    Some(Entry::assumed(at(index.low)?, at(index.typical)?, at(index.high)?, index.key))
}

fn needed_at_100(table: &Table<'_>, at_40: Entry<KinematicViscosity>) -> Entry<KinematicViscosity> {
    assumed_at_100(at_40).unwrap_or_else(|| {
        let what = message!("store-needs-at-100", at_40 = at_40.typical());
        table.reading().note(table.at(), what, message!("store-needs-at-100-cure"), None);
        at_40
    })
}

fn grease(table: &Table<'_>, notes: &mut Vec<Message>) -> Option<Grease> {
    let thickener = table.text("thickener").map(|placed| placed.value.trim().to_owned()).unwrap_or_default();
    let density = entry(table, "density", GREASE_DENSITY, &assume::GREASE_DENSITY);
    let base_oil = base_oil(table);
    let class = class(table);
    let mut rows = rows(table);
    rows.extend(fitted(table, notes));
    let span = table.table("span");
    let curve = if rows.is_empty() {
        FlowCurve::Span(span_of(table, span.as_ref(), class.as_deref())?)
    } else {
        if let Some(span) = span {
            span.items();
            table.reading().note(
                span.at(),
                message!("store-rows-and-span"),
                message!("store-rows-and-span-cure"),
                None,
            );
        }
        FlowCurve::Rows(in_order(table, rows)?)
    };
    Some(Grease { class: class?, thickener, base_oil, curve, density })
}

/// The base oil: the text of a grade, or a table with the keys of an oil.
fn base_oil(table: &Table<'_>) -> Oil {
    let unknown = |at_40: Entry<KinematicViscosity>| Oil {
        at_40,
        at_100: needed_at_100(table, at_40),
        density_15: assume::OIL_DENSITY.entry(),
        pressure_coefficient: assume::PRESSURE_COEFFICIENT.entry(),
        pour_point: None,
    };
    match table.item("base_oil") {
        Some(item) if item.is_table() => match item.table() {
            Some(table) => oil(&table, &assume::BASE_OIL_AT_40),
            None => unknown(assume::BASE_OIL_AT_40.entry()),
        },
        Some(item) if written(&item).is_none_or(|text| matches!(text.trim(), "unknown" | "?")) => {
            unknown(assume::BASE_OIL_AT_40.entry())
        }
        Some(item) => unknown(grade(&item).unwrap_or_else(|| assume::BASE_OIL_AT_40.entry())),
        None => unknown(assume::BASE_OIL_AT_40.entry()),
    }
}

/// The word for a class that nobody knows.
pub(crate) const UNKNOWN_CLASS: &str = "unknown";

fn class(table: &Table<'_>) -> Option<String> {
    let item = table.needed("class")?;
    let text = written(&item)?;
    let name = text.trim().trim_start_matches("NLGI").trim();
    if matches!(name, UNKNOWN_CLASS | "?") {
        return Some(UNKNOWN_CLASS.to_owned());
    }
    if classes::named(name).is_none() {
        let names: Vec<&str> = classes::CLASSES.iter().map(|class| class.name).collect();
        not_among(&item, name, message!("store-unknown-class", class = name), &names);
        return None;
    }
    Some(name.to_owned())
}

/// Measured states, one for each temperature.
fn rows(table: &Table<'_>) -> Vec<GreaseRow> {
    let row = |row: &Table<'_>| {
        let temperature = row.needed("temperature").and_then(|item| one(&item, PLACE_TEMPERATURE));
        let yield_stress = row.needed("yield_stress").and_then(|item| one(&item, YIELD_STRESS));
        let consistency = row.needed("consistency").and_then(|item| one(&item, CONSISTENCY));
        let index = row.needed("index").and_then(|item| one(&item, INDEX));
        Some(GreaseRow {
            temperature: temperature?,
            yield_stress: yield_stress?,
            consistency: consistency?,
            index: index?,
        })
    };
    table.tables("row").iter().filter_map(row).collect()
}

/// Measured flow curves, one for each temperature, each turned into a state by a fit whose error is told.
fn fitted(table: &Table<'_>, notes: &mut Vec<Message>) -> Vec<GreaseRow> {
    let mut rows = Vec::new();
    for curve in table.tables("curve") {
        let temperature =
            curve.needed("temperature").and_then(|item| one::<Temperature>(&item, PLACE_TEMPERATURE));
        let rates: Option<Vec<ShearRate>> = column(&curve, "shear_rate", SHEAR_RATE);
        let stresses: Option<Vec<Pressure>> = column(&curve, "stress", STRESS);
        let (Some(temperature), Some(rates), Some(stresses)) = (temperature, rates, stresses) else {
            continue;
        };
        if rates.len() != stresses.len() {
            let what = message!("store-curve-columns", rates = rates.len(), stresses = stresses.len());
            table.reading().note(curve.at(), what, message!("store-curve-columns-cure"), None);
            continue;
        }
        let points: Vec<(ShearRate, Pressure)> = rates.into_iter().zip(stresses).collect();
        match fit::herschel_bulkley(&points) {
            Ok(fit) => {
                notes.push(message!(
                    "store-fitted",
                    temperature = temperature,
                    points = points.len(),
                    error = fit.largest_error
                ));
                let (yield_stress, consistency, index) = (fit.yield_stress, fit.consistency, fit.index);
                rows.push(GreaseRow { temperature, yield_stress, consistency, index });
            }
            Err(no) => table.reading().note(curve.at(), no.message(), message!("store-no-fit-cure"), None),
        }
    }
    rows
}

/// A list of single values.
fn column<T: oilway_units::Quantity>(table: &Table<'_>, key: &str, asked: Asked) -> Option<Vec<T>> {
    let items = table.needed(key)?.list()?;
    let read: Vec<Option<T>> = items.iter().map(|item| one(item, asked)).collect();
    read.into_iter().collect()
}

/// The rows in rising order of temperature; two of one temperature contradict each other.
fn in_order(table: &Table<'_>, mut rows: Vec<GreaseRow>) -> Option<Vec<GreaseRow>> {
    rows.sort_by(|a, b| a.temperature.total_cmp(&b.temperature));
    let twice = rows.windows(2).find(|pair| pair[0].temperature == pair[1].temperature);
    if let Some(pair) = twice {
        let what = message!("store-row-twice", temperature = pair[0].temperature);
        table.reading().note(table.at(), what, message!("store-row-twice-cure"), None);
        return None;
    }
    Some(rows)
}

/// The bands of a class at 25 °C; none for a class too stiff for a line.
pub(super) fn band_of_class(class: &str) -> Option<GreaseSpan> {
    let band = if class == UNKNOWN_CLASS { unknown_design()? } else { classes::named(class)?.design? };
    Some(GreaseSpan {
        yield_stress: assume::of_class("assume-yield-stress", band.yield_stress).entry(),
        consistency: assume::of_class("assume-consistency", band.consistency).entry(),
        index: assume::of_class("assume-index", band.index).entry(),
        halving: assume::HALVING.entry(),
    })
}

/// Bands of the class, each of which the job may replace.
fn span_of(table: &Table<'_>, span: Option<&Table<'_>>, class: Option<&str>) -> Option<GreaseSpan> {
    let class = class?;
    let band = band_of_class(class);
    let yield_stress =
        in_span::<Pressure>(span, "yield_stress", YIELD_STRESS).or(band.as_ref().map(|b| b.yield_stress));
    let consistency =
        in_span::<Consistency>(span, "consistency", CONSISTENCY).or(band.as_ref().map(|b| b.consistency));
    let index = in_span::<Ratio>(span, "index", INDEX).or(band.as_ref().map(|b| b.index));
    let halving = in_span(span, "halving", HALVING).unwrap_or_else(|| assume::HALVING.entry());
    match (yield_stress, consistency, index) {
        (Some(yield_stress), Some(consistency), Some(index)) => {
            Some(GreaseSpan { yield_stress, consistency, index, halving })
        }
        _ => {
            let what = message!("store-class-too-stiff", class = class);
            table.reading().note(table.at(), what, message!("store-class-too-stiff-cure"), None);
            None
        }
    }
}

fn in_span<T: oilway_units::Quantity>(span: Option<&Table<'_>>, key: &str, asked: Asked) -> Option<Entry<T>> {
    span.and_then(|span| said_entry(span, key, asked))
}

/// A grease of which not even the class is known: from the soft end of class 1 to the stiff end of class 2, the usual ones.
fn unknown_design() -> Option<classes::Design> {
    let (soft, stiff) = (classes::named("1")?.design?, classes::named("2")?.design?);
    Some(classes::Design {
        yield_stress: classes::Band { low: soft.yield_stress.low, ..stiff.yield_stress },
        consistency: classes::Band { low: soft.consistency.low, ..stiff.consistency },
        index: classes::Band { high: soft.index.high, ..stiff.index },
    })
}

/// A grease of which only the class is known, or not even that (`unknown`), as a job holds it; none for a class that is no class or
/// too stiff for a line.
pub fn lubricant_of_class(class: &str) -> Option<Lubricant> {
    let at_40 = assume::BASE_OIL_AT_40.entry();
    let base_oil = Oil {
        at_40,
        at_100: assumed_at_100(at_40)?,
        density_15: assume::OIL_DENSITY.entry(),
        pressure_coefficient: assume::PRESSURE_COEFFICIENT.entry(),
        pour_point: None,
    };
    let grease = Grease {
        class: class.to_owned(),
        thickener: String::new(),
        base_oil,
        curve: FlowCurve::Span(band_of_class(class)?),
        density: assume::GREASE_DENSITY.entry(),
    };
    Some(Lubricant {
        name: format!("NLGI {class}"),
        description: String::new(),
        substance: Substance::Grease(grease),
        food: false,
        coldest: None,
        hottest: None,
    })
}

/// A lubricant of the library as a job holds it.
pub fn lubricant_of_library(data: &LubricantData) -> Lubricant {
    Lubricant {
        name: data.name.clone(),
        description: data.description.clone(),
        substance: match &data.substance {
            SubstanceData::Oil(oil) => Substance::Oil(library_oil(oil)),
            SubstanceData::Grease(grease) => Substance::Grease(library_grease(grease)),
        },
        food: data.food,
        coldest: data.coldest,
        hottest: data.hottest,
    }
}

fn library_oil(data: &OilData) -> Oil {
    Oil {
        at_40: Entry::known(data.at_40),
        at_100: Entry::known(data.at_100),
        density_15: Entry::known(data.density_15),
        pressure_coefficient: assume::PRESSURE_COEFFICIENT.entry(),
        pour_point: data.pour_point,
    }
}

fn library_grease(data: &GreaseData) -> Grease {
    let curve = match &data.flow {
        GreaseFlow::Rows(rows) => FlowCurve::Rows(rows.iter().map(library_row).collect()),
        GreaseFlow::Span(span) => FlowCurve::Span(GreaseSpan {
            yield_stress: library_span(&span.yield_stress, "assume-yield-stress"),
            consistency: library_span(&span.consistency, "assume-consistency"),
            index: library_span(&span.index, "assume-index"),
            halving: library_span(&span.halving, assume::HALVING.key),
        }),
    };
    Grease {
        class: data.nlgi.to_owned(),
        thickener: data.thickener.clone(),
        base_oil: library_oil(&data.base_oil),
        curve,
        density: Entry::known(data.density),
    }
}

fn library_row(row: &FlowRow) -> GreaseRow {
    let FlowRow { temperature, yield_stress, consistency, index } = *row;
    GreaseRow { temperature, yield_stress, consistency, index }
}

fn library_span<T: oilway_units::Quantity>(spread: &Spread<T>, key: &'static str) -> Entry<T> {
    Entry::assumed(spread.low, spread.typical, spread.high, key)
}

/// The density with which a mass that a manual states becomes a volume.
pub(super) fn density_for_mass(lubricant: Option<&Lubricant>) -> Density {
    const ROOM: Temperature = Temperature::from_celsius(20.0);
    let unknown = Density::from_kilograms_per_cubic_metre(assume::GREASE_DENSITY.typical);
    lubricant.map_or(unknown, |l| l.density(ROOM))
}
