//! The strength of tubes: check values that need several formulas, laws that hold for any size, and the sources.

use oilway_physics::strength::tables;
use oilway_physics::strength::*;
use oilway_physics::{Formula, registry};
use oilway_testkit::{published, sources};
use oilway_units::{Length, Pressure, Quantity, Ratio, Temperature};
use proptest::prelude::*;

fn mine() -> impl Iterator<Item = &'static Formula> {
    registry().filter(|formula| formula.id.starts_with("strength/"))
}

#[test]
fn power_piping_takes_its_share_of_process_piping() {
    let rows = published("strength/several-formulas");
    let check = rows.iter().find(|check| check.gives("factor")).expect("the row stands in the file");
    assert_eq!(check.given::<Ratio>("factor"), tables::POWER_PIPING.value);
    let process = b31_3(check.given("outside"), check.given("wall"), check.given("stress")).unwrap();
    check.holds("pressure", process * tables::POWER_PIPING.value.fraction());
}

#[test]
fn every_formula_of_the_family_states_validity_and_known_sources() {
    let known = sources();
    let mut ids: Vec<&str> = mine().map(|formula| formula.id).collect();
    assert_eq!(ids.len(), 18);
    for formula in mine() {
        assert!(formula.validity.len() > 5 && !formula.sources.is_empty(), "{}", formula.id);
        for source in formula.sources {
            assert!(
                known.contains_key(source.key),
                "{}: {} is not in data/sources.toml",
                formula.id,
                source.key
            );
        }
    }
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), 18, "two formulas have one id");
    for source in [
        tables::GAUGE_STEADY.source,
        tables::HOSE_SAFETY.source,
        tables::LEAST_BEND.source,
        tables::POWER_PIPING.source,
        tables::E235_FATIGUE.source,
        tables::POLYAMIDE.source,
    ] {
        assert!(known.contains_key(source.key), "{} is not in data/sources.toml", source.key);
    }
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-12 * a.abs().max(b.abs())
}

