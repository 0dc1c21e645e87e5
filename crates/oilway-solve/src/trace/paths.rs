//! The pressures of every path, stretch by stretch from the point to the pump.

use oilway_model::{End, Leg, Season, SeasonResult};
use oilway_physics::{How, Term, grease, oil, pipe_flow};
use oilway_text::message;
use oilway_units::{AnyQuantity, Flow, Pressure};

use super::lubricant::state_name;
use super::{Book, named, value};
use crate::evaluate::season_word;
use crate::hydraulics::{bore_of, leg_loss};

pub(super) fn trace(book: &mut Book<'_>) {
    for season in &book.known.answer.seasons {
        for (point, &node) in book.known.nodes.iter().enumerate() {
            path(book, season, point, node);
        }
        peaks(book, season);
    }
}

/// The name of a path in a season.
pub(super) fn path_name(book: &Book<'_>, point: usize, season: Season) -> String {
    let name = book.known.design.points.get(point).map_or("", |p| p.name.as_str());
    format!("path.{name}.{}", season_word(season))
}

/// The terms of a path's three sums, and the running pressure in motion.
#[derive(Default)]
struct Walk {
    start: Vec<Term>,
    rested: Vec<Term>,
    yielding: Vec<Term>,
    moving: Vec<Term>,
    pressure: Pressure,
}

impl Walk {
    /// What must be overcome whatever the flow.
    fn fixed(&mut self, term: Term, pressure: Pressure) {
        for sum in [&mut self.start, &mut self.rested, &mut self.moving] {
            sum.push(term.clone());
        }
        self.pressure += pressure;
    }
}

fn path(book: &mut Book<'_>, result: &SeasonResult, point: usize, node: usize) {
    let design = book.known.design;
    let name = path_name(book, point, result.season);
    let mut walk = Walk::default();
    for at in design.network.upstream(node) {
        let here = &design.network.nodes[at];
        if let Some((term, pressure)) = resistance(book, here.end) {
            walk.fixed(term, pressure);
        }
        for (number, leg) in here.legs.iter().enumerate().rev() {
            stretch(book, &mut walk, &name, (&here.name, number), leg, result.season);
        }
    }
    let found = &result.paths[point];
    book.sum(format!("{name}.start"), found.start, walk.start);
    book.sum(format!("{name}.start_rested"), found.start_rested, walk.rested);
    book.sum(format!("{name}.residual"), found.residual, walk.yielding);
    book.sum(format!("{name}.moving"), found.moving, walk.moving);
    let terms = || vec![named("pump.stall"), named(format!("{name}.start")), named(format!("{name}.moving"))];
    book.solved(format!("{name}.flow"), found.flow, message!("solve-how-balance"), terms());
    book.solved(format!("{name}.at_pump"), found.at_pump, message!("solve-how-balance"), terms());
}

/// What stands at a node and must be overcome.
fn resistance(book: &mut Book<'_>, end: End) -> Option<(Term, Pressure)> {
    let design = book.known.design;
    match end {
        End::Point(point) => {
            let point = design.points.get(point)?;
            Some(match point.back_pressure {
                Some(said) => (named(format!("point.{}.back_pressure", point.name)), said.get()),
                None => (named("practice.back_pressure"), design.conditions.practice.back_pressure.get()),
            })
        }
        End::Divider(divider) => {
            let body = &design.dividers.get(divider)?.body;
            Some((book.part(body, "drop")?, body.quantity("drop")?))
        }
        End::Pump => {
            let check = crate::ports::outlet_check(&design.package);
            (check > Pressure::ZERO).then(|| (value(check), check))
        }
        End::Junction => None,
    }
}

