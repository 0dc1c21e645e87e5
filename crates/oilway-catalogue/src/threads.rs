//! How threads and line ends are written: one writing for each, so that equal threads are equal texts.
//!
//! `G 1/4`, `R 1/4`, `Rc 1/4`, `Rp 1/4` (ISO 228-1, ISO 7-1); `M10x1` (ISO 261); `1/4-18 NPT`, `1/4-18 NPTF`
//! (ASME B1.20.1 and B1.20.3); `7/16-20 UNF` (ASME B1.1); `tube 8` and `hose 4`, in millimetres, for ends that take a tube
//! of this outside diameter or a hose of this bore. Sizes and pitches are from memory of these standards.

use core::fmt;
use std::collections::BTreeMap;
use std::sync::LazyLock;

use oilway_text::{Message, message};
use oilway_units::Length;

use crate::reading::nearest;

/// A family of threads or ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ThreadFamily {
    /// Parallel pipe thread, sealed on its face (ISO 228-1).
    G,
    /// Taper pipe thread, male (ISO 7-1).
    R,
    /// Taper pipe thread, female (ISO 7-1).
    Rc,
    /// Parallel pipe thread, female, for a taper male (ISO 7-1).
    Rp,
    /// Metric thread (ISO 261).
    Metric,
    /// Taper pipe thread with sealant (ASME B1.20.1).
    Npt,
    /// Taper pipe thread that seals dry (ASME B1.20.3).
    Nptf,
    /// Unified thread (ASME B1.1).
    Unified,
    /// End that takes a tube.
    Tube,
    /// End that takes a hose.
    Hose,
}

/// A thread or a line end.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Thread {
    family: ThreadFamily,
    /// The one writing.
    written: String,
}

/// Why a text is no thread.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotAThread {
    /// A metric size without its pitch, of which there are several.
    NoPitch {
        /// The writings that it may mean.
        either: Vec<&'static str>,
    },
    /// Nothing known; perhaps this was meant.
    Unknown {
        /// The thread that is written most alike.
        nearest: Option<&'static str>,
    },
}

const PIPE: &[&str] = &["1/8", "1/4", "3/8", "1/2", "3/4", "1", "1 1/4", "1 1/2", "2"];
const METRIC: &[&str] = &[
    "M5x0.8", "M6x0.75", "M6x1", "M8x1", "M8x1.25", "M10x1", "M10x1.25", "M10x1.5", "M12x1", "M12x1.25",
    "M12x1.5", "M12x1.75", "M14x1.5", "M14x2", "M16x1.5", "M16x2", "M18x1.5", "M20x1.5", "M22x1.5",
    "M24x1.5", "M26x1.5", "M27x2", "M30x1.5", "M33x2",
];
const NPT: &[&str] = &[
    "1/16-27 NPT",
    "1/8-27 NPT",
    "1/4-18 NPT",
    "3/8-18 NPT",
    "1/2-14 NPT",
    "3/4-14 NPT",
    "1-11.5 NPT",
    "1 1/4-11.5 NPT",
    "1 1/2-11.5 NPT",
    "2-11.5 NPT",
];
const NPTF: &[&str] = &[
    "1/16-27 NPTF",
    "1/8-27 NPTF",
    "1/4-18 NPTF",
    "3/8-18 NPTF",
    "1/2-14 NPTF",
    "3/4-14 NPTF",
    "1-11.5 NPTF",
];
const UNIFIED: &[&str] = &[
    "10-32 UNF",
    "1/4-28 UNF",
    "5/16-24 UNF",
    "3/8-24 UNF",
    "7/16-20 UNF",
    "1/2-20 UNF",
    "9/16-18 UNF",
    "3/4-16 UNF",
    "7/8-14 UNF",
    "1 1/16-12 UN",
    "1 5/16-12 UN",
];

