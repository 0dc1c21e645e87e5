//! Findings as people read them: what one rule says of many things in the same sentence and with the same cure is one entry, which
//! names the things and gives the span of their numbers. Programs get every finding for itself.

use oilway_model::{Design, Evidence, Finding, Severity};
use oilway_physics::Source;
use oilway_text::{Arg, Message, message};
use oilway_units::AnyQuantity;

use crate::{names, words};

/// One entry: a finding, or several that say the same.
pub(crate) struct Entry<'a> {
    findings: Vec<&'a Finding>,
}

/// The entries of these findings: the gravest first; among equals what concerns the whole system, then dividers, lines and points,
/// and of those first what concerns most.
pub(crate) fn entries(findings: &[Finding]) -> Vec<Entry<'_>> {
    let mut entries: Vec<Entry<'_>> = Vec::new();
    for finding in findings {
        match entries.iter_mut().find(|entry| entry.first().is_some_and(|first| alike(first, finding))) {
            Some(entry) => entry.findings.push(finding),
            None => entries.push(Entry { findings: vec![finding] }),
        }
    }
    entries.sort_by_key(|entry| (entry.severity(), entry.reach(), core::cmp::Reverse(entry.findings.len())));
    entries
}

impl<'a> Entry<'a> {
    fn first(&self) -> Option<&'a Finding> {
        self.findings.first().copied()
    }

    /// How much it weighs.
    pub(crate) fn severity(&self) -> Severity {
        self.first().map_or(Severity::Note, |first| first.severity)
    }

    /// How far it reaches: the whole system, a divider, a line, a point.
    fn reach(&self) -> usize {
        let kind = self.first().map_or("", |first| words::kind_of(&first.at));
        ["divider", "line", "point"].iter().position(|known| *known == kind).map_or(0, |number| number + 1)
    }

    /// What it speaks of, at most so many names.
    pub(crate) fn things(&self, design: &Design, most: usize) -> Message {
        let at: Vec<&str> = self.findings.iter().map(|finding| finding.at.as_str()).collect();
        words::things(design, &at, most)
    }

    /// What is found, with the span of the numbers.
    pub(crate) fn what(&self) -> Message {
        self.joined(|finding| Some(&finding.what)).unwrap_or(Message::new("documents-none"))
    }

    /// What to do: the same for all.
    pub(crate) fn cure(&self) -> Message {
        self.first().map_or(Message::new("documents-none"), |first| first.cure.clone())
    }

    /// What would turn it.
    pub(crate) fn turns(&self) -> Option<Message> {
        let one = self.first()?.turns.as_ref()?;
        if self.findings.iter().all(|finding| finding.turns.as_ref() == Some(one)) {
            return Some(one.clone());
        }
        let joined = self.joined(|finding| finding.turns.as_ref())?;
        Some(message!("documents-turns-each", turns = joined))
    }

    /// The numbers, each with its span.
    pub(crate) fn evidence(&self) -> Vec<Arg> {
        let Some(first) = self.first() else { return Vec::new() };
        let said = |(number, evidence): (usize, &Evidence)| {
            let values = self.findings.iter().filter_map(|f| f.evidence.get(number));
            let values: Vec<Arg> = values.map(|evidence| Arg::Quantity(evidence.value)).collect();
            let value = span(&values.iter().collect::<Vec<_>>()).unwrap_or(Arg::Quantity(evidence.value));
            message!("documents-evidence", what = evidence.what.clone()).with("value", value).into()
        };
        first.evidence.iter().enumerate().map(said).collect()
    }

    /// The id of the rule and where it comes from.
    pub(crate) fn rule(&self) -> Option<(&'static str, Source)> {
        self.first().map(|first| (first.rule, first.source))
    }

    /// The cautions that belong beside it, each once.
    pub(crate) fn cautions(&self) -> Vec<&'static str> {
        let mut all = Vec::new();
        for id in self.findings.iter().flat_map(|finding| &finding.cautions) {
            if !all.contains(id) {
                all.push(*id);
            }
        }
        all
    }

    /// The same sentence of all findings as one, which holds the span of every argument.
    fn joined(&self, of: impl Fn(&Finding) -> Option<&Message>) -> Option<Message> {
        let said: Vec<(&Finding, &Message)> =
            self.findings.iter().filter_map(|finding| Some((*finding, of(finding)?))).collect();
        let (_, first) = said.first()?;
        let mut joined = Message::new(first.key);
        for (number, (name, own)) in first.args.iter().enumerate() {
            let all: Vec<&Arg> =
                said.iter().filter_map(|(_, message)| message.args.get(number).map(|(_, arg)| arg)).collect();
            let named = said.iter().all(|(finding, message)| {
                matches!(message.args.get(number), Some((_, Arg::Text(text))) if names_it(text, finding))
            });
            let arg = if named {
                let at: Vec<&str> = self.findings.iter().map(|f| words::name_of(&f.at)).collect();
                names::all(&at).into()
            } else {
                span(&all).unwrap_or_else(|| own.clone())
            };
            joined = joined.with(name, arg);
        }
        Some(joined)
    }
}

