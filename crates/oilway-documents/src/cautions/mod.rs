//! The usual cautions: read from `data/cautions.csv`, picked by what a design holds, placed at the step where the hazard stands.

mod triggers;

use std::sync::LazyLock;

pub use triggers::{Trigger, triggered, triggers};

/// A caution.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Caution {
    /// Its lasting id.
    pub id: String,
    /// The steps of a system's life at which it stands.
    pub steps: Vec<Step>,
    /// What brings it up.
    pub trigger: String,
    /// What can happen.
    pub hazard: String,
    /// What to do and what to leave.
    pub text: String,
    /// The standard, law or practice behind it.
    pub rule: String,
    /// How far that source can be trusted: the weakest part of it.
    pub standing: String,
}

/// A step in the life of a system.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Step {
    /// At all times.
    Always,
    /// While it is designed.
    Design,
    /// While it is put together.
    Assembly,
    /// At its first start.
    Commissioning,
    /// While it is mended.
    Service,
    /// Whenever lubricant is handled.
    Handling,
    /// In every paper about it.
    Document,
}

/// The word before a caution.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Signal {
    /// Somebody may die or be hurt for life.
    Warning,
    /// Somebody or something may be hurt.
    Caution,
}

/// Hazards that may kill or maim: stored pressure and what it does, unexpected motion, ignition. Signal words after ANSI
/// Z535.6 and ISO 3864-2, both from memory; which hazard gets which word is judged.
const GRAVE: &[&str] = &[
    "injection",
    "stored",
    "burst",
    "blow-out",
    "jet",
    "whip",
    "unexpected",
    "motion",
    "moving",
    "ignition",
    "fire",
    "shock",
    "fall",
    "suffocation",
    "overpressure",
    "pressure",
    "disc",
    "protection",
    "embolism",
];

impl Caution {
    /// The word that stands before it.
    pub fn signal(&self) -> Signal {
        let grave = GRAVE.iter().any(|word| self.hazard.contains(word));
        if grave { Signal::Warning } else { Signal::Caution }
    }

    /// Whether it stands at this step.
    pub fn stands_at(&self, step: Step) -> bool {
        self.steps.contains(&step)
    }
}

const FILE: &str = include_str!("../../../../data/cautions.csv");

/// All cautions, in the order of the file.
pub fn cautions() -> &'static [Caution] {
    static CAUTIONS: LazyLock<Vec<Caution>> = LazyLock::new(|| read(FILE));
    &CAUTIONS
}

/// The caution with this id.
pub fn caution(id: &str) -> Option<&'static Caution> {
    cautions().iter().find(|caution| caution.id == id)
}

/// The cautions of a file whose columns have these names. A row that lacks one is left out; a test holds that none does.
fn read(file: &str) -> Vec<Caution> {
    let mut rows = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(file.as_bytes());
    let Ok(heads) = rows.headers().cloned() else { return Vec::new() };
    let caution = |row: csv::StringRecord| {
        let cell = |name: &str| row.get(heads.iter().position(|head| head == name)?).map(str::to_owned);
        Some(Caution {
            id: cell("id")?,
            steps: steps(&cell("step")?),
            trigger: cell("trigger")?,
            hazard: cell("hazard")?,
            text: cell("caution")?,
            rule: cell("standard_or_rule")?,
            standing: cell("standing")?,
        })
    };
    rows.records().filter_map(Result::ok).filter_map(caution).collect()
}

fn steps(cell: &str) -> Vec<Step> {
    let step = |word: &str| match word.trim() {
        "design" => Step::Design,
        "assembly" => Step::Assembly,
        "commissioning" => Step::Commissioning,
        "service" => Step::Service,
        "handling" => Step::Handling,
        "document" => Step::Document,
        // "all" and its variants; a word that nobody knows stands everywhere rather than nowhere.
        _ => Step::Always,
    };
    cell.split(',').map(step).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_row_of_the_file_is_read() {
        let rows = FILE.lines().filter(|line| line.starts_with('S')).count();
        assert_eq!(cautions().len(), rows);
        assert!(FILE.contains(&format!("# rows = {rows}\n")), "the file counts its own rows");
        for caution in cautions() {
            let cells = [&caution.trigger, &caution.hazard, &caution.text, &caution.rule, &caution.standing];
            assert!(cells.iter().all(|cell| !cell.trim().is_empty()), "{}", caution.id);
        }
    }

    #[test]
    fn ids_are_unique_and_every_step_is_a_known_word() {
        let ids: BTreeSet<&str> = cautions().iter().map(|caution| caution.id.as_str()).collect();
        assert_eq!(ids.len(), cautions().len());
        let always: Vec<&str> =
            cautions().iter().filter(|c| c.stands_at(Step::Always)).map(|c| c.id.as_str()).collect();
        assert_eq!(always, ["S01", "S30", "S31", "S40"], "a misspelt step would stand everywhere");
    }

    #[test]
    fn what_can_maim_is_a_warning_and_a_spill_is_a_caution() {
        for id in ["S20", "S31", "S25", "S10", "S50", "S42"] {
            assert_eq!(caution(id).unwrap().signal(), Signal::Warning, "{id}");
        }
        for id in ["S92", "S90", "S12"] {
            assert_eq!(caution(id).unwrap().signal(), Signal::Caution, "{id}");
        }
    }
}