impl Thread {
    /// Reads a thread as people write it.
    ///
    /// ```
    /// use oilway_catalogue::Thread;
    ///
    /// let same = |text| Thread::read(text).map(|thread| thread.to_string());
    /// assert_eq!(same("g1/4"), Ok("G 1/4".to_owned()));
    /// assert_eq!(same("M 10 × 1"), Ok("M10x1".to_owned()));
    /// assert_eq!(same("1/4 NPT"), Ok("1/4-18 NPT".to_owned()));
    /// assert!(same("M10").is_err()); // 1, 1.25 or 1.5?
    /// ```
    ///
    /// # Errors
    /// [`NotAThread`] says what is missing, or which thread is written most alike.
    pub fn read(text: &str) -> Result<Thread, NotAThread> {
        let wanted = folded(text);
        if wanted.len() > LONGEST {
            return Err(NotAThread::Unknown { nearest: None });
        }
        if let Some(end) = line_end(&wanted) {
            return Ok(end);
        }
        if let Some(thread) = by_spelling().get(&wanted) {
            return Ok(thread.clone());
        }
        Err(NotAThread::of(text, &wanted))
    }

    /// Its family.
    pub fn family(&self) -> ThreadFamily {
        self.family
    }

    /// The diameter of the tube, or the bore of the hose, that the end takes; none for a thread.
    pub fn line(&self) -> Option<Length> {
        let size = self.written.strip_prefix("tube ").or_else(|| self.written.strip_prefix("hose "))?;
        size.parse().ok().map(Length::from_millimetres)
    }
}

impl fmt::Display for Thread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.written)
    }
}

/// No thread is written longer.
const LONGEST: usize = 40;

/// Every known thread by each of its spellings, folded.
fn by_spelling() -> &'static BTreeMap<String, Thread> {
    static BY_SPELLING: LazyLock<BTreeMap<String, Thread>> = LazyLock::new(|| {
        let spelt = |(family, written): (ThreadFamily, String)| {
            spellings(family, &written)
                .into_iter()
                .map(move |spelling| (folded(&spelling), Thread { family, written: written.clone() }))
        };
        known().flat_map(spelt).collect()
    });
    &BY_SPELLING
}

/// All that is known, in its one writing.
fn known() -> impl Iterator<Item = (ThreadFamily, String)> {
    use ThreadFamily::{G, Metric, Npt, Nptf, R, Rc, Rp, Unified};
    let pipe = [(G, "G"), (R, "R"), (Rc, "Rc"), (Rp, "Rp")];
    let pipe = pipe
        .into_iter()
        .flat_map(|(family, letter)| PIPE.iter().map(move |size| (family, format!("{letter} {size}"))));
    let listed = [(Metric, METRIC), (Npt, NPT), (Nptf, NPTF), (Unified, UNIFIED)];
    let listed =
        listed.into_iter().flat_map(|(family, list)| list.iter().map(move |one| (family, (*one).to_owned())));
    pipe.chain(listed)
}

/// The writing of a thread and its usual variants: tolerance class A of ISO 228, pipe size first or last, threads to the
/// inch left out where the size says them.
fn spellings(family: ThreadFamily, written: &str) -> Vec<String> {
    let mut spellings = vec![written.to_owned()];
    match family {
        ThreadFamily::G => spellings.push(format!("{written} A")),
        ThreadFamily::Npt | ThreadFamily::Nptf => {
            if let (Some((size, _)), Some((_, word))) = (written.rsplit_once('-'), written.rsplit_once(' ')) {
                spellings.extend([format!("{size} {word}"), format!("{word} {size}")]);
            }
        }
        _ => {}
    }
    spellings
}

/// Small letters, no spaces, one sign of multiplication, one hyphen; a whole inch and its fraction stay apart.
fn folded(text: &str) -> String {
    let mut folded = String::new();
    let mut digit_before = false;
    for c in text.trim().chars().flat_map(char::to_lowercase) {
        match c {
            '×' | '*' => folded.push('x'),
            '–' | '−' | '‑' => folded.push('-'),
            ',' => folded.push('.'),
            '"' | '”' | '″' => {}
            c if c.is_whitespace() => {
                digit_before = folded.ends_with(|last: char| last.is_ascii_digit());
                continue;
            }
            c => {
                if digit_before && c.is_ascii_digit() {
                    folded.push(' ');
                }
                folded.push(c);
            }
        }
        digit_before = false;
    }
    folded
}

