//! Pages: how answers of the other crates look to a person.

pub(crate) mod cold_start;
pub(crate) mod explain;
pub(crate) mod formula;
pub(crate) mod metering;
pub(crate) mod mistakes;
pub(crate) mod parts;
pub(crate) mod question;
pub(crate) mod span;
pub(crate) mod what_if;
pub(crate) mod why;
