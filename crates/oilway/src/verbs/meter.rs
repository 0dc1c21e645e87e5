//! `oilway meter`: the exact choice of sections for questions in a file, beside the proven answers that the file may hold.

use oilway_solve::metering::{
    Combining, Infeasible, Limits, OneDivider, Optimum, PeriodRange, SectionSize, Tees, Wanted,
};
use oilway_store::{MeteringInstance, MeteringModel, read_metering};
use oilway_text::message;

use crate::desk::{Desk, Reply};
use crate::exit::Exit;
use crate::files;
use crate::json::meter::MeterAnswer;
use crate::progress::Progress;
use crate::request::Request;
use crate::show;
use crate::trouble::Trouble;
use crate::verbs::{Input, Takes, Verb};

pub(crate) static VERB: Verb = Verb {
    name: "meter",
    title: "oilway-verb-meter",
    about: "oilway-verb-meter-about",
    inputs: &[Input { name: "file", takes: Takes::Word, value: "FILE", help: "oilway-input-meter" }],
    examples: &["meter reference/metering/one_divider.json"],
    run,
    schema: Some(crate::json::schema::<MeterAnswer>),
};

/// A question with its answer.
#[derive(Debug)]
pub(crate) struct Metered {
    /// The question as it stands in the file.
    pub(crate) asked: MeteringInstance,
    /// The answer.
    pub(crate) found: Result<Optimum, Infeasible>,
}

impl Metered {
    /// Whether the file holds a proven answer that differs from this one.
    pub(crate) fn differs(&self) -> bool {
        match (&self.asked.proven, &self.found) {
            (None, _) | (_, Err(Infeasible::EffortSpent { .. })) => false,
            (Some(Some(proven)), Ok(found)) => *proven != found.objective as f64,
            (Some(None), Ok(_)) | (Some(Some(_)), Err(_)) => true,
            (Some(None), Err(_)) => false,
        }
    }
}

fn run(desk: &Desk, request: &Request) -> Result<Reply, Trouble> {
    let file = request.word("file").unwrap_or_default();
    let (questions, remarks) = read_metering(&files::text(file)?);
    if questions.is_empty() {
        let mut problems: Vec<_> =
            remarks.into_iter().map(|what| (what, message!("oilway-meter-cure"))).collect();
        if problems.is_empty() {
            problems.push((message!("oilway-meter-empty", file = file), message!("oilway-meter-cure")));
        }
        return Err(Trouble::Told(Exit::Mistakes, problems));
    }
    let _progress = Progress::begin(desk, &message!("oilway-progress-meter"));
    let answers: Vec<Metered> =
        questions.into_iter().map(|asked| Metered { found: question(&asked).solve(), asked }).collect();
    let exit = if answers.iter().any(Metered::differs) { Exit::WillNotWork } else { Exit::Works };
    let data = |reader: &_| MeterAnswer::new(&answers, &remarks, reader);
    Ok(desk.reply(exit, desk.reader(None), data, |page| {
        show::metering::answers(page, &answers, &remarks, desk.all)
    }))
}

fn question(asked: &MeteringInstance) -> OneDivider {
    let bands = asked.lo.iter().zip(&asked.hi);
    let points =
        asked.demand.iter().zip(bands).map(|(&demand, (&lo, &hi))| Wanted::new(demand, lo, hi)).collect();
    let sizes = asked.sizes.iter().zip(&asked.piston_cost);
    let combining = match asked.model {
        MeteringModel::Joined { join_cost } => Combining::joined_at(join_cost),
        MeteringModel::Teed { most_outlets, tee_cost } => {
            // More outlets than a byte counts are refused by the search as too many feeds.
            let most_outlets = u8::try_from(most_outlets).unwrap_or(u8::MAX);
            Combining { join_cost: None, tees: Some(Tees { most_outlets, cost: tee_cost }) }
        }
    };
    OneDivider {
        points,
        sizes: sizes.map(|(&volume_mm3, &cost)| SectionSize { volume_mm3, cost }).collect(),
        limits: Limits {
            pistons: (asked.fewest_pistons, asked.most_pistons),
            combining,
            period: PeriodRange::seconds(asked.shortest_period, asked.longest_period, asked.period_step),
            effort: Limits::USUAL_EFFORT,
        },
    }
}
