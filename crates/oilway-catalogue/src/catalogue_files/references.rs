//! Whether the parts that a part names are there and of the right kind.

use std::collections::BTreeMap;

use oilway_text::message;

use super::part_row::Row;
use crate::reading::{Reading, nearest};
use crate::{Catalogue, Kind};

/// Notes every name that leads nowhere. A part that is there but spoiled counts as there: one mistake, one message.
pub(super) fn check(below: &Catalogue, readings: &[Reading], rows: &mut [(usize, Row)]) {
    let known = known(below, rows);
    for (file, row) in rows {
        for (wanted, id) in &row.names {
            let (what, cure) = match known.get(&id.value) {
                None => {
                    let of_kind =
                        known.iter().filter(|(_, kind)| kind.is_some_and(|kind| kind.id() == *wanted));
                    let what = message!("catalogue-no-such-part", id = id.value.as_str(), kind = *wanted);
                    (
                        what,
                        match nearest(&id.value, of_kind.map(|(id, _)| id.as_str())) {
                            Some(near) => message!("reading-perhaps", word = near),
                            None => message!("catalogue-no-such-part-cure", kind = *wanted),
                        },
                    )
                }
                Some(Some(kind)) if kind.id() != *wanted => {
                    let what = message!(
                        "catalogue-part-of-other-kind",
                        id = id.value.as_str(),
                        kind = kind.id(),
                        wanted = *wanted
                    );
                    (what, message!("catalogue-no-such-part-cure", kind = *wanted))
                }
                Some(_) => continue,
            };
            readings[*file].note(id.at.clone(), what, cure, None);
            row.sound = false;
        }
    }
}

/// Every id with its kind, where that can be made out.
fn known(below: &Catalogue, rows: &[(usize, Row)]) -> BTreeMap<String, Option<&'static dyn Kind>> {
    let lower = below.parts().map(|part| (part.id.clone(), Some(part.kind)));
    let upper = rows.iter().filter_map(|(_, row)| Some((row.id.as_ref()?.value.clone(), row.kind)));
    lower.chain(upper).collect()
}
