use std::collections::BTreeMap;

use oilway_catalogue::house;
use oilway_model::{Filling, Joint, JointEnd, Leg, Mounting};
use oilway_units::{Entry, Quantity};
use proptest::prelude::*;

use super::*;
use crate::testing::{fitting, house_part, known, small_design};

fn pieces(design: &Design, id: &str) -> u64 {
    let lines = parts_list(design);
    let of_id = lines.iter().filter(|line| line.id() == id);
    of_id.map(|line| line.amount.bought()).sum()
}

/// Every part that stands anywhere in a design, found by another way: all fields, one after the other.
fn every_part(design: &Design) -> Vec<String> {
    let package = &design.package;
    let mut parts: Vec<Arc<Part>> =
        vec![package.pump.clone(), package.block.clone(), package.reservoir.clone()];
    let optional = [
        &package.valve,
        &package.regulator,
        &package.disc,
        &package.holder,
        &package.gauge,
        &package.controller,
    ];
    parts.extend(optional.into_iter().flatten().cloned());
    for filling in package.devices.iter().flat_map(|d| &d.holds) {
        if let Filling::Part(part) = filling {
            parts.push(part.clone());
        }
    }
    for divider in &design.dividers {
        parts.push(divider.body.clone());
        parts.extend(divider.sections.iter().map(|s| s.part.clone()));
    }
    parts.extend(design.joints.iter().flat_map(|j| j.parts.clone()));
    let mut legs: Vec<&Leg> =
        design.network.nodes.iter().flat_map(|n| &n.legs).chain(&package.discharge).collect();
    if let Mounting::Remote(inlet) = &package.mounting {
        legs.extend(inlet);
    }
    parts.extend(legs.iter().filter_map(|leg| design.conduits.get(leg.conduit).cloned()));
    parts.iter().map(|part| part.id.clone()).collect()
}

#[test]
fn every_part_of_the_design_is_in_the_list_and_nothing_else() {
    let design = small_design();
    let mut there = every_part(&design);
    there.sort();
    there.dedup();
    let mut listed: Vec<String> = parts_list(&design).iter().map(|line| line.id().to_owned()).collect();
    listed.sort();
    assert_eq!(listed, there);
}

#[test]
fn neighbours_that_name_each_other_are_counted_once() {
    let design = small_design();
    let package = &design.package;
    let once = [&package.pump, &package.block, &package.reservoir];
    let others = [&package.valve, &package.regulator, &package.holder, &package.gauge];
    for part in once.into_iter().chain(others.into_iter().flatten()) {
        assert_eq!(pieces(&design, &part.id), 1, "{}", part.description);
    }
    let named = package
        .devices
        .iter()
        .flat_map(|d| &d.holds)
        .filter(|f| matches!(f, Filling::Part(p) if p.id == package.block.id));
    assert!(named.count() >= 3, "the block is named by pump, reservoir and holder");
}

#[test]
fn the_fitting_at_the_pumps_outlet_is_one_fitting_though_port_and_joint_name_it() {
    let mut design = small_design();
    let joint = design.joints.iter().find(|j| j.at == "line.hall.1").unwrap().parts[0].clone();
    let listed = pieces(&design, &joint.id);
    let in_joints = design.joints.iter().flat_map(|j| &j.parts).filter(|p| p.id == joint.id).count() as u64;
    assert_eq!(listed, in_joints);
    // A check valve before it stands at the port only and is one more part.
    let check = house_part("check valve", "G 1/4 at both ends");
    let outlet = design.package.devices.iter_mut().find(|d| d.mark == "to line").unwrap();
    outlet.holds.insert(0, Filling::Part(check.clone()));
    assert_eq!(pieces(&design, &check.id), 1);
    assert_eq!(pieces(&design, &joint.id), listed);
}

