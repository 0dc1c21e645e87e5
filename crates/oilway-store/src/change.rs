//! Changing one value of a job file and keeping everything else of its text: comments, order, the engineer's own way to write.

use oilway_catalogue::Catalogue;
use oilway_catalogue::lubricants::LubricantData;
use oilway_catalogue::reading::nearest;
use oilway_text::{Message, Mistake, message};
use toml_edit::{Array, ArrayOfTables, DocumentMut, InlineTable, Item, Table, Value};

use crate::job::{OPEN, read_job};

/// The text of a job file with one value changed, if it then has no mistake that it did not have before.
///
/// The place is written as the lock file and the assumptions write it: `pause`, `air.lowest`, `place.washer.coldest`,
/// `point.washer chain 1.duty`, `divider.washer.part`, `divider.washer.sections`, `line.washer chain 1.2.conduit`,
/// `package.disc`, `package.inlet.1.conduit`, `practice.floor`. The value is written as in the file or, for sections, as in the
/// lock file; a text may go without its quotes, the id of a part too: `30 min`, `10030`, `true`, `["dust", "rain"]`.
///
/// # Errors
/// What is wrong with the place, or the mistakes that the changed file would have.
pub fn set_value(
    file: &str,
    text: &str,
    at: &str,
    value: &str,
    catalogue: &Catalogue,
    library: &[LubricantData],
) -> Result<String, Vec<Mistake>> {
    let before = read_job(file, text, catalogue, library).1;
    let document: DocumentMut = match text.parse() {
        Ok(document) => document,
        // Of a file that is no TOML the reader has told more than the editor could.
        Err(_) => return Err(before),
    };
    let wrong =
        |(what, cure): Wrong| vec![Mistake { file: file.to_owned(), at: 0..0, what, cure, fix: None }];
    let changed = |value: Value| {
        let mut document = document.clone();
        put(document.as_table_mut(), at, value).map_err(wrong)?;
        let changed = document.to_string();
        let after = new_mistakes(&before, read_job(file, &changed, catalogue, library).1);
        if after.is_empty() { Ok(changed) } else { Err(after) }
    };
    let given = value_of(value);
    let is_text = given.is_str();
    match changed(given) {
        // The id of a part may look like a number; where a text is wanted it is one.
        Err(mistakes) if !is_text && mistakes.iter().any(|m| m.what.key == "reading-wants-text") => {
            changed(Value::from(value.trim()))
        }
        result => result,
    }
}

/// The mistakes that were not there before; each old one excuses itself once.
fn new_mistakes(before: &[Mistake], mut after: Vec<Mistake>) -> Vec<Mistake> {
    let mut known: Vec<(&Message, &Message)> = before.iter().map(|m| (&m.what, &m.cure)).collect();
    after.retain(|mistake| match known.iter().position(|old| *old == (&mistake.what, &mistake.cure)) {
        Some(index) => {
            known.swap_remove(index);
            false
        }
        None => true,
    });
    after
}

type Wrong = (Message, Message);

/// What somebody typed for a value: TOML if it reads as a flag, a number, a list, a table or a text in quotes; otherwise a text.
fn value_of(typed: &str) -> Value {
    let typed = typed.trim();
    let structured = typed.starts_with(['"', '\'', '[', '{']) || matches!(typed, "true" | "false");
    let number = !typed.is_empty() && typed.chars().all(|c| c.is_ascii_digit());
    let parsed = if structured || number { typed.parse::<Value>().ok() } else { None };
    parsed.unwrap_or_else(|| Value::from(typed))
}

/// The lists of a job whose members have names.
const NAMED: [&str; 3] = ["place", "divider", "point"];

fn put(root: &mut Table, at: &str, value: Value) -> Result<(), Wrong> {
    let Some((first, rest)) = at.split_once('.') else {
        if root.get(at).is_some_and(|item| item.is_table() || item.is_array_of_tables()) {
            return Err(no_place(at));
        }
        set(root, at, value);
        return Ok(());
    };
    if NAMED.contains(&first) {
        let (name, key) = rest.rsplit_once('.').ok_or_else(|| no_place(at))?;
        let value = if (first, key) == ("divider", "sections") { sections(value)? } else { value };
        let table = named(root.get_mut(first), first, name)?;
        set(table, key, value);
        return Ok(());
    }
    if first == "line" {
        let (before_key, key) = rest.rsplit_once('.').ok_or_else(|| no_place(at))?;
        let (name, number) = before_key.rsplit_once('.').ok_or_else(|| no_place(at))?;
        let table = end_of_line(root, name)?;
        return put_in_stretch(table, "route", (name, number, key), value);
    }
    if let Some((number, key)) = at.strip_prefix("package.inlet.").and_then(|rest| rest.split_once('.')) {
        let package = root.entry("package").or_insert_with(|| Item::Table(Table::new()));
        let package = package.as_table_mut().ok_or_else(|| no_place(at))?;
        return put_in_stretch(package, "inlet", ("package", number, key), value);
    }
    let mut here = root;
    let mut keys = at.split('.').peekable();
    while let Some(key) = keys.next() {
        if keys.peek().is_none() {
            set(here, key, value);
            return Ok(());
        }
        let item = here.entry(key).or_insert_with(|| Item::Table(Table::new()));
        if let Item::Value(Value::InlineTable(inline)) = item {
            *item = Item::Table(inline.clone().into_table());
        }
        here = item.as_table_mut().ok_or_else(|| no_place(at))?;
    }
    Ok(())
}

