//! Answers of the exact search on a page.

use oilway_solve::metering::{Fault, Feed, Infeasible};
use oilway_text::{Arg, Message, message};
use oilway_units::{Ratio, Time};

use crate::page::{Page, Set};
use crate::verbs::meter::Metered;

/// All questions; with `all` every feed of every point.
pub(crate) fn answers(page: &mut Page, answers: &[Metered], remarks: &[Message], all: bool) {
    for metered in answers.iter().filter(|metered| metered.differs()) {
        page.loud(&message!("oilway-meter-differs", id = metered.asked.id.as_str()));
    }
    let head = [
        "oilway-meter-question",
        "oilway-meter-cost",
        "oilway-meter-period",
        "oilway-meter-pistons",
        "oilway-meter-error",
        "oilway-meter-proof",
    ];
    let mut rows = vec![head.map(|key| page.words(&Message::new(key))).to_vec()];
    for metered in answers {
        if let Ok(best) = &metered.found {
            let worst = Ratio::from_fraction(best.worst_error.value() - 1.0);
            let proof = message!(
                "oilway-meter-proven",
                bound = best.proof.lower_bound,
                steps = best.proof.nodes_explored
            );
            rows.push(vec![
                metered.asked.id.clone(),
                best.objective.to_string(),
                page.quantity(Time::from_seconds(best.period.seconds())),
                best.piston_count().to_string(),
                page.quantity(worst),
                page.words(&proof),
            ]);
        }
    }
    if rows.len() > 1 {
        page.gap();
        page.table(&[Set::Left, Set::Right, Set::Right, Set::Right, Set::Right, Set::Left], &rows);
    }
    for metered in answers {
        if let Err(why) = &metered.found {
            page.gap();
            page.say(&message!("oilway-meter-none", id = metered.asked.id.as_str(), reason = reason(why)));
        }
    }
    if all {
        answers.iter().for_each(|metered| feeds(page, metered));
    }
    page.gap();
    remarks.iter().for_each(|remark| page.say(remark));
}

fn feeds(page: &mut Page, metered: &Metered) {
    let Ok(best) = &metered.found else { return };
    page.heading(&message!("oilway-meter-feeds", id = metered.asked.id.as_str()));
    let mut rows = Vec::with_capacity(best.choices.len());
    for (number, choice) in best.choices.iter().enumerate() {
        let volume = |size: usize| metered.asked.sizes.get(size).copied().unwrap_or_default();
        let feed = match &choice.feed {
            Feed::One(size) => message!("oilway-meter-one", size = volume(*size)),
            Feed::Joined(size) => message!("oilway-meter-joined", size = volume(*size)),
            Feed::Teed(sizes) => {
                let sizes: Vec<Arg> = sizes.iter().map(|&size| Arg::from(volume(size))).collect();
                message!("oilway-meter-teed", sizes = Arg::List(sizes))
            }
        };
        let share = page.quantity(Ratio::from_fraction(choice.share.value()));
        rows.push(vec![(number + 1).to_string(), page.words(&feed), share]);
    }
    page.table(&[Set::Right, Set::Left, Set::Right], &rows);
}

/// Why there is no divider, with points and sizes counted from one.
pub(crate) fn reason(why: &Infeasible) -> Message {
    match why {
        Infeasible::Faults { faults } => {
            message!(
                "oilway-meter-faults",
                faults = faults.iter().map(|f| Arg::from(fault(f))).collect::<Vec<_>>()
            )
        }
        Infeasible::PistonCount { needed, allowed } => message!(
            "oilway-meter-piston-count",
            fewest = needed.0,
            most = needed.1,
            allowed_fewest = allowed.0,
            allowed_most = allowed.1
        ),
        Infeasible::BandAgainstSizes { points, ratios } => message!(
            "oilway-meter-band",
            first = points.0 + 1,
            second = points.1 + 1,
            low = ratios.accepted.from.value(),
            high = ratios.accepted.to.value()
        ),
        Infeasible::PeriodRange { points, .. } => {
            message!("oilway-meter-period-range", points = counted(points))
        }
        Infeasible::NoCommonPeriod { points } => {
            message!("oilway-meter-no-common-period", points = counted(points))
        }
        Infeasible::Unpaired { sizes, .. } => message!("oilway-meter-unpaired", sizes = counted(sizes)),
        Infeasible::EffortSpent { lower_bound, best } => match best {
            Some(best) => message!("oilway-meter-spent-found", bound = *lower_bound, cost = best.objective),
            None => message!("oilway-meter-spent", bound = *lower_bound),
        },
    }
}

fn counted(places: &[usize]) -> Vec<Arg> {
    places.iter().map(|place| Arg::from(place + 1)).collect()
}

fn fault(fault: &Fault) -> Message {
    match fault {
        Fault::PointCount { count } => {
            message!("oilway-fault-points", count = *count, most = Fault::MOST_POINTS)
        }
        Fault::SizeCount { count } => {
            message!("oilway-fault-sizes", count = *count, most = Fault::MOST_SIZES)
        }
        Fault::NoDemand { point } => message!("oilway-fault-no-demand", point = point + 1),
        Fault::Band { point, lo_pct, hi_pct } => {
            message!("oilway-fault-band", point = point + 1, low = *lo_pct, high = *hi_pct)
        }
        Fault::NoVolume { size } => message!("oilway-fault-no-volume", size = size + 1),
        Fault::UnknownSize { point, size } => {
            message!("oilway-fault-unknown-size", point = point + 1, size = size + 1)
        }
        Fault::NotOffered { point } => message!("oilway-fault-not-offered", point = point + 1),
        Fault::Pistons { fewest, most } => message!("oilway-fault-pistons", fewest = *fewest, most = *most),
        Fault::Period { shortest, longest, step } => {
            message!("oilway-fault-period", shortest = *shortest, longest = *longest, step = *step)
        }
        Fault::TooManyFeeds { .. } => message!("oilway-fault-feeds"),
    }
}
