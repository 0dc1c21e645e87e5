//! Published values of flow in round lines that need more than one formula, and the libraries' tables.

use oilway_physics::grease::herschel_bulkley_stress;
use oilway_physics::pipe_flow::*;
use oilway_testkit::{Check, published};
use oilway_units::{Consistency, Density, Length, Pressure, Ratio, ShearRate, Speed, Viscosity};

/// The row of the file whose name begins so.
fn row(start: &str) -> Check {
    let rows = published("pipe-flow/other-published");
    rows.into_iter().find(|check| check.name.starts_with(start)).expect("the row is in the file")
}

/// Fanning's factor from the wall stress, 2 τw / (ρ V²).
fn fanning(stress: Pressure, density: Density, speed: Speed) -> Ratio {
    let v = speed.metres_per_second();
    Ratio::from_fraction(2.0 * stress.pascals() / (density.kilograms_per_cubic_metre() * v * v))
}

/// The flow of a mean speed.
fn flow(bore: Length, speed: Speed) -> oilway_units::Flow {
    let d = bore.metres();
    let area = core::f64::consts::FRAC_PI_4 * d * d;
    oilway_units::Flow::from_cubic_metres_per_second(area * speed.metres_per_second())
}

#[test]
fn b03_friction_factor_of_a_power_law() {
    let check = row("B03");
    let gradient = check.given::<oilway_units::PressurePerLength>("gradient");
    let length = Length::from_metres(1.0);
    let stress = wall_stress(check.given("bore"), length, gradient * length);
    check.holds("fanning", fanning(stress, check.given("density"), check.given("speed")));
}

#[test]
fn b07_bingham_line_through_two_points_of_a_power_law() {
    let check = row("B07");
    let stress = |rate: &str| {
        herschel_bulkley_stress(
            check.given(rate),
            Pressure::ZERO,
            check.given("consistency"),
            check.given("index"),
        )
    };
    let (slow, fast): (ShearRate, ShearRate) = (check.given("first"), check.given("second"));
    let slope = (stress("second") - stress("first")).pascals() / (fast - slow).per_second();
    check.holds("plastic_viscosity", Viscosity::from_pascal_seconds(slope));
    check.holds("yield_stress", stress("first") - Pressure::from_pascals(slope * slow.per_second()));
}

#[test]
fn b08_speed_in_the_middle_of_a_bingham_plastic() {
    let check = row("B08");
    let plastic: Viscosity = check.given("plastic_viscosity");
    let speed = centre_speed(
        check.given("bore"),
        check.given("length"),
        check.given("drop"),
        check.given("yield_stress"),
        Consistency::from_pascal_seconds_to_the_n(plastic.pascal_seconds()),
        Ratio::from_fraction(1.0),
    );
    check.holds("centre_speed", speed);
}

#[test]
fn b27_friction_factors_of_an_oil_and_of_a_power_law() {
    let check = row("B27");
    let (bore, length): (Length, Length) = (check.given("bore"), check.given("length"));
    let (density, speed): (Density, Speed) = (check.given("density"), check.given("speed"));
    let flow = flow(bore, speed);
    let oil = newtonian_drop(bore, length, flow, Viscosity::from_pascal_seconds(0.34));
    check.holds("fanning_newtonian", fanning(wall_stress(bore, length, oil), density, speed));
    let (k, n) = (Consistency::from_pascal_seconds_to_the_n(5.2), Ratio::from_fraction(0.45));
    let thin = herschel_bulkley_drop(bore, length, flow, Pressure::ZERO, k, n);
    check.holds("fanning_power", fanning(wall_stress(bore, length, thin), density, speed));
}

#[test]
fn b31_and_b32_wave_speed_and_surge_in_a_thin_pipe() {
    let thin = |check: &Check| {
        let (bore, wall): (Length, Length) = (check.given("bore"), check.given("wall"));
        // The book's thin wall: 1/K = D/(E e).
        let pipe = check.given::<Pressure>("young") * (wall / bore);
        wave_speed(effective_modulus(check.given("modulus"), pipe), check.given("density"))
    };
    let check = row("B31");
    check.holds("wave_speed", thin(&check));
    let check = row("B32");
    check.holds("surge", surge(check.given("density"), thin(&check), check.given("speed_change")));
}

