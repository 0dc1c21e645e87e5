//! Lines, dividers and joints of the small design.

use oilway_catalogue::Sex;
use oilway_model::*;
use oilway_units::*;

use super::{house_part, known};

fn leg(place: usize, metres: f64, conduit: usize) -> Leg {
    Leg { place, length: known(Length::from_metres(metres)), rise: known(Length::ZERO), conduit }
}

fn node(name: &str, parent: usize, legs: Vec<Leg>, end: End) -> Node {
    Node { name: name.to_owned(), parent: Some(parent), legs, end }
}

/// Tube 8 is conduit 0, tube 6 is conduit 1, hose 4 is conduit 2.
pub(super) fn network() -> Network {
    let root = Node { name: "pump".to_owned(), parent: None, legs: Vec::new(), end: End::Pump };
    Network {
        nodes: vec![
            root,
            node("hall", 0, vec![leg(0, 6.0, 0)], End::Divider(0)),
            node("shaft 1", 1, vec![leg(0, 2.0, 1)], End::Point(0)),
            node("shaft 2", 1, vec![leg(0, 3.5, 1)], End::Point(1)),
            node("slide", 1, vec![leg(0, 1.5, 1), leg(0, 2.5, 2)], End::Point(2)),
            node("cold", 1, vec![leg(0, 4.0, 1), leg(1, 12.0, 1)], End::Divider(1)),
            node("belt 1", 5, vec![leg(1, 2.0, 1)], End::Point(3)),
            node("belt 2", 5, vec![leg(1, 4.0, 1)], End::Point(4)),
        ],
    }
}

fn section(volume: &str, left: OutletUse, right: OutletUse) -> Section {
    let words = format!("Small working section, {volume} cm³");
    Section { part: house_part("section", &words), left, right }
}

pub(super) fn dividers() -> Vec<Divider> {
    use OutletUse::{Bridged, To, WithOpposite};
    let body = house_part("divider", "small working sections, with cycle switch");
    vec![
        Divider {
            name: "hall".to_owned(),
            node: 1,
            place: 0,
            body: body.clone(),
            sections: vec![
                section("0.25", To(2), To(3)),
                section("0.16", To(4), Bridged(2, Side::Left)),
                section("0.1", To(5), WithOpposite),
            ],
            cycle_switch: true,
        },
        Divider {
            name: "cold".to_owned(),
            node: 5,
            place: 1,
            body: house_part("divider", "ten small working sections."),
            sections: vec![
                section("0.063", To(6), WithOpposite),
                section("0.063", To(7), WithOpposite),
                section("0.063", Bridged(0, Side::Left), WithOpposite),
            ],
            cycle_switch: false,
        },
    ]
}

fn end(thread: &str, sex: Sex) -> JointEnd {
    JointEnd { thread: Some(thread.to_owned()), sex }
}

fn joint(at: &str, from: (&str, Sex), to: (&str, Sex), part: &str) -> Joint {
    let parts = vec![house_part("fitting", part)];
    Joint { at: at.to_owned(), from: end(from.0, from.1), to: end(to.0, to.1), parts }
}

pub(super) fn joints() -> Vec<Joint> {
    use Sex::{Female, Male};
    let outlet = ("M10x1", Female);
    let tube = ("tube 6", Male);
    let leaving = "Straight fitting, tube 6 mm to M10x1";
    let mut joints = vec![
        joint("line.hall.1", ("G 1/4", Female), ("tube 8", Male), "Straight fitting, tube 8 mm to G 1/4"),
        joint("divider.hall", ("tube 8", Male), ("G 1/4", Female), "Straight fitting, tube 8 mm to G 1/4"),
    ];
    for name in ["shaft 1", "shaft 2"] {
        joints.push(joint(&format!("line.{name}.1"), outlet, tube, leaving));
        joints.push(joint(
            &format!("point.{name}"),
            tube,
            ("G 1/8", Female),
            "Straight fitting, tube 6 mm to G 1/8",
        ));
    }
    joints.push(joint("line.slide.1", outlet, tube, leaving));
    joints.push(joint(
        "line.slide.2",
        tube,
        ("hose 4", Male),
        "Hose end with tube fitting, hose 4 mm to tube 6",
    ));
    joints.push(joint(
        "point.slide",
        ("hose 4", Male),
        ("M6x1", Female),
        "Straight hose end, hose 4 mm to M6x1",
    ));
    joints.push(joint("line.cold.1", outlet, tube, leaving));
    joints.push(joint("divider.cold", tube, ("G 1/4", Female), "Straight fitting, tube 6 mm to G 1/4"));
    for name in ["belt 1", "belt 2"] {
        joints.push(joint(&format!("line.{name}.1"), outlet, tube, leaving));
        joints.push(joint(
            &format!("point.{name}"),
            tube,
            ("G 1/8", Female),
            "Straight fitting, tube 6 mm to G 1/8",
        ));
    }
    joints
}
