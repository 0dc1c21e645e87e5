//! Published values of flow in round lines that need more than one formula.

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
