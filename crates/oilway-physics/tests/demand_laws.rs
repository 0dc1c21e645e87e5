//! The demand of points: check values that need several formulas, laws that hold for any input, and the sources.

use oilway_physics::demand::tables::{self, Row};
use oilway_physics::demand::*;
use oilway_physics::{Formula, registry};
use oilway_testkit::{Check, published, sources};
use oilway_units::{
    Area, Count, Density, Flow, Frequency, KinematicViscosity, Length, Mass, Power, Quantity, Ratio,
    SpecificHeat, Speed, Temperature, TemperatureDifference, Time, Volume,
};
use proptest::prelude::*;

fn mine() -> impl Iterator<Item = &'static Formula> {
    registry().filter(|formula| formula.id.starts_with("demand/"))
}

/// The row of `reference/demand/several-formulas.toml` whose name begins so.
fn several(start: &str) -> Check {
    let rows = published("demand/several-formulas");
    rows.into_iter().find(|check| check.name.starts_with(start)).expect("the row stands in the file")
}

#[test]
fn a_hot_upright_bearing_has_both_corrections_of_the_trade() {
    let check = several("D33");
    let base =
        grease_interval(check.given("bore"), check.given("speed"), check.given("bearing_factor")).unwrap();
    let hot = temperature_factor(check.given("temperature")).fraction();
    let upright = check.given::<Ratio>("vertical_factor").fraction();
    assert_eq!(tables::value(tables::TRADE_CORRECTION, "vertical shaft"), Some(upright));
    check.holds("interval", corrected_interval(base, Ratio::from_fraction(hot * upright)));
}

#[test]
fn a_turning_outer_ring_shortens_the_interval() {
    let check = several("D34");
    let speed = outer_ring_speed(check.given("speed"), check.given("bore"), check.given("outside"));
    check.holds(
        "interval",
        grease_interval(check.given("bore"), speed, check.given("bearing_factor")).unwrap(),
    );
}

#[test]
fn the_factor_product_shortens_the_base_interval() {
    let check = several("D35");
    let bearing = tables::value(tables::BEARING_FACTOR, "radial ball").unwrap();
    let base =
        grease_interval(check.given("bore"), check.given("speed"), Ratio::from_fraction(bearing)).unwrap();
    let one = Ratio::from_fraction(1.0);
    let dusty = tables::value(tables::CONTAMINATION, "heavy, non-abrasive").unwrap();
    let damp = tables::value(tables::MOISTURE, "80 to 90 % humidity").unwrap();
    let hot = housing_temperature_factor(Temperature::from_celsius(70.0));
    let factor = service_factor(hot, Ratio::from_fraction(dusty), Ratio::from_fraction(damp), one, one);
    // The row multiplies the six factors first; the result is the same.
    assert!((factor.fraction() * bearing - check.given::<Ratio>("bearing_factor").fraction()).abs() < 1e-12);
    check.holds("interval", corrected_interval(base, factor));
}

#[test]
fn the_viscosity_ratio_of_a_ball_bearing_agrees() {
    let check = several("D41");
    let (cool, warm) = (Temperature::from_celsius(40.0), Temperature::from_celsius(100.0));
    let viscosity = oilway_physics::oil::walther_viscosity(
        check.given("temperature"),
        cool,
        check.given("cool_viscosity"),
        warm,
        check.given("warm_viscosity"),
    );
    let wanted = reference_viscosity(check.given("speed"), check.given("pitch_diameter"));
    check.holds("ratio", viscosity_ratio(viscosity.unwrap(), wanted));
}

#[test]
fn a_monthly_quantity_is_the_side_rule_with_its_own_constant() {
    let check = several("D20");
    let monthly = tables::value(tables::QUANTITY_BY_INTERVAL, "monthly").unwrap();
    assert_eq!(monthly, check.given::<Ratio>("factor").fraction());
    check.holds(
        "mass",
        grease_quantity_side(check.given("outside"), check.given("width")) * (monthly / 0.005),
    );
}