/// The divider or point to which a line leads.
fn end_of_line<'a>(root: &'a mut Table, name: &str) -> Result<&'a mut Table, Wrong> {
    let names = |root: &Table, list: &str| -> Vec<String> {
        let tables = root.get(list).and_then(Item::as_array_of_tables);
        tables.map_or_else(Vec::new, |tables| tables.iter().map(name_of).collect())
    };
    let (dividers, points) = (names(root, "divider"), names(root, "point"));
    if dividers.iter().any(|divider| divider == name) {
        return named(root.get_mut("divider"), "divider", name);
    }
    named(root.get_mut("point"), "point", name).map_err(|wrong| match wrong.0.key {
        "store-change-member" => no_member("divider or point", name, &[dividers, points].concat()),
        _ => wrong,
    })
}

/// Sets a key of one stretch of a line, counted from one.
fn put_in_stretch(
    table: &mut Table,
    list: &str,
    (name, number, key): (&str, &str, &str),
    value: Value,
) -> Result<(), Wrong> {
    let index = number.parse::<usize>().ok().and_then(|number| number.checked_sub(1));
    let count = match (table.get_mut(list), index) {
        (Some(Item::Value(Value::Array(stretches))), Some(index)) => {
            match stretches.get_mut(index).and_then(Value::as_inline_table_mut) {
                Some(stretch) => {
                    stretch.insert(key, value);
                    return Ok(());
                }
                None => stretches.len(),
            }
        }
        (Some(Item::ArrayOfTables(stretches)), Some(index)) => match stretches.get_mut(index) {
            Some(stretch) => {
                set(stretch, key, value);
                return Ok(());
            }
            None => stretches.len(),
        },
        (Some(Item::Value(Value::Array(stretches))), None) => stretches.len(),
        (Some(Item::ArrayOfTables(stretches)), None) => stretches.len(),
        _ => 0,
    };
    let what = message!("store-change-stretch", name = name, number = number);
    Err((what, message!("store-change-stretch-cure", count = count)))
}

/// Sections as the lock file writes them, `10031: a, b | 10032: c`, as the job file writes them; what is no text stays as given.
fn sections(value: Value) -> Result<Value, Wrong> {
    let Some(text) = value.as_str().map(str::trim).filter(|text| *text != OPEN) else { return Ok(value) };
    let unclear = || (message!("store-change-sections", text = text), message!("store-change-sections-cure"));
    let mut list = Array::new();
    for row in text.split('|') {
        let (part, served) = row.split_once(':').ok_or_else(unclear)?;
        let serves: Array = served.split(',').map(str::trim).filter(|name| !name.is_empty()).collect();
        let mut section = InlineTable::new();
        section.insert("part", Value::from(part.trim()));
        section.insert("serves", Value::Array(serves));
        list.push(section);
    }
    Ok(Value::Array(list))
}

/// Sets a key; what stood around the old value, a comment for example, stays.
fn set(table: &mut Table, key: &str, mut value: Value) {
    match table.get_mut(key) {
        Some(Item::Value(old)) => {
            *value.decor_mut() = old.decor().clone();
            *old = value;
        }
        _ => {
            table.insert(key, Item::Value(value));
        }
    }
}

/// The member of a list that has this name.
fn named<'a>(list: Option<&'a mut Item>, sort: &str, name: &str) -> Result<&'a mut Table, Wrong> {
    let tables = list.and_then(Item::as_array_of_tables_mut);
    let Some(tables) = tables else { return Err(no_member(sort, name, &[])) };
    match position(tables, name) {
        Found::At(index) => tables.get_mut(index).ok_or_else(|| no_member(sort, name, &[])),
        Found::OneOfSeveral(base) => Err((
            message!("store-one-of-several", name = name, base = base),
            message!("store-one-of-several-cure"),
        )),
        Found::Nowhere => {
            let names: Vec<String> = tables.iter().map(name_of).collect();
            Err(no_member(sort, name, &names))
        }
    }
}

enum Found {
    At(usize),
    /// The entry of this name counts several, of which one is meant.
    OneOfSeveral(String),
    Nowhere,
}

fn position(tables: &ArrayOfTables, name: &str) -> Found {
    if let Some(index) = tables.iter().position(|table| name_of(table) == name) {
        return Found::At(index);
    }
    let member = |table: &Table| {
        let number =
            name.strip_prefix(&name_of(table)).and_then(|rest| rest.trim_start().parse::<i64>().ok());
        let whole = |key: &str| table.get(key).and_then(Item::as_integer);
        let first = whole("first").unwrap_or(1);
        match (number, whole("count")) {
            (Some(number), Some(count)) => (first..first.saturating_add(count)).contains(&number),
            _ => false,
        }
    };
    match tables.iter().position(member) {
        // A single one that is numbered is meant all the same.
        Some(index)
            if tables.get(index).and_then(|t| t.get("count")).and_then(Item::as_integer) == Some(1) =>
        {
            Found::At(index)
        }
        Some(index) => Found::OneOfSeveral(tables.get(index).map(name_of).unwrap_or_default()),
        None => Found::Nowhere,
    }
}

fn name_of(table: &Table) -> String {
    table.get("name").and_then(Item::as_str).unwrap_or_default().to_owned()
}

fn no_place(at: &str) -> Wrong {
    (message!("store-change-place", at = at), message!("store-change-place-cure"))
}

fn no_member(sort: &str, name: &str, names: &[String]) -> Wrong {
    let what = message!("store-change-member", sort = sort, name = name);
    match nearest(name, names.iter().map(String::as_str)) {
        Some(near) => (what, message!("store-perhaps", word = near)),
        None => {
            let names: Vec<&str> = names.iter().map(String::as_str).collect();
            (what, crate::asked::one_of(&names))
        }
    }
}
