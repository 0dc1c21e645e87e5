//! A small sound design of house parts, and what tests do to it.
//!
//! A main of 5 m leads to a first divider with a cycle switch, a line of 3 m from there to a second one in the cold room; seven
//! points hang on the two, one of them by a hose. Amounts are given, so that no kind of point is needed; one kind for tests tells a
//! speed and a viscosity ratio.

use std::sync::Arc;

use oilway_catalogue::{Internal, Part, Port, Role, Value, house};
use oilway_model::{
    Air, AnyEntry, Conditions, Control, CurrentKind, Design, Device, Divider, Duty, Electric, End, Filling,
    FlowCurve, Given, Grease, GreaseRow, Joint, JointEnd, Leg, Limits, Lubricant, Mounting, Network, Node,
    Oil, OutletUse, Package, Place, Point, PointEntry, Practice, Section, Severity, Site, Substance,
    Surroundings,
};
use oilway_physics::points::{Answers, Around, Demand, NoDemand, PointField, PointKind, Wanted};
use oilway_physics::{Ledger, Range, demand};
use oilway_text::Message;
use oilway_units::{
    AbsolutePressure, AnyQuantity, Consistency, Count, Density, Dimension, Entry, Flow, Frequency,
    KinematicViscosity, Length, PerPressure, Pressure, Ratio, Temperature, TemperatureDifference, Time,
    Voltage, Volume,
};

use crate::Facts;
use crate::chain::mates;

/// A part of the house range.
pub(crate) fn part(id: &str) -> Arc<Part> {
    Arc::clone(house::catalogue().part(id).unwrap_or_else(|| panic!("the house range has no part {id}")))
}

/// Puts a part of the house range in the place of another.
pub(crate) fn swap(place: &mut Arc<Part>, id: &str) {
    *place = part(id);
}

fn put(part: &Arc<Part>, field: &str, value: Option<Value>) -> Arc<Part> {
    let at =
        part.kind.fields().iter().position(|f| f.name == field).unwrap_or_else(|| panic!("no field {field}"));
    let mut changed = Part::clone(part);
    changed.values[at] = value;
    Arc::new(changed)
}

/// The part with another value in a field.
pub(crate) fn altered(part: &Arc<Part>, field: &str, value: Value) -> Arc<Part> {
    put(part, field, Some(value))
}

/// The part with nothing in a field.
pub(crate) fn emptied(part: &Arc<Part>, field: &str) -> Arc<Part> {
    put(part, field, None)
}

// ------------------------------------------------------------------------------------------------ a kind of point

/// A point that tells what a test puts in: a speed with its bearing, a viscosity ratio.
#[derive(Debug)]
struct Told;

static TOLD: Told = Told;

const fn field(name: &'static str, dimension: Dimension) -> PointField {
    let wanted = Wanted::Quantity { dimension, range: Range::Positive, unknown: [1.0, 1.0, 1.0] };
    PointField { name, wanted, needed: false, meaning: "what a test puts in" }
}

const FIELDS: &[PointField] = &[
    field("bore", Dimension::Length),
    field("outside", Dimension::Length),
    field("speed", Dimension::Frequency),
    field("ratio", Dimension::Ratio),
];

impl PointKind for Told {
    fn id(&self) -> &'static str {
        "told"
    }
    fn title(&self) -> &'static str {
        "a point for tests"
    }
    fn fields(&self) -> &'static [PointField] {
        FIELDS
    }
    fn demand(&self, answers: Answers<'_>, _: &Around, _: &mut Ledger, _: &str) -> Result<Demand, NoDemand> {
        let ratio = answers.quantity::<Ratio>("ratio");
        let nothing = || NoDemand {
            reason: Message::new("check-point-not-served"),
            cure: Message::new("check-point-not-served-cure"),
        };
        let ratio = ratio.ok_or_else(nothing)?;
        Ok(Demand {
            rate: Flow::from_cubic_centimetres_per_hour(0.1),
            quantity: None,
            interval: None,
            first_fill: None,
            rule: &demand::MEAN_RATE,
            viscosity_ratio: Some(ratio.fraction()),
            notes: Vec::new(),
        })
    }
    fn speed(&self, answers: Answers<'_>) -> Option<Frequency> {
        answers.quantity("speed")
    }
}

