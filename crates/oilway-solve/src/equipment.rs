//! The rest of the package: block, air valve, regulator, disc holder, gauge, controller.

use std::cell::RefCell;
use std::sync::Arc;

use oilway_catalogue::kinds::{
    AirRegulator, AirValve, BlockPlace, BurstDisc, Controller, DiscHolder, Discharge, Drive, Gauge,
    PortBlock, Pump, ValveFunction,
};
use oilway_catalogue::{Catalogue, Internal, Part, Port, Role, Sex};
use oilway_model::{Choice, Job, JointEnd};
use oilway_physics::air::drives::{DriveKind, Fit, ValveKind, verdict};
use oilway_physics::strength;
use oilway_units::{Pressure, Ratio};

use crate::joints::{Joiner, mates};
use crate::layout::price;

/// The chosen part alone, or the best of a kind by a key that sorts it; parts for which the key is none are left out unless chosen.
fn choose<K: Ord>(
    catalogue: &Catalogue,
    kind: &str,
    choice: &Choice<String>,
    key: impl Fn(&Part) -> Option<K>,
) -> Option<Arc<Part>> {
    if let Some(id) = choice.chosen() {
        return catalogue.part(id).cloned();
    }
    let all = catalogue.of_kind(kind).filter_map(|p| key(p).map(|k| (k, p)));
    all.min_by(|a, b| (&a.0, &a.1.id).cmp(&(&b.0, &b.1.id))).map(|(_, p)| Arc::clone(p))
}

/// Whether the block stands away from the reservoir: as said, else if the job draws an inlet line.
pub(crate) fn is_remote(job: &Job) -> bool {
    job.package.remote.chosen().copied().unwrap_or(!job.package.inlet.is_empty())
}

/// The port block: the pump screws into it, it has the place for its mounting, is of the customer's thread family, and cheap.
pub(crate) fn block(job: &Job, catalogue: &Catalogue, pump: &Part) -> Option<Arc<Part>> {
    let wanted = if is_remote(job) { BlockPlace::Remote } else { BlockPlace::OnReservoir };
    let family = job.conditions.site.threads.as_deref();
    choose(catalogue, "port block", &job.package.block, |part| {
        let data = PortBlock::of(part)?;
        let outlet = part.ports.iter().find(|p| p.role == Role::Outlet)?;
        (data.mounting.contains(&wanted) && takes_pump(part, pump))
            .then(|| (is_foreign(&outlet.thread, family), price(part)))
    })
}

/// Whether a pump's pressure side screws into a block.
pub(crate) fn takes_pump(block: &Part, pump: &Part) -> bool {
    let foot = pump.ports.iter().filter(|p| p.role == Role::Outlet).map(end_of);
    let seats: Vec<JointEnd> = block
        .ports
        .iter()
        .filter(|p| p.role == Role::Joint && p.internal == Internal::Pressure)
        .map(end_of)
        .collect();
    foot.into_iter().any(|foot| seats.iter().any(|seat| mates(&foot, seat)))
}

/// A port as an end of a joint.
pub(crate) fn end_of(port: &Port) -> JointEnd {
    JointEnd { thread: Some(port.thread.clone()), sex: port.sex }
}

/// The end with which a device sits in a port: its pressure side if it has one there.
pub(crate) fn mount_of(device: &Part) -> Option<JointEnd> {
    let own = device.ports.iter().find(|p| p.sex == Sex::Male && p.internal == Internal::Pressure);
    own.or(device.ports.first()).map(end_of)
}

/// How many parts it takes to set a device into the port of a block that has this role; none if there is no way.
pub(crate) fn parts_between(block: &Part, role: Role, device: &Part, joiner: &mut Joiner) -> Option<usize> {
    let port = block.ports.iter().find(|p| p.role == role)?;
    joiner.join(&end_of(port), &mount_of(device)?).map(|parts| parts.len())
}

fn is_foreign(thread: &str, family: Option<&str>) -> bool {
    family.is_some_and(|family| !of_family(thread, family))
}

fn mount_is_foreign(job: &Job, part: &Part) -> bool {
    let family = job.conditions.site.threads.as_deref();
    part.ports.first().is_some_and(|port| is_foreign(&port.thread, family))
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
        // A valve that air moves needs a second valve that the controller can switch.
        let not_switched = data.voltage.is_none() && voltage.is_some();
        Some((throttles, fit, not_switched, outlet != inlet, price(part)))
    })
}

/// The air regulator: stands the highest supply, does not throttle the motor, its threads those of the valve; then the price.
pub(crate) fn regulator(
    job: &Job,
    catalogue: &Catalogue,
    pump: &Part,
    valve: Option<&Part>,
) -> Option<Arc<Part>> {
    let pump_data = Pump::of(pump).filter(|p| p.drive.is_air())?;
    let supply = job.conditions.air.as_ref().map_or(Pressure::ZERO, |air| air.possible.get());
    let into = valve.unwrap_or(pump);
    let wanted = into.ports.iter().find(|p| p.role == Role::AirIn).map(|p| p.thread.clone());
    choose(catalogue, "air regulator", &Choice::Open, |part| {
        let data = AirRegulator::of(part)?;
        let throttles =
            pump_data.air_conductance.is_some_and(|own| data.conductance.is_some_and(|c| c < own));
        let outlet = part.ports.iter().find(|p| p.role == Role::AirOut).map(|p| p.thread.clone());
        Some((data.supply_max < supply, throttles, outlet != wanted, price(part)))
    })
}