/// One stretch of a path.
fn stretch(
    book: &mut Book<'_>,
    walk: &mut Walk,
    path: &str,
    (node, number): (&str, usize),
    leg: &Leg,
    season: Season,
) {
    let design = book.known.design;
    let Some(fluid) = book.known.hydraulics.fluid(season, leg.place).copied() else { return };
    let Some(conduit) = design.conduits.get(leg.conduit) else { return };
    let bore = bore_of(conduit).unwrap_or_default();
    let state = state_name(book, leg.place, season);
    let at = format!("{path}.leg.{node}.{}", number + 1);
    let line = format!("line.{node}.{}", number + 1);
    let of_line = |what: &str| named(format!("{line}.{what}"));
    let (bore_term, length) = (named(format!("part.{}.bore", conduit.id)), leg.length.get());
    if !fluid.is_newtonian() {
        let start = pipe_flow::start_pressure(bore, length, fluid.yield_stress);
        let terms =
            |stress: &str| vec![bore_term.clone(), of_line("length"), named(format!("{state}.{stress}"))];
        book.formula(format!("{at}.start"), &pipe_flow::START_PRESSURE, start, terms("yield"));
        let rested = grease::rested_yield(fluid.yield_stress, design.conditions.practice.rest_factor.get());
        let start = pipe_flow::start_pressure(bore, length, rested);
        book.formula(format!("{at}.start_rested"), &pipe_flow::START_PRESSURE, start, terms("rested_yield"));
        walk.start.push(named(format!("{at}.start")));
        walk.yielding.push(named(format!("{at}.start")));
        walk.rested.push(named(format!("{at}.start_rested")));
    }
    let acting = length * (1.0 + design.conditions.practice.fittings.get().fraction());
    let flow = book.known.flow;
    let terms = vec![bore_term, of_line("acting"), named("event.flow")];
    if fluid.is_newtonian() {
        thin_loss(book, &at, &state, terms, &fluid, (bore, acting, flow));
        book.sum(format!("{at}.far"), walk.pressure, walk.moving.clone());
        let loss = leg_loss(&fluid, bore, acting, flow, walk.pressure);
        let terms = vec![
            named(format!("{at}.thin")),
            named("lubricant.pressure_coefficient"),
            named(format!("{at}.far")),
        ];
        book.formula(format!("{at}.loss"), &oil::BARUS_DROP, loss, terms);
        walk.pressure += loss;
    } else {
        let curve = ["yield", "consistency", "index"].map(|what| named(format!("{state}.{what}")));
        let loss = fluid.drop(bore, acting, flow);
        let terms = [terms, curve.to_vec()].concat();
        book.formula(format!("{at}.loss"), &pipe_flow::HERSCHEL_BULKLEY_DROP, loss, terms);
        walk.pressure += loss;
    }
    walk.moving.push(named(format!("{at}.loss")));
    if leg.rise.get() != oilway_units::Length::ZERO {
        let head = pipe_flow::static_head(fluid.density, leg.rise.get());
        let terms = vec![named(format!("{state}.density")), of_line("rise")];
        book.formula(format!("{at}.head"), &pipe_flow::STATIC_HEAD, head, terms);
        walk.fixed(named(format!("{at}.head")), head);
    }
}

/// The loss of an oil at the viscosity of no pressure: laminar, or by its friction factor beyond.
fn thin_loss(
    book: &mut Book<'_>,
    at: &str,
    state: &str,
    terms: Vec<Term>,
    fluid: &oilway_model::Fluid,
    (bore, length, flow): (oilway_units::Length, oilway_units::Length, Flow),
) {
    let name = format!("{at}.thin");
    let viscosity = named(format!("{state}.viscosity"));
    let thin = fluid.drop(bore, length, flow);
    if thin == pipe_flow::newtonian_drop(bore, length, flow, fluid.viscosity()) {
        book.formula(name, &pipe_flow::NEWTONIAN_DROP, thin, [terms, vec![viscosity]].concat());
    } else {
        let rest = vec![named(format!("{state}.density")), viscosity, value(oilway_model::ROUGHNESS)];
        book.formula(name, &pipe_flow::DARCY_DROP, thin, [terms, rest].concat());
    }
}

/// The largest need of a season.
fn peaks(book: &mut Book<'_>, result: &SeasonResult) {
    let word = season_word(result.season);
    let all = |book: &Book<'_>, what: &str| -> Vec<Term> {
        (0..result.paths.len())
            .map(|p| named(format!("{}.{what}", path_name(book, p, result.season))))
            .collect()
    };
    let mut largest = |name: String, what: &str, found: AnyQuantity| {
        let terms = all(book, what);
        book.line(name, found, How::Largest(terms));
    };
    if let Some(path) = result.paths.get(result.worst_start) {
        largest(format!("peak.{word}.start"), "start_rested", path.start_rested.into());
    }
    if let Some(path) = result.paths.get(result.worst_moving) {
        largest(format!("peak.{word}.moving"), "moving", path.moving.into());
    }
}
