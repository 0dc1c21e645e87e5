//! The overpressure window of a finished design, and what its relief path holds.

use std::collections::BTreeSet;
use std::sync::Arc;

use oilway_catalogue::Part;
use oilway_catalogue::kinds::{DiscHolder, Drive, Pump};
use oilway_model::{Design, Filling, Protection, Season, SeasonResult};
use oilway_physics::{disc, pipe_flow};
use oilway_units::{Flow, Pressure, Ratio};

use crate::hydraulics::{Hydraulics, bore_of, leg_loss};
use crate::protection::DiscHere;
use crate::source;

/// Highest working pressure at the disc: an air-driven pump stands against a shut line at its stall pressure, an electric one
/// goes no higher than the worst path asks.
pub(crate) fn working(design: &Design, seasons: &[SeasonResult]) -> Pressure {
    let Some(pump) = Pump::of(&design.package.pump) else { return Pressure::ZERO };
    if pump.drive.is_air() {
        return source::stall(&pump, design.package.air_setting.unwrap_or(Pressure::ZERO));
    }
    let limit = source::stall(&pump, Pressure::ZERO);
    let peaks = seasons.iter().flat_map(|s| &s.paths).map(|p| p.start_rested.max(p.at_pump));
    peaks.fold(Pressure::ZERO, Pressure::max).min(limit)
}

/// Every part that the disc must protect, each once, from the lines to the package.
pub(crate) fn protected(design: &Design) -> Vec<Arc<Part>> {
    let mut all: Vec<Arc<Part>> = Vec::new();
    let mut seen: BTreeSet<&str> = BTreeSet::new();
    let package = &design.package;
    let legs = design.network.nodes.iter().flat_map(|n| &n.legs);
    let mut in_use = vec![false; design.conduits.len()];
    legs.for_each(|leg| in_use.iter_mut().skip(leg.conduit).take(1).for_each(|used| *used = true));
    let lines = design.conduits.iter().zip(&in_use).filter(|(_, used)| **used).map(|(part, _)| part);
    let bodies = design.dividers.iter().map(|d| &d.body);
    let joints = design.joints.iter().flat_map(|j| &j.parts);
    let held =
        package.devices.iter().filter(|d| d.sees_pressure()).flat_map(|d| &d.holds).filter_map(|f| match f {
            Filling::Part(part) => Some(part),
            Filling::OpenByIntent(_) | Filling::Nothing => None,
        });
    for part in lines.chain(bodies).chain(joints).chain([&package.pump, &package.block]).chain(held) {
        if seen.insert(&part.id) {
            all.push(Arc::clone(part));
        }
    }
    all
}

/// The weakest of them and its rating; of equals the one that comes first on the way from the lines to the package.
fn weakest(design: &Design) -> (String, Pressure) {
    let rated = protected(design).into_iter().filter_map(|part| Some((part.kind.rating(&part)?, part)));
    let weakest = rated.min_by(|a, b| a.0.total_cmp(&b.0));
    weakest
        .map_or((String::new(), Pressure::from_bar(1e4)), |(rating, part)| (part.description.clone(), rating))
}

/// The window.
pub(crate) fn protection(
    design: &Design,
    hydraulics: &Hydraulics<'_>,
    seasons: &[SeasonResult],
) -> Protection {
    let working = working(design, seasons);
    let weakest = weakest(design);
    let here =
        design.package.disc.as_ref().and_then(|d| DiscHere::new(d, &design.conditions, design.package.place));
    let (window_low, window_high) = window(here.as_ref(), working, weakest.1);
    let flow = seasons.iter().map(|s| s.pump.flow_limit).fold(Flow::ZERO, Flow::max);
    let setting = here.as_ref().and_then(|d| highest_setting(design, d));
    Protection {
        working,
        lowest_burst: here.as_ref().map(|d| d.lowest),
        highest_burst: here.as_ref().map(|d| d.highest),
        steady_maximum: here.as_ref().map(|d| d.steady),
        window_low,
        window_high,
        weakest,
        relieving: relieving(design, hydraulics, flow),
        stays: stays(design, hydraulics),
        highest_setting: setting,
    }
}

/// The tolerance, ratio and factors where no disc is chosen yet: 5 %, 0.70, no range, no temperature.
pub(crate) const NO_DISC: (f64, f64) = (0.05, 0.70);

