//! The exact search's reasons, told in the names and units of the job.

use oilway_text::{Arg, Message, message};
use oilway_units::{Time, Volume};

use crate::metering::{Fault, Fraction, Infeasible, NearestPeriods, RatioGap, Span};

/// The question behind a reason: who asked, for which sizes, and on which scale.
pub(crate) struct Question<'a> {
    /// The name of the consumer at a place of the question.
    pub name: &'a dyn Fn(usize) -> String,
    /// How many consumers there are.
    pub consumers: usize,
    /// Volume of each size.
    pub sizes: &'a [Volume],
    /// Real time over time of the search.
    pub time_scale: f64,
}

/// The reason and the cure.
pub(crate) fn explain(reason: &Infeasible, of: &Question<'_>) -> (Message, Message) {
    let consumers = of.consumers;
    match reason {
        Infeasible::PistonCount { needed, allowed } => (
            message!(
                "solve-too-many-sections",
                consumers = consumers,
                needed = needed.0,
                allowed = allowed.1,
                fewest = allowed.0
            ),
            if needed.1 < u64::from(allowed.0) {
                message!("solve-cure-too-few-sections")
            } else {
                message!("solve-cure-split-divider")
            },
        ),
        Infeasible::BandAgainstSizes { points, ratios } => {
            (against_sizes(of, *points, ratios), message!("solve-cure-own-divider"))
        }
        Infeasible::PeriodRange { points, nearest } => {
            (out_of_range(of, points, nearest), message!("solve-cure-own-divider"))
        }
        Infeasible::NoCommonPeriod { points } => (
            message!("solve-no-common-period", names = names(of, points)),
            message!("solve-cure-own-divider"),
        ),
        Infeasible::Unpaired { sizes, .. } => {
            let volumes =
                sizes.iter().filter_map(|&size| of.sizes.get(size)).map(|&v| Arg::from(v)).collect();
            (
                message!("solve-unpaired", outlets = sizes.len(), volumes = Arg::List(volumes)),
                message!("solve-cure-unpaired"),
            )
        }
        Infeasible::EffortSpent { .. } => {
            (message!("solve-effort-spent", consumers = consumers), message!("solve-cure-split-divider"))
        }
        Infeasible::Faults { faults } => {
            let told = faults.iter().map(|f| Arg::Message(fault(of, f))).collect();
            (
                message!("solve-metering-faults", faults = Arg::List(told)),
                message!("solve-cure-metering-faults"),
            )
        }
    }
}

fn names(of: &Question<'_>, points: &[usize]) -> Arg {
    Arg::List(points.iter().map(|&p| Arg::Text((of.name)(p))).collect())
}

/// How the volumes of two consumers must stand to one another, and what the sizes offer on either side.
fn against_sizes(of: &Question<'_>, points: (usize, usize), gap: &RatioGap) -> Message {
    let offered = [gap.below, gap.above].into_iter().flatten().map(|f| Arg::Number(rounded(f))).collect();
    message!(
        "solve-sizes-against-band",
        first = (of.name)(points.0),
        second = (of.name)(points.1),
        low = rounded(gap.accepted.from),
        high = rounded(gap.accepted.to),
        offered = Arg::List(offered)
    )
}

/// Which periods would serve, and that none of them is open.
fn out_of_range(of: &Question<'_>, points: &[usize], nearest: &NearestPeriods) -> Message {
    let names = names(of, points);
    let spans = [nearest.below, nearest.between, nearest.above].into_iter().flatten();
    let told: Vec<Arg> = spans.map(|span| Arg::Message(period(of, &span))).collect();
    if told.is_empty() {
        message!("solve-no-common-period", names = names)
    } else {
        message!("solve-period-range", names = names, periods = Arg::List(told))
    }
}

fn period(of: &Question<'_>, span: &Span) -> Message {
    let time = |f: Fraction| Time::from_seconds(f.value() * of.time_scale);
    if span.to.value().is_finite() {
        message!("solve-period-span", span = (time(span.from), time(span.to)))
    } else {
        message!("solve-period-from", from = time(span.from))
    }
}

/// Three figures tell a ratio.
fn rounded(fraction: Fraction) -> f64 {
    let value = fraction.value();
    let unit = libm::pow(10.0, libm::floor(libm::log10(value.max(1e-9))) - 2.0);
    if value.is_finite() { libm::round(value / unit) * unit } else { value }
}

