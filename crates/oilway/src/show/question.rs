//! The one question: what to ask or to measure first, in words that the person at the other end of the telephone can answer, or
//! with what to measure where nobody can know.

use oilway_model::Assumption;
use oilway_text::{Arg, Message, message};

use super::span::{span, turning_value};

/// The one question that would narrow the answer most: first what turns the verdict, then what weighs most.
pub(crate) fn question(list: &[Assumption]) -> Option<Message> {
    let turning = list.iter().find(|assumption| assumption.turns_at.is_some());
    let heaviest = || list.first().filter(|assumption| assumption.weight > 0.0);
    let asked = turning.or_else(heaviest)?;
    let (question, range) = (ask(&asked.at), span(asked.low, asked.high));
    let at = asked.at.as_str();
    Some(match asked.turns_at {
        Some(value) => {
            let value = turning_value(value, asked.high);
            Message::new("oilway-question-turns")
                .with("question", question)
                .with("at", at)
                .with("span", range)
                .with("value", value)
        }
        None => message!("oilway-question", question = question, at = at, span = range),
    })
}

/// Questions by what an entry is: its place in the job without the name in the middle.
const QUESTIONS: &[(&str, &str)] = &[
    ("site.altitude", "oilway-ask-altitude"),
    ("place.coldest", "oilway-ask-coldest"),
    ("place.normal", "oilway-ask-normal"),
    ("place.hottest", "oilway-ask-hottest"),
    ("air.lowest", "oilway-ask-air-lowest"),
    ("air.highest", "oilway-ask-air-highest"),
    ("air.possible", "oilway-ask-air-possible"),
    ("duty.hours_per_day", "oilway-ask-hours"),
    ("duty.days_per_week", "oilway-ask-days"),
    ("limits.age", "oilway-ask-age"),
    ("limits.event_time", "oilway-ask-event-time"),
    ("practice.rest_factor", "oilway-ask-rest-factor"),
    ("practice.stall_use", "oilway-ask-stall-use"),
    ("practice.band_low", "oilway-ask-band-low"),
    ("practice.band_high", "oilway-ask-band-high"),
    ("practice.floor", "oilway-ask-floor"),
    ("practice.back_pressure", "oilway-ask-back-pressure"),
    ("practice.fittings", "oilway-ask-fittings"),
    ("practice.inlet_lowest", "oilway-ask-inlet-lowest"),
    ("practice.entrained_air", "oilway-ask-entrained-air"),
    ("practice.disc_warmer", "oilway-ask-disc-warmer"),
    ("lubricant.density", "oilway-ask-density"),
    ("lubricant.yield_stress", "oilway-ask-yield-stress"),
    ("lubricant.consistency", "oilway-ask-consistency"),
    ("lubricant.index", "oilway-ask-consistency"),
    ("lubricant.halving", "oilway-ask-halving"),
    ("lubricant.at_40", "oilway-ask-at-40"),
    ("lubricant.at_100", "oilway-ask-at-100"),
    ("lubricant.pressure_coefficient", "oilway-ask-pressure-coefficient"),
    ("lubricant.base_oil.at_40", "oilway-ask-at-40"),
    ("lubricant.base_oil.at_100", "oilway-ask-at-100"),
    ("lubricant.base_oil.density", "oilway-ask-density"),
    ("lubricant.base_oil.pressure_coefficient", "oilway-ask-pressure-coefficient"),
    ("point.duty", "oilway-ask-point-duty"),
    ("point.back_pressure", "oilway-ask-point-back-pressure"),
    ("point.given.quantity", "oilway-ask-point-quantity"),
    ("point.given.interval", "oilway-ask-point-interval"),
    ("line.length", "oilway-ask-line-length"),
    ("line.rise", "oilway-ask-line-rise"),
];

/// The question for an entry.
fn ask(at: &str) -> Message {
    let place = Place::of(at);
    let wanted = format!("{}.{}", place.kind, place.field);
    let found = QUESTIONS.iter().find(|(known, _)| *known == wanted);
    let key = found.map_or("oilway-ask-field", |(_, key)| key);
    Message::new(key)
        .with("name", place.name)
        .with("stretch", place.stretch)
        .with("field", Arg::Text(place.field.replace(['_', '.'], " ")))
}

