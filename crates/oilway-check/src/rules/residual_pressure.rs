//! Pressure that stays in the lines.

use oilway_model::Finding;
use oilway_text::message;
use oilway_units::Pressure;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

/// Less than this is felt by nobody who opens a joint.
const FELT: Pressure = Pressure::from_bar(1.0);

rule! {
    ResidualPressure = "residual-pressure",
    title: "Pressure stays at the far end after the pump is let down",
    finds: "The highest pressure that the yield stress of a grease holds at the far end of a path once the pump side is let down.",
    why: "The gauge at the pump shows nothing, and the joint at the bearing spits.",
    source: "own-derivation", "4 τ0 L / D summed along the path", Own,
    example: "40 m of 9.4 mm bore at a yield stress of 900 Pa hold 153 bar for hours: open a joint only after venting near it, slowly, with a cloth between.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let Some((season, point, stays)) = facts.highest(|path| path.residual) else { return Vec::new() };
    if stays <= FELT {
        return Vec::new();
    }
    let what = message!(
        "check-residual-pressure",
        stays = stays,
        point = facts.design.points[point].name.as_str(),
        season = super::season_word(season.season)
    );
    Draft::note(rule, facts.point_name(point), what, message!("check-residual-pressure-cure"))
        .number(message!("check-number-residual"), stays)
        .cautions(&["S20", "S21", "S31"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{oil_with_pour_point, severity};
    use oilway_model::Severity;

    #[test]
    fn grease_holds_pressure_and_oil_holds_none() {
        assert_eq!(severity("residual-pressure", |_| {}), Some(Severity::Note));
        assert_eq!(severity("residual-pressure", |d| oil_with_pour_point(d, -40.0)), None);
    }
}
