use oilway_text::{Arg, Language, Reader, message};
use oilway_units::{Pressure, UnitSystem};
use proptest::prelude::*;
use unicode_width::UnicodeWidthStr;

use super::*;
use crate::cautions::{Step, triggered};
use crate::sheet::{Align, Band, BandSort, Block, Column, Ladder, LadderColumn, LadderMark, Sheet, Table};
use crate::testing::{small_answer, small_assumptions, small_design, small_findings};
use crate::text;

const BOTH: Reader = Reader { units: UnitSystem::Metric, both: true, language: Language::English };

fn made(id: &str) -> Sheet {
    let (design, answer, findings, assumptions) =
        (small_design(), small_answer(), small_findings(), small_assumptions());
    let papers = Papers { design: &design, answer: &answer, findings: &findings, assumptions: &assumptions };
    (sheet_kind(id).unwrap().make)(&papers)
}

fn said(id: &str) -> String {
    text::write(&made(id), &Reader::default(), 100)
}

/// Every sheet in metric units at the width of a print, for people to look at.
#[test]
fn the_sheets_look_like_this() {
    for kind in SHEETS {
        insta::assert_snapshot!(kind.id, said(kind.id));
    }
}

#[test]
fn both_systems_stand_side_by_side_and_the_ladder_follows_the_reader() {
    insta::assert_snapshot!("answer_both", text::write(&made("answer"), &BOTH, 100));
    let us = Reader { units: UnitSystem::Us, ..Reader::default() };
    insta::assert_snapshot!("ladder_us", text::write(&made("ladder"), &us, 80));
}

#[test]
fn every_sentence_is_complete() {
    for kind in SHEETS {
        let text = text::write(&made(kind.id), &BOTH, 110);
        // What is missing shows in square brackets; the only other brackets are boxes to tick.
        let brackets = text.replace("[ ]", "");
        assert!(!brackets.contains(['[', '{']), "{}:\n{text}", kind.id);
        assert!(!text.contains('\u{FFFD}'), "{}", kind.id);
    }
}

#[test]
fn no_line_of_any_sheet_is_wider_than_asked() {
    for kind in SHEETS {
        for width in [20, 33, 60, 80, 100, 200] {
            for line in text::write(&made(kind.id), &BOTH, width).lines() {
                assert!(line.width() <= width, "{} at {width}: {line}", kind.id);
            }
        }
    }
}

#[test]
fn a_stop_is_read_before_everything_else() {
    for id in ["answer", "build"] {
        let text = said(id);
        // Title, its underline and an empty line, and then at once the stop.
        let first = text.lines().nth(3).unwrap();
        assert!(first.starts_with("!! STOP"), "{id}: {first}");
    }
}

#[test]
fn every_caution_of_the_work_stands_once_in_the_build_order_and_before_a_step() {
    let design = small_design();
    let sheet = made("build");
    let placed: Vec<&str> = sheet
        .blocks
        .iter()
        .filter_map(
            |block| if let Block::Caution(caution) = block { Some(caution.id.as_str()) } else { None },
        )
        .collect();
    let work = [Step::Always, Step::Assembly, Step::Commissioning, Step::Handling];
    for caution in triggered(&design) {
        let wanted = usize::from(work.iter().any(|step| caution.stands_at(*step)));
        assert_eq!(placed.iter().filter(|id| **id == caution.id).count(), wanted, "{}", caution.id);
    }
    // S50 stands right before the step in which the disc is fitted.
    let at = |wanted: &dyn Fn(&Block) -> bool| sheet.blocks.iter().position(wanted).unwrap();
    let caution = at(&|block| matches!(block, Block::Caution(caution) if caution.id == "S50"));
    let step = at(&|block| matches!(block, Block::Step { what, .. } if what.key == "documents-step-disc"));
    assert_eq!(caution + 1, step);
    assert!(matches!(sheet.blocks.last(), Some(Block::Caution(caution)) if caution.id == "S01"));
}

#[test]
fn the_sheet_of_cautions_holds_every_triggered_one_once() {
    let sheet = made("cautions");
    let mut printed: Vec<&str> = sheet
        .blocks
        .iter()
        .filter_map(
            |block| if let Block::Caution(caution) = block { Some(caution.id.as_str()) } else { None },
        )
        .collect();
    printed.sort_unstable();
    let design = small_design();
    let mut wanted: Vec<&str> = triggered(&design).iter().map(|caution| caution.id.as_str()).collect();
    wanted.sort_unstable();
    assert_eq!(printed, wanted);
}

