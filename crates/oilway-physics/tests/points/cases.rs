//! Worked cases that fit a whole kind; letters and numbers of the cases are those of `reference/demand`.

use oilway_physics::points::{Answers, Around, Severity};
use oilway_text::Arg;
use oilway_units::{
    Angle, Count, Density, Frequency, KinematicViscosity, Length, Mass, Power, Ratio, Temperature,
    TemperatureDifference, Time, Volume,
};

use crate::said::*;

#[test]
fn a_spherical_roller_bearing_gets_the_rate_of_the_worked_case() {
    // D36, computed from neale-1995 A20.5: bearing 22220 at 1500 a minute and 70 °C.
    let said = bearing(100.0, 180.0, 46.0, 1500.0).word("family", "spherical roller");
    let demand = said.demand(&clean()).expect("a demand");
    close(demand.rate.cubic_centimetres_per_hour(), 0.08625, 1e-5);
    close(demand.interval.expect("known").hours(), 533.333, 1e-5);
    close(demand.quantity.expect("known").cubic_centimetres(), 46.0, 1e-9);
    assert_eq!(demand.rule.id, "demand/grease-interval");
}

#[test]
fn a_hot_upright_bearing_gets_the_interval_of_the_worked_case() {
    // D33, computed: 22216 upright at 85 °C.
    let said = bearing(80.0, 140.0, 33.0, 900.0).word("family", "spherical roller").word("shaft", "vertical");
    let hot = Around { temperature: Temperature::from_celsius(85.0), ..clean() };
    close(said.demand(&hot).expect("a demand").interval.expect("known").hours(), 354.791, 1e-5);
}

#[test]
fn a_turning_outer_ring_gets_the_interval_of_the_worked_case() {
    // D34, computed: 22216 with its outer ring turning at 600 a minute.
    let said =
        bearing(80.0, 140.0, 33.0, 600.0).word("family", "spherical roller").word("ring", "outer turns");
    close(said.demand(&clean()).expect("a demand").interval.expect("known").hours(), 1729.73, 1e-5);
}

#[test]
fn the_viscosity_ratio_is_that_of_the_worked_bearing() {
    // Worked value of the reference, computed from iso-281-2007: 6210 at 1500 a minute, 27.18 mm²/s.
    let viscosity = KinematicViscosity::from_square_millimetres_per_second(27.18);
    let around = Around { base_viscosity: Some(viscosity), ..clean() };
    let demand = bearing(50.0, 90.0, 20.0, 1500.0).demand(&around).expect("a demand");
    close(demand.viscosity_ratio.expect("known"), 1.957, 5e-4);
    let unknown = Around { base_viscosity: None, ..clean() };
    assert_eq!(bearing(50.0, 90.0, 20.0, 1500.0).demand(&unknown).expect("a demand").viscosity_ratio, None);
}

#[test]
fn the_first_fill_of_a_bearing_is_that_of_the_worked_case() {
    // D23, geometry: 6210 of 0.46 kg filled to 40 per cent.
    let said = bearing(50.0, 90.0, 20.0, 1500.0).put("mass", Mass::from_kilograms(0.46));
    let fill = said.demand(&clean()).expect("a demand").first_fill.expect("the mass is known");
    close(fill.cubic_centimetres(), 11.5961, 1e-5);
}

#[test]
fn grease_through_the_ring_takes_two_fifths() {
    // D19 against D17: 16.56 g against 41.4 g.
    let side = bearing(100.0, 180.0, 46.0, 1500.0);
    let rate = side.rate(&clean());
    close(side.word("feed", "through the outer ring").rate(&clean()) / rate, 16.56 / 41.4, 1e-12);
}

#[test]
fn an_oiled_bearing_gets_the_middle_of_the_band() {
    // D43, neale-1995 C8.5: two rows of 2 in bore.
    let said = bearing(50.8, 90.0, 20.0, 1500.0).put("rows", Count::from_number(2.0));
    close(said.rate(&oil()), 0.8, 1e-9);
    let spherical = bearing(50.8, 90.0, 20.0, 1500.0).word("family", "spherical roller");
    close(spherical.rate(&oil()), 0.8, 1e-9);
}

#[test]
fn a_bearing_beyond_the_greasing_rule_is_refused_and_just_below_it_is_not() {
    // D27: 200 mm bore at 3000 a minute closes the bracket.
    let fast = bearing(200.0, 360.0, 98.0, 3000.0).word("family", "spherical roller");
    assert_eq!(fast.demand(&clean()).expect_err("too fast").reason.key, "physics-point-too-fast");
    // 14e6 / (n √100) − 400 = 8 h at n = 3431.37.
    let at = |rpm| bearing(100.0, 180.0, 46.0, rpm).word("family", "spherical roller").demand(&clean());
    assert!(at(3431.0).is_ok());
    assert!(at(3432.0).is_err());
    // With oil no interval is asked for.
    assert!(fast.demand(&oil()).is_ok());
}

