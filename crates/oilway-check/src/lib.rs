//! The independent checker of a finished design: one rule, one file.
//!
//! [`check`] takes nothing but the design and works every number out again with its own plain walk, path by path from the
//! pump to the point; it shares formulas with the designer and no other code. [`compare`] lays the designer's numbers beside
//! the checker's own. [`rules`] lists what is looked for, each rule with the words that explain it.
//!
//! Read `walk` for the pressures, `feeding` for who gets what, `source` for the pump, `shield` for the disc, and then any
//! file of `rules`.

mod chain;
mod compare;
mod draft;
mod facts;
mod feeding;
mod need;
mod needed;
mod outlets;
mod report;
mod rule;
mod rules;
mod shield;
mod source;
#[cfg(test)]
mod testing;
mod views;
mod walk;

use oilway_model::{Design, Finding};

pub use compare::compare;
pub use facts::Facts;
pub use report::{Report, verdict};
pub use rule::Rule;

/// Judges a finished design.
pub fn check(design: &Design) -> Report {
    let facts = Facts::of(design);
    let findings: Vec<Finding> = rules().iter().flat_map(|rule| rule.run(&facts)).collect();
    Report::of(findings)
}

/// Every rule, in the order of the report.
pub fn rules() -> &'static [&'static dyn Rule] {
    rules::RULES
}

/// The rule with this id.
pub fn rule(id: &str) -> Option<&'static dyn Rule> {
    rules().iter().copied().find(|rule| rule.id() == id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use oilway_model::{Severity, Verdict};
    use std::collections::BTreeSet;

    /// The findings of a design as lines of text, for a test that fails.
    fn lines(report: &Report) -> Vec<String> {
        let reader = oilway_text::Reader::default();
        let line = |f: &Finding| {
            format!("{:?} {} {}: {}", f.severity, f.rule, f.at, oilway_text::say(&f.what, &reader))
        };
        report.findings.iter().map(line).collect()
    }

    #[test]
    fn the_sound_design_works_and_its_notes_are_no_objections() {
        let report = check(&testing::sound());
        let objections = report.findings.iter().any(|f| f.severity != Severity::Note);
        assert!(!objections, "{:#?}", lines(&report));
        assert_eq!(report.verdict, Verdict::Works);
    }

    #[test]
    fn ids_are_plain_and_never_doubled() {
        let plain = |id: &str| !id.is_empty() && id.chars().all(|c| c.is_ascii_lowercase() || c == '-');
        let ids: BTreeSet<&str> = rules().iter().map(|rule| rule.id()).collect();
        assert_eq!(ids.len(), rules().len());
        assert!(ids.iter().all(|id| plain(id)));
    }

    #[test]
    fn every_file_of_the_rules_is_listed() {
        let folder = std::fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/src/rules")).unwrap();
        let names = folder.map(|entry| entry.unwrap().file_name().into_string().unwrap());
        let files: BTreeSet<String> = names
            .filter(|name| name != "mod.rs")
            .map(|name| name.replace(".rs", "").replace('_', "-"))
            .collect();
        let ids: BTreeSet<String> = rules().iter().map(|rule| rule.id().to_owned()).collect();
        assert_eq!(files, ids);
    }

    #[test]
    fn every_rule_explains_itself_and_names_a_source_of_the_list() {
        let known: BTreeSet<String> = oilway_testkit::sources().keys().cloned().collect();
        for rule in rules() {
            let words = [rule.title(), rule.finds(), rule.why_it_matters(), rule.example()];
            assert!(words.iter().all(|text| text.len() >= 20), "{}", rule.id());
            assert!(known.contains(rule.source().key), "{}: {}", rule.id(), rule.source().key);
        }
    }

    #[test]
    fn every_caution_that_a_rule_names_stands_in_the_table() {
        let table = include_str!("../../../data/cautions.csv");
        let ids: BTreeSet<&str> = table.lines().filter_map(|line| line.split(',').next()).collect();
        let report = check(&testing::sound());
        for caution in report.findings.iter().flat_map(|f| &f.cautions) {
            assert!(ids.contains(caution), "{caution}");
        }
        let code = std::fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/src/rules")).unwrap();
        for file in code {
            let text = std::fs::read_to_string(file.unwrap().path()).unwrap();
            for list in text.split(".cautions(&[").skip(1) {
                let list = list.split("])").next().unwrap();
                for id in list.split(',').map(|id| id.trim().trim_matches('"')) {
                    assert!(ids.contains(id), "{id}");
                }
            }
        }
    }

    #[test]
    fn a_stop_outweighs_an_open_question_and_that_outweighs_a_caution() {
        let mut design = testing::sound();
        design.package.spare_discs = 0;
        assert_eq!(check(&design).verdict, Verdict::Works);
        design.package.gauge = None;
        assert_eq!(check(&design).verdict, Verdict::WorksWithCare);
        design.points[0].given = None;
        assert_eq!(check(&design).verdict, Verdict::CannotTellYet);
        design.control.cycles = 0;
        assert_eq!(check(&design).verdict, Verdict::WillNotWork);
    }

    #[test]
    fn whatever_number_stands_in_a_design_the_checker_answers() {
        let strange = [0, 1, 2, 5, 9, 77, usize::MAX];
        for number in strange {
            for node in 0..testing::sound().network.nodes.len() {
                let mut design = testing::sound();
                design.network.nodes[node].parent = Some(number);
                check(&design);
                let mut design = testing::sound();
                design.network.nodes[node].end = oilway_model::End::Point(number);
                check(&design);
                design.network.nodes[node].end = oilway_model::End::Divider(number);
                check(&design);
                design.network.nodes[node].legs.iter_mut().for_each(|leg| leg.conduit = number);
                check(&design);
                design.network.nodes[node].legs.iter_mut().for_each(|leg| leg.place = number);
                check(&design);
            }
            let mut design = testing::sound();
            design.package.place = number;
            design.points.iter_mut().for_each(|point| point.place = number);
            check(&design);
            for divider in &mut design.dividers {
                divider.node = number;
                for section in &mut divider.sections {
                    section.left = oilway_model::OutletUse::To(number);
                    section.right = oilway_model::OutletUse::Bridged(number, oilway_model::Side::Left);
                }
            }
            check(&design);
            design.points.clear();
            check(&design);
            design.network.nodes.clear();
            check(&design);
            design.dividers.clear();
            design.conduits.clear();
            design.conditions.places.clear();
            check(&design);
        }
    }

    #[test]
    fn ten_thousand_points_are_judged_while_one_breathes() {
        let design = testing::large(10_000);
        let begun = std::time::Instant::now();
        let report = check(&design);
        println!("{} points: {:?}, {} findings", design.points.len(), begun.elapsed(), report.findings.len());
        // Far above what it takes, so that only a labour that grows with the square of the points fails.
        assert!(begun.elapsed().as_secs() < 20);
    }
}