#[test]
fn the_gauge_is_told_the_highest_of_start_and_motion() {
    let answer = small_answer();
    // 76 bar at the design flow, 5 % more where the pump pushes as fast as it can.
    let text = text::write(&settings(&small_design(), &answer, &[]), &Reader::default(), 100);
    assert!(text.contains("stands above 79.8 bar"), "{text}");
}

#[test]
fn the_wrong_disc_comes_out_and_the_right_one_is_read() {
    let mut design = small_design();
    let keys = |design: &Design| -> Vec<&'static str> {
        let sheet = build(design, &small_answer(), &[]);
        let step = |block: Block| if let Block::Step { what, .. } = block { Some(what.key) } else { None };
        sheet.blocks.into_iter().filter_map(step).collect()
    };
    assert!(keys(&design).contains(&"documents-step-supplied-disc-out"));
    design.package.disc = Some(crate::testing::house_part("burst disc", "marked 150 bar"));
    assert!(keys(&design).contains(&"documents-step-supplied-disc-right"));
    assert!(!keys(&design).contains(&"documents-step-supplied-disc-out"));
    design.package.disc = None;
    assert!(keys(&design).contains(&"documents-step-no-disc"));
}

/// The table of a sheet with this number.
fn table(sheet: &Sheet, number: usize) -> Table {
    let tables = sheet
        .blocks
        .iter()
        .filter_map(|block| if let Block::Table(table) = block { Some(table) } else { None });
    tables.into_iter().nth(number).unwrap().clone()
}

#[test]
fn every_port_of_every_part_of_the_package_has_a_row() {
    let design = small_design();
    let rows = |design: &Design| -> usize {
        let sheet = ports(design, &small_answer(), &[]);
        (0..6).map(|number| table(&sheet, number).rows.len()).sum()
    };
    let package = &design.package;
    let hosts = [&package.block, &package.pump, &package.reservoir];
    let others = [&package.valve, &package.regulator, &package.holder].map(|part| part.as_ref().unwrap());
    let wanted: usize = hosts.into_iter().chain(others).map(|part| part.ports.len()).sum();
    assert_eq!(rows(&design), wanted);
    // A port that nobody planned is not forgotten.
    let mut forgetful = small_design();
    forgetful.package.devices.retain(|device| device.mark != "gauge");
    assert_eq!(rows(&forgetful), wanted);
    let text = text::write(&ports(&forgetful, &small_answer(), &[]), &Reader::default(), 200);
    assert_eq!(text.matches("NOTHING DECIDED").count(), 1);
}

#[test]
fn shares_add_up_and_sums_are_those_of_the_points() {
    let answer = small_answer();
    let sheet = delivery(&small_design(), &answer, &[]);
    let sum: f64 = answer.deliveries.iter().map(|d| d.delivered.cubic_centimetres_per_hour()).sum();
    let foot = &table(&sheet, 0).foot[0];
    let Arg::Quantity(total) = &foot[5] else { panic!("{foot:?}") };
    let total: oilway_units::Flow = total.get().unwrap();
    assert!((total.cubic_centimetres_per_hour() - sum).abs() < 1e-9);
    let shares = |table: &Table, column: usize| -> f64 {
        let share =
            |row: &Vec<Arg>| if let Arg::Quantity(share) = &row[column] { share.si } else { panic!() };
        table.rows.iter().map(share).sum()
    };
    assert!((shares(&table(&sheet, 0), 7) - 1.0).abs() < 1e-9);
    assert!((shares(&table(&sheet, 1), 4) - 1.0).abs() < 1e-9);
}

#[test]
fn equal_remarks_are_said_once_for_all_their_points() {
    let sheet = delivery(&small_design(), &small_answer(), &[]);
    let list =
        sheet.blocks.iter().find_map(|block| if let Block::List(list) = block { Some(list) } else { None });
    assert_eq!(list.map(Vec::len), Some(1));
    assert!(said("delivery").contains("belt 1 and belt 2: raised to 0.01 cm³/h"));
}