#[test]
fn a_plain_bearing_gets_the_film_of_the_worked_cases() {
    // D44, D45, D47: 60 x 60 mm, oil and grease, and the gap with 0.055 mm radial clearance.
    let said =
        Said::of("plain bearing").put("bore", mm(60.0)).put("length", mm(60.0)).put("clearance", mm(0.11));
    close(said.rate(&cool(oil())), 0.282743, 1e-5);
    close(said.rate(&cool(clean())), 0.0706858, 1e-5);
    let fill = said.demand(&cool(clean())).expect("a demand").first_fill.expect("known");
    close(fill.cubic_centimetres(), 0.622035, 1e-5);
    // Four times as much in the spray: the upper end of practice.
    let spray = Around { severity: Severity { water: 3, ..Severity::default() }, ..cool(clean()) };
    close(said.rate(&spray), 4.0 * 0.0706858, 1e-5);
}

#[test]
fn the_full_film_is_told_where_a_shaft_turns_in_oil_and_only_there() {
    let said = Said::of("plain bearing").put("bore", mm(100.0)).put("length", mm(100.0));
    let keys = |said: &Said, around: &Around| -> Vec<&'static str> {
        said.demand(around).expect("a demand").notes.iter().map(|note| note.key).collect()
    };
    assert!(!keys(&said, &oil()).contains(&"physics-point-full-film"));
    let turning = said.put("speed", Frequency::from_per_minute(600.0));
    assert!(keys(&turning, &oil()).contains(&"physics-point-full-film"));
    assert!(!keys(&turning, &clean()).contains(&"physics-point-full-film"));
}

#[test]
fn a_pin_gets_half_of_a_bush_with_grease_and_the_same_with_oil() {
    let [bush, pin] =
        ["plain bearing", "pin"].map(|id| Said::of(id).put("bore", mm(20.0)).put("length", mm(25.0)));
    close(pin.rate(&clean()) / bush.rate(&clean()), 0.5, 1e-12);
    close(pin.rate(&oil()) / bush.rate(&oil()), 1.0, 1e-12);
}

#[test]
fn a_slideway_gets_the_film_of_the_worked_case() {
    // D48: 36 000 mm² with oil, as one face by area and as three faces by width and length.
    let area = oilway_units::Area::from_square_millimetres(36_000.0);
    let one = Said::of("slideway").put("faces", Count::from_number(1.0)).put("area", area);
    close(one.rate(&cool(oil())), 0.9, 1e-9);
    let three = Said::of("slideway")
        .put("faces", Count::from_number(3.0))
        .put("width", mm(30.0))
        .put("length", mm(400.0));
    close(three.rate(&cool(oil())), 0.9, 1e-9);
}

#[test]
fn a_guide_gets_the_interval_of_the_worked_case() {
    // D49: 100 km, 80 cm a cycle, 20 cycles a minute.
    let said = Said::of("linear guide")
        .put("travel_between", Length::from_kilometres(100.0))
        .put("travel_per_cycle", Length::from_centimetres(80.0))
        .put("cycles", Frequency::from_per_minute(20.0));
    close(said.demand(&clean()).expect("a demand").interval.expect("known").hours(), 104.167, 1e-5);
}

#[test]
fn a_short_stroke_is_told_and_a_long_one_is_not() {
    let told = |way: f64| {
        let said = Said::of("linear guide").put("carriage", mm(100.0)).put("travel_per_cycle", mm(way));
        said.demand(&clean())
            .expect("a demand")
            .notes
            .iter()
            .any(|note| note.key == "physics-point-short-stroke")
    };
    assert!(told(399.0) && !told(401.0));
}

#[test]
fn a_screw_is_lubricated_at_the_latest_after_five_hundred_hours() {
    let at = |rpm: f64| {
        let said = Said::of("ball screw").put("speed", Frequency::from_per_minute(rpm));
        said.demand(&clean()).expect("a demand").interval.expect("known").hours()
    };
    // 100 km at 10 mm lead and 600 turns a minute: 100 000 / 6 min, worked by hand.
    close(at(600.0), 1e5 / 6.0 / 60.0, 1e-12);
    close(at(1.0), 500.0, 1e-12);
}

