//! Which principle can serve. Here: whether a parallel single line would recharge, and if not, what would make it.

use oilway_catalogue::Catalogue;
use oilway_catalogue::kinds::{Medium, MeteringValve};
use oilway_model::{Design, Season};
use oilway_physics::{Ledger, pipe_flow};
use oilway_text::{Message, message};
use oilway_units::{Flow, Length, Pressure, Temperature, Volume};

use crate::evaluate::{contents, point_nodes};
use crate::hydraulics::{Hydraulics, bore_of};
use crate::need::needs;
use crate::weather::Weather;

/// What stands against a parallel single line.
#[derive(Clone, Debug, PartialEq)]
pub struct ParallelVerdict {
    /// The point whose line keeps most pressure after venting, measured by what its valve allows.
    pub point: String,
    /// What remains there.
    pub residual: Pressure,
    /// Below this its valve recharges.
    pub resets_below: Pressure,
    /// Whether it would work.
    pub works: bool,
    /// Temperature to which the lines would have to be kept; none if no temperature of the search does, or if it works as it is.
    pub works_from: Option<Temperature>,
    /// How much wider all lines of the way would have to be.
    pub wider: f64,
    /// The narrowest bore of the way, wider by that.
    pub bore: Length,
    /// The sentence.
    pub says: Message,
}

/// A point under the eye of a parallel line: its node and the reset pressure of the valve that its dose asks for.
struct Valved {
    node: usize,
    resets_below: Pressure,
}

/// Judges a parallel single line along the lines of a design. The valve sits where the divider sits: the main up to it must recharge,
/// the tail behind it need not. Lubricant with a yield stress keeps 4 τ0 L / D for good, however long one waits.
///
/// None where the catalogue has no valve for the lubricant, or the lubricant no flow curve at a temperature of the way.
pub fn parallel(design: &Design, catalogue: &Catalogue) -> Option<ParallelVerdict> {
    let valved = valved(design, catalogue)?;
    let (residual, worst) = hardest(design, &valved, &Weather::AS_IS)?;
    let resets_below = worst.resets_below;
    let works = residual < resets_below;
    let works_from = if works { None } else { works_from(design, &valved) };
    let wider = (residual / resets_below).max(1.0);
    let main = design.network.upstream(worst.node).skip(1).flat_map(|n| &design.network.nodes[n].legs);
    let narrowest =
        main.filter_map(|leg| bore_of(design.conduits.get(leg.conduit)?)).min_by(Length::total_cmp)?;
    let bore = narrowest * wider;
    let point = design.network.nodes[worst.node].name.clone();
    let says = match (works, works_from) {
        (true, _) => message!("solve-parallel-works", residual = residual, reset = resets_below),
        (false, Some(from)) => {
            message!(
                "solve-parallel-refused",
                point = point.as_str(),
                residual = residual,
                reset = resets_below,
                bore = bore,
                temperature = from
            )
        }
        (false, None) => {
            message!(
                "solve-parallel-refused-always",
                point = point.as_str(),
                residual = residual,
                reset = resets_below,
                bore = bore
            )
        }
    };
    Some(ParallelVerdict { point, residual, resets_below, works, works_from, wider, bore, says })
}

/// Every point with the valve that its dose asks for. The rhythm is the quickest that the smallest need allows: its point gets the
/// smallest dose on hand, all others in proportion. Of the valves that can be set to a dose the one that resets highest counts.
fn valved(design: &Design, catalogue: &Catalogue) -> Option<Vec<Valved>> {
    let medium = if design.conditions.lubricant.is_grease() { Medium::Grease } else { Medium::Oil };
    let valves: Vec<MeteringValve> = catalogue
        .of_kind("metering valve")
        .filter_map(|part| MeteringValve::of(part))
        .filter(|valve| valve.lubricants.contains(&medium))
        .collect();
    let smallest = valves.iter().map(|v| v.dose_min).min_by(Volume::total_cmp)?;
    let nodes = point_nodes(design);
    let contents = contents(design);
    let tails: Vec<Volume> = nodes.iter().map(|&node| contents[node]).collect();
    let needs = needs(&design.conditions, &design.points, &tails, &mut Ledger::off());
    let least = needs.iter().map(|need| need.required).filter(|q| *q > Flow::ZERO).min_by(Flow::total_cmp)?;
    let of_point = |(&node, need): (&usize, &crate::need::Need)| {
        let dose = smallest * (need.required / least).max(1.0);
        let gives = |valve: &&MeteringValve| valve.dose_min <= dose * HAIR && dose <= valve.dose_max * HAIR;
        let fitting = valves.iter().filter(gives).map(|v| v.resets_below).max_by(Pressure::total_cmp);
        // Beyond the largest dose several of the largest valves serve together.
        let largest =
            || valves.iter().max_by(|a, b| a.dose_max.total_cmp(&b.dose_max)).map(|v| v.resets_below);
        fitting.or_else(largest).map(|resets_below| Valved { node, resets_below })
    };
    nodes.iter().zip(&needs).map(of_point).collect()
}

/// A dose on the edge of a valve's range is inside.
const HAIR: f64 = 1.0 + 1e-9;

/// The valve with the least room and what remains at it, the first of equals.
fn hardest<'a>(design: &Design, valved: &'a [Valved], weather: &Weather) -> Option<(Pressure, &'a Valved)> {
    let residuals = residuals(design, weather)?;
    let at = |valve: &Valved| Some(residuals[design.network.nodes[valve.node].parent?]);
    let found = valved.iter().rev().filter_map(|valve| Some((at(valve)?, valve)));
    found.max_by(|a, b| (a.0 / a.1.resets_below).total_cmp(&(b.0 / b.1.resets_below)))
}

