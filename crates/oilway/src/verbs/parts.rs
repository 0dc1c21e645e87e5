//! `oilway parts`: what a job may be built of: listed, shown, checked, and to and from a spreadsheet.

use std::path::Path;

use oilway_catalogue::kinds::KINDS;
use oilway_catalogue::reading::nearest;
use oilway_catalogue::{Catalogue, Kind, Part};
use oilway_store::{read_catalogue_sheets, write_catalogue_sheets};
use oilway_text::message;

use crate::desk::{Desk, Reply};
use crate::exit::Exit;
use crate::files;
use crate::json::parts::PartsAnswer;
use crate::request::Request;
use crate::show;
use crate::trouble::Trouble;
use crate::verbs::{Input, Takes, Verb};

pub(crate) static VERB: Verb = Verb {
    name: "parts",
    title: "oilway-verb-parts",
    about: "oilway-verb-parts-about",
    inputs: &[
        Input {
            name: "action",
            takes: Takes::OneOf(&["list", "show", "check", "export", "import"]),
            value: "ACTION",
            help: "oilway-input-parts-action",
        },
        Input { name: "what", takes: Takes::PerhapsWord, value: "WHAT", help: "oilway-input-parts-what" },
        Input { name: "to", takes: Takes::PerhapsWord, value: "TO", help: "oilway-input-parts-to" },
    ],
    examples: &["parts list", "parts list 'burst disc'", "parts show 10001", "parts export parts.xlsx"],
    run,
    schema: Some(crate::json::schema::<PartsAnswer>),
};

fn run(desk: &Desk, request: &Request) -> Result<Reply, Trouble> {
    let what = request.word("what");
    match (request.word("action").unwrap_or_default(), what) {
        ("list", None) => {
            let catalogue = files::catalogue(desk)?;
            let data = |_: &_| PartsAnswer::kinds(&catalogue);
            Ok(desk.reply(Exit::Works, desk.reader(None), data, |page| show::parts::kinds(page, &catalogue)))
        }
        ("list", Some(kind)) => list(desk, &files::catalogue(desk)?, kind),
        ("show", Some(id)) => show_one(desk, &files::catalogue(desk)?, id),
        ("check", Some(folder)) => {
            let catalogue = files::own_catalogue(Path::new(folder))?;
            let count = catalogue.parts().count();
            let says = message!("oilway-parts-sound", folder = folder, count = count);
            let data = |reader: &_| PartsAnswer::said(&says, reader);
            Ok(desk.reply(Exit::Works, desk.reader(None), data, |page| page.say(&says)))
        }
        ("export", Some(file)) => export(desk, &files::catalogue(desk)?, file),
        ("import", Some(file)) => import(desk, &files::catalogue(desk)?, file, request.word("to")),
        (action, _) => Err(Trouble::asked(
            message!("oilway-parts-of-what", action = action),
            message!("oilway-parts-of-what-cure"),
        )),
    }
}

fn list(desk: &Desk, catalogue: &Catalogue, wanted: &str) -> Result<Reply, Trouble> {
    let Some(kind) = KINDS.iter().copied().find(|kind| kind.id() == wanted) else {
        let cure = match nearest(wanted, KINDS.iter().map(|kind| kind.id())) {
            Some(near) => message!("oilway-perhaps", word = near),
            None => message!("oilway-no-kind-cure"),
        };
        return Err(Trouble::asked(message!("oilway-no-kind", wanted = wanted), cure));
    };
    let parts: Vec<&Part> = catalogue.of_kind(kind.id()).map(|part| &**part).collect();
    Ok(told(desk, &parts, |page| show::parts::of_kind(page, kind as &dyn Kind, &parts)))
}

fn show_one(desk: &Desk, catalogue: &Catalogue, id: &str) -> Result<Reply, Trouble> {
    let Some(part) = catalogue.part(id) else {
        let cure = match nearest(id, catalogue.parts().map(|part| part.id.as_str())) {
            Some(near) => message!("oilway-perhaps", word = near),
            None => message!("oilway-no-part-cure"),
        };
        return Err(Trouble::asked(message!("oilway-no-part", id = id), cure));
    };
    Ok(told(desk, &[part], |page| show::parts::one(page, part)))
}

fn told(desk: &Desk, parts: &[&Part], page: impl FnOnce(&mut crate::page::Page)) -> Reply {
    desk.reply(Exit::Works, desk.reader(None), |reader| PartsAnswer::parts(parts, reader), page)
}

fn export(desk: &Desk, catalogue: &Catalogue, file: &str) -> Result<Reply, Trouble> {
    let cannot = |what| Trouble::Told(Exit::Files, vec![(what, message!("oilway-no-folder-cure"))]);
    let bytes = write_catalogue_sheets(catalogue).map_err(cannot)?;
    files::save_new(Path::new(file), &bytes)?;
    let says = message!("oilway-parts-exported", file = file, count = catalogue.parts().count());
    Ok(desk.reply(
        Exit::Works,
        desk.reader(None),
        |reader| PartsAnswer::said(&says, reader),
        |page| page.say(&says),
    ))
}

fn import(desk: &Desk, below: &Catalogue, file: &str, to: Option<&str>) -> Result<Reply, Trouble> {
    let read = read_catalogue_sheets(file, &files::bytes(file)?, below);
    let Some(text) = read.file_text else {
        return Err(files::cells(read.mistakes));
    };
    let path = to.map_or_else(|| Path::new(file).with_extension("toml"), |to| Path::new(to).to_owned());
    files::save_new(&path, text.as_bytes())?;
    let to = path.display().to_string();
    let says = message!("oilway-parts-imported", file = file, to = to, count = read.parts.len());
    Ok(desk.reply(
        Exit::Works,
        desk.reader(None),
        |reader| PartsAnswer::said(&says, reader),
        |page| page.say(&says),
    ))
}
