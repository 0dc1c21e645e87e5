//! The order of the work, from a job to a design.
//!
//! Needs ask for the content of the tails, tails for the bores, bores for the flow and so for the metering, and the
//! metering for the needs: a short round that is walked until the bores no longer change.

use oilway_catalogue::Catalogue;
use oilway_model::{Choice, Control, Design, Job, Package, Principle};
use oilway_physics::{Ledger, pipe_flow};
use oilway_text::{Message, message};
use oilway_units::{Entry, Length, Pressure, Volume};

use crate::conduits::Conduits;
use crate::control::{control, time_out};
use crate::equipment::{controller, gauge, holder};
use crate::evaluate::seasons;
use crate::joints::{Joiner, joints};
use crate::layout::{Layout, layout};
use crate::lines::Bores;
use crate::losses::Losses;
use crate::need::needs;
use crate::obstacle::refuse;
use crate::package::{Power, power};
use crate::principle::parallel;
use crate::reasons::reasons;
use crate::sections::dividers;
use crate::tree::{Meter, TreeMetering};
use crate::{Obstacle, ports};

/// Rounds after which the last bores are kept. Tails only ever grow from round to round, and bores come from a short list, so that the
/// round ends by itself; this is for safety.
const ROUNDS: usize = 20;
/// Tube cut off at each leg: saw, bend and end. Common practice, no source.
const CUTTING: Length = Length::from_millimetres(100.0);
/// Spare discs in the bag (`relief` section 10, common practice).
const SPARE_DISCS: u32 = 2;

/// What a round has found.
struct Round {
    metering: TreeMetering,
    control: Control,
    power: Power,
}

/// Designs a job: every open choice is made, every given one kept.
///
/// # Errors
/// All obstacles that leave no design at all: no divider or section that serves, no part of a kind that is needed. A design that
/// works badly is still returned; the checker says so.
pub fn design(job: &Job, catalogue: &Catalogue) -> Result<Design, Vec<Obstacle>> {
    refuse(job, catalogue)?;
    let layout = layout(job, catalogue)?;
    let mut joiner = Joiner::new(catalogue);
    let mut meter = Meter::new(job, catalogue);
    let mut tails = tails(&layout, None);
    let mut found: Option<Round> = None;
    for _ in 0..ROUNDS {
        let round = round(job, catalogue, &layout, &tails, &mut meter, &mut joiner)?;
        let settled =
            found.as_ref().is_some_and(|before| before.power.bores.chosen == round.power.bores.chosen);
        let wider = self::tails(&layout, Some(&round.power.bores));
        tails.iter_mut().zip(wider).for_each(|(tail, now)| *tail = tail.max(now));
        found = Some(round);
        if settled {
            break;
        }
    }
    let found = found.ok_or_else(|| vec![missing("package.pump", "pump")])?;
    Ok(assemble(job, catalogue, &layout, &found, &mut joiner))
}

/// One round: needs, sections, rhythm, and the package with its bores.
fn round(
    job: &Job,
    catalogue: &Catalogue,
    layout: &Layout,
    tails: &[Volume],
    meter: &mut Meter<'_>,
    joiner: &mut Joiner,
) -> Result<Round, Vec<Obstacle>> {
    let needs = needs(&job.conditions, &job.points, tails, &mut Ledger::off());
    let metering = meter.meter(&needs)?;
    let control = control(job, &metering.rhythm);
    let event = metering.cycle * f64::from(control.cycles);
    let flow = event / job.conditions.limits.event_time.get();
    let losses =
        Losses::new(job, layout, &metering, flow, joiner).ok_or_else(|| vec![no_viscosity_line()])?;
    let power = power(job, catalogue, layout, &metering, &losses, event / control.pause, joiner)
        .ok_or_else(|| vec![missing("package.pump", "pump")])?;
    Ok(Round { metering, control, power })
}

fn missing(at: &str, kind: &str) -> Obstacle {
    Obstacle {
        at: at.to_owned(),
        what: message!("solve-none-in-catalogue", kind = kind),
        cure: message!("solve-add-part"),
    }
}

fn no_viscosity_line() -> Obstacle {
    Obstacle {
        at: "lubricant".to_owned(),
        what: message!("solve-no-viscosity-line"),
        cure: message!("solve-cure-viscosity-line"),
    }
}

/// Content of each point's own line; with the narrowest candidates before any bore is chosen.
fn tails(layout: &Layout, bores: Option<&Bores>) -> Vec<Volume> {
    layout
        .point_nodes
        .iter()
        .map(|&node| {
            let legs = layout.network.nodes[node].legs.iter().enumerate();
            legs.map(|(number, leg)| {
                let pick = bores.map_or(0, |b| b.chosen[node][number]);
                pipe_flow::line_content(
                    layout.conduits[layout.candidates[node][number][pick]].bore,
                    leg.length.get(),
                )
            })
            .sum()
        })
        .collect()
}

