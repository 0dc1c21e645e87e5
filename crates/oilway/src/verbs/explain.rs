//! `oilway explain`: a rule of the checker, a caution, a formula or an assumption, in full.

use oilway_catalogue::reading::nearest;
use oilway_documents::cautions::{caution, cautions};
use oilway_store::assumptions;
use oilway_text::message;

use crate::desk::{Desk, Reply};
use crate::exit::Exit;
use crate::json::explain::ExplainAnswer;
use crate::request::Request;
use crate::show;
use crate::trouble::Trouble;
use crate::verbs::{Input, Takes, Verb};

pub(crate) static VERB: Verb = Verb {
    name: "explain",
    title: "oilway-verb-explain",
    about: "oilway-verb-explain-about",
    inputs: &[Input { name: "rule", takes: Takes::PerhapsWord, value: "RULE", help: "oilway-input-rule" }],
    examples: &["explain", "explain disc-window-shut", "explain S30", "explain pipe-flow/start-pressure"],
    run,
    schema: Some(crate::json::schema::<ExplainAnswer>),
};

fn run(desk: &Desk, request: &Request) -> Result<Reply, Trouble> {
    let reader = desk.reader(None);
    let Some(wanted) = request.word("rule") else {
        let data = |_: &_| ExplainAnswer::list();
        return Ok(desk.reply(Exit::Works, reader, data, show::explain::list));
    };
    if let Some(rule) = oilway_check::rule(wanted) {
        let data = |_: &_| ExplainAnswer::rule(rule);
        return Ok(desk.reply(Exit::Works, reader, data, |page| show::explain::rule(page, rule)));
    }
    if let Some(caution) = caution(&wanted.to_uppercase()) {
        let data = |_: &_| ExplainAnswer::caution(caution);
        return Ok(desk.reply(Exit::Works, reader, data, |page| show::explain::caution(page, caution)));
    }
    if let Some(formula) = oilway_physics::find(wanted) {
        let data = |_: &_| ExplainAnswer::formula(formula);
        return Ok(desk.reply(Exit::Works, reader, data, |page| show::formula::explained(page, formula)));
    }
    if let Some(assumption) = assumptions::ALL.iter().find(|assumption| assumption.key == wanted) {
        let data = |reader: &_| ExplainAnswer::assumption(assumption, reader);
        return Ok(desk.reply(Exit::Works, reader, data, |page| show::explain::assumption(page, assumption)));
    }
    let known = oilway_check::rules().iter().map(|rule| rule.id());
    let known = known.chain(cautions().iter().map(|caution| caution.id.as_str()));
    let known = known.chain(assumptions::ALL.iter().map(|assumption| assumption.key));
    let cure = match nearest(wanted, known) {
        Some(near) => message!("oilway-perhaps", word = near),
        None => message!("oilway-no-rule-cure"),
    };
    Err(Trouble::asked(message!("oilway-no-rule", wanted = wanted), cure))
}
