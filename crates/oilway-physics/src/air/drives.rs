//! Which air valve fits which drive, and what a wrong pair does.
//!
//! Find the drive from three observations with [`drive_of`], then read the [`verdict`] on the valve. Every pair has one.
//! Port numbers are those of ISO 11727: 1 supply, 2 and 4 outlets, 3 and 5 exhausts (3 of 2, 5 of 4).

use oilway_text::Message;

use crate::{Source, Standing};

/// How an air motor comes back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum DriveKind {
    /// One air chamber; a spring, a constant low air or the lubricant itself returns the piston once the chamber is vented.
    SpringReturn,
    /// Two air chambers that must be driven and vented in turn from outside.
    DoubleActing,
    /// Reverses itself by a pilot or a trip rod; wants air that is switched on and off.
    SelfReversing,
}

/// The kinds of air valves: number of ports and positions, and what they do at rest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ValveKind {
    /// Two ports: opens and shuts, never vents.
    TwoTwo,
    /// Three ports, closed and venting at rest.
    ThreeTwoClosed,
    /// Three ports, open at rest.
    ThreeTwoOpen,
    /// Four ports, one exhaust for both outlets, spring return.
    FourTwo,
    /// Five ports, spring return.
    FiveTwo,
    /// Five ports, two coils: stays where it was put.
    FiveTwoTwoCoils,
    /// Five ports, three positions, all ports shut in the middle.
    FiveThreeShut,
    /// Five ports, three positions, both outlets vented in the middle.
    FiveThreeVented,
    /// Five ports, three positions, both outlets under pressure in the middle.
    FiveThreePressed,
}

impl DriveKind {
    /// All kinds of drives.
    pub const ALL: [DriveKind; 3] =
        [DriveKind::SpringReturn, DriveKind::DoubleActing, DriveKind::SelfReversing];

    /// What it is called.
    pub const fn name(self) -> Message {
        Message::new(match self {
            DriveKind::SpringReturn => "physics-drive-spring-return",
            DriveKind::DoubleActing => "physics-drive-double-acting",
            DriveKind::SelfReversing => "physics-drive-self-reversing",
        })
    }

    /// The valve that it needs.
    pub const fn right_valve(self) -> ValveKind {
        match self {
            DriveKind::SpringReturn | DriveKind::SelfReversing => ValveKind::ThreeTwoClosed,
            DriveKind::DoubleActing => ValveKind::FiveTwo,
        }
    }
}

impl ValveKind {
    /// All kinds of valves.
    pub const ALL: [ValveKind; 9] = [
        ValveKind::TwoTwo,
        ValveKind::ThreeTwoClosed,
        ValveKind::ThreeTwoOpen,
        ValveKind::FourTwo,
        ValveKind::FiveTwo,
        ValveKind::FiveTwoTwoCoils,
        ValveKind::FiveThreeShut,
        ValveKind::FiveThreeVented,
        ValveKind::FiveThreePressed,
    ];

    /// What it is called.
    pub const fn name(self) -> Message {
        Message::new(match self {
            ValveKind::TwoTwo => "physics-valve-two-two",
            ValveKind::ThreeTwoClosed => "physics-valve-three-two-closed",
            ValveKind::ThreeTwoOpen => "physics-valve-three-two-open",
            ValveKind::FourTwo => "physics-valve-four-two",
            ValveKind::FiveTwo => "physics-valve-five-two",
            ValveKind::FiveTwoTwoCoils => "physics-valve-five-two-two-coils",
            ValveKind::FiveThreeShut => "physics-valve-five-three-shut",
            ValveKind::FiveThreeVented => "physics-valve-five-three-vented",
            ValveKind::FiveThreePressed => "physics-valve-five-three-pressed",
        })
    }
}

/// The drive by what can be seen of it: whether it has one air connection or more, whether a spring returns it, whether it
/// reverses itself while the air stays on. Nothing where the observations contradict each other: look again.
///
/// ```
/// use oilway_physics::air::drives::{DriveKind, drive_of};
///
/// assert_eq!(drive_of(2, false, false), Some(DriveKind::DoubleActing));
/// assert_eq!(drive_of(0, false, false), None);
/// ```
pub const fn drive_of(air_connections: u8, spring_return: bool, reverses_itself: bool) -> Option<DriveKind> {
    match (air_connections, spring_return, reverses_itself) {
        (1 | 2, false, true) => Some(DriveKind::SelfReversing),
        (1, _, false) => Some(DriveKind::SpringReturn),
        (2, false, false) => Some(DriveKind::DoubleActing),
        _ => None,
    }
}

/// Whether a valve serves a drive.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fit {
    /// It does.
    Right,
    /// It does under the condition that the cure names.
    WithCare,
    /// It does not.
    Wrong,
}

