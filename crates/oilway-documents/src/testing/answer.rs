//! What goes with the small design: an answer, findings and assumptions, with invented numbers.

use oilway_model::*;
use oilway_physics::{Source, Standing};
use oilway_text::message;
use oilway_units::*;

fn delivery(required: f64, delivered: f64, raised: bool) -> Delivery {
    let flow = Flow::from_cubic_centimetres_per_hour;
    Delivery {
        formula: flow(if raised { required / 20.0 } else { required }),
        required: flow(required),
        raised_by: raised.then(|| message!("solve-raised-floor", floor = flow(0.01))),
        delivered: flow(delivered),
        dose: Volume::from_cubic_centimetres(0.25),
        band_low: Ratio::from_fraction(0.9),
        band_high: (!raised).then(|| Ratio::from_fraction(1.5)),
        age_in_tail: Time::from_weeks(6.0),
        age: Time::from_weeks(20.0),
        tail: Volume::from_cubic_centimetres(25.0),
        notes: Vec::new(),
        rule: if raised { "demand/mean-rate" } else { "given" },
        viscosity_ratio: None,
    }
}

fn season(season: Season, moving: f64, stall: f64) -> SeasonResult {
    let bar = Pressure::from_bar;
    let path = |share: f64| PathPressures {
        start: bar(moving * share * 0.6),
        start_rested: bar(moving * share * 0.8),
        moving: bar(moving * share),
        residual: bar(moving * share * 0.4),
        flow: Flow::from_cubic_centimetres_per_minute(3.0),
        at_pump: bar(moving * share * 1.05),
    };
    SeasonResult {
        season,
        paths: [0.5, 0.55, 0.6, 0.95, 1.0].into_iter().map(path).collect(),
        worst_moving: 4,
        worst_start: 4,
        pump: PumpState {
            stall: bar(stall),
            stall_possible: bar(190.0),
            flow_limit: Flow::from_cubic_centimetres_per_minute(60.0),
            rate: Frequency::from_per_minute(10.0),
            free_air: Volume::from_litres(0.9),
            fill_time: Some(Time::from_seconds(0.3)),
            fill_time_available: Time::from_seconds(0.75),
        },
        event_time: Some(Time::from_minutes(4.0)),
    }
}

/// An answer that goes with the small design.
pub(crate) fn small_answer() -> Answer {
    let bar = Pressure::from_bar;
    Answer {
        deliveries: vec![
            delivery(0.4, 0.45, false),
            delivery(0.4, 0.45, false),
            delivery(0.2, 0.29, false),
            delivery(0.01, 0.03, true),
            delivery(0.01, 0.02, true),
        ],
        seasons: vec![
            season(Season::Cold, 76.0, 93.1),
            season(Season::Normal, 52.0, 93.1),
            season(Season::Hot, 38.0, 93.1),
        ],
        cold_limit: Some(ColdLimit {
            reserve: TemperatureDifference::from_kelvins(7.0),
            place: 1,
            temperature: Temperature::from_celsius(-5.0),
            stated: Some(("Grease of the tests".to_owned(), Temperature::from_celsius(-10.0))),
            remedies: vec![Remedy {
                what: message!("solve-remedy-wider"),
                temperature: Some(Temperature::from_celsius(-14.0)),
            }],
        }),
        protection: Protection {
            working: bar(93.1),
            lowest_burst: Some(bar(121.0)),
            highest_burst: Some(bar(138.1)),
            steady_maximum: Some(bar(96.8)),
            window_low: bar(125.0),
            window_high: bar(150.6),
            weakest: ("Damped gauge, 0 to 160 bar".to_owned(), bar(160.0)),
            relieving: Some(bar(22.0)),
            stays: Some(bar(31.0)),
            highest_setting: Some(bar(5.0)),
        },
        supply: Supply {
            use_rate: Flow::from_cubic_centimetres_per_hour(1.24),
            refill: Time::from_weeks(27.0),
            reserve: Time::from_weeks(4.0),
            feed: bar(0.05),
            air_per_hour: Volume::from_litres(0.19),
        },
        verdict: Verdict::WorksWithCare,
    }
}

/// A stop, a caution and a note.
pub(crate) fn small_findings() -> Vec<Finding> {
    let source = Source { key: "common-practice", place: "no source", standing: Standing::CommonPractice };
    let finding = |rule, severity, at: &str, what, cure| Finding {
        rule,
        severity,
        at: at.to_owned(),
        what,
        cure,
        turns: None,
        evidence: Vec::new(),
        source,
        cautions: Vec::new(),
    };
    vec![
        Finding {
            cautions: vec!["S50"],
            evidence: vec![Evidence {
                what: message!("solve-why-gauge"),
                value: Pressure::from_bar(96.8).into(),
            }],
            turns: Some(message!("solve-remedy-traced", temperature = Temperature::from_celsius(10.0))),
            ..finding(
                "disc-margin-thin",
                Severity::Caution,
                "package.disc",
                message!("solve-why-holder"),
                message!("solve-add-part"),
            )
        },
        Finding {
            cautions: vec!["S20", "S50"],
            ..finding(
                "port-undecided",
                Severity::Stop,
                "package.block",
                message!("solve-port-discharge"),
                message!("solve-add-line"),
            )
        },
        finding(
            "residual",
            Severity::Note,
            "point.belt 2",
            message!("solve-why-line"),
            message!("solve-kept"),
        ),
    ]
}

/// An assumption that matters and one that does not.
pub(crate) fn small_assumptions() -> Vec<Assumption> {
    let assumption = |at: &str, low: f64, high: f64, weight, turns: Option<f64>| Assumption {
        at: at.to_owned(),
        what: message!("assume-air-possible"),
        low: Pressure::from_bar(low).into(),
        high: Pressure::from_bar(high).into(),
        weight,
        turns_at: turns.map(|bar| Pressure::from_bar(bar).into()),
    };
    vec![
        assumption("air.possible", 8.0, 12.0, 0.24, Some(11.0)),
        assumption("air.highest", 6.4, 6.6, 0.001, None),
    ]
}