/// Lets the first point turn in a bearing of 40 mm bore.
pub(crate) fn with_speed(design: &mut Design, speed: Frequency) {
    let entry = |quantity: AnyQuantity| PointEntry::Quantity(AnyEntry::known(quantity));
    design.points[0].entries = vec![
        entry(Length::from_millimetres(40.0).into()),
        entry(Length::from_millimetres(80.0).into()),
        entry(speed.into()),
        PointEntry::Nothing,
    ];
}

fn with_kappa(design: &mut Design, kappa: f64) {
    let ratio = AnyQuantity::from(Ratio::from_fraction(kappa));
    design.points[0].entries[3] = PointEntry::Quantity(AnyEntry::known(ratio));
}

// ------------------------------------------------------------------------------------------------ the conditions

fn celsius(value: f64) -> Temperature {
    Temperature::from_celsius(value)
}

fn place(name: &str, temperatures: [f64; 3]) -> Place {
    let [coldest, normal, hottest] = temperatures.map(|t| Entry::known(celsius(t)));
    Place {
        name: name.to_owned(),
        coldest,
        normal,
        hottest,
        outdoors: false,
        surroundings: Surroundings::default(),
    }
}

fn base_oil() -> Oil {
    let viscosity = |v| Entry::known(KinematicViscosity::from_square_millimetres_per_second(v));
    Oil {
        at_40: viscosity(150.0),
        at_100: viscosity(15.0),
        density_15: Entry::known(Density::from_kilograms_per_cubic_metre(880.0)),
        pressure_coefficient: Entry::known(PerPressure::from_per_gigapascal(20.0)),
        pour_point: None,
    }
}

fn grease() -> Lubricant {
    let row = |t: f64, tau: f64, k: f64, n: f64| GreaseRow {
        temperature: celsius(t),
        yield_stress: Pressure::from_pascals(tau),
        consistency: Consistency::from_pascal_seconds_to_the_n(k),
        index: Ratio::from_fraction(n),
    };
    Lubricant {
        name: "grease for tests".to_owned(),
        description: "invented".to_owned(),
        substance: Substance::Grease(Grease {
            class: "1".to_owned(),
            thickener: "aluminium complex".to_owned(),
            base_oil: base_oil(),
            curve: FlowCurve::Rows(vec![
                row(4.0, 240.0, 85.0, 0.43),
                row(20.0, 180.0, 60.0, 0.42),
                row(60.0, 70.0, 25.0, 0.40),
            ]),
            density: Entry::known(Density::from_kilograms_per_cubic_metre(890.0)),
        }),
        food: true,
        coldest: None,
        hottest: None,
    }
}

/// Fills the design with an oil of this pour point, a disc and a pump that suit oil stay in.
pub(crate) fn oil_with_pour_point(design: &mut Design, pour: f64) {
    let oil = Oil { pour_point: Some(celsius(pour)), ..base_oil() };
    design.conditions.lubricant.substance = Substance::Oil(oil);
}

/// Gives all rows of the grease this yield stress in pascals.
pub(crate) fn yield_of(design: &mut Design, pascals: f64) {
    if let Substance::Grease(grease) = &mut design.conditions.lubricant.substance
        && let FlowCurve::Rows(rows) = &mut grease.curve
    {
        rows.iter_mut().for_each(|row| row.yield_stress = Pressure::from_pascals(pascals));
    }
}

/// Gives all rows of the grease this flow curve: yield stress in pascals, consistency, index.
pub(crate) fn curve_of(design: &mut Design, yield_stress: f64, consistency: f64, index: f64) {
    if let Substance::Grease(grease) = &mut design.conditions.lubricant.substance
        && let FlowCurve::Rows(rows) = &mut grease.curve
    {
        for row in rows {
            row.yield_stress = Pressure::from_pascals(yield_stress);
            row.consistency = Consistency::from_pascal_seconds_to_the_n(consistency);
            row.index = Ratio::from_fraction(index);
        }
    }
}

fn practice() -> Practice {
    let ratio = |fraction| Entry::known(Ratio::from_fraction(fraction));
    Practice {
        rest_factor: ratio(1.5),
        stall_use: ratio(0.9),
        band_low: ratio(0.9),
        band_high: ratio(1.5),
        floor: Entry::known(Flow::from_cubic_centimetres_per_hour(0.01)),
        back_pressure: Entry::known(Pressure::from_bar(5.0)),
        fittings: ratio(0.1),
        inlet_lowest: Entry::known(AbsolutePressure::from_bar(0.2)),
        entrained_air: ratio(0.02),
        disc_warmer: Entry::known(TemperatureDifference::ZERO),
    }
}

