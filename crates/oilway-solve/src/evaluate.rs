//! What follows from a design: deliveries, pressures in the three seasons, supply and protection.
//!
//! # Names of the numbers
//! With a ledger that is on, every number of the answer can be asked for by its name, and each names what it was made of. `S` is `cold`,
//! `normal` or `hot`; `P` a point, `D` a divider, `N` either of them as the end of a line, `k` a stretch of that line, counted from one.
//!
//! | name | number |
//! |---|---|
//! | every place in the job: `site.altitude`, `place.<place>.coldest`, `air.lowest`, `duty.…`, `limits.…`, `practice.…`, `lubricant.…`, `line.N.k.length`, `line.N.k.rise`, `point.P.…` | what was said or assumed |
//! | `part.<id>.<field>`, `part.<id>.bore` | a property of a part |
//! | `point.P.demand`, `.floor`, `.freshness`, `.required`, `.tail` | what a point needs, and what raised it |
//! | `point.P.dose`, `.delivered`, `.age_in_tail`, `.age` | what it gets, and how old |
//! | `divider.D.sections`, `.cycle`, `.dose`, `.inflow` | a divider |
//! | `line.N.k.acting`, `.fittings`, `.content`; `line.N.content`, `.age` | a line |
//! | `pause`, `control.cycles`, `control.period`, `event.volume`, `event.flow`, `event.S.time` | how it is run |
//! | `lubricant.<place>.S.yield`, `.rested_yield`, `.consistency`, `.index`, `.density`; `.kinematic`, `.viscosity` of an oil; `.base.…` of a grease known by its class | the lubricant |
//! | `path.P.S.leg.N.k.start`, `.start_rested`, `.loss`, `.head`; `.thin`, `.far` of an oil | one stretch of a path |
//! | `path.P.S.start`, `.start_rested`, `.moving`, `.residual`, `.flow`, `.at_pump` | a path |
//! | `peak.S.start`, `peak.S.moving` | the worst path |
//! | `site.atmosphere`, `pump.air`, `.supply`, `.stall`, `.stall_possible`, `.free_air`, `.conductance`, `.follower`, `.flow_limit`, `.fill_time_available`; `pump.S.feed`, `.inlet_flow`, `.fill_time`, `.inlet_rate`, `.flow_limit`; `package.regulator` | the pump |
//! | `disc.working`, `.factor.cold`, `.factor.hot`, `.lowest`, `.highest`, `.steady`, `.operating_ratio`, `.window.low`, `.window.high`, `.relieving`, `.stays`, `.highest_setting`; `protection.weakest` | overpressure |
//! | `supply.use`, `.refill`, `.reserve`, `.air_per_hour`; `demand.total`, `delivered.total`; `cold.limit` | the system as a whole |

use oilway_catalogue::kinds::{AirValve, Pump};
use oilway_model::{
    Answer, Delivery, Design, End, PathPressures, PumpState, Season, SeasonResult, Supply, Verdict,
};
use oilway_physics::{Ledger, air, pipe_flow, pump as pump_formulas};
use oilway_units::{Flow, Frequency, Pressure, Ratio, Time, Volume};

use crate::hydraulics::{Hydraulics, bore_of};
use crate::inlet::{Inlet, atmosphere, inlet};
use crate::need::{Need, needs};
use crate::shares::{Shares, shares};
use crate::source::{AIR_TEMPERATURE, Balance, Circumstances, Source, stall_without_friction};
use crate::trace::{Known, trace};
use crate::{cold, relief};

/// Content of the line that leads to each node.
pub(crate) fn contents(design: &Design) -> Vec<Volume> {
    let of_leg = |leg: &oilway_model::Leg| {
        let bore = design.conduits.get(leg.conduit).and_then(|part| bore_of(part)).unwrap_or_default();
        pipe_flow::line_content(bore, leg.length.get())
    };
    design.network.nodes.iter().map(|node| node.legs.iter().map(of_leg).sum()).collect()
}

/// The node of each point.
pub(crate) fn point_nodes(design: &Design) -> Vec<usize> {
    let mut nodes = vec![0; design.points.len()];
    for (number, node) in design.network.nodes.iter().enumerate() {
        if let End::Point(point) = node.end {
            nodes[point] = number;
        }
    }
    nodes
}

/// The flow that an event must make on the coldest day to end in the time allowed.
pub fn design_flow(design: &Design, shares: &Shares) -> Flow {
    shares.first_cycle * f64::from(design.control.cycles) / design.conditions.limits.event_time.get()
}