/// Whether a word of a sentence is the name of what the finding speaks of.
fn names_it(text: &str, finding: &Finding) -> bool {
    text == finding.at || text == words::name_of(&finding.at)
}

/// Whether two findings can be said in one sentence.
fn alike(a: &Finding, b: &Finding) -> bool {
    let evidence = || {
        a.evidence.len() == b.evidence.len()
            && a.evidence
                .iter()
                .zip(&b.evidence)
                .all(|(a, b)| a.what == b.what && a.value.dimension == b.value.dimension)
    };
    let turns = match (&a.turns, &b.turns) {
        (None, None) => true,
        (Some(one), Some(other)) => same_sentence((a, one), (b, other)),
        _ => false,
    };
    (a.rule, a.severity) == (b.rule, b.severity)
        && words::like_things(&a.at, &b.at)
        && a.cure == b.cure
        && turns
        && same_sentence((a, &a.what), (b, &b.what))
        && evidence()
}

/// Whether two sentences differ only in numbers and in the names of what they speak of.
fn same_sentence((a, said): (&Finding, &Message), (b, other): (&Finding, &Message)) -> bool {
    let arg = |(one, two): (&(&str, Arg), &(&str, Arg))| {
        one.0 == two.0
            && match (&one.1, &two.1) {
                (Arg::Text(one), Arg::Text(two)) if names_it(one, a) => names_it(two, b),
                (one, two) => span(&[one, two]).is_some(),
            }
    };
    said.key == other.key && said.args.len() == other.args.len() && said.args.iter().zip(&other.args).all(arg)
}

/// Equal arguments as one, numbers from the lowest to the highest; none where neither goes.
fn span(args: &[&Arg]) -> Option<Arg> {
    let first = *args.first()?;
    if args.iter().all(|arg| *arg == first) {
        return Some(first.clone());
    }
    if let Arg::Number(_) = first {
        let numbers: Option<Vec<f64>> = args.iter().map(|arg| number(arg)).collect();
        let (low, high) = ends(numbers?.into_iter())?;
        return Some(message!("documents-names-run", first = low, last = high).into());
    }
    let quantities: Option<Vec<[AnyQuantity; 2]>> = args.iter().map(|arg| quantity(arg)).collect();
    let quantities = quantities?;
    let dimension = quantities.first()?[0].dimension;
    if quantities.iter().flatten().any(|quantity| quantity.dimension != dimension) {
        return None;
    }
    let (low, high) = ends(quantities.iter().flatten().map(|quantity| quantity.si))?;
    let of = |si| AnyQuantity { dimension, si };
    Some(Arg::Span(of(low), of(high)))
}

fn number(arg: &Arg) -> Option<f64> {
    if let Arg::Number(number) = arg { Some(*number) } else { None }
}

fn quantity(arg: &Arg) -> Option<[AnyQuantity; 2]> {
    match arg {
        Arg::Quantity(quantity) => Some([*quantity; 2]),
        Arg::Span(low, high) => Some([*low, *high]),
        _ => None,
    }
}

