//! How the system is run: pause, cycles of an event, time-out.

use oilway_model::{Control, Design, Job, SeasonResult};
use oilway_units::Time;

/// Events are not closer together than this: a pump that never rests wears for nothing. Common practice, no source.
const SHORTEST_PAUSE: Time = Time::from_minutes(5.0);
/// A time-out before the first evaluation, and the shortest of all.
const SHORTEST_TIME_OUT: Time = Time::from_minutes(1.0);
/// The alarm waits this many times the coldest event. Common practice, no source.
const PATIENCE: f64 = 2.0;

/// Pause and cycles for a period of the first divider.
pub(crate) fn control(job: &Job, period: Time) -> Control {
    let cycles = if job.pause.is_open() { libm::ceil(SHORTEST_PAUSE / period).clamp(1.0, 1000.0) } else { 1.0 };
    Control { pause: period * cycles, cycles: cycles as u32, time_out: SHORTEST_TIME_OUT }
}

/// The time-out that the coldest event asks for, in whole minutes.
pub(crate) fn time_out(design: &Design, seasons: &[SeasonResult]) -> Time {
    let slowest = seasons.iter().filter_map(|s| s.event_time).fold(Time::ZERO, Time::max);
    let minutes = libm::ceil(slowest.minutes() * PATIENCE);
    Time::from_minutes(minutes).max(SHORTEST_TIME_OUT).min(design.control.pause.max(SHORTEST_TIME_OUT))
}
