//! Choices that name a part of the catalogue.

use oilway_catalogue::Catalogue;
use oilway_catalogue::reading::{Item, Table};
use oilway_model::Choice;
use oilway_text::message;

use crate::asked::not_among;

/// The word that leaves a choice to the tool.
pub(crate) const OPEN: &str = "open";

/// The choice under a key: open where it is missing or says so, otherwise the id of a part of one of these kinds.
pub(super) fn choice(table: &Table<'_>, key: &str, kinds: &[&str], catalogue: &Catalogue) -> Choice<String> {
    let Some(item) = table.item(key) else { return Choice::Open };
    match id(&item, kinds, catalogue) {
        Some(id) if id != OPEN => Choice::Given(id),
        _ => Choice::Open,
    }
}

/// The id of a part, or the word for open.
fn id(item: &Item<'_>, kinds: &[&str], catalogue: &Catalogue) -> Option<String> {
    let text = item.text()?.value.trim();
    if text == OPEN {
        return Some(text.to_owned());
    }
    part(item, text, kinds, catalogue)
}

/// The id of a part of one of these kinds.
pub(super) fn part(item: &Item<'_>, id: &str, kinds: &[&str], catalogue: &Catalogue) -> Option<String> {
    match catalogue.part(id) {
        Some(part) if kinds.contains(&part.kind.id()) => return Some(id.to_owned()),
        Some(part) => {
            let what = message!("store-part-of-other-kind", key = item.key(), id = id, kind = part.kind.id());
            item.wrong(what, message!("store-part-of-kind-cure", kinds = kinds.to_vec()));
        }
        None => {
            let ids: Vec<&str> =
                kinds.iter().flat_map(|kind| catalogue.of_kind(kind)).map(|part| part.id.as_str()).collect();
            not_among(item, id, message!("store-unknown-part", key = item.key(), id = id), &ids);
        }
    }
    None
}
