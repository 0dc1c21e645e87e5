//! The library of lubricants, and what can be wrong with one.

use oilway_catalogue::lubricants::{
    self, GreaseFlow, NLGI, SubstanceData, library, lubricant, lubricants_from,
};
use oilway_text::{Reader, say};

#[test]
fn the_library_reads_without_a_mistake_and_loses_nothing() {
    let (read, mistakes) = lubricants_from(lubricants::FILES);
    let said: Vec<String> = mistakes.iter().map(|mistake| say(&mistake.what, &Reader::default())).collect();
    assert_eq!(said, Vec::<String>::new());
    let rows: usize = lubricants::FILES.iter().map(|(_, text)| text.matches("[[lubricant]]").count()).sum();
    assert_eq!((read.len(), library().len()), (rows, rows));
    assert!(library().iter().all(|one| one.source.len() > 10 && one.description.ends_with('.')));
}

/// ISO 3448 (seen): each grade lies between 0.9 and 1.1 times its number at 40 °C; steps of about 1.5 from one to the next.
#[test]
fn oils_stand_in_the_middle_of_their_grade() {
    let mut grades = 0;
    for one in library() {
        let SubstanceData::Oil(oil) = &one.substance else { continue };
        let grade: f64 = one.name.rsplit(' ').next().unwrap().parse().unwrap();
        let at_40 = oil.at_40.square_millimetres_per_second();
        assert!((0.9 * grade..=1.1 * grade).contains(&at_40), "{}", one.name);
        assert!(
            oil.at_100 < oil.at_40 && (800.0..=920.0).contains(&oil.density_15.kilograms_per_cubic_metre())
        );
        grades += 1;
    }
    assert!(grades >= 9);
}

/// Design ranges of the lubricant study (own, judged), copied here class by class: low, typical and high yield stress.
#[test]
fn greases_by_class_have_the_judged_yield_stresses() {
    for (class, wanted) in [
        ("000", [0.0, 10.0, 30.0]),
        ("00", [10.0, 30.0, 100.0]),
        ("0", [50.0, 100.0, 200.0]),
        ("1", [100.0, 200.0, 400.0]),
        ("2", [200.0, 500.0, 1000.0]),
        ("3", [500.0, 1000.0, 2000.0]),
    ] {
        let one = lubricant(&format!("lithium grease NLGI {class}")).unwrap();
        let SubstanceData::Grease(grease) = &one.substance else { panic!("{class}") };
        let GreaseFlow::Span(span) = &grease.flow else { panic!("{class}") };
        let said =
            [span.yield_stress.low, span.yield_stress.typical, span.yield_stress.high].map(|y| y.pascals());
        assert_eq!((grease.nlgi, said), (class, wanted));
        assert_eq!(
            [span.halving.low, span.halving.typical, span.halving.high].map(|h| h.kelvins()),
            [15.0, 20.0, 40.0]
        );
    }
}

/// The rows of the demonstration job (its scenario, own).
#[test]
fn the_grease_of_the_demonstration_has_its_three_rows_coldest_first() {
    let one = lubricant("grease F1").unwrap();
    let SubstanceData::Grease(grease) = &one.substance else { panic!() };
    let GreaseFlow::Rows(rows) = &grease.flow else { panic!() };
    let read: Vec<_> = rows
        .iter()
        .map(|row| {
            let k = row.consistency.pascal_seconds_to_the_n();
            (row.temperature.celsius().round(), row.yield_stress.pascals(), k, row.index.fraction())
        })
        .collect();
    assert_eq!(read, [(4.0, 240.0, 85.0, 0.43), (20.0, 180.0, 60.0, 0.42), (60.0, 70.0, 25.0, 0.4)]);
    assert!(one.food && grease.nlgi == "1");
}

#[test]
fn a_class_gets_stiffer_from_one_number_to_the_next() {
    let typical: Vec<f64> = NLGI[..6]
        .iter()
        .map(|class| match &lubricant(&format!("lithium grease NLGI {class}")).unwrap().substance {
            SubstanceData::Grease(grease) => match &grease.flow {
                GreaseFlow::Span(span) => span.yield_stress.typical.pascals(),
                GreaseFlow::Rows(_) => f64::NAN,
            },
            SubstanceData::Oil(_) => f64::NAN,
        })
        .collect();
    assert!(typical.windows(2).all(|pair| pair[0] < pair[1]), "{typical:?}");
}

