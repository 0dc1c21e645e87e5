//! What somebody said, measured or read off a plate, and what was assumed: every entry of the design under its place in the job.

use oilway_physics::How;
use oilway_text::message;
use oilway_units::Length;

use super::{Book, named, value};
use crate::hydraulics::bore_of;

pub(super) fn trace(book: &mut Book<'_>) {
    // The walk over entries wants to move them; a copy keeps the design as it is.
    let mut design = book.known.design.clone();
    let mut found = Vec::new();
    design.visit_entries(&mut |at, entry| found.push((at.to_owned(), entry.now(), entry.origin())));
    for (at, now, origin) in found {
        book.line(at.clone(), now, How::Entered(origin, at));
    }
    let conditions = &book.known.design.conditions;
    let age = conditions.limits.age.get() * conditions.running_share();
    let terms = ["limits.age", "duty.hours_per_day", "duty.days_per_week"].map(named).to_vec();
    book.solved("limits.age.running", age, message!("solve-how-running-share"), terms);
    conduits(book);
    lines(book);
}

/// The bore of each tube and hose in use.
fn conduits(book: &mut Book<'_>) {
    for part in &book.known.design.conduits {
        if book.part(part, "bore").is_some() {
            continue;
        }
        let (Some(outside), Some(_), Some(wall)) =
            (book.part(part, "outside"), book.part(part, "wall"), part.quantity::<Length>("wall"))
        else {
            continue;
        };
        let bore = bore_of(part).unwrap_or_default();
        book.sum(format!("part.{}.bore", part.id), bore, vec![outside, value(-wall), value(-wall)]);
    }
}

/// The length of each stretch that friction sees.
fn lines(book: &mut Book<'_>) {
    let design = book.known.design;
    let share = design.conditions.practice.fittings.get().fraction();
    for node in &design.network.nodes {
        for (number, leg) in node.legs.iter().enumerate() {
            let at = format!("line.{}.{}", node.name, number + 1);
            let allowance = leg.length.get() * share;
            let terms = vec![named(format!("{at}.length")), named("practice.fittings")];
            book.solved(format!("{at}.fittings"), allowance, message!("solve-how-share-of-length"), terms);
            let terms = vec![named(format!("{at}.length")), named(format!("{at}.fittings"))];
            book.sum(format!("{at}.acting"), leg.length.get() + allowance, terms);
        }
    }
}
