//! Changing one value: comments stay, and a change that would spoil the job is refused.

mod common;

use common::{SMALL, sound, with};
use oilway_catalogue::{house, lubricants};
use oilway_store::change::set_value;

fn set(text: &str, at: &str, value: &str) -> Result<String, Vec<&'static str>> {
    set_value("job.toml", text, at, value, house::catalogue(), lubricants::library())
        .map_err(|mistakes| mistakes.iter().map(|m| m.what.key).collect())
}

#[test]
fn only_the_value_changes_and_comments_stay() {
    let text = with("lowest = \"5.5 bar\"", "lowest = \"5.5 bar\" # measured in August");
    let changed = set(&text, "air.lowest", "5.2 bar").unwrap();
    assert_eq!(changed, text.replace("5.5 bar", "5.2 bar"));
    assert_eq!(sound(&changed).conditions.air.unwrap().lowest.get().bar(), 5.2);
}

#[test]
fn a_key_that_was_left_out_is_added_in_its_table() {
    let changed = set(SMALL, "practice.floor", "0.02 cm³/h").unwrap();
    assert!(
        (sound(&changed).conditions.practice.floor.get().cubic_centimetres_per_hour() - 0.02).abs() < 1e-12
    );
    let changed = set(SMALL, "pause", "30 min").unwrap();
    assert_eq!(sound(&changed).pause.chosen().map(|t| t.minutes()), Some(30.0));
    let changed = set(SMALL, "lubricant.base_oil", "ISO VG 100").unwrap();
    sound(&changed);
    let changed = set(SMALL, "duty.days_per_week", "5").unwrap();
    assert!(changed.contains("days_per_week = 5"));
}

#[test]
fn members_of_lists_are_found_by_name() {
    let changed = set(SMALL, "place.hall.coldest", "-5 °C").unwrap();
    assert_eq!(sound(&changed).conditions.places[0].coldest.get().celsius(), -5.0);
    let changed = set(SMALL, "point.drive end.critical", "true").unwrap();
    assert!(sound(&changed).points[0].critical);
    let changed = set(SMALL, "point.drive end.surroundings", "[\"dust\"]").unwrap();
    assert_eq!(sound(&changed).points[0].surroundings.words, ["dust"]);
    assert_eq!(set(SMALL, "place.hal.coldest", "-5 °C"), Err(vec!["store-change-member"]));
}

#[test]
fn one_of_several_points_in_one_entry_is_not_changed_alone() {
    let text = with("name = \"drive end\"", "name = \"roll\"\ncount = 3");
    assert_eq!(set(&text, "point.roll 2.duty", "50 %"), Err(vec!["store-one-of-several"]));
    assert_eq!(set(&text, "point.roll 4.duty", "50 %"), Err(vec!["store-change-member"]));
    let changed = set(&text, "point.roll.duty", "50 %").unwrap();
    assert!(sound(&changed).points.iter().all(|p| p.duty.get().percent() == 50.0));
}

#[test]
fn a_change_that_spoils_the_job_is_refused_and_one_that_mends_it_is_taken() {
    assert_eq!(set(SMALL, "air.lowest", "7 bar"), Err(vec!["store-wrong-order"]));
    assert_eq!(set(SMALL, "air.lowest", "7"), Err(vec!["store-quantity"]));
    assert_eq!(set(SMALL, "air.lowset", "5 bar"), Err(vec!["reading-unknown-key"]));
    assert_eq!(set(SMALL, "air", "5 bar"), Err(vec!["store-change-place"]));
    let broken = with("class = \"1\"", "class = \"12\"").replace("5.5 bar", "55 bar");
    // One of two mistakes is mended; the other was there before and does not stand in the way.
    let half = set(&broken, "air.lowest", "5.5 bar").unwrap();
    let whole = set(&half, "lubricant.class", "\"1\"").unwrap();
    assert_eq!(whole, SMALL);
}

/// The id of the first part of a kind in the house range.
fn id_of(kind: &str) -> String {
    house::catalogue().of_kind(kind).next().expect("the house range has every kind").id.clone()
}

#[test]
fn the_id_of_a_part_needs_no_quotes() {
    let pump = id_of("pump");
    assert!(pump.chars().all(|c| c.is_ascii_digit()), "the test needs an id that looks like a number");
    let changed = set(SMALL, "package.pump", &pump).unwrap();
    assert_eq!(sound(&changed).package.pump.chosen(), Some(&pump));
    assert_eq!(set(SMALL, "package.pump", &format!("\"{pump}\"")).unwrap(), changed);
    assert_eq!(set(SMALL, "package.pump", &id_of("tube")), Err(vec!["store-part-of-other-kind"]));
    assert_eq!(set(SMALL, "package.pump", "99999999"), Err(vec!["store-unknown-part"]));
}

#[test]
fn stretches_are_found_as_the_lock_file_names_them() {
    let tube = id_of("tube");
    let changed = set(SMALL, "line.post.1.conduit", &tube).unwrap();
    assert_eq!(sound(&changed).dividers[0].route[0].conduit.chosen(), Some(&tube));
    let changed = set(SMALL, "line.drive end.1.length", "3 m").unwrap();
    assert_eq!(sound(&changed).points[0].route[0].length.get().metres(), 3.0);
    let headed =
        SMALL.replace("route = [{ length = \"2 m\" }]\n", "[[point.route]]\nlength = \"2 m\" # paced\n");
    let changed = set(&headed, "line.drive end.1.length", "3 m").unwrap();
    assert_eq!(changed, headed.replace("2 m", "3 m"));
    let inlet = with("[package]", "[package]\ninlet = [{ length = \"1 m\" }]");
    let changed = set(&inlet, "package.inlet.1.conduit", &tube).unwrap();
    assert_eq!(sound(&changed).package.inlet[0].conduit.chosen(), Some(&tube));
    for (at, key) in [
        ("line.post.2.conduit", "store-change-stretch"),
        ("line.post.0.conduit", "store-change-stretch"),
        ("line.post.first.conduit", "store-change-stretch"),
        ("package.inlet.1.conduit", "store-change-stretch"),
        ("line.pots.1.conduit", "store-change-member"),
        ("line.post.1.conduitt", "reading-unknown-key"),
        ("line.conduit", "store-change-place"),
    ] {
        assert_eq!(set(SMALL, at, &tube), Err(vec![key]), "{at}");
    }
    let many = with("name = \"drive end\"", "name = \"roll\"\ncount = 3");
    assert_eq!(set(&many, "line.roll 2.1.conduit", &tube), Err(vec!["store-one-of-several"]));
}

#[test]
fn sections_are_taken_as_the_lock_file_writes_them() {
    let section = id_of("section");
    let changed = set(SMALL, "divider.post.sections", &format!("{section}: drive end")).unwrap();
    let sections = sound(&changed).dividers[0].sections.chosen().cloned().unwrap();
    assert_eq!(
        (sections[0].part.as_str(), &sections[0].serves[..]),
        (section.as_str(), &["drive end".to_owned()][..])
    );
    let open = set(&changed, "divider.post.sections", "open").unwrap();
    assert!(sound(&open).dividers[0].sections.is_open());
    let wrong = |value: &str| set(SMALL, "divider.post.sections", value).unwrap_err();
    assert_eq!(wrong("drive end"), ["store-change-sections"]);
    assert_eq!(wrong(&format!("{section}: drive emd")), ["store-not-on-divider"]);
    assert_eq!(wrong(&format!("{section}: ")), ["store-outlets"]);
}
