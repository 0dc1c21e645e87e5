//! The exit codes: what a script learns without reading a word.

use oilway_model::Verdict;

/// How a command ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Exit {
    /// The question is answered; where a system was judged, it works.
    Works,
    /// The command line itself is wrong.
    Usage,
    /// The system works if somebody takes care.
    WithCare,
    /// The system will not work, or must not be built or started like this.
    WillNotWork,
    /// The facts do not suffice.
    CannotTell,
    /// There are mistakes in what was handed in.
    Mistakes,
    /// A file could not be read or written.
    Files,
}

impl Exit {
    /// All of them, by rising code.
    pub const ALL: [Exit; 7] = [
        Exit::Works,
        Exit::Usage,
        Exit::WithCare,
        Exit::WillNotWork,
        Exit::CannotTell,
        Exit::Mistakes,
        Exit::Files,
    ];

    /// The number that the system gets. One is left free: programs that crash use it.
    pub const fn code(self) -> u8 {
        match self {
            Exit::Works => 0,
            Exit::Usage => 2,
            Exit::WithCare => 3,
            Exit::WillNotWork => 4,
            Exit::CannotTell => 5,
            Exit::Mistakes => 6,
            Exit::Files => 7,
        }
    }

    /// The key of the sentence that says what it means.
    pub const fn meaning(self) -> &'static str {
        match self {
            Exit::Works => "oilway-exit-works",
            Exit::Usage => "oilway-exit-usage",
            Exit::WithCare => "oilway-exit-with-care",
            Exit::WillNotWork => "oilway-exit-will-not-work",
            Exit::CannotTell => "oilway-exit-cannot-tell",
            Exit::Mistakes => "oilway-exit-mistakes",
            Exit::Files => "oilway-exit-files",
        }
    }
}

impl From<Verdict> for Exit {
    fn from(verdict: Verdict) -> Self {
        match verdict {
            Verdict::Works => Exit::Works,
            Verdict::WorksWithCare => Exit::WithCare,
            Verdict::WillNotWork => Exit::WillNotWork,
            Verdict::CannotTellYet => Exit::CannotTell,
        }
    }
}
