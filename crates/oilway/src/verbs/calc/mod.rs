//! `oilway calc`: the calculation desk. Every formula of the house, by itself: listed, explained, calculated, over ranges and over files
//! of cases.

mod case;
mod file;

use oilway_catalogue::reading::nearest;
use oilway_physics::{Formula, registry};
use oilway_text::message;

use crate::desk::{Desk, Reply};
use crate::exit::Exit;
use crate::json::calc::{CalcAnswer, ResultData};
use crate::request::Request;
use crate::show;
use crate::trouble::Trouble;
use crate::verbs::{Input, Takes, Verb};

pub(crate) static VERB: Verb = Verb {
    name: "calc",
    title: "oilway-verb-calc",
    about: "oilway-verb-calc-about",
    inputs: &[
        Input { name: "formula", takes: Takes::PerhapsWord, value: "FORMULA", help: "oilway-input-formula" },
        Input { name: "values", takes: Takes::Words, value: "NAME=VALUE", help: "oilway-input-values" },
        Input { name: "cases", takes: Takes::Option, value: "FILE", help: "oilway-input-cases" },
    ],
    examples: &[
        "calc",
        "calc pipe-flow",
        "calc pipe-flow/start-pressure",
        "calc pipe-flow/start-pressure bore='9.4 mm' length='40 m' yield_stress='900 Pa'",
        "calc pipe-flow/start-pressure bore='3/8 in' length='30..50 m' yield_stress='900 Pa ± 20 %' --both",
    ],
    run,
    schema: Some(crate::json::schema::<CalcAnswer>),
};

fn run(desk: &Desk, request: &Request) -> Result<Reply, Trouble> {
    let Some(wanted) = request.word("formula") else {
        return Ok(list(desk, &registry().collect::<Vec<_>>()));
    };
    let Some(formula) = oilway_physics::find(wanted) else {
        return search(desk, wanted);
    };
    let given = case::given(formula, request.words("values"));
    if let Some(file) = request.word("cases") {
        return file::cases(desk, formula, &given, file);
    }
    if request.words("values").is_empty() {
        return Ok(explained(desk, formula));
    }
    let case =
        case::calculated(formula, &given).map_err(|problems| Trouble::Told(Exit::Mistakes, problems))?;
    let data = |reader: &_| CalcAnswer {
        version: "oilway.calc.1",
        formulas: vec![formula.into()],
        results: vec![ResultData::new(&case, reader)],
    };
    Ok(desk.reply(Exit::Works, desk.reader(None), data, |page| show::formula::result(page, formula, &case)))
}

fn list(desk: &Desk, formulas: &[&'static Formula]) -> Reply {
    let data = |_: &_| CalcAnswer {
        version: "oilway.calc.1",
        formulas: formulas.iter().map(|&formula| formula.into()).collect(),
        results: Vec::new(),
    };
    desk.reply(Exit::Works, desk.reader(None), data, |page| show::formula::list(page, formulas))
}

fn explained(desk: &Desk, formula: &'static Formula) -> Reply {
    let data =
        |_: &_| CalcAnswer { version: "oilway.calc.1", formulas: vec![formula.into()], results: Vec::new() };
    desk.reply(Exit::Works, desk.reader(None), data, |page| show::formula::explained(page, formula))
}

/// A family, or words that stand in the name or title.
fn search(desk: &Desk, wanted: &str) -> Result<Reply, Trouble> {
    let small = wanted.to_lowercase();
    let fits =
        |formula: &&Formula| formula.id.contains(&small) || formula.title.to_lowercase().contains(&small);
    let found: Vec<_> = registry().filter(fits).collect();
    if !found.is_empty() {
        return Ok(list(desk, &found));
    }
    let cure = match nearest(wanted, registry().map(|formula| formula.id)) {
        Some(near) => message!("oilway-perhaps", word = near),
        None => message!("oilway-no-formula-cure"),
    };
    Err(Trouble::asked(message!("oilway-no-formula", wanted = wanted), cure))
}
