//! The bench: a job opened from its files, and the design, the answer and the judgement that follow from it.

use std::path::{Path, PathBuf};

use oilway_catalogue::Catalogue;
use oilway_catalogue::lubricants::library;
use oilway_check::Report;
use oilway_documents::sheets::Papers;
use oilway_model::{Answer, Assumption, Choice, Design, Finding, Job, Principle};
use oilway_physics::Ledger;
use oilway_solve::{Obstacle, Study};
use oilway_store::{Lock, apply_lock, read_job, read_lock};
use oilway_text::message;

use crate::desk::Desk;
use crate::exit::Exit;
use crate::files;
use crate::progress::Progress;
use crate::trouble::Trouble;

/// A job and what lies around it.
#[derive(Debug)]
pub(crate) struct Opened {
    /// The job file as the user named it.
    pub(crate) file: String,
    /// Its text.
    pub(crate) text: String,
    /// The job, with the choices of its lock file pinned.
    pub(crate) job: Job,
    /// The parts that it may use.
    pub(crate) catalogue: Catalogue,
}

/// A design and what follows from it.
#[derive(Debug)]
pub(crate) struct Worked {
    /// The design.
    pub(crate) design: Design,
    /// Its numbers, with the checker's verdict.
    pub(crate) answer: Answer,
    /// What the checker found, in the design and in the designer's numbers.
    pub(crate) findings: Vec<Finding>,
}

impl Worked {
    /// What the sheets are made from.
    pub(crate) fn papers<'a>(&'a self, assumptions: &'a [Assumption]) -> Papers<'a> {
        Papers { design: &self.design, answer: &self.answer, findings: &self.findings, assumptions }
    }
}

/// The file that a path means: a folder stands for the job in it.
pub(crate) fn job_file(path: &str) -> String {
    let inside = Path::new(path).join("job.toml");
    if inside.is_file() { inside.display().to_string() } else { path.to_owned() }
}

/// The lock file of a job file.
pub(crate) fn lock_file(job: &str) -> PathBuf {
    Path::new(job).with_extension("lock")
}

/// Opens a job with the choices that were pinned, but for those to be chosen anew.
pub(crate) fn open(desk: &Desk, path: &str, reopen: &[String]) -> Result<Opened, Trouble> {
    let file = job_file(path);
    let text = files::job_text(&file)?;
    opened(desk, file, text, reopen)
}

/// Opens a job whose text is at hand.
pub(crate) fn opened(desk: &Desk, file: String, text: String, reopen: &[String]) -> Result<Opened, Trouble> {
    let catalogue = files::catalogue(desk)?;
    let (job, mistakes) = read_job(&file, &text, &catalogue, library());
    let Some(mut job) = job else {
        return Err(Trouble::Mistakes(vec![(file, text)], mistakes));
    };
    if let Some((path, lock)) = locked(&file)? {
        let mistakes = apply_lock(&mut job, &lock, reopen, &catalogue);
        if !mistakes.is_empty() {
            return Err(Trouble::Mistakes(
                vec![(lock.file.clone(), files::text(&path.display().to_string())?)],
                mistakes,
            ));
        }
    }
    Ok(Opened { file, text, job, catalogue })
}

/// The lock file beside a job, if there is one.
pub(crate) fn locked(job: &str) -> Result<Option<(PathBuf, Lock)>, Trouble> {
    let path = lock_file(job);
    if !path.is_file() {
        return Ok(None);
    }
    let name = path.display().to_string();
    let text = files::text(&name)?;
    let (lock, mistakes) = read_lock(&name, &text);
    if mistakes.is_empty() {
        Ok(Some((path, lock)))
    } else {
        Err(Trouble::Mistakes(vec![(name, text)], mistakes))
    }
}

/// Designs the job, works out what follows, and has it judged; the ledger keeps how, if it is on. A job that asks for a principle
/// that is not designed here is told why, whatever was asked of it.
pub(crate) fn work(
    desk: &Desk,
    job: &Job,
    catalogue: &Catalogue,
    ledger: &mut Ledger,
) -> Result<Worked, Trouble> {
    if job.principle.chosen() == Some(&Principle::Parallel) {
        return Err(no_parallel(desk, job, catalogue));
    }
    progressive(desk, job, catalogue, ledger)
}

/// What stands against a parallel single line in this job, along the lines that a progressive system would have.
fn no_parallel(desk: &Desk, job: &Job, catalogue: &Catalogue) -> Trouble {
    let open = Job { principle: Choice::Open, ..job.clone() };
    let worked = match progressive(desk, &open, catalogue, &mut Ledger::off()) {
        Ok(worked) => worked,
        Err(trouble) => return trouble,
    };
    let (exit, what, cure) = match oilway_solve::parallel(&worked.design, catalogue) {
        None => (
            Exit::CannotTell,
            message!("oilway-parallel-no-valve"),
            message!("oilway-parallel-no-valve-cure"),
        ),
        Some(verdict) if verdict.works => {
            (Exit::CannotTell, verdict.says, message!("oilway-parallel-works-cure"))
        }
        Some(verdict) => (Exit::WillNotWork, verdict.says, message!("oilway-parallel-refused-cure")),
    };
    Trouble::Told(exit, vec![(what, cure)])
}

fn progressive(
    desk: &Desk,
    job: &Job,
    catalogue: &Catalogue,
    ledger: &mut Ledger,
) -> Result<Worked, Trouble> {
    let _progress = Progress::begin(desk, &message!("oilway-progress-design"));
    let design = oilway_solve::design(job, catalogue).map_err(obstacles)?;
    let mut answer = oilway_solve::evaluate(&design, ledger);
    let mut found = oilway_check::check(&design).findings;
    found.extend(oilway_check::compare(&design, &answer));
    let report = Report::of(found);
    answer.verdict = report.verdict;
    Ok(Worked { design, answer, findings: report.findings })
}

/// What the unknowns of a design do.
pub(crate) fn study(desk: &Desk, design: &Design) -> Study {
    let _progress = Progress::begin(desk, &message!("oilway-progress-study"));
    oilway_solve::study(design)
}

/// What stands in the way of a design.
pub(crate) fn obstacles(list: Vec<Obstacle>) -> Trouble {
    let told = |obstacle: Obstacle| {
        (message!("oilway-obstacle", at = obstacle.at, what = obstacle.what), obstacle.cure)
    };
    Trouble::Told(Exit::WillNotWork, list.into_iter().map(told).collect())
}
