//! The pump: its air, its stall, what its inlet lets in.

use oilway_catalogue::kinds::{Drive, Pump};
use oilway_model::SeasonResult;
use oilway_physics::{How, Term, air, pump};
use oilway_text::message;
use oilway_units::{Conductance, Force, Length, Mass, Pressure, Ratio, Time, Volume};

use super::lubricant::state_name;
use super::{Book, named, value};
use crate::evaluate::{circumstances, season_word};
use crate::inlet::{atmosphere, inlet};
use crate::source::AIR_TEMPERATURE;

pub(super) fn trace(book: &mut Book<'_>) {
    let design = book.known.design;
    let here = circumstances(design, None);
    book.formula("site.atmosphere", &air::ATMOSPHERE, here.atmosphere, vec![named("site.altitude")]);
    let Some(data) = Pump::of(&design.package.pump) else { return };
    if let Some(setting) = design.package.air_setting {
        book.choice(
            "package.regulator",
            setting,
            vec![named("peak.cold.start"), named("peak.cold.moving"), named("disc.steady")],
        );
    }
    stall(book, &data, here.air);
    if let Some(swept) = data.air_swept {
        free_air(book, swept, &data, here.air);
    }
    follower(book);
    let time = Time::from_seconds(data.suction_share.fraction() / data.cycles_max.per_second());
    let terms = ["suction_share", "cycles_max"].map(|f| book.part_or(&design.package.pump, f, Ratio::ZERO));
    book.solved("pump.fill_time_available", time, message!("solve-how-fill-time"), terms.to_vec());
    for season in &book.known.answer.seasons {
        of_season(book, season, &data);
    }
    let flows =
        book.known.answer.seasons.iter().map(|s| named(format!("pump.{}.flow_limit", season_word(s.season))));
    let flow = book
        .known
        .answer
        .seasons
        .iter()
        .map(|s| s.pump.flow_limit)
        .fold(oilway_units::Flow::ZERO, oilway_units::Flow::max);
    let terms = flows.collect();
    book.line("pump.flow_limit", flow, How::Largest(terms));
}

/// The pressures at which it stands: for work with friction at the setting, for protection without and at the highest air.
fn stall(book: &mut Book<'_>, data: &Pump, air: Pressure) {
    let design = book.known.design;
    let part = &design.package.pump;
    let Some(state) = book.known.answer.seasons.first().map(|s| s.pump) else { return };
    if data.drive == Drive::Electric {
        let limit =
            book.part(part, "stall").or_else(|| book.part(part, "rated")).into_iter().collect::<Vec<_>>();
        book.sum("pump.stall", state.stall, limit.clone());
        book.sum("pump.stall_possible", state.stall_possible, limit);
        return;
    }
    let supply = ["air.lowest".to_owned()].into_iter().filter(|_| design.conditions.air.is_some());
    let setting = design.package.air_setting.map(|_| "package.regulator".to_owned());
    book.line("pump.air", air, How::Smallest(supply.chain(setting).map(Term::Name).collect()));
    let one = Ratio::from_fraction(1.0);
    let ratio = book.part_or(part, "ratio", Ratio::ZERO);
    let efficiency = book.part_or(part, "stall_efficiency", one);
    book.formula("pump.stall", &air::STALL, state.stall, vec![ratio.clone(), named("pump.air"), efficiency]);
    if design.conditions.air.is_some() {
        let terms = vec![ratio, named("air.possible"), value(one)];
        book.formula("pump.stall_possible", &air::STALL, state.stall_possible, terms);
    }
}

