//! Pressure that stays although the disc has burst.

use oilway_model::Finding;
use oilway_text::message;
use oilway_units::Pressure;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

/// Less than this is felt by nobody who opens a joint.
const FELT: Pressure = Pressure::from_bar(1.0);

rule! {
    PressureStaysAfterBurst = "pressure-stays-after-burst",
    title: "A burst disc does not bring a grease main to nothing",
    finds: "The pressure that the yield stress holds in hole, discharge line and main after the disc has burst and the pump has stopped.",
    why: "Whoever sees the burst disc believes the line to be empty, and opens it.",
    source: "own-derivation", "4 τ0 L / D of hole, discharge line and main", Own,
    example: "Cold grease of 2000 Pa in 3 m of 6 mm discharge tube holds 40 bar for hours.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let Some(stays) = facts.shield.stays.filter(|p| *p > FELT) else { return Vec::new() };
    if facts.design.package.disc.is_none() {
        return Vec::new();
    }
    let what = message!("check-pressure-stays-after-burst", stays = stays);
    Draft::note(rule, "package.disc", what, message!("check-pressure-stays-after-burst-cure"))
        .number(message!("check-number-stays"), stays)
        .cautions(&["S21", "S52", "S20"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{oil_with_pour_point, severity};
    use oilway_model::Severity;

    #[test]
    fn a_grease_main_stays_under_pressure_and_an_oil_main_does_not() {
        assert_eq!(severity("pressure-stays-after-burst", |_| {}), Some(Severity::Note));
        assert_eq!(severity("pressure-stays-after-burst", |d| oil_with_pour_point(d, -40.0)), None);
    }
}
