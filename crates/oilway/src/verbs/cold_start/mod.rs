//! `oilway cold-start`: the telephone at six in the morning. At most six boxes, each of which may be empty, unknown or a range; the answer
//! begins with what must not be done.

mod boxes;
mod question;

use crate::desk::{Desk, Reply};
use crate::exit::Exit;
use crate::files;
use crate::json::cold_start::ColdStartAnswer;
use crate::request::Request;
use crate::show;
use crate::trouble::Trouble;
use crate::verbs::{Input, Takes, Verb};

pub(crate) static VERB: Verb = Verb {
    name: "cold-start",
    title: "oilway-verb-cold-start",
    about: "oilway-verb-cold-start-about",
    inputs: &[Input {
        name: "values",
        takes: Takes::Words,
        value: "NAME=VALUE",
        help: "oilway-input-cold-values",
    }],
    examples: &[
        "cold-start temperature='-18 °C' lubricant='NLGI 2' length='about 40 m' tube='half inch tube' ratio=20 air='6 bar'",
        "cold-start temperature='minus 18 °C' yield='900 Pa' length='40 m' bore='9.4 mm' pressure='118 bar'",
        "cold-start length='30..50 m' tube='10 x 1' kind=progressive",
    ],
    run,
    schema: Some(crate::json::schema::<ColdStartAnswer>),
};

fn run(desk: &Desk, request: &Request) -> Result<Reply, Trouble> {
    let catalogue = files::catalogue(desk)?;
    let question = question::read(request.words("values"), &catalogue)
        .map_err(|problems| Trouble::Told(Exit::Mistakes, problems))?;
    let answer = question.answer();
    let data = |reader: &_| ColdStartAnswer::new(&answer, reader);
    let exit = answer.verdict.into();
    Ok(desk.reply(exit, desk.reader(None), data, |page| show::cold_start::answer(page, &answer, desk.all)))
}
