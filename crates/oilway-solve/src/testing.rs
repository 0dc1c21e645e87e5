//! Small jobs built by hand for the tests of this crate: a dairy hall in grease, a spindle in oil, a conveyor on mains current.
//! Everything that a test wants otherwise it changes on the job itself.

use oilway_catalogue::{Catalogue, house};
use oilway_model::{
    Air, Choice, Conditions, CurrentKind, DividerWish, Duty, Electric, Feed, FlowCurve, Given, Grease,
    GreaseRow, GreaseSpan, Job, LegWish, Limits, Lubricant, Oil, PackageWish, Place, Point, Practice, Site,
    Substance, Surroundings,
};
use oilway_physics::Ledger;
use oilway_physics::points::{Answers, Around, Demand, NoDemand, PointField, PointKind};
use oilway_text::message;
use oilway_units::{
    AbsolutePressure, Consistency, Count, Density, Entry, Flow, KinematicViscosity, Length, PerPressure,
    Pressure, Quantity, Ratio, Temperature, TemperatureDifference, Time, Voltage, Volume,
};

/// A kind without a rule: the tests here state their amounts.
#[derive(Debug)]
struct Stated;

impl PointKind for Stated {
    fn id(&self) -> &'static str {
        "stated"
    }
    fn title(&self) -> &'static str {
        "a point whose amount somebody states"
    }
    fn fields(&self) -> &'static [PointField] {
        &[]
    }
    fn demand(&self, _: Answers<'_>, _: &Around, _: &mut Ledger, _: &str) -> Result<Demand, NoDemand> {
        Err(NoDemand { reason: message!("solve-no-points"), cure: message!("solve-cure-no-points") })
    }
}

pub(crate) fn catalogue() -> &'static Catalogue {
    house::catalogue()
}

pub(crate) fn known<T: Quantity>(value: T) -> Entry<T> {
    Entry::known(value)
}

/// A leg in a place, open for the tool to choose.
pub(crate) fn leg(place: usize, metres: f64) -> LegWish {
    LegWish {
        place,
        length: known(Length::from_metres(metres)),
        rise: known(Length::ZERO),
        conduit: Choice::Open,
        flexible: false,
    }
}

pub(crate) fn hose(place: usize, metres: f64) -> LegWish {
    LegWish { flexible: true, ..leg(place, metres) }
}

/// A point that is to get a volume each hour.
pub(crate) fn point(
    name: &str,
    divider: usize,
    place: usize,
    cubic_centimetres: f64,
    route: Vec<LegWish>,
) -> Point {
    Point {
        name: name.to_owned(),
        part: String::new(),
        kind: &Stated,
        entries: Vec::new(),
        place,
        surroundings: Surroundings::default(),
        duty: known(Ratio::from_fraction(1.0)),
        back_pressure: None,
        thread: Some("G 1/8".to_owned()),
        given: Some(Given {
            quantity: known(Volume::from_cubic_centimetres(cubic_centimetres)),
            interval: known(Time::from_hours(1.0)),
            place: "test".to_owned(),
        }),
        divider,
        route,
        critical: false,
        at_least_every: None,
    }
}

pub(crate) fn divider(name: &str, place: usize, fed_by: Feed, route: Vec<LegWish>) -> DividerWish {
    DividerWish { name: name.to_owned(), place, fed_by, route, part: Choice::Open, sections: Choice::Open }
}

pub(crate) fn place(name: &str, coldest: f64, normal: f64, hottest: f64) -> Place {
    let celsius = |t| known(Temperature::from_celsius(t));
    Place {
        name: name.to_owned(),
        coldest: celsius(coldest),
        normal: celsius(normal),
        hottest: celsius(hottest),
        outdoors: false,
        surroundings: Surroundings::default(),
    }
}