#[test]
fn the_first_fill_is_a_share_of_the_free_space() {
    let check = several("D23");
    let space = bearing_free_space(
        check.given("bore"),
        check.given("outside"),
        check.given("width"),
        check.given("mass"),
    );
    let fill = check.given::<Ratio>("fill");
    let (least, most) = tables::FIRST_FILL.value;
    assert!(least < fill && fill < most);
    check.holds("volume", space.unwrap() * fill.fraction());
}

#[test]
fn chains_are_lubricated_by_their_speed() {
    for (start, drops) in [("D11", Some((5.0, Some(10.0)))), ("D12", Some((20.0, None))), ("D13", None)] {
        let check = several(start);
        let method = tables::chain_method(check.given::<Speed>("speed"));
        assert!(check.expected_word("method").starts_with(method.key), "{check}: {}", method.key);
        assert_eq!(method.drops_per_minute, drops, "{check}");
    }
}

#[test]
fn a_worked_example_of_the_bearing_inch_rule_is_met() {
    // ps-2002, seen: four single-row bearings of 0.9843 in bore need 0.0394 US fl oz/h; three figures printed.
    let each = Flow::from_cubic_inches_per_hour(0.01 * 231.0 / 128.0);
    let oil = oil_minimum(Length::from_inches(0.9843), Count::from_number(4.0), each);
    let ounces = oil.cubic_inches_per_hour() * 128.0 / 231.0;
    assert!((ounces - 0.0394).abs() < 0.00005, "{ounces}");
}

#[test]
fn the_freshness_of_a_long_thin_tail_is_met() {
    // Own, computed for a worked job: 1 m of 6 mm bore and 4 m of 4 mm, 52 weeks of 100 running hours: 0.0151 cm³/h.
    let mm = Length::from_millimetres;
    let tail = oilway_physics::pipe_flow::line_content(mm(6.0), Length::from_metres(1.0))
        + oilway_physics::pipe_flow::line_content(mm(4.0), Length::from_metres(4.0));
    let rate = freshness_rate(tail, Time::from_hours(5200.0)).cubic_centimetres_per_hour();
    assert!((rate - 0.0151).abs() < 0.00005, "{rate}");
}

#[test]
fn every_formula_of_the_family_states_validity_and_known_sources() {
    let known = sources();
    let mut ids: Vec<&str> = mine().map(|formula| formula.id).collect();
    assert_eq!(ids.len(), 37);
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
    assert_eq!(ids.len(), 37, "two formulas have one id");
}

#[test]
fn every_row_of_the_tables_has_a_known_source() {
    let known = sources();
    let tables: [&[Row]; 8] = [
        tables::BEARING_FACTOR,
        tables::CONTAMINATION,
        tables::MOISTURE,
        tables::VIBRATION,
        tables::SHAFT_POSITION,
        tables::TRADE_CORRECTION,
        tables::QUANTITY_BY_INTERVAL,
        tables::FILM_SURROUNDINGS,
    ];
    let rows = tables.into_iter().flatten().map(|row| row.2);
    let alone = [
        tables::FIRST_FILL.source,
        tables::GREASE_SPEED_INDEX.source,
        tables::GREASE_SURFACE_SPEED.source,
        tables::KAPPA_WANTED.source,
        tables::OIL_PER_INCH.source,
        tables::FILM.source,
        tables::STARVED_FILM.source,
        tables::SMALL_CARRIAGE.source,
        tables::MESH_LOSS.source,
    ];
    for source in rows.chain(alone).chain(tables::CHAIN_METHODS.iter().map(|method| method.source)) {
        assert!(known.contains_key(source.key), "{} is not in data/sources.toml", source.key);
    }
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-12 * a.abs().max(b.abs())
}

