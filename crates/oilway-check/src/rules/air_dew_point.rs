//! Air that is too wet for the place.

use oilway_model::{Finding, Season};
use oilway_text::message;
use oilway_units::TemperatureDifference;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

/// The dew point lies at least this far below the coldest tube.
const DRY: TemperatureDifference = TemperatureDifference::from_kelvins(10.0);

rule! {
    AirDewPoint = "air-dew-point",
    title: "The compressed air is not dry enough for its coldest place",
    finds: "A pressure dew point less than 10 K below the coldest day at the pump, or one that nobody has said.",
    why: "Water settles in valve and motor; exhaust air chills further, and ice in silencer and spool is the usual winter stop of an air pump.",
    source: "common-practice", "dew point at least 10 K below the lowest tube temperature", CommonPractice,
    example: "Dew point 3 °C, pump place down to 10 °C: 7 K apart. Keep the air tube out of the cold room, or dry the air further.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let design = facts.design;
    let driven = facts.views.pump.as_ref().is_some_and(|pump| pump.drive.is_air());
    let Some(air) = design.conditions.air.as_ref().filter(|_| driven) else { return Vec::new() };
    let Some(place) = design.conditions.places.get(design.package.place) else { return Vec::new() };
    let coldest = place.temperature(Season::Cold);
    let Some(dew_point) = air.dew_point.as_ref().map(|entry| entry.get()) else {
        let what = message!("check-air-dew-point-unknown", coldest = coldest);
        return Draft::note(rule, "air.dew_point", what, message!("check-air-dew-point-unknown-cure"))
            .alone();
    };
    let wanted = coldest.plus(-DRY);
    if dew_point <= wanted {
        return Vec::new();
    }
    let cure = message!("check-air-dew-point-cure", wanted = wanted);
    let what = if dew_point > coldest {
        message!("check-air-wet", dew_point = dew_point, coldest = coldest)
    } else {
        message!(
            "check-air-dew-point",
            dew_point = dew_point,
            coldest = coldest,
            apart = coldest.above(dew_point)
        )
    };
    Draft::caution(rule, "air.dew_point", what, cure)
        .number(message!("check-number-dew-point"), dew_point)
        .number(message!("check-number-coldest"), coldest)
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::severity;
    use oilway_model::Severity;
    use oilway_units::{Entry, Temperature};

    #[test]
    fn ten_kelvins_are_the_edge_and_an_unknown_dew_point_is_asked_for() {
        // The pump's place gets down to 10 °C.
        let at = |celsius: Option<f64>| {
            severity("air-dew-point", |d| {
                let entry = celsius.map(|c| Entry::known(Temperature::from_celsius(c)));
                d.conditions.air.as_mut().unwrap().dew_point = entry;
            })
        };
        assert_eq!(at(Some(0.0)), None);
        assert_eq!(at(Some(1.0)), Some(Severity::Caution));
        assert_eq!(at(Some(15.0)), Some(Severity::Caution));
        assert_eq!(at(None), Some(Severity::Note));
    }
}