/// The place of an entry in the job, in its pieces.
struct Place<'a> {
    kind: &'a str,
    /// The name of the point, line or place; empty where a job has one of the kind.
    name: &'a str,
    /// The stretch of a line, from its start on.
    stretch: &'a str,
    field: &'a str,
}

/// Fields of two words.
const DOUBLE: [&str; 2] = ["given.quantity", "given.interval"];

impl<'a> Place<'a> {
    fn of(at: &'a str) -> Self {
        let (kind, rest) = at.split_once('.').unwrap_or(("", at));
        if !["point", "line", "place"].contains(&kind) {
            return Place { kind, name: "", stretch: "", field: rest };
        }
        // Names may hold dots: the field is what stands behind the last.
        let double = DOUBLE.iter().find_map(|field| {
            rest.strip_suffix(field).and_then(|name| name.strip_suffix('.')).map(|name| (name, *field))
        });
        let (name, field) = double.or_else(|| rest.rsplit_once('.')).unwrap_or(("", rest));
        let line = if kind == "line" { name.rsplit_once('.') } else { None };
        let (name, stretch) = line.unwrap_or((name, ""));
        Place { kind, name, stretch, field }
    }
}

#[cfg(test)]
mod tests {
    use oilway_catalogue::house;
    use oilway_catalogue::lubricants::library;
    use oilway_text::{Reader, say};
    use oilway_units::Pressure;

    use super::*;

    fn asked(at: &str) -> String {
        say(&ask(at), &Reader::default())
    }

    #[test]
    fn every_condition_of_the_worked_jobs_has_a_question_of_its_own() {
        let mut seen = 0;
        for job in ["dairy", "gaps", "oil-spindle", "quarry"] {
            let file = format!("{}/../../jobs/{job}/job.toml", env!("CARGO_MANIFEST_DIR"));
            let text = std::fs::read_to_string(&file).unwrap();
            let (read, mistakes) = oilway_store::read_job(&file, &text, house::catalogue(), library());
            assert!(mistakes.is_empty(), "{mistakes:?}");
            read.unwrap().conditions.visit_entries(&mut |at, _| {
                let question = asked(at);
                assert_ne!(ask(at).key, "oilway-ask-field", "{at}");
                assert!(!question.contains(['[', '_']), "{at}: {question}");
                seen += 1;
            });
        }
        assert!(seen > 80, "{seen}");
    }

    #[test]
    fn a_name_with_dots_is_told_whole() {
        assert!(asked("line.no. 3 drive.2.length").contains("stretch 2 of the line to no. 3 drive"));
        assert!(asked("point.no. 3.given.interval").contains("no. 3"));
        assert!(asked("point.screw 1.nut_length").contains("nut length of screw 1"));
        assert!(asked("place.cold room.coldest").contains("cold room"));
    }

    #[test]
    fn what_turns_the_verdict_is_asked_before_what_weighs_more() {
        let assumption = |at: &str, weight, turns: Option<f64>| Assumption {
            at: at.to_owned(),
            what: message!("assume-air-possible"),
            low: Pressure::from_bar(4.0).into(),
            high: Pressure::from_bar(6.0).into(),
            weight,
            turns_at: turns.map(|bar| Pressure::from_bar(bar).into()),
        };
        let said = |list: &[Assumption]| question(list).map(|question| say(&question, &Reader::default()));
        let (heavy, turning) =
            (assumption("air.highest", 0.9, None), assumption("air.lowest", 0.1, Some(5.0)));
        let both = said(&[heavy.clone(), turning]).unwrap();
        assert!(both.contains("air.lowest") && both.ends_with("the verdict turns at 5 bar."), "{both}");
        assert!(said(&[heavy]).unwrap().ends_with("nothing else weighs more."));
        assert_eq!(said(&[assumption("air.highest", 0.0, None)]), None);
    }
}
