//! What holds for every kind and every part of the house range at once.

use std::collections::BTreeSet;

use oilway_catalogue::kinds::{self, KINDS};
use oilway_catalogue::{Catalogue, Part, Thread, What, catalogue_from, house};
use oilway_text::{Mistake, Reader, say};
use oilway_units::Ratio;

fn spoken(mistakes: &[Mistake]) -> Vec<String> {
    let reader = Reader::default();
    mistakes
        .iter()
        .map(|m| format!("{} {:?}: {} {}", m.file, m.at, say(&m.what, &reader), say(&m.cure, &reader)))
        .collect()
}

fn parts() -> Vec<Part> {
    catalogue_from(house::FILES).0
}

#[test]
fn every_file_of_the_house_range_reads_without_a_mistake() {
    let (parts, mistakes) = catalogue_from(house::FILES);
    assert_eq!(spoken(&mistakes), Vec::<String>::new());
    let rows: usize = house::FILES.iter().map(|(_, text)| text.matches("[[part]]").count()).sum();
    assert_eq!(parts.len(), rows, "a row was lost");
    assert_eq!(house::catalogue().parts().count(), rows);
}

#[test]
fn every_file_in_the_folder_is_part_of_the_house_range() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../data/parts");
    let found: BTreeSet<String> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| format!("parts/{}", entry.unwrap().file_name().to_string_lossy()))
        .collect();
    let built_in: BTreeSet<String> = house::FILES.iter().map(|(name, _)| (*name).to_owned()).collect();
    assert_eq!(found, built_in);
}

#[test]
fn kinds_have_different_ids_and_every_one_is_found_by_its_id() {
    let ids: BTreeSet<&str> = KINDS.iter().map(|kind| kind.id()).collect();
    assert_eq!(ids.len(), KINDS.len());
    for kind in KINDS {
        assert_eq!(kinds::kind(kind.id()).map(|found| found.id()), Some(kind.id()));
        assert!(kind.id().chars().all(|c| c.is_ascii_lowercase() || c == ' ' || c == '-'), "{}", kind.id());
        assert!(kind.title().len() > kind.id().len() / 2 && !kind.title().ends_with('.'), "{}", kind.title());
    }
}

#[test]
fn every_field_is_named_plainly_and_documented() {
    for kind in KINDS {
        let names: BTreeSet<&str> = kind.fields().iter().map(|field| field.name).collect();
        assert_eq!(names.len(), kind.fields().len(), "{} has a field twice", kind.id());
        for field in kind.fields() {
            let plain = field.name.chars().all(|c| c.is_ascii_lowercase() || c == '_');
            assert!(
                plain && !["id", "description", "price", "source", "kind", "port"].contains(&field.name),
                "{}",
                field.name
            );
            assert!(field.meaning.len() > 10, "{} of {} is not explained", field.name, kind.id());
            if let What::Part(of) | What::Parts(of) = field.what {
                assert!(kinds::kind(of).is_some(), "{} of {} names no kind", field.name, kind.id());
            }
        }
    }
}

#[test]
fn every_kind_has_at_least_two_sizes_in_the_house_range() {
    for kind in KINDS {
        assert!(house::catalogue().of_kind(kind.id()).count() >= 2, "{}", kind.id());
    }
}

#[test]
fn every_part_has_its_typed_view() {
    for part in parts() {
        assert!(part.kind.is_complete(&part), "{} {}", part.id, part.description);
        assert_eq!(part.values.len(), part.kind.fields().len());
    }
}

#[test]
fn threads_of_the_house_range_stand_in_their_one_writing() {
    for part in parts() {
        for port in &part.ports {
            let thread = Thread::read(&port.thread).map(|thread| thread.to_string());
            assert_eq!(thread.as_deref(), Ok(port.thread.as_str()), "{}", part.id);
        }
        if let Some(thread) = part.text("outlet_thread") {
            assert!(Thread::read(thread).is_ok(), "{thread}");
        }
    }
}

#[test]
fn ids_are_running_numbers_and_prices_are_in_one_currency() {
    let mut ids: Vec<u32> = parts().iter().map(|part| part.id.parse().unwrap()).collect();
    ids.sort_unstable();
    assert!(ids.windows(2).all(|pair| pair[1] == pair[0] + 1), "{ids:?}");
    for part in parts() {
        assert!(
            part.price.is_some_and(|price| price.hundredths > 0 && price.currency == "EUR"),
            "{}",
            part.id
        );
    }
}

#[test]
fn a_view_of_another_kind_is_refused() {
    for part in parts() {
        let is_pump = kinds::Pump::of(&part).is_some();
        assert_eq!(is_pump, part.kind.id() == "pump");
    }
}