fn line_end(folded: &str) -> Option<Thread> {
    let ends = [(ThreadFamily::Tube, "tube"), (ThreadFamily::Hose, "hose")];
    let (family, word, size) =
        ends.into_iter().find_map(|(family, word)| Some((family, word, folded.strip_prefix(word)?)))?;
    let size: f64 = size.strip_suffix("mm").unwrap_or(size).parse().ok()?;
    (size.is_finite() && (0.5..=500.0).contains(&size))
        .then(|| Thread { family, written: format!("{word} {size}") })
}

impl NotAThread {
    fn of(text: &str, folded: &str) -> Self {
        let either: Vec<&str> = METRIC
            .iter()
            .copied()
            .filter(|one| one.to_lowercase().split_once('x').is_some_and(|(size, _)| size == folded))
            .collect();
        if !either.is_empty() {
            return NotAThread::NoPitch { either };
        }
        let listed = METRIC.iter().chain(NPT).chain(NPTF).chain(UNIFIED).copied();
        let pipe = ["G 1/8", "G 1/4", "G 3/8", "G 1/2", "G 3/4", "R 1/8", "R 1/4", "R 3/8", "R 1/2"];
        NotAThread::Unknown { nearest: nearest(text, pipe.into_iter().chain(listed)) }
    }

    /// The cure for people.
    pub fn cure(&self) -> Message {
        match self {
            NotAThread::NoPitch { either } => message!("catalogue-thread-pitch", threads = either.clone()),
            NotAThread::Unknown { nearest: Some(near) } => message!("reading-perhaps", word = *near),
            NotAThread::Unknown { nearest: None } => message!("catalogue-thread-writings"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> String {
        Thread::read(text).map(|thread| thread.to_string()).unwrap_or_else(|no| format!("{no:?}"))
    }

    #[test]
    fn every_thread_reads_back_as_it_is_written() {
        for (family, written) in known() {
            let thread = Thread::read(&written).unwrap();
            assert_eq!((thread.family(), thread.to_string()), (family, written));
        }
    }

    #[test]
    fn no_two_threads_share_a_spelling() {
        let mut seen = std::collections::BTreeMap::new();
        for (family, written) in known() {
            for spelling in spellings(family, &written) {
                let before = seen.insert(folded(&spelling), written.clone());
                assert!(
                    before.is_none_or(|before| before == written),
                    "{spelling} is {written} and something else"
                );
            }
        }
    }

    #[test]
    fn loose_writings_become_one() {
        assert_eq!(read("G1/4A"), "G 1/4");
        assert_eq!(read("m8 x 1,25"), "M8x1.25");
        assert_eq!(read("NPT 1/8"), "1/8-27 NPT");
        assert_eq!(read("1 1/4 NPT"), "1 1/4-11.5 NPT");
        assert_eq!(read("7/16 – 20 UNF"), "7/16-20 UNF");
        assert_eq!(read("Tube 8 mm"), "tube 8");
        assert_eq!(read("hose 4.5"), "hose 4.5");
    }

    #[test]
    fn one_and_a_quarter_is_not_eleven_quarters() {
        assert_eq!(read("G 1 1/4"), "G 1 1/4");
        assert!(Thread::read("G 11/4").is_err());
    }

    #[test]
    fn a_size_without_pitch_asks_and_a_wrong_pitch_names_the_nearest() {
        assert!(matches!(Thread::read("M10"), Err(NotAThread::NoPitch { either }) if either.len() == 3));
        assert!(matches!(
            Thread::read("1/4-19 NPT"),
            Err(NotAThread::Unknown { nearest: Some("1/4-18 NPT") })
        ));
        assert!(matches!(Thread::read("tube -3"), Err(NotAThread::Unknown { .. })));
    }
}