#[test]
fn two_gauges_are_two_though_they_are_alike() {
    let mut design = small_design();
    let gauge = design.package.gauge.clone().unwrap();
    let sensor = design.package.devices.iter_mut().find(|d| d.mark == "sensor").unwrap();
    sensor.holds = vec![Filling::Part(gauge.clone())];
    assert_eq!(pieces(&design, &gauge.id), 2);
}

#[test]
fn discs_are_the_one_in_use_and_the_spares() {
    let design = small_design();
    let disc = design.package.disc.clone().unwrap();
    assert_eq!(design.package.spare_discs, 3);
    assert_eq!(pieces(&design, &disc.id), 4);
    assert_eq!(spares(&design)[0].quantity, 3);
}

#[test]
fn tube_is_bought_by_whole_metres_with_the_allowance_of_every_stretch() {
    let design = small_design();
    for (number, conduit) in design.conduits.iter().enumerate() {
        let legs = design.network.nodes.iter().flat_map(|n| &n.legs).filter(|leg| leg.conduit == number);
        // 100 mm for each stretch, as the design says.
        let metres: f64 = legs.map(|leg| leg.length.get().metres() + 0.1).sum();
        let lines = parts_list(&design);
        let line = lines.iter().find(|line| line.id() == conduit.id).unwrap();
        let Amount::Metres { needed, bought } = line.amount else { panic!("{:?}", line.amount) };
        assert!((needed.metres() - metres).abs() < 1e-9, "{} {metres}", needed.metres());
        assert!(bought as f64 >= metres - 1e-9 && (bought as f64) < metres + 1.0);
    }
}

#[test]
fn the_sum_is_what_a_buyer_finds_by_hand() {
    let design = small_design();
    let lines = parts_list(&design);
    let mut by_hand = 0;
    for line in &lines {
        let price = house::catalogue().part(line.id()).unwrap().price.clone().unwrap();
        assert_eq!(price.currency, "EUR");
        by_hand += price.hundredths * line.amount.bought() as i64;
    }
    let totals = totals(&lines);
    assert_eq!(totals.unpriced, [0; 0]);
    assert_eq!(totals.sums, [Price { hundredths: by_hand, currency: "EUR".to_owned() }]);
}

#[test]
fn a_part_without_a_price_is_named_and_currencies_are_not_mixed() {
    let mut design = small_design();
    let mut pump = Part::clone(&design.package.pump);
    pump.price = None;
    design.package.pump = Arc::new(pump);
    let mut block = Part::clone(&design.package.block);
    block.price = Some(Price { hundredths: 7, currency: "USD".to_owned() });
    design.package.block = Arc::new(block);
    let mut reservoir = Part::clone(&design.package.reservoir);
    reservoir.price = Some(Price { hundredths: i64::MAX, currency: "EUR".to_owned() });
    design.package.reservoir = Arc::new(reservoir);
    let totals = totals(&parts_list(&design));
    // Items 1 to 3 are pump, block and reservoir. The price of the reservoir leaves no room for the rest.
    assert_eq!(totals.unpriced[0], 1);
    assert_eq!(totals.sums.iter().map(|sum| sum.currency.as_str()).collect::<Vec<_>>(), ["EUR", "USD"]);
    assert_eq!(totals.sums[1].hundredths, 7);
    assert!(totals.unpriced.len() > 1, "what does not fit the sum is said, not lost");
}

#[test]
fn what_the_list_cannot_hold_is_said() {
    let mut design = small_design();
    // Regulator, valve and pump all have female air ports.
    let air = ["documents-open-strangers", "documents-open-strangers"];
    let keys = |design: &Design| open_positions(design).iter().map(|message| message.key).collect::<Vec<_>>();
    assert_eq!(keys(&design), air);
    design.joints.push(Joint {
        at: "point.cam 1".to_owned(),
        from: JointEnd { thread: Some("tube 6".to_owned()), sex: oilway_catalogue::Sex::Male },
        to: JointEnd { thread: None, sex: oilway_catalogue::Sex::Female },
        parts: Vec::new(),
    });
    design.package.devices[0].holds = vec![Filling::Nothing];
    design.dividers[0].sections[0].right = oilway_model::OutletUse::Open;
    let wanted = ["documents-open-port", air[0], air[1], "documents-open-thread", "documents-open-outlet"];
    assert_eq!(keys(&design), wanted);
}

