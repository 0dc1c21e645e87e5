//! Site, places, air, electricity, duty, limits and practice, as the job file tells them.

use std::collections::BTreeSet;

use oilway_catalogue::reading::{Placed, Table};
use oilway_model::{Air, CurrentKind, Duty, Electric, Limits, Place, Practice, Site};
use oilway_text::message;
use oilway_units::{Dimension, Entry, Pressure, Temperature, Time, Voltage};

use super::names::{name, take};
use super::surroundings::surroundings;
use crate::asked::{Asked, entry, heard, must_rise, one, said_entry};
use crate::{Assumption, assumptions as assume};

const BAR: f64 = 1e5;
const HOUR: f64 = 3600.0;
const DAY: f64 = 24.0 * HOUR;

/// From the Dead Sea to the highest mines.
const ALTITUDE: Asked = Asked::between(Dimension::Length, -450.0, 6000.0, "m");
/// Colder than any weather, hotter than any grease.
pub(super) const PLACE_TEMPERATURE: Asked = Asked::between(Dimension::Temperature, 183.15, 573.15, "°C");
/// Workshop air.
const AIR_PRESSURE: Asked = Asked::between(Dimension::Pressure, 0.0, 20.0 * BAR, "bar");
const DEW_POINT: Asked = Asked::between(Dimension::Temperature, 183.15, 343.15, "°C");
const SUPPLY: Asked = Asked::between(Dimension::Voltage, 1.0, 1000.0, "V");
const HOURS: Asked = Asked::between(Dimension::Time, 60.0, DAY, "h");
const DAYS: Asked = Asked::between(Dimension::Count, 0.1, 7.0, "");
const LONG_TIME: Asked = Asked::between(Dimension::Time, HOUR, 20.0 * 366.0 * DAY, "weeks");
const EVENT: Asked = Asked::between(Dimension::Time, 1.0, 7.0 * DAY, "min");

/// The entry of a table that may be missing.
fn of<T: oilway_units::Quantity>(
    table: Option<&Table<'_>>,
    key: &str,
    asked: Asked,
    assumed: &Assumption,
) -> Entry<T> {
    table.map_or_else(|| assumed.entry(), |table| entry(table, key, asked, assumed))
}

/// The site.
pub(super) fn site(table: Option<&Table<'_>>) -> Site {
    let text = |key| table.and_then(|t| t.text(key)).map(|placed| placed.value.trim().to_owned());
    Site {
        altitude: of(table, "altitude", ALTITUDE, &assume::ALTITUDE),
        region: text("region"),
        threads: table.and_then(|t| t.word("threads", THREADS)).map(|placed| placed.value.to_owned()),
    }
}

/// The thread families that a customer may ask for.
const THREADS: &[&str] = &["G", "NPT", "metric", "R"];

/// The places, and whether each had a name.
pub(super) fn places(root: &Table<'_>) -> Vec<Place> {
    let tables = root.tables("place");
    let mut taken = BTreeSet::new();
    let mut places = Vec::new();
    for table in &tables {
        let name = name(table);
        if let Some(name) = &name {
            take(table, name, &mut taken);
        }
        places.push(place(table, name));
    }
    if tables.is_empty() && !root.reading().is_broken() {
        root.reading().note(0..0, message!("store-no-place"), message!("store-no-place-cure"), None);
    }
    places
}

fn place(table: &Table<'_>, name: Option<Placed<String>>) -> Place {
    let outdoors = table.flag("outdoors").is_some_and(|placed| placed.value);
    let [coldest, normal, hottest] = temperatures(table, outdoors);
    let surroundings = surroundings(table);
    Place {
        name: name.map(|n| n.value).unwrap_or_default(),
        coldest,
        normal,
        hottest,
        outdoors,
        surroundings,
    }
}

const SEASONS: [&str; 3] = ["coldest", "normal", "hottest"];

/// Coldest, usual and hottest: one `temperature` for a place that is always the same, or one for each.
fn temperatures(table: &Table<'_>, outdoors: bool) -> [Entry<Temperature>; 3] {
    let [coldest, normal, hottest] =
        SEASONS.map(|key| said_entry::<Temperature>(table, key, PLACE_TEMPERATURE));
    if let Some(item) = table.item("temperature") {
        if SEASONS.iter().any(|key| table.has(key)) {
            item.wrong(message!("store-temperature-twice"), message!("store-temperature-twice-cure"));
        }
        if let Some(always) = heard::<Temperature>(&item, PLACE_TEMPERATURE).and_then(|heard| heard.entry()) {
            return [always; 3];
        }
    }
    must_rise(table, ("coldest", coldest), ("normal", normal));
    must_rise(table, ("normal", normal), ("hottest", hottest));
    if normal.is_none() {
        must_rise(table, ("coldest", coldest), ("hottest", hottest));
    }
    fill_seasons(outdoors, coldest, normal, hottest)
}

/// What is not said lies between what is.
fn fill_seasons(
    outdoors: bool,
    coldest: Option<Entry<Temperature>>,
    normal: Option<Entry<Temperature>>,
    hottest: Option<Entry<Temperature>>,
) -> [Entry<Temperature>; 3] {
    let (cold, usual) = if outdoors {
        (&assume::COLDEST_OUTDOORS, &assume::NORMAL_OUTDOORS)
    } else {
        (&assume::COLDEST_INDOORS, &assume::NORMAL_INDOORS)
    };
    let filled_normal = normal.unwrap_or_else(|| match (coldest, hottest) {
        (Some(c), Some(h)) => {
            let middle = Temperature::from_kelvin(0.5 * (c.typical().kelvin() + h.typical().kelvin()));
            Entry::assumed(c.typical(), middle, h.typical(), assume::NORMAL_BETWEEN)
        }
        (Some(c), None) => usual.at_least(c.high()),
        (None, Some(h)) => usual.at_most(h.low()),
        (None, None) => usual.entry(),
    });
    let coldest = coldest.unwrap_or_else(|| cold.at_most(filled_normal.low()));
    let hottest = hottest.unwrap_or_else(|| assume::HOTTEST.at_least(filled_normal.high()));
    [coldest, filled_normal, hottest]
}

