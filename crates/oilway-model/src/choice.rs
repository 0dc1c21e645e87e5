//! A choice of the job: given by the engineer, left open to the tool, or pinned by an earlier run.

/// Who chose.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub enum Choice<T> {
    /// The engineer chose; the tool keeps it and checks it.
    Given(T),
    /// The tool may choose, and says why.
    #[default]
    Open,
    /// The tool chose earlier and the customer approved: kept like a given choice, reported when it no longer passes.
    Pinned(T),
}

impl<T> Choice<T> {
    /// What was chosen, unless it is open.
    pub fn chosen(&self) -> Option<&T> {
        match self {
            Choice::Given(t) | Choice::Pinned(t) => Some(t),
            Choice::Open => None,
        }
    }
    /// Whether the tool may choose.
    pub fn is_open(&self) -> bool {
        matches!(self, Choice::Open)
    }
}
