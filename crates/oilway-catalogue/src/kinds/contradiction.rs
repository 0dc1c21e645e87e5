//! What kinds share when they look for contradictions inside a part.

use oilway_text::{Arg, Message, message};

use crate::{Contradiction, Part, Role};

/// The contradictions found so far.
#[derive(Default)]
pub(super) struct Found(pub(super) Vec<Contradiction>);

impl Found {
    /// Notes a contradiction if there is one.
    pub(super) fn when(&mut self, wrong: bool, field: &'static str, why: impl FnOnce() -> Message) {
        if wrong {
            self.0.push((field, why()));
        }
    }
    /// Notes that the part has no port of this role.
    pub(super) fn lacks_port(&mut self, part: &Part, role: Role) {
        let none = part.ports.iter().all(|port| port.role != role);
        self.when(none, "port", || {
            message!("catalogue-port-lacking", kind = part.kind.id(), role = role.word())
        });
    }
    /// Notes that the part has another number of ports than its kind.
    pub(super) fn wants_ports(&mut self, part: &Part, number: usize) {
        self.when(part.ports.len() != number, "port", || {
            message!(
                "catalogue-port-number",
                kind = part.kind.id(),
                wanted = number,
                found = part.ports.len()
            )
        });
    }
    /// Notes that the part has no port with this mark.
    pub(super) fn lacks_mark(&mut self, part: &Part, mark: &'static str) {
        let none = part.ports.iter().all(|port| port.mark != mark);
        self.when(none, "port", || message!("catalogue-mark-lacking", kind = part.kind.id(), mark = mark));
    }
}

/// One field must be below another and is not.
pub(super) fn crossed(
    low: &'static str,
    low_value: impl Into<Arg>,
    high: &'static str,
    high_value: impl Into<Arg>,
) -> Message {
    let ends = message!("catalogue-ends-crossed", low = low, high = high);
    ends.with("low_value", low_value).with("high_value", high_value)
}
