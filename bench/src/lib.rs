//! What the benchmarks measure on: whole jobs of three sizes, the lines of the independent tables, questions of metering.
//!
//! A reader finds here [`text`], [`read`] and [`solvable`] for jobs, [`lines`] for the pipe law and [`questions`] for metering.

use std::path::PathBuf;

use oilway_catalogue::{Catalogue, house, lubricants};
use oilway_check::Report;
use oilway_model::{Answer, Design, Job};
use oilway_physics::Ledger;
use oilway_solve::metering::{Combining, Limits, OneDivider, PeriodRange, SectionSize, Wanted};
use oilway_store::{MeteringInstance, MeteringModel};
use oilway_testkit::{jobs, table};
use oilway_units::{Consistency, Flow, Length, Pressure, Ratio};

/// Points of the jobs that are measured; the first is the worked job of the dairy.
pub const SIZES: [usize; 3] = [34, 1_000, 10_000];

/// The catalogue of all jobs here.
pub fn catalogue() -> &'static Catalogue {
    house::catalogue()
}

/// The text of a job: the dairy for 34 points, else the first random one that can be designed.
///
/// # Panics
/// If a worked job is missing or no random job of this size can be designed.
pub fn text(points: usize) -> String {
    if points == SIZES[0] {
        let file = root().join("jobs/dairy/job.toml");
        return std::fs::read_to_string(&file).unwrap_or_else(|error| panic!("{}: {error}", file.display()));
    }
    (1..50)
        .map(|seed| jobs::random(seed, points))
        .find(|text| oilway_solve::design(&read(text), catalogue()).is_ok())
        .unwrap_or_else(|| panic!("no random job of {points} points can be designed"))
}

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// Reads a job.
///
/// # Panics
/// If the text holds a mistake.
pub fn read(text: &str) -> Job {
    let (job, mistakes) = oilway_store::read_job("job.toml", text, catalogue(), lubricants::library());
    job.unwrap_or_else(|| panic!("a benchmark's job has mistakes: {mistakes:?}"))
}

/// The job with this many points.
pub fn solvable(points: usize) -> Job {
    read(&text(points))
}

/// Designs a job.
///
/// # Panics
/// If there is an obstacle.
pub fn design(job: &Job) -> Design {
    oilway_solve::design(job, catalogue()).unwrap_or_else(|obstacles| panic!("no design: {obstacles:?}"))
}

/// The whole work: design, evaluation, check.
pub fn whole(job: &Job) -> (Design, Answer, Report) {
    let design = design(job);
    let answer = oilway_solve::evaluate(&design, &mut Ledger::off());
    let report = oilway_check::check(&design);
    (design, answer, report)
}

/// A grease in a line, with the flow and the drop that SciPy found.
#[derive(Clone, Copy, Debug)]
pub struct Line {
    /// Bore.
    pub bore: Length,
    /// Length.
    pub length: Length,
    /// Flow.
    pub flow: Flow,
    /// Yield stress.
    pub yield_stress: Pressure,
    /// Consistency.
    pub consistency: Consistency,
    /// Index.
    pub index: Ratio,
    /// Drop by integration of the flow curve and a root of the integral.
    pub drop: Pressure,
}

impl Line {
    /// The drop by the closed form and its inverse.
    pub fn own_drop(&self) -> Pressure {
        oilway_physics::pipe_flow::herschel_bulkley_drop(
            self.bore,
            self.length,
            self.flow,
            self.yield_stress,
            self.consistency,
            self.index,
        )
    }

    /// The flow by the closed form.
    pub fn own_flow(&self) -> Flow {
        oilway_physics::pipe_flow::herschel_bulkley_flow(
            self.bore,
            self.length,
            self.drop,
            self.yield_stress,
            self.consistency,
            self.index,
        )
    }
}

/// The greases of the independent table of drops.
pub fn lines() -> Vec<Line> {
    let rows = table("independent/herschel_bulkley_drop.csv");
    rows.rows()
        .filter(|row| row.text("law") == "herschel-bulkley")
        .map(|row| Line {
            bore: Length::from_metres(row.number("bore_m")),
            length: Length::from_metres(row.number("length_m")),
            flow: Flow::from_cubic_metres_per_second(row.number("flow_m3_s")),
            yield_stress: Pressure::from_pascals(row.number("yield_stress_pa")),
            consistency: Consistency::from_pascal_seconds_to_the_n(row.number("consistency")),
            index: Ratio::from_fraction(row.number("index")),
            drop: Pressure::from_pascals(row.number("drop_pa")),
        })
        .collect()
}

/// The questions of the file of proven instances, with their names.
///
/// # Panics
/// If the file is missing.
pub fn questions() -> Vec<(String, OneDivider)> {
    let file = root().join("reference/metering/one_divider.json");
    let json = std::fs::read_to_string(&file).unwrap_or_else(|error| panic!("{}: {error}", file.display()));
    let (instances, _) = oilway_store::read_metering(&json);
    instances.into_iter().map(|instance| (instance.id.clone(), question(&instance))).collect()
}

fn question(from: &MeteringInstance) -> OneDivider {
    let point = |i: usize| Wanted::new(from.demand[i], from.lo[i], from.hi[i]);
    let size = |(&volume_mm3, &cost): (&u32, &u32)| SectionSize { volume_mm3, cost };
    let combining = match from.model {
        MeteringModel::Joined { join_cost } => Combining::joined_at(join_cost),
        MeteringModel::Teed { most_outlets, tee_cost } => Combining::teed(most_outlets as u8, tee_cost),
    };
    OneDivider {
        points: (0..from.demand.len()).map(point).collect(),
        sizes: from.sizes.iter().zip(&from.piston_cost).map(size).collect(),
        limits: Limits {
            pistons: (from.fewest_pistons, from.most_pistons),
            combining,
            period: PeriodRange::seconds(from.shortest_period, from.longest_period, from.period_step),
            effort: Limits::USUAL_EFFORT,
        },
    }
}
