//! The sheets: each a function from a design and what is known of it to contents. They hold no engineering; they arrange numbers
//! that exist, so that no two papers can disagree.

mod answer;
mod assumptions;
mod build;
mod cautions;
mod delivery;
mod findings;
mod ladder;
mod lines;
mod package;
mod parts;
mod ports;
mod reasons;
mod settings;

use oilway_model::{Answer, Assumption, Design, Finding};

use crate::sheet::Sheet;

pub use answer::answer;
pub use assumptions::assumptions;
pub use build::build;
pub use cautions::cautions;
pub use delivery::delivery;
pub use findings::findings;
pub use ladder::ladder;
pub use lines::lines;
pub use package::package;
pub use parts::{list, parts};
pub use ports::ports;
pub use reasons::reasons;
pub use settings::settings;

/// Everything that a sheet can be made from.
#[derive(Clone, Copy, Debug)]
pub struct Papers<'a> {
    /// The design.
    pub design: &'a Design,
    /// What follows from it.
    pub answer: &'a Answer,
    /// What the checker found.
    pub findings: &'a [Finding],
    /// What was assumed, the weightiest first.
    pub assumptions: &'a [Assumption],
}

/// A kind of sheet.
#[derive(Clone, Copy)]
pub struct SheetKind {
    /// Its lasting word, for commands and file names.
    pub id: &'static str,
    /// Makes it.
    pub make: fn(&Papers<'_>) -> Sheet,
}

impl core::fmt::Debug for SheetKind {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_struct("SheetKind").field("id", &self.id).finish_non_exhaustive()
    }
}

/// Every sheet, in the order in which they are laid before the customer.
pub const SHEETS: &[SheetKind] = &[
    SheetKind { id: "answer", make: |p| answer(p.design, p.answer, p.findings) },
    SheetKind { id: "delivery", make: |p| delivery(p.design, p.answer, p.findings) },
    SheetKind { id: "lines", make: |p| lines(p.design, p.answer, p.findings) },
    SheetKind { id: "package", make: |p| package(p.design, p.answer, p.findings) },
    SheetKind { id: "ladder", make: |p| ladder(p.design, p.answer, p.findings) },
    SheetKind { id: "ports", make: |p| ports(p.design, p.answer, p.findings) },
    SheetKind { id: "build", make: |p| build(p.design, p.answer, p.findings) },
    SheetKind { id: "parts", make: |p| parts(p.design, p.answer, p.findings) },
    SheetKind { id: "settings", make: |p| settings(p.design, p.answer, p.findings) },
    SheetKind { id: "findings", make: |p| findings(p.design, p.answer, p.findings) },
    SheetKind { id: "cautions", make: |p| cautions(p.design, p.answer, p.findings) },
    SheetKind { id: "assumptions", make: |p| assumptions(p.design, p.assumptions) },
    SheetKind { id: "reasons", make: |p| reasons(p.design, p.answer, p.findings) },
];

/// The kind of sheet with this word.
pub fn sheet_kind(id: &str) -> Option<&'static SheetKind> {
    SHEETS.iter().find(|kind| kind.id == id)
}

#[cfg(test)]
mod tests;