fn window(here: Option<&DiscHere>, working: Pressure, rating: Pressure) -> (Pressure, Pressure) {
    let one = Ratio::from_fraction(1.0);
    let (tolerance, ratio, hot, cold, plus, minus) = here.map_or(
        (
            Ratio::from_fraction(NO_DISC.0),
            Ratio::from_fraction(NO_DISC.1),
            one,
            one,
            Ratio::ZERO,
            Ratio::ZERO,
        ),
        |d| {
            (
                d.data.tolerance,
                d.data.ratio,
                d.hot_factor,
                d.cold_factor,
                d.data.range_plus,
                d.data.range_minus,
            )
        },
    );
    let low = disc::window_low(working, Pressure::ZERO, ratio, tolerance, hot, minus);
    let high = disc::window_high(rating, Pressure::ZERO, tolerance, cold, plus);
    (low, high)
}

/// The highest air setting at which the pump stalls at the disc's steady maximum.
fn highest_setting(design: &Design, disc: &DiscHere) -> Option<Pressure> {
    let pump = Pump::of(&design.package.pump)?;
    if pump.drive == Drive::Electric {
        return None;
    }
    let per_bar = source::stall(&pump, Pressure::from_bar(1.0)).bar();
    let exact = disc.steady.bar() / per_bar.max(1e-9);
    let step = design.package.regulator.as_ref().and_then(|part| part.quantity::<Pressure>("step"));
    Some(Pressure::from_bar(step.map_or(exact, |s| libm::floor(exact / s.bar() + 1e-9) * s.bar())))
}

/// The pressure that the pump holds while the disc is open and the pump runs free: hole, discharge line, indicator.
fn relieving(design: &Design, hydraulics: &Hydraulics<'_>, flow: Flow) -> Option<Pressure> {
    let holder = DiscHolder::of(design.package.holder.as_ref()?)?;
    let fluid = hydraulics.fluid(Season::Cold, design.package.place)?;
    let hole = if fluid.is_newtonian() {
        disc::hole_drop(holder.hole, holder.land, flow, fluid.density, fluid.viscosity())
    } else {
        fluid.drop(holder.hole, holder.land + pipe_flow::end_length(holder.hole), flow)
    };
    let line: Pressure = design
        .package
        .discharge
        .iter()
        .filter_map(|leg| {
            let bore = bore_of(design.conduits.get(leg.conduit)?)?;
            Some(leg_loss(
                hydraulics.fluid(Season::Cold, leg.place)?,
                bore,
                leg.length.get(),
                flow,
                Pressure::ZERO,
            ))
        })
        .sum();
    Some(hole + line + holder.opens_at.unwrap_or_default())
}

/// The pressure that stays at the far end of the main after the disc has burst and the pump has stopped: the yield of the
/// lubricant holds it in hole, discharge line and main alike.
fn stays(design: &Design, hydraulics: &Hydraulics<'_>) -> Option<Pressure> {
    let holder = DiscHolder::of(design.package.holder.as_ref()?)?;
    let fluid = hydraulics.fluid(Season::Cold, design.package.place)?;
    let hole = pipe_flow::start_pressure(
        holder.hole,
        holder.land + pipe_flow::end_length(holder.hole),
        fluid.yield_stress,
    );
    let line: Pressure = design
        .package
        .discharge
        .iter()
        .filter_map(|leg| {
            let bore = bore_of(design.conduits.get(leg.conduit)?)?;
            Some(pipe_flow::start_pressure(
                bore,
                leg.length.get(),
                hydraulics.fluid(Season::Cold, leg.place)?.yield_stress,
            ))
        })
        .sum();
    let mains = design.dividers.iter().filter_map(|d| hydraulics.path(Season::Cold, d.node, Flow::ZERO));
    let main = mains.map(|p| p.yielding).fold(Pressure::ZERO, Pressure::max);
    Some(hole + line + main)
}

#[cfg(test)]
mod tests {
    use oilway_model::Choice;
    use oilway_testkit::published;
    use oilway_units::Length;

    use super::*;
    use crate::testing::{bar, catalogue, dairy, hall, hose, known, without_air};
    use crate::{design, evaluate};
    use oilway_physics::Ledger;

    /// A disc as a worked case describes it, in the clothes of one of the house range.
    fn disc_of(check: &oilway_testkit::Check) -> DiscHere {
        let part = catalogue().part("10019").unwrap();
        let job = hall();
        let mut here = DiscHere::new(part, &job.conditions, 0).unwrap();
        here.data.nominal = check.given("specified");
        here.data.tolerance = Ratio::from_percent(5.0);
        here.data.ratio = check.given("ratio");
        here.data.range_plus = check.given("range_plus");
        here.data.range_minus = check.given("range_minus");
        here.hot_factor = check.given("hot_factor");
        here.cold_factor = check.given("cold_factor");
        here
    }

