//! Why there is no design, or only a lame one: an obstacle names the place, the reason and what would clear it.

use oilway_text::Message;

/// Something that stands in the way of a design.
#[derive(Clone, Debug, PartialEq)]
pub struct Obstacle {
    /// The place in the job: `divider.washer`, `package.pump`.
    pub at: String,
    /// The reason, with its numbers.
    pub what: Message,
    /// What would clear it.
    pub cure: Message,
}