/// Compressed air, if the job has any.
pub(super) fn air(table: &Table<'_>) -> Air {
    let said = |key| said_entry::<Pressure>(table, key, AIR_PRESSURE);
    let (lowest, highest, possible) = (said("lowest"), said("highest"), said("possible"));
    must_rise(table, ("lowest", lowest), ("highest", highest));
    must_rise(table, ("highest", highest), ("possible", possible));
    if highest.is_none() {
        must_rise(table, ("lowest", lowest), ("possible", possible));
    }
    let lowest = lowest.unwrap_or_else(|| match highest.or(possible) {
        Some(above) => assume::AIR_LOWEST.at_most(above.low()),
        None => assume::AIR_LOWEST.entry(),
    });
    let highest = highest.unwrap_or_else(|| {
        let filled: Entry<Pressure> = assume::AIR_HIGHEST.at_least(lowest.high());
        match possible {
            Some(above) if above.low() < filled.high() => assume::AIR_HIGHEST.at_most(above.low()),
            _ => filled,
        }
    });
    let possible = possible.unwrap_or_else(|| assume::AIR_POSSIBLE.at_least(highest.high()));
    let dew_point = table.item("dew_point").map(|_| entry(table, "dew_point", DEW_POINT, &assume::DEW_POINT));
    Air { lowest, highest, possible, dew_point }
}

/// The electric supply, if the job has one.
pub(super) fn electric(table: &Table<'_>) -> Option<Electric> {
    let inputs = table.count("inputs").map(|placed| placed.value);
    let outputs = table.count("outputs").map(|placed| placed.value);
    let item = table.needed("supply")?;
    let voltage: Voltage = one(&item, SUPPLY)?;
    let text = item.text()?.value.trim().to_ascii_uppercase();
    let kind = if text.ends_with("DC") {
        CurrentKind::Direct
    } else if text.ends_with("AC") {
        CurrentKind::Alternating
    } else {
        item.wrong(message!("store-current-kind", text = text), message!("store-current-kind-cure"));
        return None;
    };
    Some(Electric { voltage, kind, inputs, outputs })
}

/// When the machine runs.
pub(super) fn duty(table: Option<&Table<'_>>) -> Duty {
    Duty {
        hours_per_day: of(table, "hours_per_day", HOURS, &assume::HOURS_PER_DAY),
        days_per_week: of(table, "days_per_week", DAYS, &assume::DAYS_PER_WEEK),
    }
}

/// What the customer will not accept.
pub(super) fn limits(table: Option<&Table<'_>>) -> Limits {
    let flag = |key| table.and_then(|t| t.flag(key)).is_some_and(|placed| placed.value);
    let refill = table.and_then(|t| t.item("refill_at_least")).and_then(|item| one::<Time>(&item, LONG_TIME));
    Limits {
        refill_at_least: refill,
        age: of(table, "age", LONG_TIME, &assume::AGE),
        event_time: of(table, "event_time", EVENT, &assume::EVENT_TIME),
        blockage_noticed: flag("blockage_noticed"),
        food: flag("food"),
    }
}

/// Named assumptions of practice that the job may replace.
pub(super) fn practice(table: Option<&Table<'_>>) -> Practice {
    let ratio = |low, high, unit| Asked::between(Dimension::Ratio, low, high, unit);
    let band_low: Entry<_> = of(table, "band_low", ratio(0.1, 1.0, ""), &assume::BAND_LOW);
    let band_high: Entry<_> = of(table, "band_high", ratio(1.0, 10.0, ""), &assume::BAND_HIGH);
    Practice {
        rest_factor: of(table, "rest_factor", ratio(1.0, 5.0, ""), &assume::REST_FACTOR),
        stall_use: of(table, "stall_use", ratio(0.3, 1.0, ""), &assume::STALL_USE),
        band_low,
        band_high,
        floor: of(table, "floor", FLOOR, &assume::FLOOR),
        back_pressure: of(table, "back_pressure", BACK_PRESSURE, &assume::BACK_PRESSURE),
        fittings: of(table, "fittings", ratio(0.0, 3.0, ""), &assume::FITTINGS),
        inlet_lowest: of(table, "inlet_lowest", INLET, &assume::INLET_LOWEST),
        entrained_air: of(table, "entrained_air", ratio(0.0, 0.3, ""), &assume::ENTRAINED_AIR),
        disc_warmer: of(table, "disc_warmer", WARMER, &assume::DISC_WARMER),
    }
}

/// Up to 10 cm³/h.
const FLOOR: Asked = Asked::between(Dimension::Flow, 0.0, 10e-6 / HOUR, "cm³/h");
pub(super) const BACK_PRESSURE: Asked = Asked::between(Dimension::Pressure, 0.0, 400.0 * BAR, "bar");
/// Below vacuum is nothing; above 1 bar nothing would ever be drawn in.
const INLET: Asked = Asked::between(Dimension::AbsolutePressure, 0.0, BAR, "bar abs");
const WARMER: Asked = Asked::between(Dimension::TemperatureDifference, 0.0, 150.0, "K");