    #[test]
    fn the_windows_are_those_of_the_worked_cases() {
        let mut tried = 0;
        for check in published("disc/ladder") {
            // A design here discharges into the open or a reservoir: no back pressure before the burst.
            if check.given::<Pressure>("back_high") > Pressure::ZERO {
                continue;
            }
            let disc = disc_of(&check);
            let (low, high) = window(Some(&disc), check.given("working"), check.given("rating"));
            check.holds("window_low", low);
            check.holds("window_high", high);
            tried += 1;
        }
        assert!(tried >= 20, "{tried} of the 26 cases have no back pressure");
    }

    fn protected_of(job: &oilway_model::Job) -> (Design, Protection) {
        let design = design(job, catalogue()).unwrap();
        let protection = evaluate(&design, &mut Ledger::off()).protection;
        (design, protection)
    }

    #[test]
    fn the_hose_of_160_bar_is_the_weakest_part_of_the_dairy() {
        let (_, protection) = protected_of(&dairy());
        assert_eq!(protection.weakest.1, bar(160.0));
        assert!(protection.weakest.0.starts_with("Hose"), "{}", protection.weakest.0);
    }

    #[test]
    fn a_part_counts_only_where_pressure_reaches_it() {
        let (design, _) = protected_of(&hall());
        let counted: Vec<String> = protected(&design).iter().map(|p| p.kind.id().to_owned()).collect();
        for kind in ["tube", "divider", "fitting", "pump", "port block", "gauge", "disc holder", "plug"] {
            assert!(counted.iter().any(|k| k == kind), "{kind} is left out of {counted:?}");
        }
        for kind in ["reservoir", "breather", "filling coupling", "silencer", "air valve"] {
            assert!(!counted.iter().any(|k| k == kind), "{kind} sees no lubricant pressure");
        }
    }

    #[test]
    fn a_weaker_line_anywhere_closes_the_window_from_above() {
        let mut job = hall();
        let (_, before) = protected_of(&job);
        job.points[3].route.push(hose(1, 1.0));
        job.conditions.limits.food = true;
        let (_, after) = protected_of(&job);
        assert!(after.weakest.1 <= before.weakest.1);
        assert!(after.window_high <= before.window_high);
    }

    #[test]
    fn an_air_pump_works_at_its_stall_and_an_electric_one_at_its_worst_path() {
        let (design, protection) = protected_of(&hall());
        let pump = Pump::of(&design.package.pump).unwrap();
        assert_eq!(protection.working, source::stall(&pump, design.package.air_setting.unwrap()));
        let (design, protection) = protected_of(&without_air());
        let answer = evaluate(&design, &mut Ledger::off());
        let paths = answer.seasons.iter().flat_map(|s| &s.paths);
        let peak = paths.map(|p| p.start_rested.max(p.at_pump)).fold(Pressure::ZERO, Pressure::max);
        assert_eq!(protection.working, peak);
        assert!(protection.highest_setting.is_none());
    }

    #[test]
    fn a_long_discharge_line_holds_more_pressure_and_keeps_some() {
        let mut job = hall();
        let of = |job: &oilway_model::Job| {
            let protection = protected_of(job).1;
            (protection.relieving.unwrap(), protection.stays.unwrap())
        };
        job.package.discharge = Some(known(Length::from_metres(1.0)));
        let short = of(&job);
        job.package.discharge = Some(known(Length::from_metres(5.0)));
        let long = of(&job);
        assert!(long.0 > short.0 && long.1 > short.1);
        // 4 m more of the widest line that goes into the holder, at the pump's coldest 10 °C.
        let (design, _) = protected_of(&job);
        let bore = bore_of(&design.conduits[design.package.discharge[0].conduit]).unwrap();
        let fluid = job.conditions.lubricant.at(oilway_units::Temperature::from_celsius(10.0)).unwrap();
        let more = 4.0 * fluid.yield_stress.pascals() * 4.0 / bore.metres();
        assert!(((long.1 - short.1).pascals() / more - 1.0).abs() < 1e-9);
    }

    #[test]
    fn the_highest_setting_is_a_step_below_the_steady_maximum() {
        for disc in ["10017", "10018", "10019", "10020"] {
            let mut job = hall();
            job.package.pump = Choice::Given("10029".to_owned());
            job.package.disc = Choice::Given(disc.to_owned());
            let (_, protection) = protected_of(&job);
            let setting = protection.highest_setting.unwrap().bar();
            let steady = protection.steady_maximum.unwrap().bar();
            assert!(setting * 19.0 <= steady + 1e-9 && (setting + 0.1) * 19.0 > steady, "{disc}: {setting}");
        }
    }
}
