//! The rest of the package: block, air valve, disc holder, gauge, controller.

use std::sync::Arc;

use oilway_catalogue::kinds::{AirValve, BlockPlace, BurstDisc, Controller, Discharge, DiscHolder, Drive, Gauge, PortBlock, Pump, ValveFunction};
use oilway_catalogue::{Catalogue, Part, Role};
use oilway_model::{Choice, Job};
use oilway_physics::air::drives::{DriveKind, Fit, ValveKind, verdict};
use oilway_physics::strength;
use oilway_units::{Pressure, Ratio};

use crate::layout::price;

/// The chosen part alone, or the best of a kind by a key that sorts it; parts for which the key is none are left out unless chosen.
fn choose<K: Ord>(
    catalogue: &Catalogue, kind: &str, choice: &Choice<String>, key: impl Fn(&Part) -> Option<K>,
) -> Option<Arc<Part>> {
    if let Some(id) = choice.chosen() {
        return catalogue.part(id).cloned();
    }
    let all = catalogue.of_kind(kind).filter_map(|p| key(p).map(|k| (k, p)));
    all.min_by(|a, b| (&a.0, &a.1.id).cmp(&(&b.0, &b.1.id))).map(|(_, p)| Arc::clone(p))
}

/// The port block: of the customer's thread family, with the place for its mounting.
pub(crate) fn block(job: &Job, catalogue: &Catalogue) -> Option<Arc<Part>> {
    let remote = job.package.remote.chosen().copied().unwrap_or(false);
    let wanted = if remote { BlockPlace::Remote } else { BlockPlace::OnReservoir };
    let family = job.conditions.site.threads.clone();
    choose(catalogue, "port block", &job.package.block, |part| {
        let data = PortBlock::of(part)?;
        let outlet = part.ports.iter().find(|p| p.role == Role::Outlet)?;
        let foreign = family.as_ref().is_some_and(|f| !of_family(&outlet.thread, f));
        data.mounting.contains(&wanted).then(|| (foreign, price(part)))
    })
}

/// Whether a thread is of the family that the customer names.
pub(crate) fn of_family(thread: &str, family: &str) -> bool {
    match family {
        "NPT" => thread.ends_with("NPT"),
        "metric" => thread.starts_with('M'),
        other => thread.starts_with(other) && thread[other.len()..].starts_with(' '),
    }
}

/// How the drive table of physics calls a drive; none for an electric one.
pub(crate) fn drive_kind(drive: Drive) -> Option<DriveKind> {
    match drive {
        Drive::SpringReturn => Some(DriveKind::SpringReturn),
        Drive::DoubleActing => Some(DriveKind::DoubleActing),
        Drive::SelfReversing => Some(DriveKind::SelfReversing),
        Drive::Electric => None,
    }
}

/// How the drive table of physics calls a valve.
pub(crate) fn valve_kind(function: ValveFunction) -> ValveKind {
    match function {
        ValveFunction::TwoTwo => ValveKind::TwoTwo,
        ValveFunction::ThreeTwoClosed => ValveKind::ThreeTwoClosed,
        ValveFunction::ThreeTwoOpen => ValveKind::ThreeTwoOpen,
        ValveFunction::FourTwo => ValveKind::FourTwo,
        ValveFunction::FiveTwo => ValveKind::FiveTwo,
    }
}

/// The air valve: right for the drive, of the supply's voltage, with a conductance that does not throttle the motor.
pub(crate) fn valve(job: &Job, catalogue: &Catalogue, pump: &Part) -> Option<Arc<Part>> {
    let pump_data = Pump::of(pump)?;
    let drive = drive_kind(pump_data.drive)?;
    let inlet = pump.ports.iter().find(|p| p.role == Role::AirIn).map(|p| p.thread.clone());
    let voltage = job.conditions.electric.as_ref().map(|e| e.voltage);
    choose(catalogue, "air valve", &job.package.valve, |part| {
        let data = AirValve::of(part)?;
        let fit = match verdict(drive, valve_kind(data.function)).fit {
            Fit::Right => 0,
            Fit::WithCare => 1,
            Fit::Wrong => return None,
        };
        if data.voltage.is_some() && data.voltage != voltage {
            return None;
        }
        let throttles = pump_data.air_conductance.is_some_and(|own| data.conductance < own);
        let outlet = part.ports.iter().find(|p| p.role == Role::AirOut).map(|p| p.thread.clone());
        Some((throttles, fit, outlet != inlet, price(part)))
    })
}

/// The disc holder: piped where the job leads the discharge away, else an indicator where a blocked line must be seen.
pub(crate) fn holder(job: &Job, catalogue: &Catalogue, disc: Option<&Part>) -> Option<Arc<Part>> {
    let takes: Vec<String> = disc.and_then(BurstDisc::of).map(|d| d.holder).unwrap_or_default();
    choose(catalogue, "disc holder", &job.package.holder, |part| {
        let data = DiscHolder::of(part)?;
        if disc.is_some() && !takes.contains(&part.id) {
            return None;
        }
        let rank = match (job.package.discharge.is_some(), data.discharge) {
            (true, Discharge::Piped) | (false, Discharge::Indicator) => 0,
            (false, Discharge::Open) => 1,
            (false, Discharge::Switch) => 2,
            _ => 3,
        };
        let foreign = job.conditions.site.threads.as_ref().is_some_and(|f| !part.ports.first().is_some_and(|p| of_family(&p.thread, f)));
        Some((rank, foreign, price(part)))
    })
}

/// Pressure that pulsates with every stroke may use two thirds of a gauge's scale (EN 837-2; memory).
pub(crate) const PULSATING_SHARE: Ratio = Ratio::from_fraction(2.0 / 3.0);

/// The gauge: the smallest scale on which the working pressure stands at two thirds and the highest burst still fits.
pub(crate) fn gauge(job: &Job, catalogue: &Catalogue, working: Pressure, highest: Pressure) -> Option<Arc<Part>> {
    let least = strength::gauge_full_scale(working, PULSATING_SHARE).max(highest);
    choose(catalogue, "gauge", &job.package.gauge, |part| {
        let data = Gauge::of(part)?;
        let foreign = job.conditions.site.threads.as_ref().is_some_and(|f| !part.ports.first().is_some_and(|p| of_family(&p.thread, f)));
        (data.full_scale >= least).then(|| (whole_pascals(data.full_scale), foreign, price(part)))
    })
}

fn whole_pascals(pressure: Pressure) -> i64 {
    libm::round(pressure.pascals()) as i64
}

/// The controller: none where the machine's own has room for cycle and level switch and the pump; else the cheapest for the supply.
pub(crate) fn controller(job: &Job, catalogue: &Catalogue) -> Option<Arc<Part>> {
    let electric = job.conditions.electric.as_ref()?;
    let machine_has_room = electric.inputs.is_some_and(|n| n >= 2) && electric.outputs.is_some_and(|n| n >= 1);
    if job.package.controller.is_open() && machine_has_room {
        return None;
    }
    choose(catalogue, "controller", &job.package.controller, |part| {
        (Controller::of(part)?.voltage == electric.voltage).then(|| price(part))
    })
}