/// The judgement on one pair of drive and valve.
#[derive(Clone, Debug, PartialEq)]
pub struct Verdict {
    /// Whether the valve serves the drive.
    pub fit: Fit,
    /// What is seen at the machine.
    pub symptom: Message,
    /// What to connect, plug or change.
    pub cure: Message,
    /// Where the judgement comes from.
    pub sources: &'static [Source],
}

/// The judgement on this drive with this valve.
///
/// ```
/// use oilway_physics::air::drives::{DriveKind, Fit, ValveKind, verdict};
///
/// let judged = verdict(DriveKind::SpringReturn, ValveKind::TwoTwo);
/// assert_eq!(judged.fit, Fit::Wrong);
/// assert_eq!(judged.symptom.key, "physics-air-one-stroke-held");
/// ```
pub const fn verdict(drive: DriveKind, valve: ValveKind) -> Verdict {
    let (fit, symptom, cure) = match drive {
        DriveKind::SpringReturn => spring_return(valve),
        DriveKind::DoubleActing => double_acting(valve),
        DriveKind::SelfReversing => self_reversing(valve),
    };
    Verdict { fit, symptom: Message::new(symptom), cure: Message::new(cure), sources: SOURCES }
}

/// What has to be said before anybody touches an air motor.
pub const fn caution() -> Message {
    Message::new("physics-air-caution")
}

const SOURCES: &[Source] = &[
    Source { key: "iso-11727", place: "port numbers", standing: Standing::SecondHand },
    Source { key: "own-derivation", place: "what each position connects", standing: Standing::Own },
    Source {
        key: "common-practice",
        place: "monostable valves for timed lubrication",
        standing: Standing::CommonPractice,
    },
];

type Row = (Fit, &'static str, &'static str);

const CLOSED: &str = "physics-air-cure-three-two-closed";
const FIVE_TWO: &str = "physics-air-cure-five-two";

const fn spring_return(valve: ValveKind) -> Row {
    match valve {
        ValveKind::TwoTwo => (Fit::Wrong, "physics-air-one-stroke-held", CLOSED),
        ValveKind::ThreeTwoClosed => (Fit::Right, "physics-air-runs", "physics-air-cure-ports-three"),
        ValveKind::ThreeTwoOpen => (Fit::Wrong, "physics-air-pressed-at-rest", CLOSED),
        ValveKind::FourTwo => {
            (Fit::WithCare, "physics-air-runs-one-outlet", "physics-air-cure-ports-four-as-three")
        }
        ValveKind::FiveTwo => {
            (Fit::WithCare, "physics-air-runs-one-outlet", "physics-air-cure-ports-five-as-three")
        }
        ValveKind::FiveTwoTwoCoils => (Fit::WithCare, "physics-air-stays-on-power-cut", CLOSED),
        ValveKind::FiveThreeShut => (Fit::Wrong, "physics-air-one-stroke-held", CLOSED),
        ValveKind::FiveThreeVented => {
            (Fit::WithCare, "physics-air-runs-one-outlet", "physics-air-cure-ports-five-as-three")
        }
        ValveKind::FiveThreePressed => (Fit::Wrong, "physics-air-pressed-at-rest", CLOSED),
    }
}

const fn double_acting(valve: ValveKind) -> Row {
    match valve {
        ValveKind::TwoTwo | ValveKind::ThreeTwoClosed | ValveKind::ThreeTwoOpen => {
            (Fit::Wrong, "physics-air-one-stroke-never-back", FIVE_TWO)
        }
        ValveKind::FourTwo => (Fit::Right, "physics-air-runs-switched", "physics-air-cure-ports-four"),
        ValveKind::FiveTwo => (Fit::Right, "physics-air-runs-switched", "physics-air-cure-ports-five"),
        ValveKind::FiveTwoTwoCoils => (Fit::WithCare, "physics-air-half-stroke-on-power-cut", FIVE_TWO),
        ValveKind::FiveThreeShut => (Fit::WithCare, "physics-air-locked-in-the-middle", FIVE_TWO),
        ValveKind::FiveThreeVented => (Fit::WithCare, "physics-air-free-in-the-middle", FIVE_TWO),
        ValveKind::FiveThreePressed => (Fit::Wrong, "physics-air-creeps-at-rest", FIVE_TWO),
    }
}