fn fault(of: &Question<'_>, fault: &Fault) -> Message {
    let size = |size: &usize| Arg::from(of.sizes.get(*size).copied().unwrap_or_default());
    match fault {
        Fault::PointCount { count } => {
            message!("solve-fault-points", count = *count, most = Fault::MOST_POINTS)
        }
        Fault::SizeCount { count } => message!("solve-fault-sizes", count = *count, most = Fault::MOST_SIZES),
        Fault::NoDemand { point } => message!("solve-fault-no-demand", name = (of.name)(*point)),
        Fault::Band { point, lo_pct, hi_pct } => {
            message!("solve-fault-band", name = (of.name)(*point), low = *lo_pct, high = *hi_pct)
        }
        Fault::NoVolume { size: place } => message!("solve-fault-no-volume", volume = size(place)),
        Fault::UnknownSize { point, .. } | Fault::NotOffered { point } => {
            message!("solve-fault-not-offered", name = (of.name)(*point))
        }
        Fault::Pistons { fewest, most } => message!("solve-fault-pistons", fewest = *fewest, most = *most),
        Fault::Period { shortest, longest, .. } => {
            message!("solve-fault-period", shortest = *shortest, longest = *longest)
        }
        Fault::TooManyFeeds { count } => {
            message!(
                "solve-fault-feeds",
                count = u64::try_from(*count).unwrap_or(u64::MAX),
                most = Fault::MOST_FEEDS as u64
            )
        }
    }
}

#[cfg(test)]
mod tests {
    use oilway_text::{Reader, say};
    use oilway_units::UnitSystem;

    use super::*;
    use crate::metering::{Combining, Limits, PeriodRange, SectionSize, Wanted, choose_sections};

    const SIZES: [SectionSize; 2] =
        [SectionSize { volume_mm3: 100, cost: 20 }, SectionSize { volume_mm3: 400, cost: 20 }];

    /// What the search says of these demands and bands, in words.
    fn told(points: &[Wanted], pistons: (u32, u32), period: PeriodRange) -> (String, String) {
        let limits = Limits { pistons, combining: Combining::default(), period, effort: 1_000_000 };
        let reason = choose_sections(points, &SIZES, &limits).unwrap_err();
        let volumes = [100.0, 400.0].map(Volume::from_cubic_millimetres);
        let name = |place: usize| format!("P{}", place + 1);
        let question = Question { name: &name, consumers: points.len(), sizes: &volumes, time_scale: 1.0 };
        let (what, cure) = explain(&reason, &question);
        let reader = Reader::new(UnitSystem::Metric);
        (say(&what, &reader), say(&cure, &reader))
    }

    fn free(points: &[Wanted]) -> PeriodRange {
        PeriodRange::free(points, &SIZES, &Combining::default())
    }

    #[test]
    fn a_ratio_between_two_sizes_is_told_with_both_neighbours() {
        let points = [Wanted::new(100, 90, 110), Wanted::new(200, 90, 110)];
        let (what, _) = told(&points, (1, 12), free(&points));
        assert_eq!(
            what,
            "no two section sizes serve P1 and P2 inside their bands at once: their volumes must stand as 0.409 to 0.611 to 1, the \
             sizes offer 0.25 and 1"
        );
    }

    #[test]
    fn a_period_out_of_reach_is_told_with_the_nearest() {
        let points = vec![Wanted::new(100, 100, 100); 6];
        let (what, _) = told(&points, (1, 12), PeriodRange::seconds(60, 600, 60));
        assert!(what.contains("P1") && what.contains("60 min"), "{what}");
    }

    #[test]
    fn too_few_and_too_many_sections_have_different_cures() {
        let few = vec![Wanted::new(100, 90, 130); 2];
        let many = vec![Wanted::new(100, 90, 130); 26];
        let (what, cure) = told(&few, (3, 12), free(&few));
        assert_eq!(what, "2 consumers need at least 1 section; the divider takes 3 to 12");
        assert!(cure.contains("Join"), "{cure}");
        let (what, cure) = told(&many, (3, 12), free(&many));
        assert_eq!(what, "26 consumers need at least 13 sections; the divider takes 3 to 12");
        assert!(cure.contains("Split"), "{cure}");
    }

    #[test]
    fn an_odd_outlet_is_told_with_its_volume() {
        let points = vec![Wanted::new(100, 90, 130); 7];
        let (what, _) = told(&points, (3, 12), free(&points));
        assert_eq!(
            what,
            "one outlet (0.1 cm³) stays without a partner: a section has two outlets, and none may be closed"
        );
    }

    #[test]
    fn every_fault_of_a_question_is_told_at_once() {
        let points = [Wanted::new(0, 90, 130), Wanted::new(5, 90, 80)];
        let (what, _) = told(&points, (3, 2), PeriodRange::seconds(10, 5, 1));
        for part in ["P1 asks for nothing", "P2", "90", "80", "3 to 2"] {
            assert!(what.contains(part), "{part}: {what}");
        }
    }
}