fn assemble(job: &Job, catalogue: &Catalogue, layout: &Layout, found: &Round, joiner: &mut Joiner) -> Design {
    let Round { metering, control, power } = found;
    let mut conduits = Conduits::default();
    let network = conduits.network(layout, &power.bores);
    let package = package(job, catalogue, layout, power, &mut conduits, joiner);
    let mut design = Design {
        name: job.name.clone(),
        units: job.units,
        conditions: job.conditions.clone(),
        points: job.points.clone(),
        network,
        conduits: conduits.parts,
        dividers: dividers(job, layout, metering),
        package,
        control: *control,
        joints: Vec::new(),
        reasons: Vec::new(),
        cutting_allowance: Entry::known(CUTTING),
    };
    design.package.devices = ports::plan(&design, catalogue, joiner);
    design.joints = joints(&design, joiner);
    design.control.time_out = time_out(&design, &seasons(&design));
    design.reasons = reasons(job, &design, metering, power, why_principle(job, &design, catalogue));
    design
}

fn package(
    job: &Job,
    catalogue: &Catalogue,
    layout: &Layout,
    power: &Power,
    conduits: &mut Conduits,
    joiner: &mut Joiner,
) -> Package {
    let stall = oilway_catalogue::kinds::Pump::of(&power.pump)
        .map_or(Pressure::ZERO, |p| crate::source::stall(&p, power.setting.unwrap_or(Pressure::ZERO)));
    // An electric pump shows its worst path on the gauge, an air-driven one its stall.
    let working = if power.setting.is_some() { stall } else { power.bores.need.min(stall) };
    let highest = power.disc.as_ref().map_or(stall, |d| d.highest);
    let disc = power.disc.as_ref().map(|d| std::sync::Arc::clone(&d.part));
    let holder = holder(job, catalogue, disc.as_deref(), &power.block, joiner);
    Package {
        place: job.package.place,
        pump: power.pump.clone(),
        reservoir: power.vessel.part.clone(),
        block: power.block.clone(),
        mounting: conduits.mounting(job, layout, &power.block, &power.vessel.part, joiner),
        valve: power.valve.clone(),
        regulator: power.regulator.clone(),
        air_setting: power.setting,
        discharge: conduits.discharge(job, layout, holder.as_deref(), joiner),
        holder,
        disc,
        gauge: gauge(job, catalogue, &power.block, working, highest, joiner),
        controller: controller(job, catalogue),
        devices: Vec::new(),
        spare_discs: SPARE_DISCS,
    }
}

/// Why progressive: where the job leaves it open or wants another principle, what stands for it and against a parallel line.
fn why_principle(job: &Job, design: &Design, catalogue: &Catalogue) -> Message {
    let against = parallel(design, catalogue).map(|verdict| verdict.says);
    match (&job.principle, against) {
        (Choice::Given(Principle::Parallel) | Choice::Pinned(Principle::Parallel), Some(says)) => {
            message!("solve-why-not-parallel", parallel = says)
        }
        (_, Some(says)) if !job.conditions.limits.blockage_noticed => {
            message!("solve-why-not-parallel", parallel = says)
        }
        _ => message!("solve-why-progressive"),
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::testing::{catalogue, dairy, hall, known, spindle, without_air};
    use crate::{evaluate, shares};

    #[test]
    fn the_same_job_twice_gives_the_same_bytes() {
        for job in [hall(), dairy(), spindle(), without_air()] {
            let bytes = || format!("{:?}", design(&job, catalogue()).unwrap());
            assert_eq!(bytes(), bytes(), "{}", job.name);
        }
    }

    #[test]
    fn the_needs_that_were_served_are_those_of_the_finished_tails() {
        // The round ends with tails that are at least those of the design: nobody ends below his band.
        let design = design(&dairy(), catalogue()).unwrap();
        for delivery in evaluate(&design, &mut Ledger::off()).deliveries {
            assert!(delivery.delivered >= delivery.required * (delivery.band_low.fraction() - 1e-9));
        }
    }

    #[test]
    fn an_unserved_divider_names_itself_and_the_divider_above_what_it_waits_for() {
        let mut job = dairy();
        // One point of the stacker wants a thousand times the others: no section serves both.
        let given =
            job.points.iter_mut().find(|p| p.name == "stacker screw 1").unwrap().given.as_mut().unwrap();
        given.quantity = known(given.quantity.get() * 3000.0);
        let obstacles = design(&job, catalogue()).unwrap_err();
        let at: Vec<&str> = obstacles.iter().map(|o| o.at.as_str()).collect();
        assert_eq!(at, ["divider.junction post", "divider.stacker"]);
        assert_eq!(obstacles[0].what.key, "solve-divider-below-failed");
    }

    #[test]
    fn an_empty_catalogue_designs_nothing_and_says_what_is_missing() {
        let obstacles = design(&hall(), &Catalogue::default()).unwrap_err();
        assert!(!obstacles.is_empty());
        assert!(obstacles.iter().all(|o| o.what.key == "solve-no-line-at-all"));
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(16))]
        #[test]
        fn a_larger_need_is_served_by_more_lubricant(factor in 1.0_f64..8.0) {
            let small = design(&hall(), catalogue()).unwrap();
            let mut job = hall();
            for point in &mut job.points {
                let given = point.given.as_mut().unwrap();
                given.quantity = known(given.quantity.get() * factor);
            }
            let large = design(&job, catalogue()).unwrap();
            let rate = |d: &Design| { let s = shares(d); s.first_cycle / s.period };
            // Pauses are rounded to whole minutes, which may give a few percent more to the smaller.
            prop_assert!(rate(&large) >= rate(&small) * 0.95);
        }
    }
}