#[test]
fn a_name_nobody_knows_gets_the_nearest() {
    assert!(lubricant("mineral oil VG 221").is_none());
    assert_eq!(lubricants::nearest_name("mineral oil VG220"), Some("mineral oil VG 220"));
}

const RIGHT: &str = r#"[[lubricant]]
name = "x"
description = "A grease."
source = "own"
[lubricant.grease]
nlgi = "2"
thickener = "lithium soap"
density = "900 kg/m³"
base_oil = { density_15 = "890 kg/m³", at_40 = "150 mm²/s", at_100 = "15 mm²/s" }
rows = [ { temperature = "20 °C", yield_stress = "300 Pa", consistency = "30 Pa·sⁿ", index = 0.5 } ]
"#;

#[test]
fn every_slip_in_a_lubricant_is_named() {
    assert!(lubricants_from(&[("x.toml", RIGHT)]).1.is_empty());
    for (from, to, wanted) in [
        ("nlgi = \"2\"", "nlgi = \"7\"", "reading-unknown-word"),
        ("at_100 = \"15 mm²/s\"", "at_100 = \"150 mm²/s\"", "catalogue-ends-crossed"),
        ("\"300 Pa\"", "\"-3 Pa\"", "catalogue-out-of-range"),
        ("index = 0.5", "index = 0", "catalogue-out-of-range"),
        ("rows =", "rowz =", "catalogue-rows-or-span"),
        ("rows = [ {", "at_25 = {}\nrows = [ {", "reading-missing-key"),
        ("rows = [ {", "at_25 = 1\nrows = [ {", "reading-wants-sort"),
        ("source =", "coldest = 20\nsource =", "reading-quantity"),
        ("source =", "food = 1\nsource =", "reading-wants-sort"),
        ("\"15 mm²/s\" }", "\"15 mm²/s\", pour_point = 3 }", "reading-quantity"),
        ("[lubricant.grease]", "[lubricant.graese]", "catalogue-oil-or-grease"),
        ("source = \"own\"\n", "", "reading-missing-key"),
        (
            "rows = [ { temperature",
            "rows = [ { temperature = \"20 °C\", yield_stress = \"1 Pa\", consistency = \"1 Pa·sⁿ\", index = 1 }, { temperature",
            "catalogue-rows-doubled",
        ),
    ] {
        assert!(RIGHT.contains(from), "{from}");
        let (read, mistakes) = lubricants_from(&[("x.toml", &RIGHT.replace(from, to))]);
        assert!(mistakes.iter().any(|mistake| mistake.what.key == wanted), "{to}: {mistakes:?}");
        assert!(read.is_empty(), "{to}");
    }
}

#[test]
fn a_spread_stands_in_rising_order() {
    let rows = RIGHT.find("rows =").unwrap();
    let with = |spread: &str| {
        format!(
            "{}at_25 = {{ yield_stress = {spread}, consistency = [\"1 Pa·sⁿ\", \"2 Pa·sⁿ\", \"3 Pa·sⁿ\"], index = [0.5, 0.6, 0.7], halving = [\"15 K\", \"20 K\", \"40 K\"] }}\n",
            &RIGHT[..rows]
        )
    };
    assert!(lubricants_from(&[("x.toml", &with("[\"1 Pa\", \"2 Pa\", \"3 Pa\"]"))]).1.is_empty());
    for wrong in
        ["[\"1 Pa\", \"3 Pa\", \"2 Pa\"]", "[\"1 Pa\", \"2 Pa\"]", "[\"-1 Pa\", \"2 Pa\", \"3 Pa\"]", "[]"]
    {
        let (read, mistakes) = lubricants_from(&[("x.toml", &with(wrong))]);
        assert_eq!((read.len(), mistakes[0].what.key), (0, "catalogue-spread"), "{wrong}");
    }
}

#[test]
fn two_lubricants_of_one_name_are_a_mistake() {
    let (read, mistakes) = lubricants_from(&[("x.toml", RIGHT), ("y.toml", RIGHT)]);
    assert_eq!((read.len(), mistakes[0].what.key), (1, "catalogue-doubled-lubricant"));
}