/// Every rule that gives a pressure from outside diameter, share of wall and stress; the wall is a share of the diameter.
fn rated(outside: f64, share: f64, stress: f64) -> Vec<f64> {
    let (d, t) = (Length::from_millimetres(outside), Length::from_millimetres(outside * share));
    let bore = d - t * 2.0;
    let s = Pressure::from_megapascals(stress);
    let (safety, rest) = (Ratio::from_fraction(1.5), Ratio::from_fraction(0.9));
    let mut all = vec![
        barlow_outside(d, t, s),
        barlow_mean(d, t, s),
        lame_design(d, bore, s),
        iso_10763(d, bore, s),
        burst_estimate(d, bore, s),
        copper_tube(d, t, s),
    ];
    all.extend(b31_3(d, t, s));
    all.extend(din_2413_fatigue(d, t, s, safety, rest));
    all.into_iter().map(Pressure::si).collect()
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_tube_twice_as_large_in_every_measure_holds_the_same(d in 2.0..100.0f64, share in 0.02..0.24f64, s in 10.0..900.0f64) {
        let (small, large) = (rated(d, share, s), rated(2.0 * d, share, s));
        prop_assert_eq!(small.len(), 8);
        prop_assert!(small.iter().zip(&large).all(|(a, b)| (a - b).abs() <= 1e-9 * a), "{:?} {:?}", small, large);
    }

    #[test]
    fn twice_the_stress_allows_twice_the_pressure(d in 2.0..100.0f64, share in 0.02..0.24f64, s in 10.0..900.0f64) {
        let (weak, strong) = (rated(d, share, s), rated(d, share, 2.0 * s));
        prop_assert!(weak.iter().zip(&strong).all(|(a, b)| near(2.0 * a, *b)));
    }

    #[test]
    fn a_thicker_wall_always_allows_more(d in 2.0..100.0f64, share in 0.02..0.2f64, more in 0.001..0.04f64) {
        let (thin, thick) = (rated(d, share, 100.0), rated(d, share + more, 100.0));
        prop_assert!(thin.iter().zip(&thick).all(|(a, b)| b > a), "{:?} {:?}", thin, thick);
    }

    #[test]
    fn the_rules_keep_their_order(d in 2.0..100.0f64, share in 0.01..0.49f64, s in 10.0..900.0f64) {
        // With x = D/d: 1 − 1/x ≤ (x²−1)/(x²+1) ≤ 2(x−1)/(x+1) ≤ ln x, by algebra.
        let all = rated(d, share, s);
        let (outside, mean, lame, burst) = (all[0], all[1], all[2], all[4]);
        prop_assert!(outside < lame && lame < mean && mean < burst);
    }

    #[test]
    fn stress_and_pressure_of_a_thick_tube_undo_one_another(d in 2.0..100.0f64, share in 0.001..0.49f64, p in 0.1..2000.0f64) {
        let (outside, bore) = (Length::from_millimetres(d), Length::from_millimetres(d * (1.0 - 2.0 * share)));
        let p = Pressure::from_bar(p);
        prop_assert!(near(lame_design(outside, bore, lame_hoop(outside, bore, p)).si(), p.si()));
    }

    #[test]
    fn the_hoop_stress_is_largest_at_the_bore(d in 2.0..100.0f64, share in 0.01..0.45f64, place in 0.0..1.0f64, p in 1.0..500.0f64) {
        let (outside, bore) = (Length::from_millimetres(d), Length::from_millimetres(d * (1.0 - 2.0 * share)));
        let at = (bore + (outside - bore) * place).min(outside);
        let p = Pressure::from_bar(p);
        let here = lame_hoop_at(outside, bore, p, Pressure::ZERO, at).unwrap();
        prop_assert!(here.si() <= lame_hoop(outside, bore, p).si() * (1.0 + 1e-12));
    }

    #[test]
    fn pressure_equal_inside_and_outside_pulls_nowhere(d in 2.0..100.0f64, share in 0.05..0.45f64, p in 1.0..500.0f64) {
        let (outside, bore) = (Length::from_millimetres(d), Length::from_millimetres(d * (1.0 - 2.0 * share)));
        let p = Pressure::from_bar(p);
        let hoop = lame_hoop_at(outside, bore, p, p, bore).unwrap();
        prop_assert!((hoop.si() + p.si()).abs() < 1e-9 * p.si());
    }

    #[test]
    fn heat_never_strengthens_a_tube(t in -40.0..200.0f64, more in 0.0..50.0f64) {
        let plastic = |t: f64| plastic_temperature_factor(Temperature::from_celsius(t)).fraction();
        prop_assert!(plastic(t + more) <= plastic(t));
        let copper = |t: f64| copper_stress(Temperature::from_celsius(t)).map_or(0.0, Pressure::si);
        prop_assert!(copper(t + more) <= copper(t));
    }

    #[test]
    fn a_wider_bend_keeps_more_of_the_wall(r in 6.0..500.0f64, more in 0.1..100.0f64) {
        let mm = Length::from_millimetres;
        let wall = |r: f64| bend_wall(mm(6.0), mm(1.0), mm(r));
        prop_assert!(wall(r) < wall(r + more) && wall(r + more) < mm(1.0));
    }

    #[test]
    fn whatever_is_legal_neither_panics_nor_gives_a_negative_pressure(values in prop::array::uniform6(1e-6..1e6f64)) {
        for formula in mine().filter(|formula| !["strength/lame-hoop-at", "strength/lame-axial"].contains(&formula.id)) {
            let inputs: Vec<f64> = formula
                .inputs
                .iter()
                .zip(values)
                .map(|(symbol, v)| match symbol.range {
                    oilway_physics::Range::Between(low, high) => low + (high - low) * v / 1e6,
                    _ => v,
                })
                .collect();
            let answer = (formula.evaluate_si)(&inputs);
            prop_assert!(answer.is_none_or(|v| v >= 0.0), "{} {inputs:?}: {answer:?}", formula.id);
        }
    }
}