fn conditions() -> Conditions {
    let bar = |value| Entry::known(Pressure::from_bar(value));
    Conditions {
        site: Site {
            altitude: Entry::known(Length::from_metres(100.0)),
            region: None,
            threads: Some("G".to_owned()),
        },
        places: vec![
            place("beside the machine", [10.0, 20.0, 30.0]),
            place("hall", [15.0, 20.0, 25.0]),
            place("cold room", [4.0, 4.0, 4.0]),
        ],
        air: Some(Air {
            lowest: bar(5.5),
            highest: bar(6.5),
            possible: bar(8.0),
            dew_point: Some(Entry::known(celsius(-10.0))),
        }),
        electric: Some(Electric {
            voltage: Voltage::from_volts(24.0),
            kind: CurrentKind::Direct,
            inputs: Some(4),
            outputs: Some(2),
        }),
        duty: Duty {
            hours_per_day: Entry::known(Time::from_hours(20.0)),
            days_per_week: Entry::known(Count::from_number(5.0)),
        },
        limits: Limits {
            refill_at_least: Some(Time::from_weeks(8.0)),
            age: Entry::known(Time::from_weeks(52.0)),
            event_time: Entry::known(Time::from_minutes(5.0)),
            blockage_noticed: true,
            food: true,
        },
        practice: practice(),
        lubricant: grease(),
    }
}

// ------------------------------------------------------------------------------------------------ the design

const BESIDE: usize = 0;
const HALL: usize = 1;
const COLD_ROOM: usize = 2;
/// Tube 8 × 1 and hose, as conduits.
const TUBE: usize = 0;
const HOSE: usize = 1;

fn leg(place: usize, metres: f64, conduit: usize) -> Leg {
    Leg {
        place,
        length: Entry::known(Length::from_metres(metres)),
        rise: Entry::known(Length::ZERO),
        conduit,
    }
}

fn node(name: &str, parent: Option<usize>, legs: Vec<Leg>, end: End) -> Node {
    Node { name: name.to_owned(), parent, legs, end }
}

/// Points 0 to 3 hang on the divider in the cold room, 4 to 6 on the first one.
fn point(number: usize, place: usize, given: f64) -> Point {
    Point {
        name: format!("point {number}"),
        part: "invented".to_owned(),
        kind: &TOLD,
        entries: vec![PointEntry::Nothing; FIELDS.len()],
        place,
        surroundings: Surroundings::default(),
        duty: Entry::known(Ratio::from_fraction(1.0)),
        back_pressure: None,
        thread: Some("G 1/8".to_owned()),
        given: Some(Given {
            quantity: Entry::known(Volume::from_cubic_centimetres(given)),
            interval: Entry::known(Time::from_hours(1.0)),
            place: "invented".to_owned(),
        }),
        divider: usize::from(number < 4),
        route: Vec::new(),
        critical: false,
        at_least_every: None,
    }
}

fn network() -> Network {
    let mut nodes = vec![
        node("pump", None, Vec::new(), End::Pump),
        node("first", Some(0), vec![leg(HALL, 5.0, TUBE)], End::Divider(0)),
        node("second", Some(1), vec![leg(HALL, 3.0, TUBE), leg(COLD_ROOM, 1.0, TUBE)], End::Divider(1)),
    ];
    for number in 0..7 {
        let (parent, place) = if number < 4 { (2, COLD_ROOM) } else { (1, HALL) };
        let conduit = if number == 5 { HOSE } else { TUBE };
        let legs = vec![leg(place, 1.0 + 0.25 * number as f64, conduit)];
        nodes.push(node(&format!("point {number}"), Some(parent), legs, End::Point(number)));
    }
    Network { nodes }
}

fn section(id: &str, left: usize, right: Option<usize>) -> Section {
    let right = right.map_or(OutletUse::WithOpposite, OutletUse::To);
    Section { part: part(id), left: OutletUse::To(left), right }
}

