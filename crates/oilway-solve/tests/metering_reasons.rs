//! Variants of the question (fixed period, kept feeds, free period) and the reasons for having no answer.

mod metering_checker;

use metering_checker::check;
use oilway_solve::metering::{
    Combining, Fault, Feed, Given, Infeasible, Limits, NearestPeriods, OneDivider, PeriodRange, RatioGap,
    SectionSize, Wanted, acceptable_inflow, choose_sections, feasible_periods,
};

const SIZES: [u32; 4] = [25, 40, 63, 100];

fn question(points: Vec<Wanted>) -> OneDivider {
    OneDivider {
        points,
        sizes: SIZES.map(|volume_mm3| SectionSize { volume_mm3, cost: 20 }).to_vec(),
        limits: Limits {
            pistons: (3, 12),
            combining: Combining::joined_at(3),
            period: PeriodRange::seconds(600, 7200, 10),
            effort: Limits::USUAL_EFFORT,
        },
    }
}

fn six_alike() -> OneDivider {
    question(vec![Wanted::new(126, 90, 120); 6])
}

#[test]
fn a_period_that_is_given_is_kept() {
    let mut six = six_alike();
    six.limits.period = PeriodRange::fixed(1800);
    let found = six.solve().unwrap();
    assert_eq!((found.period.ticks, found.objective), (1800, 60));
    assert_eq!(found.worst_error.value(), 1.0, "63 mm³ every 1800 s is 126 mm³/h");

    // At 4000 s the demand is 140 mm³ a cycle: 100 is too little and 2 × 63 is just enough.
    six.limits.period = PeriodRange::fixed(4000);
    let found = six.solve().unwrap();
    assert!(found.choices.iter().all(|choice| choice.feed == Feed::Joined(2)));
}

#[test]
fn among_equal_costs_the_period_with_the_least_error_is_taken() {
    let found = six_alike().solve().unwrap();
    assert_eq!(found.worst_error.value(), 1.0);
    assert!((found.choices[0].share.value() - 1.0).abs() < 1e-12);
}

#[test]
fn what_is_settled_is_kept_and_the_rest_follows() {
    let mut six = six_alike();
    six.points[2].allowed = Some(Given::Feed(Feed::Joined(1)));
    let found = six.solve().unwrap();
    check(&six, &found).unwrap();
    assert_eq!(found.choices[2].feed, Feed::Joined(1));
    // Five single outlets cannot pair up, so that one more point is joined: 2 + 2 pistons and two joints.
    assert_eq!(found.objective, 4 * 20 + 2 * 3);
}

#[test]
fn a_free_period_depends_on_ratios_only() {
    for scale in [1, 40, 4000] {
        let demands = [40, 63, 100].repeat(2).into_iter();
        let points = demands.map(|q| Wanted::new(q * scale, 99, 101)).collect();
        let mut question = question(points);
        question.limits.period =
            PeriodRange::free(&question.points, &question.sizes, &question.limits.combining);
        let found = question.solve().unwrap();
        check(&question, &found).unwrap();
        assert_eq!(found.objective, 60, "scale {scale}");
        assert!(found.worst_error.value() < 1.0001, "scale {scale}: {}", found.worst_error.value());
    }
}

#[test]
fn the_answer_lies_within_its_feasible_periods_and_inflow() {
    let six = six_alike();
    let found = six.solve().unwrap();
    let volumes: Vec<u32> = found.choices.iter().map(|choice| choice.volume as u32).collect();
    let span = feasible_periods(&volumes, &six.points).unwrap();
    assert!(span.from.value() <= found.period.seconds() && found.period.seconds() <= span.to.value());
    let inflow = acceptable_inflow(&volumes, &six.points).unwrap();
    // The inflow of one full cycle in the longest period is the least acceptable, and the other way round.
    let flow = |seconds: f64| 3600.0 * found.cycle_volume as f64 / seconds;
    assert!((inflow.from.value() - flow(span.to.value())).abs() < 1e-9);
    assert!((inflow.to.value() - flow(span.from.value())).abs() < 1e-9);
}

#[test]
fn volumes_out_of_ratio_have_no_period_and_no_inflow() {
    let points = [Wanted::new(100, 90, 110), Wanted::new(100, 90, 110)];
    assert!(feasible_periods(&[40, 100], &points).is_none());
    assert!(acceptable_inflow(&[40, 100], &points).is_none());
    assert!(feasible_periods(&[40, 48], &points).is_some());
}

