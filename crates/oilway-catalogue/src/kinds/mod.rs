//! The kinds of component, one file each.

use crate::Kind;

/// Every kind of component.
pub static KINDS: &[&dyn Kind] = &[];

/// The kind with this id.
pub fn kind(id: &str) -> Option<&'static dyn Kind> {
    KINDS.iter().copied().find(|kind| kind.id() == id)
}
