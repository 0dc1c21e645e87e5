//! Reading of files: what is right comes out typed, what is wrong comes out with place, reason and cure, all in one run.

use oilway_catalogue::reading::{LARGEST_FILE, Reading};
use oilway_text::{Mistake, Reader, say};
use oilway_units::{Length, Pressure, Ratio, Said};
use proptest::prelude::*;

/// `line:column what / cure [fix]` of every mistake.
fn told(text: &str, mistakes: &[Mistake]) -> Vec<String> {
    let reader = Reader::default();
    let tell = |mistake: &Mistake| {
        let (line, column) = mistake.line_column(text);
        let fix = mistake.fix.as_ref().map_or(String::new(), |(_, fix)| format!(" [{fix}]"));
        format!("{line}:{column} {} / {}{fix}", say(&mistake.what, &reader), say(&mistake.cure, &reader))
    };
    mistakes.iter().map(tell).collect()
}

/// Reads with these getters and tells what was wrong.
fn check(text: &str, read: impl FnOnce(&Reading)) -> Vec<String> {
    let reading = Reading::new("job.toml", text);
    read(&reading);
    told(text, &reading.finish())
}

/// The text after the tool has typed its own cures, the last first.
fn cured(text: &str, mistakes: &[Mistake]) -> String {
    let mut cured = text.to_owned();
    for (at, fix) in mistakes.iter().rev().filter_map(|mistake| mistake.fix.as_ref()) {
        cured.replace_range(at.clone(), fix);
    }
    cured
}

#[test]
fn right_values_come_out_typed() {
    let text = r#"
        name = "dairy"
        bore = "8 mm"
        run = "6..8 m"
        ratio = 20
        on = true
        inputs = 4
        list = ["a", "b"]
        [place]
        drive = "electric"
        [[point]]
        tag = "P1"
        [[point]]
        tag = "P2"
    "#;
    let told = check(text, |reading| {
        let root = reading.root();
        assert_eq!(root.text("name").unwrap().value, "dairy");
        assert_eq!(root.exact::<Length>("bore").unwrap().value, Length::from_millimetres(8.0));
        assert_eq!(
            root.quantity::<Length>("run").unwrap().value,
            Said::Range(Length::from_metres(6.0), Length::from_metres(8.0))
        );
        assert_eq!(root.exact::<Ratio>("ratio").unwrap().value, Ratio::from_fraction(20.0));
        assert!(root.flag("on").unwrap().value);
        assert_eq!(root.count("inputs").unwrap().value, 4);
        assert_eq!(root.texts("list").len(), 2);
        assert_eq!(
            root.table("place").unwrap().word("drive", &["electric", "air"]).unwrap().value,
            "electric"
        );
        let tags: Vec<_> =
            root.tables("point").iter().map(|point| point.text("tag").unwrap().value).collect();
        assert_eq!(tags, ["P1", "P2"]);
        let bore = root.exact::<Length>("bore").unwrap();
        assert_eq!(&text[bore.at], "\"8 mm\"");
        assert!(root.item("nothing").is_none());
    });
    assert_eq!(told, Vec::<String>::new());
}

#[test]
fn a_bare_number_gets_a_unit_that_can_be_typed() {
    let text = "bore = 12\nlength = 1_200.5\n";
    let reading = Reading::new("job.toml", text);
    assert!(reading.root().exact::<Length>("bore").is_none());
    assert!(reading.root().exact::<Length>("length").is_none());
    let mistakes = reading.finish();
    assert_eq!(cured(text, &mistakes), "bore = \"12 mm\"\nlength = \"1200.5 mm\"\n");
}

#[test]
fn every_mistake_of_a_file_comes_out_in_one_run_and_in_order() {
    let text =
        "bore = 12\ndirve = \"electric\"\nrated = \"80 mm\"\non = \"yes\"\nsort = \"elbwo\"\nid = 17\n";
    let mistakes = {
        let reading = Reading::new("job.toml", text);
        let root = reading.root();
        root.exact::<Length>("bore");
        root.word("drive", &["electric"]);
        root.exact::<Pressure>("rated");
        root.flag("on");
        root.word("sort", &["straight", "elbow", "tee"]);
        root.text("id");
        root.needed("name");
        reading.finish()
    };
    let lines: Vec<usize> = mistakes.iter().map(|mistake| mistake.line_column(text).0).collect();
    assert_eq!(lines, [1, 1, 2, 3, 4, 5, 6], "{:?}", told(text, &mistakes));
    let cured = cured(text, &mistakes);
    assert_eq!(
        cured,
        "bore = \"12 mm\"\ndrive = \"electric\"\nrated = \"80 mm\"\non = true\nsort = \"elbow\"\nid = \"17\"\n"
    );
}

