//! An air valve that does not fit the drive of the pump.

use oilway_catalogue::kinds::{Drive, ValveFunction};
use oilway_model::Finding;
use oilway_physics::air::drives::{DriveKind, Fit, ValveKind, verdict};
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    ValveWrongForDrive = "valve-wrong-for-drive",
    title: "The air valve does not fit the drive of the pump",
    finds: "A valve that cannot feed and vent the air motor as its drive needs, or none at all on an air-driven pump. Pairs that serve under a condition are a caution.",
    why: "A spring-return pump behind a valve that does not vent makes one stroke; a motor that changes sides by itself behind a valve that is open at rest never stops.",
    source: "iso-11727", "what each position connects; port numbers second-hand", SecondHand,
    example: "A two-port valve on a spring-return pump: one stroke, then nothing. A three-port valve that is closed at rest: 1 to the supply, 2 to the motor, 3 left open.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let Some(drive) = facts.views.pump.as_ref().and_then(|pump| kind_of_drive(pump.drive)) else {
        return Vec::new();
    };
    let Some(valve) = &facts.views.valve else {
        let what = message!("check-valve-missing", drive = drive.name());
        let draft = Draft::stop(rule, "package.valve", what, verdict(drive, drive.right_valve()).cure);
        return draft.cautions(&["S07"]).alone();
    };
    let valve = kind_of_valve(valve.function);
    let judged = verdict(drive, valve);
    let make = match judged.fit {
        Fit::Right => return Vec::new(),
        Fit::WithCare => Draft::caution,
        Fit::Wrong => Draft::stop,
    };
    let what = message!(
        "check-valve-wrong-for-drive",
        drive = drive.name(),
        valve = valve.name(),
        symptom = judged.symptom
    );
    make(rule, "package.valve", what, judged.cure).cautions(&["S07", "S42"]).alone()
}

fn kind_of_drive(drive: Drive) -> Option<DriveKind> {
    match drive {
        Drive::SpringReturn => Some(DriveKind::SpringReturn),
        Drive::DoubleActing => Some(DriveKind::DoubleActing),
        Drive::SelfReversing => Some(DriveKind::SelfReversing),
        Drive::Electric => None,
    }
}

fn kind_of_valve(function: ValveFunction) -> ValveKind {
    match function {
        ValveFunction::TwoTwo => ValveKind::TwoTwo,
        ValveFunction::ThreeTwoClosed => ValveKind::ThreeTwoClosed,
        ValveFunction::ThreeTwoOpen => ValveKind::ThreeTwoOpen,
        ValveFunction::FourTwo => ValveKind::FourTwo,
        ValveFunction::FiveTwo => ValveKind::FiveTwo,
    }
}

#[cfg(test)]
mod tests {
    use crate::testing::{severity, swap};
    use oilway_model::Severity;

    #[test]
    fn each_pair_of_drive_and_valve_is_judged() {
        let pair = |pump: &'static str, valve: &'static str| {
            severity("valve-wrong-for-drive", move |d| {
                swap(&mut d.package.pump, pump);
                swap(d.package.valve.as_mut().unwrap(), valve);
            })
        };
        // Self-reversing 10029, spring return 10031, double acting 10033; 2/2 10280, 3/2 closed 10283, open 10286, 5/2 10290.
        assert_eq!(pair("10029", "10283"), None);
        assert_eq!(pair("10029", "10280"), Some(Severity::Caution));
        assert_eq!(pair("10029", "10286"), Some(Severity::Stop));
        assert_eq!(pair("10031", "10280"), Some(Severity::Stop));
        assert_eq!(pair("10033", "10283"), Some(Severity::Stop));
        assert_eq!(pair("10033", "10290"), None);
    }

    #[test]
    fn an_air_pump_without_a_valve_never_stops_and_an_electric_one_wants_none() {
        assert_eq!(severity("valve-wrong-for-drive", |d| d.package.valve = None), Some(Severity::Stop));
        let electric = severity("valve-wrong-for-drive", |d| {
            d.package.valve = None;
            swap(&mut d.package.pump, "10036");
        });
        assert_eq!(electric, None);
    }
}
