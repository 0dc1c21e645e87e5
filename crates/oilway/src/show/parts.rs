//! Parts on a page.

use oilway_catalogue::kinds::KINDS;
use oilway_catalogue::{Catalogue, Kind, Part, Price, Value};
use oilway_text::{Message, message};

use crate::page::{Page, Set};

/// Every kind with the number of its parts.
pub(crate) fn kinds(page: &mut Page, catalogue: &Catalogue) {
    let row = |kind: &&'static dyn Kind| {
        vec![kind.id().to_owned(), catalogue.of_kind(kind.id()).count().to_string(), kind.title().to_owned()]
    };
    page.table(&[Set::Left, Set::Right, Set::Left], &KINDS.iter().map(row).collect::<Vec<_>>());
    page.gap();
    page.say(&message!("oilway-kinds-foot"));
}

/// The parts of a kind.
pub(crate) fn of_kind(page: &mut Page, kind: &dyn Kind, parts: &[&Part]) {
    page.paragraph("", &format!("{}: {}", kind.id(), kind.title()));
    page.gap();
    let row = |part: &&Part| vec![part.id.clone(), part.description.clone(), price(page, part)];
    let rows: Vec<Vec<String>> = parts.iter().map(row).collect();
    page.table(&[Set::Left, Set::Left, Set::Right], &rows);
}

fn price(page: &Page, part: &Part) -> String {
    part.price.as_ref().map_or_else(|| page.words(&message!("oilway-no-price")), Price::to_string)
}

/// One part with all that is known of it.
pub(crate) fn one(page: &mut Page, part: &Part) {
    page.paragraph("", &format!("{} ({})", part.description, part.kind.id()));
    page.gap();
    let mut rows = vec![
        vec![page.words(&message!("oilway-part-id")), part.id.clone()],
        vec![page.words(&message!("oilway-part-price")), price(page, part)],
    ];
    for (field, value) in part.kind.fields().iter().zip(&part.values) {
        if let Some(value) = value {
            rows.push(vec![
                field.name.replace('_', " "),
                format!("{} ({})", words(page, value), field.meaning),
            ]);
        }
    }
    rows.push(vec![page.words(&message!("oilway-part-source")), part.source.clone()]);
    page.table(&[Set::Left, Set::Left], &rows);
    if part.ports.is_empty() {
        return;
    }
    page.heading(&message!("oilway-part-ports"));
    let mut rows = Vec::with_capacity(part.ports.len());
    for port in &part.ports {
        let shipped = if port.shipped_with.is_empty() {
            String::new()
        } else {
            page.words(&message!("oilway-port-shipped", with = port.shipped_with.as_str()))
        };
        let thread = format!("{}, {}", port.thread, port.sex.word());
        rows.push(vec![port.mark.clone(), port.role.word().to_owned(), thread, shipped]);
    }
    page.table(&[Set::Left; 4], &rows);
}

fn words(page: &Page, value: &Value) -> String {
    match value {
        Value::Quantity(quantity) => page.quantity(*quantity),
        Value::Quantities(list) => {
            list.iter().map(|quantity| page.quantity(*quantity)).collect::<Vec<_>>().join(", ")
        }
        Value::Word(word) => (*word).to_owned(),
        Value::Text(text) => text.clone(),
        Value::Texts(list) => list.join(", "),
        Value::Flag(true) => page.words(&Message::new("oilway-yes")),
        Value::Flag(false) => page.words(&Message::new("oilway-no")),
    }
}