fn dividers() -> Vec<Divider> {
    let divider = |name: &str, node, place, body: &str, sections, cycle_switch| Divider {
        name: name.to_owned(),
        node,
        place,
        body: part(body),
        sections,
        cycle_switch,
    };
    // A cycle of the first gives 0.72 cm³, 0.32 of it to the second, whose own takes 0.452.
    let first = vec![section("10059", 2, None), section("10058", 7, Some(8)), section("10058", 9, None)];
    let second = vec![section("10058", 3, Some(4)), section("10057", 5, None), section("10057", 6, None)];
    vec![
        divider("first", 1, HALL, "10002", first, true),
        divider("second", 2, COLD_ROOM, "10001", second, false),
    ]
}

fn package() -> Package {
    // Slow enough for the small dividers.
    let rate = Value::Quantity(Frequency::from_per_minute(10.0).into());
    Package {
        place: BESIDE,
        pump: altered(&part("10029"), "cycles_max", rate),
        reservoir: part("10039"),
        block: part("10052"),
        mounting: Mounting::OnReservoir,
        valve: Some(part("10283")),
        regulator: Some(part("10294")),
        air_setting: Some(Pressure::from_bar(5.0)),
        disc: Some(part("10019")),
        holder: Some(part("10007")),
        discharge: Vec::new(),
        gauge: Some(part("10075")),
        controller: None,
        devices: Vec::new(),
        spare_discs: 2,
    }
}

/// A design to which no rule objects.
pub(crate) fn sound() -> Design {
    let rates = [0.13, 0.13, 0.17, 0.17, 0.19, 0.19, 0.38];
    let at = |number| if number < 4 { COLD_ROOM } else { HALL };
    let mut design = Design {
        name: "a small sound design".to_owned(),
        units: None,
        conditions: conditions(),
        points: rates.iter().enumerate().map(|(number, rate)| point(number, at(number), *rate)).collect(),
        network: network(),
        conduits: vec![part("10084"), part("10102")],
        dividers: dividers(),
        package: package(),
        control: Control { pause: Time::from_minutes(30.0), cycles: 1, time_out: Time::from_minutes(2.0) },
        joints: Vec::new(),
        reasons: Vec::new(),
        cutting_allowance: Entry::known(Length::from_millimetres(100.0)),
    };
    plan(&mut design);
    join(&mut design);
    design
}

fn end_of(port: &Port) -> JointEnd {
    JointEnd { thread: Some(port.thread.clone()), sex: port.sex }
}

/// The first part of a kind that goes into a port.
fn into(port: &Port, kind: &str) -> Vec<Filling> {
    let fits = |p: &&Arc<Part>| p.ports.iter().any(|own| mates(&end_of(port), &end_of(own)));
    let found = house::catalogue().of_kind(kind).find(fits);
    vec![Filling::Part(Arc::clone(found.unwrap_or_else(|| panic!("no {kind} for {}", port.thread))))]
}

/// Any part of a kind.
fn any(kind: &str) -> Arc<Part> {
    Arc::clone(house::catalogue().of_kind(kind).next().unwrap())
}

/// The fitting between two ends.
fn between(from: &JointEnd, to: &JointEnd) -> Vec<Arc<Part>> {
    let mut all = house::catalogue().of_kind("fitting").filter(|p| !p.flag("air") && p.ports.len() == 2);
    let fits = |p: &&Arc<Part>| {
        let [one, other] = [end_of(&p.ports[0]), end_of(&p.ports[1])];
        (mates(from, &one) && mates(&other, to)) || (mates(from, &other) && mates(&one, to))
    };
    vec![Arc::clone(all.find(fits).unwrap_or_else(|| panic!("no fitting from {from:?} to {to:?}")))]
}