#[test]
fn one_column_serves_where_cold_and_heat_change_nothing() {
    let design = small_design();
    let drawn = |answer: &Answer| -> Vec<&'static str> {
        let sheet = ladder(&design, answer, &[]);
        let Some(Block::Ladder(ladder)) = sheet.blocks.into_iter().nth(1) else { panic!() };
        let stalls = ladder.marks.iter().filter(|mark| mark.what.key == "documents-mark-stall").count();
        assert_eq!(stalls + 1, ladder.columns.len());
        ladder.columns.iter().map(|column| column.title.key).collect()
    };
    let mut answer = small_answer();
    assert_eq!(drawn(&answer).len(), 4);
    for other in [1, 2] {
        answer.seasons[other].paths = answer.seasons[0].paths.clone();
    }
    assert_eq!(drawn(&answer), ["documents-ladder-every-day", "documents-ladder-disc"]);
    answer.seasons[2].pump.stall = Pressure::from_bar(94.0);
    assert_eq!(drawn(&answer).len(), 4);
}

#[test]
fn the_verdict_turns_only_when_all_that_carries_it_is_cured() {
    let (design, answer) = (small_design(), small_answer());
    let said = |findings: &[Finding]| {
        text::write(&super::answer(&design, &answer, findings), &Reader::default(), 200)
    };
    let turning = small_findings().remove(0);
    let alone = said(core::slice::from_ref(&turning));
    assert!(alone.contains("What would turn the verdict") && !alone.contains("turns only when"), "{alone}");
    let second = Finding { at: "package.pump".to_owned(), rule: "other", turns: None, ..turning.clone() };
    assert!(said(&[turning.clone(), second]).contains("turns only when all 2 matters"));
    // What weighs less than a stop does not turn a refusal.
    assert!(!said(&[small_findings().remove(1), turning]).contains("What would turn the verdict"));
}

#[test]
fn the_turning_value_of_a_factor_is_a_factor_and_that_of_a_share_a_share() {
    let said = |[low, high, turns]: [f64; 3]| {
        let ratio = |value| oilway_units::Ratio::from_fraction(value).into();
        let mut all = small_assumptions();
        (all[0].low, all[0].high, all[0].turns_at) = (ratio(low), ratio(high), Some(ratio(turns)));
        text::write(&assumptions(&small_design(), &all), &Reader::default(), 200)
    };
    let factor = said([1.0, 2.0, 1.745]);
    assert!(factor.contains(" 1.745") && !factor.contains("174"), "{factor}");
    assert!(said([0.0, 0.3, 0.25]).contains(" 25 %"));
}

#[test]
fn a_joint_on_the_way_is_told_by_what_meets_there() {
    let text = said("build").split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(text.contains("where tube meets"), "{text}");
    assert!(!text.contains("before stretch"));
}

#[test]
fn a_shut_window_and_a_pump_that_is_too_weak_are_said() {
    let mut answer = small_answer();
    answer.protection.window_low = Pressure::from_bar(170.0);
    answer.seasons[0].pump.stall = Pressure::from_bar(60.0);
    let design = small_design();
    let text = text::write(&super::answer(&design, &answer, &[]), &Reader::default(), 100);
    assert!(text.contains("shut: to live it would need at least 170 bar, to protect at most"), "{text}");
    assert!(text.contains("the pump stalls at 60 bar: 16 bar are lacking"), "{text}");
    let text = text::write(&ladder(&design, &answer, &[]), &Reader::default(), 100);
    assert!(text.contains("The window is shut"), "{text}");
    assert!(!text.contains("::::"), "{text}");
}

#[test]
fn an_answer_without_points_or_seasons_still_makes_every_sheet() {
    let mut answer = small_answer();
    answer.seasons.clear();
    answer.deliveries.clear();
    answer.cold_limit = None;
    let mut design = small_design();
    design.points.clear();
    design.network.nodes.clear();
    design.conduits.clear();
    design.dividers.clear();
    design.joints.clear();
    design.package.devices.clear();
    design.reasons.clear();
    let papers = Papers { design: &design, answer: &answer, findings: &[], assumptions: &[] };
    for kind in SHEETS {
        assert!(!text::write(&(kind.make)(&papers), &BOTH, 80).is_empty());
    }
}

