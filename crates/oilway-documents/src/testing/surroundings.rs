//! Places, lubricant and points of the small design.

use oilway_model::*;
use oilway_physics::Ledger;
use oilway_physics::points::{Answers, Around, Demand, NoDemand, PointField, PointKind};
use oilway_text::message;
use oilway_units::*;

use super::known;

/// A kind of point for tests.
#[derive(Debug)]
struct Shaft;

impl PointKind for Shaft {
    fn id(&self) -> &'static str {
        "shaft"
    }
    fn title(&self) -> &'static str {
        "a shaft"
    }
    fn fields(&self) -> &'static [PointField] {
        &[]
    }
    fn demand(&self, _: Answers<'_>, _: &Around, _: &mut Ledger, _: &str) -> Result<Demand, NoDemand> {
        let no = message!("documents-none");
        Err(NoDemand { reason: no.clone(), cure: no })
    }
}

static SHAFT: Shaft = Shaft;

fn celsius(value: f64) -> Entry<Temperature> {
    known(Temperature::from_celsius(value))
}

fn place(name: &str, [coldest, normal, hottest]: [f64; 3], words: &[&str]) -> Place {
    Place {
        name: name.to_owned(),
        coldest: celsius(coldest),
        normal: celsius(normal),
        hottest: celsius(hottest),
        outdoors: false,
        surroundings: Surroundings {
            words: words.iter().map(|w| (*w).to_owned()).collect(),
            ..Surroundings::default()
        },
    }
}

fn lubricant() -> Lubricant {
    let oil = Oil {
        at_40: known(KinematicViscosity::from_square_millimetres_per_second(150.0)),
        at_100: known(KinematicViscosity::from_square_millimetres_per_second(15.0)),
        density_15: known(Density::from_kilograms_per_cubic_metre(880.0)),
        pressure_coefficient: known(PerPressure::from_per_gigapascal(20.0)),
        pour_point: None,
    };
    let row = GreaseRow {
        temperature: Temperature::from_celsius(20.0),
        yield_stress: Pressure::from_pascals(200.0),
        consistency: Consistency::from_pascal_seconds_to_the_n(60.0),
        index: Ratio::from_fraction(0.42),
    };
    Lubricant {
        name: "grease T".to_owned(),
        description: "an invented grease".to_owned(),
        substance: Substance::Grease(Grease {
            class: "1".to_owned(),
            thickener: "lithium".to_owned(),
            base_oil: oil,
            curve: FlowCurve::Rows(vec![row]),
            density: known(Density::from_kilograms_per_cubic_metre(890.0)),
        }),
        food: false,
        coldest: None,
        hottest: None,
    }
}

pub(super) fn conditions() -> Conditions {
    let ratio = |fraction| known(Ratio::from_fraction(fraction));
    Conditions {
        site: Site {
            altitude: known(Length::from_metres(100.0)),
            region: None,
            threads: Some("G".to_owned()),
        },
        places: vec![place("hall", [10.0, 20.0, 30.0], &[]), place("cold room", [2.0, 4.0, 6.0], &["damp"])],
        air: Some(Air {
            lowest: known(Pressure::from_bar(5.5)),
            highest: known(Pressure::from_bar(6.5)),
            possible: Entry::assumed(
                Pressure::from_bar(8.0),
                Pressure::from_bar(10.0),
                Pressure::from_bar(12.0),
                "assume-air-possible",
            ),
            dew_point: None,
        }),
        electric: Some(Electric {
            voltage: Voltage::from_volts(24.0),
            kind: CurrentKind::Direct,
            inputs: None,
            outputs: None,
        }),
        duty: Duty {
            hours_per_day: known(Time::from_hours(20.0)),
            days_per_week: known(Count::from_number(5.0)),
        },
        limits: Limits {
            refill_at_least: Some(Time::from_weeks(8.0)),
            age: known(Time::from_weeks(52.0)),
            event_time: known(Time::from_minutes(30.0)),
            blockage_noticed: true,
            food: false,
        },
        practice: Practice {
            rest_factor: ratio(1.3),
            stall_use: ratio(0.9),
            band_low: ratio(0.9),
            band_high: ratio(1.5),
            floor: known(Flow::from_cubic_centimetres_per_hour(0.01)),
            back_pressure: known(Pressure::from_bar(5.0)),
            fittings: ratio(0.05),
            inlet_lowest: known(AbsolutePressure::from_bar(0.2)),
            entrained_air: ratio(0.01),
            disc_warmer: known(TemperatureDifference::from_kelvins(10.0)),
        },
        lubricant: lubricant(),
    }
}

pub(super) fn point(name: &str, place: usize, thread: &str, divider: usize) -> Point {
    Point {
        name: name.to_owned(),
        part: "conveyor shaft".to_owned(),
        kind: &SHAFT,
        entries: Vec::new(),
        place,
        surroundings: Surroundings::default(),
        duty: known(Ratio::from_fraction(1.0)),
        back_pressure: None,
        thread: Some(thread.to_owned()),
        given: None,
        divider,
        route: Vec::new(),
        critical: false,
        at_least_every: None,
    }
}
