//! Random jobs: the text of a job file for any number of points, the same for the same seed.
//!
//! [`random`] draws a machine as an engineer meets it: a few places, dividers in as many levels as the points ask for, like parts
//! grouped on one divider, short tails, a lubricant that suits the coldest place. All that bears on the answer is stated as a single
//! value. Every number is invented. Nothing guarantees that a design exists: the laws that use these jobs count the share that has one.

mod kinds;

use core::fmt::Write as _;

use kinds::{KINDS, THREADS, given};

/// Most consumers of one divider.
const MOST_CONSUMERS: usize = 12;
/// Consumers for which a divider is laid out, so that some have room left.
const USUAL_CONSUMERS: usize = 10;
/// From this many points on an event must be over within two minutes, or pauses grow shorter than events.
const LARGE: usize = 300;

/// The text of a random job with this many points.
///
/// ```
/// let job = oilway_testkit::jobs::random(7, 34);
/// assert_eq!(job.matches("[[point]]").count(), 34);
/// assert_eq!(job, oilway_testkit::jobs::random(7, 34));
/// ```
pub fn random(seed: u64, points: usize) -> String {
    let mut dice = Dice::new(seed, points);
    let climate = *dice.one_of(CLIMATES);
    let lubricant = *dice.one_of(climate.lubricants);
    let mut job = Job { text: String::new(), us: dice.chance(15), oil: lubricant.contains(" oil "), points };
    job.head(&mut dice, seed, &climate, lubricant);
    let tree = Tree::new(&mut dice, points);
    job.dividers(&mut dice, &climate, &tree);
    job.points(&mut dice, &tree);
    job.text
}

/// A stream of numbers: xorshift with multiplication (Marsaglia 2003, Vigna 2016; memory), seeded through a mixing step so that
/// neighbouring seeds do not give neighbouring jobs.
struct Dice(u64);

impl Dice {
    fn new(seed: u64, points: usize) -> Self {
        let mut mixed = seed.wrapping_add(0x9E37_79B9_7F4A_7C15).wrapping_add((points as u64) << 40);
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        // Zero would stay zero for ever.
        Dice((mixed ^ (mixed >> 31)) | 1)
    }

    fn next(&mut self) -> u64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 11
    }

    /// A whole number from `low` to `high`, both included.
    fn whole(&mut self, low: usize, high: usize) -> usize {
        low + (self.next() % (high - low + 1) as u64) as usize
    }

    fn chance(&mut self, percent: usize) -> bool {
        self.whole(1, 100) <= percent
    }

    fn one_of<'a, T>(&mut self, of: &'a [T]) -> &'a T {
        let at = self.whole(0, of.len() - 1);
        &of[at]
    }

    /// A number from `low` to `high` in tenths, as it is written on a survey.
    fn tenths(&mut self, low: usize, high: usize) -> f64 {
        self.whole(low, high) as f64 / 10.0
    }
}

/// Temperatures of a machine: name, coldest, usual and hottest in °C of its places, and the lubricants that still move there.
#[derive(Clone, Copy)]
struct Climate {
    places: &'static [(&'static str, i32, i32, i32)],
    outdoors: bool,
    lubricants: &'static [&'static str],
}

const CLIMATES: &[Climate] = &[
    Climate {
        places: &[("hall", 15, 20, 35), ("warm side", 18, 30, 50), ("gallery", 12, 20, 40)],
        outdoors: false,
        lubricants: &[
            "lithium grease NLGI 1",
            "lithium grease NLGI 2",
            "lithium grease NLGI 0",
            "mineral oil VG 220",
        ],
    },
    Climate {
        places: &[("line", 10, 20, 30), ("cold store", 2, 4, 8), ("wash bay", 15, 35, 60)],
        outdoors: false,
        lubricants: &["grease F1", "lithium grease NLGI 1", "lithium grease NLGI 0", "mineral oil VG 150"],
    },
    Climate {
        places: &[("furnace side", 20, 45, 80), ("pit", 15, 25, 45), ("roller table", 18, 35, 65)],
        outdoors: false,
        lubricants: &["lithium grease NLGI 1", "lithium grease NLGI 2", "synthetic oil VG 220"],
    },
    Climate {
        places: &[("yard", -10, 10, 35), ("shelter", -5, 12, 35)],
        outdoors: true,
        lubricants: &[
            "low-temperature grease NLGI 0",
            "low-temperature grease NLGI 1",
            "lithium grease NLGI 00",
        ],
    },
];

/// The place of the pump, in every climate.
const PUMP_PLACE: &str = "pump room";
const SURROUNDINGS: &[&str] = &["clean", "dust", "damp", "splash", "heavy dust", "vibration"];