/// Names that somebody types, pastes or means badly.
fn hostile() -> impl Strategy<Value = String> {
    let piece = prop_oneof![
        "\\PC{0,12}",
        any::<char>().prop_map(String::from),
        Just("\u{1b}[2J\u{7}".to_owned()),
        Just("\u{202E}שמן ميكانيك\u{202C}".to_owned()),
        Just("👩‍🔧👨‍👩‍👧‍👦🏳️‍🌈1️⃣".to_owned()),
        Just("\r\n\t\u{2028}".to_owned()),
        Just("油压泵潤滑".to_owned()),
        Just("a\u{301}\u{302}\u{303}\u{304}".repeat(30)),
        Just("क्ष्म्य".repeat(9)),
        Just("\u{2E3B}\u{FDFD}\u{12031}".to_owned()),
        Just("x".repeat(300)),
        Just("{ $what } { \"".to_owned()),
        Just(" \u{A0} ".to_owned()),
    ];
    prop::collection::vec(piece, 0..5).prop_map(|pieces| pieces.concat())
}

fn hostile_sheet(names: &[String]) -> Sheet {
    let name = |number: usize| names.get(number % names.len().max(1)).map_or("", String::as_str);
    let said = |number: usize| message!("documents-finding", at = name(number), what = name(number + 1));
    let column = |align| Column { title: said(2), align };
    let row = |number: usize| vec![name(number).into(), Pressure::from_bar(59.3).into(), said(number).into()];
    let table = Table {
        columns: vec![column(Align::Left), column(Align::Right), column(Align::Left)],
        rows: (0..4).map(row).collect(),
        foot: vec![row(5)],
    };
    let ladder = Ladder {
        top: Pressure::from_bar(200.0),
        columns: vec![LadderColumn {
            title: said(1),
            bands: vec![Band {
                sort: BandSort::Working,
                low: Pressure::ZERO,
                high: Pressure::from_bar(80.0),
            }],
        }],
        marks: (0..40)
            .map(|number| LadderMark {
                at: Pressure::from_bar(f64::from(number) * 3.0),
                column: (number % 2 == 0).then_some(0),
                what: said(number as usize),
            })
            .collect(),
    };
    let caution = crate::cautions::cautions().first().map(Block::Caution);
    let mut blocks = vec![
        Block::Heading(said(0)),
        Block::Stop(said(1)),
        Block::Say(said(2)),
        Block::Table(table),
        Block::List(vec![said(3), said(4)]),
        Block::Step { number: 1, what: said(5) },
        Block::Ladder(ladder),
    ];
    blocks.extend(caution);
    Sheet { title: said(0), blocks }
}

proptest! {
    #[test]
    fn hostile_names_never_break_the_width_and_no_control_character_gets_through(
        names in prop::collection::vec(hostile(), 1..7),
        width in 0usize..130,
    ) {
        let text = text::write(&hostile_sheet(&names), &BOTH, width);
        for line in text.lines() {
            prop_assert!(line.width() <= width.max(text::NARROWEST), "{width}: {} {line:?}", line.width());
        }
        let bad = text.chars().find(|c| (c.is_control() && *c != '\n') || matches!(c, '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}'));
        prop_assert_eq!(bad, None);
    }

    #[test]
    fn a_whole_design_with_hostile_names_keeps_the_width(
        names in prop::collection::vec(hostile(), 5),
        width in 20usize..120,
    ) {
        let mut design = small_design();
        for ((point, node), name) in design.points.iter_mut().zip(&mut design.network.nodes).zip(&names) {
            point.name.clone_from(name);
            node.name.clone_from(name);
        }
        design.dividers[0].name.clone_from(&names[0]);
        design.conditions.places[0].name.clone_from(&names[1]);
        design.name.clone_from(&names[2]);
        let (answer, findings, assumptions) = (small_answer(), small_findings(), small_assumptions());
        let papers = Papers { design: &design, answer: &answer, findings: &findings, assumptions: &assumptions };
        for kind in SHEETS {
            for line in text::write(&(kind.make)(&papers), &BOTH, width).lines() {
                prop_assert!(line.width() <= width, "{} {width}: {} {line:?}", kind.id, line.width());
            }
        }
    }

    #[test]
    fn no_part_of_a_name_is_lost(name in "[a-z]{1,60}( [a-z]{1,60}){0,4}", width in 20usize..90) {
        let sheet = Sheet { title: message!("documents-none"), blocks: vec![Block::Say(message!("documents-at-place", name = name.as_str()))] };
        let text = text::write(&sheet, &BOTH, width);
        let letters = |text: &str| text.chars().filter(char::is_ascii_lowercase).collect::<String>();
        prop_assert_eq!(letters(&text), letters(&name));
    }
}