/// Everything that follows from a design. The verdict is left at "cannot tell yet": findings decide it.
pub fn evaluate(design: &Design, ledger: &mut Ledger) -> Answer {
    let nodes = point_nodes(design);
    let shares = shares(design);
    let contents = contents(design);
    let tails: Vec<Volume> = nodes.iter().map(|&n| contents[n]).collect();
    let needs = needs(&design.conditions, &design.points, &tails, ledger);
    let deliveries = deliveries(design, &nodes, &shares, &contents, &needs);
    let hydraulics = Hydraulics::new(design);
    let flow = design_flow(design, &shares);
    let seasons = all_seasons(design, &hydraulics, &nodes, &shares);
    let supply = supply(design, &shares, &hydraulics, &seasons);
    let protection = relief::protection(design, &hydraulics, &seasons);
    let cold_limit = cold::cold_limit(design, &nodes, flow, &seasons);
    let answer =
        Answer { deliveries, seasons, cold_limit, protection, supply, verdict: Verdict::CannotTellYet };
    if ledger.is_on() {
        let (hydraulics, shares, answer) = (&hydraulics, &shares, &answer);
        trace(
            &Known { design, hydraulics, shares, nodes: &nodes, contents: &contents, flow, answer },
            ledger,
        );
    }
    answer
}

/// The seasons alone, for those who need no more.
pub(crate) fn seasons(design: &Design) -> Vec<SeasonResult> {
    let (nodes, shares) = (point_nodes(design), shares(design));
    all_seasons(design, &Hydraulics::new(design), &nodes, &shares)
}

fn all_seasons(
    design: &Design,
    hydraulics: &Hydraulics<'_>,
    nodes: &[usize],
    shares: &Shares,
) -> Vec<SeasonResult> {
    let flow = design_flow(design, shares);
    let of = |season| season_result(design, hydraulics, nodes, shares, flow, season);
    Season::ALL.into_iter().filter_map(of).collect()
}

fn calendar(design: &Design, running: Time) -> Time {
    running / design.conditions.running_share().max(1e-6)
}

fn deliveries(
    design: &Design,
    nodes: &[usize],
    shares: &Shares,
    contents: &[Volume],
    needs: &[Need],
) -> Vec<Delivery> {
    let reservoir = reservoir_age(design, shares);
    nodes
        .iter()
        .zip(needs)
        .map(|(&node, need)| {
            let delivered = shares.flow[node];
            let on_the_way = |n: usize| time_in(contents[n], shares.flow[n]);
            let age_in_tail = calendar(design, on_the_way(node));
            let age: Time = design.network.upstream(node).map(on_the_way).sum();
            Delivery {
                formula: need.formula,
                required: need.required,
                raised_by: need.raised_by.clone(),
                delivered,
                dose: shares.dose[node],
                band_low: need.band_low,
                band_high: need.band_high,
                age_in_tail,
                age: calendar(design, age) + reservoir,
                tail: contents[node],
                notes: need.notes.clone(),
                rule: need.rule,
                viscosity_ratio: need.viscosity_ratio,
            }
        })
        .collect()
}

fn time_in(content: Volume, flow: Flow) -> Time {
    if content <= Volume::ZERO {
        Time::ZERO
    } else if flow <= Flow::ZERO {
        Time::from_weeks(1e6)
    } else {
        pump_formulas::age_at_point(content, flow)
    }
}

fn use_rate(shares: &Shares) -> Flow {
    shares.first_cycle / shares.period
}

fn reservoir_age(design: &Design, shares: &Shares) -> Time {
    let Some(data) = oilway_catalogue::kinds::Reservoir::of(&design.package.reservoir) else {
        return Time::ZERO;
    };
    let running = pump_formulas::refill_interval(data.gross, data.usable, use_rate(shares));
    calendar(design, running)
}

/// The circumstances of the pump in a season.
pub(crate) fn circumstances(design: &Design, inlet: Option<&Inlet>) -> Circumstances {
    let lowest = design.conditions.air.as_ref().map_or(Pressure::ZERO, |air| air.lowest.get());
    let set = design.package.air_setting.unwrap_or(lowest);
    let valve = design.package.valve.as_ref().and_then(|part| AirValve::of(part));
    Circumstances {
        // A regulator cannot give more than the supply brings.
        air: set.min(lowest),
        atmosphere: atmosphere(design),
        supply_path: valve.map(|v| (v.conductance, v.critical_ratio)),
        inlet_rate: inlet.map(|i| i.rate),
    }
}