fn hours(bore: f64, speed: f64, k: f64) -> Option<f64> {
    let (bore, speed) = (Length::from_millimetres(bore), Frequency::from_per_minute(speed));
    grease_interval(bore, speed, Ratio::from_fraction(k)).map(Time::hours)
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_faster_or_a_larger_bearing_is_never_greased_less_often(
        bore in 5.0..400.0f64, speed in 1.0..20_000.0f64, more in 1.0..3.0f64, k in prop::sample::select(vec![1.0, 5.0, 10.0]),
    ) {
        let here = hours(bore, speed, k).unwrap_or(0.0);
        prop_assert!(hours(bore, speed * more, k).unwrap_or(0.0) <= here);
        prop_assert!(hours(bore * more, speed, k).unwrap_or(0.0) <= here);
    }

    #[test]
    fn below_the_cap_the_interval_goes_with_the_bearing_factor(bore in 20.0..200.0f64, speed in 200.0..5000.0f64) {
        if let (Some(one), Some(ten)) = (hours(bore, speed, 1.0), hours(bore, speed, 10.0)) {
            prop_assert!(near(ten, (10.0 * one).min(30_000.0)));
        }
    }

    #[test]
    fn every_fifteen_kelvins_halve_the_interval(t in 56.0..150.0f64) {
        let factor = |t: f64| temperature_factor(Temperature::from_celsius(t)).fraction();
        prop_assert!((factor(t) / factor(t + 15.0) - 2.0).abs() < 1e-9);
    }

    #[test]
    fn no_correction_for_temperature_ever_grows_with_it(t in -40.0..200.0f64, more in 0.0..50.0f64) {
        for rule in [temperature_factor, temperature_factor_handbook, housing_temperature_factor] {
            let (cool, warm) = (rule(Temperature::from_celsius(t)), rule(Temperature::from_celsius(t + more)));
            prop_assert!(warm <= cool && warm.fraction() > 0.0);
        }
    }

    #[test]
    fn a_rate_and_an_interval_give_the_quantity_back(volume in 1e-9..1e-3f64, time in 1.0..1e8f64) {
        let (volume, time) = (Volume::from_cubic_metres(volume), Time::from_seconds(time));
        prop_assert!(near(dose_per_cycle(mean_rate(volume, time), time).si(), volume.si()));
    }

    #[test]
    fn twice_the_size_takes_four_times_the_grease(outside in 10.0..500.0f64, width in 4.0..200.0f64) {
        let mm = Length::from_millimetres;
        for rule in [grease_quantity_side, grease_quantity_through_ring] {
            prop_assert!(near(rule(mm(2.0 * outside), mm(2.0 * width)).si(), 4.0 * rule(mm(outside), mm(width)).si()));
        }
    }

    #[test]
    fn every_gram_taken_off_a_bearing_leaves_its_volume_free(mass in 0.1..0.6f64, less in 0.001..0.1f64) {
        let mm = Length::from_millimetres;
        let space = |mass: f64| bearing_free_space(mm(50.0), mm(90.0), mm(20.0), Mass::from_kilograms(mass)).unwrap();
        let gained = (space(mass - less) - space(mass)).cubic_centimetres();
        prop_assert!((gained * 7.8 / (1000.0 * less) - 1.0).abs() < 1e-9);
    }

    #[test]
    fn a_faster_or_larger_bearing_wants_thinner_oil(speed in 1.0..20_000.0f64, more in 1.0..2.0f64, d in 10.0..1000.0f64) {
        let wanted = |n: f64, d: f64| reference_viscosity(Frequency::from_per_minute(n), Length::from_millimetres(d)).si();
        prop_assert!(wanted(speed * more, d) <= wanted(speed, d));
        prop_assert!(wanted(speed, d * more) <= wanted(speed, d));
    }

    #[test]
    fn the_side_flow_grows_with_the_eccentricity_and_stays_below_that_of_a_short_bearing(
        slenderness in 0.05..2.0f64, e in 0.2..0.79f64, more in 0.0..0.01f64,
    ) {
        let flow = |e: f64| {
            bearing_side_flow(
                Length::from_metres(0.05), Length::from_metres(5e-5), Frequency::from_per_second(10.0),
                Length::from_metres(0.1 * slenderness), Ratio::from_fraction(e),
            )
            .unwrap()
            .si()
        };
        prop_assert!(flow(e + more) >= flow(e));
        let short = 2.0 * core::f64::consts::PI * e * 0.05 * 5e-5 * 10.0 * 0.1 * slenderness;
        prop_assert!(flow(e) > 0.0 && flow(e) < short);
    }

    #[test]
    fn the_side_flow_scales_with_clearance_and_speed(slenderness in 0.05..2.0f64, e in 0.2..0.8f64, k in 0.1..10.0f64) {
        let flow = |c: f64, n: f64| {
            let (r, l) = (Length::from_metres(0.05), Length::from_metres(0.1 * slenderness));
            bearing_side_flow(r, Length::from_metres(c), Frequency::from_per_second(n), l, Ratio::from_fraction(e))
                .unwrap()
                .si()
        };
        prop_assert!(near(flow(5e-5 * k, 10.0), k * flow(5e-5, 10.0)));
        prop_assert!(near(flow(5e-5, 10.0 * k), k * flow(5e-5, 10.0)));
    }

    #[test]
    fn half_the_period_doubles_a_film_rate(d in 5.0..500.0f64, l in 5.0..500.0f64, period in 0.1..100.0f64) {
        let mm = Length::from_millimetres;
        let bush = |t: f64| film_renewal_bearing(mm(d), mm(l), tables::FILM.value, Time::from_hours(t)).si();
        prop_assert!(near(bush(period), 2.0 * bush(2.0 * period)));
        let face = |t: f64| {
            film_renewal_surface(Area::from_square_millimetres(d * l), tables::FILM.value, Time::from_hours(t)).si()
        };
        prop_assert!(near(face(period), 2.0 * face(2.0 * period)));
    }

    #[test]
    fn inside_its_table_the_open_gear_is_a_plane(d in 8.0..43.0f64, b in 6.0..39.0f64) {
        let rate = |d: f64, b: f64| open_gear_rate(Length::from_feet(d), Length::from_inches(b)).cubic_centimetres_per_minute();
        prop_assert!((rate(d + 1.0, b) - rate(d, b) - 0.05).abs() < 1e-9);
        prop_assert!((rate(d, b + 1.0) - rate(d, b) - 0.025).abs() < 1e-9);
    }

    #[test]
    fn a_mesh_is_a_bearing_that_loses_its_share(power in 1.0..1e6f64, loss in 0.0..0.05f64, z in 1.0..4.0f64) {
        let rho = Density::from_kilograms_per_cubic_metre(880.0);
        let c = SpecificHeat::from_joules_per_kilogram_kelvin(1950.0);
        let rise = TemperatureDifference::from_kelvins(20.0);
        let mesh = mesh_flow(Power::from_watts(power), Count::from_number(z), Ratio::from_fraction(loss), rho, c, rise);
        prop_assert!(near(mesh.si(), oil_for_heat(Power::from_watts(power * loss * z), rho, c, rise).si()));
    }

    #[test]
    fn two_rings_of_grease_make_one_of_their_joined_width(outer in 60.0..200.0f64, w in 1.0..50.0f64, v in 1.0..50.0f64) {
        let mm = Length::from_millimetres;
        let ring = |width: f64| coupling_fill(mm(outer), mm(50.0), mm(width)).unwrap().si();
        prop_assert!(near(ring(w) + ring(v), ring(w + v)));
    }

    #[test]
    fn whatever_is_legal_neither_panics_nor_gives_a_negative_answer(values in prop::array::uniform6(1e-6..1e6f64)) {
        for formula in mine() {
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
            prop_assert_eq!(answer, (formula.evaluate_si)(&inputs));
        }
    }
}

#[test]
fn a_viscosity_twice_as_high_has_twice_the_ratio() {
    let nu = KinematicViscosity::from_square_millimetres_per_second;
    assert_eq!(viscosity_ratio(nu(20.0), nu(10.0)).fraction(), 2.0);
}