#[test]
fn sentences_name_the_key_what_is_wrong_and_what_to_write() {
    let told = check("ratde = \"8 bar\"\nwidth = [1]\nrange = \"1..2 bar\"\n", |reading| {
        let root = reading.root();
        root.exact::<Pressure>("rated");
        root.exact::<Length>("width");
        root.exact::<Pressure>("range");
    });
    assert_eq!(told[0], "1:1 Nothing here is called `ratde`. / Perhaps `rated` is meant. [rated]");
    assert_eq!(
        told[1],
        "2:9 `width` must be a number with its unit, in quotes; here stands a list in square brackets. / Write a number with its unit, in quotes."
    );
    assert_eq!(
        told[2],
        "3:9 `range` must be one value. / Write one value; a range or an unknown cannot stand in a catalogue."
    );
}

#[test]
fn a_key_that_nobody_asked_for_is_known_once_it_is_asked_for() {
    let unknown = check("[a]\nx = 1\n[b]\ny = 2\n", |reading| {
        reading.root().table("a");
    });
    assert_eq!(unknown.len(), 2, "{unknown:?}"); // x in the table that was opened, and the table b
    let known = check("[a]\nx = 1\n[b]\ny = 2\n", |reading| {
        reading.root().items().iter().for_each(|item| {
            item.table().unwrap().items();
        });
    });
    assert_eq!(known, Vec::<String>::new());
}

#[test]
fn a_syntax_error_has_its_place_and_hides_only_its_own_line() {
    let text = "name = \"dairy\nbore = 12\nrated = \"9 bar\"\n";
    let told = check(text, |reading| {
        let root = reading.root();
        root.needed("name");
        root.needed("place"); // may only have been lost: not said
        root.exact::<Length>("bore");
        assert_eq!(root.exact::<Pressure>("rated").unwrap().value, Pressure::from_bar(9.0));
    });
    assert!(told[0].starts_with("1:") && told[0].contains("TOML"), "{told:?}");
    assert!(told[1].starts_with("2:8") && told[1].contains("bore"), "{told:?}");
    assert_eq!(told.len(), 2, "{told:?}");
}

#[test]
fn several_syntax_errors_come_out_together() {
    let told = check("a = \nb = 1\nc = = 2\nb = 3\n", |reading| {
        reading.root().items();
    });
    let lines: Vec<&str> = told.iter().filter_map(|one| one.split(':').next()).collect();
    assert_eq!(lines, ["1", "3", "4"], "{told:?}");
}

#[test]
fn a_file_too_large_is_refused_and_one_at_the_bound_is_read() {
    let filled = |size: usize| format!("a = 1\n{}", "#".repeat(size - 6));
    let told_of = |text: &str| {
        check(text, |reading| {
            reading.root().items();
        })
    };
    assert!(told_of(&filled(LARGEST_FILE)).is_empty());
    let refused = told_of(&filled(LARGEST_FILE + 1));
    assert!(refused.len() == 1 && refused[0].contains("Split"), "{refused:?}");
}

#[test]
fn deep_nesting_is_an_error_and_no_overflow() {
    let depth = 200_000;
    for text in [
        format!("a = {}{}", "[".repeat(depth), "]".repeat(depth)),
        format!("a = {}", "{ a = ".repeat(depth)),
        format!("{}a = 1", "a.".repeat(depth)),
        format!("[{}a]", "a.".repeat(depth)),
    ] {
        let told = check(&text, |reading| {
            reading.root().items();
        });
        assert!(!told.is_empty());
    }
}

/// Asks everything of everything.
fn walk(reading: &Reading) {
    let mut items = reading.root().items();
    let mut asked = 0;
    while let Some(item) = items.pop() {
        asked += 1;
        if asked > 2000 {
            return;
        }
        item.text();
        item.word(&["grease", "oil"]);
        item.flag();
        item.count();
        item.number();
        item.quantity::<Pressure>();
        item.exact::<Length>();
        items.extend(item.list().unwrap_or_default());
        items.extend(item.table().map(|table| table.items()).unwrap_or_default());
    }
}

proptest! {
    #[test]
    fn no_text_makes_reading_panic_and_every_place_is_inside_it(text in "\\PC{0,200}|[a-c=\\[\\]{}\"'.,#\n0-9 µ³]{0,120}") {
        let reading = Reading::new("any.toml", &text);
        walk(&reading);
        for mistake in reading.finish() {
            prop_assert!(mistake.at.start <= mistake.at.end && mistake.at.end <= text.len());
            mistake.line_column(&text);
            say(&mistake.what, &Reader::default());
        }
    }

    #[test]
    fn a_quantity_in_a_file_is_the_quantity_that_was_written(bore in 0.1f64..900.0) {
        let text = format!("bore = \"{bore} mm\"");
        let reading = Reading::new("job.toml", &text);
        let read = reading.root().exact::<Length>("bore").map(|placed| placed.value);
        prop_assert_eq!(read, Some(Length::from_millimetres(bore)));
    }
}
