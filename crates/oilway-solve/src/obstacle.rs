//! Why there is no design, or only a lame one: an obstacle names the place, the reason and what would clear it.

use oilway_catalogue::Catalogue;
use oilway_model::{Feed, Job};
use oilway_text::{Message, message};

/// Something that stands in the way of a design.
#[derive(Clone, Debug, PartialEq)]
pub struct Obstacle {
    /// The place in the job: `divider.washer`, `package.pump`.
    pub at: String,
    /// The reason, with its numbers.
    pub what: Message,
    /// What would clear it.
    pub cure: Message,
}

/// What no design can be made of, all at once.
///
/// # Errors
/// A job without points, a tree that is none, and given parts that the catalogue does not hold.
pub(crate) fn refuse(job: &Job, catalogue: &Catalogue) -> Result<(), Vec<Obstacle>> {
    let obstacles = [no_tree(job), no_points(job), unknown_parts(job, catalogue)].concat();
    if obstacles.is_empty() { Ok(()) } else { Err(obstacles) }
}

fn no_tree(job: &Job) -> Vec<Obstacle> {
    let mut obstacles = Vec::new();
    let roots = job.dividers.iter().filter(|d| d.fed_by == Feed::Pump).count();
    if roots != 1 {
        obstacles.push(Obstacle {
            at: "divider".to_owned(),
            what: message!("solve-one-first-divider", found = roots),
            cure: message!("solve-cure-one-first-divider"),
        });
    }
    let late = job
        .dividers
        .iter()
        .enumerate()
        .filter(|(number, d)| matches!(d.fed_by, Feed::Divider(above) if above >= *number));
    obstacles.extend(late.map(|(_, divider)| Obstacle {
        at: format!("divider.{}", divider.name),
        what: message!("solve-divider-order"),
        cure: message!("solve-cure-divider-order"),
    }));
    obstacles
}

fn no_points(job: &Job) -> Vec<Obstacle> {
    let nothing = Obstacle {
        at: "point".to_owned(),
        what: message!("solve-no-points"),
        cure: message!("solve-cure-no-points"),
    };
    let lost = |point: &&oilway_model::Point| point.divider >= job.dividers.len();
    let lost = job.points.iter().filter(lost).map(|point| Obstacle {
        at: format!("point.{}", point.name),
        what: message!("solve-point-on-no-divider"),
        cure: message!("solve-cure-point-on-no-divider"),
    });
    lost.chain(job.points.is_empty().then_some(nothing)).collect()
}

/// The parts of the package that the job gives and the catalogue does not hold, or holds as something else.
fn unknown_parts(job: &Job, catalogue: &Catalogue) -> Vec<Obstacle> {
    let package = &job.package;
    let given = [
        ("package.pump", "pump", &package.pump),
        ("package.reservoir", "reservoir", &package.reservoir),
        ("package.block", "port block", &package.block),
        ("package.valve", "air valve", &package.valve),
        ("package.disc", "burst disc", &package.disc),
        ("package.holder", "disc holder", &package.holder),
        ("package.gauge", "gauge", &package.gauge),
        ("package.controller", "controller", &package.controller),
    ];
    let unknown = given.into_iter().filter_map(|(at, kind, choice)| {
        let id = choice.chosen()?;
        let held = catalogue.part(id).is_some_and(|part| part.kind.id() == kind);
        (!held).then(|| Obstacle {
            at: at.to_owned(),
            what: message!("solve-no-such-part", kind = kind, part = id.as_str()),
            cure: message!("solve-add-part"),
        })
    });
    unknown.collect()
}

#[cfg(test)]
mod tests {
    use oilway_model::Choice;

    use super::*;
    use crate::testing::{catalogue, divider, hall};

    fn keys(job: &Job) -> Vec<(String, &'static str)> {
        match refuse(job, catalogue()) {
            Ok(()) => Vec::new(),
            Err(obstacles) => obstacles.into_iter().map(|o| (o.at, o.what.key)).collect(),
        }
    }

    #[test]
    fn a_sound_job_is_not_refused() {
        assert_eq!(keys(&hall()), []);
    }

    #[test]
    fn everything_that_stands_in_the_way_is_told_at_once() {
        let mut job = hall();
        job.dividers.push(divider("second root", 1, Feed::Pump, Vec::new()));
        job.dividers.push(divider("its own feeder", 1, Feed::Divider(2), Vec::new()));
        job.points[2].divider = 9;
        job.package.pump = Choice::Given("99999".to_owned());
        // A gauge is no disc.
        job.package.disc = Choice::Pinned("10074".to_owned());
        let expected = [
            ("divider", "solve-one-first-divider"),
            ("divider.its own feeder", "solve-divider-order"),
            ("point.pin 3", "solve-point-on-no-divider"),
            ("package.pump", "solve-no-such-part"),
            ("package.disc", "solve-no-such-part"),
        ];
        assert_eq!(keys(&job), expected.map(|(at, key)| (at.to_owned(), key)));
    }

    #[test]
    fn a_job_without_points_or_dividers_is_refused() {
        let mut job = hall();
        job.points.clear();
        assert_eq!(keys(&job), [("point".to_owned(), "solve-no-points")]);
        job.dividers.clear();
        assert_eq!(keys(&job)[0].1, "solve-one-first-divider");
    }
}
