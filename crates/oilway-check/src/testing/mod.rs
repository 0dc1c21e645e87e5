//! A small sound design of house parts, and what tests do to it.
//!
//! A main of 5 m leads to a first divider with a cycle switch, a line of 3 m from there to a second one in the cold room; seven
//! points hang on the two, one of them by a hose. Amounts are given, so that no kind of point is needed; one kind for tests tells a
//! speed and a viscosity ratio.

mod conditions;
mod design;
mod told;

use std::sync::Arc;

use oilway_catalogue::{Part, Value, house};
use oilway_model::{Design, Device, End, Filling, Mounting, Severity};
use oilway_units::{Length, Pressure, Time};

use crate::Facts;

pub(crate) use conditions::{curve_of, oil_with_pour_point, yield_of};
pub(crate) use design::{large, plan, sound};
pub(crate) use told::with_speed;

use design::{BESIDE, TUBE, any, leg};
use told::with_kappa;

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
