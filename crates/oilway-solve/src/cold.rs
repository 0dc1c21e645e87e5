//! The coldest day on which the system still starts, and how far each remedy pushes it down.

use oilway_catalogue::kinds::Pump;
use oilway_model::{ColdLimit, Design, Remedy, Season, SeasonResult};
use oilway_text::message;
use oilway_units::{Flow, Pressure, Temperature, TemperatureDifference};

use crate::evaluate::circumstances;
use crate::hydraulics::Hydraulics;
use crate::protection::DiscHere;
use crate::source::stall;
use crate::weather::Weather;

/// How far the search looks below and above the job's coldest day.
const SEARCH: (f64, f64) = (-80.0, 60.0);
/// One NLGI class softer: yield stress and consistency of the class ranges fall by about this (`lubricants` 2.3, typical values of
/// the classes 2 and 1: 500 to 200 Pa; judged).
const SOFTER: f64 = 0.4;
/// One step of the R10 series wider.
const WIDER: f64 = 1.25;
/// Heat tracing holds lines at this.
const TRACED: Temperature = Temperature::from_celsius(10.0);

/// The coldest day. None where nothing can be said: no pump data, or no viscosity line.
pub(crate) fn cold_limit(
    design: &Design,
    nodes: &[usize],
    flow: Flow,
    seasons: &[SeasonResult],
) -> Option<ColdLimit> {
    let cold = seasons.iter().find(|s| s.season == Season::Cold)?;
    let pump = Pump::of(&design.package.pump)?;
    // A pump that could push harder would only wear out the disc.
    let disc = design.package.disc.as_ref();
    let steady =
        disc.and_then(|d| DiscHere::new(d, &design.conditions, design.package.place)).map(|d| d.steady);
    let own = stall(&pump, circumstances(design, None).air);
    let stall = steady.map_or(own, |steady| own.min(steady));
    let candidates = hardest(design, nodes, cold);
    let limit = |weather: Weather| {
        let few = limit(design, &candidates, flow, stall, weather)?;
        // Which path asks most can change with the weather: where another one asks more than these, all are looked at.
        let here = Weather { shift: TemperatureDifference::from_kelvins(few), ..weather };
        if starts(design, nodes, flow, stall, here) {
            Some(few)
        } else {
            limit(design, nodes, flow, stall, weather)
        }
    };
    let shift = limit(Weather::AS_IS)?;
    let place = coldest_place(design);
    let at = |shift: f64| {
        Weather { shift: TemperatureDifference::from_kelvins(shift), ..Weather::AS_IS }.temperature(
            &design.conditions,
            place,
            Season::Cold,
        )
    };
    let remedies = [
        (
            message!("solve-remedy-softer"),
            Weather { yield_stress: SOFTER, consistency: SOFTER, ..Weather::AS_IS },
        ),
        (message!("solve-remedy-wider"), Weather { bore: WIDER, ..Weather::AS_IS }),
        (
            message!("solve-remedy-traced", temperature = TRACED),
            Weather { traced_to: Some(TRACED), ..Weather::AS_IS },
        ),
    ];
    let remedies = remedies
        .into_iter()
        .filter_map(|(what, weather)| {
            let shift = limit(weather)?;
            Some(Remedy { what, temperature: (shift > SEARCH.0).then(|| at(shift)) })
        })
        .collect();
    Some(ColdLimit {
        reserve: TemperatureDifference::from_kelvins(-shift),
        place,
        temperature: at(shift),
        remedies,
        stated: stated(design, &pump),
    })
}

/// The warmest of the coldest uses that lubricant, pump and lines state for themselves.
fn stated(design: &Design, pump: &Pump) -> Option<(String, Temperature)> {
    let lubricant =
        design.conditions.lubricant.coldest.map(|t| (design.conditions.lubricant.name.clone(), t));
    let lines =
        design.conduits.iter().filter_map(|part| Some((part.description.clone(), part.quantity("coldest")?)));
    let pump = (design.package.pump.description.clone(), pump.coldest);
    let all = lubricant.into_iter().chain([pump]).chain(lines);
    all.max_by(|a, b| a.1.total_cmp(&b.1).then_with(|| b.0.cmp(&a.0)))
}

/// The place of which the sentence speaks: the coldest outdoors, or the coldest of all.
fn coldest_place(design: &Design) -> usize {
    let places = &design.conditions.places;
    let none_outdoors = !places.iter().any(|p| p.outdoors);
    let cold = |&i: &usize| places[i].temperature(Season::Cold);
    (0..places.len())
        .filter(|&i| none_outdoors || places[i].outdoors)
        .min_by(|a, b| cold(a).total_cmp(&cold(b)).then(a.cmp(b)))
        .unwrap_or(0)
}

/// The paths that can become the worst: the two that ask most of each divider, by start and by motion.
fn hardest(design: &Design, nodes: &[usize], cold: &SeasonResult) -> Vec<usize> {
    let mut of_divider: Vec<[Option<(Pressure, usize)>; 2]> = vec![[None; 2]; design.network.nodes.len()];
    for ((&node, path), _) in nodes.iter().zip(&cold.paths).zip(&design.points) {
        let parent = design.network.nodes[node].parent.unwrap_or(0);
        for (slot, need) in of_divider[parent].iter_mut().zip([path.start_rested, path.moving]) {
            if slot.is_none_or(|(most, _)| need > most) {
                *slot = Some((need, node));
            }
        }
    }
    let mut found: Vec<usize> = of_divider.into_iter().flatten().flatten().map(|(_, node)| node).collect();
    found.sort_unstable();
    found.dedup();
    found
}

