//! Site, places, air, electricity, duty, limits and practice as text.

use oilway_model::{Air, Conditions, CurrentKind, Electric, Limits, Place, Practice};
use oilway_units::{OpenEntry, Origin};

use super::value::{Sheet, amount, entry_text};

pub(super) fn write(sheet: &mut Sheet, conditions: &Conditions) {
    site(sheet, conditions);
    conditions.places.iter().for_each(|p| place(sheet, p));
    conditions.air.iter().for_each(|a| air(sheet, a));
    conditions.electric.iter().for_each(|e| electric(sheet, e));
    sheet.header("[duty]");
    sheet.entry("hours_per_day", &conditions.duty.hours_per_day);
    sheet.entry("days_per_week", &conditions.duty.days_per_week);
    limits(sheet, &conditions.limits);
    practice(sheet, &conditions.practice);
}

fn site(sheet: &mut Sheet, conditions: &Conditions) {
    sheet.header("[site]");
    sheet.entry("altitude", &conditions.site.altitude);
    sheet.some_text("region", conditions.site.region.as_deref().unwrap_or(""));
    sheet.some_text("threads", conditions.site.threads.as_deref().unwrap_or(""));
}

fn place(sheet: &mut Sheet, place: &Place) {
    sheet.header("[[place]]");
    sheet.text("name", &place.name);
    let [coldest, normal, hottest] =
        [&place.coldest, &place.normal, &place.hottest].map(|entry| entry_text(entry, sheet.units));
    let assumed = |entry: &dyn OpenEntry| matches!(entry.origin(), Origin::Assumed(_));
    if coldest == normal && normal == hottest && !assumed(&place.normal) {
        sheet.bare("temperature", &normal);
    } else {
        sheet.entry("coldest", &place.coldest);
        sheet.entry("normal", &place.normal);
        sheet.entry("hottest", &place.hottest);
    }
    sheet.flag("outdoors", place.outdoors);
    sheet.texts("surroundings", &place.surroundings.words);
}

fn air(sheet: &mut Sheet, air: &Air) {
    sheet.header("[air]");
    sheet.entry("lowest", &air.lowest);
    sheet.entry("highest", &air.highest);
    sheet.entry("possible", &air.possible);
    if let Some(dew_point) = &air.dew_point {
        sheet.known("dew_point", dew_point);
    }
}

fn electric(sheet: &mut Sheet, electric: &Electric) {
    sheet.header("[electric]");
    let kind = match electric.kind {
        CurrentKind::Direct => "DC",
        CurrentKind::Alternating => "AC",
    };
    sheet.text("supply", &format!("{} {kind}", amount(electric.voltage, sheet.units)));
    for (key, number) in [("inputs", electric.inputs), ("outputs", electric.outputs)] {
        if let Some(number) = number {
            sheet.bare(key, &number.to_string());
        }
    }
}

fn limits(sheet: &mut Sheet, limits: &Limits) {
    sheet.header("[limits]");
    if let Some(refill) = limits.refill_at_least {
        sheet.text("refill_at_least", &amount(refill, sheet.units));
    }
    sheet.entry("age", &limits.age);
    sheet.entry("event_time", &limits.event_time);
    sheet.flag("blockage_noticed", limits.blockage_noticed);
    sheet.flag("food", limits.food);
}

fn practice(sheet: &mut Sheet, practice: &Practice) {
    sheet.header("[practice]");
    let entries: [(&str, &dyn OpenEntry); 10] = [
        ("rest_factor", &practice.rest_factor),
        ("stall_use", &practice.stall_use),
        ("band_low", &practice.band_low),
        ("band_high", &practice.band_high),
        ("floor", &practice.floor),
        ("back_pressure", &practice.back_pressure),
        ("fittings", &practice.fittings),
        ("inlet_lowest", &practice.inlet_lowest),
        ("entrained_air", &practice.entrained_air),
        ("disc_warmer", &practice.disc_warmer),
    ];
    for (key, entry) in entries {
        sheet.entry(key, entry);
    }
}
