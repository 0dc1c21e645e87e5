//! What can be wrong in a catalogue, each with the file that is right beside it.

use oilway_catalogue::{Catalogue, Part, catalogue_from, catalogue_over, house, kinds};
use oilway_text::{Mistake, Reader, say};
use proptest::prelude::*;

const RIGHT: &str = r#"kind = "hose"
source = "from the certificate"

[[part]]
id = "7"
description = "A hose."
price = "12.50 EUR"
bore = "4 mm"
rated = "160 bar"
burst = "640 bar"
bend_radius = "40 mm"
coldest = "-20 °C"
hottest = "80 °C"
"#;

fn read(text: &str) -> (Vec<Part>, Vec<Mistake>) {
    catalogue_from(&[("hose.toml", text)])
}

fn keys(mistakes: &[Mistake]) -> Vec<&'static str> {
    mistakes.iter().map(|mistake| mistake.what.key).collect()
}

/// One change to the right file, and the keys of what is then wrong; the part must be left out.
fn spoiled(from: &str, to: &str, wanted: &[&str]) {
    assert!(RIGHT.contains(from), "{from}");
    let text = RIGHT.replace(from, to);
    let (parts, mistakes) = read(&text);
    assert_eq!(keys(&mistakes), wanted, "{to}");
    assert!(parts.is_empty(), "{to}");
    // What is missing is missed at the table; everything else is wrong where it stands.
    if let Some(start) = text.find(to).filter(|_| !to.is_empty()) {
        let changed = start..start + to.len();
        let touches = |mistake: &Mistake| mistake.at.start < changed.end && changed.start < mistake.at.end;
        assert!(mistakes.iter().any(touches), "{to}: {mistakes:?}");
    }
    for mistake in mistakes {
        let said = [say(&mistake.what, &Reader::default()), say(&mistake.cure, &Reader::default())];
        assert!(said.iter().all(|sentence| !sentence.contains('[') || sentence.contains("[\"")), "{said:?}");
    }
}

#[test]
fn the_right_file_is_right() {
    let (parts, mistakes) = read(RIGHT);
    assert!(mistakes.is_empty(), "{mistakes:?}");
    let hose = kinds::Hose::of(&parts[0]).unwrap();
    assert!((hose.rated.bar() - 160.0).abs() < 1e-9 && !hose.food && hose.growth.is_none());
    assert_eq!(parts[0].source, "from the certificate");
}

#[test]
fn a_single_slip_is_named_and_the_part_left_out() {
    spoiled("bore = \"4 mm\"\n", "", &["reading-missing-key"]);
    spoiled("\"4 mm\"", "4", &["reading-quantity"]);
    spoiled("\"4 mm\"", "\"4 bar\"", &["reading-quantity"]);
    spoiled("\"4 mm\"", "\"0 mm\"", &["catalogue-out-of-range"]);
    spoiled("\"4 mm\"", "\"4..5 mm\"", &["reading-wants-one-value"]);
    spoiled("bore =", "brore =", &["reading-missing-key", "reading-unknown-key"]);
    spoiled("id = \"7\"", "id = \"\"", &["catalogue-empty"]);
    spoiled("id = \"7\"", "id = 7", &["reading-wants-text"]);
    spoiled("12.50 EUR", "12,50 EUR", &["catalogue-price"]);
    spoiled("-20 °C", "90 °C", &["catalogue-ends-crossed"]);
    spoiled("160 bar", "640 bar", &["catalogue-ends-crossed"]);
    spoiled("source = \"from the certificate\"", "", &["reading-missing-key"]);
    spoiled("kind = \"hose\"", "", &["reading-missing-key"]);
    spoiled("kind = \"hose\"", "kind = \"hsoe\"", &["catalogue-unknown-kind"]);
    spoiled("kind = \"hose\"", "kind = \"banana tree\"", &["catalogue-unknown-kind"]);
}

#[test]
fn three_slips_give_three_mistakes_in_one_run() {
    let text = RIGHT.replace("\"4 mm\"", "4").replace("640 bar", "640 mm").replace("80 °C", "hot");
    assert_eq!(keys(&read(&text).1), ["reading-quantity"; 3]);
}

