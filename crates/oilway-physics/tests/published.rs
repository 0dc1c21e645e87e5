//! Every published and every independently computed check value that names a formula, put to that formula through the
//! registry: the same way that the calculation desk takes. And what must hold for every record of the registry at once.

use std::collections::BTreeSet;

use oilway_physics::{Formula, NoAnswer, find, registry};
use oilway_testkit::{Check, every_check, reference_files, sources};

#[test]
fn every_formula_agrees_with_its_published_values() {
    let mut wrong = Vec::new();
    let mut judged = 0;
    for check in every_check().iter().filter(|check| !check.formula.is_empty()) {
        match find(&check.formula) {
            Some(formula) => wrong.extend(put(formula, check)),
            None => wrong.push(format!("{check}\n  there is no formula `{}`", check.formula)),
        }
        judged += 1;
    }
    assert!(judged > 1000, "only {judged} values were found: files are missing");
    assert!(wrong.is_empty(), "{} of {judged} values do not hold:\n\n{}", wrong.len(), wrong.join("\n\n"));
}

/// What is wrong when the formula is put to the check, if anything is.
fn put(formula: &Formula, check: &Check) -> Option<String> {
    let asked: BTreeSet<&str> = formula.inputs.iter().map(|symbol| symbol.name).collect();
    let given: BTreeSet<&str> = check.given_symbols().collect();
    if asked != given {
        return Some(format!("{check}\n  `{}` takes {asked:?}, the row gives {given:?}", formula.id));
    }
    let inputs: Vec<_> =
        formula.inputs.iter().map(|input| check.given_any(input.name, input.dimension)).collect();
    match formula.evaluate(&inputs) {
        Ok(_) if check.refused => Some(format!("{check}\n  an answer came where none may")),
        Ok(result) => check.compare("result", result).err(),
        Err(_) if check.refused => None,
        Err(NoAnswer::OutsideValidity) => Some(format!("{check}\n  no answer came")),
        Err(reason) => Some(format!("{check}\n  {reason:?}")),
    }
}

#[test]
fn every_formula_is_judged_by_some_value() {
    // By rows that name it, or by a file of its own that another test reads.
    let mut judged: BTreeSet<String> = reference_files().into_iter().collect();
    judged.extend(every_check().into_iter().map(|check| check.formula));
    let missing: Vec<&str> =
        registry().map(|formula| formula.id).filter(|id| !judged.contains(*id)).collect();
    assert!(missing.is_empty(), "no value in reference/ judges {missing:?}");
}

#[test]
fn formula_ids_are_unique() {
    let mut ids = BTreeSet::new();
    for formula in registry() {
        assert!(ids.insert(formula.id), "two formulas are called `{}`", formula.id);
    }
    assert!(!ids.is_empty());
}

#[test]
fn every_formula_says_what_it_is_where_it_holds_and_where_it_comes_from() {
    for formula in registry() {
        let id = formula.id;
        assert!(id.split('/').count() == 2, "`{id}` is not family/name");
        assert!(!formula.title.trim().is_empty() && !formula.title.ends_with('.'), "title of `{id}`");
        assert!(!formula.equation.trim().is_empty(), "equation of `{id}`");
        assert!(formula.validity.trim().len() > 10, "validity of `{id}`");
        assert!(!formula.sources.is_empty(), "`{id}` has no source");
        assert!(formula.inputs.len() <= 16, "`{id}` has too many inputs");
        let names: BTreeSet<&str> = formula.inputs.iter().map(|symbol| symbol.name).collect();
        assert_eq!(names.len(), formula.inputs.len(), "two inputs of `{id}` have one name");
        for symbol in formula.inputs {
            assert!(
                !symbol.letter.is_empty() && !symbol.meaning.is_empty(),
                "input {} of `{id}`",
                symbol.name
            );
        }
    }
}

#[test]
fn every_source_of_a_formula_is_listed_and_none_is_said_to_be_better_read_than_it_was() {
    let known = sources();
    let mut wrong = Vec::new();
    for formula in registry() {
        for source in formula.sources {
            match known.get(source.key) {
                None => wrong.push(format!("{}: no source `{}`", formula.id, source.key)),
                Some(entry) if better_read(source.standing.word(), entry.standing.word()) => {
                    wrong.push(format!(
                        "{}: `{}` is said to be {}, its entry says {}",
                        formula.id,
                        source.key,
                        source.standing.word(),
                        entry.standing.word()
                    ))
                }
                Some(_) => {}
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// Whether a place is said to stand higher than its book: from a book known from memory nothing is `seen`. It may stand
/// lower. Practice and own work stand beside this order.
fn better_read(place: &str, book: &str) -> bool {
    let rank = |word: &str| ["seen", "second-hand", "memory"].iter().position(|known| *known == word);
    matches!((rank(place), rank(book)), (Some(place), Some(book)) if place < book)
}
