//! What surrounds the small sound design.

use oilway_model::{
    Air, Conditions, CurrentKind, Design, Duty, Electric, FlowCurve, Grease, GreaseRow, Limits, Lubricant,
    Oil, Place, Practice, Site, Substance, Surroundings,
};
use oilway_units::{
    AbsolutePressure, Consistency, Count, Density, Entry, Flow, KinematicViscosity, Length, PerPressure,
    Pressure, Ratio, Temperature, TemperatureDifference, Time, Voltage,
};

fn celsius(value: f64) -> Temperature {
    Temperature::from_celsius(value)
}

fn place(name: &str, temperatures: [f64; 3]) -> Place {
    let [coldest, normal, hottest] = temperatures.map(|t| Entry::known(celsius(t)));
    Place {
        name: name.to_owned(),
        coldest,
        normal,
        hottest,
        outdoors: false,
        surroundings: Surroundings::default(),
    }
}

fn base_oil() -> Oil {
    let viscosity = |v| Entry::known(KinematicViscosity::from_square_millimetres_per_second(v));
    Oil {
        at_40: viscosity(150.0),
        at_100: viscosity(15.0),
        density_15: Entry::known(Density::from_kilograms_per_cubic_metre(880.0)),
        pressure_coefficient: Entry::known(PerPressure::from_per_gigapascal(20.0)),
        pour_point: None,
    }
}

fn grease() -> Lubricant {
    let row = |t: f64, tau: f64, k: f64, n: f64| GreaseRow {
        temperature: celsius(t),
        yield_stress: Pressure::from_pascals(tau),
        consistency: Consistency::from_pascal_seconds_to_the_n(k),
        index: Ratio::from_fraction(n),
    };
    Lubricant {
        name: "grease for tests".to_owned(),
        description: "invented".to_owned(),
        substance: Substance::Grease(Grease {
            class: "1".to_owned(),
            thickener: "aluminium complex".to_owned(),
            base_oil: base_oil(),
            curve: FlowCurve::Rows(vec![
                row(4.0, 240.0, 85.0, 0.43),
                row(20.0, 180.0, 60.0, 0.42),
                row(60.0, 70.0, 25.0, 0.40),
            ]),
            density: Entry::known(Density::from_kilograms_per_cubic_metre(890.0)),
        }),
        food: true,
        coldest: None,
        hottest: None,
    }
}

/// Fills the design with an oil of this pour point, a disc and a pump that suit oil stay in.
pub(crate) fn oil_with_pour_point(design: &mut Design, pour: f64) {
    let oil = Oil { pour_point: Some(celsius(pour)), ..base_oil() };
    design.conditions.lubricant.substance = Substance::Oil(oil);
}

/// Gives all rows of the grease this yield stress in pascals.
pub(crate) fn yield_of(design: &mut Design, pascals: f64) {
    if let Substance::Grease(grease) = &mut design.conditions.lubricant.substance
        && let FlowCurve::Rows(rows) = &mut grease.curve
    {
        rows.iter_mut().for_each(|row| row.yield_stress = Pressure::from_pascals(pascals));
    }
}

/// Gives all rows of the grease this flow curve: yield stress in pascals, consistency, index.
pub(crate) fn curve_of(design: &mut Design, yield_stress: f64, consistency: f64, index: f64) {
    if let Substance::Grease(grease) = &mut design.conditions.lubricant.substance
        && let FlowCurve::Rows(rows) = &mut grease.curve
    {
        for row in rows {
            row.yield_stress = Pressure::from_pascals(yield_stress);
            row.consistency = Consistency::from_pascal_seconds_to_the_n(consistency);
            row.index = Ratio::from_fraction(index);
        }
    }
}

fn practice() -> Practice {
    let ratio = |fraction| Entry::known(Ratio::from_fraction(fraction));
    Practice {
        rest_factor: ratio(1.5),
        stall_use: ratio(0.9),
        band_low: ratio(0.9),
        band_high: ratio(1.5),
        floor: Entry::known(Flow::from_cubic_centimetres_per_hour(0.01)),
        back_pressure: Entry::known(Pressure::from_bar(5.0)),
        fittings: ratio(0.1),
        inlet_lowest: Entry::known(AbsolutePressure::from_bar(0.2)),
        entrained_air: ratio(0.02),
        disc_warmer: Entry::known(TemperatureDifference::ZERO),
    }
}

pub(super) fn conditions() -> Conditions {
    let bar = |value| Entry::known(Pressure::from_bar(value));
    Conditions {
        site: Site {
            altitude: Entry::known(Length::from_metres(100.0)),
            region: None,
            threads: Some("G".to_owned()),
        },
        places: vec![
            place("beside the machine", [10.0, 20.0, 30.0]),
            place("hall", [15.0, 20.0, 25.0]),
            place("cold room", [4.0, 4.0, 4.0]),
        ],
        air: Some(Air {
            lowest: bar(5.5),
            highest: bar(6.5),
            possible: bar(8.0),
            dew_point: Some(Entry::known(celsius(-10.0))),
        }),
        electric: Some(Electric {
            voltage: Voltage::from_volts(24.0),
            kind: CurrentKind::Direct,
            inputs: Some(4),
            outputs: Some(2),
        }),
        duty: Duty {
            hours_per_day: Entry::known(Time::from_hours(20.0)),
            days_per_week: Entry::known(Count::from_number(5.0)),
        },
        limits: Limits {
            refill_at_least: Some(Time::from_weeks(8.0)),
            age: Entry::known(Time::from_weeks(52.0)),
            event_time: Entry::known(Time::from_minutes(5.0)),
            blockage_noticed: true,
            food: true,
        },
        practice: practice(),
        lubricant: grease(),
    }
}
