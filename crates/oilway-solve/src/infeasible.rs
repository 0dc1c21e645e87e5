//! The exact search's reasons, told in the names of the job.

use oilway_text::{Arg, Message, message};

use crate::metering::Infeasible;

/// The reason and the cure. `name` gives the consumer behind a place of the question.
pub(crate) fn explain(reason: Option<Infeasible>, name: &dyn Fn(usize) -> String, consumers: usize) -> (Message, Message) {
    match reason {
        Some(Infeasible::PistonCount { needed, allowed }) => (
            message!("solve-too-many-sections", consumers = consumers, needed = needed.0 as i64, allowed = i64::from(allowed.1), fewest = i64::from(allowed.0)),
            message!("solve-cure-split-divider"),
        ),
        Some(Infeasible::BandAgainstSizes { points, .. }) => (
            message!("solve-sizes-against-band", first = name(points.0), second = name(points.1)),
            message!("solve-cure-own-divider"),
        ),
        Some(Infeasible::PeriodRange { points, .. } | Infeasible::NoCommonPeriod { points }) => (
            message!("solve-no-common-period", names = Arg::List(points.iter().map(|&p| Arg::Text(name(p))).collect())),
            message!("solve-cure-own-divider"),
        ),
        Some(Infeasible::Unpaired { sizes, .. }) => (
            message!("solve-unpaired", outlets = sizes.len()),
            message!("solve-cure-unpaired"),
        ),
        Some(Infeasible::EffortSpent { .. }) => (message!("solve-effort-spent", consumers = consumers), message!("solve-cure-split-divider")),
        Some(Infeasible::Faults { .. }) | None => (message!("solve-no-sections", consumers = consumers), message!("solve-cure-split-divider")),
    }
}