#[test]
fn demands_too_far_apart_name_the_two_points() {
    // The largest ratio is 2 × 100 to 25, that is 8; demands 1 to 20 with a band of 90 to 120 need 15 at least.
    let mut points = vec![Wanted::new(500, 90, 120); 6];
    points[4].demand = 25;
    let Err(Infeasible::BandAgainstSizes { points, ratios }) = question(points).solve() else {
        panic!("another reason");
    };
    let RatioGap { accepted, below, above } = *ratios;
    assert_eq!(points, (4, 0), "in order of demand");
    assert!((accepted.from.value() - 90.0 * 25.0 / (120.0 * 500.0)).abs() < 1e-12);
    assert!((accepted.to.value() - 120.0 * 25.0 / (90.0 * 500.0)).abs() < 1e-12);
    assert_eq!(below, None);
    assert_eq!(above.unwrap().value(), 25.0 / 200.0);
}

#[test]
fn too_many_points_name_the_pistons_needed_and_allowed() {
    let points = vec![Wanted::new(126, 90, 120); 26];
    assert_eq!(question(points).solve(), Err(Infeasible::PistonCount { needed: (13, 26), allowed: (3, 12) }));
    let points = vec![Wanted::new(126, 90, 120); 24];
    assert!(question(points).solve().is_ok());
}

#[test]
fn one_point_cannot_fill_a_divider() {
    let points = vec![Wanted::new(126, 90, 120); 2];
    assert_eq!(question(points).solve(), Err(Infeasible::PistonCount { needed: (1, 2), allowed: (3, 12) }));
}

#[test]
fn a_count_of_pistons_that_the_bands_force_is_named() {
    // Only the joined 100 reaches the large demands, so that 4 pistons are needed for five points in any case.
    let mut points = vec![Wanted::new(400, 99, 101); 3];
    points.extend(vec![Wanted::new(200, 99, 101); 2]);
    let mut question = question(points);
    question.sizes = vec![SectionSize { volume_mm3: 100, cost: 20 }];
    question.limits.pistons = (1, 3);
    assert_eq!(question.solve(), Err(Infeasible::PistonCount { needed: (4, 4), allowed: (1, 3) }));
    question.limits.pistons = (1, 4);
    assert!(question.solve().is_ok());
}

#[test]
fn a_dear_feed_of_few_outlets_is_taken_where_pistons_are_short() {
    // Two outlets of 100 from a dear piston, or two each of 60 and 40 from cheap ones: both give 200.
    let either = Given::OneOf(vec![Feed::Teed(vec![0, 0]), Feed::Teed(vec![1, 1, 2, 2])]);
    let mut question = question(vec![Wanted::new(400, 98, 102).kept(either); 2]);
    question.sizes =
        [(100, 50), (60, 1), (40, 1)].map(|(volume_mm3, cost)| SectionSize { volume_mm3, cost }).to_vec();
    question.limits.combining = Combining::teed(4, 0);
    for (most, cost) in [(4, 4), (3, 52), (2, 100)] {
        question.limits.pistons = (1, most);
        assert_eq!(question.solve().unwrap().objective, cost, "{most} pistons");
    }
    // And the other way round where many pistons are asked for and the many outlets are the dear ones.
    question.sizes =
        [(100, 1), (60, 50), (40, 50)].map(|(volume_mm3, cost)| SectionSize { volume_mm3, cost }).to_vec();
    for (fewest, cost) in [(2, 2), (3, 101), (4, 200)] {
        question.limits.pistons = (fewest, 8);
        assert_eq!(question.solve().unwrap().objective, cost, "{fewest} pistons");
    }
}

#[test]
fn a_period_outside_the_range_is_named_with_the_nearest() {
    let mut six = six_alike();
    six.limits.period = PeriodRange::seconds(10, 500, 10);
    let Err(Infeasible::PeriodRange { points, nearest }) = six.solve() else {
        panic!("another reason");
    };
    let NearestPeriods { below, between, above } = *nearest;
    assert_eq!((points, below, between), (vec![0], None, None));
    // 25 mm³ at 120 % of 126 mm³/h.
    assert!((above.unwrap().from.value() - 3600.0 * 25.0 / 126.0 / 1.2).abs() < 1e-9);

    six.limits.period = PeriodRange::seconds(9000, 20_000, 10);
    let Err(Infeasible::PeriodRange { nearest, .. }) = six.solve() else { panic!("another reason") };
    let NearestPeriods { below, above, .. } = *nearest;
    assert!(above.is_none());
    assert!((below.unwrap().to.value() - 3600.0 * 200.0 / 126.0 / 0.9).abs() < 1e-9);
}

#[test]
fn a_step_too_coarse_names_the_periods_between() {
    let mut six = question(vec![Wanted::new(126, 99, 101); 6]);
    six.limits.period = PeriodRange::seconds(1000, 3000, 1000);
    let Err(Infeasible::PeriodRange { nearest, .. }) = six.solve() else { panic!("another reason") };
    // 40 mm³ at 101 %.
    assert!((nearest.between.unwrap().from.value() - 3600.0 * 40.0 / 126.0 / 1.01).abs() < 1e-9);
}