#[test]
fn an_id_stands_once_in_all_files_and_the_first_part_keeps_it() {
    let (parts, mistakes) = catalogue_from(&[("a.toml", RIGHT), ("b.toml", RIGHT)]);
    assert_eq!((parts.len(), keys(&mistakes)), (1, vec!["catalogue-doubled-id"]));
    assert_eq!(mistakes[0].file, "b.toml");
    assert!(say(&mistakes[0].cure, &Reader::default()).contains("a.toml, line 5"));
}

#[test]
fn a_file_over_another_may_replace_its_parts_and_name_them() {
    let below = Catalogue::new(read(RIGHT).0);
    let (parts, mistakes) = catalogue_over(&below, &[("mine.toml", RIGHT)]);
    assert_eq!((parts.len(), mistakes.len()), (1, 0));

    let divider = house::catalogue().of_kind("divider").next().unwrap();
    let mine = section(&divider.id);
    let (with_mine, mistakes) = house::with_files(&[("section.toml", &mine)]);
    assert!(mistakes.is_empty(), "{mistakes:?}");
    assert_eq!(with_mine.part("own-1").map(|part| part.kind.id()), Some("section"));
    assert_eq!(with_mine.parts().count(), house::catalogue().parts().count() + 1);
}

fn section(fits: &str) -> String {
    format!(
        "kind = \"section\"\nsource = \"own\"\n[[part]]\nid = \"own-1\"\ndescription = \"A section.\"\nfits = [\"{fits}\"]\nvolume = \"0.1 cm³\"\noutlet_thread = \"M10x1\"\n"
    )
}

#[test]
fn a_name_must_lead_to_a_part_of_the_right_kind() {
    let pump = house::catalogue().of_kind("pump").next().unwrap();
    let nowhere = house::with_files(&[("section.toml", &section("99999999"))]);
    assert_eq!(keys(&nowhere.1), ["catalogue-no-such-part"]);
    assert!(nowhere.0.part("own-1").is_none());
    let other = house::with_files(&[("section.toml", &section(&pump.id))]);
    assert_eq!(keys(&other.1), ["catalogue-part-of-other-kind"]);
}

#[test]
fn ports_are_checked_word_by_word() {
    let file = |ports: &str| {
        format!(
            "kind = \"gauge\"\nsource = \"own\"\n[[part]]\nid = \"1\"\ndescription = \"A gauge.\"\nfull_scale = \"100 bar\"\nport = [{ports}]\n"
        )
    };
    let stem = r#"{ mark = "stem", role = "joint", thread = "g1/4", sex = "male", internal = "pressure" }"#;
    let (parts, mistakes) = catalogue_from(&[("gauge.toml", &file(stem))]);
    assert!(mistakes.is_empty(), "{mistakes:?}");
    assert_eq!(parts[0].ports[0].thread, "G 1/4");
    for (from, to, wanted) in [
        ("joint", "jiont", "reading-unknown-word"),
        ("g1/4", "M10", "catalogue-unknown-thread"),
        ("g1/4", "G 1/5", "catalogue-unknown-thread"),
        (", sex = \"male\"", "", "reading-missing-key"),
        ("internal", "internl", "reading-missing-key"),
    ] {
        let (parts, mistakes) = catalogue_from(&[("gauge.toml", &file(&stem.replace(from, to)))]);
        assert!(parts.is_empty() && keys(&mistakes).contains(&wanted), "{to}: {mistakes:?}");
    }
    assert_eq!(keys(&catalogue_from(&[("gauge.toml", &file(""))]).1), ["catalogue-port-number"]);
    let two = format!("{stem}, {stem}");
    assert_eq!(keys(&catalogue_from(&[("gauge.toml", &file(&two))]).1), ["catalogue-doubled-mark"]);
}