fn season_result(
    design: &Design,
    hydraulics: &Hydraulics<'_>,
    nodes: &[usize],
    shares: &Shares,
    flow: Flow,
    season: Season,
) -> Option<SeasonResult> {
    let data = Pump::of(&design.package.pump)?;
    let inlet = inlet(design, hydraulics, season);
    let here = circumstances(design, inlet.as_ref());
    let source = Source::new(&data, &here);
    let rest = design.conditions.practice.rest_factor.get().fraction();
    let mut paths = Vec::with_capacity(nodes.len());
    let steady = hydraulics.at_flow(season, flow);
    let mut balance = Balance::new(&source);
    for &node in nodes {
        let still = steady.path(node)?;
        let (pushed, at_pump) = balance.with(|q| {
            hydraulics.path(season, node, q).map_or(Pressure::from_pascals(f64::INFINITY), |p| p.moving)
        });
        paths.push(PathPressures {
            start: still.yielding + still.fixed,
            start_rested: still.yielding * rest + still.fixed,
            moving: still.moving,
            residual: still.yielding,
            flow: pushed,
            at_pump,
        });
    }
    let worst_moving = worst(&paths, |p| p.moving);
    let worst_start = worst(&paths, |p| p.start_rested);
    let pump = pump_state(design, &data, &source, &here, inlet.as_ref());
    let event_time = event_time(design, nodes, shares, &paths);
    Some(SeasonResult { season, paths, worst_moving, worst_start, pump, event_time })
}

/// The word of a season in the names of numbers.
pub fn season_word(season: Season) -> &'static str {
    match season {
        Season::Cold => "cold",
        Season::Normal => "normal",
        Season::Hot => "hot",
    }
}

fn worst(paths: &[PathPressures], of: impl Fn(&PathPressures) -> Pressure) -> usize {
    // The first of equals, so that the answer does not hang on the order of a sort.
    (0..paths.len()).rev().max_by(|&a, &b| of(&paths[a]).total_cmp(&of(&paths[b]))).unwrap_or(0)
}

fn pump_state(
    design: &Design,
    data: &Pump,
    source: &Source,
    here: &Circumstances,
    inlet: Option<&Inlet>,
) -> PumpState {
    let possible = design.conditions.air.as_ref().map_or(Pressure::ZERO, |air| air.possible.get());
    let free_air = data.air_swept.map_or(Volume::ZERO, |swept| {
        let supply = here.air.absolute(here.atmosphere);
        air::free_air(swept, data.air_clearance.unwrap_or_default(), supply, here.atmosphere, AIR_TEMPERATURE)
    });
    PumpState {
        stall: source.stall,
        stall_possible: stall_without_friction(data, possible),
        flow_limit: source.free_flow(),
        rate: Frequency::from_per_second(
            source.free_flow().cubic_metres_per_second() / data.per_cycle.cubic_metres(),
        ),
        free_air,
        fill_time: inlet.and_then(|i| i.fill_time),
        fill_time_available: Time::from_seconds(data.suction_share.fraction() / data.cycles_max.per_second()),
    }
}

/// The time of one event: each outlet in turn at the flow that its own path allows.
fn event_time(design: &Design, nodes: &[usize], shares: &Shares, paths: &[PathPressures]) -> Option<Time> {
    let event = shares.first_cycle * f64::from(design.control.cycles);
    let total = use_rate(shares);
    let mut time = Time::ZERO;
    for (&node, path) in nodes.iter().zip(paths) {
        if path.flow <= Flow::ZERO {
            return None;
        }
        time += event * (shares.flow[node] / total) / path.flow;
    }
    Some(time)
}

fn supply(design: &Design, shares: &Shares, hydraulics: &Hydraulics<'_>, seasons: &[SeasonResult]) -> Supply {
    let use_rate = use_rate(shares);
    let data = oilway_catalogue::kinds::Reservoir::of(&design.package.reservoir);
    let (gross, usable, reserve) =
        data.map_or((Volume::ZERO, Ratio::ZERO, Volume::ZERO), |r| (r.gross, r.usable, r.reserve));
    let running = pump_formulas::refill_interval(gross, usable, use_rate);
    let feed = inlet(design, hydraulics, Season::Cold).map_or(Pressure::ZERO, |i| i.feed);
    let per_cycle = Pump::of(&design.package.pump).map(|p| p.per_cycle);
    let free_air =
        seasons.iter().find(|s| s.season == Season::Normal).map_or(Volume::ZERO, |s| s.pump.free_air);
    let cycles_per_hour = per_cycle.map_or(0.0, |v| use_rate * Time::from_hours(1.0) / v);
    Supply {
        use_rate,
        refill: calendar(design, running),
        reserve: calendar(design, reserve / use_rate),
        feed,
        air_per_hour: free_air * cycles_per_hour,
    }
}