/// Fills every port of the package.
pub(crate) fn plan(design: &mut Design) {
    let package = design.package.clone();
    let as_part = |part: &Option<Arc<Part>>| vec![Filling::Part(Arc::clone(part.as_ref().unwrap()))];
    let tube = JointEnd { thread: Some("tube 8".to_owned()), sex: oilway_catalogue::Sex::Male };
    let on_purpose = || vec![Filling::OpenByIntent(Message::new("check-point-not-served"))];
    let mut devices = Vec::new();
    let hosts = [Some(&package.block), Some(&package.pump), Some(&package.reservoir)];
    let more = [package.valve.as_ref(), package.regulator.as_ref(), package.holder.as_ref()];
    for host in hosts.into_iter().chain(more).flatten() {
        for port in &host.ports {
            let is = |part: &Arc<Part>| part.id == host.id;
            let holds = match port.role {
                Role::Outlet if is(&package.block) && port.mark == "to line" => {
                    between(&end_of(port), &tube).into_iter().map(Filling::Part).collect()
                }
                Role::Outlet if is(&package.block) => into(port, "plug"),
                Role::Inlet if is(&package.block) => vec![Filling::Part(Arc::clone(&package.reservoir))],
                Role::Joint => vec![Filling::Part(Arc::clone(&package.pump))],
                Role::Outlet if port.internal == Internal::Open => on_purpose(),
                Role::Outlet | Role::Inlet => vec![Filling::Part(Arc::clone(&package.block))],
                Role::Relief => as_part(&package.holder),
                Role::Gauge => as_part(&package.gauge),
                Role::Vent => vec![Filling::Part(any("shut-off valve"))],
                Role::Fill => into(port, "filling coupling"),
                Role::Breather => into(port, "breather"),
                Role::Exhaust => into(port, "silencer"),
                Role::AirIn if is(&package.pump) => as_part(&package.valve),
                Role::AirIn if package.regulator.as_ref().is_some_and(is) => on_purpose(),
                Role::AirIn => as_part(&package.regulator),
                Role::AirOut if package.regulator.as_ref().is_some_and(is) => as_part(&package.valve),
                Role::AirOut => vec![Filling::Part(Arc::clone(&package.pump))],
                Role::Sensor | Role::Return | Role::Drain | Role::Level => into(port, "plug"),
            };
            let of = Arc::clone(host);
            devices.push(Device {
                of,
                mark: port.mark.clone(),
                holds,
                behind_shut_off: false,
                flows_out: None,
            });
        }
    }
    design.package.devices = devices;
}

/// Joins all lines.
fn join(design: &mut Design) {
    let female =
        |thread: &str| JointEnd { thread: Some(thread.to_owned()), sex: oilway_catalogue::Sex::Female };
    let mut joints = Vec::new();
    for node in design.network.nodes.iter().skip(1) {
        let hose = node.legs.iter().any(|leg| leg.conduit == HOSE);
        let line = if hose { "hose 4" } else { "tube 8" };
        let line = JointEnd { thread: Some(line.to_owned()), sex: oilway_catalogue::Sex::Male };
        let from = if node.parent == Some(0) { female("G 1/4") } else { female("M10x1") };
        let (at, to) = match node.end {
            End::Divider(_) => (format!("divider.{}", node.name), female("G 1/4")),
            _ => (format!("point.{}", node.name), female("G 1/8")),
        };
        let parts = between(&from, &line);
        joints.push(Joint { at: format!("line.{}.1", node.name), from, to: line.clone(), parts });
        let parts = between(&line, &to);
        joints.push(Joint { at, from: line, to, parts });
    }
    design.joints = joints;
}

// ------------------------------------------------------------------------------------------------ what tests do

/// The gravest finding of a rule on a changed design.
pub(crate) fn severity(rule: &str, change: impl FnOnce(&mut Design)) -> Option<Severity> {
    assert!(crate::rule(rule).is_some(), "there is no rule {rule}");
    let mut design = sound();
    change(&mut design);
    crate::check(&design).of_rule(rule).map(|finding| finding.severity).min()
}

/// The rule has nothing against the changed design, notes apart.
pub(crate) fn accepts(rule: &str, change: impl FnOnce(&mut Design)) {
    let found = severity(rule, change);
    assert!(found.is_none_or(|s| s == Severity::Note), "{rule} shows a {found:?}");
}

/// The rule objects to the changed design.
pub(crate) fn refuses(rule: &str, change: impl FnOnce(&mut Design)) {
    let found = severity(rule, change);
    assert!(found.is_some_and(|s| s != Severity::Note), "{rule} shows {found:?}");
}

/// How a rule weighs a viscosity ratio of the first point.
pub(crate) fn severity_at_kappa(rule: &str, kappa: f64) -> Severity {
    severity(rule, |d| with_kappa(d, kappa)).unwrap_or_else(|| panic!("{rule} says nothing at {kappa}"))
}

/// Whether a rule says nothing at a viscosity ratio.
pub(crate) fn stays_silent_at_kappa(rule: &str, kappa: f64) -> bool {
    severity(rule, |d| with_kappa(d, kappa)).is_none()
}