/// The disc holder: takes the disc and goes into the block; piped where the job leads the discharge away, else an indicator, for a
/// blocked line must be seen.
pub(crate) fn holder(
    job: &Job,
    catalogue: &Catalogue,
    disc: Option<&Part>,
    block: &Part,
    joiner: &mut Joiner,
) -> Option<Arc<Part>> {
    let takes: Vec<String> = disc.and_then(BurstDisc::of).map(|d| d.holder).unwrap_or_default();
    let joiner = RefCell::new(joiner);
    choose(catalogue, "disc holder", &job.package.holder, |part| {
        let data = DiscHolder::of(part)?;
        if disc.is_some() && !takes.contains(&part.id) {
            return None;
        }
        let between = parts_between(block, Role::Relief, part, &mut joiner.borrow_mut());
        let rank = match (job.package.discharge.is_some(), data.discharge) {
            (true, Discharge::Piped) | (false, Discharge::Indicator) => 0,
            (false, Discharge::Open) => 1,
            (false, Discharge::Switch) => 2,
            _ => 3,
        };
        Some((between.is_none(), rank, between, mount_is_foreign(job, part), price(part)))
    })
}

/// Pressure that pulsates with every stroke may use two thirds of a gauge's scale (EN 837-2; memory).
pub(crate) const PULSATING_SHARE: Ratio = Ratio::from_fraction(2.0 / 3.0);

/// The gauge: the smallest scale on which the working pressure stands at two thirds and the highest burst still fits.
pub(crate) fn gauge(
    job: &Job,
    catalogue: &Catalogue,
    block: &Part,
    working: Pressure,
    highest: Pressure,
    joiner: &mut Joiner,
) -> Option<Arc<Part>> {
    let least = strength::gauge_full_scale(working, PULSATING_SHARE).max(highest);
    let joiner = RefCell::new(joiner);
    choose(catalogue, "gauge", &job.package.gauge, |part| {
        let data = Gauge::of(part)?;
        let between = parts_between(block, Role::Gauge, part, &mut joiner.borrow_mut());
        let short = data.full_scale < least;
        // Where none is large enough the largest is the least wrong; the checker says so.
        let scale = whole_pascals(data.full_scale) * if short { -1 } else { 1 };
        Some((between.is_none(), short, scale, between, mount_is_foreign(job, part), price(part)))
    })
}

fn whole_pascals(pressure: Pressure) -> i64 {
    libm::round(pressure.pascals()) as i64
}

/// The controller: none where the machine's own has room for cycle and level switch and the pump; else the cheapest for the supply.
pub(crate) fn controller(job: &Job, catalogue: &Catalogue) -> Option<Arc<Part>> {
    let electric = job.conditions.electric.as_ref()?;
    let machine_has_room =
        electric.inputs.is_some_and(|n| n >= 2) && electric.outputs.is_some_and(|n| n >= 1);
    if job.package.controller.is_open() && machine_has_room {
        return None;
    }
    choose(catalogue, "controller", &job.package.controller, |part| {
        (Controller::of(part)?.voltage == electric.voltage).then(|| price(part))
    })
}

#[cfg(test)]
mod tests {
    use oilway_units::Voltage;

    use super::*;
    use crate::testing::{bar, catalogue, hall, known, without_air};