/// The shift of temperature at which the hardest path asks just what the pump can give; at the end of the search where it never does.
fn limit(design: &Design, nodes: &[usize], flow: Flow, stall: Pressure, weather: Weather) -> Option<f64> {
    let at = |shift: f64| {
        let weather = Weather { shift: TemperatureDifference::from_kelvins(shift), ..weather };
        starts(design, nodes, flow, stall, weather)
    };
    let (mut dead, mut alive) = SEARCH;
    if !at(alive) {
        return None;
    }
    if at(dead) {
        return Some(dead);
    }
    while alive - dead > STEP {
        let middle = 0.5 * (alive + dead);
        if at(middle) { alive = middle } else { dead = middle }
    }
    Some(alive)
}

/// Half a tenth of a kelvin is nearer than anybody knows the weather.
const STEP: f64 = 0.05;

/// Whether the pump sets the paths to these nodes moving, after rest, and keeps them moving.
fn starts(design: &Design, nodes: &[usize], flow: Flow, stall: Pressure, weather: Weather) -> bool {
    let hydraulics = Hydraulics::under(design, &weather, &[Season::Cold]);
    let rest = design.conditions.practice.rest_factor.get().fraction();
    let steady = hydraulics.at_flow(Season::Cold, flow);
    nodes.iter().all(|&node| {
        let path = steady.path(node);
        path.is_some_and(|p| (p.yielding * rest + p.fixed).max(p.moving) <= stall)
    })
}

#[cfg(test)]
mod tests {
    use oilway_physics::Ledger;

    use super::*;
    use crate::evaluate::point_nodes;
    use crate::testing::{catalogue, dairy, hall, known, spindle, without_air};
    use crate::{design, design_flow, evaluate, shares};

    /// The same design with every place (or those outdoors) so much colder, written into the places themselves.
    fn colder(design: &Design, by: f64) -> Design {
        let mut design = design.clone();
        let none_outdoors = !design.conditions.places.iter().any(|p| p.outdoors);
        for place in design.conditions.places.iter_mut().filter(|p| none_outdoors || p.outdoors) {
            place.coldest = known(place.coldest.get().plus(TemperatureDifference::from_kelvins(-by)));
        }
        design
    }

    /// Direct evaluation: whether the worst path of that day stays below the pump and the disc.
    fn starts_on(design: &Design, most: Pressure) -> bool {
        let answer = evaluate(design, &mut Ledger::off());
        let cold = &answer.seasons[0];
        cold.paths[cold.worst_start].start_rested.max(cold.paths[cold.worst_moving].moving) <= most
    }

    fn most(design: &Design) -> Pressure {
        let answer = evaluate(design, &mut Ledger::off());
        let steady = answer.protection.steady_maximum.unwrap();
        answer.seasons[0].pump.stall.min(steady)
    }

    #[test]
    fn the_coldest_day_is_where_direct_evaluation_turns() {
        for job in [hall(), dairy(), spindle(), without_air()] {
            let design = design(&job, catalogue()).unwrap();
            let limit = evaluate(&design, &mut Ledger::off()).cold_limit.unwrap();
            let (reserve, most) = (limit.reserve.kelvins(), most(&design));
            assert!(starts_on(&colder(&design, reserve - 0.1), most), "{}: {reserve}", job.name);
            assert!(!starts_on(&colder(&design, reserve + 0.1), most), "{}: {reserve}", job.name);
        }
    }

    #[test]
    fn weather_cools_what_stands_outdoors_and_leaves_the_heated_hall_alone() {
        let mut job = dairy();
        job.conditions.places[3].outdoors = true;
        let design = design(&job, catalogue()).unwrap();
        let limit = evaluate(&design, &mut Ledger::off()).cold_limit.unwrap();
        assert_eq!(limit.place, 3);
        assert!((limit.temperature.celsius() - (4.0 - limit.reserve.kelvins())).abs() < 1e-9);
        // Only the branch outdoors stiffens: it may get colder than if everything did.
        let indoors =
            evaluate(&crate::design(&dairy(), catalogue()).unwrap(), &mut Ledger::off()).cold_limit.unwrap();
        assert!(limit.reserve > indoors.reserve);
    }

    #[test]
    fn wider_lines_and_softer_grease_push_the_limit_down() {
        let design = design(&dairy(), catalogue()).unwrap();
        let answer = evaluate(&design, &mut Ledger::off());
        let limit = answer.cold_limit.unwrap();
        for remedy in &limit.remedies {
            assert!(remedy.temperature.is_none_or(|t| t <= limit.temperature), "{}", remedy.what.key);
        }
        // Second route for the wider lines: the walk with wider bores, a hair warmer and a hair colder than it says.
        let wider = limit.remedies.iter().find(|r| r.what.key == "solve-remedy-wider").unwrap();
        let shift = wider.temperature.unwrap().above(limit.temperature).kelvins() - limit.reserve.kelvins();
        let (nodes, flow) = (point_nodes(&design), design_flow(&design, &shares(&design)));
        let at = |shift: f64| {
            let shift = TemperatureDifference::from_kelvins(shift);
            starts(&design, &nodes, flow, most(&design), Weather { shift, bore: WIDER, ..Weather::AS_IS })
        };
        assert!(at(shift + 0.1) && !at(shift - 0.1));
    }

    #[test]
    fn a_system_that_never_starts_has_no_coldest_day() {
        let mut design = design(&hall(), catalogue()).unwrap();
        design.conditions.practice.back_pressure = known(Pressure::from_bar(1000.0));
        assert!(evaluate(&design, &mut Ledger::off()).cold_limit.is_none());
    }
}