#[test]
fn b33_surge_in_a_rigid_pipe() {
    let check = row("B33");
    let speed = wave_speed(check.given("modulus"), check.given("density"));
    check.holds("surge", surge(check.given("density"), speed, check.given("speed_change")));
}

#[test]
fn b15_half_of_the_flow_of_a_bingham_plastic_runs_in_its_plug() {
    let check = row("B15");
    let share: Ratio = check.expected("plug_fraction");
    let (bore, length, plastic) = (Length::from_metres(0.01), Length::from_metres(2.0), 1.5);
    let drop = Pressure::from_bar(4.0);
    let tau_0 = wall_stress(bore, length, drop) * share.fraction();
    let total = bingham_flow(bore, length, drop, tau_0, Viscosity::from_pascal_seconds(plastic));
    let k = Consistency::from_pascal_seconds_to_the_n(plastic);
    let plug = centre_speed(bore, length, drop, tau_0, k, Ratio::from_fraction(1.0));
    let in_plug = flow(bore * share.fraction(), plug);
    assert!((in_plug / total - 0.5).abs() < 1e-9, "{}", in_plug / total);
}

/// Bore and outside in mm, E in GPa, ν, then K in GPa with held ends and K of wall and a lubricant of 1.6 GPa (open
/// ends), as computed outside the program from Lamé's strains and rounded to what is printed here. Standing: own.
const WALLS: [(f64, f64, f64, f64, f64, f64); 7] = [
    (4.0, 6.0, 206.0, 0.3, 37.37, 1.531),
    (6.0, 8.0, 206.0, 0.3, 28.30, 1.509),
    (7.0, 10.0, 206.0, 0.3, 33.79, 1.524),
    (9.0, 12.0, 206.0, 0.3, 28.30, 1.509),
    (20.0, 25.0, 206.0, 0.3, 22.71, 1.488),
    (4.0, 6.0, 120.0, 0.34, 21.78, 1.484),
    (4.0, 6.0, 0.5, 0.4, 0.0911, 0.0792),
];

#[test]
fn held_tubes_and_filled_tubes_are_as_stiff_as_computed_by_another_hand() {
    let gigapascals = |value: f64| Pressure::from_megapascals(value * 1000.0);
    for (bore, outside, young, poisson, held, filled) in WALLS {
        let (bore, outside) = (Length::from_millimetres(bore), Length::from_millimetres(outside));
        let (young, poisson) = (gigapascals(young), Ratio::from_fraction(poisson));
        // Four figures, three for the plastic tube.
        let anchored = wall_modulus_anchored(bore, outside, young, poisson);
        assert!((anchored / gigapascals(held) - 1.0).abs() < 6e-4, "{anchored:?} {held}");
        let both = effective_modulus(gigapascals(1.6), wall_modulus(bore, outside, young, poisson));
        assert!((both / gigapascals(filled) - 1.0).abs() < 8e-4, "{both:?} {filled}");
    }
}

#[test]
fn a_hose_of_some_growth_is_as_stiff_as_computed_by_another_hand() {
    // 6.3 mm bore, 200 bar; growth in cm³/m and K in MPa, three figures. Standing: own.
    for (growth, modulus) in [(1.0, 623.0), (2.0, 312.0), (5.0, 125.0)] {
        let growth = oilway_units::VolumePerLength::from_cubic_centimetres_per_metre(growth);
        let ours = hose_modulus(Length::from_millimetres(6.3), growth, Pressure::from_bar(200.0));
        assert!((ours.megapascals() / modulus - 1.0).abs() < 3e-3, "{ours:?} {modulus}");
    }
}

#[test]
fn the_plug_of_a_computed_case_fills_its_share_of_the_radius() {
    // Every computed case with a yield stress and a wall stress beside it: the plug is their ratio, and at rest one.
    for check in published("pipe-flow/herschel-bulkley") {
        if check.gives("yield_stress") && !check.expects("refused") {
            let (bore, length, drop) = (check.given("bore"), check.given("length"), check.given("drop"));
            let stress = wall_stress(bore, length, drop);
            let tau_0: Pressure = check.given("yield_stress");
            let moves = check.expected::<oilway_units::Flow>("result").cubic_metres_per_second() > 0.0;
            let share = plug_share(tau_0, stress).fraction();
            assert_eq!(share < 1.0, moves, "{check}");
        }
    }
}