fn ends(numbers: impl Iterator<Item = f64>) -> Option<(f64, f64)> {
    numbers.fold(None, |ends, number| {
        Some(ends.map_or((number, number), |(low, high): (f64, f64)| (low.min(number), high.max(number))))
    })
}

#[cfg(test)]
mod tests {
    use oilway_text::{Reader, say};
    use oilway_units::Pressure;

    use super::*;
    use crate::testing::{small_design, small_findings};

    /// A finding of the small job at another thing, with other numbers.
    fn at(at: &str, bar: f64) -> Finding {
        let note = small_findings().remove(2);
        let what = message!("documents-rated", what = at, rating = Pressure::from_bar(bar));
        let evidence = vec![Evidence {
            what: message!("documents-column-rating"),
            value: Pressure::from_bar(bar).into(),
        }];
        Finding { at: at.to_owned(), what, evidence, ..note }
    }

    fn said(entry: &Entry<'_>) -> [String; 2] {
        let say = |message: &Message| say(message, &Reader::default());
        [say(&entry.things(&small_design(), 6)), say(&entry.what())]
    }

    #[test]
    fn one_sentence_of_many_points_is_one_entry_with_the_span_of_its_numbers() {
        let all = [at("point.chain 1", 7.0), at("point.chain 2", 9.0), at("point.chain 3", 8.0)];
        let entries = entries(&all);
        assert_eq!(entries.len(), 1);
        assert_eq!(said(&entries[0]), ["chain 1 to 3", "chain 1 to 3: 7 to 9 bar"]);
        let Arg::Message(evidence) = &entries[0].evidence()[0] else { panic!() };
        assert_eq!(say(evidence, &Reader::default()), "Rated 7 to 9 bar");
    }

    #[test]
    fn another_cure_another_weight_or_another_kind_of_thing_is_another_entry() {
        let one = at("point.chain 1", 7.0);
        for change in [
            |f: &mut Finding| f.severity = Severity::Caution,
            |f: &mut Finding| f.rule = "other",
            |f: &mut Finding| f.cure = message!("solve-add-part"),
            |f: &mut Finding| f.at = "divider.chain 2".to_owned(),
            |f: &mut Finding| f.evidence.clear(),
            |f: &mut Finding| f.turns = Some(message!("solve-add-part")),
            |f: &mut Finding| f.what = message!("documents-rated", what = "another", rating = Pressure::ZERO),
        ] {
            let mut other = at("point.chain 2", 7.0);
            change(&mut other);
            assert_eq!(entries(&[one.clone(), other]).len(), 2);
        }
        assert_eq!(entries(&[one, at("point.chain 2", 7.0)]).len(), 1);
    }

    #[test]
    fn what_turns_each_of_them_elsewhere_is_said_to_do_so() {
        let turning = |at_: &str, bar: f64| {
            let turns = message!("documents-rated", what = "x", rating = Pressure::from_bar(bar));
            Finding { turns: Some(turns), ..at(at_, 1.0) }
        };
        let turns = |all: &[Finding]| say(&entries(all)[0].turns().unwrap(), &Reader::default());
        assert_eq!(turns(&[turning("point.a", 3.0), turning("point.b", 3.0)]), "x: 3 bar");
        assert_eq!(
            turns(&[turning("point.a", 3.0), turning("point.b", 5.0)]),
            "Each at its own: x: 3 to 5 bar"
        );
    }

    #[test]
    fn the_gravest_stand_first_then_the_whole_system_then_what_concerns_most() {
        let mut stop = at("point.a", 1.0);
        stop.severity = Severity::Stop;
        let mut other = at("point.x", 1.0);
        other.rule = "other";
        let all = [
            other,
            at("point.c", 1.0),
            at("point.d", 1.0),
            at("divider.a", 1.0),
            at("package.disc", 1.0),
            stop,
        ];
        let order: Vec<String> = entries(&all).iter().map(|entry| said(entry)[0].clone()).collect();
        assert_eq!(order, ["a", "burst disc", "divider a", "c and d", "x"]);
    }
}