/// Food-grade grease of the demonstration: white oil ISO VG 150, rows at 60, 20 and 4 °C.
pub(crate) fn grease() -> Lubricant {
    let row = |celsius, tau, k, n| GreaseRow {
        temperature: Temperature::from_celsius(celsius),
        yield_stress: Pressure::from_pascals(tau),
        consistency: Consistency::from_pascal_seconds_to_the_n(k),
        index: Ratio::from_fraction(n),
    };
    Lubricant {
        name: "grease F1".to_owned(),
        description: String::new(),
        substance: Substance::Grease(Grease {
            class: "1".to_owned(),
            thickener: "aluminium complex".to_owned(),
            base_oil: oil(150.0, 15.0),
            curve: FlowCurve::Rows(vec![
                row(4.0, 240.0, 85.0, 0.43),
                row(20.0, 180.0, 60.0, 0.42),
                row(60.0, 70.0, 25.0, 0.40),
            ]),
            density: known(Density::from_kilograms_per_cubic_metre(890.0)),
        }),
        food: true,
        coldest: None,
        hottest: None,
    }
}

/// A grease of NLGI 2 known by its class only.
pub(crate) fn span_grease() -> Lubricant {
    let mut lubricant = grease();
    if let Substance::Grease(grease) = &mut lubricant.substance {
        grease.class = "2".to_owned();
        grease.curve = FlowCurve::Span(GreaseSpan {
            yield_stress: Entry::assumed(
                Pressure::from_pascals(300.0),
                Pressure::from_pascals(500.0),
                Pressure::from_pascals(900.0),
                "solve-range-said",
            ),
            consistency: known(Consistency::from_pascal_seconds_to_the_n(20.0)),
            index: known(Ratio::from_fraction(0.6)),
            halving: known(TemperatureDifference::from_kelvins(20.0)),
        });
    }
    lubricant
}

pub(crate) fn oil(at_40: f64, at_100: f64) -> Oil {
    Oil {
        at_40: known(KinematicViscosity::from_square_millimetres_per_second(at_40)),
        at_100: known(KinematicViscosity::from_square_millimetres_per_second(at_100)),
        density_15: known(Density::from_kilograms_per_cubic_metre(880.0)),
        pressure_coefficient: known(PerPressure::from_per_gigapascal(20.0)),
        pour_point: None,
    }
}

/// Assumptions of practice at their usual values; no allowance for fittings and no rest factor, as the references count.
pub(crate) fn practice() -> Practice {
    let ratio = |x| known(Ratio::from_fraction(x));
    Practice {
        rest_factor: ratio(1.0),
        stall_use: ratio(0.9),
        band_low: ratio(0.9),
        band_high: ratio(1.5),
        floor: known(Flow::from_cubic_centimetres_per_hour(0.01)),
        back_pressure: known(Pressure::from_bar(5.0)),
        fittings: ratio(0.0),
        inlet_lowest: known(AbsolutePressure::from_bar(0.2)),
        entrained_air: ratio(0.02),
        disc_warmer: known(TemperatureDifference::ZERO),
    }
}

fn conditions(places: Vec<Place>, lubricant: Lubricant) -> Conditions {
    let bar = |x| known(Pressure::from_bar(x));
    Conditions {
        site: Site { altitude: known(Length::from_metres(0.0)), region: None, threads: Some("G".to_owned()) },
        places,
        air: Some(Air { lowest: bar(5.5), highest: bar(6.5), possible: bar(8.0), dew_point: None }),
        electric: Some(Electric {
            voltage: Voltage::from_volts(24.0),
            kind: CurrentKind::Direct,
            inputs: Some(4),
            outputs: Some(2),
        }),
        duty: Duty {
            hours_per_day: known(Time::from_hours(20.0)),
            days_per_week: known(Count::from_number(5.0)),
        },
        limits: Limits {
            refill_at_least: Some(Time::from_weeks(8.0)),
            age: known(Time::from_weeks(52.0)),
            event_time: known(Time::from_minutes(5.0)),
            blockage_noticed: true,
            food: false,
        },
        practice: practice(),
        lubricant,
    }
}

fn job(name: &str, conditions: Conditions, dividers: Vec<DividerWish>, points: Vec<Point>) -> Job {
    Job {
        name: name.to_owned(),
        note: String::new(),
        units: None,
        conditions,
        points,
        dividers,
        package: PackageWish::default(),
        principle: Choice::Open,
        pause: Choice::Open,
    }
}

