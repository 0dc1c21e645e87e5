//! The state of the lubricant in each place and season.

use oilway_model::{FlowCurve, Fluid, Grease, GreaseRow, Oil, Season, Substance};
use oilway_physics::{How, Term, grease, oil};
use oilway_text::message;
use oilway_units::{Origin, Temperature};

use super::{Book, named, value};
use crate::evaluate::season_word;

/// The name of a place's temperature in a season.
pub(super) fn temperature_name(place: &str, season: Season) -> String {
    let word = match season {
        Season::Cold => "coldest",
        Season::Normal => "normal",
        Season::Hot => "hottest",
    };
    format!("place.{place}.{word}")
}

/// The name under which the state in a place and season stands.
pub(super) fn state_name(book: &Book<'_>, place: usize, season: Season) -> String {
    let name = book.known.design.conditions.places.get(place).map_or("", |p| p.name.as_str());
    format!("lubricant.{name}.{}", season_word(season))
}

pub(super) fn trace(book: &mut Book<'_>) {
    let design = book.known.design;
    rows(book);
    for (number, place) in design.conditions.places.iter().enumerate() {
        for season in Season::ALL {
            let Some(fluid) = book.known.hydraulics.fluid(season, number).copied() else { continue };
            let name = state_name(book, number, season);
            let warmth = (place.temperature(season), named(temperature_name(&place.name, season)));
            match &design.conditions.lubricant.substance {
                Substance::Oil(oil) => oil_state(book, &name, "lubricant", oil, &warmth),
                Substance::Grease(grease) => grease_state(book, &name, grease, &warmth, &fluid),
            }
        }
    }
}

/// An oil, or a base oil, at a temperature: kinematic viscosity, density, dynamic viscosity.
fn oil_state(book: &mut Book<'_>, name: &str, at: &str, oil: &Oil, warmth: &(Temperature, Term)) {
    let (temperature, term) = warmth;
    let Some(kinematic) = oil.kinematic(*temperature) else { return };
    let celsius = |t: f64| value(Temperature::from_celsius(t));
    let terms = vec![
        term.clone(),
        celsius(40.0),
        named(format!("{at}.at_40")),
        celsius(100.0),
        named(format!("{at}.at_100")),
    ];
    book.formula(format!("{name}.kinematic"), &oil::WALTHER_VISCOSITY, kinematic, terms);
    let density = oil.density(*temperature);
    let entered = named(format!("{at}.density"));
    match oil::oil_density(oil.density_15.get(), *temperature) {
        Some(_) => {
            book.formula(format!("{name}.density"), &oil::OIL_DENSITY, density, vec![entered, term.clone()])
        }
        // Beyond the reach of the volume correction the density at 15 °C is kept.
        None => book.sum(format!("{name}.density"), density, vec![entered]),
    }
    let terms = vec![named(format!("{name}.kinematic")), named(format!("{name}.density"))];
    let viscosity = oil::dynamic_viscosity(kinematic, density);
    book.formula(format!("{name}.viscosity"), &oil::DYNAMIC_VISCOSITY, viscosity, terms);
}

/// The measured rows of a grease.
fn rows(book: &mut Book<'_>) {
    let Substance::Grease(Grease { curve: FlowCurve::Rows(rows), .. }) =
        &book.known.design.conditions.lubricant.substance
    else {
        return;
    };
    for (number, row) in rows.iter().enumerate() {
        let at = format!("lubricant.row.{}", number + 1);
        let GreaseRow { temperature, yield_stress, consistency, index } = row;
        let how = || How::Entered(Origin::Said, at.clone());
        book.line(format!("{at}.temperature"), *temperature, how());
        book.line(format!("{at}.yield_stress"), *yield_stress, how());
        book.line(format!("{at}.consistency"), *consistency, how());
        book.line(format!("{at}.index"), *index, how());
    }
}

fn grease_state(
    book: &mut Book<'_>,
    name: &str,
    grease: &Grease,
    warmth: &(Temperature, Term),
    fluid: &Fluid,
) {
    match &grease.curve {
        FlowCurve::Span(_) => by_class(book, name, grease, warmth, fluid),
        FlowCurve::Rows(rows) => by_rows(book, name, rows.len(), warmth, fluid),
    }
    book.sum(format!("{name}.density"), fluid.density, vec![named("lubricant.density")]);
    let rest = book.known.design.conditions.practice.rest_factor.get();
    let terms = vec![named(format!("{name}.yield")), named("practice.rest_factor")];
    let rested = grease::rested_yield(fluid.yield_stress, rest);
    book.formula(format!("{name}.rested_yield"), &grease::RESTED_YIELD, rested, terms);
}

/// Room temperature, to which the ranges of a class refer.
const REFERENCE: Temperature = Temperature::from_celsius(25.0);

/// By the laws that move the ranges of a class with temperature.
fn by_class(book: &mut Book<'_>, name: &str, grease: &Grease, warmth: &(Temperature, Term), fluid: &Fluid) {
    let base = format!("{name}.base");
    oil_state(book, &base, "lubricant.base_oil", &grease.base_oil, warmth);
    let at_25 = "lubricant.at_25.base";
    oil_state(book, at_25, "lubricant.base_oil", &grease.base_oil, &(REFERENCE, value(REFERENCE)));
    let terms = vec![named("lubricant.yield_stress"), warmth.1.clone(), named("lubricant.halving")];
    book.formula(format!("{name}.yield"), &grease::YIELD_STRESS_AT, fluid.yield_stress, terms);
    let viscosities = [base.as_str(), at_25].map(|at| named(format!("{at}.viscosity")));
    let terms = [vec![named("lubricant.consistency")], viscosities.to_vec()].concat();
    book.formula(format!("{name}.consistency"), &grease::CONSISTENCY_AT, fluid.consistency, terms);
    book.sum(format!("{name}.index"), fluid.index, vec![named("lubricant.index")]);
}

/// Between measured rows.
fn by_rows(book: &mut Book<'_>, name: &str, rows: usize, warmth: &(Temperature, Term), fluid: &Fluid) {
    let mut from = |what: &str, field: &str, found: oilway_units::AnyQuantity| {
        let of_row = |row: usize| ["temperature", field].map(|f| named(format!("lubricant.row.{row}.{f}")));
        let terms = std::iter::once(warmth.1.clone()).chain((1..=rows).flat_map(of_row)).collect();
        let how = if rows == 1 { message!("solve-how-one-row") } else { message!("solve-how-between-rows") };
        book.solved(format!("{name}.{what}"), found, how, terms);
    };
    from("yield", "yield_stress", fluid.yield_stress.into());
    from("consistency", "consistency", fluid.consistency.into());
    from("index", "index", fluid.index.into());
}
