//! Points as a short survey tells them, and what may surround them.

use oilway_physics::Ledger;
use oilway_physics::points::{
    Answer, Answers, Around, Demand, NoDemand, PointField, PointKind, Severity, Wanted, kind,
};
use oilway_units::{AnyQuantity, Density, Frequency, KinematicViscosity, Length, Quantity, Temperature};

pub(crate) fn clean() -> Around {
    Around {
        temperature: Temperature::from_celsius(70.0),
        grease: true,
        density: Density::from_kilograms_per_cubic_metre(900.0),
        base_viscosity: Some(KinematicViscosity::from_square_millimetres_per_second(60.0)),
        severity: Severity::default(),
        duty: 1.0,
    }
}

pub(crate) fn oil() -> Around {
    Around { grease: false, ..clean() }
}

/// The typical value of every field, also of those that need not apply.
pub(crate) fn typical(kind: &dyn PointKind) -> Vec<Answer> {
    kind.fields().iter().map(|field| at(field, 0.5)).collect()
}

/// A value of the span that is taken where nobody knows: 0 the lowest, 1 the highest, 0.5 the typical.
pub(crate) fn at(field: &PointField, share: f64) -> Answer {
    match field.wanted {
        Wanted::Word(words) => Answer::Word(words[((words.len() - 1) as f64 * share) as usize]),
        Wanted::Quantity { dimension, unknown: [low, middle, high], .. } => {
            let si = if share < 0.5 {
                low + (middle - low) * 2.0 * share
            } else {
                middle + (high - middle) * (2.0 * share - 1.0)
            };
            Answer::Quantity(AnyQuantity::new(dimension, si))
        }
    }
}

pub(crate) fn with(
    kind: &dyn PointKind,
    mut answers: Vec<Answer>,
    field: &str,
    answer: Answer,
) -> Vec<Answer> {
    let index = kind.fields().iter().position(|f| f.name == field).expect("the kind has the field");
    answers[index] = answer;
    answers
}

/// A point of a kind with its answers.
pub(crate) struct Said(pub(crate) Vec<Answer>, pub(crate) &'static dyn PointKind);

impl Said {
    pub(crate) fn of(id: &str) -> Self {
        let kind = kind(id).expect("the kind is in the list");
        // Typical where the demand needs it, nothing where it need not apply: what a short survey tells.
        let short = |field: &PointField| match field.wanted {
            Wanted::Word(words) => Answer::Word(words[0]),
            Wanted::Quantity { .. } if field.needed => at(field, 0.5),
            Wanted::Quantity { .. } => Answer::Nothing,
        };
        let answers = kind.fields().iter().map(short).collect();
        Said(answers, kind)
    }
    pub(crate) fn put<T: Quantity>(self, field: &str, value: T) -> Self {
        Said(with(self.1, self.0, field, Answer::Quantity(value.into())), self.1)
    }
    pub(crate) fn word(self, field: &str, word: &'static str) -> Self {
        Said(with(self.1, self.0, field, Answer::Word(word)), self.1)
    }
    pub(crate) fn demand(&self, around: &Around) -> Result<Demand, NoDemand> {
        demand(self.1, &self.0, around, &mut Ledger::off())
    }
    pub(crate) fn rate(&self, around: &Around) -> f64 {
        self.demand(around).expect("a demand").rate.cubic_centimetres_per_hour()
    }
}

pub(crate) fn demand(
    kind: &dyn PointKind,
    answers: &[Answer],
    around: &Around,
    ledger: &mut Ledger,
) -> Result<Demand, NoDemand> {
    kind.demand(Answers { fields: kind.fields(), answers }, around, ledger, "point.x")
}

/// Grease and oil, rough and clean, always and seldom moving.
pub(crate) fn many_surroundings() -> Vec<Around> {
    let mut all = Vec::new();
    for grease in [true, false] {
        for (dirt, water, vibration) in [(0, 0, 0), (2, 0, 1), (3, 3, 2), (0, 1, 0)] {
            for (duty, celsius) in [(1.0, 20.0), (0.3, 90.0), (0.0, 70.0)] {
                let severity = Severity { dirt, water, vibration };
                let temperature = Temperature::from_celsius(celsius);
                all.push(Around { grease, severity, duty, temperature, ..clean() });
            }
        }
    }
    all
}

pub(crate) fn mm(value: f64) -> Length {
    Length::from_millimetres(value)
}

pub(crate) fn close(got: f64, wanted: f64, tolerance: f64) {
    assert!((got / wanted - 1.0).abs() <= tolerance, "{got} instead of {wanted}");
}

pub(crate) fn bearing(d: f64, outside: f64, width: f64, rpm: f64) -> Said {
    Said::of("rolling bearing")
        .put("bore", mm(d))
        .put("outside", mm(outside))
        .put("width", mm(width))
        .put("speed", Frequency::from_per_minute(rpm))
}

pub(crate) fn cool(around: Around) -> Around {
    Around { temperature: Temperature::from_celsius(20.0), ..around }
}