#[test]
fn parts_that_hold_pressure_say_how_much() {
    let silent = [
        "reservoir",
        "section",
        "burst disc",
        "air regulator",
        "silencer",
        "breather",
        "level switch",
        "cycle switch",
        "controller",
    ];
    for part in parts() {
        let rated = part.kind.rating(&part).is_some_and(|rated| rated.bar() > 0.0);
        assert_eq!(rated, !silent.contains(&part.kind.id()), "{} {}", part.id, part.kind.id());
    }
}

/// The stock of the demonstration job (its scenario, own): every item of it is in the house range.
#[test]
fn the_house_range_builds_the_demonstration_job() {
    let house = house::catalogue();
    let sections: Vec<f64> =
        views(house, "section", kinds::Section::of).iter().map(|s| s.volume.cubic_centimetres()).collect();
    for wanted in [0.063, 0.10, 0.16, 0.25, 0.40] {
        assert!(sections.iter().any(|v| (v - wanted).abs() < 1e-9), "{wanted}");
    }
    let pumps = views(house, "pump", kinds::Pump::of);
    for (ratio, per_cycle, rated) in [(20.0, 6.0, 200.0), (40.0, 3.0, 350.0)] {
        assert!(pumps.iter().any(|pump| pump.ratio == Some(Ratio::from_fraction(ratio))
            && pump.drive == kinds::Drive::SelfReversing
            && (pump.per_cycle.cubic_centimetres() - per_cycle).abs() < 1e-9
            && (pump.rated.bar() - rated).abs() < 1e-9
            && pump.stall_efficiency.is_some_and(|e| (e.fraction() - 0.95).abs() < 1e-12)));
    }
    let discs = views(house, "burst disc", kinds::BurstDisc::of);
    for nominal in [90.0, 110.0, 130.0, 150.0] {
        assert!(discs.iter().any(|disc| (disc.nominal.bar() - nominal).abs() < 1e-9
            && (disc.tolerance.fraction() - 0.05).abs() < 1e-12
            && (disc.ratio.fraction() - 0.80).abs() < 1e-12
            && (disc.below.percent_per_kelvin() - 0.12).abs() < 1e-12
            && (disc.above.percent_per_kelvin() - 0.10).abs() < 1e-12
            && (disc.marked_at.celsius() - 20.0).abs() < 1e-9));
    }
    let reservoirs = views(house, "reservoir", kinds::Reservoir::of);
    for litres in [2.0, 4.0, 8.0, 15.0] {
        assert!(reservoirs.iter().any(|r| (r.gross.litres() - litres).abs() < 1e-9
            && r.follower
            && (r.usable.fraction() - 0.85).abs() < 1e-12));
    }
    let hoses = views(house, "hose", kinds::Hose::of);
    assert!(hoses.iter().any(|h| h.food
        && (h.bore.millimetres() - 4.0).abs() < 1e-9
        && (h.rated.bar() - 160.0).abs() < 1e-9));
    let valves = views(house, "metering valve", kinds::MeteringValve::of);
    assert!(
        valves
            .iter()
            .any(|v| (v.fires_at.bar() - 60.0).abs() < 1e-9 && (v.resets_below.bar() - 16.0).abs() < 1e-9)
    );
}

/// A line of every tube can be joined: to the threads of the stock, to itself, in a tee.
#[test]
fn every_metal_tube_has_its_fittings() {
    let house = house::catalogue();
    for tube in views(house, "tube", kinds::Tube::of) {
        let end = format!("tube {}", tube.outside.millimetres().round());
        let with = |shape: kinds::Shape| {
            let fits = |part: &&std::sync::Arc<Part>| {
                kinds::Fitting::of(part).is_some_and(|f| f.shape == shape && !f.air)
            };
            house
                .of_kind("fitting")
                .filter(fits)
                .filter(|part| part.ports.iter().any(|port| port.thread == end))
                .count()
        };
        for shape in [kinds::Shape::Straight, kinds::Shape::Elbow, kinds::Shape::Tee] {
            assert!(with(shape) > 0, "{end} {shape:?}");
        }
    }
}

/// Every pressure port of every block can be plugged.
#[test]
fn every_port_of_a_block_has_a_plug() {
    let house = house::catalogue();
    for block in house.of_kind("port block") {
        for port in block.ports.iter().filter(|port| !matches!(port.mark.as_str(), "pump" | "from reservoir"))
        {
            let plug =
                house.of_kind("plug").any(|plug| plug.ports.iter().any(|own| own.thread == port.thread));
            assert!(plug, "{} of {}", port.thread, block.id);
        }
    }
}

fn views<V>(house: &Catalogue, kind: &str, of: fn(&Part) -> Option<V>) -> Vec<V> {
    house.of_kind(kind).filter_map(|part| of(part)).collect()
}
