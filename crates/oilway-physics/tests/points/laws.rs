//! What holds for any answer: more wants more, worse never less, and no number without end.

use oilway_physics::points::{Answer, Around, KINDS, PointField, PointKind, Severity, Wanted, kind};
use oilway_physics::{Ledger, Range};
use oilway_units::{AnyQuantity, Density, Flow, Frequency, KinematicViscosity, Temperature, Time, Volume};
use proptest::prelude::*;

use crate::ledger::recompute;
use crate::said::*;

#[test]
fn wear_follows_the_running_and_washing_does_not() {
    let half = Around { duty: 0.5, ..cool(clean()) };
    let wet = |around: Around| Around { severity: Severity { water: 3, ..Severity::default() }, ..around };
    for id in
        ["plain bearing", "pin", "slideway", "spline", "slewing ring", "rolling bearing", "insert bearing"]
    {
        let said = Said::of(id);
        close(said.rate(&half) / said.rate(&cool(clean())), 0.5, 1e-12);
        assert!(said.rate(&wet(half)) > 0.7 * said.rate(&wet(cool(clean()))), "{id}");
    }
}

#[test]
fn what_is_larger_needs_more() {
    let grows = [
        ("rolling bearing", "outside"),
        ("rolling bearing", "width"),
        ("rolling bearing", "bore"),
        ("rolling bearing", "speed"),
        ("insert bearing", "width"),
        ("track roller", "width"),
        ("plain bearing", "bore"),
        ("plain bearing", "length"),
        ("pin", "bore"),
        ("spline", "length"),
        ("slideway", "width"),
        ("slideway", "faces"),
        ("linear guide", "size"),
        ("linear guide", "cycles"),
        ("ball screw", "diameter"),
        ("ball screw", "nut_length"),
        ("slewing ring", "raceway"),
        ("slewing ring", "ball"),
        ("open gear", "wheel"),
        ("open gear", "face"),
        ("coupling", "housing_bore"),
        ("wire rope", "diameter"),
        ("wire rope", "length"),
        ("as told", "quantity"),
    ];
    let oiled = [
        ("rolling bearing", "bore"),
        ("ball screw", "diameter"),
        ("linear guide", "size"),
        ("enclosed gear", "power"),
        ("chain", "links"),
    ];
    let of = |around: Around| move |pair: (&'static str, &'static str)| (pair, around);
    for ((id, field), around) in grows.into_iter().map(of(clean())).chain(oiled.into_iter().map(of(oil()))) {
        let kind = kind(id).expect("listed");
        let index = kind.fields().iter().position(|f| f.name == field).expect("a field");
        let rate = |share: f64| {
            // Slow bearings all sit at the longest interval; a fast one shows what bore and speed do.
            let said = Said::of(id);
            let said = if id == "rolling bearing" {
                said.put("speed", Frequency::from_per_minute(1450.0))
            } else {
                said
            };
            Said(with(kind, said.0, field, at(&kind.fields()[index], share)), kind).rate(&around)
        };
        let rates: Vec<f64> = [0.0, 0.25, 0.5, 0.75, 1.0].into_iter().map(rate).collect();
        assert!(rates.windows(2).all(|pair| pair[1] >= pair[0]), "{id}, {field}: {rates:?}");
        assert!(rates[4] > rates[0], "{id}, {field}: {rates:?}");
    }
}

/// Any answer that a field allows: small and large sizes alike, so drawn by their logarithm.
fn any_answer(field: &'static PointField) -> BoxedStrategy<Answer> {
    match field.wanted {
        Wanted::Word(words) => proptest::sample::select(words).prop_map(Answer::Word).boxed(),
        Wanted::Quantity { dimension, range, .. } => {
            let Range::Between(low, high) = range else { panic!("{} has no range", field.name) };
            let value = (low.ln()..=high.ln()).prop_map(move |l| l.exp().clamp(low, high));
            let value = prop_oneof![8 => value, 1 => Just(low), 1 => Just(high)];
            let known = value.prop_map(move |si| Answer::Quantity(AnyQuantity::new(dimension, si)));
            if field.needed { known.boxed() } else { prop_oneof![known, Just(Answer::Nothing)].boxed() }
        }
    }
}

fn any_point() -> impl Strategy<Value = (&'static dyn PointKind, Vec<Answer>)> {
    (0..KINDS.len()).prop_flat_map(|index| {
        let kind = KINDS[index];
        let answers: Vec<_> = kind.fields().iter().map(any_answer).collect();
        answers.prop_map(move |answers| (kind, answers))
    })
}

prop_compose! {
    fn any_around()(
        celsius in -40.0..180.0f64,
        grease: bool,
        density in 700.0..1500.0f64,
        viscosity in proptest::option::of(0.0..1000.0f64),
        (dirt, water, vibration) in (0..=3u8, 0..=3u8, 0..=2u8),
        duty in 0.0..=1.0f64,
    ) -> Around {
        Around {
            temperature: Temperature::from_celsius(celsius),
            grease,
            density: Density::from_kilograms_per_cubic_metre(density),
            base_viscosity: viscosity.map(KinematicViscosity::from_square_millimetres_per_second),
            severity: Severity { dirt, water, vibration },
            duty,
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4000))]

    #[test]
    fn no_legal_answer_gives_a_negative_or_endless_demand((kind, answers) in any_point(), around in any_around()) {
        let mut ledger = Ledger::on();
        if let Ok(demand) = demand(kind, &answers, &around, &mut ledger) {
            prop_assert!(demand.rate.is_finite() && demand.rate >= Flow::ZERO, "{}: {:?}", kind.id(), demand.rate);
            prop_assert!(demand.quantity.is_none_or(|v| v.is_finite() && v >= Volume::ZERO));
            prop_assert!(demand.interval.is_none_or(|t| t.is_finite() && t > Time::ZERO));
            prop_assert!(demand.first_fill.is_none_or(|v| v.is_finite() && v >= Volume::ZERO));
            prop_assert!(demand.viscosity_ratio.is_none_or(|k| k.is_finite() && k > 0.0));
            recompute(&ledger, kind.id());
        }
    }

    #[test]
    fn rougher_surroundings_never_ask_for_less((kind, answers) in any_point(), around in any_around(), which in 0..3u8) {
        let mut worse = around;
        let Severity { dirt, water, vibration } = around.severity;
        worse.severity = Severity {
            dirt: (dirt + u8::from(which == 0)).min(3),
            water: (water + u8::from(which == 1)).min(3),
            vibration: (vibration + u8::from(which == 2)).min(2),
        };
        let rate = |around: &Around| demand(kind, &answers, around, &mut Ledger::off()).map(|d| d.rate);
        match (rate(&around), rate(&worse)) {
            (Ok(mild), Ok(rough)) => prop_assert!(rough >= mild * (1.0 - 1e-12), "{}: {mild:?} {rough:?}", kind.id()),
            (mild, rough) => prop_assert_eq!(mild.is_err(), rough.is_err()),
        }
    }

    #[test]
    fn more_running_never_asks_for_less((kind, answers) in any_point(), around in any_around(), more in 0.0..=1.0f64) {
        let rate = |duty| demand(kind, &answers, &Around { duty, ..around }, &mut Ledger::off()).map(|d| d.rate);
        if let (Ok(less), Ok(more)) = (rate(around.duty.min(more)), rate(around.duty.max(more))) {
            prop_assert!(more >= less);
        }
    }
}
