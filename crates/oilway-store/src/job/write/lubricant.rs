//! The lubricant as text: its viscosities, its states, the bands that it replaces.

use oilway_model::{FlowCurve, Grease, GreaseSpan, Lubricant, Oil, Substance};
use oilway_physics::oil::{Grade, grade_of};
use oilway_units::{Entry, KinematicViscosity, Origin};

use super::value::{Sheet, amount, entry_text};
use crate::assumptions::{self as assume, Assumption};
use crate::job::lubricant::{assumed_at_100, band_of_class};

pub(super) fn write(sheet: &mut Sheet, lubricant: &Lubricant) {
    sheet.header("[lubricant]");
    sheet.text("name", &lubricant.name);
    sheet.some_text("description", &lubricant.description);
    for (key, limit) in [("coldest", lubricant.coldest), ("hottest", lubricant.hottest)] {
        if let Some(limit) = limit {
            sheet.text(key, &amount(limit, sheet.units));
        }
    }
    sheet.flag("food", lubricant.food);
    match &lubricant.substance {
        Substance::Oil(o) => {
            sheet.text("kind", "oil");
            oil(sheet, o, &assume::OIL_AT_40);
        }
        Substance::Grease(g) => grease(sheet, g),
    }
}

fn oil(sheet: &mut Sheet, oil: &Oil, unknown: &Assumption) {
    match grade(&oil.at_40) {
        Some(grade) => sheet.text("grade", &format!("ISO VG {}", grade.number)),
        None => sheet.unless("at_40", &oil.at_40, &unknown.entry()),
    }
    match assumed_at_100(oil.at_40) {
        Some(assumed) => sheet.unless("at_100", &oil.at_100, &assumed),
        None => sheet.bare("at_100", &entry_text(&oil.at_100, sheet.units)),
    }
    sheet.unless("density", &oil.density_15, &assume::OIL_DENSITY.entry());
    sheet.unless("pressure_coefficient", &oil.pressure_coefficient, &assume::PRESSURE_COEFFICIENT.entry());
    if let Some(pour_point) = oil.pour_point {
        sheet.text("pour_point", &amount(pour_point, sheet.units));
    }
}

/// The grade whose band somebody said.
fn grade(at_40: &Entry<KinematicViscosity>) -> Option<Grade> {
    let grade = grade_of(at_40.typical())?;
    let band = (grade.lowest, grade.middle, grade.highest) == (at_40.low(), at_40.typical(), at_40.high());
    (band && at_40.origin() == Origin::Said).then_some(grade)
}

fn grease(sheet: &mut Sheet, grease: &Grease) {
    sheet.text("kind", "grease");
    sheet.text("class", &grease.class);
    sheet.some_text("thickener", &grease.thickener);
    sheet.unless("density", &grease.density, &assume::GREASE_DENSITY.entry());
    sheet.header("[lubricant.base_oil]");
    oil(sheet, &grease.base_oil, &assume::BASE_OIL_AT_40);
    match &grease.curve {
        FlowCurve::Span(s) => span(sheet, s, &grease.class),
        FlowCurve::Rows(rows) => {
            for row in rows {
                sheet.header("[[lubricant.row]]");
                sheet.text("temperature", &amount(row.temperature, sheet.units));
                sheet.text("yield_stress", &amount(row.yield_stress, sheet.units));
                sheet.text("consistency", &amount(row.consistency, sheet.units));
                sheet.text("index", &amount(row.index, sheet.units));
            }
        }
    }
}

fn span(sheet: &mut Sheet, span: &GreaseSpan, class: &str) {
    sheet.header("[lubricant.span]");
    // A class without bands of its own has every value of the span said.
    if let Some(band) = band_of_class(class) {
        sheet.unless("yield_stress", &span.yield_stress, &band.yield_stress);
        sheet.unless("consistency", &span.consistency, &band.consistency);
        sheet.unless("index", &span.index, &band.index);
        sheet.unless("halving", &span.halving, &band.halving);
        return;
    }
    sheet.entry("yield_stress", &span.yield_stress);
    sheet.entry("consistency", &span.consistency);
    sheet.entry("index", &span.index);
    sheet.entry("halving", &span.halving);
}
