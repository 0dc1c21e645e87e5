//! Rules, cautions and assumptions on a page.

use oilway_check::Rule;
use oilway_documents::cautions::Caution;
use oilway_store::Assumption;
use oilway_text::{Arg, Message, message};
use oilway_units::AnyQuantity;

use crate::page::{Page, Set};
use crate::show::formula::of_source;

/// Every rule with its title.
pub(crate) fn list(page: &mut Page) {
    let rows: Vec<Vec<String>> = oilway_check::rules()
        .iter()
        .map(|rule| vec![rule.id().to_owned(), rule.title().to_owned()])
        .collect();
    page.table(&[Set::Left, Set::Left], &rows);
    page.gap();
    page.say(&message!("oilway-rules-foot", count = rows.len()));
}

/// One rule in full.
pub(crate) fn rule(page: &mut Page, rule: &dyn Rule) {
    page.loud(&message!("oilway-rule", id = rule.id(), title = rule.title()));
    let parts = [
        (message!("oilway-rule-finds"), rule.finds()),
        (message!("oilway-rule-why"), rule.why_it_matters()),
        (message!("oilway-rule-example"), rule.example()),
    ];
    for (heading, text) in parts {
        page.heading(&heading);
        page.paragraph("", text);
    }
    page.gap();
    page.say(&of_source(&rule.source()));
    page.say(&message!("oilway-local-codes"));
}

/// One caution in full.
pub(crate) fn caution(page: &mut Page, caution: &Caution) {
    page.loud(&message!("oilway-caution", id = caution.id.as_str(), hazard = caution.hazard.as_str()));
    page.gap();
    page.paragraph("", &caution.text);
    page.gap();
    page.say(&message!("oilway-caution-when", trigger = caution.trigger.as_str()));
    page.say(&message!(
        "oilway-caution-rule",
        rule = caution.rule.as_str(),
        standing = caution.standing.as_str()
    ));
    page.say(&message!("oilway-local-codes"));
}

/// One assumption in full.
pub(crate) fn assumption(page: &mut Page, assumption: &Assumption) {
    let of = |si| AnyQuantity::new(assumption.dimension, si);
    page.loud(&Message::new(assumption.key));
    page.gap();
    let span = Message::new("oilway-value").with("value", Arg::Span(of(assumption.low), of(assumption.high)));
    page.say(&message!("oilway-assumption-taken", value = of(assumption.typical), span = span));
    page.say(&of_source(&assumption.source));
}