/// Six points of grease on one divider in one hall at 20 °C, pump between 10 and 30 °C.
pub(crate) fn hall() -> Job {
    let places = vec![place("pump", 10.0, 20.0, 30.0), place("hall", 20.0, 20.0, 20.0)];
    let points = (1..=6).map(|n| point(&format!("pin {n}"), 0, 1, 0.05, vec![leg(1, 2.0)])).collect();
    job("hall", conditions(places, grease()), vec![divider("post", 1, Feed::Pump, vec![leg(1, 6.0)])], points)
}

/// Four stations of the demonstration with stated amounts near to those that the rules give: 34 points, 60, 20 and 4 °C.
pub(crate) fn dairy() -> Job {
    const WASHER: usize = 1;
    const HALL: usize = 2;
    const COLD: usize = 3;
    let places = vec![
        place("pump", 10.0, 20.0, 30.0),
        place("washer", 60.0, 60.0, 60.0),
        place("hall", 20.0, 20.0, 20.0),
        place("cold room", 4.0, 4.0, 4.0),
    ];
    let dividers = vec![
        divider("junction post", HALL, Feed::Pump, vec![leg(HALL, 11.0)]),
        divider("washer", WASHER, Feed::Divider(0), vec![leg(WASHER, 4.0)]),
        divider("stacker", HALL, Feed::Divider(0), vec![leg(HALL, 9.0)]),
        divider("table", HALL, Feed::Divider(0), vec![leg(HALL, 6.0)]),
        divider("cold room", COLD, Feed::Divider(0), vec![leg(COLD, 16.0)]),
    ];
    let mut points = Vec::new();
    let mut add = |name: &str, count: usize, divider: usize, rate: f64, tube: f64, flexible: f64| {
        let at = [HALL, WASHER, HALL, HALL, COLD][divider];
        for number in 1..=count {
            let mut route = vec![leg(at, tube)];
            if flexible > 0.0 {
                route.push(hose(at, flexible));
            }
            points.push(point(&format!("{name} {number}"), divider, at, rate, route));
        }
    };
    add("washer chain", 6, 1, 0.140, 5.0, 0.0);
    add("washer swing", 4, 1, 0.040, 3.0, 0.8);
    add("stacker guide", 4, 2, 0.060, 1.5, 2.5);
    add("stacker screw", 2, 2, 0.120, 1.5, 2.5);
    add("gripper pin", 4, 2, 0.008, 1.0, 4.0);
    add("table ring", 4, 3, 0.056, 2.0, 0.0);
    add("table shaft", 2, 3, 0.006, 2.5, 0.0);
    add("table cam", 2, 3, 0.002, 2.0, 1.0);
    add("cold belt", 6, 4, 0.001, 6.0, 0.0);
    let mut job = job("dairy", conditions(places, grease()), dividers, points);
    job.conditions.limits.food = true;
    job
}

/// Eight points of oil on one divider, 3 m above the pump.
pub(crate) fn spindle() -> Job {
    let places = vec![place("hall", 10.0, 20.0, 35.0)];
    let lubricant = Lubricant {
        name: "spindle oil".to_owned(),
        description: String::new(),
        substance: Substance::Oil(oil(68.0, 8.6)),
        food: false,
        coldest: None,
        hottest: None,
    };
    let mut up = leg(0, 5.0);
    up.rise = known(Length::from_metres(3.0));
    let points = (1..=8).map(|n| point(&format!("spindle {n}"), 0, 0, 0.4, vec![leg(0, 1.5)])).collect();
    job("spindle", conditions(places, lubricant), vec![divider("head", 0, Feed::Pump, vec![up])], points)
}

/// The hall without compressed air: an electric pump must do.
pub(crate) fn without_air() -> Job {
    let mut job = hall();
    job.conditions.air = None;
    job
}

pub(crate) fn bar(p: f64) -> Pressure {
    Pressure::from_bar(p)
}