/// The dividers, parents before children.
struct Tree {
    /// The parent of each divider; none for the first.
    parents: Vec<Option<usize>>,
    /// Points on each divider.
    points: Vec<usize>,
}

impl Tree {
    fn new(dice: &mut Dice, points: usize) -> Self {
        // From the far ends up: how many dividers each level has, the first divider last.
        let mut levels = vec![shares(dice, points)];
        while let Some(last) = levels.last().filter(|level| level.len() > 1) {
            let above = shares(dice, last.len());
            levels.push(above);
        }
        let mut tree = Tree { parents: vec![None], points: Vec::new() };
        let mut above: Vec<usize> = vec![0];
        for (depth, level) in levels.iter().enumerate().rev() {
            tree.points.extend(level.iter().map(|&fed| if depth == 0 { fed } else { 0 }));
            if depth == 0 {
                break;
            }
            let parents =
                above.iter().zip(level).flat_map(|(&parent, &fed)| core::iter::repeat_n(Some(parent), fed));
            let before = tree.parents.len();
            tree.parents.extend(parents);
            above = (before..tree.parents.len()).collect();
        }
        tree
    }

    fn is_last(&self, divider: usize) -> bool {
        self.points[divider] > 0
    }
}

/// Splits consumers among dividers, unevenly, with no divider overfull.
fn shares(dice: &mut Dice, consumers: usize) -> Vec<usize> {
    if consumers <= MOST_CONSUMERS {
        return vec![consumers];
    }
    let dividers = consumers.div_ceil(USUAL_CONSUMERS);
    let (each, more) = (consumers / dividers, consumers % dividers);
    let mut shares: Vec<usize> = (0..dividers).map(|d| each + usize::from(d < more)).collect();
    for _ in 0..dividers {
        let (from, to) = (dice.whole(0, dividers - 1), dice.whole(0, dividers - 1));
        if shares[from] > 4 && shares[to] < MOST_CONSUMERS {
            shares[from] -= 1;
            shares[to] += 1;
        }
    }
    shares
}

/// The job while it is written.
struct Job {
    text: String,
    us: bool,
    oil: bool,
    points: usize,
}

impl Job {
    fn line(&mut self, line: &str) {
        self.text.push_str(line);
        self.text.push('\n');
    }

    fn say(&mut self, key: &str, value: &str) {
        // Writing into a text cannot fail.
        let _ = writeln!(self.text, "{key} = \"{value}\"");
    }

    fn length(&self, metres: f64) -> String {
        if self.us { format!("{} ft", (metres * 32.8).round() / 10.0) } else { format!("{metres} m") }
    }

    fn temperature(&self, celsius: i32) -> String {
        if self.us { format!("{} °F", f64::from(celsius) * 1.8 + 32.0) } else { format!("{celsius} °C") }
    }

    fn head(&mut self, dice: &mut Dice, seed: u64, climate: &Climate, lubricant: &str) {
        self.line("oilway = \"job 1\"");
        self.say("name", &format!("random job {seed} with {} points", self.points));
        self.say("units", if self.us { "us" } else { "metric" });
        self.line("\n[site]");
        self.say("altitude", &format!("{} m", dice.whole(0, 900)));
        self.place(dice, PUMP_PLACE, [10, 20, 35], false);
        for &(name, coldest, normal, hottest) in climate.places {
            self.place(dice, name, [coldest, normal, hottest], climate.outdoors);
        }
        self.line("\n[air]");
        let lowest = dice.tenths(52, 60);
        self.say("lowest", &format!("{lowest} bar"));
        self.say("highest", &format!("{} bar", dice.tenths(62, 70)));
        self.say("possible", "8 bar");
        self.line("\n[duty]");
        self.say("hours_per_day", &format!("{} h", dice.whole(8, 24)));
        self.line(&format!("days_per_week = {}", dice.whole(5, 7)));
        self.line("\n[limits]");
        let minutes = if self.points >= LARGE { 2 } else { dice.whole(2, 4) };
        self.say("event_time", &format!("{minutes} min"));
        self.say("age", "104 weeks");
        self.line("\n[lubricant]");
        self.say("library", lubricant);
        self.line("\n[package]");
        self.say("place", PUMP_PLACE);
    }

    fn place(&mut self, dice: &mut Dice, name: &str, days: [i32; 3], outdoors: bool) {
        self.line("\n[[place]]");
        self.say("name", name);
        for (key, day) in ["coldest", "normal", "hottest"].iter().zip(days) {
            let day = self.temperature(day);
            self.say(key, &day);
        }
        if outdoors {
            self.line("outdoors = true");
        }
        self.line(&format!("surroundings = [\"{}\"]", dice.one_of(SURROUNDINGS)));
    }

