//! The dividers of a job: what feeds each, in an order in which parents come before children, and their sections.

use std::collections::BTreeSet;

use oilway_catalogue::Catalogue;
use oilway_catalogue::reading::{Item, Placed, Table};
use oilway_model::{Choice, DividerWish, Feed, Point, SectionWish};
use oilway_text::message;

use super::names::{Places, name, take};
use super::parts::{OPEN, choice, part};
use super::route::way;
use crate::asked::not_among;

/// The word for the pump where a divider names what feeds it.
pub(crate) const PUMP: &str = "pump";

/// A divider while the job is read: its sections can be judged only when the points are known.
pub(super) struct Row<'r> {
    pub(super) table: Table<'r>,
    pub(super) wish: DividerWish,
}

/// The dividers, parents before children; otherwise in the order of the file.
pub(super) fn dividers<'r>(root: &Table<'r>, places: &Places, catalogue: &Catalogue) -> Vec<Row<'r>> {
    let tables = root.tables("divider");
    if tables.is_empty() && !root.reading().is_broken() {
        root.reading().note(0..0, message!("store-no-divider"), message!("store-no-divider-cure"), None);
    }
    let names = names(&tables);
    let feeds: Vec<Option<usize>> = tables.iter().map(|table| feed(table, &names)).collect();
    let order = order(&feeds, &tables, &names);
    let mut new_index = vec![0; tables.len()];
    order.iter().enumerate().for_each(|(new, &old)| new_index[old] = new);

    let wish = |old: usize| {
        let table = &tables[old];
        let place = places.of(table, None);
        DividerWish {
            name: names[old].clone(),
            place,
            fed_by: feeds[old].map_or(Feed::Pump, |parent| Feed::Divider(new_index[parent])),
            route: way(table, (places, place), catalogue),
            part: choice(table, "part", &["divider"], catalogue),
            sections: Choice::Open,
        }
    };
    order.iter().map(|&old| Row { table: tables[old].clone(), wish: wish(old) }).collect()
}

fn names(tables: &[Table<'_>]) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    let mut taken = BTreeSet::new();
    for table in tables {
        let found = name(table);
        if let Some(name) = &found {
            take(table, name, &mut taken);
            if name.value == PUMP {
                let what = message!("store-reserved-name", name = PUMP);
                table.reading().note(name.at.clone(), what, message!("store-reserved-name-cure"), None);
            }
        }
        names.push(found.map(|placed: Placed<String>| placed.value).unwrap_or_default());
    }
    names
}

/// The divider that feeds this one, none for the pump.
fn feed(table: &Table<'_>, names: &[String]) -> Option<usize> {
    if names.len() == 1 && !table.has("fed_by") {
        return None;
    }
    let item = table.needed("fed_by")?;
    let text = item.text()?.value.trim();
    if text == PUMP {
        return None;
    }
    let found = names.iter().position(|name| name == text);
    if found.is_none() {
        let mut right: Vec<&str> = vec![PUMP];
        right.extend(names.iter().map(String::as_str).filter(|name| !name.is_empty()));
        not_among(&item, text, message!("store-unknown-feed", name = text), &right);
    }
    found
}

/// Parents before children. Dividers that feed one another in a ring are noted, and the ring is cut at its first.
fn order(feeds: &[Option<usize>], tables: &[Table<'_>], names: &[String]) -> Vec<usize> {
    let mut done = vec![false; feeds.len()];
    let mut order: Vec<usize> = Vec::new();
    for start in 0..feeds.len() {
        let mut way: Vec<usize> = Vec::new();
        let mut next = Some(start);
        while let Some(here) = next.filter(|&here| !done[here]) {
            if let Some(at) = way.iter().position(|&seen| seen == here) {
                note_ring(&way[at..], tables, names);
                break;
            }
            way.push(here);
            next = feeds[here];
        }
        for &here in way.iter().rev() {
            done[here] = true;
            order.push(here);
        }
    }
    order
}

fn note_ring(ring: &[usize], tables: &[Table<'_>], names: &[String]) {
    let members: Vec<&str> = ring.iter().map(|&i| names[i].as_str()).collect();
    let Some(&first) = ring.iter().min() else { return };
    let table = &tables[first];
    let at = table.item("fed_by").map_or(table.at(), |item| item.at());
    table.reading().note(
        at,
        message!("store-feed-ring", names = members),
        message!("store-feed-ring-cure"),
        None,
    );
}

/// Reads the sections of every divider, now that everything that hangs on it is known.
pub(super) fn sections(rows: Vec<Row<'_>>, points: &[Point], catalogue: &Catalogue) -> Vec<DividerWish> {
    let children: Vec<Vec<&str>> = (0..rows.len())
        .map(|index| {
            let dividers = rows.iter().filter(move |row| row.wish.fed_by == Feed::Divider(index));
            let points = points.iter().filter(move |point| point.divider == index);
            dividers
                .map(|row| row.wish.name.as_str())
                .chain(points.map(|point| point.name.as_str()))
                .collect()
        })
        .collect();
    let read: Vec<Choice<Vec<SectionWish>>> =
        rows.iter().zip(&children).map(|(row, hang)| sections_of(&row.table, hang, catalogue)).collect();
    rows.into_iter().zip(read).map(|(row, sections)| DividerWish { sections, ..row.wish }).collect()
}

fn sections_of(table: &Table<'_>, hang: &[&str], catalogue: &Catalogue) -> Choice<Vec<SectionWish>> {
    let Some(item) = table.item("sections") else { return Choice::Open };
    if item.is_text() {
        item.word(&[OPEN]);
        return Choice::Open;
    }
    let rows: Vec<Table<'_>> = item.list().unwrap_or_default().iter().filter_map(Item::table).collect();
    let mut served: Vec<String> = Vec::new();
    let sections: Vec<Option<SectionWish>> =
        rows.iter().map(|row| section(row, hang, &mut served, catalogue)).collect();
    let left_out: Vec<&str> = hang.iter().copied().filter(|name| !served.iter().any(|s| s == name)).collect();
    if sections.iter().all(Option::is_some) && !left_out.is_empty() {
        item.wrong(message!("store-not-served", names = left_out), message!("store-not-served-cure"));
    }
    Choice::Given(sections.into_iter().flatten().collect())
}

fn section(
    row: &Table<'_>,
    hang: &[&str],
    served: &mut Vec<String>,
    catalogue: &Catalogue,
) -> Option<SectionWish> {
    let part_item = row.needed("part");
    let id = part_item.and_then(|item| part(&item, item.text()?.value.trim(), &["section"], catalogue));
    let serves = row.needed("serves")?;
    let items = if serves.is_text() { vec![serves] } else { serves.list()? };
    let mut names: Vec<String> = Vec::new();
    for item in &items {
        let name = item.text()?.value.trim();
        if !hang.contains(&name) {
            not_among(item, name, message!("store-not-on-divider", name = name), hang);
            return None;
        }
        // In another section it may stand again: outlets of two sections can be led together outside.
        if names.iter().any(|other| other == name) {
            item.wrong(message!("store-served-twice", name = name), message!("store-served-twice-cure"));
        }
        served.push(name.to_owned());
        names.push(name.to_owned());
    }
    if !(1..=2).contains(&names.len()) {
        serves.wrong(message!("store-outlets", found = names.len()), message!("store-outlets-cure"));
        return None;
    }
    Some(SectionWish { part: id?, serves: names })
}