#[test]
fn a_nut_narrower_than_its_screw_is_refused() {
    let with_bore = |bore: f64| {
        Said::of("ball screw").put("diameter", mm(40.0)).put("nut_bore", mm(bore)).demand(&clean())
    };
    assert_eq!(with_bore(35.0).expect_err("too narrow").reason.key, "physics-point-nut-too-narrow");
    assert!(with_bore(36.0).is_ok());
}

#[test]
fn an_open_gear_gets_the_cells_of_the_table_in_an_hour_of_running() {
    // D05 and D07, published in agma-9005-e02 Table D-3 in ml a minute.
    for (feet, inches, printed) in [(14.0, 18.0, 0.94), (44.0, 40.0, 2.99)] {
        let said = Said::of("open gear")
            .put("wheel", Length::from_feet(feet))
            .put("face", Length::from_inches(inches));
        close(said.rate(&clean()), printed * 60.0, 1e-6);
        let demand = said.demand(&clean()).expect("a demand");
        close(demand.quantity.expect("known").cubic_centimetres(), printed * 15.0, 1e-6);
        assert!(demand.notes.iter().all(|note| note.key != "physics-point-gear-table"));
    }
    let small =
        Said::of("open gear").put("wheel", Length::from_feet(2.0)).demand(&clean()).expect("a demand");
    assert!(small.notes.iter().any(|note| note.key == "physics-point-gear-table"));
}

#[test]
fn an_open_gear_beyond_the_speed_of_the_table_is_refused() {
    // 7.5 m/s at 2 m: 71.62 turns a minute.
    let at = |rpm: f64| {
        let said = Said::of("open gear").put("wheel", Length::from_metres(2.0));
        said.put("wheel_speed", Frequency::from_per_minute(rpm)).demand(&clean())
    };
    assert!(at(71.6).is_ok() && at(71.7).is_err());
}

#[test]
fn an_enclosed_gear_gets_the_oil_of_the_worked_case() {
    // D50: 100 kW, one mesh, one per cent, 880 kg/m³, 20 K.
    let said = Said::of("enclosed gear")
        .put("power", Power::from_kilowatts(100.0))
        .put("meshes", Count::from_number(1.0))
        .put("loss", Ratio::from_percent(1.0))
        .put("rise", TemperatureDifference::from_kelvins(20.0));
    let around = Around { density: Density::from_kilograms_per_cubic_metre(880.0), ..oil() };
    close(said.demand(&around).expect("a demand").rate.litres_per_minute(), 1.74825, 1e-5);
}

#[test]
fn chains_and_enclosed_gears_want_oil_and_couplings_grease() {
    for id in ["chain", "enclosed gear"] {
        assert!(Said::of(id).demand(&clean()).is_err() && Said::of(id).demand(&oil()).is_ok(), "{id}");
    }
    assert!(Said::of("coupling").demand(&oil()).is_err() && Said::of("coupling").demand(&clean()).is_ok());
}

#[test]
fn a_chain_gets_a_shot_for_each_joint_and_is_told_what_drip_would_take() {
    let said = Said::of("chain")
        .put("links", Count::from_number(120.0))
        .put("shot", Volume::from_cubic_centimetres(0.05))
        .put("every", Time::from_hours(8.0));
    close(said.rate(&oil()), 0.75, 1e-12);
    // D11 to D13, published in neale-1995 C9: slow drip, fast drip, spray.
    for (speed, key) in [
        (2.0, "physics-point-chain-drip"),
        (5.0, "physics-point-chain-fast-drip"),
        (9.0, "physics-point-chain-spray"),
    ] {
        let moving = Said(said.0.clone(), said.1)
            .put("chain_speed", oilway_units::Speed::from_metres_per_second(speed));
        assert_eq!(moving.demand(&oil()).expect("a demand").notes[0].key, key);
    }
}

#[test]
fn a_coupling_gets_the_fill_of_the_worked_case_for_each_mesh() {
    // D52: 120 over 100 by 30 mm.
    let said =
        Said::of("coupling").put("housing_bore", mm(120.0)).put("depth", mm(10.0)).put("width", mm(30.0));
    let demand = said.put("meshes", Count::from_number(2.0)).demand(&clean()).expect("a demand");
    close(demand.quantity.expect("known").cubic_centimetres(), 2.0 * 103.673, 1e-5);
}

#[test]
fn a_rope_gets_the_film_of_the_worked_case_times_its_strands() {
    // D53 with the factor 1.2 for the strands: 6.28319 x 1.2 = 7.539828 cm³ for each metre.
    let said = Said::of("wire rope").put("diameter", mm(20.0)).put("length", Length::from_metres(1.0));
    close(
        said.demand(&clean()).expect("a demand").quantity.expect("known").cubic_centimetres(),
        7.539828,
        1e-5,
    );
}