    fn part(id: &str) -> &'static Arc<Part> {
        catalogue().part(id).unwrap()
    }

    fn joiner() -> Joiner {
        Joiner::new(catalogue())
    }

    #[test]
    fn every_air_driven_pump_of_the_house_gets_a_valve_that_is_right_for_its_drive() {
        for pump in catalogue().of_kind("pump") {
            let drive = Pump::of(pump).unwrap().drive;
            let valve = valve(&hall(), catalogue(), pump);
            match drive_kind(drive) {
                None => assert!(valve.is_none(), "{}: an electric pump has no air valve", pump.id),
                Some(kind) => {
                    let data = AirValve::of(&valve.unwrap()).unwrap();
                    assert_eq!(verdict(kind, valve_kind(data.function)).fit, Fit::Right, "{}", pump.id);
                    assert_eq!(data.voltage, Some(Voltage::from_volts(24.0)));
                }
            }
        }
    }

    #[test]
    fn every_pump_of_the_house_screws_into_the_block_that_is_chosen_for_it() {
        for pump in catalogue().of_kind("pump") {
            let block = block(&hall(), catalogue(), pump).unwrap();
            assert!(takes_pump(&block, pump), "{} into {}", pump.id, block.id);
        }
        assert!(!takes_pump(part("10055"), part("10029")), "M27x2 does not go into M33x2");
    }

    #[test]
    fn the_customers_threads_and_the_place_decide_the_block() {
        let mut job = hall();
        let of = |job: &Job| block(job, catalogue(), part("10029")).unwrap();
        let outlet =
            |block: &Part| block.ports.iter().find(|p| p.role == Role::Outlet).unwrap().thread.clone();
        assert!(outlet(&of(&job)).starts_with("G "));
        job.conditions.site.threads = Some("NPT".to_owned());
        assert!(outlet(&of(&job)).ends_with("NPT"));
        job.conditions.site.threads = None;
        job.package.inlet = vec![crate::testing::leg(0, 1.0)];
        assert!(PortBlock::of(&of(&job)).unwrap().mounting.contains(&BlockPlace::Remote));
    }

    #[test]
    fn the_gauge_shows_the_working_pressure_at_two_thirds_and_keeps_the_burst_on_its_scale() {
        let of = |working: f64, highest: f64| {
            let found = gauge(&hall(), catalogue(), part("10052"), bar(working), bar(highest), &mut joiner());
            Gauge::of(&found.unwrap()).unwrap().full_scale.bar().round()
        };
        // 96.9 bar · 3/2 = 145 bar; the 130 bar disc bursts at 138 at the most: 160 bar serve both.
        assert_eq!(of(96.9, 138.1), 160.0);
        // The 150 bar disc with 5.9 bar of air: 112 · 3/2 = 168 bar.
        assert_eq!(of(112.1, 159.4), 250.0);
        // A low working pressure behind a strong disc: the burst decides.
        assert_eq!(of(20.0, 138.1), 160.0);
        // Beyond all scales the largest is taken.
        assert_eq!(of(1000.0, 1000.0), 400.0);
    }

    #[test]
    fn the_holder_takes_its_disc_and_leads_away_what_the_job_leads_away() {
        let mut job = hall();
        let of = |job: &Job, disc: &str| {
            let found = holder(job, catalogue(), Some(part(disc)), part("10052"), &mut joiner()).unwrap();
            assert!(
                BurstDisc::of(part(disc)).unwrap().holder.contains(&found.id),
                "{disc} into {}",
                found.id
            );
            DiscHolder::of(&found).unwrap().discharge
        };
        assert_eq!(of(&job, "10019"), Discharge::Indicator);
        assert_eq!(of(&job, "10025"), Discharge::Indicator);
        job.package.discharge = Some(known(oilway_units::Length::from_metres(2.0)));
        assert_eq!(of(&job, "10019"), Discharge::Piped);
    }

    #[test]
    fn the_regulator_stands_the_highest_supply_and_does_not_throttle_the_motor() {
        let job = hall();
        for id in ["10029", "10031", "10034"] {
            let pump = part(id);
            let valve = valve(&job, catalogue(), pump);
            let found = regulator(&job, catalogue(), pump, valve.as_deref()).unwrap();
            let (data, own) =
                (AirRegulator::of(&found).unwrap(), Pump::of(pump).unwrap().air_conductance.unwrap());
            assert!(data.supply_max >= bar(8.0) && data.conductance.unwrap() >= own, "{id}");
            let thread =
                |part: &Part, role: Role| part.ports.iter().find(|p| p.role == role).unwrap().thread.clone();
            assert_eq!(thread(&found, Role::AirOut), thread(&valve.unwrap(), Role::AirIn), "{id}");
        }
        assert!(regulator(&job, catalogue(), part("10036"), None).is_none());
    }

    #[test]
    fn a_controller_is_added_only_where_the_machine_has_no_room() {
        let mut job = hall();
        assert!(controller(&job, catalogue()).is_none(), "four inputs and two outputs are enough");
        job.conditions.electric.as_mut().unwrap().inputs = Some(1);
        let found = controller(&job, catalogue()).unwrap();
        assert_eq!(Controller::of(&found).unwrap().voltage, Voltage::from_volts(24.0));
        job.conditions.electric = None;
        assert!(controller(&job, catalogue()).is_none());
    }

    #[test]
    fn thread_families_are_told_apart_by_their_writing() {
        assert!(of_family("G 1/4", "G") && of_family("1/4-18 NPT", "NPT") && of_family("M10x1", "metric"));
        assert!(!of_family("1/4-18 NPT", "G") && !of_family("G 1/4", "metric") && !of_family("G 1/4", "R"));
        assert!(of_family("R 1/4", "R"));
    }

    #[test]
    fn what_is_given_is_kept_whatever_it_is() {
        let mut job = without_air();
        job.package.block = Choice::Given("10053".to_owned());
        job.package.gauge = Choice::Given("10072".to_owned());
        assert_eq!(block(&job, catalogue(), part("10036")).unwrap().id, "10053");
        let found = gauge(&job, catalogue(), part("10053"), bar(300.0), bar(300.0), &mut joiner());
        assert_eq!(found.unwrap().id, "10072");
    }
}