    fn dividers(&mut self, dice: &mut Dice, climate: &Climate, tree: &Tree) {
        let mut places: Vec<&str> = Vec::with_capacity(tree.parents.len());
        for (number, parent) in tree.parents.iter().enumerate() {
            // What hangs on a branch stands where the branch stands, but for the first dividers.
            let place = match parent {
                Some(above) if *above > 0 => places[*above],
                _ => dice.one_of(climate.places).0,
            };
            places.push(place);
            self.line("\n[[divider]]");
            self.say("name", &divider_name(number));
            self.say("place", place);
            self.say("fed_by", &parent.map_or("pump".to_owned(), divider_name));
            let length = if number == 0 { dice.tenths(20, 250) } else { dice.tenths(10, 150) };
            let rise = dice.whole(0, 4) as f64 / 2.0 - 0.5;
            let (length, rise) = (self.length(length), self.length(rise));
            self.line(&format!("route = [{{ length = \"{length}\", rise = \"{rise}\" }}]"));
        }
    }

    fn points(&mut self, dice: &mut Dice, tree: &Tree) {
        for divider in (0..tree.points.len()).filter(|&d| tree.is_last(d)) {
            let mut left = tree.points[divider];
            let mut group = 1;
            while left > 0 {
                // Like parts sit side by side.
                let alike = dice.whole(1, 4).min(left);
                self.group(dice, divider, group, alike);
                left -= alike;
                group += 1;
            }
        }
    }

    fn group(&mut self, dice: &mut Dice, divider: usize, group: usize, alike: usize) {
        let kind = dice.one_of(KINDS);
        let fields = (kind.fields)(dice);
        let given = dice.chance(40).then(|| given(dice, self.oil));
        let thread = *dice.one_of(THREADS);
        for number in 1..=alike {
            self.line("\n[[point]]");
            self.say("name", &format!("{} {divider}.{group}.{number}", kind.part));
            self.say("part", kind.part);
            self.say("kind", kind.id);
            self.say("on", &divider_name(divider));
            self.say("thread", thread);
            self.line(&fields);
            if let Some(given) = &given {
                self.line(given);
            }
            let tube = self.length(dice.tenths(5, 60));
            let hose = self.length(dice.tenths(5, 30));
            self.line(&match dice.chance(25) {
                true => {
                    format!("route = [{{ length = \"{tube}\" }}, {{ length = \"{hose}\", flexible = true }}]")
                }
                false => format!("route = [{{ length = \"{tube}\" }}]"),
            });
        }
    }
}

fn divider_name(number: usize) -> String {
    format!("divider {number}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_job_has_as_many_points_as_asked_for_and_no_divider_is_overfull() {
        for points in [1, 7, 12, 13, 34, 150, 1_000, 10_000] {
            let text = random(3, points);
            assert_eq!(text.matches("[[point]]").count(), points);
            let mut fed: std::collections::BTreeMap<&str, usize> = std::collections::BTreeMap::new();
            for line in text.lines() {
                for key in ["on = ", "fed_by = "] {
                    *fed.entry(line.strip_prefix(key).unwrap_or_default()).or_default() += 1;
                }
            }
            fed.remove("");
            assert_eq!(fed.remove("\"pump\""), Some(1));
            assert_eq!(fed.len(), text.matches("[[divider]]").count(), "every divider feeds something");
            assert!(fed.values().all(|&consumers| (1..=MOST_CONSUMERS).contains(&consumers)), "{fed:?}");
        }
    }

    #[test]
    fn two_levels_of_dividers_up_to_a_hundred_points_and_four_for_ten_thousand() {
        let levels = |points| {
            let tree = Tree::new(&mut Dice::new(1, points), points);
            let depth = |mut at: usize| {
                let mut depth = 1;
                while let Some(above) = tree.parents[at] {
                    (at, depth) = (above, depth + 1);
                }
                depth
            };
            (0..tree.parents.len()).map(depth).max()
        };
        assert_eq!([12, 13, 100, 1_000, 10_000].map(levels), [1, 2, 2, 3, 4].map(Some));
    }

    #[test]
    fn another_seed_gives_another_job_and_the_same_seed_the_same() {
        assert_eq!(random(1, 50), random(1, 50));
        assert_ne!(random(1, 50), random(2, 50));
        assert_ne!(random(1, 50).replace("50", "51"), random(1, 51));
    }

    #[test]
    fn all_climates_kinds_and_lubricants_come_up() {
        let all: String = (0..300).map(|seed| random(seed, 12)).collect();
        for kind in KINDS {
            assert!(all.contains(kind.id), "{}", kind.id);
        }
        for lubricant in CLIMATES.iter().flat_map(|climate| climate.lubricants) {
            assert!(all.contains(lubricant), "{lubricant}");
        }
    }
}