#[test]
fn ends_that_mate_need_no_fitting() {
    let end = |thread: &str, sex| JointEnd { thread: Some(thread.to_owned()), sex };
    let (male, female) = (oilway_catalogue::Sex::Male, oilway_catalogue::Sex::Female);
    assert!(open::mate(&end("G1/4", male), &end("G 1/4", female)));
    assert!(!open::mate(&end("G 1/4", male), &end("G 1/4", male)));
    assert!(!open::mate(&end("G 1/4", male), &end("1/4-18 NPT", female)));
    assert!(!open::mate(&JointEnd { thread: None, sex: male }, &JointEnd { thread: None, sex: female }));
}

#[test]
fn seals_are_counted_by_thread() {
    let design = small_design();
    let seals = seals(&design);
    // The pump sits on the block by one M27x2, which both of them name.
    let foot = seals.iter().find(|seal| seal.thread == "M27x2").unwrap();
    assert_eq!((foot.joints, foot.ring), (1, true));
    // Two dividers of eight outlets in all: every outlet that feeds a line is one M10x1.
    let lines = design.network.nodes.iter().filter(|n| n.parent.is_some_and(|p| p > 0)).count() as u64;
    assert_eq!(seals.iter().find(|seal| seal.thread == "M10x1").unwrap().joints, lines);
    assert!(seals.iter().all(|seal| !seal.thread.starts_with("tube")));
}

proptest! {
    #[test]
    fn the_list_follows_whatever_the_design_becomes(
        lengths in prop::collection::vec(0.0f64..80.0, 1..12),
        fittings in prop::collection::vec(0usize..6, 0..40),
        spare in 0u32..9,
    ) {
        let mut design = small_design();
        design.package.spare_discs = spare;
        let node = design.network.nodes.last_mut().unwrap();
        node.legs = lengths.iter().map(|l| Leg {
            place: 0,
            length: known(oilway_units::Length::from_metres(*l)),
            rise: Entry::known(oilway_units::Length::from_si(0.0)),
            conduit: 1,
        }).collect();
        let mut counted: BTreeMap<String, u64> = BTreeMap::new();
        let before = parts_list(&design);
        for number in &fittings {
            let part = fitting(*number);
            *counted.entry(part.id.clone()).or_default() += 1;
            design.joints.push(Joint {
                at: "line.x.1".to_owned(),
                from: JointEnd { thread: None, sex: oilway_catalogue::Sex::Male },
                to: JointEnd { thread: None, sex: oilway_catalogue::Sex::Male },
                parts: vec![part],
            });
        }
        let after = parts_list(&design);
        let of = |lines: &[PartsLine], id: &str| lines.iter().find(|l| l.id() == id).map_or(0, |l| l.amount.bought());
        for (id, count) in &counted {
            prop_assert_eq!(of(&after, id), of(&before, id) + count);
        }
        let tube = after.iter().find(|line| line.id() == design.conduits[1].id).unwrap();
        let Amount::Metres { needed, .. } = tube.amount else { panic!() };
        let legs = design.network.nodes.iter().flat_map(|n| &n.legs).filter(|leg| leg.conduit == 1);
        let sum: f64 = legs.map(|leg| leg.length.get().metres() + 0.1).sum();
        prop_assert!((needed.metres() - sum).abs() < 1e-6);
        let items: Vec<u32> = after.iter().map(|line| line.item).collect();
        prop_assert_eq!(items, (1..=after.len() as u32).collect::<Vec<_>>());
    }
}