/// The free air of a cycle, and the air passage.
fn free_air(book: &mut Book<'_>, swept: Volume, data: &Pump, pressure: Pressure) {
    let design = book.known.design;
    let part = &design.package.pump;
    let around = atmosphere(design);
    let supply = pressure.absolute(around);
    book.sum("pump.supply", supply, vec![named("site.atmosphere"), named("pump.air")]);
    let clearance = data.air_clearance.unwrap_or_default();
    let terms = vec![
        book.part_or(part, "air_swept", swept),
        book.part_or(part, "air_clearance", clearance),
        named("pump.supply"),
        named("site.atmosphere"),
        value(AIR_TEMPERATURE),
    ];
    let found = air::free_air(swept, clearance, supply, around, AIR_TEMPERATURE);
    book.formula("pump.free_air", &air::FREE_AIR, found, terms);
    let valve = design.package.valve.as_ref();
    let path = valve.and_then(|v| v.quantity::<Conductance>("conductance").map(|c| (v, c)));
    if let (Some(own), Some((valve, conductance))) = (data.air_conductance, path) {
        let terms =
            vec![book.part_or(part, "air_conductance", own), book.part_or(valve, "conductance", conductance)];
        let series = air::conductance_in_series(own, conductance);
        book.formula("pump.conductance", &air::SERIES, series, terms);
    }
}

/// What the follower plate adds.
fn follower(book: &mut Book<'_>) {
    let vessel = &book.known.design.package.reservoir;
    let diameter = vessel.quantity::<Length>("diameter").unwrap_or_default();
    let weight = vessel.quantity::<Mass>("follower_weight").unwrap_or_default();
    let terms = vec![
        book.part_or(vessel, "diameter", diameter),
        book.part_or(vessel, "follower_weight", Mass::ZERO),
        value(Force::ZERO),
        value(Force::ZERO),
    ];
    let found = pump::follower_pressure(diameter, weight, Force::ZERO, Force::ZERO);
    book.formula("pump.follower", &pump::FOLLOWER_PRESSURE, found, terms);
}

/// Feed, filling and flow of a season.
fn of_season(book: &mut Book<'_>, season: &SeasonResult, data: &Pump) {
    let design = book.known.design;
    let part = &design.package.pump;
    let at = format!("pump.{}", season_word(season.season));
    let Some(fluid) = book.known.hydraulics.fluid(season.season, design.package.place) else { return };
    let Some(found) = inlet(design, book.known.hydraulics, season.season) else { return };
    let state = state_name(book, design.package.place, season.season);
    feed(book, &at, &state, found.feed);
    if let Some(fill) = found.fill_time {
        let flow = data.per_cycle / fill;
        let curve =
            if fluid.is_newtonian() { vec!["viscosity"] } else { vec!["yield", "consistency", "index"] };
        let passage = ["inlet_bore", "inlet_length"].map(|f| book.part_or(part, f, Length::ZERO));
        let curve = curve.into_iter().map(|what| named(format!("{state}.{what}")));
        let terms = std::iter::once(named(format!("{at}.feed"))).chain(passage).chain(curve).collect();
        book.solved(format!("{at}.inlet_flow"), flow, message!("solve-how-inlet-flow"), terms);
        let terms = vec![book.part_or(part, "per_cycle", data.per_cycle), named(format!("{at}.inlet_flow"))];
        book.formula(format!("{at}.fill_time"), &pump::INLET_TIME, fill, terms);
        let terms =
            vec![named(format!("{at}.fill_time")), book.part_or(part, "suction_share", data.suction_share)];
        book.formula(format!("{at}.inlet_rate"), &pump::LARGEST_STROKE_RATE, found.rate, terms);
    }
    let mut terms = vec![
        book.part_or(part, "cycles_max", data.cycles_max),
        book.part_or(part, "per_cycle", data.per_cycle),
    ];
    terms.extend(found.fill_time.map(|_| named(format!("{at}.inlet_rate"))));
    terms.extend(data.air_swept.map(|_| named("pump.supply")));
    book.solved(format!("{at}.flow_limit"), season.pump.flow_limit, message!("solve-how-flow-limit"), terms);
}

fn feed(book: &mut Book<'_>, at: &str, state: &str, found: Pressure) {
    let density = named(format!("{state}.density"));
    // Judged with the reservoir nearly empty: no height of lubricant is left.
    let terms = vec![
        named("site.atmosphere"),
        named("practice.inlet_lowest"),
        density,
        value(Length::ZERO),
        named("pump.follower"),
    ];
    book.formula(format!("{at}.feed"), &pump::FEED_PRESSURE, found, terms);
}