#[test]
fn what_the_machine_builder_says_is_not_changed_by_duty_or_dirt() {
    let said = Said::of("as told")
        .put("quantity", Volume::from_cubic_centimetres(5.0))
        .put("every", Time::from_hours(40.0));
    for around in many_surroundings() {
        close(said.rate(&around), 0.125, 1e-12);
    }
}

#[test]
fn a_swinging_bearing_counts_as_turning_as_far_as_its_rollers_go() {
    // OS1 by hand: 20 swings a minute through 90° in all are 4 x 45 / 360 x 20 = 10 turns a minute.
    let swinging = bearing(300.0, 460.0, 118.0, 1.0)
        .word("family", "spherical roller")
        .word("motion", "swings")
        .put("swing", Angle::from_degrees(90.0))
        .put("swing_rate", Frequency::from_per_minute(200.0));
    let turning = bearing(300.0, 460.0, 118.0, 100.0).word("family", "spherical roller");
    close(swinging.rate(&clean()), turning.rate(&clean()), 1e-12);
    let speed = swinging.1.speed(Answers { fields: swinging.1.fields(), answers: &swinging.0 });
    close(speed.expect("it moves").per_minute(), 100.0, 1e-12);
}

#[test]
fn a_swing_below_a_quarter_turn_is_told_and_a_wider_one_is_not() {
    let told = |degrees: f64| {
        let said = Said::of("rolling bearing")
            .word("motion", "swings")
            .put("swing", Angle::from_degrees(degrees))
            .put("swing_rate", Frequency::from_per_minute(20.0));
        said.demand(&clean())
            .expect("a demand")
            .notes
            .iter()
            .any(|note| note.key == "physics-point-small-swing")
    };
    assert!(told(89.0) && !told(91.0));
}

#[test]
fn a_swinging_bearing_without_its_swing_is_asked_for_it() {
    let no = Said::of("rolling bearing").word("motion", "swings").demand(&clean()).expect_err("no swing");
    assert_eq!(no.reason.key, "physics-point-missing");
}

#[test]
fn dirt_water_and_vibration_shorten_the_interval_by_their_tables_and_the_remark_gives_the_others() {
    // maintenance-training, from memory: heavy dust 0.7, damp 0.7, noticeable vibration 0.6.
    let said = bearing(100.0, 180.0, 46.0, 1500.0).word("family", "spherical roller");
    let severity = Severity { dirt: 2, water: 1, vibration: 1 };
    let demand = said.demand(&Around { severity, ..clean() }).expect("a demand");
    close(demand.interval.expect("known").hours(), 533.333 * 0.7 * 0.7 * 0.6, 1e-5);
    let note = demand.notes.iter().find(|note| note.key == "physics-point-methods").expect("the remark");
    let hours: Vec<f64> = note.args.iter().map(|(_, arg)| hours(arg)).collect();
    close(hours[1], 533.333, 1e-5);
    // Its step of housing temperature at 70 °C is 0.5.
    close(hours[2], 533.333 * 0.5 * 0.7 * 0.7 * 0.6, 1e-5);
}

fn hours(arg: &Arg) -> f64 {
    let Arg::Quantity(quantity) = arg else { panic!("{arg:?} is no quantity") };
    quantity.get::<Time>().expect("a time").hours()
}

#[test]
fn a_screw_with_oil_counts_each_circuit_as_a_row() {
    // BS3 with D43's numbers: 50.8 mm, two circuits, 0.2 cm³/h for each inch.
    let said = Said::of("ball screw").put("diameter", mm(50.8)).put("circuits", Count::from_number(2.0));
    close(said.rate(&oil()), 0.8, 1e-9);
}

#[test]
fn the_fill_of_a_nut_is_that_of_its_ring_less_the_balls() {
    // By hand for 40 x 10 with a nut of 60 mm: ball 6, root 35.2, bore 43; 5/12 of half of the ring.
    let said =
        Said::of("ball screw").put("diameter", mm(40.0)).put("lead", mm(10.0)).put("nut_length", mm(60.0));
    let fill = said.demand(&clean()).expect("a demand").first_fill.expect("known");
    close(
        fill.cubic_centimetres(),
        core::f64::consts::FRAC_PI_4 * (43.0 * 43.0 - 35.2 * 35.2) * 0.06 * 0.5 * 5.0 / 12.0,
        1e-8,
    );
}

#[test]
fn a_coupling_with_teeth_deeper_than_its_bore_is_refused() {
    let depth = |depth: f64| {
        Said::of("coupling").put("housing_bore", mm(80.0)).put("depth", mm(depth)).demand(&clean())
    };
    assert!(depth(39.9).is_ok() && depth(40.1).is_err());
}
