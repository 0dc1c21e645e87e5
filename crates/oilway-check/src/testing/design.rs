//! The small sound design, and a large one for its labour.

use std::sync::Arc;

use oilway_catalogue::{Internal, Part, Port, Role, Value, house};
use oilway_model::{
    Control, Design, Device, Divider, End, Filling, Given, Joint, JointEnd, Leg, Mounting, Network, Node,
    OutletUse, Package, Point, PointEntry, Section, Surroundings,
};
use oilway_text::Message;
use oilway_units::{Entry, Frequency, Length, Pressure, Ratio, Time, Volume};

use super::conditions::conditions;
use super::told::{FIELDS, TOLD};
use super::{altered, part};
use crate::chain::mates;

pub(super) const BESIDE: usize = 0;
const HALL: usize = 1;
const COLD_ROOM: usize = 2;
/// Tube 8 × 1 and hose, as conduits.
pub(super) const TUBE: usize = 0;
const HOSE: usize = 1;

pub(super) fn leg(place: usize, metres: f64, conduit: usize) -> Leg {
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
pub(super) fn any(kind: &str) -> Arc<Part> {
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