const fn self_reversing(valve: ValveKind) -> Row {
    match valve {
        ValveKind::TwoTwo => (Fit::WithCare, "physics-air-stops-under-pressure", CLOSED),
        ValveKind::ThreeTwoClosed => (Fit::Right, "physics-air-runs", "physics-air-cure-ports-three"),
        ValveKind::ThreeTwoOpen => (Fit::Wrong, "physics-air-never-stops", CLOSED),
        ValveKind::FourTwo => {
            (Fit::WithCare, "physics-air-runs-one-outlet", "physics-air-cure-ports-four-as-three")
        }
        ValveKind::FiveTwo => {
            (Fit::WithCare, "physics-air-runs-one-outlet", "physics-air-cure-ports-five-as-three")
        }
        ValveKind::FiveTwoTwoCoils => (Fit::WithCare, "physics-air-runs-on-after-power-cut", CLOSED),
        ValveKind::FiveThreeShut => (Fit::WithCare, "physics-air-stops-under-pressure", CLOSED),
        ValveKind::FiveThreeVented => {
            (Fit::WithCare, "physics-air-runs-one-outlet", "physics-air-cure-ports-five-as-three")
        }
        ValveKind::FiveThreePressed => (Fit::Wrong, "physics-air-never-stops", CLOSED),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What a valve can do to its first outlet, written down apart from the table: vents it at rest, puts pressure on it at
    /// rest, drives a second outlet against the first.
    fn vents_at_rest(valve: ValveKind) -> bool {
        !matches!(
            valve,
            ValveKind::TwoTwo
                | ValveKind::ThreeTwoOpen
                | ValveKind::FiveThreeShut
                | ValveKind::FiveThreePressed
                | ValveKind::FiveTwoTwoCoils
        )
    }
    fn presses_at_rest(valve: ValveKind) -> bool {
        matches!(valve, ValveKind::ThreeTwoOpen | ValveKind::FiveThreePressed)
    }
    fn has_two_outlets(valve: ValveKind) -> bool {
        !matches!(valve, ValveKind::TwoTwo | ValveKind::ThreeTwoClosed | ValveKind::ThreeTwoOpen)
    }

    #[test]
    fn the_right_valve_of_each_drive_is_judged_right() {
        for drive in DriveKind::ALL {
            assert_eq!(verdict(drive, drive.right_valve()).fit, Fit::Right, "{drive:?}");
        }
    }

    #[test]
    fn the_table_follows_from_what_each_valve_connects_at_rest() {
        for valve in ValveKind::ALL {
            let spring = verdict(DriveKind::SpringReturn, valve).fit;
            // A pump that must be vented to return: a valve that vents at rest serves, one that cannot does not. Two coils
            // may rest on either side, so they need care.
            assert_eq!(
                spring == Fit::Wrong,
                !vents_at_rest(valve) && valve != ValveKind::FiveTwoTwoCoils,
                "{valve:?}"
            );
            let double = verdict(DriveKind::DoubleActing, valve).fit;
            assert_eq!(double == Fit::Wrong, !has_two_outlets(valve) || presses_at_rest(valve), "{valve:?}");
            let own = verdict(DriveKind::SelfReversing, valve).fit;
            assert_eq!(own == Fit::Wrong, presses_at_rest(valve), "{valve:?}");
        }
    }

    #[test]
    fn only_a_right_pair_is_told_to_run_without_more() {
        for (drive, valve) in DriveKind::ALL.into_iter().flat_map(|d| ValveKind::ALL.map(|v| (d, v))) {
            let judged = verdict(drive, valve);
            let plain = matches!(judged.symptom.key, "physics-air-runs" | "physics-air-runs-switched");
            assert_eq!(judged.fit == Fit::Right, plain, "{drive:?} {valve:?}");
        }
    }

    #[test]
    fn every_sentence_stands_in_the_catalogue_and_none_is_left_over() {
        let catalogue = include_str!("../../../../data/messages/en/physics.ftl");
        let mut keys = vec![caution().key];
        for (drive, valve) in DriveKind::ALL.into_iter().flat_map(|d| ValveKind::ALL.map(|v| (d, v))) {
            let judged = verdict(drive, valve);
            keys.extend([judged.symptom.key, judged.cure.key, drive.name().key, valve.name().key]);
        }
        for key in &keys {
            assert!(catalogue.lines().any(|line| line.starts_with(&format!("{key} = "))), "{key}");
        }
        for line in catalogue.lines().filter(|line| line.starts_with("physics-air-")) {
            let key = line.split(" = ").next().unwrap_or_default();
            assert!(keys.contains(&key), "{key} is never said");
        }
    }

    #[test]
    fn three_observations_name_the_drive() {
        assert_eq!(drive_of(1, true, false), Some(DriveKind::SpringReturn));
        assert_eq!(drive_of(1, false, false), Some(DriveKind::SpringReturn));
        assert_eq!(drive_of(1, false, true), Some(DriveKind::SelfReversing));
        assert_eq!(drive_of(2, true, false), None);
        assert_eq!(drive_of(3, false, false), None);
    }
}