/// Each contradiction: the line of a house part that makes it, and the field that shows it.
#[test]
fn contradictions_inside_a_part_are_found() {
    for (file, from, to, wanted) in [
        ("pump", "coldest = \"-10 °C\"", "coldest = \"70 °C\"", "catalogue-ends-crossed"),
        ("pump", "ratio = \"20\"\n", "", "catalogue-drive-lacks"),
        ("pump", "air_swept = \"126 cm³\"", "air_swept = \"100 cm³\"", "catalogue-air-too-little"),
        ("pump", "role = \"air in\"", "role = \"vent\"", "catalogue-port-lacking"),
        ("reservoir", "reserve = \"0.25 L\"", "reserve = \"1.7 L\"", "catalogue-reserve-too-large"),
        ("reservoir", "gross = \"2 L\"", "gross = \"3 L\"", "catalogue-larger-than-its-shell"),
        ("reservoir", "follower = true\n", "", "catalogue-weight-without-plate"),
        ("port-block", "role = \"relief\"", "role = \"gauge\"", "catalogue-port-lacking"),
        ("divider", "sections_min = \"3\"", "sections_min = \"11\"", "catalogue-ends-crossed"),
        ("divider", "drop = \"8 bar\"", "drop = \"250 bar\"", "catalogue-ends-crossed"),
        ("burst-disc", "liquid = true\n", "", "catalogue-disc-not-for-liquid"),
        ("disc-holder", "opens_at = \"4 bar\"\n", "", "catalogue-holder-without-pressure"),
        ("air-valve", "mark = \"2\"", "mark = \"7\"", "catalogue-mark-lacking"),
        ("air-regulator", "lowest = \"0.5 bar\"", "lowest = \"8 bar\"", "catalogue-ends-crossed"),
        ("tube", "wall = \"1 mm\"", "wall = \"3 mm\"", "catalogue-wall-fills-tube"),
        ("fitting", "shape = \"straight\"", "shape = \"tee\"", "catalogue-port-number"),
        ("check-valve", "cracking = \"0.5 bar\"", "cracking = \"400 bar\"", "catalogue-ends-crossed"),
        ("pressure-switch", "hysteresis = \"2.5 bar\"", "hysteresis = \"5 bar\"", "catalogue-ends-crossed"),
        (
            "metering-valve",
            "resets_below = \"16 bar\"",
            "resets_below = \"60 bar\"",
            "catalogue-ends-crossed",
        ),
        ("controller", "inputs = \"2\"", "inputs = \"2.5\"", "catalogue-not-whole"),
    ] {
        let name = format!("parts/{file}.toml");
        let files: Vec<(&str, String)> = house::FILES
            .iter()
            .map(|(known, text)| {
                (*known, if *known == name { text.replacen(from, to, 1) } else { (*text).to_owned() })
            })
            .collect();
        let files: Vec<(&str, &str)> = files.iter().map(|(name, text)| (*name, text.as_str())).collect();
        let (parts, mistakes) = catalogue_from(&files);
        assert_eq!(keys(&mistakes), [wanted], "{file}: {to}");
        assert_eq!(parts.len() + 1, house::catalogue().parts().count(), "{file}: {to}");
    }
}

#[test]
fn a_tube_with_a_rating_needs_its_basis() {
    let (name, text) = house::FILES.iter().find(|(name, _)| *name == "parts/tube.toml").unwrap();
    let lines: Vec<&str> = text.lines().collect();
    let basis = lines.iter().position(|line| line.starts_with("basis")).unwrap();
    let without = [&lines[..basis], &lines[basis + 1..]].concat().join("\n");
    assert_eq!(keys(&catalogue_from(&[(name, &without)]).1), ["catalogue-rating-without-basis"]);
}

proptest! {
    #[test]
    fn no_file_makes_the_catalogue_panic(at in 0usize..4000, cut in 0usize..60, put in "\\PC{0,12}") {
        let (name, text) = house::FILES[at % house::FILES.len()];
        let boundary = |mut byte: usize| { byte = byte.min(text.len()); while !text.is_char_boundary(byte) { byte -= 1; } byte };
        let start = boundary(at);
        let end = boundary(start + cut).max(start);
        let changed = format!("{}{put}{}", &text[..start], &text[end..]);
        let (_, mistakes) = catalogue_from(&[(name, &changed)]);
        for mistake in mistakes {
            prop_assert!(mistake.at.end <= changed.len());
        }
    }
}