/// The device at a port.
pub(crate) fn device<'a>(design: &'a mut Design, mark: &str) -> &'a mut Device {
    let found = design.package.devices.iter_mut().find(|device| device.mark == mark);
    found.unwrap_or_else(|| panic!("no port {mark}"))
}

/// A plug.
pub(crate) fn plugs() -> Vec<Filling> {
    vec![Filling::Part(any("plug"))]
}

/// The node of a point.
pub(crate) fn node_of_point(design: &Design, point: usize) -> usize {
    design.network.nodes.iter().position(|node| node.end == End::Point(point)).unwrap()
}

/// A spring-return pump, whose idle side breathes.
pub(crate) fn spring_return(design: &mut Design) {
    swap(&mut design.package.pump, "10031");
    plan(design);
}

/// A block with a vent port.
pub(crate) fn vented_block(design: &mut Design) {
    swap(&mut design.package.block, "10054");
    plan(design);
}

/// A pump with another inlet.
pub(crate) fn with_inlet_bore(design: &mut Design, millimetres: f64) {
    let bore = Value::Quantity(Length::from_millimetres(millimetres).into());
    design.package.pump = altered(&design.package.pump, "inlet_bore", bore);
}

/// The pump away from its reservoir, with an inlet line of tube.
pub(crate) fn remote(design: &mut Design, metres: f64) {
    design.package.mounting = Mounting::Remote(vec![leg(BESIDE, metres, TUBE)]);
}

/// A discharge line of tube.
pub(crate) fn piped(design: &mut Design, metres: f64) {
    swap(design.package.holder.as_mut().unwrap(), "10006");
    design.package.discharge = vec![leg(BESIDE, metres, TUBE)];
    plan(design);
}

/// The longest event of the checker's own numbers.
pub(crate) fn longest_event(design: &Design) -> Time {
    Facts::of(design).longest_event().unwrap()
}

/// The highest burst of the disc.
pub(crate) fn highest_burst(design: &Design) -> Pressure {
    Facts::of(design).shield.disc.unwrap().highest
}

/// The highest need as a share of the stall.
pub(crate) fn need_over_stall(design: &Design) -> f64 {
    let facts = Facts::of(design);
    let (_, _, need) = facts.highest(|p| p.rested.max(p.moving)).unwrap();
    need / facts.stall().unwrap()
}

/// A design of many points: two hundred dividers of as many outlets as it takes below one first divider. No divider has so many
/// sections; the checker's labour is the same.
pub(crate) fn large(points: usize) -> Design {
    const SECONDARIES: usize = 200;
    let mut design = sound();
    let each = points.div_ceil(SECONDARIES);
    let mut nodes: Vec<Node> = design.network.nodes.drain(..2).collect();
    let first = design.dividers[0].sections[0].part.clone();
    let small = design.dividers[1].sections[0].part.clone();
    let (mut dividers, mut all) = (vec![design.dividers[0].clone()], Vec::new());
    dividers[0].sections.clear();
    for secondary in 0..SECONDARIES {
        let name = format!("divider {secondary}");
        let here = nodes.len();
        let legs = vec![leg(HALL, 5.0, TUBE), leg(COLD_ROOM, 5.0, TUBE)];
        nodes.push(node(&name, Some(1), legs, End::Divider(secondary + 1)));
        let (left, right) = (OutletUse::To(here), OutletUse::WithOpposite);
        dividers[0].sections.push(Section { part: Arc::clone(&first), left, right });
        let mut sections = Vec::new();
        for _ in 0..each {
            let (left, right) = (OutletUse::To(nodes.len()), OutletUse::WithOpposite);
            sections.push(Section { part: Arc::clone(&small), left, right });
            let legs = vec![leg(COLD_ROOM, 1.0, TUBE), leg(COLD_ROOM, 1.0, HOSE)];
            nodes.push(node(&format!("point {}", all.len()), Some(here), legs, End::Point(all.len())));
            all.push(point(all.len(), COLD_ROOM, 0.1));
        }
        let body = design.dividers[1].body.clone();
        dividers.push(Divider { name, node: here, place: COLD_ROOM, body, sections, cycle_switch: false });
    }
    design.network.nodes = nodes;
    (design.dividers, design.points) = (dividers, all);
    design.joints.clear();
    design
}