#[test]
fn outlets_without_a_partner_are_named() {
    // Three points kept on one outlet each of one size, and one on another size.
    let mut points: Vec<Wanted> = vec![Wanted::new(126, 80, 125).kept(Given::Feed(Feed::One(2))); 5];
    points.push(Wanted::new(200, 80, 125).kept(Given::Feed(Feed::One(3))));
    let Err(Infeasible::Unpaired { sizes, .. }) = question(points.clone()).solve() else {
        panic!("another reason");
    };
    assert_eq!(sizes, vec![2, 3]);

    points[5].allowed = None;
    points[4].allowed = None;
    assert!(question(points).solve().is_ok());
}

#[test]
fn an_odd_number_of_outlets_is_a_matter_of_pairing_and_not_of_pistons() {
    let single = Wanted::new(126, 80, 125).kept(Given::OneOf(vec![Feed::One(1), Feed::One(2)]));
    let Err(Infeasible::Unpaired { sizes, .. }) = question(vec![single; 3]).solve() else {
        panic!("another reason");
    };
    assert_eq!(sizes.len(), 1);
}

#[test]
fn three_points_may_fit_in_pairs_only() {
    let only = |demand, sizes: &[usize]| {
        Wanted::new(demand, 100, 101).kept(Given::OneOf(sizes.iter().map(|&s| Feed::One(s)).collect()))
    };
    // Periods: a at 40 or 100, b at 40 or 63, c at 63 or 100 (in units of a volume at demand 100).
    let mut question = question(vec![only(100, &[1, 3]), only(100, &[1, 2]), only(100, &[2, 3])]);
    question.limits.period = PeriodRange::seconds(600, 7200, 1);
    question.limits.pistons = (1, 12);
    assert_eq!(question.solve(), Err(Infeasible::NoCommonPeriod { points: vec![0, 1, 2] }));
}

#[test]
fn all_faults_of_a_question_are_told_at_once() {
    let mut six = six_alike();
    six.points[1].demand = 0;
    six.points[3] = Wanted::new(100, 130, 90);
    six.points[5].allowed = Some(Given::Sizes(vec![7]));
    six.sizes[2].volume_mm3 = 0;
    six.limits.pistons = (5, 3);
    six.limits.period = PeriodRange::seconds(700, 600, 10);
    let faults = vec![
        Fault::NoDemand { point: 1 },
        Fault::Band { point: 3, lo_pct: 130, hi_pct: 90 },
        Fault::UnknownSize { point: 5, size: 7 },
        Fault::NoVolume { size: 2 },
        Fault::Pistons { fewest: 5, most: 3 },
        Fault::Period { shortest: 700, longest: 600, step: 10 },
    ];
    assert_eq!(six.solve(), Err(Infeasible::Faults { faults }));
}

#[test]
fn extreme_numbers_are_answered_without_overflow() {
    let most = u32::MAX;
    for (demand, volume_mm3, cost) in [(1, most, most), (most, 1, 0), (most, most, most), (1, 1, 0)] {
        let points = vec![Wanted::new(demand, 0, most); 6];
        let mut question = question(points);
        question.sizes = vec![SectionSize { volume_mm3, cost }; 3];
        question.limits.combining.tees = Some(oilway_solve::metering::Tees { most_outlets: 3, cost: most });
        for period in [
            PeriodRange { shortest: 0, longest: most, step: 1, ticks_per_second: most },
            PeriodRange { shortest: most, longest: most, step: most, ticks_per_second: 1 },
            PeriodRange::free(&question.points, &question.sizes, &question.limits.combining),
        ] {
            question.limits.period = period;
            if let Ok(found) = question.solve() {
                check(&question, &found).unwrap();
            }
        }
    }
}

#[test]
fn an_empty_question_and_a_feed_not_offered_are_faults() {
    let mut six = six_alike();
    six.points.clear();
    assert_eq!(six.solve(), Err(Infeasible::Faults { faults: vec![Fault::PointCount { count: 0 }] }));
    let mut six = six_alike();
    six.points[0].allowed = Some(Given::Feed(Feed::Teed(vec![0, 1])));
    assert_eq!(six.solve(), Err(Infeasible::Faults { faults: vec![Fault::NotOffered { point: 0 }] }));
    let mut six = six_alike();
    six.limits.combining = Combining::teed(40, 1);
    assert!(matches!(six.solve(), Err(Infeasible::Faults { .. })));
}

#[test]
fn effort_too_small_is_told_and_not_passed_off_as_an_answer() {
    let mut six = six_alike();
    six.limits.effort = 1;
    let Err(Infeasible::EffortSpent { lower_bound, .. }) = six.solve() else { panic!("no effort was set") };
    assert!(lower_bound <= 60);
    six.limits.effort = Limits::USUAL_EFFORT;
    assert!(choose_sections(&six.points, &six.sizes, &six.limits).is_ok());
}
