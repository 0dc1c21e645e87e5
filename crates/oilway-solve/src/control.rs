//! How the system is run: pause, cycles of an event, time-out.

use oilway_model::{Control, Design, Job, SeasonResult};
use oilway_units::Time;

use crate::tree::Rhythm;

/// Events are not closer together than this: a pump that never rests wears for nothing. Common practice, no source.
const SHORTEST_PAUSE: Time = Time::from_minutes(5.0);
/// A time-out before the first evaluation, and the shortest of all.
const SHORTEST_TIME_OUT: Time = Time::from_minutes(1.0);
/// The alarm waits this many times the coldest event. Common practice, no source.
const PATIENCE: f64 = 2.0;
/// Most cycles of one event; a first divider that must turn more often is too small for its job.
const MOST_CYCLES: f64 = 1000.0;

/// Pause and cycles for the rhythm that the first divider must keep.
pub(crate) fn control(job: &Job, rhythm: &Rhythm) -> Control {
    let pause = job.pause.chosen().copied().unwrap_or_else(|| round_pause(rhythm));
    Control { pause, cycles: cycles_in(pause, rhythm) as u32, time_out: SHORTEST_TIME_OUT }
}

/// Whole cycles in one event: those whose rhythm is nearest to the wanted one, and rather one more than too little lubricant.
fn cycles_in(pause: Time, rhythm: &Rhythm) -> f64 {
    let nearest = libm::round(pause / rhythm.wanted);
    let least = libm::ceil(pause / rhythm.longest - 1e-9);
    nearest.max(least).clamp(1.0, MOST_CYCLES)
}

/// A pause that can be set at a controller: whole minutes where the bands leave room, else whole seconds; as the demand wants it
/// where neither does. Rounded down if possible, for more harms less than less.
fn round_pause(rhythm: &Rhythm) -> Time {
    let wanted = rhythm.wanted * libm::ceil(SHORTEST_PAUSE / rhythm.wanted).clamp(1.0, MOST_CYCLES);
    let inside = |pause: &Time| {
        let period = *pause / cycles_in(*pause, rhythm);
        *pause > Time::ZERO && period >= rhythm.shortest && period <= rhythm.longest
    };
    let steps = [60.0, 1.0].into_iter().flat_map(|step| {
        let steps = wanted.seconds() / step;
        [libm::floor(steps + 1e-9), libm::ceil(steps - 1e-9)].map(|whole| Time::from_seconds(whole * step))
    });
    steps.into_iter().find(inside).unwrap_or(wanted)
}

/// The time-out that the coldest event asks for, in whole minutes.
pub(crate) fn time_out(design: &Design, seasons: &[SeasonResult]) -> Time {
    let slowest = seasons.iter().filter_map(|s| s.event_time).fold(Time::ZERO, Time::max);
    let minutes = libm::ceil(slowest.minutes() * PATIENCE);
    Time::from_minutes(minutes).max(SHORTEST_TIME_OUT).min(design.control.pause.max(SHORTEST_TIME_OUT))
}

#[cfg(test)]
mod tests {
    use oilway_model::Choice;
    use proptest::prelude::*;

    use super::*;
    use crate::testing::hall;

    fn seconds(shortest: f64, wanted: f64, longest: f64) -> Rhythm {
        let s = Time::from_seconds;
        Rhythm { shortest: s(shortest), wanted: s(wanted), longest: s(longest) }
    }

    fn open(rhythm: &Rhythm) -> Control {
        control(&hall(), rhythm)
    }

    #[test]
    fn a_long_rhythm_is_cut_to_whole_minutes() {
        let control = open(&seconds(3000.0, 4536.0, 5040.0));
        assert_eq!((control.pause, control.cycles), (Time::from_minutes(75.0), 1));
    }

    #[test]
    fn where_less_time_gives_too_much_the_pause_is_rounded_up() {
        let control = open(&seconds(715.9, 715.9, 760.0));
        assert_eq!((control.pause, control.cycles), (Time::from_minutes(12.0), 1));
    }

    #[test]
    fn a_narrow_band_is_met_by_seconds_and_the_narrowest_exactly() {
        assert_eq!(open(&seconds(715.2, 715.9, 716.1)).pause, Time::from_seconds(716.0));
        assert_eq!(open(&seconds(715.4, 715.4, 715.4)).pause, Time::from_seconds(715.4));
    }

    #[test]
    fn a_quick_rhythm_takes_several_cycles_in_one_event() {
        let control = open(&seconds(20.0, 31.0, 34.0));
        assert!(control.pause >= SHORTEST_PAUSE);
        let period = control.pause / f64::from(control.cycles);
        assert!(period >= Time::from_seconds(20.0) && period <= Time::from_seconds(34.0), "{control:?}");
    }

    #[test]
    fn a_given_pause_is_kept_and_filled_with_cycles() {
        let mut job = hall();
        job.pause = Choice::Given(Time::from_minutes(30.0));
        let control = control(&job, &seconds(200.0, 410.0, 440.0));
        // 1800 s at 410 s each are 4.39 cycles; four would be slower than 440 s.
        assert_eq!((control.pause, control.cycles), (Time::from_minutes(30.0), 5));
    }

    proptest! {
        #[test]
        fn a_pause_that_was_chosen_and_is_then_pinned_gives_the_same_control(
            wanted in 1.0_f64..1e6, faster in 0.3_f64..1.0, slower in 1.0_f64..1.2,
        ) {
            let rhythm = seconds(wanted * faster, wanted, wanted * slower);
            let chosen = open(&rhythm);
            let mut job = hall();
            job.pause = Choice::Pinned(chosen.pause);
            prop_assert_eq!(control(&job, &rhythm), chosen);
            let period = chosen.pause / f64::from(chosen.cycles);
            prop_assert!(period <= rhythm.longest * (1.0 + 1e-9));
        }
    }
}