/// What every node keeps after the pump side is let down, in one sweep from the pump outwards.
fn residuals(design: &Design, weather: &Weather) -> Option<Vec<Pressure>> {
    let hydraulics = Hydraulics::under(design, weather, &[Season::Cold]);
    let mut all: Vec<Pressure> = Vec::with_capacity(design.network.nodes.len());
    for node in &design.network.nodes {
        let mut here = node.parent.map_or(Pressure::ZERO, |p| all[p]);
        for leg in &node.legs {
            let fluid = hydraulics.fluid(Season::Cold, leg.place)?;
            let bore = bore_of(design.conduits.get(leg.conduit)?)?;
            here += pipe_flow::start_pressure(bore, leg.length.get(), fluid.yield_stress);
        }
        all.push(here);
    }
    Some(all)
}

/// The temperature from which all lines recharge if none is left colder.
fn works_from(design: &Design, valved: &[Valved]) -> Option<Temperature> {
    let recharges = |celsius: f64| {
        let weather = Weather { traced_to: Some(Temperature::from_celsius(celsius)), ..Weather::AS_IS };
        hardest(design, valved, &weather).is_some_and(|(residual, valve)| residual < valve.resets_below)
    };
    let coldest = design
        .conditions
        .places
        .iter()
        .map(|p| p.temperature(Season::Cold).celsius())
        .fold(f64::INFINITY, f64::min);
    let (mut fails, mut works) = (coldest, HOTTEST);
    if !recharges(works) {
        return None;
    }
    while works - fails > STEP {
        let middle = 0.5 * (works + fails);
        if recharges(middle) { works = middle } else { fails = middle }
    }
    Some(Temperature::from_celsius(works))
}

/// No line is heated beyond this for the sake of venting, °C.
const HOTTEST: f64 = 80.0;
/// Nearness of the search, K.
const STEP: f64 = 0.1;

#[cfg(test)]
mod tests {
    use oilway_model::Choice;

    use super::*;
    use crate::design;
    use crate::testing::{bar, catalogue, dairy, hall, spindle};

    /// The dairy with these tubes in main and branches.
    fn with_mains(id: &str) -> Design {
        let mut job = dairy();
        for divider in &mut job.dividers {
            divider.route[0].conduit = Choice::Given(id.to_owned());
        }
        design(&job, catalogue()).unwrap()
    }

    #[test]
    fn the_dairy_does_not_recharge_through_8_mm_nor_through_10_mm() {
        // Reference: 29 bar at bore 8 and 23 bar at bore 10 against a reset at 16 bar, within 5 %.
        for (id, expected) in [("10085", 29.0), ("10086", 23.0)] {
            let verdict = parallel(&with_mains(id), catalogue()).unwrap();
            assert!(!verdict.works);
            assert!((verdict.residual.bar() / expected - 1.0).abs() < 0.05, "{}", verdict.residual.bar());
            assert_eq!(verdict.resets_below, bar(16.0));
            assert!(verdict.point.starts_with("cold belt"));
        }
    }

    #[test]
    fn the_temperature_at_which_it_would_work_is_where_the_residual_meets_the_reset() {
        let design = with_mains("10085");
        let verdict = parallel(&design, catalogue()).unwrap();
        let from = verdict.works_from.unwrap().celsius();
        // By hand: 27 m of 8 mm at one temperature keep 16 bar at 118.5 Pa, which the rows reach at 37.7 °C.
        assert!((from - 37.7).abs() < 0.2, "{from}");
        let residual = |celsius: f64| {
            let weather = Weather { traced_to: Some(Temperature::from_celsius(celsius)), ..Weather::AS_IS };
            hardest(&design, &valved(&design, catalogue()).unwrap(), &weather).unwrap().0
        };
        assert!(residual(from + 0.2) < bar(16.0) && residual(from - 0.2) > bar(16.0));
    }

    #[test]
    fn lines_as_wide_as_it_says_would_just_recharge() {
        let verdict = parallel(&with_mains("10085"), catalogue()).unwrap();
        // 4 τ0 L / D: the residual falls as the bore grows.
        assert!((verdict.residual.bar() / verdict.wider - 16.0).abs() < 1e-9);
        assert!((verdict.bore.millimetres() - 8.0 * verdict.wider).abs() < 1e-9);
    }

    #[test]
    fn oil_keeps_no_pressure_and_recharges() {
        let verdict = parallel(&design(&spindle(), catalogue()).unwrap(), catalogue()).unwrap();
        assert!(verdict.works && verdict.works_from.is_none());
        assert_eq!(verdict.residual, Pressure::ZERO);
    }

    #[test]
    fn a_short_wide_main_recharges_even_with_grease() {
        let mut job = hall();
        job.dividers[0].route[0].conduit = Choice::Given("10086".to_owned());
        let verdict = parallel(&design(&job, catalogue()).unwrap(), catalogue()).unwrap();
        // 4 × 180 Pa × 6 m / 10 mm = 4.3 bar.
        assert!(verdict.works && (verdict.residual.bar() - 4.32).abs() < 0.01);
    }

    #[test]
    fn large_doses_take_the_valve_that_resets_higher() {
        let mut job = hall();
        let rate = |point: &mut oilway_model::Point, factor: f64| {
            let given = point.given.as_mut().unwrap();
            given.quantity = oilway_units::Entry::known(given.quantity.get() * factor);
        };
        // One pin of ten times the need: it takes 0.2 cm³ where the others take 0.02, and both kinds of valve can give that.
        rate(&mut job.points[1], 10.0);

        let design = design(&job, catalogue()).unwrap();
        let valved = valved(&design, catalogue()).unwrap();
        assert_eq!(valved[0].resets_below, bar(16.0));
        assert_eq!(valved[1].resets_below, bar(25.0));
    }
}
