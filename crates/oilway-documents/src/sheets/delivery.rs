//! Demand and delivery: what each point needs, why, and what it gets.

use oilway_model::{Answer, Delivery, Design, Finding, Point};
use oilway_text::{Arg, Message, message};
use oilway_units::{Flow, Ratio};

use crate::names;
use crate::sheet::{Block, Column, Sheet, Table};
use crate::words;

/// Demand and delivery of every point, by point and by station.
pub fn delivery(design: &Design, answer: &Answer, _: &[Finding]) -> Sheet {
    let served: Vec<(&Point, &Delivery)> = design.points.iter().zip(&answer.deliveries).collect();
    let mut blocks = vec![Block::Table(by_point(design, &served))];
    let raised = remarks(&served, |delivery| delivery.raised_by.iter().cloned().collect());
    if !raised.is_empty() {
        blocks.push(Block::Heading(message!("documents-head-raised")));
        blocks.push(Block::List(raised));
    }
    blocks.push(Block::Heading(message!("documents-head-stations")));
    blocks.push(Block::Table(by_station(design, &served)));
    blocks.push(Block::Heading(message!("documents-head-ages")));
    blocks.push(Block::Table(ages(&served)));
    let notes = remarks(&served, |delivery| delivery.notes.clone());
    if !notes.is_empty() {
        blocks.push(Block::Heading(message!("documents-head-notes")));
        blocks.push(Block::List(notes));
    }
    Sheet { title: message!("documents-title-delivery", job = design.name.as_str()), blocks }
}

fn total(served: &[(&Point, &Delivery)], of: impl Fn(&Delivery) -> Flow) -> Flow {
    served.iter().map(|(_, delivery)| of(delivery)).sum()
}

/// A share; from twice on it is said so many times, and none where there is nothing to share.
fn share(part: Flow, whole: Flow) -> Arg {
    if whole <= Flow::ZERO {
        return words::none();
    }
    let share = part / whole;
    if share < 2.0 {
        Ratio::from_fraction(share).into()
    } else {
        message!("documents-times", times = libm::round(share * 10.0) / 10.0).into()
    }
}

fn by_point(design: &Design, served: &[(&Point, &Delivery)]) -> Table {
    let mut table = Table::new([
        Column::words(message!("documents-column-point")),
        Column::words(message!("documents-column-station")),
        Column::words(message!("documents-column-rule")),
        Column::numbers(message!("documents-column-formula")),
        Column::numbers(message!("documents-column-required")),
        Column::numbers(message!("documents-column-delivered")),
        Column::numbers(message!("documents-column-of-required")),
        Column::numbers(message!("documents-column-of-total")),
    ]);
    let whole = total(served, |delivery| delivery.delivered);
    let required = total(served, |delivery| delivery.required);
    table.rows = served
        .iter()
        .map(|(point, delivery)| {
            vec![
                point.name.as_str().into(),
                words::place(design, point.place),
                rule(point, delivery).into(),
                delivery.formula.into(),
                delivery.required.into(),
                delivery.delivered.into(),
                share(delivery.delivered, delivery.required),
                share(delivery.delivered, whole),
            ]
        })
        .collect();
    let asked = total(served, |delivery| delivery.formula);
    table.foot = vec![vec![
        message!("documents-total").into(),
        "".into(),
        "".into(),
        asked.into(),
        required.into(),
        whole.into(),
        share(whole, required),
        share(whole, whole),
    ]];
    table
}

fn rule(point: &Point, delivery: &Delivery) -> Message {
    match (&point.given, delivery.rule) {
        (Some(given), "given") => message!("documents-rule-given", place = given.place.as_str()),
        (None, "given") => message!("documents-rule-given-somewhere"),
        (_, rule) => message!("documents-rule", rule = rule),
    }
}

fn by_station(design: &Design, served: &[(&Point, &Delivery)]) -> Table {
    let mut table = Table::new([
        Column::words(message!("documents-column-station")),
        Column::numbers(message!("documents-column-points")),
        Column::numbers(message!("documents-column-required")),
        Column::numbers(message!("documents-column-delivered")),
        Column::numbers(message!("documents-column-of-total")),
    ]);
    let whole = total(served, |delivery| delivery.delivered);
    for place in 0..design.conditions.places.len() {
        let here: Vec<(&Point, &Delivery)> =
            served.iter().copied().filter(|(point, _)| point.place == place).collect();
        if here.is_empty() {
            continue;
        }
        let delivered = total(&here, |delivery| delivery.delivered);
        table.rows.push(vec![
            words::place(design, place),
            here.len().into(),
            total(&here, |delivery| delivery.required).into(),
            delivered.into(),
            share(delivered, whole),
        ]);
    }
    let required = total(served, |delivery| delivery.required);
    table.foot = vec![vec![
        message!("documents-total").into(),
        served.len().into(),
        required.into(),
        whole.into(),
        share(whole, whole),
    ]];
    table
}

fn ages(served: &[(&Point, &Delivery)]) -> Table {
    let mut table = Table::new([
        Column::words(message!("documents-column-point")),
        Column::numbers(message!("documents-column-dose")),
        Column::numbers(message!("documents-column-tail")),
        Column::numbers(message!("documents-column-age-tail")),
        Column::numbers(message!("documents-column-age")),
    ]);
    let row = |(point, delivery): &(&Point, &Delivery)| {
        vec![
            point.name.as_str().into(),
            delivery.dose.into(),
            delivery.tail.into(),
            delivery.age_in_tail.into(),
            delivery.age.into(),
        ]
    };
    table.rows = served.iter().map(row).collect();
    table
}

/// Equal remarks are said once, for all their points together.
fn remarks(served: &[(&Point, &Delivery)], of: impl Fn(&Delivery) -> Vec<Message>) -> Vec<Message> {
    let mut found: Vec<(Message, Vec<&str>)> = Vec::new();
    for (point, delivery) in served {
        for remark in of(delivery) {
            match found.iter_mut().find(|(known, _)| *known == remark) {
                Some((_, points)) => points.push(&point.name),
                None => found.push((remark, vec![&point.name])),
            }
        }
    }
    let said = |(remark, points): (Message, Vec<&str>)| {
        message!("documents-remark", points = names::all(&points), remark = remark)
    };
    found.into_iter().map(said).collect()
}
