//! Pages: how answers of the other crates look to a person.

pub(crate) mod formula;
pub(crate) mod mistakes;
